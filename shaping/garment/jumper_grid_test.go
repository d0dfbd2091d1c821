package garment_test

import (
	"errors"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
)

// tryPiece makes a piece and checks its sides. Planner and judge must never be the ones to
// refuse.
func tryPiece(t *testing.T, s garment.Spec, piece func(garment.Spec) (garment.Piece, error)) (made bool) {
	t.Helper()
	p, err := piece(s)
	if errors.Is(err, order.ErrOrder) || errors.Is(err, bed.ErrImpossible) || errors.Is(err, bed.ErrUntrue) {
		t.Fatalf("refused by planner or judge: %v\n%+v", err, s)
	}
	if err != nil {
		if refusal := (*garment.Error)(nil); !errors.As(err, &refusal) {
			t.Fatalf("%T: %v", err, err)
		}
		return false
	}
	checkKnitted(t, p)
	checkSides(t, p)
	return true
}

// tenths returns so many tenths of a centimetre.
func tenths(n int) gauge.Length { return gauge.Centimetres(decimal.New(int64(n), -1)) }

// Every small sleeve, from the narrowest cuff to the narrowest top, of few rows, with plain
// rows and without, on the bed and in the hand.
func TestEverySmallSleeve(t *testing.T) {
	made, refused, step := 0, 0, 1
	if testing.Short() {
		step = 4
	}
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, kind := range []garment.Cap{garment.StraightTop, garment.SetInCap} {
			for cuff := 1; cuff <= 80; cuff += 11 {
				for top := 1; top <= 120; top += 9 * step {
					for _, length := range []int{1, 7, 18} {
						for plain := range 2 {
							s := unitGauge(20, 30, 12, 0, 6, 4)
							s.Setup.On = place
							s.Sleeve = &garment.SleeveSpec{
								Length: tenths(10 * length), Cuff: tenths(cuff), Top: tenths(top), Cap: kind, Plain: tenths(10 * plain),
							}
							count(tryPiece(t, s, func(s garment.Spec) (garment.Piece, error) { return garment.Sleeve(s, shaping.Right) }), &made, &refused)
						}
					}
				}
			}
		}
	}
	t.Logf("%d made, %d refused", made, refused)
	if made < 100 || refused < 100 {
		t.Errorf("%d made, %d refused", made, refused)
	}
}

// What is taken off at the underarms goes at most a row apart at two edges that are joined,
// wherever the necks of front and back begin.
func TestUnderarmsAreARowApart(t *testing.T) {
	made, step := 0, 2
	if testing.Short() {
		step = 6
	}
	for _, setup := range []garment.Setup{{On: shaping.Hand}, {Carriage: shaping.Right}, {Carriage: shaping.Left}} {
		for _, pair := range everyPair() {
			for underarm := 20; underarm <= 21; underarm++ {
				for neck := 2; neck <= 24; neck += step {
					for _, back := range []int{2, 16, 20} {
						s := unitGauge(40, underarm, 16, 0, 8, neck)
						s.Setup, s.Methods.Armhole, s.Armhole.Inset = setup, pair, tenths(60)
						s.Back = &garment.BackSpec{Neck: garment.BackNeck{Depth: tenths(10 * back)}}
						set, err := garment.Pieces(s)
						if err != nil {
							continue // decreases that find no rows
						}
						made++
						for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
							_, _, foot, tip := armholeOf(set.Pieces[0], side)
							_, _, other, otherTip := armholeOf(set.Pieces[1], side.Opposite())
							if !oneApart(foot, other) || !oneApart(tip, otherTip) {
								t.Fatalf("rows %d and %d at the underarms, %d and %d at the tips: %+v", foot, other, tip, otherTip, s)
							}
						}
					}
				}
			}
		}
	}
	if made == 0 {
		t.Error("none was made")
	}
}

// Every small body with sides that move: hem and waist of every width, at every height, with
// a neck that begins above the underarm or below it.
func TestEverySmallSide(t *testing.T) {
	made, refused, step := 0, 0, 1
	if testing.Short() {
		step = 3
	}
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, depth := range []int{4, 16} {
			for hem := 4; hem <= 20; hem += 4 {
				for waist := 3; waist <= 20; waist += 3 {
					for height := 1; height <= 14; height += step {
						s := unitGauge(12, 14, 8, 0, 4, depth)
						s.Body.Hem, s.Setup.On = tenths(10*hem), place
						s.Body.Waist = &garment.Waist{Width: tenths(10 * waist), Height: tenths(10 * height)}
						s.Armhole.Inset = tenths(10 * (height % 3))
						count(tryPiece(t, s, garment.Front), &made, &refused)
					}
				}
			}
		}
	}
	t.Logf("%d made, %d refused", made, refused)
	if made < 50 || refused < 50 {
		t.Errorf("%d made, %d refused", made, refused)
	}
}
