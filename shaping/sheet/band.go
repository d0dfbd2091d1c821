package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// How bands are picked up from the finished pieces, and in which order that is done.
// Common practice, no source.

// bandWriter writes a band. Its writer is that of the front: place, unit, yarn and words are
// those of all pieces.
type bandWriter struct {
	*writer
	band    garment.Band
	inPlace bool // it stands between the seams, which are not said again
}

// pickUp writes the bands of a set, each after a line across the page.
func (s *setWriter) pickUp() {
	for _, band := range s.bands {
		s.blank()
		s.line("%s", strings.Repeat("=", width))
		s.line("%s", strings.ToUpper(band.Name))
		s.blank()
		b := bandWriter{writer: s.halved(), band: band}
		for _, said := range b.pickUp() {
			s.say(said)
		}
	}
}

// pickUp says what the band is, how each of its strips is picked up and knitted, and what
// follows.
func (b bandWriter) pickUp() [][]line {
	said := [][]line{b.intro()}
	for _, strip := range b.band.Strips {
		said = append(said, b.strip(strip))
	}
	return append(said, b.last())
}

// apart reports whether front and back are picked up by themselves.
func (b bandWriter) apart() bool { return len(b.band.Strips) > 1 }

// layer returns the rows of one layer.
func (b bandWriter) layer() int {
	if b.band.Folded {
		return b.band.Rows / 2
	}
	return b.band.Rows
}

// rows counts rows, or rounds.
func (b bandWriter) rows(n int) string {
	if b.inTheRound() {
		return strings.Replace(plural.Rows(n), "row", "round", 1)
	}
	return plural.Rows(n)
}

// intro says how large the band is and why it has so many stitches.
func (b bandWriter) intro() []line {
	high := b.rows(b.layer())
	if b.band.Folded {
		high = fmt.Sprintf("twice %s, turned in", high)
	}
	said := []line{note(fmt.Sprintf("%s high, %s; picked up from the pieces when they are washed and blocked.", b.length(b.piece.Spec.Band.Height), high))}
	if b.piece.Spec.Band.Gauge.IsZero() {
		said = append(said, note("Stitches and rows are counted by the gauge of the pieces, as no other is given for the band. Knit a swatch in its stitch first: if its gauge is another, put that into band.gauge."))
	} else {
		said = append(said, note(fmt.Sprintf("Gauge of the band: %s. Knit it as the swatch that has this gauge.", inUnit(b.band.Gauge, b.piece.Spec.Units))))
	}
	for _, s := range b.band.Strips {
		of := ""
		if b.apart() {
			of = fmt.Sprintf(" of the %s", s.Name)
		}
		const decimals = 1
		said = append(said, note(fmt.Sprintf("Lengths and stitches%s ask for %s; it gets %d%s.", of, s.Wanted.Decimal(decimals).StringFixed(decimals), s.Stitches, b.grid())))
	}
	switch {
	case b.apart() && b.opens():
		said = append(said, note(fmt.Sprintf("The bed is too narrow for it in one strip: it is knitted in %d, whose ends are joined.", len(b.band.Strips))))
	case b.apart():
		said = append(said, note("The bed is too narrow for front and back in one strip: each gets a band by itself."))
	}
	return said
}

// grid says which numbers of stitches the repeat allows.
func (b bandWriter) grid() string {
	if b.band.Grid.Multiple < 2 {
		return ""
	}
	grid := b.band.Grid
	if grid.Plus == 0 {
		return fmt.Sprintf(", a multiple of %d for the repeat of the rib", grid.Multiple)
	}
	return fmt.Sprintf(", a multiple of %d plus %d for the repeat of the rib", grid.Multiple, grid.Plus)
}

