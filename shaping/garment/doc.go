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
// Every edge is worked by a [Pair] of methods, one for steps of two or more stitches
// and one for single ones. Where a hold or a bind off ties a step to one end of a row,
// the two edges of the body step one row apart, with equal stitches; decreases fall on
// the same rows at both. The edge that goes first is named in the warnings. Where larger
// steps are held or bound off and single stitches decreased, the decreases come last.
//
//   - On the bed the halves are each other's reflection. A shoulder that begins in the
//     body, as on a shallow neck, has its tied steps there one row earlier at the edge
//     whose half goes second.
//   - In the hand the whole height is even too, so that the right half, seen on the
//     right side, goes on with the yarn after a wrong-side row. The left half has what
//     is held or bound off at its neck and shoulder one row later, and then ends one row
//     later; decreases are on right-side rows.
//
// Necks, armholes and shoulders may be drawn, as SVG path data; see [Neck], [Armhole] and
// [Shoulder]. Every drawn edge, a round neck's ellipse among them, is followed by the steps
// of its default wording: those that can be said in the fewest phrases with at most a
// twentieth more area off the drawing than the nearest that its methods allow.
//
// # Exactness
//
// Lengths stay exact until a whole number is chosen. Every difference between what
// was asked and what will be knitted stands in the piece's [Size] list.
//
// # Errors
//
// An [*Error] names the field of the spec, the rule that blocks it, and what works. A
// refusal by the judge, which would be a fault of this library, is returned as it is.
//
// # What it does not do
//
// So far it makes fronts with straight sides. Hem and waist and the other pieces are not
// planned yet: a front whose spec asks for hem or waist is refused by name, never made
// without them. Drawn edges must not turn back. What a spec says of back, sleeves, band,
// head and yarn does not concern a front.
package garment
