package sample

import (
	"fmt"
	"io"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/plan"
)

// check knits every piece of a plan and writes what came off the needles.
func check(w io.Writer, file string, stdin io.Reader) error {
	f, err := Open(file, stdin)
	if err != nil {
		return err
	}
	defer f.Close()
	p, err := plan.Read(f)
	if err != nil {
		return err
	}
	for i, piece := range p.Pieces {
		cloth, err := bed.Knit(piece.Work)
		if err != nil {
			return err
		}
		if i > 0 {
			fmt.Fprintln(w)
		}
		writeCloth(w, piece.Work, cloth)
	}
	return nil
}

func writeCloth(w io.Writer, work shaping.Work, cloth bed.Cloth) {
	needles := cloth.Needles()
	fmt.Fprintf(w, "%s, %s\n", work.Name, placeText(work.Place))
	fmt.Fprintf(w, "  rows knitted  %d in all, %d in the highest wale\n", cloth.Rows(), highest(cloth))
	fmt.Fprintf(w, "  loops         %d\n", cloth.Loops())
	fmt.Fprintf(w, "  needles       %v, %d\n", needles, needles.Len())
	fmt.Fprintf(w, "  stitches      %v\n", cloth.Ledger())
	fmt.Fprintln(w, "  It can be knitted, and every stitch is accounted for.")
}

func placeText(p shaping.Place) string {
	if p == shaping.Hand {
		return "in the hand"
	}
	return "on the bed"
}

// highest returns the number of rows in the highest wale.
func highest(cloth bed.Cloth) int {
	most := 0
	for _, height := range cloth.Wales() {
		most = max(most, height)
	}
	return most
}
