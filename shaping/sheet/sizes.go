package sheet

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
)

// mostSideBySide is how many sizes stand side by side: a reader finds the fourth number in
// brackets, hardly the ninth.
const mostSideBySide = 6

// ErrSizes is returned for sizes that package sizes has not planned.
var ErrSizes = errors.New("sheet: no sizes, or some that were not planned: make them with package sizes")

// WriteSizes writes the counts of a garment in several sizes side by side, in the manner of
// printed patterns: "cast on 98 (106, 114, 124)". The sizes come first, what was filled in
// for missing measurements, and then each piece in short. It is an overview: [WriteSet]
// writes the instructions of one size. Of more than six sizes, as many as can be side by
// side come together, and then the next. It returns the first error of w, and [ErrSizes].
func WriteSizes(w io.Writer, r sizes.Range) error {
	if !planned(r) {
		return ErrSizes
	}
	p := &page{w: w}
	parts := sideBySide(r)
	for i, part := range parts {
		if i > 0 {
			p.blank()
			p.line("%s", strings.Repeat("=", width))
		}
		newSizesWriter(p, part).write()
	}
	newWriter(p, r.Sizes[0].Set.Pieces[0]).takeCare()
	return p.err
}

// planned reports whether all sizes have pieces that were made.
func planned(r sizes.Range) bool {
	return len(r.Sizes) > 0 && !slices.ContainsFunc(r.Sizes, func(s sizes.Size) bool {
		return !made(s.Set)
	})
}

// sideBySide parts the sizes into as few parts as can be, about equally many in each.
func sideBySide(r sizes.Range) []sizes.Range {
	n := len(r.Sizes)
	count := (n + mostSideBySide - 1) / mostSideBySide
	var parts []sizes.Range
	for i := range count {
		parts = append(parts, r.Slice(i*n/count, (i+1)*n/count))
	}
	return parts
}

// sizesWriter writes sizes that stand side by side.
type sizesWriter struct {
	*page
	sizes []sizes.Size
	style garment.Spec
	names []string
	one   *writer // of the first piece, for what is the same in all sizes
	hand  bool
}

func newSizesWriter(p *page, r sizes.Range) *sizesWriter {
	first := r.Sizes[0].Set.Pieces[0]
	return &sizesWriter{page: p, sizes: r.Sizes, style: r.Style.Spec, names: r.Names(), one: newWriter(p, first), hand: first.Work.Place == shaping.Hand}
}

func (s *sizesWriter) write() {
	title := oneline.Of(s.style.Title)
	if title == "" {
		title = "A garment"
	}
	s.line("%s", title)
	s.para("", s.sizesText())
	s.reading()
	s.measures()
	s.filledIn()
	s.lookAt()
	s.heading("Gauge")
	s.para("  ", gaugeText(s.sizes[0].Set.Pieces[0])+".")
	counts := sizes.Range{Sizes: s.sizes}.Counts()
	for _, piece := range counts {
		if piece.Name == shaping.LeftSleeve {
			continue // said with the right one
		}
		if piece.Name == shaping.LeftFront && !s.hand {
			s.heading(piece.Name)
			s.para("  ", "The reflection of the right front: every left is a right, the counter readings are the same.")
			continue
		}
		s.piece(piece)
	}
	s.bands()
}

// named returns the names of the sizes, each of which stays on one line.
func (s *sizesWriter) named() []string {
	var names []string
	for _, name := range s.names {
		names = append(names, strings.ReplaceAll(name, " ", noBreak))
	}
	return names
}

// sizesText names the sizes as their numbers stand.
func (s *sizesWriter) sizesText() string {
	if len(s.names) == 1 {
		return "Size " + s.named()[0]
	}
	return "Sizes " + s.bracketed(s.named())
}

// bracketed writes the first of several values and the others in brackets.
func (s *sizesWriter) bracketed(values []string) string {
	if len(values) == 1 {
		return values[0]
	}
	return fmt.Sprintf("%s (%s)", values[0], strings.Join(values[1:], ", "))
}

// beside writes values side by side, those that are alike once; they stay on one line.
func (s *sizesWriter) beside(values []string) string {
	if !slices.ContainsFunc(values, func(v string) bool { return v != values[0] }) {
		return values[0]
	}
	return strings.ReplaceAll(s.bracketed(values), " ", noBreak)
}

