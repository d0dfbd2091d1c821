package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func (s *writer) account() {
	s.heading("Every stitch")
	s.line("  %v.", s.work.Ledger)
}

func (s *writer) finish() {
	s.heading("Finish")
	s.say(notes(s.beforeBlocking()))
	for _, size := range s.toBlock() {
		s.line("    %-21s %10s", size[0], size[1])
	}
	s.say(notes(s.whenBlocked()))
}

// beforeBlocking says what is done up to the list of sizes that a piece is blocked to.
func (s *writer) beforeBlocking() []string {
	const wash = "Wash, and block to the knitted sizes:"
	if s.piece.Spec.Start.Edge == garment.WasteEdge {
		return []string{s.voice.lowerEdge(), wash}
	}
	return []string{wash}
}

// toBlock lists the sizes that a piece is blocked to.
func (s *writer) toBlock() [][2]string {
	var list [][2]string
	for _, size := range s.piece.Sizes {
		switch size.Name {
		case "drop", "inset", "capEdge": // no lengths to pin out
		default:
			list = append(list, [2]string{s.sizeName(size), s.length(size.Knitted)})
		}
	}
	return list
}

// toFinish is what is done to a piece before it is joined.
func (s *writer) toFinish() []line {
	texts := s.beforeBlocking()
	var sizes []string
	for _, size := range s.toBlock() {
		sizes = append(sizes, size[0]+" "+size[1])
	}
	texts[len(texts)-1] += " " + strings.Join(sizes, ", ") + "."
	return append([]line{heading("Finish")}, steps(texts)...)
}

// whenBlocked says how a piece is joined to the others.
func (s *writer) whenBlocked() []string {
	if s.isTrunk() {
		return s.joinShoulders()
	}
	return s.joinSleeve()
}

// openEdge says what becomes of an open lower edge, which would run in the wash, and of
// the yarn that it waits on.
func (s *writer) openEdge(waitsOn, pulled string) string {
	bindOff := fmt.Sprintf("bind it off loosely with new yarn, %s", s.newYarn(s.work.Panels[0].Needles.Len()))
	if s.piece.Heights.Band > 0 {
		return fmt.Sprintf("First the edge below the band, which is still open on %s: %s, then pull %s out.", waitsOn, bindOff, pulled)
	}
	return fmt.Sprintf("First the lower edge, which is still open on %s: knit a band onto it, which makes the piece longer by its height, or turn up a hem, which makes it shorter, or %s; then pull %s out.",
		waitsOn, bindOff, pulled)
}

// joiningOrder says in which order this piece is joined to the others, nothing of a sleeve.
// Common practice, no source.
func (s *writer) joiningOrder() []string {
	if s.isSleeve() {
		return nil
	}
	order := "one shoulder, the neckband, the other shoulder and the neckband's ends"
	switch {
	case s.opens():
		order = "both shoulders, the neckband, the bands along the fronts"
	case s.inTheRound():
		order = "both shoulders, the neckband in the round"
	}
	return []string{"Joining order: " + order + ", the sleeves, the sides."}
}

// inTheRound reports whether a neckband is knitted in the round: in the hand, with both
// shoulders joined. Common practice, no source.
func (s *writer) inTheRound() bool { return s.work.Place == shaping.Hand && !s.opens() }

// takeCare writes the dangers of tools and of the finished piece.
func (s *writer) takeCare() {
	s.heading("Take care")
	s.say(notes(s.dangers()))
}

func (s *writer) dangers() []string {
	texts := append(s.voice.cautions(), "Steam burns, and a hot iron flattens acrylic for good: try it on the swatch, and hold the iron above the fabric.")
	if s.isTrunk() {
		texts = append(texts, "No cords at the neck of children's garments, no loose buttons for infants: follow local product-safety rules.")
	}
	return texts
}

// joinShoulders says how a front or a back is joined to the other pieces.
func (s *writer) joinShoulders() []string {
	return slices.DeleteFunc([]string{s.neckband(), s.liveUnderarms(), s.worn()}, func(text string) bool { return text == "" })
}

// worn says on which side of the wearer the piece lies and what it joins there.
func (s *writer) worn() string {
	right := s.lies(shaping.Right)
	switch {
	case s.opened():
		outer := s.piece.Outer()
		return fmt.Sprintf("Worn, this front lies on the wearer's %v: its shoulder joins the %v half of a back %s, its side the %v edge.",
			s.lies(outer), outer.Opposite(), s.voice.seen(), outer.Opposite())
	case s.opens():
		return fmt.Sprintf("Worn, this piece's right half lies on the wearer's %v: it joins the %v front, and the left half the %v front.", right, right, right.Opposite())
	}
	return fmt.Sprintf("Worn, this piece's right half lies on the wearer's %v: it joins the left half of a %s %s.", right, s.counterpart(), s.voice.seen())
}

