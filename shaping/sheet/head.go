package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func (s *writer) head() {
	title := clean(s.piece.Spec.Title)
	if title == "" {
		title = "A garment"
	}
	s.line("%s", title)
	s.para("", capital(s.work.Name)+", "+s.voice.view())
}

// clean makes a title fit for one line of print.
func clean(text string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return ' '
		}
		return r
	}, text)), " ")
}

// length prints a length in the spec's unit.
func (s *writer) length(l gauge.Length) string {
	switch s.piece.Spec.Units {
	case gauge.Inch:
		return l.Format(gauge.Inch, 2)
	case gauge.Millimetre:
		return l.Format(gauge.Millimetre, 0)
	}
	return l.Format(gauge.Centimetre, 1)
}

// fine prints a length to a tenth of a millimetre or a hundredth of an inch, so
// that a difference is the difference of what is printed beside it.
func (s *writer) fine(l gauge.Length) string {
	switch s.piece.Spec.Units {
	case gauge.Inch:
		return l.Format(gauge.Inch, 2)
	case gauge.Millimetre:
		return l.Format(gauge.Millimetre, 1)
	}
	return l.Format(gauge.Centimetre, 2)
}

// area prints an area given in cm2 in the spec's unit.
func (s *writer) area(cm2 float64) string {
	const cm2InSquareInch = 2.54 * 2.54
	if s.piece.Spec.Units == gauge.Inch {
		return fmt.Sprintf("%.2f square in", cm2/cm2InSquareInch)
	}
	return fmt.Sprintf("%.1f cm2", cm2)
}

// signed prints a difference with its sign.
func (s *writer) signed(l gauge.Length) string {
	text := s.fine(l)
	if l.Sign() > 0 && strings.Trim(text, "0. cmin") != "" {
		return "+" + text
	}
	return text
}

func (s *writer) sizes() {
	s.heading("Sizes")
	s.line("  Finished and flat, without seam stitches. The last column is what counting a swatch to half")
	s.line("  a stitch and half a row leaves uncertain. The armhole ends at the shoulder's outer end.")
	s.blank()
	s.line("  %-21s %10s %10s %10s   %-14s %s", "", "asked", "knitted", "off", "in whole", "give or take")
	for _, size := range s.piece.Sizes {
		s.line("  %-21s %10s %10s %10s   %-14s %s", s.sizeName(size), s.fine(size.Asked), s.fine(size.Knitted),
			s.signed(size.Off()), fmt.Sprintf("%d %s", size.Count, size.Counted), s.fine(size.PlusMinus))
	}
	for _, size := range s.piece.Sizes {
		if size.Why != "" {
			s.para("  * ", fmt.Sprintf("%s, %s off: %s.", s.sizeName(size), s.signed(size.Off()), size.Why))
		}
	}
}

// sizeName returns the name of a length for people.
func (s *writer) sizeName(size garment.Size) string {
	switch size.Name {
	case "length":
		return "cast on to underarm"
	case "armhole":
		return "armhole depth"
	case "neckWidth":
		return "neck width"
	case "neckDepth":
		return "neck depth"
	case "shoulder":
		return "each shoulder"
	case "drop":
		return "shoulder drop"
	case "height":
		return "whole height"
	case "inset":
		return "armhole inset, each"
	}
	return size.Name
}

func (s *writer) needs() {
	s.heading("Needed")
	s.para("  ", fmt.Sprintf("Gauge: %s, washed and rested.", gaugeText(s.piece)))
	materials := s.voice.materials()
	s.para("  ", materials[0])
	if seam := s.piece.Widths.Seam; seam > 0 {
		s.para("  ", fmt.Sprintf("They contain %s at each side that the seam will take.", stitchesText(seam)))
	}
	s.para("  ", fmt.Sprintf("The piece is %d rows high where neck and shoulder meet; %d rows are knitted in all, as both halves count.", s.piece.Heights.Top(), s.piece.Cloth.Rows()))
	for _, m := range materials[1:] {
		s.para("  ", m)
	}
}

func gaugeText(p garment.Piece) string {
	text := p.Gauge.String()
	if p.Spec.Units == gauge.Inch {
		text = p.Gauge.Format(gauge.Inch, 2)
	}
	if p.Spec.Swatch != nil && p.Spec.Swatch.Tension != "" {
		text += ", tension " + clean(p.Spec.Swatch.Tension)
	}
	return text
}

