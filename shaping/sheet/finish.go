package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func (s *writer) account() {
	s.heading("Every stitch")
	s.line("  %v.", s.work.Ledger)
}

func (s *writer) finish() {
	s.heading("Finish")
	s.para("  ", "Wash, and block to the knitted sizes:")
	for _, size := range s.piece.Sizes {
		switch size.Name {
		case "drop", "inset", "capEdge": // no lengths to pin out
		default:
			s.line("    %-21s %10s", s.sizeName(size), s.length(size.Knitted))
		}
	}
	if s.piece.Spec.Start.Edge == garment.WasteEdge {
		s.para("  ", s.voice.lowerEdge())
	}
	if s.halved() {
		s.joinShoulders()
	} else {
		s.joinSleeve()
	}
}

// joiningOrder says in which order this piece is joined to the others. Common practice, no source.
func (s *writer) joiningOrder() {
	if s.halved() {
		s.para("  ", "Joining order: one shoulder, the neckband, the other shoulder and the neckband's ends, the sleeves, the sides.")
	}
}

// takeCare writes the dangers of tools and of the finished piece.
func (s *writer) takeCare() {
	s.heading("Take care")
	for _, caution := range s.voice.cautions() {
		s.para("  ", caution)
	}
	s.para("  ", "Steam burns, and a hot iron flattens acrylic for good: try it on the swatch, and hold the iron above the fabric.")
	if s.halved() {
		s.para("  ", "No cords at the neck of children's garments, no loose buttons for infants: follow local product-safety rules.")
	}
}

// joinShoulders says how a front or a back is joined to the other pieces.
func (s *writer) joinShoulders() {
	s.para("  ", s.neckband())
	s.joinUnderarms("the sleeves")
	s.para("  ", fmt.Sprintf("Worn, this piece's right half lies on the wearer's %v: it joins the left half of a %s %s.",
		s.lies(shaping.Right), s.counterpart(), s.voice.seen()))
}

// joinUnderarms says what becomes of underarms that stayed live.
func (s *writer) joinUnderarms(others string) {
	if len(s.underarmHolds(shaping.Left)) > 0 {
		s.para("  ", fmt.Sprintf("Join the live stitches of the underarms to those of %s, one for one, each wrap together with its stitch.", others))
	}
}

// joinSleeve says how a sleeve is set in: flat, before the sides are closed. Common
// practice, no source.
func (s *writer) joinSleeve() {
	top := "its ends to the underarms"
	if s.hasCap() {
		top = "its underarms, where stitches were first taken off at once, to those of front and back, ease the cap in between"
	}
	catching := ""
	if s.uses()[shaping.DoWaste] {
		catching = ", catching every live stitch"
	}
	s.para("  ", fmt.Sprintf("Set the sleeve in when both shoulders are joined and before the sides are: pin the middle of its top to the shoulder seam and %s, and join it%s.", top, catching))
	s.joinUnderarms("front and back")
	s.para("  ", "Then close the sleeve and the side in one seam, from the cuff to the hem.")
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
	text := strings.Join(from, ", and ")
	if s.isBack() {
		return fmt.Sprintf("Along the back the neckband takes up %s.", text)
	}
	return fmt.Sprintf("The neckband takes up %s.", text)
}

// neckBoundOff returns the stitches bound off at the neck.
func (s *writer) neckBoundOff() int {
	bound := s.separate()
	for _, p := range s.work.Panels[1:] {
		bound -= s.neckSteps(p.Name).Of(shaping.BindOff).Total()
	}
	return bound
}