// strip says how one strip is picked up and knitted.
func (b bandWriter) strip(s garment.Strip) []line {
	said := []line{{kind: gapLine}}
	if b.apart() || b.band.Name == garment.Neckband {
		said[0] = heading(b.band.Name + ", " + s.Name)
	}
	said = append(said, b.seamsBefore(s)...)
	switch {
	case b.opens():
		said = append(said, b.alongOpening(s))
	case b.inTheRound():
		said = append(said, step("RS facing, begin at the wearer's left shoulder and pick up and knit from right to left, in this order"+b.freed(s, "; put live sts back on the needle and knit them"+b.withTheirWraps(s))+":"))
	default:
		said = append(said, step(fmt.Sprintf("Hang the neck on %v, the purl side facing you, from left to right as listed: %s.%s",
			s.Needles, strings.Join(b.hanging(s), "; "), b.beyond(s))))
	}
	said = append(said, b.parts(s)...)
	return append(said, steps(b.knit(s))...)
}

// Which shoulders are open while a strip is picked up.
const (
	bothOpen  = "Leave both shoulders open."
	otherOpen = "Leave the other shoulder open."
)

// seamsBefore says which shoulders are joined before a strip is picked up, and which are not.
func (b bandWriter) seamsBefore(s garment.Strip) []line {
	switch {
	case b.opens() && (b.inPlace || b.apart() || !has(s, isSeam)):
		return nil
	case b.opens():
		return []line{step(fmt.Sprintf("Join both shoulders, if that is not done yet: %s.", b.bothShoulders()))}
	case b.inTheRound() && b.inPlace:
		return nil
	case b.inTheRound():
		return []line{step(fmt.Sprintf("Join both shoulders: %s, and %s.", rightOfFront, leftOfFront))}
	case b.apart() && b.inPlace && s.Name != b.band.Strips[0].Name:
		return nil
	case b.apart() && b.inPlace:
		return []line{note(bothOpen)}
	case b.apart():
		return []line{step(bothOpen)}
	case b.inPlace:
		return []line{note(otherOpen)}
	}
	return []line{step(fmt.Sprintf("Join %s. %s", rightOfFront, otherOpen))}
}

// has reports whether a strip has a part of that sort.
func has(s garment.Strip, is func(garment.Part) bool) bool { return slices.ContainsFunc(s.Parts, is) }

func isLive(p garment.Part) bool { return p.Live > 0 }

func isSeam(p garment.Part) bool { return p.Kind == garment.SeamPart }

// withTheirWraps says what becomes of the wraps of live stitches, if there are any.
func (b bandWriter) withTheirWraps(s garment.Strip) string {
	if !has(s, func(p garment.Part) bool { return p.Kind == garment.SlopePart && p.Live > 0 }) {
		return ""
	}
	return ", " + withWraps
}

// hanging says how each kind of stitch is hung.
func (b bandWriter) hanging(s garment.Strip) []string {
	var list []string
	if has(s, isLive) {
		list = append(list, "live stitches straight onto their needles"+b.withTheirWraps(s))
	}
	if has(s, func(p garment.Part) bool { return p.Kind == garment.BoundOffPart }) {
		list = append(list, "what is bound off under both its loops")
	}
	if has(s, func(p garment.Part) bool { return p.Kind == garment.SlopePart || p.Kind == garment.StraightPart }) {
		list = append(list, "rows and steps by the edge, one whole stitch in")
	}
	return list
}

// beyond says that a strip has needles that the bed has not.
func (b bandWriter) beyond(s garment.Strip) string {
	half := b.piece.Spec.Setup.BedNeedles() / 2
	if -s.Needles.First.Index() <= half && s.Needles.Last.Index() < half {
		return ""
	}
	return fmt.Sprintf(" The bed has only L%d-R%d: see the checks.", half, half)
}

// parts lists the parts of a strip in the order in which they are picked up.
func (b bandWriter) parts(s garment.Strip) []line {
	var list []line
	for _, p := range s.Parts {
		if p.Count > 0 {
			list = append(list, line{kind: partLine, text: fmt.Sprintf("%s: %s", b.from(p), b.how(p)), place: b.at(p), count: p.Count})
		} else if p.Kind == garment.SeamPart && !b.apart() {
			list = append(list, line{kind: seamLine, text: b.from(p) + " lies here"})
		}
	}
	return list
}

