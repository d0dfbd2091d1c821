package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// sizes lists what was asked and what will be knitted.
func (f *trunk) sizes() []Size {
	s, w, h := f.spec, f.widths, f.heights
	neckAsked := f.opening.Width
	shoulder := halfLength(s.Body.Width.Sub(neckAsked)).Sub(s.Armhole.Inset)
	// across is a width of the front, or of one of two its part.
	across := func(name string, asked gauge.Length, stitches int, why string) Size {
		if f.outer.IsValid() {
			asked, stitches = halfLength(asked.Sub(s.overlap())), f.own(stitches)
			if !outOfReach(why) {
				why = "a whole number of stitches in each front beside the overlap"
			}
		}
		return f.wide(name, asked, stitches, why)
	}
	// Rows that are even for one reason in halves are so for another in two fronts.
	neckDepth, height := "even, so that a half ends at its outer edge", "even, so that the half at the right goes on with the yarn"
	if f.outer.IsValid() {
		neckDepth, height = "even, so that the front ends at its outer edge, and bound off with its own yarn", "even, as that of the back"
		if f.turned != 0 {
			height = "so that its rows from the neck on start at the outer edge"
		}
	}
	own := f.ownRows()
	sizes := []Size{
		across("width", s.Body.Width, w.Body-2*w.Seam, f.whyWidth()),
		f.high("length", s.Body.Length, own.Underarm, f.whyLength()),
		f.high("armhole", s.Armhole.Depth, own.Armhole, "what body and shoulder leave of the whole height"),
		across("neckWidth", neckAsked, w.Neck, fmt.Sprintf("%s, as the body's %d stitches are", parity(w.Neck), w.Body)),
		f.high("neckDepth", f.opening.Depth, own.Neck, neckDepth),
		f.wide("shoulder", shoulder, w.Shoulder-w.Seam, "what neck and armholes leave of the body"),
		f.high("drop", s.Shoulder.Drop, own.Drop, "even, a group of stitches every 2nd row"),
	}
	whole := s.Body.Length.Add(s.Armhole.Depth).Add(s.Shoulder.Drop)
	sizes = append(sizes, f.high("height", whole, own.Top(), f.whyHeight(height)))
	if !s.Body.Hem.IsZero() {
		sizes = append(sizes, across("hem", s.Body.Hem, w.CastOn-2*w.Seam, f.whyKnitted(sideParity(w))))
	}
	if waist := s.Body.Waist; waist != nil {
		sizes = append(sizes, across("waist", waist.Width, w.Waist-2*w.Seam, f.whyWaist(sideParity(w))),
			f.high("waistHeight", waist.Height, h.Waist, f.whyWaist("within what the whole height leaves of the body")))
	}
	if w.Inset > 0 || s.Armhole.Inset.Sign() > 0 {
		sizes = append(sizes, f.wide("inset", s.Armhole.Inset, w.Inset, f.whyInset()))
	}
	return sizes
}

// sideParity says why hem and waist have the body's parity.
func sideParity(w Widths) string { return parity(w.Body) + ", so that both edges are shaped alike" }

func parity(n int) string {
	if n%2 == 0 {
		return "even"
	}
	return "odd"
}

// halfLength returns l / 2, exactly.
func halfLength(l gauge.Length) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.New(5, -1)))
}