func (s *writer) notes() {
	s.heading("Shapes in words")
	for _, e := range s.piece.Edges {
		if e.Panel == shaping.LeftHalf || (e.Panel == shaping.Body && e.Side == shaping.Left) {
			continue // said with the one at the right
		}
		steps, other := s.steps(e), s.steps(s.opposite(e))
		if len(steps) == 0 {
			s.para("  "+e.Name+": ", "upright, without steps.")
			continue
		}
		s.para("  "+e.Name+": ", fmt.Sprintf("%s at each side. %s. Off the drawn line lie %s of fabric; the least that whole stitches allow is %s.",
			stitchesText(-steps.Total()), capital(s.spoken(e.Name, steps, other[0].Row)), s.area(e.Area), s.area(e.Floor)))
	}
	s.heading("Before you start")
	for _, warning := range s.piece.Warnings {
		s.para("  ", clean(warning))
	}
	s.para("  ", "The neck of front and back together, with its band, must stretch over the head: measure before you cast on, or plan an opening at a shoulder.")
}

// way says what a method does with stitches.
func way(m shaping.Method) string {
	switch m {
	case shaping.Hold:
		return "on hold"
	case shaping.BindOff:
		return "bound off"
	case shaping.CastOn:
		return "cast on"
	}
	return "decreased"
}

// steps returns the steps of a drawn edge in rows of the piece, with those taken off at
// once at an underarm.
func (s *writer) steps(e garment.Edge) shaping.Schedule {
	steps := e.Schedule.Shifted(e.FirstRow - 1)
	if e.Name == garment.ArmholeEdge && s.piece.Widths.BindOff > 0 {
		steps = append(shaping.Schedule{s.firstStep(e.Side)}, steps...)
	}
	return steps
}

// opposite returns the same edge at the other side.
func (s *writer) opposite(e garment.Edge) garment.Edge {
	for _, other := range s.piece.Edges {
		if other.Name == e.Name && other.Side != e.Side {
			return other
		}
	}
	return e
}

// mostShort is how many phrases the shorthand is used for.
const mostShort = 6

// spoken says the steps of an edge at the right of the piece; other is the row of the
// first one at the left.
func (s *writer) spoken(name string, steps shaping.Schedule, other int) string {
	var short []string
	var before shaping.Method
	text, begin, at := "", "", 0
	for i, run := range steps.Phrases() {
		method := steps[at].Method
		at += run.Times
		switch {
		case i == 0:
			if run.Times == 1 {
				begin = fmt.Sprintf(" after the first %d", -run.Stitches)
				run.Every = 0
			}
			text = "at " + s.voice.reading(run.From)
			if other != run.From {
				left := "at the left edge"
				if name == garment.NeckEdge {
					left = "in the left half"
				}
				text += fmt.Sprintf(" (%s %s)", left, s.voice.reading(other))
			}
			text += fmt.Sprintf(" %s: ", way(method))
		case method != before:
			text += fmt.Sprintf("; %s: ", way(method))
		default:
			text += "; "
		}
		if run.Every > 0 {
			short = append(short, run.Shorthand())
		}
		before = method
		text += strings.ReplaceAll(run.String(), "-", "")
	}
	if len(short) > 0 && len(short) <= mostShort {
		text += fmt.Sprintf(" (rows-stitches-times%s: %s)", begin, strings.Join(short, ", "))
	}
	return text
}

// firstStep returns the first step at an outer edge, in the body or in a half.
func (s *writer) firstStep(side shaping.Side) shaping.Step {
	for _, p := range s.work.Panels {
		if steps := p.Steps(side); len(steps) > 0 && (p.Parent == "" || s.outer(p.Name) == side) {
			return steps[0]
		}
	}
	return shaping.Step{}
}

// key writes the words that need a meaning, of short forms only those that the order
// of work uses.
func (s *writer) key(work []byte) {
	s.heading("Words")
	text := strings.ToLower(string(work))
	for _, k := range s.voice.words() {
		switch {
		case k[0] == "":
			s.para("  ", k[1])
		default:
			used := mayBeUnused(k[0])
			if used == nil || slices.ContainsFunc(used, func(word string) bool { return usesWord(text, word) }) {
				s.para(fmt.Sprintf("  %-8s  ", k[0]), k[1])
			}
		}
	}
}

// shoulderTail is how long a tail is left at a live shoulder.
const shoulderTail = "45 cm if the shoulders are joined with it, else 20 cm"

// rolls warns of a closed edge without a band.
func (s *writer) rolls() string {
	if s.piece.Heights.Band > 0 {
		return ""
	}
	return " Plain knitting rolls at such an edge: plan a band or a hem unless you like it so."
}