// dash stands for what a size does not have.
const dash = "-"

// numbers writes counts side by side.
func (s *sizesWriter) numbers(values []int) string { return s.written(values, "%d") }

func (s *sizesWriter) written(values []int, form string) string {
	var texts []string
	for _, n := range values {
		if n == sizes.None {
			texts = append(texts, dash)
		} else {
			texts = append(texts, fmt.Sprintf(form, n))
		}
	}
	return s.beside(texts)
}

// stitches writes counts of stitches side by side.
func (s *sizesWriter) stitches(values []int) string {
	if !slices.ContainsFunc(values, func(n int) bool { return n != 1 && n != sizes.None }) {
		return s.numbers(values) + " stitch"
	}
	return s.numbers(values) + " stitches"
}

// reading says how the page is read.
func (s *sizesWriter) reading() {
	s.heading("How to read this page")
	if names := s.named(); len(names) > 1 {
		those := fmt.Sprintf("those in brackets are of %s, in this order", and(names[1:]))
		if len(names) == 2 {
			those = "that in brackets of " + names[1]
		}
		s.para("  * ", fmt.Sprintf("The first number is that of size %s, %s. One without brackets is for all sizes. Ring the numbers of yours before you begin.", names[0], those))
		s.para("  * ", "A dash: the size has none. 0 times: it leaves the line out. The first step that a size has is worked at the place named first, whichever line it stands in.")
	}
	place := "A counter reading is that before the step"
	if s.hand {
		place = "A step is worked in the row named"
	}
	s.para("  * ", place+", at the edge that goes first and in the half that is worked first. At the other edge and in the other half what is bound off or held may come a row before or after.")
	s.para("  * ", "This is an overview: the instructions of each size say every row.")
}

