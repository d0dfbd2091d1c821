package gen

import (
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// CardiganSpec generates specs of garments that open down the front, the jumpers of
// [JumperSpec] with an opening: its overlap left open, with a band and without one, given as
// 0 or up to nearly the width of the neck, wider and narrower than its flat part.
func CardiganSpec(step gauge.Length) *rapid.Generator[garment.Spec] {
	return rapid.Custom(func(t *rapid.T) garment.Spec {
		m := newSpecMaker(t, step)
		s := m.jumper()
		m.opening(&s)
		return s
	})
}

// opening draws how the front opens.
func (m *specMaker) opening(s *garment.Spec) {
	s.Opening = &garment.Opening{}
	most := min(mm(s.Neck.Width)-4*m.wale, 80)
	if rapid.Bool().Draw(m.t, "band") {
		s.Band = &garment.BandSpec{Height: m.length("band height", 0, max(most, 4*m.size))}
		s.Opening.Buttons = rapid.IntRange(0, 9).Draw(m.t, "buttons")
	}
	switch rapid.IntRange(0, 3).Draw(m.t, "overlap left open, none or given") {
	case 0:
		s.Opening.Overlap = garment.Exactly(gauge.Length{})
	case 1:
		s.Opening.Overlap = garment.Exactly(m.length("overlap", -m.size, max(most, m.size)))
	}
}
