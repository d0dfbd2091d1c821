// Package draw makes pictures of planned pieces as SVG: a stitch chart, a schematic with
// lengths, and outlines at full size for blocking.
//
//	piece, err := garment.Front(spec)
//	if err != nil {
//		return err
//	}
//	err = draw.Chart(w, draw.Look{}, piece)
//
// # Model
//
// A chart has a cell for every stitch that the judge has knitted, in the proportion of the
// gauge. Cells stand in their wales, not in their rows: stitches that wait on hold have none,
// and a closing row lies on top of every wale that it knits. So the chart has the form of the
// cloth. What happens to a stitch is told by the shape of its mark, and what the stitches of
// an edge are by the form of its line; there is one colour beside that of the text, that of
// the drawn line, and it says nothing that the line's smoothness does not.
//
// Readings at the sides are those of the row counter before the step, as in package sheet,
// and in the hand the rows. Left and right are those of the side of the fabric that is shown,
// which every picture says; the names of needles stay those of the bed on either side.
//
// A schematic is finished: without the stitches that seams take. The outline for blocking is
// that of the whole cloth, with the seam as a line within it.
//
// # Exactness
//
// Coordinates are whole numbers of thousandths of a millimetre, rounded once: charts and
// schematics to hundredths. The same piece gives the same bytes on every platform. Texts
// are escaped wherever they stand; what XML does not allow is replaced by U+FFFD.
//
// # Errors
//
// [ErrPiece] for pieces that package garment has not made, and the first error of the writer.
//
// # Complexity
//
// Linear in the wales and rows of a piece; a chart is written in about a millisecond.
//
// # What it does not do
//
// It draws nothing that was not planned and decides nothing. It does not follow the row
// counter.
package draw
