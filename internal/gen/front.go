package gen

import (
	"slices"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// FrontSpec generates specs of fronts that fit together: gauges from 8 to 50
// stitches and 10 to 70 rows to 10 cm, as a gauge, a swatch or several; bodies from a
// newborn's to 160 cm round; with and without armholes, seam stitches and a band;
// round, vee, square and drawn necks, deep ones and some that begin above the tips of the
// shoulders; drawn armholes and shoulders; every method at neck, shoulder and armhole;
// a third with sides that move, from a hem, by a waist or both; on the bed, with the
// carriage at either side, and in the hand. All lengths are multiples of step, which
// should be about a millimetre.
//
// Only what cannot be seen before the lengths are rounded may still be refused.
func FrontSpec(step gauge.Length) *rapid.Generator[garment.Spec] {
	return rapid.Custom(func(t *rapid.T) garment.Spec {
		m := newSpecMaker(t, step)
		s := m.front()
		m.place(&s, s.Body.Width)
		return s
	})
}

func newSpecMaker(t *rapid.T, step gauge.Length) *specMaker {
	return &specMaker{t: t, step: step, size: mm(step)}
}

// specMaker draws in millimetres; floats do, as what it draws is only a choice.
type specMaker struct {
	t    *rapid.T
	step gauge.Length
	size float64 // of step
	wale float64 // the width of a stitch
	row  float64 // the height of a row
}

// front draws all of a front but where it is knitted.
func (m *specMaker) front() garment.Spec {
	s := garment.Spec{Units: rapid.SampledFrom([]gauge.Unit{gauge.Centimetre, gauge.Inch}).Draw(m.t, "units")}
	m.gauge(&s)
	m.widths(&s)
	m.heights(&s)
	m.shape(&s)
	m.armhole(&s)
	m.start(&s)
	m.sides(&s)
	return s
}

// length draws a length between two numbers of millimetres.
func (m *specMaker) length(label string, least, most float64) gauge.Length {
	low := int(least/m.size) + 1
	return m.step.Mul(rapid.IntRange(low, max(low, int(most/m.size))).Draw(m.t, label))
}

// swatches makes several of a swatch, sometimes: of other sizes, and a little off.
func (m *specMaker) swatches(s *garment.Spec) {
	if rapid.Bool().Draw(m.t, "one swatch") {
		return
	}
	first := *s.Swatch
	s.Swatch, s.Swatches = nil, []gauge.Swatch{first}
	for range rapid.IntRange(0, 3).Draw(m.t, "more swatches") {
		times := rapid.IntRange(1, 3).Draw(m.t, "times as large")
		off := func(label string) gauge.Length {
			return gauge.MustParseLength("1 mm").Mul(times * rapid.IntRange(98, 102).Draw(m.t, label))
		}
		s.Swatches = append(s.Swatches, gauge.Swatch{
			Stitches: times * first.Stitches, Width: off("mm wide"), Rows: times * first.Rows, Height: off("mm high"),
		})
	}
}

func (m *specMaker) gauge(s *garment.Spec) {
	const tenths = -1
	stitches := rapid.IntRange(80, 500).Draw(m.t, "stitches to 10 cm, tenths")
	rows := rapid.IntRange(100, 700).Draw(m.t, "rows to 10 cm, tenths")
	m.wale, m.row = 1000/float64(stitches), 1000/float64(rows)
	over := rapid.SampledFrom([]string{"10 cm", "4 in", "1 in", "swatch"}).Draw(m.t, "over")
	if over == "swatch" {
		s.Swatch = &gauge.Swatch{
			Stitches: stitches / 10, Width: gauge.MustParseLength("10 cm"),
			Rows: rows / 10, Height: gauge.MustParseLength("10 cm"),
		}
		m.wale, m.row = 100/float64(s.Swatch.Stitches), 100/float64(s.Swatch.Rows)
		m.swatches(s)
		return
	}
	across, up := decimal.New(int64(stitches), tenths), decimal.New(int64(rows), tenths)
	if over == "1 in" {
		quarter := decimal.New(254, -3) // of 10 cm an inch
		across, up = across.Mul(quarter).Round(1), up.Mul(quarter).Round(1)
		m.wale, m.row = 25.4/across.InexactFloat64(), 25.4/up.InexactFloat64()
	}
	if over == "4 in" {
		m.wale, m.row = m.wale*1.016, m.row*1.016
	}
	g, err := gauge.New(across, up, gauge.MustParseLength(over))
	if err != nil {
		m.t.Fatalf("gauge of the generator: %v", err)
	}
	s.Gauge = g
}

func mm(l gauge.Length) float64 { return l.Millimetres().InexactFloat64() }

func (m *specMaker) widths(s *garment.Spec) {
	s.Body.Width = m.length("body", 195, 800)
	body := mm(s.Body.Width)
	s.Neck.Width = m.length("neck", max(body/5, 2*m.wale), body*9/20)
	s.Seam.Stitches = rapid.IntRange(0, 3).Draw(m.t, "seam")
}

func (m *specMaker) heights(s *garment.Spec) {
	s.Body.Length = m.length("length", max(80, 6*m.row), 600)
	s.Armhole.Depth = m.length("armhole", 85, 320)
	shoulder := (mm(s.Body.Width) - mm(s.Neck.Width)) / 2
	// Half of the shoulder may go for the armhole; a group has a stitch or more.
	most := 2 * (shoulder/2/m.wale - 4) * m.row
	if drop := min(70, most); drop > m.size && rapid.IntRange(0, 9).Draw(m.t, "drop given") > 0 {
		s.Shoulder.Drop = m.length("drop", 0, drop)
	}
	least := mm(s.Shoulder.Drop) + 4*m.row
	deepest := least + 160
	switch rapid.IntRange(0, 4).Draw(m.t, "deep") {
	case 0:
		deepest = mm(s.Body.Length) + mm(s.Armhole.Depth) + mm(s.Shoulder.Drop) - 6*m.row
	case 1:
		least, deepest = 2*m.row, least
	}
	s.Neck.Depth = m.length("neck depth", least, deepest)
}

// pairs are the pairs of methods that take any number of stitches, first those that are one
// method.
var pairs = []garment.Pair{
	{}, garment.By(shaping.Hold), garment.By(shaping.BindOff),
	{Several: shaping.Hold, Single: shaping.Fashioned},
	{Several: shaping.BindOff, Single: shaping.Fashioned},
	{Several: shaping.Hold, Single: shaping.BindOff},
	{Several: shaping.BindOff, Single: shaping.Hold},
}

// decreases are the pairs that take single stitches only, or two at most.
var decreases = []garment.Pair{
	garment.By(shaping.Fashioned),
	{Several: shaping.Fashioned, Single: shaping.Fashioned},
	{Several: shaping.Fashioned, Single: shaping.Hold},
	{Several: shaping.Fashioned, Single: shaping.BindOff},
}

// drawn are edges of every kind of command: hollow and full ones, with corners, level and
// upright stretches at either end and between.
var drawn = []string{
	"M 0 60 C 30 60 50 30 50 0",
	"M 0 80 L 20 50 L 40 0",
	"M 12 40 h 12 v -10 C 30 30 40 20 40 0",
	"m 0 0 q 30 -5 40 -60",
	"M 0 100 S 60 40 60 0",
	"M 0 40 C 0 10 10 0 40 0",
	"M 0 50 A 40 50 0 0 0 40 0",
	"M 0 30 V 20 H 15 Q 20 20 20 0 H 25",
}

// path draws an edge of any size.
func (m *specMaker) path(label string) string {
	return rapid.SampledFrom(drawn).Draw(m.t, label)
}

// shape draws the form of neck and shoulder and methods that can work them.
func (m *specMaker) shape(s *garment.Spec) {
	s.Neck.Shape = rapid.SampledFrom([]garment.NeckShape{garment.RoundNeck, garment.RoundNeck, garment.VeeNeck, garment.SquareNeck, garment.PathNeck}).Draw(m.t, "neck shape")
	if s.Neck.Shape == garment.PathNeck {
		s.Neck.Path = m.path("neck path")
	}
	if rapid.Bool().Draw(m.t, "flat given") {
		s.Neck.Flat = garment.Exactly(m.length("flat", -m.size, mm(s.Neck.Width)))
	}
	ways := pairs
	sloping := (mm(s.Neck.Width) - mm(s.Neck.Flat.Or(gauge.Length{}))) / 2 / m.wale
	if s.Neck.Shape != garment.RoundNeck && 2*sloping+6 < mm(s.Neck.Depth)/m.row {
		ways = append(ways[:len(ways):len(ways)], decreases...)
	}
	s.Methods.Neck = rapid.SampledFrom(ways).Draw(m.t, "neck by")
	if s.Shoulder.Drop.Sign() > 0 && rapid.IntRange(0, 3).Draw(m.t, "shoulder drawn") == 0 {
		s.Shoulder.Path = m.path("shoulder path")
		s.Methods.Shoulder = rapid.SampledFrom(pairs[:3]).Draw(m.t, "drawn shoulder by")
		return
	}
	ways = pairs
	// Every group of a steep shoulder has one or two stitches.
	if stitches := (mm(s.Body.Width) - mm(s.Neck.Width)) / 2 / m.wale; stitches < mm(s.Shoulder.Drop)/m.row {
		ways = append(ways[:len(ways):len(ways)], decreases[1:]...)
	}
	s.Methods.Shoulder = rapid.SampledFrom(ways).Draw(m.t, "shoulder by")
}

// armhole draws an inset whose single decreases find rows enough.
func (m *specMaker) armhole(s *garment.Spec) {
	if rapid.Bool().Draw(m.t, "straight") {
		return
	}
	s.Methods.Armhole = rapid.SampledFrom(append(pairs[:len(pairs):len(pairs)], decreases...)).Draw(m.t, "armhole by")
	onlyDecreased := slices.Contains(decreases, s.Methods.Armhole)
	depth := mm(s.Armhole.Depth)
	curve := depth * 2 / 5
	if rapid.Bool().Draw(m.t, "curve given") {
		l := m.length("curve", depth/3, depth-m.size)
		s.Armhole.Curve = garment.Exactly(l)
		curve = mm(l)
	}
	room := (mm(s.Body.Width) - mm(s.Neck.Width)) / 4 // of the shoulder, half
	decreased := max((curve/m.row-7)/2*m.wale, 0)
	boundOff := 25.0
	if onlyDecreased {
		boundOff = 0
	} else if rapid.Bool().Draw(m.t, "bind off given") {
		l := m.length("bind off", -m.size, min(room, 40))
		s.Armhole.BindOff = garment.Exactly(l)
		boundOff = mm(l)
	}
	s.Armhole.Inset = m.length("inset", min(boundOff, room), min(boundOff+decreased, room))
	if rapid.IntRange(0, 2).Draw(m.t, "armhole drawn") == 0 {
		s.Armhole.Path = m.path("armhole path")
	}
	if o := s.Armhole.BindOff; !o.IsZero() && o.Or(gauge.Length{}).Cmp(s.Armhole.Inset) > 0 {
		s.Armhole.BindOff = garment.Exactly(s.Armhole.Inset)
	}
}

func (m *specMaker) start(s *garment.Spec) {
	if rapid.Bool().Draw(m.t, "band given") {
		s.Start.Band = m.length("band", 0, mm(s.Body.Length)-m.size)
	}
	s.Start.Edge = rapid.SampledFrom([]garment.StartEdge{garment.WasteEdge, garment.ClosedEdge}).Draw(m.t, "edge")
}

// sides draws hem and waist of a third of the bodies.
func (m *specMaker) sides(s *garment.Spec) {
	if rapid.IntRange(0, 2).Draw(m.t, "sides move") > 0 {
		return
	}
	low, high := mm(s.Start.Band), mm(s.Body.Length)
	kind := rapid.IntRange(0, 2).Draw(m.t, "hem, waist or both")
	if kind > 0 {
		at := m.length("waist height", low+(high-low)/5, low+(high-low)*4/5)
		if at.Cmp(s.Body.Length) > 0 {
			at = s.Body.Length
		}
		s.Body.Waist = &garment.Waist{Width: m.beside("waist", s.Body.Width, high-mm(at)), Height: at}
		high = mm(at)
	}
	switch kind {
	case 0:
		s.Body.Hem = m.beside("hem", s.Body.Width, high-low)
	case 2:
		s.Body.Hem = m.beside("hem", s.Body.Waist.Width, high-low)
	}
}

// beside draws a width to which single decreases or increases every 2nd row can lead from
// another within a height; a tenth of them are up to half as far again.
func (m *specMaker) beside(label string, from gauge.Length, height float64) gauge.Length {
	most := max(height/m.row/2-4, 0) * 2 * m.wale
	if rapid.IntRange(0, 9).Draw(m.t, label+" steep") == 0 {
		most += most / 2
	}
	middle := mm(from)
	return m.length(label, max(middle-most, middle/2)-m.size, min(middle+most, middle*2))
}

// place draws where the pieces are knitted, of which the widest is that wide, or the hem.
func (m *specMaker) place(s *garment.Spec, widest gauge.Length) {
	if rapid.IntRange(0, 2).Draw(m.t, "hand") == 0 {
		s.Setup.On = shaping.Hand
	} else {
		s.Setup.Carriage = rapid.SampledFrom([]shaping.Side{0, shaping.Left, shaping.Right}).Draw(m.t, "carriage")
	}
	wide := max(mm(widest), mm(s.Body.Hem))
	if s.Body.Waist != nil {
		wide = max(wide, mm(s.Body.Waist.Width))
	}
	needed := int(wide/m.wale) + 2*s.Seam.Stitches + 4
	if needed > garment.DefaultNeedles || rapid.Bool().Draw(m.t, "needles given") {
		s.Setup.Needles = min(needed+needed%2+2*rapid.IntRange(0, 20).Draw(m.t, "spare"), shaping.MaxNeedle)
	}
}
