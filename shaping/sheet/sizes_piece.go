package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
)

// Each piece on the page of sizes, from the cast on to the top.

// piece writes one piece in short.
func (s *sizesWriter) piece(p sizes.PieceCounts) {
	name := p.Name
	if name == shaping.RightSleeve {
		name = "sleeves, both alike"
	}
	s.heading(name)
	s.para("  ", s.sizesText())
	for _, say := range []func(sizes.PieceCounts) []string{
		s.castOn,
		s.side(garment.CuffToUnderarm), s.side(garment.HemToWaist), s.atWaist, s.side(garment.WaistToUnderarm), s.side(garment.HemToUnderarm),
		s.underarm, s.armhole, s.cap, s.neck, s.shoulder, s.top,
	} {
		for i, text := range say(p) {
			head := "      - "
			switch {
			case i == 0:
				head = "  [ ] "
			case strings.HasPrefix(text, "Size"):
				head = "      "
			}
			s.para(head, text)
		}
	}
}

func (s *sizesWriter) castOn(p sizes.PieceCounts) []string {
	values, _ := p.Count(sizes.CastOn)
	text := []string{fmt.Sprintf("Cast on %s.", s.stitches(values))}
	if rows, ok := p.Count(sizes.BandRows); ok {
		text = append(text, fmt.Sprintf("The first %s rows are the band.", s.numbers(rows)))
	}
	return text
}

// after names a height, in rows knitted, by the reading of the counter or the row after
// which it comes.
func (s *sizesWriter) after(rows []int) string {
	if s.hand {
		return "after row " + s.numbers(rows)
	}
	return "at counter " + s.written(rows, "%03d")
}

// at names the row before which something is done, or the reading there.
func (s *sizesWriter) at(rows []int) string {
	if s.hand {
		return "row " + s.numbers(rows)
	}
	var readings []int
	for _, row := range rows {
		if row == 0 || row == sizes.None {
			readings = append(readings, sizes.None)
		} else {
			readings = append(readings, row-1)
		}
	}
	return "counter " + s.written(readings, "%03d")
}

// edge returns an edge of a piece; ok is false if no size has it.
func edgeOf(p sizes.PieceCounts, name string) (e sizes.Edge, ok bool) {
	i := slices.IndexFunc(p.Edges, func(e sizes.Edge) bool { return e.Name == name })
	if i < 0 {
		return e, false
	}
	return p.Edges[i], true
}

// side says a stretch of the sides.
func (s *sizesWriter) side(name string) func(sizes.PieceCounts) []string {
	return func(p sizes.PieceCounts) []string {
		e, ok := edgeOf(p, name)
		if !ok {
			return nil
		}
		head := "Sides, %s, at both edges:"
		if isOneOfTwo(p) {
			head = "Side, %s, at the outer edge:"
		}
		return append([]string{fmt.Sprintf(head, name)}, s.words(e)...)
	}
}

func (s *sizesWriter) atWaist(p sizes.PieceCounts) []string {
	values, ok := p.Count(sizes.AtWaist)
	if !ok {
		return nil
	}
	rows, _ := p.Count(sizes.ToWaist)
	return []string{fmt.Sprintf("Waist %s: %s.", s.after(rows), s.stitches(values))}
}

func (s *sizesWriter) underarm(p sizes.PieceCounts) []string {
	rows, ok := p.Count(sizes.ToUnderarm)
	if !ok {
		return nil
	}
	values, _ := p.Count(sizes.AtUnderarm)
	return []string{fmt.Sprintf("Underarm %s: %s.", s.after(rows), s.stitches(values))}
}

func (s *sizesWriter) armhole(p sizes.PieceCounts) []string {
	return s.inward(p, garment.ArmholeEdge, "Armholes")
}

func (s *sizesWriter) cap(p sizes.PieceCounts) []string { return s.inward(p, garment.CapEdge, "Cap") }

