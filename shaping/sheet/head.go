package sheet

import (
	"fmt"
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
	s.line("%s, knitted on the bed with the purl side facing you. Left and right are those of the bed.", capital(s.work.Name))
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
	w, h := s.piece.Widths, s.piece.Heights
	needles := s.work.Panels[0].Needles
	bed := s.piece.Spec.Setup.BedNeedles()
	s.heading("Needed")
	s.para("  ", fmt.Sprintf("Gauge: %s, washed and rested.", gaugeText(s.piece)))
	s.para("  ", fmt.Sprintf("Cast on %d stitches: needles %v; the bed has L%d-R%d.", w.Body, needles, bed/2, bed/2))
	if w.Seam > 0 {
		s.para("  ", fmt.Sprintf("They contain %s at each side that the seam will take.", stitchesText(w.Seam)))
	}
	s.para("  ", fmt.Sprintf("The neck point is at row %d; %d rows are knitted in all, as both halves count.", h.Top(), s.piece.Cloth.Rows()))
	s.para("  ", "Waste yarn, ravel cord, a transfer tool, weights. Row counter.")
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
			continue // the reflection of the one before
		}
		if len(e.Schedule) == 0 {
			continue
		}
		what := stitchesText(e.Stitches)
		if bound := s.piece.Widths.BindOff; e.Name == "armhole" && bound > 0 {
			what = fmt.Sprintf("%d bound off, then %d decreased,", bound, e.Stitches)
		}
		s.para("  "+e.Name+": ", fmt.Sprintf("%s at each side. %s. Between the steps and the drawn line lie %s; whole stitches cannot do without %s.",
			what, capital(spoken(e)), s.area(e.Area), s.area(e.Floor)))
	}
	if len(s.piece.Warnings) > 0 {
		s.heading("Before you start")
		for _, warning := range s.piece.Warnings {
			s.para("  ", clean(warning))
		}
	}
}

// spoken says the schedule of an edge from its first counter reading on.
func spoken(e garment.Edge) string {
	runs := e.Schedule.Shifted(e.FirstRow - 1).Phrases()
	var parts []string
	var short []string
	for i, run := range runs {
		if i == 0 && run.Times == 1 {
			run.Every = 0
		}
		parts = append(parts, strings.ReplaceAll(run.String(), "-", ""))
		if run.Every > 0 {
			short = append(short, run.Shorthand())
		}
	}
	text := fmt.Sprintf("at counter %03d: %s", runs[0].From-1, strings.Join(parts, "; "))
	if len(short) > 0 {
		text += " (rows-stitches-times: " + strings.Join(short, ", ") + ")"
	}
	return text
}

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

func (s *writer) key() {
	s.heading("Words")
	for _, k := range [][2]string{
		{"counter", "what the row counter shows; 000 before the first row of main yarn"},
		{"L3, R3", "the third needle left or right of the middle; there is no needle 0"},
		{"hold", "needles pushed out so that the carriage, set to hold, passes them by; their stitches stay on them"},
		{"wrap", "lay the yarn under the named held needle before knitting back, or a hole stays"},
		{"bind off", "with the working yarn from the carriage's end; hang the last loop on the next needle in work, push the emptied needles out of work"},
		{"in work", "the needles that knitted the last row, and how many they are"},
		{"[ ]", "a box to tick when the line is done; several boxes: once for each time"},
	} {
		s.para(fmt.Sprintf("  %-8s ", k[0]), k[1])
	}
	s.para("  ", "Every line begins with what the counter shows and where the carriage stands before it.")
}

func (s *writer) start() {
	first := s.work.Rows[0]
	needles := s.work.Panels[0].Needles
	s.heading("Start")
	if s.piece.Spec.Start.Edge == garment.Closed {
		s.para("  [ ] ", fmt.Sprintf("Cast on %v (%d stitches) in main yarn with a closed edge, so that the carriage then stands at the %v. The cast on is not a row. Counter to 000.",
			needles, needles.Len(), first.From))
	} else {
		s.para("  [ ] ", fmt.Sprintf("Cast on %v (%d stitches) in waste yarn and knit 8 rows or more that end at the %v. Knit one row of ravel cord to the %v. Change to main yarn, leave a tail of 20 cm. Counter to 000, carriage at the %v.",
			needles, needles.Len(), first.From.Opposite(), first.From, first.From))
	}
	s.para("  [ ] ", "Hang weights under the stitches and move them up every 10 rows or so; when stitches go on hold, move their weights to those in work beside the turn. Count rows; do not measure on the bed.")
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
		s.para("  ", "The lower edge is still open on the ravel cord: sew it down as a hem, knit a band onto it or bind it off, then pull the cord out.")
	}
	s.para("  ", "For the neckband, live stitches are picked up one for one and the upright edges beside them by their length.")
	s.para("  ", "Worn, this piece's right half lies on the wearer's right: it joins the left half of a back knitted with the purl side facing you.")
	s.para("  ", "Joining order: one shoulder, the neckband, the other shoulder and the neckband's ends, the sleeves, the sides.")
	s.heading("Take care")
	s.para("  ", "Latch needles and transfer tools are sharp.")
	s.para("  ", "Steam burns, and a hot iron flattens acrylic for good: try it on the swatch, and hold the iron above the fabric.")
	s.para("  ", "No cords at the neck of children's garments, no loose buttons for infants: follow local product-safety rules.")
}