// how says how the stitches of a part are spread over it.
func (b bandWriter) how(p garment.Part) string {
	switch p.Kind {
	case garment.PointPart:
		return "1, the middle of the band"
	case garment.SeamPart:
		return "1 more, as the number for the rib asks for it"
	}
	return p.Phrase
}

// at names the needles of a part.
func (b bandWriter) at(p garment.Part) string {
	if p.Needles.IsEmpty() {
		return ""
	}
	return p.Needles.String()
}

// from says where a part lies.
func (b bandWriter) from(p garment.Part) string {
	switch p.Kind {
	case garment.SeamPart:
		where := "seam of"
		if b.apart() { // the shoulder is joined after the strips
			where = "end at"
		}
		return fmt.Sprintf("the %s the wearer's %v shoulder", where, worn(p.Side, b.work.Facing, p.Piece == shaping.Back))
	case garment.PointPart:
		if p.Piece == shaping.Front && b.piece.Spec.Neck.Shape == garment.VeeNeck {
			return "front, the point of the vee"
		}
		return p.Piece + ", the middle"
	case garment.LivePart, garment.BoundOffPart:
		if isFront(p) {
			return p.Piece + ", the level part at the front edge"
		}
		return p.Piece + ", the middle"
	case garment.EndPart:
		return b.endOf(p)
	}
	if isFront(p) {
		return b.ofFront(p)
	}
	half := shaping.LeftHalf
	if p.Side == shaping.Right {
		half = shaping.RightHalf
	}
	down := (p.Side == shaping.Left) == (b.work.Place == shaping.Bed)
	what := "the slope up from the middle"
	switch {
	case p.Kind == garment.StraightPart && down:
		what = fmt.Sprintf("%s straight down from the shoulder", plural.Rows(p.Rows))
	case p.Kind == garment.StraightPart:
		what = fmt.Sprintf("%s straight up to the shoulder", plural.Rows(p.Rows))
	case down:
		what = "the slope down to the middle"
	}
	return fmt.Sprintf("%s, %s, %s", p.Piece, half, what)
}

// knit says what is done when a strip is picked up.
func (b bandWriter) knit(s garment.Strip) []string {
	if b.work.Place == shaping.Hand {
		return b.knitInHand(s)
	}
	steps := []string{fmt.Sprintf("Count: every needle of %v has a loop, %d in all.%s", s.Needles, s.Stitches, b.freed(s, " Pull the waste yarn out of the live stitches."))}
	steps = append(steps, fmt.Sprintf("Hang weights under it. Main yarn with a tail of %s, the carriage at the right, counter to 000.", b.tail()))
	steps = append(steps, b.firstLayer(s)...)
	if !b.band.Folded {
		return append(steps, fmt.Sprintf("Counter %03d: bind off loosely. The edge must give as much as the band.", b.layer()))
	}
	return append(steps,
		fmt.Sprintf("Counter %03d: the fold, 1 row at the loosest stitch size. Then as before %s, to counter %03d.", b.layer(), b.rows(b.layer()), b.band.Rows+1),
		fmt.Sprintf("Counter %03d: lift the picked-up edge towards you onto the same needles, loop for loop, so that the purl sides lie inside, and bind off both together, loosely. Or knit %d rows of waste yarn, take the band off, and sew its %d stitches down to the picked-up edge, stitch by stitch.",
			b.band.Rows+1, wasteRows, s.Stitches))
}

func (b bandWriter) knitInHand(s garment.Strip) []string {
	count := fmt.Sprintf("Count: %s. Picking up does not count as a row; row 1 is a WS row.", plural.Sts(s.Stitches))
	if b.inTheRound() {
		count = fmt.Sprintf("Join into the round and mark its beginning: %s. Picking up does not count as a round.", plural.Sts(s.Stitches))
	}
	steps := append([]string{count}, b.firstLayer(s)...)
	if !b.band.Folded {
		return append(steps, "BO loosely in the same stitch. The edge must give as much as the band.")
	}
	return append(steps,
		fmt.Sprintf("The fold: %s. Then %s as before.", b.foldInHand(), b.rows(b.layer())),
		fmt.Sprintf("Fold the band to the inside and sew its %s down live to the picked-up edge, st by st, loosely.", plural.Sts(s.Stitches)))
}

