// Package garment makes pieces from measurements: it chooses the whole stitches
// and rows together, traces the drawn edges, has the rows ordered, and has every
// piece knitted by the judge of package bed before it hands it out.
//
//	spec, err := plan.ReadSpec(file)
//	if err != nil {
//		return err // names the key
//	}
//	jumper, err := garment.Pieces(spec)
//	if err != nil {
//		return err // names the field, what was given and what would work
//	}
//	return sheet.WriteSet(os.Stdout, jumper) // the instructions; see also plan.Write
//
// [Front], [Fronts], [Back] and [Sleeve] make single pieces, and [GoOn] the rest of one that
// is begun.
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
// Seam stitches are added at each outer edge, from the cast on to the shoulder or the top
// of a sleeve; finished lengths do not contain them.
//
// Left and right are those of the piece's facing, as everywhere: on the bed of the purl side,
// so that the right half of a front lies on the wearer's right and joins the left half of the
// back; in the hand of the right side, where it lies on the wearer's left. Only sleeves are
// named after the wearer's arms, and only [Check.What] speaks of the wearer's sides.
//
// A back has the body, the armholes and the shoulders of the front at the same heights, and
// a round neck of its own. Sides that move, between hem, waist and underarm or from the cuff
// to the underarm, are straight stretches: single fashioned decreases and increases at both
// edges in the same rows, spread by the division rule of [shaping.EvenSpacing].
//
// A body that opens has two fronts in place of one, each the half of a front in one piece that
// has its outer edge, with the same steps: together they are narrower than the back by the
// overlap of the bands, whose stitches are even or odd as the body's. A front is one panel.
// Its part of the neck's flat middle goes with the first step of the neck or before it; an
// overlap wider than the flat part takes all of it, and the drawn edge begins at the front
// edge. Only the outer edge has seam stitches; a band takes up the edge stitches of the front
// edge. See [Fronts] for how the one follows from the other.
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
// Lengths along edges are those of the line through the middles of the steps, as a seam
// follows it; see [Piece.ArmholeLength]. What is taken off at once at the underarms counts
// neither in the armhole nor in the cap. The height of a set-in cap is what makes its edge,
// the flat top included, as long as the armhole of front and back with the asked ease:
// within 3 mm, and where no whole rows and no wording give that, the nearest.
//
// # Bands
//
// With a band in the spec, [Pieces] plans the neckband as well: how many stitches are picked
// up along each part of the neck, and on which needles they hang. See [Band], [Strip] and
// [Part]. The flat middle is picked up stitch by stitch; slopes by their length at the band's
// gauge, but never fewer than their live stitches; straight rows in the ratio of the band's
// stitches to the piece's rows. Both sides of a piece get the same. The total is the multiple
// of the repeat, with what is added to it, that is nearest to what is wanted; without a
// repeat, the nearest number that leaves both sides equal. Where the repeat asks for an odd
// number and equal sides for an even one, or the other way round, a stitch is added in the
// point of a front's vee, so that one stays in its middle, and without such a point at a
// shoulder seam. On the bed the band is one strip with the wearer's right shoulder joined, or
// where the bed is too narrow two, front and back apart; in the hand it goes round.
//
// # Going on
//
// A piece that is begun can be planned anew from the stitches on the needles, with the gauge
// that was found on it or with other lengths; see [GoOn]. The rows that are knitted stay as
// they are. A stretch of the sides that still leads where it should goes on as it was
// planned; another is spaced anew over the rows left, and ends as near to the asked width as
// single steps can come. Sizes and warnings say what is out of reach. Two fronts go on one by
// one: with as many stitches between them as they were cast on for they stay each other's
// reflection, and together as wide as the back.
//
// # Checks
//
// [Pieces] compares the pieces with each other, with head and hand, and pieces and bands with
// the bed; see [Check]. A check that fails is a warning of the pieces that it concerns or an error, as
// the spec's [Checks] ask; it is never silent.
//
// # Swatches, yarn and another gauge
//
// The gauge is given, or that of a swatch, or the mean of several swatches of one fabric;
// where these lie further apart than counting explains every piece warns. If a swatch says
// what it weighs or how much yarn is in it, [Set.Yarn] says how much the garment takes:
// by its loops, exactly, and with a margin for what is no loop. [Spec.Regauged] gives the
// same measurements another gauge, and [Compare] says what that changes.
//
// # Exactness
//
// Lengths stay exact until a whole number is chosen. Every difference between what
// was asked and what will be knitted stands in the piece's [Size] list.
//
// # Errors
//
// An [*Error] names the field of the spec, the rule that blocks it, and what works. It wraps
// [ErrSpec], [ErrFit], [ErrBed], [ErrCheck] or, of GoOn, [ErrBegun]. A refusal by the judge,
// which would be a fault of this library, is returned as it is. A size that differs from what
// was asked is no error, nor is a warning.
//
// # Complexity
//
// Most of the time goes into tracing the edges, see package curve, and what costs most is a
// set-in cap, which is traced at one height after the other until one fits the armhole: about
// half of a jumper. At 22 stitches and 30 rows to 10 cm a front takes less than half a
// millisecond, a jumper two or three and less than a megabyte. It is more at a finer gauge,
// a tenth of a second at four times as many stitches and rows. Ordering and knitting are
// linear in the loops.
//
// # What it does not do
//
// Drawn edges of a spec must not turn back, and sides that move are straight between the
// measured heights. Both sleeves of a pair are worked alike, so that of the underarms,
// which are bound off a row apart, one meets the other's a row off.
package garment
