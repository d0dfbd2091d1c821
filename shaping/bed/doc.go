// Package bed is the judge: it knits a [shaping.Work] loop by loop and says
// whether hands and machine could do it and whether the work tells the truth
// about itself.
//
//	cloth, err := bed.Knit(work)
//	if err != nil {
//		return err // piece, panel, row, needle and reason
//	}
//	fmt.Println(cloth.Height(shaping.R(20)), cloth.Ledger())
//
// [KnitTo] stops after a row and says how things stand then: for somebody who lost the
// place, or for what is planned anew from there.
//
// # Model
//
// Needles hold loops. A needle is out of work, in work or on hold. The carriage
// stands at one side with the yarn; a row takes it across and knits every needle
// that is in work, so the needles in work must be one run of neighbours and each
// must hold a loop. The yarn hangs at the needle where the last row ended: the
// next row starts there, unless stitches were bound off or cast on there or the
// yarn was broken. From this follows which end of a row can do what: stitches are
// bound off and cast on where a row starts, and put on hold where it ends.
//
// In the hand the stitches are judged in the same way, except that there is no
// carriage to move and no counter to set: right-side rows, the odd ones, run from
// right to left as seen on the knit side, and a panel that does not go on from the
// one just worked begins with a new end of yarn.
//
// The judge shares the vocabulary of package shaping with the planner and
// nothing else: it does not know how plans are made and judges those of others.
//
// # Exactness
//
// Stitches, rows and loops are counted one by one. Nothing is rounded and nothing is let
// pass: a ledger that is off by one stitch is untrue.
//
// # Errors
//
// [Knit] and [KnitTo] return a [*Refusal] for the first thing that is wrong. What is
// refused as impossible wraps [ErrImpossible]; a row number, a side, a counter reading, a
// step, a panel or a ledger entry that is not what happened wraps [ErrUntrue], and so does
// a tree of panels that is not sound. Of KnitTo, a panel or row that the work does not have
// wraps [ErrNoRow]. No work makes them panic.
//
// A wrap is asked for at the first turn beside a newly held needle of the same panel; more
// wraps are no error.
//
// # Complexity
//
// Linear in the loops knitted plus, for every row, the width of the piece. No
// allocation depends on the number of loops.
//
// # What it does not do
//
// It does not know lengths, gauge or whether the piece fits anybody.
package bed
