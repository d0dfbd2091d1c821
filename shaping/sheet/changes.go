package sheet

import (
	"fmt"
	"io"
	"reflect"
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping/garment"
)

// WriteChanges writes what becomes of the numbers of a garment that was planned anew, such
// as by another gauge: both gauges and what the old numbers would have made, a table for
// each piece, the bands, the yarn, what is new to know, and the checks that fail now. A piece that stays as it was, or
// changes as one before it, is said in a line. It returns the first error of w, and
// [ErrPiece] for a set without pieces, or with one that was not planned and knitted.
func WriteChanges(w io.Writer, before, after garment.Set) error {
	if !made(before) || !made(after) {
		return ErrPiece
	}
	c := changeWriter{page: &page{w: w}, before: before, after: after}
	c.writer(after.Pieces[0].Name()).title()
	c.gauges()
	c.pieces()
	c.bands()
	c.yarn()
	c.news()
	c.failing()
	return c.err
}

// changeWriter writes what changed between two garments.
type changeWriter struct {
	*page
	before, after garment.Set
}

// writer returns the writer of the piece of that name, as it is now if there is one.
func (c *changeWriter) writer(name string) *writer {
	p, ok := c.after.Piece(name)
	if !ok {
		p, _ = c.before.Piece(name)
	}
	return newWriter(c.page, p)
}

// gauges says both gauges and what the old numbers would make by the new one.
func (c *changeWriter) gauges() {
	c.heading("What changes")
	was, is := c.before.Pieces[0], c.after.Pieces[0]
	if was.Gauge.Equal(is.Gauge) {
		c.para("  ", fmt.Sprintf("The gauge stays: %s; %s.", gaugeText(is), overText(is)))
		return
	}
	for _, g := range []struct {
		when  string
		piece garment.Piece
	}{{"before", was}, {"now", is}} {
		c.para("  ", fmt.Sprintf("Gauge %s: %s; %s.%s%s", g.when, gaugeText(g.piece), overText(g.piece), spreadText(g.piece), doubtText(g.piece)))
	}
	s := newWriter(c.page, is)
	wide, high := was.Widths.Body-2*was.Widths.Seam, newWriter(c.page, was).height()
	c.para("  ", fmt.Sprintf("By the old numbers and the new gauge the %s would have become %s wide at the underarm instead of %s, and %s high instead of %s.",
		was.Name(), s.length(is.Gauge.Width(wide)), s.length(was.Gauge.Width(wide)),
		s.length(is.Gauge.Height(high)), s.length(was.Gauge.Height(high))))
	c.para("  ", "Sizes are finished and flat, before by the gauge of before and now by that of now. The steps of the edges change as well: take them from the new instructions only.")
}

// pieces writes the table of each piece.
func (c *changeWriter) pieces() {
	var said [][]garment.Change // of the pieces that have a table
	for _, list := range byPiece(garment.Compare(c.before, c.after)) {
		name := list[0].Piece
		before, was := c.before.Piece(name)
		after, is := c.after.Piece(name)
		if !was && !is {
			continue // a band
		}
		c.heading(name)
		switch like := slices.IndexFunc(said, func(other []garment.Change) bool { return sameChanges(other, list) }); {
		case !is:
			c.line("  Falls away.")
		case !slices.ContainsFunc(list, func(change garment.Change) bool { return !change.Same() }):
			if reflect.DeepEqual(before.Work, after.Work) {
				c.line("  Stays as it was.")
			} else {
				c.line("  Its numbers stay; its steps change: take them from the new instructions.")
			}
		case like >= 0:
			c.line("  As the %s.", said[like][0].Piece)
		default:
			if !was {
				c.line("  New.")
			}
			c.table(list)
			said = append(said, list)
		}
	}
}

// byPiece parts changes, which are in the order of the pieces.
func byPiece(all []garment.Change) [][]garment.Change {
	var lists [][]garment.Change
	for len(all) > 0 {
		n := slices.IndexFunc(all, func(c garment.Change) bool { return c.Piece != all[0].Piece })
		if n < 0 {
			n = len(all)
		}
		lists, all = append(lists, all[:n]), all[n:]
	}
	return lists
}

// sameChanges reports whether two pieces change alike.
func sameChanges(a, b []garment.Change) bool {
	return slices.EqualFunc(a, b, func(a, b garment.Change) bool {
		before := garment.Change{Before: a.Before, After: b.Before}
		after := garment.Change{Before: a.After, After: b.After}
		return a.What == b.What && before.Same() && after.Same()
	})
}

func (c *changeWriter) table(list []garment.Change) {
	s := c.writer(list[0].Piece)
	row := func(name, before, after, counted, sizeBefore, sizeAfter, moves string) {
		c.line("  %-21s %7s %7s %-8s %11s %11s %10s", name, before, after, counted, sizeBefore, sizeAfter, moves)
	}
	row("", "before", "now", "", "size before", "size now", "moves by")
	for _, change := range list {
		if change.What == "needles" {
			continue // as many as the stitches at its widest
		}
		moves := ""
		if change.Before.Length.Sign() != 0 && change.After.Length.Sign() != 0 {
			moves = s.signed(s.asPrinted(change.After.Length).Sub(s.asPrinted(change.Before.Length)))
		}
		counted := change.After.Counted
		if !change.After.Given {
			counted = change.Before.Counted
		}
		row(s.changeName(change), countText(change.Before), countText(change.After), counted, s.sizeText(change.Before), s.sizeText(change.After), moves)
		if change.What == "yarn" {
			s.yarnRows(change, row)
		}
	}
}

