package garment_test

import (
	"errors"
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
)

// everyPair are all pairs of methods.
func everyPair() []garment.Pair {
	methods := []shaping.Method{shaping.Hold, shaping.BindOff, shaping.Fashioned}
	pairs := []garment.Pair{garment.By(shaping.Fashioned)}
	for _, several := range methods {
		for _, single := range methods {
			pairs = append(pairs, garment.Pair{Several: several, Single: single})
		}
	}
	return pairs
}

// tryFront makes a front, and checks its steps and what becomes of its stitches. Planner and judge must never be the
// ones to refuse.
func tryFront(t *testing.T, s garment.Spec) (made bool) {
	t.Helper()
	p, err := garment.Front(s)
	if errors.Is(err, order.ErrOrder) || errors.Is(err, bed.ErrImpossible) || errors.Is(err, bed.ErrUntrue) {
		t.Fatalf("refused by planner or judge: %v\n%+v", err, s)
	}
	if err != nil {
		return false
	}
	checkSteps(t, p)
	checkEnds(t, p)
	return true
}

func count(made bool, yes, no *int) {
	if made {
		*yes++
	} else {
		*no++
	}
}

// Every small neck by every pair of methods, with a shoulder and without, on the bed and
// in the hand.
func TestEverySmallNeck(t *testing.T) {
	widest, deepest := 16, 24
	if testing.Short() {
		widest, deepest = 8, 10
	}
	made, refused := 0, 0
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, shape := range []garment.NeckShape{garment.RoundNeck, garment.VeeNeck} {
			for _, pair := range everyPair() {
				for neck := 2; neck <= widest; neck += 2 {
					for depth := 2; depth <= deepest; depth += 2 {
						for _, drop := range []int{0, 4} {
							s := unitGauge(neck+16, 20, 12, drop, neck, depth)
							s.Neck.Shape, s.Methods.Neck, s.Setup.On = shape, pair, place
							count(tryFront(t, s), &made, &refused)
						}
					}
				}
			}
		}
	}
	t.Logf("%d made, %d refused", made, refused)
	if made < refused {
		t.Error("most are refused")
	}
}

// Armholes whose curve runs up to the shoulder, by every pair of methods, with the neck
// beginning below them, beside them and above.
func TestArmholesUpToTheShoulder(t *testing.T) {
	made, refused, step := 0, 0, 1
	if testing.Short() {
		step = 5
	}
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, pair := range everyPair() {
			for _, shoulder := range everyPair() {
				for armhole := 3; armhole <= 16; armhole += step {
					for _, depth := range []int{2, 8, 16, 30} {
						s := unitGauge(50, 20+armhole%2, armhole, 4, 16, depth)
						s.Armhole.Inset, s.Armhole.Curve = length("5 cm"), garment.Exactly(s.Armhole.Depth)
						s.Methods.Armhole, s.Methods.Shoulder, s.Setup.On = pair, shoulder, place
						count(tryFront(t, s), &made, &refused)
					}
				}
			}
		}
	}
	t.Logf("%d made, %d refused", made, refused)
	if made == 0 {
		t.Error("none was made")
	}
}

// Every slope of small shoulders by every pair of methods, with the neck beginning below
// the tips and above them.
func TestEverySmallShoulder(t *testing.T) {
	made := map[string]int{}
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, pair := range everyPair() {
			for stitches := 3; stitches <= 9; stitches++ {
				for drop := 0; drop <= 2*(stitches-2); drop += 2 {
					for _, depth := range []int{2, drop + 4} {
						s := unitGauge(10+2*stitches, 20, 12, drop, 10, depth)
						s.Methods.Shoulder, s.Setup.On = pair, place
						if tryFront(t, s) && drop > 0 {
							made[pair.String()]++
						}
					}
				}
			}
		}
	}
	for _, pair := range everyPair() {
		if made[pair.String()] == 0 {
			t.Errorf("no shoulder was made by %v", pair)
		}
	}
}
