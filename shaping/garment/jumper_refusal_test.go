package garment_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// ofSleeve changes the sleeve of a spec.
func ofSleeve(set func(*garment.SleeveSpec)) change {
	return func(s *garment.Spec) { set(s.Sleeve) }
}

func cuffed(cuff, plain string) change {
	return ofSleeve(func(v *garment.SleeveSpec) { v.Cuff, v.Plain = length(cuff), length(plain) })
}

func topped(top string) change {
	return ofSleeve(func(v *garment.SleeveSpec) { v.Top = length(top) })
}

func flattened(flat string) change {
	return ofSleeve(func(v *garment.SleeveSpec) { v.Flat = given(flat) })
}

func backNeck(depth, flat string) change {
	return func(s *garment.Spec) {
		s.Back = &garment.BackSpec{Neck: garment.BackNeck{Depth: length(depth), Flat: given(flat)}}
	}
}

func neckStretch(percent string) change {
	return func(s *garment.Spec) { p := decimal.RequireFromString(percent); s.Neck.Stretch = &p }
}

// both returns a change made of two.
func both(first, second change) change {
	return func(s *garment.Spec) { first(s); second(s) }
}

// jumperRefusals are refusals of jumpers, of changes to the spec of [adultJumper].
var jumperRefusals = []refused{
	{func(s *garment.Spec) { s.Body.Width = gauge.Length{} }, "body.width 0 cm: a length above 0 is needed", "body.width", garment.ErrSpec, nil},
	{backNeck("0 cm", "10 cm"), "back.neck.depth 0 cm: a length above 0 is needed", "back.neck.depth", garment.ErrSpec, nil},
	{backNeck("70 cm", "10 cm"), "back.neck.depth 70 cm: deeper than the piece is high: at most 59.3 cm", "back.neck.depth", garment.ErrFit, []change{
		backNeck("59.3 cm", "10 cm"),
	}},
	{backNeck("1 mm", "10 cm"), "back.neck.depth 0.1 cm: fewer than 2 rows: at least 0.7 cm", "back.neck.depth", garment.ErrFit, []change{
		backNeck("0.7 cm", "10 cm"),
	}},
	{backNeck("2 cm", "-1 cm"), "back.neck.flat -1 cm: 0 or a length above it is needed", "back.neck.flat", garment.ErrSpec, []change{
		backNeck("2 cm", "0 cm"),
	}},
	{backNeck("2 cm", "19 cm"), "back.neck.flat 19 cm: wider than the neck: at most 18 cm", "back.neck.flat", garment.ErrFit, []change{
		backNeck("2 cm", "18 cm"),
	}},

	{ofSleeve(func(v *garment.SleeveSpec) { v.Length = gauge.Length{} }), "sleeve.length 0 cm: a length above 0 is needed", "sleeve.length", garment.ErrSpec, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Cuff = gauge.Length{} }), "sleeve.cuff 0 cm: a length above 0 is needed", "sleeve.cuff", garment.ErrSpec, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Top = length("-36 cm") }), "sleeve.top -36 cm: a length above 0 is needed", "sleeve.top", garment.ErrSpec, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Band = given("-1 cm") }), "sleeve.band -1 cm: 0 or a length above it is needed", "sleeve.band", garment.ErrSpec, []change{
		ofSleeve(func(v *garment.SleeveSpec) { v.Band = given("0 cm") }),
	}},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Ease = length("-1 cm") }), "sleeve.ease -1 cm: 0 or a length above it is needed", "sleeve.ease", garment.ErrSpec, []change{
		ofSleeve(func(v *garment.SleeveSpec) { v.Ease = length("0 cm") }),
	}},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Flat = given("-1 cm") }), "sleeve.flat -1 cm: 0 or a length above it is needed", "sleeve.flat", garment.ErrSpec, []change{
		flattened("0 cm"),
	}},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Plain = length("-1 cm") }), "sleeve.plain -1 cm: 0 or a length above it is needed", "sleeve.plain", garment.ErrSpec, []change{
		cuffed("22 cm", "0 cm"),
	}},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Length = length("1001 cm") }), "sleeve.length 1001 cm: at most 1000 cm", "sleeve.length", garment.ErrSpec, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Length = length("900 cm") }), "sleeve.length 900 cm: 2700 rows, at most 2000 are planned, which is 666.6 cm", "sleeve.length", garment.ErrFit, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Cap = 7 }), "sleeve.cap no top: straight or set-in", "sleeve.cap", garment.ErrSpec, []change{
		ofSleeve(func(v *garment.SleeveSpec) { v.Cap = garment.StraightTop }),
		ofSleeve(func(v *garment.SleeveSpec) { v.Cap = garment.SetInCap }),
	}},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Band = given("46 cm") }), "sleeve.band 46 cm: longer than the sleeve: at most 45 cm", "sleeve.band", garment.ErrFit, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { v.Band, v.Plain = given("6 cm"), length("20 cm") }), "sleeve.plain 20 cm: twice, with the band, longer than the sleeve: at most 19.5 cm", "sleeve.plain", garment.ErrFit, nil},
	{flattened("37 cm"), "sleeve.flat 37 cm: wider than the sleeve: at most 36 cm", "sleeve.flat", garment.ErrFit, nil},
	{flattened("35 cm"), "sleeve.flat 35 cm: wider than the underarms leave of the sleeve: at most 29.5 cm", "sleeve.flat", garment.ErrFit, []change{
		flattened("29.5 cm"),
	}},
	{topped("60 cm"), "sleeve.top 60 cm: wider than the armhole: even a cap of 6 rows has 54.8 cm along its edge, and 43.8 cm are wanted: at most 48.1 cm", "sleeve.top", garment.ErrFit, []change{
		topped("48.1 cm"),
	}},
	{both(topped("5 cm"), cuffed("5 cm", "0 cm")), "sleeve.top 5 cm: the underarms take 6 stitches at each side: at least 7.3 cm", "sleeve.top", garment.ErrFit, []change{
		topped("7.3 cm"),
	}},
	{both(topped("1 mm"), cuffed("1 mm", "0 cm")), "sleeve.cuff 0.1 cm: fewer than 2 stitches: at least 1.4 cm", "sleeve.cuff", garment.ErrFit, nil},
	{topped("1 mm"), "sleeve.top 0.1 cm: fewer than 2 stitches: at least 1.4 cm", "sleeve.top", garment.ErrFit, nil},
	{cuffed("22 cm", "22.3 cm"), "sleeve.length 45 cm: too few rows to be shaped beside the band and the plain rows: at least 54.4 cm", "sleeve.length", garment.ErrFit, []change{
		ofSleeve(func(v *garment.SleeveSpec) { v.Length = length("54.4 cm") }),
	}},
	{both(flattened("5 cm"), ofSleeve(func(v *garment.SleeveSpec) { v.Cap = garment.StraightTop })), "sleeve.flat 5 cm: a straight top is flat all over: leave it out, or give sleeve.cap set-in", "sleeve.flat", garment.ErrFit, []change{
		ofSleeve(func(v *garment.SleeveSpec) { v.Flat = garment.Optional{} }),
		ofSleeve(func(v *garment.SleeveSpec) { v.Cap = garment.SetInCap }),
	}},
	{cuffed("10 cm", "18 cm"), "sleeve.cuff 10 cm: 29 stitches at each side cannot go or come one at a time over 27 rows: from 24.6 cm to 48.1 cm", "sleeve.cuff", garment.ErrFit, []change{
		cuffed("24.6 cm", "18 cm"),
		cuffed("48.1 cm", "18 cm"),
	}},
	{cuffed("80 cm", "10 cm"), "sleeve.cuff 80 cm: 48 stitches at each side cannot go or come one at a time over 75 rows: from 2.8 cm to 70.0 cm", "sleeve.cuff", garment.ErrFit, []change{
		cuffed("2.8 cm", "10 cm"),
		cuffed("70.0 cm", "10 cm"),
	}},
	{both(cuffed("60 cm", "0 cm"), func(s *garment.Spec) { s.Setup.Needles = 120 }), "sleeve.cuff 60 cm: 134 stitches need 67 needles on each side of the middle, the bed has 60: 14 needles are missing; the widest piece that fits is 120 stitches, 53.6 cm", "sleeve.cuff", garment.ErrBed, []change{
		cuffed("53.6 cm", "0 cm"),
		func(s *garment.Spec) { s.Setup.Needles = 134 },
	}},
	{both(topped("60 cm"), func(s *garment.Spec) { s.Setup.Needles = 120 }), "sleeve.top 60 cm: 134 stitches need 67 needles on each side of the middle, the bed has 60: 14 needles are missing; the widest piece that fits is 120 stitches, 53.6 cm", "sleeve.top", garment.ErrBed, nil},

	{
		func(s *garment.Spec) { s.Head, s.Checks.Neck = length("65 cm"), garment.AsError },
		"neck.width 18 cm: Neck opening: 49.24 cm round, stretched by 25 % 61.55 cm, the head 65.00 cm: 3.45 cm less. It does not pass: it must be 52.0 cm round or stretch by 33 %, or have an opening that closes. To plan it all the same, set checks.neck to warning.", "neck.width", garment.ErrCheck, []change{
			func(s *garment.Spec) {
				percent := decimal.NewFromInt(33)
				s.Neck.Stretch = &percent
			},
			func(s *garment.Spec) { s.Neck.Width = length("21 cm") },
			func(s *garment.Spec) { s.Checks.Neck = garment.AsWarning },
		},
	},
	{
		func(s *garment.Spec) { s.Hand, s.Checks.Cuff = length("28 cm"), garment.AsError },
		"sleeve.cuff 22 cm: Cuff: 22.27 cm round, stretched by 25 % 27.84 cm, the hand 28.00 cm: 0.16 cm less. It does not pass: it must be 23.2 cm round or stretch by 26 %, or have an opening that closes. To plan it all the same, set checks.cuff to warning.", "sleeve.cuff", garment.ErrCheck, []change{
			ofSleeve(func(v *garment.SleeveSpec) {
				percent := decimal.NewFromInt(26)
				v.Stretch = &percent
			}),
			cuffed("23.2 cm", "0 cm"),
			func(s *garment.Spec) { s.Checks.Cuff = garment.AsWarning },
		},
	},
	{
		both(ofSleeve(func(v *garment.SleeveSpec) { v.Cap = garment.StraightTop }), func(s *garment.Spec) { s.Checks.Armholes = garment.AsError }),
		"sleeve.top 36 cm: Top of the sleeve: 79 stitches, 35.91 cm, the armhole has 43.84 cm along front and back: 7.93 cm less. With a top of 43.8 cm it would fit. To plan it all the same, set checks.armholes to warning.", "sleeve.top", garment.ErrCheck, []change{
			topped("43.8 cm"),
			func(s *garment.Spec) { s.Checks.Armholes = garment.AsWarning },
		},
	},
	{func(s *garment.Spec) { s.Head = length("-1 cm") }, "head -1 cm: 0 or a length above it is needed", "head", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Hand = length("-1 cm") }, "hand -1 cm: 0 or a length above it is needed", "hand", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Checks.Neck = 7 }, "checks.neck no severity: warning or error", "checks.neck", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Checks.Neck = garment.AsWarning },
		func(s *garment.Spec) { s.Checks.Neck = garment.AsError },
	}},
	{func(s *garment.Spec) { s.Checks.Bed = 3 }, "checks.bed no severity: warning or error", "checks.bed", garment.ErrSpec, nil},
	{neckStretch("-0.1"), "neck.stretch -0.1: percent, 0 to 200", "neck.stretch", garment.ErrSpec, []change{neckStretch("0"), neckStretch("200")}},
	{neckStretch("200.1"), "neck.stretch 200.1: percent, 0 to 200", "neck.stretch", garment.ErrSpec, nil},
	{ofSleeve(func(v *garment.SleeveSpec) { percent := decimal.NewFromInt(201); v.Stretch = &percent }), "sleeve.stretch 201: percent, 0 to 200", "sleeve.stretch", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Setup.On = shaping.Hand; s.Setup.Carriage = shaping.Left }, "work.carriage left: in the hand row 1 starts at the right: leave it out", "work.carriage", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Setup.Carriage = 0 },
	}},
}

