package garment_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Jumpers that were refused for no good reason, or whose refusal named what was refused
// again.
func TestJumpersOnceRefused(t *testing.T) {
	made := func(name string, s garment.Spec) {
		t.Helper()
		if _, err := garment.Pieces(s); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	with := func(changes ...change) garment.Spec {
		s := adultJumper()
		for _, change := range changes {
			change(&s)
		}
		return s
	}
	made("a sleeve of 2000 rows", with(ofSleeve(func(v *garment.SleeveSpec) { v.Length = length("666.6 cm") })))
	made("a vee by decreases", with(func(s *garment.Spec) {
		s.Neck.Shape, s.Neck.Depth, s.Methods.Neck = garment.VeeNeck, length("20 cm"), garment.By(shaping.Fashioned)
	}))
	made("one increase over three rows between plain ones", with(cuffed("35 cm", "22 cm")))
	made("the cuff that a check names", with(cuffed("23.2 cm", "0 cm"), func(s *garment.Spec) { s.Hand, s.Checks.Cuff = length("28 cm"), garment.AsError }))
	cured := func(s garment.Spec) {
		t.Helper()
		_, err := garment.Pieces(s)
		refusal := (*garment.Error)(nil)
		if !errors.As(err, &refusal) {
			t.Errorf("not refused: %v", err)
			return
		}
		for field, l := range curesOf(refusal) {
			cure := s
			lengths[field](&cure, length(l))
			made(fmt.Sprint(err, "\nwith ", field, " ", l), cure)
		}
	}

	// Odd and even: the hem of a body of 21 stitches on 40 needles.
	odd := unitGauge(21, 100, 20, 0, 5, 4)
	odd.Sleeve, odd.Setup.Needles, odd.Body.Hem = &garment.SleeveSpec{Length: length("60 cm"), Cuff: length("20 cm"), Top: length("40 cm")}, 40, length("60 cm")
	cured(odd)
	odd.Body.Hem = gauge.Length{}
	cuffed("21 cm", "0 cm")(&odd)
	topped("60 cm")(&odd)
	cured(odd)
}
