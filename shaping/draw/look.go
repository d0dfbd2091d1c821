package draw

import (
	"errors"
	"regexp"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Look is how a picture is made. The zero value shows pieces as the knitter sees them,
// for a file of its own.
type Look struct {
	// Facing is the side of the fabric that is shown; left open, the one that faces the
	// knitter: the purl side of a piece from the bed, the knit side of one in the hand.
	Facing shaping.Facing
	// Folded is about charts: long runs of rows without shaping are left out, and it is said
	// how many they are. Else every row is drawn, and the chart has the form of the cloth.
	Folded bool
	// Inline makes the picture part of an HTML page: it takes the colour of the page's text
	// and has no background of its own.
	Inline bool
	// ID is what the names begin with by which a picture's title and description are found,
	// letters, digits and hyphens; on one page every picture needs its own. Left open, it is
	// made from the kind of picture and the name of the piece.
	ID string

	sized bool // has its size in millimetres, on a page of HTML too
}

// Errors of pictures.
var (
	// ErrPiece: package garment has not made the piece, or it was changed since.
	ErrPiece = errors.New("draw: the piece was not planned and knitted: make it with package garment")
	// ErrLook: the look asks for no side of the fabric that there is, or its ID has other
	// characters than letters, digits and hyphens.
	ErrLook = errors.New("draw: no such look: a facing is purl or knit, an ID has letters, digits and hyphens")
)

// check refuses what cannot be shown.
func (l Look) check(pieces []garment.Piece) error {
	switch {
	case !garment.Made(pieces...):
		return ErrPiece
	case l.Facing != 0 && !l.Facing.IsValid() || !idPattern.MatchString(l.ID):
		return ErrLook
	}
	return nil
}

var idPattern = regexp.MustCompile(`^[A-Za-z0-9-]*$`)