// inward says an edge that may take stitches off at once at the underarm.
func (s *sizesWriter) inward(p sizes.PieceCounts, name, head string) []string {
	e, ok := edgeOf(p, name)
	if !ok {
		return nil
	}
	values, _ := p.Count(sizes.Inset)
	text := []string{fmt.Sprintf("%s, %s at each edge in all:", head, s.stitches(values))}
	if isOneOfTwo(p) {
		text[0] = fmt.Sprintf("Armhole, %s at the outer edge in all:", s.stitches(values))
	}
	rows, stitches, method := make([]int, len(e.Once)), make([]int, len(e.Once)), shaping.Method(0)
	for i, step := range e.Once {
		rows[i], stitches[i] = sizes.None, sizes.None
		if step.Stitches != 0 {
			rows[i], stitches[i], method = step.Row, -step.Stitches, step.Method
		}
	}
	if method != 0 {
		text = append(text, fmt.Sprintf("%s: %s %s at once", s.at(rows), doing(method, -1), s.stitches(stitches)))
	}
	return append(text, s.words(e)...)
}

func (s *sizesWriter) neck(p sizes.PieceCounts) []string {
	rows, ok := p.Count(sizes.NeckStart)
	if !ok {
		return nil
	}
	e, drawn := edgeOf(p, garment.NeckEdge)
	if isOneOfTwo(p) {
		text := []string{fmt.Sprintf("Neck %s, at the front edge:", s.after(rows))}
		return append(text, s.words(e)...)
	}
	middle := "part the stitches in the middle"
	if flat, ok := p.Count(sizes.Flat); ok {
		middle = fmt.Sprintf("the middle %s wait", s.stitches(flat))
		if s.style.Methods.Neck.Or(garment.By(shaping.Hold)).Several == shaping.BindOff {
			middle = fmt.Sprintf("bind off the middle %s", s.stitches(flat))
		}
	}
	text := []string{fmt.Sprintf("Neck %s: %s. Work each half by itself.", s.after(rows), middle)}
	if drawn {
		text[0] += " At its neck edge:"
		text = append(text, s.words(e)...)
	}
	return text
}

// isOneOfTwo reports whether the piece is one of two fronts, with its neck at one edge.
func isOneOfTwo(p sizes.PieceCounts) bool {
	return p.Name == shaping.RightFront || p.Name == shaping.LeftFront
}

func (s *sizesWriter) shoulder(p sizes.PieceCounts) []string {
	values, ok := p.Count(sizes.Shoulder)
	if !ok {
		return nil
	}
	e, ok := edgeOf(p, garment.ShoulderEdge)
	if !ok {
		return []string{fmt.Sprintf("Shoulders, %s each.", s.stitches(values))}
	}
	meanwhile := ""
	if neck, ok := edgeOf(p, garment.NeckEdge); ok && overlap(neck, e, len(s.sizes)) {
		meanwhile = ", in part in the same rows as the neck, so look at both"
	}
	text := []string{fmt.Sprintf("Shoulders, %s each, at the outer edge of each half%s:", s.stitches(values), meanwhile)}
	if isOneOfTwo(p) {
		text[0] = fmt.Sprintf("Shoulder, %s, at the outer edge%s:", s.stitches(values), meanwhile)
	}
	text = append(text, s.words(e)...)
	return append(text, fmt.Sprintf("the last %s stay to the end", s.stitches(e.Last)))
}

// overlap reports whether the shoulder of any of so many sizes begins before its neck ends.
func overlap(neck, shoulder sizes.Edge, count int) bool {
	steps := func(e sizes.Edge, k int) shaping.Schedule {
		for _, w := range e.Words {
			if w.Has(k) {
				return w.Steps(k)
			}
		}
		return nil
	}
	for k := range count {
		inner, outer := steps(neck, k), steps(shoulder, k)
		if len(inner) > 0 && len(outer) > 0 && outer[0].Row <= inner[len(inner)-1].Row {
			return true
		}
	}
	return false
}

func (s *sizesWriter) top(p sizes.PieceCounts) []string {
	rows, _ := p.Count(sizes.Top)
	text := fmt.Sprintf("Top %s", s.after(rows))
	if flat, ok := p.Count(sizes.TopFlat); ok {
		text += fmt.Sprintf(": %s", s.stitches(flat))
	}
	return []string{text + "."}
}