func TestJumperRefusals(t *testing.T) {
	checkRefusals(t, jumperRefusals, adultJumper, garment.Pieces, func(s garment.Set) bool { return s.Pieces == nil && s.Checks == nil })
}

// A sleeve is refused where the spec has none, or for no arm.
func TestSleeveRefusals(t *testing.T) {
	cases := []refused{
		{func(s *garment.Spec) { s.Sleeve = nil }, "sleeve: missing: give length, cuff and top", "sleeve", garment.ErrSpec, []change{
			func(s *garment.Spec) {
				s.Sleeve = &garment.SleeveSpec{Length: length("45 cm"), Cuff: length("22 cm"), Top: length("36 cm")}
			},
		}},
		{func(s *garment.Spec) { s.Neck.Depth = gauge.Length{} }, "neck.depth 0 cm: a length above 0 is needed", "neck.depth", garment.ErrSpec, nil},
		{backNeck("70 cm", "10 cm"), "back.neck.depth 70 cm: deeper than the piece is high: at most 59.3 cm", "back.neck.depth", garment.ErrFit, nil},
	}
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		t.Run(side.String(), func(t *testing.T) {
			checkRefusals(t, cases, adultJumper, func(s garment.Spec) (garment.Piece, error) { return garment.Sleeve(s, side) }, func(p garment.Piece) bool { return p.Name() == "" })
		})
	}
}
