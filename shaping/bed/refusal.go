package bed

import (
	"errors"
	"fmt"

	"example.com/walewise/shaping"
)

// The kinds of refusal, for use with [errors.Is].
var (
	// ErrImpossible: a machine or a pair of hands could not do it.
	ErrImpossible = errors.New("cannot be knitted")
	// ErrUntrue: it can be done, but is not what the work says of itself.
	ErrUntrue = errors.New("is not what the work says")
)

// Refusal says where and why a work was refused.
type Refusal struct {
	Piece  string
	Panel  string         // empty if it concerns the whole piece
	Row    int            // of the piece, from 1; 0 if it concerns the whole panel or piece
	Needle shaping.Needle // the zero value if it concerns no needle
	Reason string
	Err    error // ErrImpossible or ErrUntrue, of KnitTo also ErrNoRow
}

func (r *Refusal) Error() string {
	text := r.Piece
	if text == "" {
		text = "piece without a name"
	}
	if r.Panel != "" {
		text += ", " + r.Panel
	}
	if r.Row > 0 {
		text += fmt.Sprintf(", row %d", r.Row)
	}
	if r.Needle != 0 {
		text += ", needle " + r.Needle.String()
	}
	return text + ": " + r.Reason
}

// Unwrap returns the kind of the refusal.
func (r *Refusal) Unwrap() error { return r.Err }