// firstLayer says how the rows up to the edge or the fold are knitted, with the buttonholes
// where there are any.
func (b bandWriter) firstLayer(s garment.Strip) []string {
	verb := "Knit"
	if b.work.Place == shaping.Hand {
		verb = "Work"
	}
	holes := b.buttonholes(s)
	if len(holes) == 0 {
		return []string{fmt.Sprintf("%s %s in %s.", verb, b.rows(b.layer()), b.voice.bandStitch())}
	}
	before := b.beforeHoles()
	steps := []string{fmt.Sprintf("%s %s in %s.", verb, b.rows(before), b.voice.bandStitch())}
	steps = append(steps, holes...)
	return append(steps, fmt.Sprintf("%s %s more.", verb, b.rows(b.layer()-before)))
}

// freed returns the text if a strip has live stitches.
func (b bandWriter) freed(s garment.Strip, text string) string {
	if !has(s, isLive) {
		return ""
	}
	return text
}

// last says what follows when all strips are knitted.
func (b bandWriter) last() []line {
	said := b.seamsAfter()
	if b.piece.Spec.Neck.Shape != garment.VeeNeck || b.opens() {
		return said
	}
	mitre := "At the point of the vee the band has too many stitches for its upper edge: fold what stands off to the inside, in a mitre, and sew it down."
	if b.inPlace {
		return append(said, step(mitre))
	}
	return append(said, note(mitre))
}

// seamsAfter says what is joined when all strips are knitted.
func (b bandWriter) seamsAfter() []line {
	const ends = "join the ends of the strips to each other, edge to edge."
	switch {
	case b.opens() && !b.apart():
		return nil
	case b.opens() && b.inPlace:
		return []line{{kind: gapLine}, step(oneline.Capital(ends))}
	case b.opens():
		return []line{{kind: gapLine}, step("When the shoulders are joined, " + ends)}
	case b.inPlace || b.inTheRound():
		return nil
	case b.apart():
		return []line{{kind: gapLine}, step(fmt.Sprintf("Join both shoulders: %s, and %s, with them the ends of the bands.", rightOfFront, leftOfFront))}
	}
	return []line{step(fmt.Sprintf("Join %s, and with it the ends of the band.", leftOfFront))}
}

// How the shoulders are joined.
const (
	rightOfFront = "the right half of the front to the left half of the back"
	leftOfFront  = "the left half of the front to the right half of the back"
)

// bandJoints returns the shoulders and the bands in the order in which they are joined and
// picked up.
func (s *setWriter) bandJoints(front *writer) []joint {
	var list []joint
	if front.opens() {
		list = seams(front.bothShouldersStep())
	}
	for i := range s.bands {
		band := &s.bands[i]
		b := bandWriter{writer: front, band: *band}
		see := joint{band: band, text: fmt.Sprintf("The %s, %s: see %s, after the pieces.", band.Name, plural.Stitches(band.Stitches()), strings.ToUpper(band.Name))}
		switch {
		case b.opens():
			list = append(list, see)
		case b.inTheRound():
			list = append(list, joint{text: fmt.Sprintf("Both shoulders: %s, and %s, as their instructions call them.", rightOfFront, leftOfFront)}, see)
		case b.apart():
			list = append(list, see, joint{text: fmt.Sprintf("Both shoulders: %s, and %s, as their instructions call them, and with them the ends of the bands.", rightOfFront, leftOfFront)})
		default:
			list = append(list, joint{text: fmt.Sprintf("One shoulder: %s, as their instructions call them.", rightOfFront)}, see,
				joint{text: fmt.Sprintf("The other shoulder: %s, and with it the ends of the %s.", leftOfFront, band.Name)})
		}
	}
	return list
}
