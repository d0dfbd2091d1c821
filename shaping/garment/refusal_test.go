package garment_test

import (
	"errors"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

type change = func(*garment.Spec)

// refused is a change to a sound spec with the refusal it meets and, where that names
// values, the changes it asks for, any of which must do.
type refused struct {
	spoil change
	want  string
	field string
	kind  error
	cures []change
}

// refusals are refusals of fronts, of changes to the spec of [adult].
var refusals = []refused{
	{func(s *garment.Spec) { *s = garment.Spec{} }, "gauge: missing: give a gauge, a swatch or swatches", "gauge", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Gauge = gauge.Gauge{} }, "gauge: missing: give a gauge, a swatch or swatches", "gauge", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Swatch = swatch(22, "10 cm") }, "swatch: given together with a gauge: give one of the two", "swatch", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Swatch = nil },
		func(s *garment.Spec) { s.Gauge = gauge.Gauge{} },
	}},
	{func(s *garment.Spec) { s.Gauge, s.Swatch = gauge.Gauge{}, swatch(0, "10 cm") }, "swatch.stitches 0: a number above 0, such as 22 or 22.5, and at most 1000000", "swatch.stitches", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Swatch = swatch(22, "10 cm") },
	}},
	{func(s *garment.Spec) { s.Gauge, s.Swatch = gauge.Gauge{}, swatch(22, "0 cm") }, "swatch.width 0 cm: a length above 0 of at most 1000 m, such as 10 cm", "swatch.width", garment.ErrSpec, nil},

	{func(s *garment.Spec) { s.Body.Width = gauge.Length{} }, "body.width 0 cm: a length above 0 is needed", "body.width", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Neck.Depth = length("-8 cm") }, "neck.depth -8 cm: a length above 0 is needed", "neck.depth", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Shoulder.Drop = length("-1 cm") }, "shoulder.drop -1 cm: 0 or a length above it is needed", "shoulder.drop", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Shoulder.Drop = gauge.Length{} },
	}},
	{func(s *garment.Spec) { s.Armhole.BindOff = given("-1 mm") }, "armhole.bindOff -0.1 cm: 0 or a length above it is needed", "armhole.bindOff", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Body.Length = length("1000 cm").Mul(100) }, "body.length 100000 cm: at most 1000 cm", "body.length", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Body.Length = length("1000 cm") },
	}},
	{func(s *garment.Spec) { s.Body.Length, s.Gauge = length("1000 cm"), newGauge("22", "60", "10 cm") }, "body.length 1000 cm: the piece would have 6144 rows, at most 5000 are planned", "body.length", garment.ErrFit, nil},
	{
		func(s *garment.Spec) {
			s.Body.Length, s.Neck.Depth, s.Gauge = length("380 cm"), length("150 cm"), newGauge("22", "120", "10 cm")
		}, "neck.depth 150 cm: with both halves the piece would have 6648 rows, at most 5000 are planned: at most 12.6 cm", "neck.depth", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Neck.Depth = length("12.6 cm") }},
	},
	{
		func(s *garment.Spec) {
			s.Body.Length, s.Neck.Depth, s.Gauge = length("380 cm"), length("300 cm"), newGauge("22", "70", "10 cm")
		}, "neck.depth 300 cm: 2100 rows, at most 2000 are drawn, which is 285.7 cm", "neck.depth", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Neck.Depth = length("285.7 cm") }},
	},
	{func(s *garment.Spec) { s.Title = strings.Repeat("é", 201) }, `title "` + strings.Repeat("é", 40) + `...": at most 200 characters`, "title", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Title = strings.Repeat("é", 200) },
	}},
	{func(s *garment.Spec) { s.Seam.Stitches = 11 }, "seam.stitches 11: 0 to 10", "seam.stitches", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Seam.Stitches = 10 },
		func(s *garment.Spec) { s.Seam.Stitches = 0 },
	}},
	{func(s *garment.Spec) { s.Start.Edge = 7 }, "start.edge no edge: waste or closed", "start.edge", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Start.Edge = garment.ClosedEdge },
	}},

	{func(s *garment.Spec) { s.Neck.Width = length("45 cm") }, "neck.width 45 cm: wider than the body leaves: at most 32.0 cm", "neck.width", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Width = length("32.0 cm") },
	}},
	{func(s *garment.Spec) { s.Armhole.Inset = length("20 cm") }, "neck.width 18 cm: wider than the body leaves: at most 4.0 cm", "neck.width", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Width, s.Armhole.BindOff = length("4.0 cm"), given("15 cm") },
	}},
	{func(s *garment.Spec) { s.Armhole.Inset = length("30 cm") }, "armhole.inset 30 cm: the body of 50 cm leaves no shoulders: at most 13.0 cm beside the neck", "armhole.inset", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Armhole.Inset, s.Armhole.BindOff = length("13.0 cm"), given("8 cm") },
	}},
	{func(s *garment.Spec) { s.Body.Width, s.Armhole.Inset = length("1 cm"), gauge.Length{} }, "body.width 1 cm: too few stitches for a neck and two shoulders", "body.width", garment.ErrFit, nil},
	{func(s *garment.Spec) { s.Neck.Depth = length("60 cm") }, "neck.depth 60 cm: deeper than the piece is high: at most 59.3 cm", "neck.depth", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Depth = length("59.3 cm") },
	}},
	{func(s *garment.Spec) { s.Start.Band, s.Neck.Depth = length("30 cm"), length("40 cm") }, "neck.depth 40 cm: the neck would begin in the band: at most 30.0 cm", "neck.depth", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Depth = length("30.0 cm") },
	}},
	{
		func(s *garment.Spec) { s.Units, s.Neck.Width = gauge.Inch, length("18 in") },
		"neck.width 18 in: wider than the body leaves: at most 12.63 in", "neck.width", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Neck.Width = length("12.63 in") }},
	},
	{
		func(s *garment.Spec) {
			s.Units, s.Neck.Width, s.Neck.Flat = gauge.Millimetre, length("450 mm"), given("400 mm")
		},
		"neck.width 450 mm: wider than the body leaves: at most 320 mm, and neck.flat no more", "neck.width", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Neck.Width, s.Neck.Flat = length("320 mm"), given("320 mm") }},
	},
	{
		func(s *garment.Spec) {
			s.Setup.On, s.Body.Width, s.Gauge = shaping.Hand, length("950 cm"), newGauge("22", "10", "10 cm")
		},
		"body.width 950 cm: 2092 stitches, at most 2000 are planned, which is 908.1 cm", "body.width", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Body.Width = length("908.1 cm") }},
	},
	{
		func(s *garment.Spec) {
			s.Body.Width, s.Neck.Width, s.Armhole.Inset = length("25 cm"), length("17 cm"), gauge.Length{}
			s.Shoulder.Drop, s.Methods.Shoulder = length("4 cm"), garment.Pair{Several: shaping.BindOff, Single: shaping.Hold}
		},
		"methods.shoulder bindOff and hold: the shoulder has groups of 1 and of 2 stitches, which these two methods cannot work one after the other: hold or bindOff for all", "methods.shoulder", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.Hold) },
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) },
		},
	},
	{func(s *garment.Spec) { s.Armhole.Curve = given("0 cm") }, "armhole.curve 0 cm: a length above 0 is needed", "armhole.curve", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Armhole.Curve = given("5 cm") },
	}},
	{func(s *garment.Spec) { s.Neck.Depth, s.Shoulder.Drop = length("1 mm"), gauge.Length{} }, "neck.depth 0.1 cm: fewer than 2 rows: at least 0.7 cm", "neck.depth", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Depth = length("0.7 cm") },
	}},
	{func(s *garment.Spec) { s.Shoulder.Drop, s.Neck.Depth = length("20 cm"), length("30 cm") }, "shoulder.drop 20 cm: 60 rows, a shoulder of 23 stitches slopes over at most 42, which is 14.0 cm", "shoulder.drop", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Shoulder.Drop = length("14.0 cm") },
	}},
	{func(s *garment.Spec) { s.Neck.Flat = given("19 cm") }, "neck.flat 19 cm: wider than the neck: at most 18 cm", "neck.flat", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Flat = given("18 cm") },
	}},

	{func(s *garment.Spec) { s.Body.Width = length("100 cm") }, "body.width 100 cm: 222 stitches need 111 needles on each side of the middle, the bed has 100: 22 needles are missing; the widest piece that fits is 200 stitches, 90.0 cm", "body.width", garment.ErrBed, []change{
		func(s *garment.Spec) { s.Body.Width = length("90.0 cm") },
		func(s *garment.Spec) { s.Setup.Needles = garment.DefaultNeedles + 22 },
	}},
	{func(s *garment.Spec) { s.Setup.Needles = 2 }, "body.width 50 cm: 112 stitches need 56 needles on each side of the middle, the bed has 1: 110 needles are missing", "body.width", garment.ErrBed, []change{
		func(s *garment.Spec) { s.Setup.Needles = 112 },
	}},
	{func(s *garment.Spec) { s.Setup.Needles = 201 }, "work.needles 201: an even number from 2 to 1000", "work.needles", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Setup.Needles = 1000 },
	}},
	{func(s *garment.Spec) { s.Setup.Carriage = 7 }, "work.carriage Side(7): left or right", "work.carriage", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Setup.Carriage = shaping.Left },
	}},

	{func(s *garment.Spec) { s.Armhole.Curve = given("22 cm") }, "armhole.curve 22 cm: higher than the armhole: at most 21 cm", "armhole.curve", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Armhole.Curve = given("21 cm") },
	}},
	{
		func(s *garment.Spec) {
			s.Armhole.Curve, s.Methods.Armhole = given("2 cm"), garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}
			s.Armhole.Curve = given("3 mm")
		},
		"armhole.curve 0.3 cm: 7 stitches cannot go by bindOff and fashioned over 1 row: raise armhole.curve to 1.4 cm", "armhole.curve", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Armhole.Curve = given("1.4 cm") }},
	},
	{
		func(s *garment.Spec) { s.Armhole.Curve, s.Methods.Armhole = given("2 cm"), decreased },
		"armhole.curve 2 cm: 13 stitches cannot go by single and double decreases over 6 rows: raise armhole.curve to 4.4 cm, or methods.armhole bindOff", "armhole.curve", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Armhole.Curve = given("4.4 cm") },
			func(s *garment.Spec) { s.Methods.Armhole = garment.By(shaping.BindOff) },
		},
	},
	{func(s *garment.Spec) { s.Armhole.BindOff = given("7 cm") }, "armhole.bindOff 7 cm: more than the inset: at most 6 cm", "armhole.bindOff", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Armhole.BindOff = given("6 cm") },
	}},
	{func(s *garment.Spec) { s.Armhole.Depth, s.Armhole.Inset = length("3 mm"), length("2.5 cm") }, "armhole.depth 0.3 cm: too low for the underarms below the shoulders (1 row): 2.0 cm is enough", "armhole.depth", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Armhole.Depth = length("2.0 cm") },
	}},
	{
		func(s *garment.Spec) {
			s.Body.Length, s.Armhole.Depth, s.Shoulder.Drop = length("1 mm"), length("1 mm"), gauge.Length{}
		}, "armhole.depth 0.1 cm: too few rows for body, armhole and shoulder: lengthen one", "armhole.depth", garment.ErrFit, nil,
	},
	{func(s *garment.Spec) { s.Start.Band = length("40 cm") }, "start.band 40 cm: higher than the body up to the underarm: at most 36 cm", "start.band", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Start.Band = length("36 cm") },
	}},

	{func(s *garment.Spec) { s.Neck.Shape = 0 }, "neck.shape no shape: round, vee, square or path", "neck.shape", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Neck.Shape = garment.VeeNeck },
		func(s *garment.Spec) { s.Neck.Shape = garment.SquareNeck },
		func(s *garment.Spec) { s.Neck.Shape, s.Neck.Path = garment.PathNeck, sound },
	}},
	{
		func(s *garment.Spec) { s.Neck.Shape = garment.PathNeck },
		`neck.path: missing: the shape path needs one, SVG path data such as "` + sound + `"`, "neck.path", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Neck.Path = sound }},
	},
	{
		func(s *garment.Spec) { s.Neck.Path = sound },
		`neck.path "` + sound + `": belongs to the shape path: leave it out, or give neck.shape path`, "neck.path", garment.ErrSpec,
		[]change{
			func(s *garment.Spec) { s.Neck.Path = "" },
			func(s *garment.Spec) { s.Neck.Shape = garment.PathNeck },
		},
	},
	{
		drawnNeck("M 0 60 K 20 0"),
		`neck.path "M 0 60 K 20 0": path "K 20 0" at byte 7: no command of path data` + drawNeckSo, "neck.path", garment.ErrSpec,
		[]change{drawnNeck(sound)},
	},
	{
		drawnNeck("M 0 60 L 30 20 L 20 40 L 50 0"),
		`neck.path "M 0 60 L 30 20 L 20 40 L 50 0": path segment 2 (L) at byte 15: a path that descends; an edge leads from its lower end up to its upper end` + drawNeckSo, "neck.path", garment.ErrSpec,
		[]change{drawnNeck(sound)},
	},
	{
		drawnNeck("M 0 60 L 30 40 L 20 20 L 50 0"),
		`neck.path "M 0 60 L 30 40 L 20 20 L 50 0": turns back` + drawNeckSo, "neck.path", garment.ErrSpec,
		[]change{drawnNeck(sound)},
	},
	{
		drawnNeck("M 50 60 L 0 0"),
		`neck.path "M 50 60 L 0 0": leads to the wrong side or straight up` + drawNeckSo, "neck.path", garment.ErrSpec,
		[]change{drawnNeck(sound)},
	},
	{drawnNeck("M 0 60 V 0"), `neck.path "M 0 60 V 0": leads to the wrong side or straight up` + drawNeckSo, "neck.path", garment.ErrSpec, nil},
	{drawnNeck("M 0 60 H 50"), `neck.path "M 0 60 H 50": edge height 0 cm: 1/1000 mm to 1000 m` + drawNeckSo, "neck.path", garment.ErrSpec, nil},
	{
		func(s *garment.Spec) { s.Armhole.Path = "nothing" },
		`armhole.path "nothing": path "nothing" at byte 0: a path starts with M; draw in mm from the underarm up to where the armhole is upright, x growing all the way, such as "` + sound + `"`, "armhole.path", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Armhole.Path = sound }},
	},
	{
		func(s *garment.Spec) { s.Armhole.Inset, s.Armhole.Path = gauge.Length{}, sound },
		`armhole.path "` + sound + `": without an inset the armhole is straight: leave it out, or give armhole.inset`, "armhole.path", garment.ErrSpec,
		[]change{
			func(s *garment.Spec) { s.Armhole.Path = "" },
			func(s *garment.Spec) { s.Armhole.Inset = length("6 cm") },
		},
	},
	{
		func(s *garment.Spec) { s.Shoulder.Path = "M 9 9 L 0 0" },
		`shoulder.path "M 9 9 L 0 0": leads to the wrong side or straight up; draw in mm from the tip up to the neck point, x growing all the way, such as "` + sound + `"`, "shoulder.path", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Shoulder.Path = sound }},
	},
	{
		func(s *garment.Spec) { s.Shoulder.Drop, s.Shoulder.Path = gauge.Length{}, sound },
		`shoulder.path "` + sound + `": without a drop the shoulder is level: leave it out, or give shoulder.drop`, "shoulder.path", garment.ErrSpec,
		[]change{
			func(s *garment.Spec) { s.Shoulder.Path = "" },
			func(s *garment.Spec) { s.Shoulder.Drop = length("3 cm") },
		},
	},
	{
		func(s *garment.Spec) {
			s.Shoulder.Path, s.Methods.Shoulder = sound, garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}
		},
		"methods.shoulder bindOff and fashioned: groups of a drawn shoulder have any number of stitches: hold or bindOff for all, or leave shoulder.path out", "methods.shoulder", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.Hold) },
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) },
			func(s *garment.Spec) { s.Shoulder.Path = "" },
		},
	},
	{func(s *garment.Spec) { s.Setup.On = 7 }, "work.on Place(7): bed or hand", "work.on", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Setup.On = shaping.Hand },
	}},
	{
		func(s *garment.Spec) { s.Setup.On, s.Setup.Carriage = shaping.Hand, shaping.Left },
		"work.carriage left: in the hand row 1 starts at the right: leave it out", "work.carriage", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Setup.Carriage = 0 }},
	},
	{
		func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.CastOn) },
		"methods.shoulder castOn: hold, bindOff or fashioned, or a list of two of them: for several stitches and for single ones", "methods.shoulder", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) }},
	},
	{
		func(s *garment.Spec) { s.Methods.Neck = garment.Pair{Several: shaping.Hold} },
		"methods.neck hold and Method(0): hold, bindOff or fashioned, or a list of two of them: for several stitches and for single ones", "methods.neck", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Methods.Neck.Single = shaping.BindOff }},
	},
	{
		func(s *garment.Spec) { s.Methods.Neck = garment.By(shaping.Fashioned) },
		"methods.neck fashioned: the bottom of a round neck takes several stitches at once, a fashioned decrease takes 1: hold or bindOff, alone or as a list with fashioned for single stitches", "methods.neck", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Methods.Neck = garment.By(shaping.Hold) },
			func(s *garment.Spec) { s.Methods.Neck = garment.By(shaping.BindOff) },
			func(s *garment.Spec) {
				s.Methods.Neck = garment.Pair{Several: shaping.Hold, Single: shaping.Fashioned}
			},
			func(s *garment.Spec) {
				s.Methods.Neck = garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}
			},
		},
	},
	{
		func(s *garment.Spec) { s.Neck.Shape, s.Methods.Neck = garment.VeeNeck, garment.By(shaping.Fashioned) },
		`neck.depth 8 cm: 20 stitches cannot go by single decreases over 24 rows: at least 13.4 cm, or methods.neck ["fashioned", "fashioned"], or methods.neck hold or bindOff`, "neck.depth", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Neck.Depth = length("13.4 cm") },
			func(s *garment.Spec) { s.Methods.Neck = garment.By(shaping.Hold) },
			func(s *garment.Spec) { s.Methods.Neck = garment.By(shaping.BindOff) },
		},
	},
	{
		func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.Fashioned) },
		"methods.shoulder fashioned: 4 stitches go at once, a fashioned decrease takes 1: hold or bindOff, or a shoulder.drop of 14.0 cm", "methods.shoulder", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.Hold) },
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) },
			func(s *garment.Spec) { s.Shoulder.Drop = length("14.0 cm") },
		},
	},
	{
		func(s *garment.Spec) {
			s.Methods.Shoulder = garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned}
		},
		"methods.shoulder fashioned and fashioned: 4 stitches go at once, a fashioned decrease takes 2: hold or bindOff, or a shoulder.drop of 7.3 cm", "methods.shoulder", garment.ErrFit,
		[]change{func(s *garment.Spec) { s.Shoulder.Drop = length("7.3 cm") }},
	},
	{
		func(s *garment.Spec) {
			s.Shoulder.Drop, s.Methods.Shoulder = length("9 cm"), garment.Pair{Several: shaping.Hold, Single: shaping.BindOff}
		},
		"methods.shoulder hold and bindOff: the shoulder has groups of 1 and of 2 stitches, which these two methods cannot work one after the other: hold or bindOff for all", "methods.shoulder", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.Hold) },
			func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) },
		},
	},
	{
		func(s *garment.Spec) {
			s.Methods.Armhole, s.Armhole.BindOff = garment.By(shaping.Fashioned), given("2 cm")
		},
		"armhole.bindOff 2 cm: methods.armhole has decreases only: leave it out, or name bindOff or hold for several stitches", "armhole.bindOff", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Armhole.BindOff, s.Armhole.Curve = garment.Optional{}, given("18 cm") },
			func(s *garment.Spec) { s.Methods.Armhole = garment.By(shaping.Hold) },
		},
	},
	{
		func(s *garment.Spec) {
			s.Armhole.Inset, s.Methods.Armhole = length("7 cm"), garment.By(shaping.Fashioned)
		},
		`armhole.inset 7 cm: 15 stitches cannot go by single decreases over 25 rows: raise armhole.curve to 9.7 cm, or methods.armhole ["fashioned", "fashioned"], or methods.armhole bindOff`, "armhole.inset", garment.ErrFit,
		[]change{
			func(s *garment.Spec) { s.Armhole.Curve = given("9.7 cm") },
			func(s *garment.Spec) { s.Methods.Armhole = garment.By(shaping.BindOff) },
		},
	},

	{func(s *garment.Spec) { s.Body.Hem = length("-1 cm") }, "body.hem -1 cm: 0 or a length above it is needed", "body.hem", garment.ErrSpec, []change{
		func(s *garment.Spec) { s.Body.Hem = gauge.Length{} },
	}},
	{func(s *garment.Spec) { s.Body.Hem, s.Body.Length = length("30 cm"), length("10 cm") }, "body.hem 30 cm: 22 stitches at each side cannot go or come one at a time over 30 rows: from 37.3 cm to 62.7 cm", "body.hem", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Body.Hem = length("37.3 cm") },
		func(s *garment.Spec) { s.Body.Hem = length("62.7 cm") },
	}},
	{func(s *garment.Spec) { s.Body.Hem = length("95 cm"); s.Setup.Needles = 200 }, "body.hem 95 cm: 212 stitches need 106 needles on each side of the middle, the bed has 100: 12 needles are missing; the widest piece that fits is 200 stitches, 90.0 cm", "body.hem", garment.ErrBed, []change{
		func(s *garment.Spec) { s.Body.Hem = length("90.0 cm") },
		func(s *garment.Spec) { s.Setup.Needles = 212 },
	}},
	{func(s *garment.Spec) { s.Body.Waist = &garment.Waist{Height: length("18 cm")} }, "body.waist.width 0 cm: a length above 0 is needed", "body.waist.width", garment.ErrSpec, nil},
	{waist("44 cm", "0 cm"), "body.waist.height 0 cm: a length above 0 is needed", "body.waist.height", garment.ErrSpec, nil},
	{func(s *garment.Spec) { s.Start.Band = length("6 cm"); waist("44 cm", "5 cm")(s) }, "body.waist.height 5 cm: within the band: at least 6 cm", "body.waist.height", garment.ErrFit, nil},
	{waist("44 cm", "37 cm"), "body.waist.height 37 cm: above the underarm: at most 36 cm", "body.waist.height", garment.ErrFit, nil},
	{waist("20 cm", "18 cm"), "body.waist.width 20 cm: 33 stitches at each side cannot go or come one at a time over 54 rows: from 27.3 cm to 72.7 cm", "body.waist.width", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Body.Waist.Width = length("27.3 cm") },
		func(s *garment.Spec) { s.Body.Waist.Width = length("72.7 cm") },
	}},
	{func(s *garment.Spec) { s.Body.Hem = length("44 cm"); waist("44 cm", "34 cm")(s) }, "body.waist.width 44 cm: 7 stitches at each side cannot go or come one at a time over 5 rows: from 49.1 cm to 50.9 cm", "body.waist.width", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Body.Waist.Width = length("49.1 cm") },
		func(s *garment.Spec) { s.Body.Waist.Width = length("50.9 cm") },
	}},
	{func(s *garment.Spec) { s.Body.Hem = length("1 mm") }, "body.hem 0.1 cm: fewer than 2 stitches: at least 1.4 cm", "body.hem", garment.ErrFit, nil},
	{waist("1 mm", "18 cm"), "body.waist.width 0.1 cm: fewer than 2 stitches: at least 1.4 cm", "body.waist.width", garment.ErrFit, nil},
	{func(s *garment.Spec) { s.Body.Length, s.Body.Hem = length("1 cm"), length("44 cm") }, "body.length 1 cm: the sides have too few rows to be shaped above the band: at least 6.4 cm", "body.length", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Body.Length = length("6.4 cm") },
	}},
	{waist("44 cm", "36 cm"), "body.waist.height 36 cm: too few rows to shape the sides between it and the band or the underarm: from 5.4 cm to 29.3 cm", "body.waist.height", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Body.Waist.Height = length("5.4 cm") },
		func(s *garment.Spec) { s.Body.Waist.Height = length("29.3 cm") },
	}},
	{waist("95 cm", "18 cm"), "body.waist.width 95 cm: 212 stitches need 106 needles on each side of the middle, the bed has 100: 12 needles are missing; the widest piece that fits is 200 stitches, 90.0 cm", "body.waist.width", garment.ErrBed, nil},
	{func(s *garment.Spec) {
		s.Neck.Width, s.Armhole.Inset, s.Neck.Depth = length("30 cm"), length("2 cm"), length("43 cm")
		waist("30 cm", "18 cm")(s)
	}, "neck.depth 43 cm: the neck begins below the underarm, where the body has only 68 stitches in row 55: at most 41.3 cm", "neck.depth", garment.ErrFit, []change{
		func(s *garment.Spec) { s.Neck.Depth = length("41.3 cm") },
	}},
}

