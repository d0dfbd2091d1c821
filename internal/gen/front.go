package gen

import (
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// FrontSpec generates specs of fronts that fit together: gauges from 8 to 50
// stitches and 10 to 70 rows to 10 cm, as a gauge or a swatch; bodies from a
// newborn's to 160 cm round; with and without armholes, seam stitches and a band;
// necks and shoulders held and bound off; the carriage at either side. All lengths
// are multiples of step, which should be about a millimetre.
//
// Only what cannot be seen before the lengths are rounded may still be refused.
func FrontSpec(step gauge.Length) *rapid.Generator[garment.Spec] {
	return rapid.Custom(func(t *rapid.T) garment.Spec {
		m := &specMaker{t: t, step: step, size: step.Millimetres().InexactFloat64()}
		s := garment.Spec{Units: rapid.SampledFrom([]gauge.Unit{gauge.Centimetre, gauge.Inch}).Draw(t, "units")}
		m.gauge(&s)
		m.widths(&s)
		m.heights(&s)
		m.armhole(&s)
		m.choices(&s)
		return s
	})
}

// specMaker draws in millimetres; floats do, as what it draws is only a choice.
type specMaker struct {
	t    *rapid.T
	step gauge.Length
	size float64 // of step
	wale float64 // the width of a stitch
	row  float64 // the height of a row
}

// length draws a length between two numbers of millimetres.
func (m *specMaker) length(label string, least, most float64) gauge.Length {
	low := int(least/m.size) + 1
	return m.step.Mul(rapid.IntRange(low, max(low, int(most/m.size))).Draw(m.t, label))
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
	s.Neck.Shape = garment.RoundNeck
	s.Neck.Width = m.length("neck", max(body/5, 2*m.wale), body*9/20)
	if rapid.Bool().Draw(m.t, "flat given") {
		s.Neck.Flat = garment.Exactly(m.length("flat", -m.size, mm(s.Neck.Width)))
	}
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
	if rapid.IntRange(0, 3).Draw(m.t, "deep") == 0 {
		deepest = mm(s.Body.Length) + mm(s.Armhole.Depth) + mm(s.Shoulder.Drop) - 4*m.row
	}
	s.Neck.Depth = m.length("neck depth", least, deepest)
}

// armhole draws an inset whose single decreases find rows enough.
func (m *specMaker) armhole(s *garment.Spec) {
	if rapid.Bool().Draw(m.t, "straight") {
		return
	}
	depth := mm(s.Armhole.Depth)
	curve := depth * 2 / 5
	if rapid.Bool().Draw(m.t, "curve given") {
		s.Armhole.Curve = m.length("curve", depth/3, depth-m.size)
		curve = mm(s.Armhole.Curve)
	}
	room := (mm(s.Body.Width) - mm(s.Neck.Width)) / 4 // of the shoulder, half
	decreased := max((curve/m.row-7)/2*m.wale, 0)
	boundOff := 25.0
	if rapid.Bool().Draw(m.t, "bind off given") {
		l := m.length("bind off", -m.size, min(room, 40))
		s.Armhole.BindOff = garment.Exactly(l)
		boundOff = mm(l)
	}
	s.Armhole.Inset = m.length("inset", min(boundOff, room), min(boundOff+decreased, room))
	if o := s.Armhole.BindOff; !o.IsZero() && o.Or(gauge.Length{}).Cmp(s.Armhole.Inset) > 0 {
		s.Armhole.BindOff = garment.Exactly(s.Armhole.Inset)
	}
}

func (m *specMaker) choices(s *garment.Spec) {
	ways := rapid.SampledFrom([]garment.Pair{{}, garment.By(shaping.Hold), garment.By(shaping.BindOff)})
	s.Methods.Neck, s.Methods.Shoulder = ways.Draw(m.t, "neck by"), ways.Draw(m.t, "shoulder by")
	s.Setup.Carriage = rapid.SampledFrom([]shaping.Side{0, shaping.Left, shaping.Right}).Draw(m.t, "carriage")
	needed := int(mm(s.Body.Width)/m.wale) + 2*s.Seam.Stitches + 4
	if needed > garment.DefaultNeedles || rapid.Bool().Draw(m.t, "needles given") {
		s.Setup.Needles = min(needed+needed%2+2*rapid.IntRange(0, 20).Draw(m.t, "spare"), shaping.MaxNeedle)
	}
	if rapid.Bool().Draw(m.t, "band given") {
		s.Start.Band = m.length("band", 0, mm(s.Body.Length)-m.size)
	}
	s.Start.Edge = rapid.SampledFrom([]garment.StartEdge{garment.OnWaste, garment.Closed}).Draw(m.t, "edge")
}
