package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// Neckband is the name of the band round a neck.
const Neckband = "neckband"

// Band is a band as it is picked up from the knitted pieces and knitted. Treat it as a
// value: what it holds is shared.
type Band struct {
	Name   string  // such as Neckband
	Strips []Strip // one, and more where the bed is too narrow: see [Strip]
	Rows   int     // knitted, of a folded band those of both layers; between them lies one more, the fold
	Gauge  gauge.Gauge
	Grid   gauge.Rounding // the numbers of stitches that the repeat allows
	Folded bool           // turned in and sewn down
}

// Stitches returns the stitches picked up in all.
func (b Band) Stitches() int {
	stitches := 0
	for _, s := range b.Strips {
		stitches += s.Stitches
	}
	return stitches
}

// Loops returns the stitches knitted, the fold of a folded band included.
func (b Band) Loops() int {
	rows := b.Rows
	if b.Folded {
		rows++
	}
	return b.Stitches() * rows
}

// Length returns the length of the picked-up edge at the band's own gauge.
func (b Band) Length() gauge.Length { return b.Gauge.Width(b.Stitches()) }

// Along returns the stitches picked up along the neck of a piece, those of seams not counted.
func (b Band) Along(piece string) int {
	stitches := 0
	for _, s := range b.Strips {
		stitches += s.Along(piece)
	}
	return stitches
}

// Band returns the band of that name; ok is false if there is none.
func (s Set) Band(name string) (b Band, ok bool) {
	for _, b := range s.Bands {
		if b.Name == name {
			return b, true
		}
	}
	return Band{}, false
}

// mostRepeat is the widest repeat of a rib in stitches.
const mostRepeat = 50

// checkBand refuses a band whose height or repeat is out of range.
func (s Spec) checkBand() error {
	b := s.Band
	if b == nil {
		return nil
	}
	if err := s.checkLength("band.height", b.Height, true); err != nil {
		return err
	}
	if b.Repeat < 0 || b.Repeat > mostRepeat {
		return &Error{Field: "band.repeat", Given: fmt.Sprint(b.Repeat), Want: fmt.Sprintf("0 to %d stitches", mostRepeat), Err: ErrSpec}
	}
	if most := max(b.Repeat, 1) - 1; b.Plus < 0 || b.Plus > most {
		want := fmt.Sprintf("0 to %d stitches beside a repeat of %d", most, b.Repeat)
		if most == 0 {
			want = "0 without a repeat: leave it out, or give band.repeat"
		}
		return &Error{Field: "band.plus", Given: fmt.Sprint(b.Plus), Want: want, Err: ErrSpec}
	}
	return nil
}

// bands plans the bands of the knitted pieces: round the neck of front and back, if the spec
// has a band.
func (j job) bands(s Set) ([]Band, error) {
	if j.spec.Band == nil {
		return nil, nil
	}
	if j.spec.Opening != nil {
		return j.openedBands(s)
	}
	front, _ := s.Piece(shaping.Front)
	back, _ := s.Piece(shaping.Back)
	b, err := j.newBand(Neckband)
	if err != nil {
		return nil, err
	}
	round := append(j.neckParts(front, j.fromSide(), b.Gauge), j.seam(shaping.Front))
	round = append(round, j.neckParts(back, j.fromSide(), b.Gauge)...)
	if j.place == shaping.Hand {
		round = append(round, j.seam(shaping.Back))
	}
	strip, err := j.strip("front and back", round, b.Grid)
	if err != nil {
		return nil, err
	}
	b.Strips = []Strip{strip}
	if j.place == shaping.Bed && !j.hasRoom(strip.Stitches) {
		if b.Strips, err = j.apart(front, back, b); err != nil {
			return nil, err
		}
	}
	return []Band{b}, j.checkBandRoom(b)
}

// newBand returns a band of the spec that has not been picked up.
func (j job) newBand(name string) (Band, error) {
	spec := j.spec.Band
	b := Band{Name: name, Gauge: j.bandGauge(), Grid: gauge.Rounding{Multiple: spec.Repeat, Plus: spec.Plus}, Folded: spec.Folded}
	b.Rows = max(b.Gauge.Rows(spec.Height).Round(gauge.Rounding{}), 1)
	most := shaping.MaxRows
	if b.Folded {
		b.Rows *= 2
		most-- // the fold
	}
	if b.Rows > most {
		layers := b.Rows / b.Gauge.Rows(spec.Height).Round(gauge.Rounding{})
		return Band{}, j.spec.fitError("band.height", spec.Height, fmt.Sprintf("the band would have %d rows, at most %d are planned: at most %s",
			b.Rows, most, j.spec.atMost(b.Gauge.Height(most/layers))))
	}
	return b, nil
}

