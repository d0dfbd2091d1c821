package sheet

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
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
		return len(s.Set.Pieces) == 0 || slices.ContainsFunc(s.Set.Pieces, func(p garment.Piece) bool { return !made(p) })
	})
}

// sideBySide parts the sizes into as few parts as can be, about equally many in each.
func sideBySide(r sizes.Range) []sizes.Range {
	n := len(r.Sizes)
	count := (n + mostSideBySide - 1) / mostSideBySide
	var parts []sizes.Range
	for i := range count {
		parts = append(parts, r.Part(i*n/count, (i+1)*n/count))
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
	title := clean(s.style.Title)
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
			lines = append(lines, fmt.Sprintf("%s: pick up %s stitches; %s rows.", capital(band.Name), s.numbers(stitches), s.numbers(rows)))
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
		return fmt.Sprintf("%s%s: %s.", capital(key), of, rule.Rule)
	case key == "":
		return fmt.Sprintf("%s%s: %s, %s.", capital(rule.Gives), of, text, rule.Rule)
	}
	return fmt.Sprintf("%s%s: %s %s, %s.", capital(key), of, rule.Gives, text, rule.Rule)
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
			says = append(says, fmt.Sprintf("Size %s: %s", size.Body.Name, clean(c.Says)))
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

// words says the steps of an edge line by line, for all sizes or for some at a time.
func (s *sizesWriter) words(e sizes.Edge) []string {
	var text []string
	for _, w := range e.Words {
		part := *s
		part.sizes, part.names = s.sizes[w.From:w.To], s.names[w.From:w.To]
		if len(part.sizes) < len(s.sizes) {
			text = append(text, part.sizesText()+":")
		}
		text = append(text, part.said(w)...)
	}
	return text
}

// said says the steps of an edge for the sizes of the words, line by line.
func (s *sizesWriter) said(w sizes.Words) []string {
	var text []string
	for i, l := range w.Lines {
		when := "then"
		if i == 0 {
			when = s.at(w.Rows) + ":"
		}
		text = append(text, fmt.Sprintf("%s %s %s", when, doing(l.Method, slices.Max(l.Stitches)), s.sizesLine(l)))
	}
	return text
}

// doing says what becomes of stitches.
func doing(m shaping.Method, stitches int) string {
	switch {
	case m == shaping.Hold:
		return "hold"
	case m == shaping.BindOff:
		return "bind off"
	case m == shaping.CastOn:
		return "cast on"
	case stitches > 0:
		return "increase"
	}
	return "decrease"
}

// sizesLine says a run of equal steps.
func (s *sizesWriter) sizesLine(l sizes.Line) string {
	text := s.stitches(zeroNone(l.Stitches))
	once := !slices.ContainsFunc(l.Times, func(n int) bool { return n != 1 })
	switch distance := slices.Max(l.Every); {
	case distance == 0 && once:
		return text + " once"
	case distance == 0:
		return fmt.Sprintf("%s, %s times", text, s.numbers(l.Times))
	case once && slices.Max(l.Then) == 0:
		return fmt.Sprintf("%s %s rows later", text, s.numbers(zeroNone(l.Every)))
	case slices.Max(l.Then) > 0:
		return fmt.Sprintf("%s every %s and %s row in turn, %s times", text, s.ordinals(l.Every), s.ordinals(l.Then), s.numbers(l.Times))
	}
	return fmt.Sprintf("%s every %s row, %s times", text, s.ordinals(l.Every), s.numbers(l.Times))
}

// zeroNone returns numbers without their signs; 0, as of a size that leaves a line out, is
// none.
func zeroNone(values []int) []int {
	list := make([]int, len(values))
	for i, n := range values {
		list[i] = noneIfZero(max(n, -n))
	}
	return list
}

func noneIfZero(n int) int {
	if n == 0 {
		return sizes.None
	}
	return n
}

// ordinals writes "2nd (4th, -)".
func (s *sizesWriter) ordinals(values []int) string {
	var texts []string
	for _, n := range values {
		if n == 0 {
			texts = append(texts, dash)
		} else {
			texts = append(texts, plural.Ordinal(n))
		}
	}
	return s.beside(texts)
}
