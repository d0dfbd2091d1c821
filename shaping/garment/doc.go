// Package garment makes pieces from measurements: it chooses the whole stitches
// and rows together, traces the drawn edges, has the rows ordered, and has every
// piece knitted by the judge of package bed before it hands it out.
//
//	piece, err := garment.Front(spec)
//	if err != nil {
//		return err // names the field, what was given and what would work
//	}
//	fmt.Println(piece.Cloth.Ledger())
//
// # Model
//
// Heights count in rows from the cast-on edge. The tip is the outer end of the
// shoulder, the neck point where shoulder and neck meet. The neck point keeps its
// nearest whole row; the neck's depth and the shoulder's drop are even numbers of
// rows, so that a half begins and ends at its outer edge. Widths count in
// stitches: the body keeps its nearest whole number, the neck is even or odd as the
// body is, and neck, shoulders and insets are chosen together so that they make up
// the body with the least relative error. See [Heights] and [Widths].
//
// Seam stitches are added at each outer edge, from the cast on to the shoulder;
// finished lengths do not contain them.
//
// # Exactness
//
// Lengths stay exact until a whole number is chosen. Every difference between what
// was asked and what will be knitted stands in the piece's [Size] list.
//
// # Errors
//
// An [*Error] names the field of the spec. A refusal by the judge, which would be
// a fault of this library, is returned as it is.
//
// # What it does not do
//
// So far it makes fronts on the bed: round necks by holding or binding off,
// shoulders by holding or binding off, armholes bound off and then decreased. What
// a spec asks beyond that is refused by name, never left out in silence.
package garment