// bandText says what the first rows are; an odd number of them ends at the other side
// than an even one.
func (s *writer) bandText() string {
	rows, parity := s.piece.Heights.Band, "even"
	if rows%2 == 1 {
		parity = "odd"
	}
	which := "row is the band and counts in the length: knit it"
	if rows > 1 {
		which = fmt.Sprintf("%d rows are the band and count in the length: knit them", rows)
	}
	return fmt.Sprintf("The first %s in rib or another stitch that does not roll. If its rows are higher or lower than the gauge's, count in a washed swatch of it how many make %s, knit that many, an %s number,",
		which, s.length(s.piece.Gauge.Height(rows)), parity)
}

// neckband says what a neckband is picked up from.
func (s *writer) neckband() string {
	var from []string
	if live := s.liveNeck(); live > 0 {
		text := fmt.Sprintf("the %d live stitches one for one", live)
		if live == 1 {
			text = "the live stitch in the middle"
		}
		if s.neckHeld(shaping.RightHalf) > 0 {
			text += ", each wrap together with its stitch"
		}
		from = append(from, text)
	}
	if bound := s.neckBoundOff(); bound > 0 {
		from = append(from, fmt.Sprintf("a stitch for each of the %d bound off", bound))
	}
	from = append(from, "the edges between them and the shoulders by their length")
	return fmt.Sprintf("The neckband takes up %s.", strings.Join(from, ", and "))
}

// neckBoundOff returns the stitches bound off at the neck.
func (s *writer) neckBoundOff() int {
	bound := s.separate()
	for _, p := range s.work.Panels[1:] {
		for _, step := range p.Steps(s.outer(p.Name).Opposite()) {
			if step.Method == shaping.BindOff {
				bound -= step.Stitches
			}
		}
	}
	return bound
}

// mayBeUnused returns how a word stands in the order of work if it is explained only
// where it is used, in small letters.
func mayBeUnused(word string) (used []string) {
	switch word {
	case "k2tog", "k3tog", "p2tog", "p3tog", "ssk", "sssk", "ssp", "sssp", "w&t", "BO", "even", "hold", "wrap", "bind off":
		return []string{strings.ToLower(word)}
	case "back":
		return []string{"k back", "p back"}
	case "turn":
		return []string{"the turn"}
	}
	return nil
}

// usesWord reports whether the text, in small letters, has the word between others.
func usesWord(text, word string) bool {
	const partOfWord = "abcdefghijklmnopqrstuvwxyz&"
	for at := 0; ; {
		i := strings.Index(text[at:], word)
		if i < 0 {
			return false
		}
		before, after := text[:at+i], text[at+i+len(word):]
		if !strings.ContainsAny(before[max(len(before)-1, 0):], partOfWord) && !strings.ContainsAny(after[:min(len(after), 1)], partOfWord) {
			return true
		}
		at += i + len(word)
	}
}

func (s *writer) start() {
	s.heading("Start")
	for _, text := range s.voice.start() {
		s.para("  [ ] ", text)
	}
}

func (s *writer) account() {
	s.heading("Every stitch")
	s.line("  %v.", s.work.Ledger)
}

func (s *writer) finish() {
	s.heading("Finish")
	s.para("  ", "Wash, and block to the knitted sizes:")
	for _, size := range s.piece.Sizes {
		if size.Name != "drop" && size.Name != "inset" { // no lengths to pin out
			s.line("    %-21s %10s", s.sizeName(size), s.length(size.Knitted))
		}
	}
	if s.piece.Spec.Start.Edge == garment.WasteEdge {
		s.para("  ", s.voice.lowerEdge())
	}
	s.para("  ", s.neckband())
	if s.lastUnderarmHold(shaping.Left) > 0 {
		s.para("  ", "Join the live stitches of the underarms to those of the sleeves, one for one, each wrap together with its stitch.")
	}
	s.para("  ", s.voice.worn())
	s.para("  ", "Joining order: one shoulder, the neckband, the other shoulder and the neckband's ends, the sleeves, the sides.")
	s.heading("Take care")
	for _, caution := range s.voice.cautions() {
		s.para("  ", caution)
	}
	s.para("  ", "Steam burns, and a hot iron flattens acrylic for good: try it on the swatch, and hold the iron above the fabric.")
	s.para("  ", "No cords at the neck of children's garments, no loose buttons for infants: follow local product-safety rules.")
}
