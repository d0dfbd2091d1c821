package order

import (
	"errors"
	"fmt"

	"example.com/walewise/shaping"
)

// Ending is what becomes of stitches that are finished with.
type Ending uint8

// The endings.
const (
	// OnWaste leaves the stitches live: on hold where they wait, then on waste yarn.
	OnWaste Ending = iota
	// BoundOff binds the stitches off: the last stitches of a panel with the
	// working yarn, those in the middle at the split with a separate length of yarn.
	BoundOff
)

// String returns "on waste" or "bound off".
func (e Ending) String() string {
	switch e {
	case OnWaste:
		return "on waste"
	case BoundOff:
		return "bound off"
	}
	return fmt.Sprintf("Ending(%d)", uint8(e))
}

// Outline is a piece as it is to be planned.
type Outline struct {
	Name     string
	Place    shaping.Place
	Carriage shaping.Side // on the bed: where the carriage stands before row 1
	Panels   shaping.Tree // in the order in which they are worked
	Centre   Ending       // of the stitches between two halves
	Top      Ending       // of the stitches in work after a panel's last row

	// Outer is the edge of a body without halves at which its shoulder is held, as of one of
	// two fronts. The zero value is a body without a shoulder; the outer edge of a half is
	// the one that it shares with its parent.
	Outer shaping.Side

	// ShoulderRow is the row, from 1, from which stitches held at an outer edge are the
	// shoulder's and come back for the closing row. What is held there before, as at an
	// underarm, stays on hold. 0 means that all are the shoulder's.
	ShoulderRow int
}

// ErrOrder is wrapped by every [*Error] of this package.
var ErrOrder = errors.New("no order of work")

// Error says what in an outline cannot be worked and what would.
type Error struct {
	Piece, Panel string
	Row          int          // of the piece, from 1; 0 if it concerns no row
	Edge         shaping.Side // the zero value if it concerns no edge
	Reason       string
	Err          error // the cause, or nil
}

func (e *Error) Error() string {
	piece := e.Piece
	if piece == "" {
		piece = "piece without a name"
	}
	text := "order: " + piece
	if e.Panel != "" {
		text += ", " + e.Panel
	}
	if e.Row > 0 {
		text += fmt.Sprintf(", row %d", e.Row)
	}
	if e.Edge.IsValid() {
		text += fmt.Sprintf(", %v edge", e.Edge)
	}
	return text + ": " + e.Reason
}

// Unwrap returns [ErrOrder] and the cause.
func (e *Error) Unwrap() []error {
	if e.Err == nil {
		return []error{ErrOrder}
	}
	return []error{ErrOrder, e.Err}
}
