package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// sizeNames are the names of lengths for people.
var sizeNames = map[string]string{
	"width": "width", "length": "cast on to underarm", "armhole": "armhole depth",
	"neckWidth": "neck width", "neckDepth": "neck depth", "shoulder": "each shoulder",
	"drop": "shoulder drop", "inset": "armhole inset, each",
}

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
	if s.piece.Spec.Units == gauge.Inch {
		return l.Format(gauge.Inch, 2)
	}
	return l.Format(gauge.Centimetre, 1)
}

// fine prints a length to a tenth of a millimetre or a hundredth of an inch, so
// that a difference is the difference of what is printed beside it.
func (s *writer) fine(l gauge.Length) string {
	if s.piece.Spec.Units == gauge.Inch {
		return l.Format(gauge.Inch, 2)
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
	s.line("  a stitch and half a row leaves uncertain.")
	s.blank()
	s.line("  %-21s %10s %10s %10s   %-14s %s", "", "asked", "knitted", "off", "in whole", "give or take")
	for _, size := range s.piece.Sizes {
		s.line("  %-21s %10s %10s %10s   %-14s %s", s.sizeName(size), s.fine(size.Asked), s.fine(size.Knitted),
			s.signed(size.Off()), fmt.Sprintf("%d %s", size.Count, size.Unit), s.fine(size.PlusMinus))
	}
	for _, size := range s.piece.Sizes {
		if size.Why != "" {
			s.para("  * ", fmt.Sprintf("%s, %s off: %s.", s.sizeName(size), s.signed(size.Off()), size.Why))
		}
	}
}

func (s *writer) sizeName(size garment.Size) string {
	if name, ok := sizeNames[size.Name]; ok {
		return name
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
	s.para("  ", fmt.Sprintf("The neck point is at row %d; %d rows are knitted in all, as both halves count.", s.piece.Heights.Top(), s.piece.Cloth.Rows()))
	for _, m := range materials[1:] {
		s.para("  ", m)
	}
}

func gaugeText(p garment.Piece) string {
	text := p.Gauge.String()
	if p.Spec.Swatch != nil && p.Spec.Swatch.Tension != "" {
		text += ", tension " + clean(p.Spec.Swatch.Tension)
	}
	return text
}

func (s *writer) notes() {
	s.heading("Shapes in words")
	for _, e := range s.piece.Edges {
		if e.Panel == shaping.LeftHalf || (e.Panel == shaping.Body && e.Side == shaping.Left) {
			continue // as the one before, or a row later
		}
		atOnce := 0
		if e.Name == "armhole" {
			atOnce = s.piece.Widths.BindOff
		}
		if len(e.Schedule) == 0 {
			s.para("  "+e.Name+": ", "upright, without steps.")
			continue
		}
		s.para("  "+e.Name+": ", fmt.Sprintf("%s at each side. %s. Between the steps and the drawn line lie %s; whole stitches cannot do without %s.",
			stitchesText(e.Stitches+atOnce), capital(s.spoken(e, atOnce)), s.area(e.Area), s.area(e.Floor)))
	}
	if len(s.piece.Warnings) > 0 {
		s.heading("Before you start")
		for _, warning := range s.piece.Warnings {
			s.para("  ", clean(warning))
		}
	}
}

// wayWords say what a method does with stitches.
var wayWords = map[shaping.Method]string{
	shaping.Hold: "on hold", shaping.BindOff: "bound off", shaping.Fashioned: "decreased", shaping.CastOn: "cast on",
}

// spoken says the schedule of an edge from its first step on, after atOnce stitches
// taken off at once.
func (s *writer) spoken(e garment.Edge, atOnce int) string {
	steps := e.Schedule.Shifted(e.FirstRow - 1)
	if atOnce > 0 {
		steps = append(shaping.Schedule{s.firstStep(e.Side)}, steps...)
	}
	var short []string
	var way shaping.Method
	text, at := "", 0
	for i, run := range steps.Phrases() {
		method := steps[at].Method
		at += run.Times
		if run.Times > 1 {
			short = append(short, run.Shorthand())
		}
		switch {
		case i == 0:
			if run.Times == 1 {
				run.Every = 0
			}
			text = fmt.Sprintf("at %s %s: ", s.voice.reading(run.From), wayWords[method])
		case method != way:
			text += fmt.Sprintf("; %s: ", wayWords[method])
		default:
			text += "; "
		}
		way = method
		text += strings.ReplaceAll(run.String(), "-", "")
	}
	if len(short) > 0 {
		text += " (rows-stitches-times: " + strings.Join(short, ", ") + ")"
	}
	return text
}

// firstStep returns the first step at an outer edge, in the body or in a half.
func (s *writer) firstStep(side shaping.Side) shaping.Step {
	for _, p := range s.work.Panels {
		if steps := p.At(side); len(steps) > 0 && (p.Parent == "" || s.outer(p.Name) == side) {
			return steps[0]
		}
	}
	return shaping.Step{}
}

// key writes the words that need a meaning, of short forms only those that the order
// of work uses.
func (s *writer) key(work []byte) {
	s.heading("Words")
	for _, k := range s.voice.words() {
		switch {
		case k[0] == "":
			s.para("  ", k[1])
		case !shortForm.MatchString(k[0]) || usesWord(work, k[0]):
			s.para(fmt.Sprintf("  %-8s  ", k[0]), k[1])
		}
	}
}

// shortForm matches the short forms that may go unused.
var shortForm = regexp.MustCompile(`^(k2tog|k3tog|p2tog|p3tog|ssk|sssk|ssp|sssp|w&t|BO|even|back)$`)

// usesWord reports whether the text has the word between others.
func usesWord(text []byte, word string) bool {
	return regexp.MustCompile(`(^|[^a-zA-Z&])` + regexp.QuoteMeta(word) + `($|[^a-zA-Z&])`).Match(text)
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
		s.line("    %-21s %10s", s.sizeName(size), s.length(size.Knitted))
	}
	if s.piece.Spec.Start.Edge == garment.OnWaste {
		s.para("  ", s.voice.lowerEdge())
	}
	s.para("  ", "For the neckband, live stitches are picked up one for one and the upright edges beside them by their length.")
	s.para("  ", s.voice.worn())
	s.para("  ", "Joining order: one shoulder, the neckband, the other shoulder and the neckband's ends, the sleeves, the sides.")
	s.heading("Take care")
	for _, caution := range s.voice.cautions() {
		s.para("  ", caution)
	}
	s.para("  ", "Steam burns, and a hot iron flattens acrylic for good: try it on the swatch, and hold the iron above the fabric.")
	s.para("  ", "No cords at the neck of children's garments, no loose buttons for infants: follow local product-safety rules.")
}