// bandGauge returns the gauge of the bands.
func (j job) bandGauge() gauge.Gauge {
	if !j.spec.Band.Gauge.IsZero() {
		return j.spec.Band.Gauge
	}
	return j.gauge
}

// layer returns the rows of one layer.
func (b Band) layer() int {
	if b.Folded {
		return b.Rows / 2
	}
	return b.Rows
}

// fromSide returns the side of a front or a back where the picking up begins: on the bed the
// left, in the hand, where it goes with the right side facing from right to left, the right.
func (j job) fromSide() shaping.Side {
	if j.place == shaping.Hand {
		return shaping.Right
	}
	return shaping.Left
}

// seam returns the shoulder seam at which picking up along a piece ends.
func (j job) seam(piece string) Part {
	return Part{Piece: piece, Side: j.fromSide().Opposite(), Kind: SeamPart}
}

// apart returns the strips of front and back by themselves. Each has at the shoulder that the
// one strip would have joined a place for a stitch that its repeat asks for.
func (j job) apart(front, back Piece, b Band) ([]Strip, error) {
	parts := append(j.neckParts(front, j.fromSide(), b.Gauge), j.seam(shaping.Front))
	first, err := j.strip(shaping.Front, parts, b.Grid)
	if err != nil {
		return nil, err
	}
	seam := j.seam(shaping.Back)
	seam.Side = j.fromSide()
	second, err := j.strip(shaping.Back, append([]Part{seam}, j.neckParts(back, j.fromSide(), b.Gauge)...), b.Grid)
	return []Strip{first, second}, err
}

// hasRoom reports whether so many stitches find needles on either side of the bed's middle.
func (j job) hasRoom(stitches int) bool {
	return evenly(stitches) <= j.spec.Setup.BedNeedles()/2
}

// checkBandRoom refuses a band that is too wide for the bed, or for any.
func (j job) checkBandRoom(b Band) error {
	widest := slices.MaxFunc(b.Strips, func(s, t Strip) int { return s.Stitches - t.Stitches })
	numbered := widest.Stitches <= 2*shaping.MaxNeedle
	if j.place != shaping.Bed || j.hasRoom(widest.Stitches) || numbered && !j.bedRefuses() {
		return nil
	}
	want := fmt.Sprintf("the %s along the %s takes %s: ", b.Name, widest.Name, plural.Stitches(widest.Stitches))
	if needed := 2 * evenly(widest.Stitches); needed <= mostNeedles {
		want += fmt.Sprintf("at least %d needles, ", needed)
	}
	if numbered {
		want += "checks.bed warning, "
	}
	return &Error{Field: "work.needles", Given: fmt.Sprint(j.spec.Setup.BedNeedles()), Want: want + "work.on hand or no band", Err: ErrBed}
}

// bandRoom compares the needles that a strip of a band takes on each side of the middle with
// those of the bed.
func (j job) bandRoom(b Band, s Strip) Check {
	half := j.spec.Setup.BedNeedles() / 2
	left, right := s.Stitches/2, evenly(s.Stitches)
	c := Check{
		Name: "bed", Pieces: s.pieces(), Field: "work.needles", What: b.Name + " on the bed",
		First: Measured{Of: b.Name, Count: right, Counted: "needles"}, Second: Measured{Of: "bed", Count: half, Counted: "needles"},
		Passed: right <= half, Severity: j.spec.Checks.Bed.Or(AsError),
	}
	of := upper(b.Name)
	if b.Name == Neckband {
		of += " along " + s.Name
	} else if len(b.Strips) > 1 {
		of += ", " + s.Name
	}
	c.Says = fmt.Sprintf("%s: %d stitches on %v; the bed has %d needles on each side: ", of, s.Stitches, s.Needles, half)
	if c.Passed {
		c.Says += fmt.Sprintf("%d and %d to spare.", half-left, half-right)
	} else {
		c.Says += fmt.Sprintf("%d and %d are missing. It must be knitted in parts that are joined, or in the hand.", max(left-half, 0), right-half)
	}
	return c
}
