// Package sheet says a planned piece in words that can be followed at the bed or with
// two needles, and as a table of its rows.
//
//	piece, err := garment.Front(spec)
//	if err != nil {
//		return err
//	}
//	err = sheet.Write(os.Stdout, piece)
//
// # Model
//
// The sheet is made from the rows of the work and from nothing else, so that what
// is printed is what the judge has knitted. For the bed every entry begins with the
// counter reading and the side where the carriage stands, says what to do with which
// needles and how many rows to knit, and ends with the reading after, the needles
// in work and their number. For the hand it begins with the row and its side, RS or
// WS, and speaks of stitches from where the row starts. Entries that repeat are
// gathered, with a box to tick for each time, and those at two distances in turn. The
// second half is written out, and so is the second of two fronts. [WriteSet] does this for
// every piece of a garment, after a table of the pieces, the yarn, the checks between them
// and the order of joining, and says at the end how bands are picked up, needle by needle or
// stitch by stitch in the order in which that is done, and knitted. [WriteFrom] begins at any
// reading of the counter: with how things stand there, as the judge of package bed left it,
// and then in the words of the whole sheet. [WriteChanges] sets the numbers of a garment
// beside those that it had by another gauge. [WriteSetPage] and [WritePage] make of the same
// sentences a work sheet for the screen, with the pictures of package draw; there nothing is
// gathered, so that one tick is one thing done.
//
// # Exactness
//
// Lengths are printed to a millimetre or to a hundredth of an inch, in the unit of
// the spec; nothing is decided by what is printed.
//
// # Errors
//
// [ErrPiece] for pieces that package garment has not made, [ErrSizes] for sizes that package
// sizes has not planned, a [*ReadingError], which wraps [ErrReading], for a reading that the
// piece does not have, [draw.ErrPaper], and the first error of the writer. With
// any of the first four nothing is written; of the last, what was written before it stays.
// Failed checks and warnings are printed and are no errors.
//
// # Complexity
//
// Linear in the rows and stitches of the pieces: the instructions of a front are written in
// half a millisecond, those of a jumper in two and its page with all pictures in ten.
//
// # What it does not do
//
// It does not plan or judge.
package sheet
