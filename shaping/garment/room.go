package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// checkRoom refuses a piece that the bed has no needles for on either side of its middle,
// or that has more stitches in the hand than are numbered. front means that it is one of two
// fronts.
func (j job) checkRoom(w Widths, front bool) error {
	field, width := j.spec.widest(w)
	if j.bedRefuses() {
		return j.checkBed(field, width, w, front)
	}
	const most = 2 * shaping.MaxNeedle
	if w.Widest() <= most {
		return nil
	}
	return j.spec.fitError(field, width, fmt.Sprintf("%d stitches, at most %d are planned, which is %s",
		w.Widest(), most, j.spec.atMost(j.gauge.Width(w.whole(most, front)))))
}

// bedRefuses reports whether a piece that is wider than the bed is refused.
func (j job) bedRefuses() bool {
	return j.place == shaping.Bed && j.spec.Checks.Bed.Or(AsError) == AsError
}

// widest returns the field of the largest width of a piece, and what the spec says there.
func (s Spec) widest(w Widths) (field string, width gauge.Length) {
	switch widest := w.Widest(); {
	case w.isSleeve() && widest == w.Body:
		return "sleeve.top", s.Sleeve.Top
	case w.isSleeve():
		return "sleeve.cuff", s.Sleeve.Cuff
	case widest == w.Body:
		return "body.width", s.Body.Width
	case widest == w.CastOn:
		return "body.hem", s.Body.Hem
	}
	return "body.waist.width", s.Body.Waist.Width
}

// checkBed refuses a piece that is wider than the bed on either side of the middle.
func (j job) checkBed(field string, width gauge.Length, w Widths, front bool) error {
	half, needed := j.spec.Setup.BedNeedles()/2, w.needlesEachSide()
	if needed <= half {
		return nil
	}
	want := fmt.Sprintf("%d stitches need %d needles on each side of the middle, the bed has %d: %d needles are missing",
		w.Widest(), needed, half, 2*(needed-half))
	fits := 2 * half
	if front && w.CastOn < w.Widest() {
		fits-- // it may lie a needle off the middle
	}
	if field != "body.width" {
		fits -= (w.Widest() - fits) & 1 // even or odd as it is now, with the piece's other widths
	}
	// What fits must have a neck and two shoulders.
	if finished := w.whole(fits, front); finished >= 5 {
		what, together := "piece", ""
		if front {
			what, together = "front", " with the other one and the overlap"
		}
		want += fmt.Sprintf("; the widest %s that fits is %d stitches, %s%s", what, fits, j.spec.atMost(j.gauge.Width(finished)), together)
	}
	return &Error{Field: field, Given: j.spec.text(width), Want: want, Err: ErrBed}
}

// needlesEachSide returns how many needles a piece needs on the side of the middle where it
// needs more. It lies evenly where it is widest; one of two fronts, which widens at one edge
// only, and is the other's reflection by its cast on, may lie a needle off.
func (w Widths) needlesEachSide() int {
	widest := w.Widest()
	if w.CastOn%2 == 1 && widest%2 == 0 {
		return widest/2 + 1
	}
	return evenly(widest)
}

// evenly returns how many needles stitches that lie evenly about the middle need on the side
// where they need more.
func evenly(stitches int) int { return (stitches + 1) / 2 }

// whole returns to how many finished stitches of a width of the spec so many of the piece
// belong: without those of the seams, and of one of two fronts those of both and the overlap.
func (w Widths) whole(stitches int, front bool) int {
	if front {
		return 2*(stitches-w.Seam) + w.Overlap
	}
	return stitches - 2*w.Seam
}

// leastStitches is how many finished stitches a piece has anywhere at least, and one of two
// fronts, which is shaped at one edge.
const (
	leastStitches = 2
	leastOfFront  = 4
)

// checkLeast refuses a width that has fewer stitches.
func (j job) checkLeast(field string, width gauge.Length, stitches, least int) error {
	if stitches >= least {
		return nil
	}
	return j.spec.fitError(field, width, fmt.Sprintf("fewer than %d stitches: at least %s", least, j.spec.atLeast(j.gauge.Width(least+1))))
}