// changeName returns the name of a number for people.
func (s *writer) changeName(change garment.Change) string {
	switch change.What {
	case "castOn":
		return "cast on"
	case "widest":
		return "at its widest"
	case "rows":
		if s.halved() {
			return "knitted, both halves"
		}
		return "knitted"
	}
	return s.sizeName(garment.Size{Name: change.What})
}

// yarnRows writes what a piece weighs, and how much yarn is in it, where both or one of
// the garments say it.
func (s *writer) yarnRows(change garment.Change, row func(name, before, after, counted, sizeBefore, sizeAfter, moves string)) {
	b := garment.YarnUse{Grams: change.Before.Grams, Metres: change.Before.Metres}
	a := garment.YarnUse{Grams: change.After.Grams, Metres: change.After.Metres}
	known := garment.YarnUse{Grams: b.Grams.Add(a.Grams), Metres: b.Metres.Add(a.Metres)}
	for _, c := range s.columns(known) {
		cell := func(use garment.YarnUse) string {
			if c.of(use).IsZero() {
				return "-"
			}
			return c.cell(use)
		}
		row("", cell(b), cell(a), c.head, "", "", "")
	}
}

// countText says a number of stitches, rows, needles or loops.
func countText(r garment.Figure) string {
	switch {
	case !r.Given:
		return "-"
	case r.Counted == "":
		return ""
	}
	return fmt.Sprint(r.Count)
}

// asPrinted returns a size as it stands on the page, so that what it moves by is the
// difference of what is read there.
func (s *writer) asPrinted(l gauge.Length) gauge.Length {
	printed, err := gauge.ParseLength(s.fine(l))
	if err != nil { // no length of a piece is so long
		return l
	}
	return printed
}

// sizeText says a size.
func (s *writer) sizeText(r garment.Figure) string {
	if r.Length.IsZero() {
		return ""
	}
	return s.fine(r.Length)
}

// bands says how many stitches the bands pick up and how many rows they have, before and now.
func (c *changeWriter) bands() {
	if len(c.before.Bands)+len(c.after.Bands) == 0 {
		return
	}
	c.heading("Bands")
	said := func(b garment.Band, ok bool) string {
		if !ok {
			return "none"
		}
		return fmt.Sprintf("%s picked up, %s", plural.Stitches(b.Stitches()), plural.Rows(b.Rows))
	}
	names := map[string]bool{}
	for _, b := range slices.Concat(c.after.Bands, c.before.Bands) {
		if names[b.Name] {
			continue
		}
		names[b.Name] = true
		was, wasThere := c.before.Band(b.Name)
		is, isThere := c.after.Band(b.Name)
		c.para("  "+b.Name+": ", fmt.Sprintf("before %s; now %s.", said(was, wasThere), said(is, isThere)))
	}
}

// yarn says how much yarn the garment takes, before and now, if one of the two is known.
func (c *changeWriter) yarn() {
	_, was := c.before.Yarn()
	_, is := c.after.Yarn()
	if !was && !is {
		return
	}
	c.heading("Yarn in all")
	c.yarnLine("Before", c.before)
	c.yarnLine("Now", c.after)
}

func (c *changeWriter) yarnLine(when string, set garment.Set) {
	s := newWriter(c.page, set.Pieces[0])
	y, ok := set.Yarn()
	if !ok {
		c.para("  ", when+": not known, as no swatch says what it weighs or how much yarn is in it.")
		return
	}
	text := fmt.Sprintf("%s: %s; with %s more for %s %s", when, s.amount(y.Total), percent(y.Margin), marginCovers, s.amount(y.WithMargin))
	if y.Balls > 0 {
		text += ", " + s.ballCount(y)
	}
	c.para("  ", text+".")
}

// news says what the knitter should know now and did not have to know before, without the
// checks that fail.
func (c *changeWriter) news() {
	var said []string
	for _, p := range c.after.Pieces {
		old, _ := c.before.Piece(p.Name())
		for _, text := range p.Warnings {
			check := slices.ContainsFunc(c.after.Checks, func(check garment.Check) bool { return check.Says == text })
			if !check && !slices.Contains(old.Warnings, text) && !slices.Contains(said, text) {
				said = append(said, text)
			}
		}
	}
	if len(said) == 0 {
		return
	}
	c.heading("What is new to know")
	for _, text := range said {
		c.para("  - ", oneline.Of(text))
	}
}

// failing says which checks fail now; of a single piece nothing is checked.
func (c *changeWriter) failing() {
	if len(c.after.Checks) == 0 {
		return
	}
	c.heading("Checks that fail now")
	failed := c.after.Failed()
	if len(failed) == 0 {
		c.para("  ", fmt.Sprintf("None: all %d pass.", len(c.after.Checks)))
		return
	}
	for _, check := range failed {
		c.para("  - ", oneline.Of(check.Says))
	}
}
