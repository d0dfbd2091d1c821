// Package mirror reflects knitted pieces: the second half of a piece from the
// first, a right front from a left one, and the view of the purl side from that
// of the knit side.
//
//	axis := mirror.AxisFor(110)               // the body has an even number of stitches
//	left := axis.Panel(right)                 // the left half of the right half
//	other := mirror.Work(w)                   // a piece for the other side of the wearer
//	chart := mirror.View(w, shaping.KnitSide) // the same piece, seen on the knit side
//
// # Model
//
// A reflection changes left and right: sides, the ends of spans, the edges that
// schedules belong to, the side where a row starts, and the word left or right at
// the beginning of a name. Rows, numbers of stitches and methods stay.
//
// The [Axis] is the line that needles are reflected in. A piece with an even
// number of stitches lies evenly about the middle and is reflected there: Ln
// becomes Rn. A piece with an odd number has one more on the right and is
// reflected in its middle stitch, R1: Ln becomes R(n+1). The halves of a piece
// are reflected in the axis of its body, whatever their own numbers are.
//
// [Work] and [View] differ in what they mean. Work returns another piece, seen on
// the same facing. View returns the same piece, seen on the other.
//
// # What can be knitted
//
// Every row starts at the other side. On a bed a carriage runs both ways, and the
// reflection of a work can be knitted as it is. In the hand it cannot: right-side
// rows always run from right to left as seen on the knit side, so what happens at
// the beginning or the end of a row has to move by one row. This package does not
// move it.
//
// # Exactness
//
// Everything is an integer. A reflection made twice is the identity. Two things
// have no image: no needle, which stays no needle, and on an odd piece the
// outermost needle on the left, L[shaping.MaxNeedle], whose image is not valid.
//
// # Errors
//
// Nothing is an error, whatever is reflected.
//
// # Complexity
//
// Linear in the rows, actions and steps. Results share nothing with what they were
// made from.
//
// # What it does not do
//
// It does not turn a piece upside down and does not check what it reflects.
package mirror