// and lists names: "A, B and C".
func and(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// lengths writes a length of each size side by side, in the unit of the style; ok is false
// if no size has it.
func (s *sizesWriter) lengths(of func(sizes.Size) gauge.Length) (text string, ok bool) {
	unit := s.style.Units
	var texts []string
	for _, size := range s.sizes {
		l := of(size)
		if l.IsZero() {
			texts = append(texts, dash)
			continue
		}
		ok = true
		texts = append(texts, strings.TrimSuffix(s.one.length(l), " "+unit.String()))
	}
	return s.beside(texts) + noBreak + unit.String(), ok
}

// measures writes what the sizes fit and how large they become.
func (s *sizesWriter) measures() {
	s.heading("Measurements")
	for _, m := range sizeMeasures() {
		if text, ok := s.lengths(m.of); ok {
			s.para(fmt.Sprintf("  %-28s  ", m.name), text)
		}
	}
	s.yarn()
}

// yarn writes how much yarn the sizes take with the margin, in grams or in metres, if the
// style's swatch says what it took.
func (s *sizesWriter) yarn() {
	var uses []garment.YarnUse
	for _, size := range s.sizes {
		y, ok := size.Set.Yarn()
		if !ok {
			return
		}
		uses = append(uses, y.WithMargin)
	}
	column := s.one.columns(uses[0])[0]
	var amounts []string
	for _, use := range uses {
		amounts = append(amounts, column.of(use).RoundCeil(0).String())
	}
	s.para(fmt.Sprintf("  %-28s  ", "yarn, margin included"), s.beside(amounts)+noBreak+column.short)
}

// bands writes how many stitches and rows the bands have, those that all sizes have.
func (s *sizesWriter) bands() {
	var lines []string
	for _, band := range s.sizes[0].Set.Bands {
		var stitches, rows []int
		for _, size := range s.sizes {
			if b, ok := size.Set.Band(band.Name); ok {
				stitches, rows = append(stitches, b.Stitches()), append(rows, b.Rows)
			}
		}
		if len(stitches) == len(s.sizes) {
			lines = append(lines, fmt.Sprintf("%s: pick up %s stitches; %s rows.", oneline.Capital(band.Name), s.numbers(stitches), s.numbers(rows)))
		}
	}
	if len(lines) == 0 {
		return
	}
	s.heading("Bands")
	for _, text := range lines {
		s.para("  [ ] ", text)
	}
}

// sizeMeasure is a length of a size.
type sizeMeasure struct {
	name string
	of   func(sizes.Size) gauge.Length
}

// sizeMeasures are those that a knitter chooses her size by.
func sizeMeasures() []sizeMeasure {
	knitted := func(piece, name string) func(sizes.Size) gauge.Length {
		return func(size sizes.Size) gauge.Length {
			p, _ := size.Set.Piece(piece)
			return (&writer{piece: p}).knitted(name)
		}
	}
	return []sizeMeasure{
		{"to fit a chest of", func(size sizes.Size) gauge.Length { return size.Body.Chest }},
		{"finished, round the chest", func(size sizes.Size) gauge.Length {
			round := gauge.Length{}
			for _, name := range []string{shaping.Front, shaping.LeftFront, shaping.RightFront, shaping.Back} {
				round = round.Add(knitted(name, "width")(size))
			}
			if front, opened := size.Set.Piece(shaping.RightFront); opened {
				round = round.Add(front.Gauge.Width(front.Widths.Overlap)) // what the bands fill
			}
			return round
		}},
		{"length, hem to neck point", knitted(shaping.Back, "height")},
		{"length, hem to underarm", knitted(shaping.Back, "length")},
		{"armhole depth", knitted(shaping.Back, "armhole")},
		{"neck width, without a band", knitted(shaping.Back, "neckWidth")},
		{"each shoulder", knitted(shaping.Back, "shoulder")},
		{"sleeve, cuff to underarm", knitted(shaping.RightSleeve, "length")},
		{"sleeve, round the upper arm", knitted(shaping.RightSleeve, "width")},
		{"sleeve, round the cuff", knitted(shaping.RightSleeve, "cuff")},
	}
}

// filledIn writes what stands for measurements that are missing, each rule once.
func (s *sizesWriter) filledIn() {
	var rules []sizes.Filled
	for _, size := range s.sizes {
		for _, f := range size.Filled {
			if !slices.ContainsFunc(rules, func(r sizes.Filled) bool { return sameRule(r, f) }) {
				rules = append(rules, f)
			}
		}
	}
	if len(rules) == 0 {
		return
	}
	s.heading("Not measured")
	s.para("  ", "These measurements were not given. What stands for them follows from a rule and fits no one in particular: measure, if you can.")
	for _, rule := range rules {
		s.para("  * ", s.rule(rule))
	}
}

func sameRule(a, b sizes.Filled) bool {
	return a.Key == b.Key && a.Gives == b.Gives && a.Rule == b.Rule
}

// rule says one rule and the sizes that it was used for.
func (s *sizesWriter) rule(rule sizes.Filled) string {
	used := *s
	used.sizes, used.names = nil, nil
	for _, size := range s.sizes {
		if slices.ContainsFunc(size.Filled, func(f sizes.Filled) bool { return sameRule(f, rule) }) {
			used.sizes, used.names = append(used.sizes, size), append(used.names, size.Body.Name)
		}
	}
	text, _ := used.lengths(func(size sizes.Size) gauge.Length {
		i := slices.IndexFunc(size.Filled, func(f sizes.Filled) bool { return sameRule(f, rule) })
		return size.Filled[i].Length
	})
	of := ""
	if len(used.sizes) < len(s.sizes) {
		of = fmt.Sprintf(" (%s)", and(used.named()))
	}
	key := keyWords(rule.Key)
	switch {
	case rule.Gives == "":
		return fmt.Sprintf("%s%s: %s.", oneline.Capital(key), of, rule.Rule)
	case key == "":
		return fmt.Sprintf("%s%s: %s, %s.", oneline.Capital(rule.Gives), of, text, rule.Rule)
	}
	return fmt.Sprintf("%s%s: %s %s, %s.", oneline.Capital(key), of, rule.Gives, text, rule.Rule)
}

// keyWords returns the name of a measurement for people.
func keyWords(key string) string {
	switch key {
	case "upperArm":
		return "upper arm"
	case "fall":
		return "fall of the shoulders"
	}
	return key
}

// lookAt writes the checks that failed.
func (s *sizesWriter) lookAt() {
	var says []string
	for _, size := range s.sizes {
		for _, c := range size.Set.Failed() {
			says = append(says, fmt.Sprintf("Size %s: %s", size.Body.Name, oneline.Of(c.Says)))
		}
	}
	if len(says) == 0 {
		return
	}
	s.heading("Look at this")
	for _, text := range says {
		s.para("  * ", text)
	}
}