// withWraps is said of live stitches that are joined.
const withWraps = "each wrap together with its stitch"

// heldAtOnce returns the stitches that an underarm holds at once, and those that its edge
// holds in all.
func (s *writer) heldAtOnce() (atOnce, all int) {
	edge := s.anArmhole()
	all = -s.underarmHolds(edge).Total()
	if first, ok := s.underarm(edge); ok && first.Method == shaping.Hold {
		atOnce = -first.Stitches
	}
	return atOnce, all
}

// liveUnderarms says what becomes of the underarms of a front or a back that stayed live.
// Those of a sleeve with a cap are held as they are, a straight top has none.
func (s *writer) liveUnderarms() string {
	atOnce, all := s.heldAtOnce()
	if all == 0 {
		return ""
	}
	straight := s.piece.Spec.Sleeve != nil && s.piece.Spec.Sleeve.Cap == garment.StraightTop
	if straight || atOnce == 0 {
		return "Catch every live stitch of the underarms when the sleeves are set in, " + withWraps + "."
	}
	text := fmt.Sprintf("When the sleeves are set in, first graft %s%s (those held at once at the underarm), one for one, to those of the sleeves", outermost(atOnce), s.ofEachSide())
	if all > atOnce {
		text += "; then catch every other live stitch of the armholes"
	}
	return text + ", " + withWraps + "."
}

// outermost says how many stitches beside an edge are meant.
func outermost(stitches int) string {
	if stitches == 1 {
		return "the outermost stitch"
	}
	return fmt.Sprintf("the %d outermost stitches", stitches)
}

// joinSleeve says how a sleeve is joined: flat, before the sides are closed. Common
// practice, no source.
func (s *writer) joinSleeve() []string {
	return []string{"Set the sleeve in when both shoulders are joined and before the sides are: " + s.setIn(), sleeveSeam}
}

const sleeveSeam = "Then close the sleeve and the side in one seam, from the cuff to the hem."

// setIn says how a sleeve is set in.
func (s *writer) setIn() string {
	text := "pin the middle of its top to the shoulder seam and "
	atOnce, _ := s.heldAtOnce()
	catching := ""
	if s.uses()[shaping.DoWaste] {
		catching = ", catching every live stitch"
	}
	switch {
	case atOnce > 0:
		text += fmt.Sprintf("its underarms to those of front and back. First graft %s of each side (those held at once at the underarm, as on front and back), one for one, to those of front and back; then ease in the rest%s, %s.",
			outermost(atOnce), catching, withWraps)
	case s.hasCap() && s.piece.Widths.BindOff > 0:
		text += "its underarms, where stitches were first taken off at once, to those of front and back, ease the cap in between, and join it" + catching + "."
	case s.hasCap():
		text += "its underarms, where the cap begins, to the threads at those of front and back, ease the cap in between, and join it" + catching + "."
	case s.piece.Spec.Armhole.Inset.IsZero():
		text += "its ends to the threads at the underarms of front and back, and join it" + catching + "."
	default:
		text += "its ends to the underarms, and join it" + catching + "."
	}
	return text
}

// neckband says how many stitches a neckband takes up, and from what.
func (s *writer) neckband() string {
	for _, band := range s.bands {
		if n := band.Along(s.work.Name); n > 0 {
			return fmt.Sprintf("The neck of this piece is %s long along its edge. The %s takes up %s along it, of %d in all: how, stands under %s, after the pieces.",
				s.length(s.piece.NeckLength()), band.Name, plural.Stitches(n), band.Stitches(), strings.ToUpper(band.Name))
		}
	}
	var from []string
	if live := s.liveNeck(); live > 0 {
		text := fmt.Sprintf("the %d live ones one for one", live)
		if live == 1 {
			text = "the live one in the middle"
		}
		if s.neckHeld(s.neckPanels()[0].Name) > 0 {
			text += " (each wrap together with its stitch)"
		}
		from = append(from, text)
	}
	if bound := s.neckBoundOff(); bound > 0 {
		from = append(from, fmt.Sprintf("one for each of the %d bound off", bound))
	}
	spread := ", spread evenly over it"
	if len(from) > 0 {
		spread = ": " + strings.Join(from, ", ") + ", the rest spread over the steps between them and the straight edges"
	}
	along := ""
	if s.isBack() {
		along = " along the back"
	}
	return fmt.Sprintf("The neck of this piece is %s long along its edge. The neckband takes up as many stitches%s as that length has at the band's gauge%s.",
		s.length(s.piece.NeckLength()), along, spread)
}

// neckBoundOff returns the stitches bound off at the neck.
func (s *writer) neckBoundOff() int {
	bound := s.separate()
	for _, p := range s.neckPanels() {
		bound -= s.neckSteps(p.Name).Of(shaping.BindOff).Total()
	}
	return bound
}
