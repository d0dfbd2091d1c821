package gen

import (
	"slices"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// JumperSpec generates specs of whole jumpers on the fronts of [FrontSpec], some of them without sleeves: with the neck
// of the back left open or given; sleeves with a straight top or a set-in cap, with and
// without plain rows, a band of their own, a flat part and ease, narrower or wider at the
// cuff; a head and a hand that mostly pass; checks left open, as warnings and as errors.
// Where a piece too wide for the bed is a warning, some beds are too narrow.
func JumperSpec(step gauge.Length) *rapid.Generator[garment.Spec] {
	return rapid.Custom(func(t *rapid.T) garment.Spec { return newSpecMaker(t, step).jumper() })
}

// jumper draws all of a jumper.
func (m *specMaker) jumper() garment.Spec {
	s := m.front()
	m.back(&s)
	widest := s.Body.Width
	if !m.sometimes("no sleeves", 12) {
		m.sleeve(&s)
		for _, l := range []gauge.Length{s.Sleeve.Top, s.Sleeve.Cuff} {
			if l.Cmp(widest) > 0 {
				widest = l
			}
		}
	}
	m.wearer(&s)
	m.checks(&s)
	m.place(&s, widest)
	if s.Checks.Bed == garment.AsWarning && rapid.IntRange(0, 2).Draw(m.t, "narrow bed") == 0 {
		s.Setup.Needles = 2 * rapid.IntRange(5, 100).Draw(m.t, "needles of a side")
	}
	return s
}

// sometimes returns true once in so many times.
func (m *specMaker) sometimes(label string, times int) bool {
	return rapid.IntRange(1, times).Draw(m.t, label) == times
}

func (m *specMaker) back(s *garment.Spec) {
	// The back is round: decreases cannot work it.
	if slices.Contains(decreases, s.Methods.Neck) && !m.sometimes("neck of decreases", 8) {
		s.Methods.Neck = garment.Pair{}
	}
	if m.sometimes("back left open", 3) {
		return
	}
	s.Back = &garment.BackSpec{Neck: garment.BackNeck{Depth: m.length("back neck depth", 2*m.row, 2*m.row+60)}}
	if m.sometimes("back flat given", 2) {
		s.Back.Neck.Flat = garment.Exactly(m.length("back flat", -m.size, mm(s.Neck.Width)))
	}
}

// sleeve draws a sleeve whose top goes into the armhole nearly, and whose increases find
// rows enough.
func (m *specMaker) sleeve(s *garment.Spec) {
	v := &garment.SleeveSpec{}
	armhole := 2 * mm(s.Armhole.Depth)
	if setIn := s.Armhole.Inset.Sign() > 0; setIn != m.sometimes("cap of the other kind", 6) {
		v.Cap = garment.SetInCap
		v.Top = m.length("top", max(armhole*11/20, 2*(mm(s.Armhole.BindOff.Or(s.Armhole.Inset))+4*m.wale)), armhole*17/20)
	} else {
		v.Top = m.length("top", armhole*9/10, armhole*11/10)
	}
	top := mm(v.Top)
	if m.sometimes("wide cuff", 8) {
		v.Cuff = m.length("cuff", top-m.size, top*5/4)
	} else {
		v.Cuff = m.length("cuff", max(top*2/5, 2*m.wale), top)
	}
	switch rapid.IntRange(0, 2).Draw(m.t, "sleeve band") {
	case 0:
		v.Band = garment.Exactly(m.length("sleeve band", -m.size, 80))
	case 1:
		s.Start.Band = gauge.Length{}
	}
	if m.sometimes("plain given", 3) {
		v.Plain = m.length("plain", 0, 60)
	}
	shaped := max(top-mm(v.Cuff), mm(v.Cuff)-top) / m.wale * m.row
	if m.sometimes("steep sleeve", 12) {
		shaped /= 2
	}
	least := mm(v.Band.Or(s.Start.Band)) + 2*mm(v.Plain) + shaped + 6*m.row
	v.Length = m.length("sleeve length", least, max(least+20, 500))
	if m.sometimes("ease given", 2) {
		v.Ease = m.length("ease", 0, 25)
	}
	if v.Cap == garment.SetInCap && m.sometimes("cap flat given", 3) {
		v.Flat = garment.Exactly(m.length("cap flat", -m.size, top/3))
	}
	s.Sleeve = v
}

// wearer draws head and hand, and by how much the edges give.
func (m *specMaker) wearer(s *garment.Spec) {
	stretch := func(label string) *decimal.Decimal {
		if m.sometimes(label+" left open", 2) {
			return nil
		}
		percent := decimal.New(int64(rapid.IntRange(0, 1000).Draw(m.t, label)), -1)
		return &percent
	}
	s.Neck.Stretch = stretch("neck stretch")
	if s.Sleeve != nil {
		s.Sleeve.Stretch = stretch("sleeve stretch")
	}
	if !m.sometimes("no head", 3) {
		s.Head = m.length("head", 300, 640)
	}
	if !m.sometimes("no hand", 3) {
		s.Hand = m.length("hand", 80, 240)
	}
}

// checks draws what becomes of the checks; what fails often is seldom an error.
func (m *specMaker) checks(s *garment.Spec) {
	const open = garment.Severity(0)
	often := []garment.Severity{open, garment.AsWarning, garment.AsError}
	seldom := []garment.Severity{open, open, open, open, open, garment.AsWarning, garment.AsWarning, garment.AsWarning, garment.AsWarning, garment.AsError}
	draw := func(label string, from []garment.Severity) garment.Severity {
		return rapid.SampledFrom(from).Draw(m.t, label)
	}
	s.Checks = garment.Checks{
		Shoulders: draw("shoulders", often), Sides: draw("sides", often), Bed: draw("bed", often),
		Armholes: draw("armholes", seldom), Neck: draw("neck", seldom), Cuff: draw("cuff", seldom),
	}
}