// waist gives the body a waist of a width at a height.
func waist(width, height string) change {
	return func(s *garment.Spec) { s.Body.Waist = &garment.Waist{Width: length(width), Height: length(height)} }
}

// sound is the path that refusals of a path name.
const sound = "M 0 60 C 30 60 50 30 50 0"

const drawNeckSo = `; draw in mm from the end of the flat middle up to the neck point, x growing all the way, such as "` + sound + `"`

func drawnNeck(path string) change {
	return func(s *garment.Spec) { s.Neck.Shape, s.Neck.Path = garment.PathNeck, path }
}

// decreased is the pair of single and double decreases.
var decreased = garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned}

func given(s string) garment.Optional { return garment.Exactly(length(s)) }

func swatch(stitches int, width string) *gauge.Swatch {
	return &gauge.Swatch{Stitches: stitches, Width: length(width), Rows: 30, Height: length("10 cm")}
}

func TestRefusals(t *testing.T) {
	checkRefusals(t, refusals, adult, garment.Front, func(p garment.Piece) bool { return p.Name() == "" })
}

// checkRefusals: what is made of the sound spec is refused as each case says when it is
// spoilt, and not when it is cured again.
func checkRefusals[M any](t *testing.T, cases []refused, sound func() garment.Spec, make func(garment.Spec) (M, error), isNothing func(M) bool) {
	t.Helper()
	if _, err := make(sound()); err != nil {
		t.Fatal(err)
	}
	for _, test := range cases {
		t.Run(test.want, func(t *testing.T) {
			s := sound()
			test.spoil(&s)
			made, err := make(s)
			var refusal *garment.Error
			if !errors.As(err, &refusal) {
				t.Fatalf("not refused: %v", err)
			}
			if err.Error() != test.want || refusal.Field != test.field || !errors.Is(err, test.kind) {
				t.Fatalf("%T %q, field %q\nwant %q, field %q, %v", err, err, refusal.Field, test.want, test.field, test.kind)
			}
			if !isNothing(made) {
				t.Error("refused, but something was made")
			}
			for i, cure := range test.cures {
				s := sound()
				test.spoil(&s)
				cure(&s)
				if _, err := make(s); err != nil {
					t.Errorf("what the message names (%d) does not work: %v", i, err)
				}
			}
		})
	}
}

