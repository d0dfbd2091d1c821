// Package shaping is the vocabulary of a shaped knitted piece in whole
// numbers: needles, sides, schedules of steps, panels, rows and the ledger that
// accounts for every stitch. It knows no lengths and no gauge; those become
// whole stitches and rows before they come here.
//
//	rules := shaping.RulesFor(shaping.Hold, shaping.Left, shaping.Right, shaping.Bed)
//	groups, err := shaping.ShoulderGroups(35, 6) // 8 9 9 9, from the tip to the neck
//
// # Model
//
// A [Side] is left or right as seen on the piece's stated [Facing]: on a bed
// the purl side faces the knitter, in the hand and on charts the knit side does.
//
// Needles are numbered outwards from the middle: L1, L2, ... to the left and
// R1, R2, ... to the right; there is no needle 0. In the hand the stitches are
// numbered in the same way. An even number of stitches lies evenly about the
// middle, an odd number has one more on the right (see [Centred]).
//
// Row n is the n-th row of main yarn, counted from 1. A row counter shows n-1
// before it and n after it. A [Step] at row n happens before row n is knitted.
//
// A piece is a tree of [Panel] values: the body, and after a split its two
// halves. A [Work] is the piece as an order of work: its panels, its rows with
// every [Action], and the [Ledger] it promises. A Work claims; package bed
// finds out whether the claims are true.
//
// # Exactness
//
// Everything is an integer. Nothing is rounded here.
//
// # Errors
//
// Functions that can be asked for something impossible return an [*Error],
// which wraps one of [ErrSyntax], [ErrRange] and [ErrInfeasible]. Nothing panics,
// except the parsers whose name begins with Must.
//
// # Complexity
//
// What needles and spans are asked takes constant time, but for [Span.All] and [Span.Runs];
// what schedules, trees and works are asked grows at most with their steps, panels and rows,
// and [Schedule.Phrases] with the steps times the length of the phrases. [Tree.Validate], and
// so [Tree.Ledger], grows with the square of the steps of a panel and of the number of panels,
// which is milliseconds for thousands of steps.
//
// # What it does not do
//
// Apart from even spacing ([EvenSpacing], [AlongRow]) and [ShoulderGroups] it does
// not choose schedules: package curve does. It does not order the rows (package
// order) and does not judge them (package bed).
package shaping
