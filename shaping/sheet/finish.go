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
		if size.Name != "drop" && size.Name != "inset" { // no lengths to pin out
			s.line("    %-21s %10s", s.sizeName(size), s.length(size.Knitted))
		}
	}
	if s.piece.Spec.Start.Edge == garment.WasteEdge {
		s.para("  ", s.voice.lowerEdge())
	}
	s.para("  ", s.neckband())
	if len(s.underarmHolds(shaping.Left)) > 0 {
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
		bound -= s.neckSteps(p.Name).Of(shaping.BindOff).Total()
	}
	return bound
}