func TestErrorWithoutField(t *testing.T) {
	for _, test := range []struct {
		err  garment.Error
		want string
	}{
		{garment.Error{Want: "something"}, "something"},
		{garment.Error{Given: "7", Want: "something"}, "7: something"},
		{garment.Error{Field: "neck", Want: "something"}, "neck: something"},
	} {
		if got := test.err.Error(); got != test.want {
			t.Errorf("got %q, want %q", got, test.want)
		}
	}
}

// TestAnySpecIsKnittedOrRefused gives some fields of a sound spec any length at all: the
// pieces are knitted, or refused in one line that names a field.
func TestAnySpecIsKnittedOrRefused(t *testing.T) {
	names := slices.Sorted(maps.Keys(lengths))
	spoilt := func(t *rapid.T, s garment.Spec) garment.Spec {
		for range rapid.IntRange(1, 3).Draw(t, "fields") {
			most := rapid.SampledFrom([]int{20, 100, 1000, 5000}).Draw(t, "most")
			lengths[rapid.SampledFrom(names).Draw(t, "field")](&s, metric.Mul(rapid.IntRange(-1, most).Draw(t, "length")))
		}
		return s
	}
	t.Run("front", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) {
			s := gen.FrontSpec(metric).Draw(t, "spec")
			p, err := garment.Front(spoilt(t, s))
			if err != nil {
				checkRefusal(t, err)
				return
			}
			checkKnitted(t, p)
		})
	})
	t.Run("jumper", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) {
			set, err := garment.Pieces(spoilt(t, gen.JumperSpec(metric).Draw(t, "spec")))
			if err != nil {
				checkRefusal(t, err)
				return
			}
			for _, p := range set.Pieces {
				checkKnitted(t, p)
			}
		})
	})
}
