package main

import (
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// group is examples of one sort of edge.
type group struct {
	name, title, says string
	examples          []example
}

// example is a piece that shows how one edge is plotted.
type example struct {
	name, title string
	asks        string // the question it answers
	look        string // what to look at
	edge        string // the name of the edge, as package garment has it
	spec        garment.Spec
	against     string // the example whose figures stand beside its own
}

// gallery returns the examples. Measurements are invented; bodies and sleeves are short, so
// that the charts show what is shaped.
func gallery() []group {
	return []group{
		{"necks", "Necks", "The neck of a front, from the flat stitches in the middle up to the neck point. Both halves are alike; the steps are those of one.", necks()},
		{"shoulders", "Shoulders", "From the tip, the outer end, up to the neck point. Stitches wait in groups, and a last row closes over all of them.", shoulders()},
		{"armholes", "Armholes", "From the underarm to the tip of the shoulder. What is taken off at once at the underarm is said apart from the curve above it.", armholes()},
		{"caps", "Caps", "The top of a sleeve. Its edge has to be as long as the armholes of front and back together, with a little ease.", caps()},
	}
}

func necks() []example {
	return []example{
		{
			name: "neck-round-shallow", title: "A shallow round neck",
			asks: "How does a curve come out that is wider than it is deep?",
			look: "Look at the first two steps: most stitches go in them, and what is left goes singly in the few rows above.",
			edge: garment.NeckEdge,
			spec: neck(swatch(24, "12 cm", 33, "12 cm"), garment.Neck{Shape: garment.RoundNeck, Width: long("14 cm"), Depth: long("4 cm")}),
		},
		deepNeck("neck-round-deep", "A deep round neck, held", garment.Methods{}, "",
			"How many words does a curve need?",
			"Look at the table of ways to say it: with each phrase the stairs come nearer to the line, and each brings less than the one before."),
		deepNeck("neck-round-bound", "The same neck, bound off and decreased",
			garment.Methods{Neck: garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}}, "neck-round-deep",
			"Does it matter how the stitches go?",
			"Look at the marks: what was held stays live for the band, what is bound off is done. Bind offs stand a row later than holds, and a decrease may stand in any row."),
		{
			name: "neck-vee", title: "A vee in the hand, in inches",
			asks: "How is a straight line said whose steps ought to be an odd number of rows apart?",
			look: "Look at the two distances in turn: on right-side rows only, every third row becomes every 2nd and 4th. And at the parity: body and neck are both even or both odd, or the point would lie beside the middle.",
			edge: garment.NeckEdge,
			spec: garment.Spec{
				Units: gauge.Inch, Swatch: swatch(22, "4 in", 30, "4 in"),
				Body: garment.Body{Width: long("10 in"), Length: long("1 in")}, Armhole: garment.Armhole{Depth: long("5 in")},
				Neck:     garment.Neck{Shape: garment.VeeNeck, Width: long("4 1/2 in"), Depth: long("4 3/4 in")},
				Shoulder: garment.Shoulder{Drop: long("3/4 in")},
				Methods:  garment.Methods{Neck: garment.By(shaping.Fashioned), Shoulder: garment.By(shaping.BindOff)},
				Setup:    garment.Setup{On: shaping.Hand},
			},
		},
		{
			name: "neck-square", title: "A square neck",
			asks: "What is left to plot when the edge goes straight up?",
			look: "Look at the sums alone: one row in which all stitches of the neck stop, then no step at all.",
			edge: garment.NeckEdge,
			spec: neck(swatch(17, "10 cm", 23, "10 cm"), garment.Neck{Shape: garment.SquareNeck, Width: long("14 cm"), Depth: long("6 cm")}),
		},
		{
			name: "neck-scoop", title: "A drawn scoop",
			asks: "What becomes of a line that was drawn by hand?",
			look: "Look where the line bends: after the hollow at the bottom it leans outwards again near the shoulder, and the steps come closer together there.",
			edge: garment.NeckEdge,
			spec: neck(swatch(25, "10 cm", 36, "10 cm"), garment.Neck{
				Shape: garment.PathNeck, Width: long("15 cm"), Depth: long("8 cm"), Flat: garment.Exactly(long("3 cm")),
				Path: "M 0 80 C 24 78 40 66 44 44 S 48 12 60 0",
			}),
		},
	}
}

// deepNeck is one deep round neck, worked by these methods.
func deepNeck(name, title string, methods garment.Methods, against, asks, look string) example {
	spec := neck(swatch(44, "20 cm", 62, "20 cm"), garment.Neck{Shape: garment.RoundNeck, Width: long("15 cm"), Depth: long("8 cm")})
	spec.Methods = methods
	return example{name: name, title: title, asks: asks, look: look, edge: garment.NeckEdge, spec: spec, against: against}
}

// neck is a front whose sides are straight, with a neck.
func neck(s *gauge.Swatch, n garment.Neck) garment.Spec {
	return garment.Spec{
		Swatch: s, Neck: n,
		Body: garment.Body{Width: long("28 cm"), Length: long("1 cm")}, Armhole: garment.Armhole{Depth: long("11 cm")},
		Shoulder: garment.Shoulder{Drop: long("1.5 cm")},
	}
}

func shoulders() []example {
	return []example{
		{
			name: "shoulder-gentle", title: "A gentle slope in equal groups",
			asks: "How many groups, and how many stitches in each?",
			look: "Look at the line: it begins at the tip, ends at the neck point, and crosses the rise between any two groups.",
			edge: garment.ShoulderEdge,
			spec: shoulder(swatch(40, "18.5 cm", 56, "18.5 cm"), garment.Shoulder{Drop: long("2 cm")}),
		},
		{
			name: "shoulder-steep", title: "A steep slope in many groups",
			asks: "What changes when the same shoulder falls twice as far and more?",
			look: "Look at the stitches left over by the division: one each goes to the groups at the neck, so that two sizes of group follow each other.",
			edge: garment.ShoulderEdge, against: "shoulder-gentle",
			spec: shoulder(swatch(40, "18.5 cm", 56, "18.5 cm"), garment.Shoulder{Drop: long("5.5 cm")}),
		},
		{
			name: "shoulder-drawn", title: "A drawn, curved shoulder",
			asks: "What if the shoulder is not a straight line?",
			look: "Look at the sizes of the groups: small ones where the line is steep, at the tip, and large ones where it runs level to the neck.",
			edge: garment.ShoulderEdge,
			spec: shoulder(swatch(23, "10 cm", 32, "10 cm"), garment.Shoulder{Drop: long("4 cm"), Path: "M 0 40 C 12 26 36 6 90 0"}),
		},
	}
}

// shoulder is a front with a small square neck between two wide shoulders.
func shoulder(s *gauge.Swatch, sh garment.Shoulder) garment.Spec {
	return garment.Spec{
		Swatch: s, Shoulder: sh,
		Body: garment.Body{Width: long("30 cm"), Length: long("1 cm")}, Armhole: garment.Armhole{Depth: long("5 cm")},
		Neck: garment.Neck{Shape: garment.SquareNeck, Width: long("10 cm"), Depth: long("6.5 cm")},
	}
}

func armholes() []example {
	set := garment.Armhole{Depth: long("15 cm"), Inset: long("6 cm"), BindOff: garment.Exactly(long("1.5 cm")), Curve: garment.Exactly(long("9 cm"))}
	drawn := garment.Armhole{
		Depth: long("16 cm"), Inset: long("5.5 cm"), BindOff: garment.Exactly(long("2 cm")), Curve: garment.Exactly(long("12 cm")),
		Path: "M 0 120 C 14 114 24 96 25 70 S 26 20 35 0",
	}
	decreased := set
	decreased.BindOff = garment.Optional{}
	return []example{
		{
			name: "armhole-round", title: "Bound off, then decreased along a quarter of an ellipse",
			asks: "Which part of the inset goes at once, which by single stitches, and when?",
			look: "Look at the three kinds of shaping from below: the flat underarm, a bind off two rows above it, then decreases that lie further and further apart.",
			edge: garment.ArmholeEdge, spec: armhole(swatch(21, "10 cm", 30, "10 cm"), set, garment.Methods{}),
		},
		{
			name: "armhole-double", title: "The same armhole by decreases alone",
			asks: "Can double decreases take the place of binding off?",
			look: "Look at the gap between line and stairs at the underarm: two stitches every second row cannot follow a line that runs level, which is why it is bound off. Compare the areas; the box is wider here, as nothing goes before it.",
			edge: garment.ArmholeEdge, against: "armhole-round",
			spec: armhole(swatch(21, "10 cm", 30, "10 cm"), decreased, garment.Methods{Armhole: garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned}}),
		},
		{
			name: "armhole-drawn", title: "A drawn armhole",
			asks: "How does an edge come out that is upright in its middle and leans inwards at its top?",
			look: "Look at the long stretch without a step: the line is upright there. Above it decreases begin again.",
			edge: garment.ArmholeEdge, spec: armhole(swatch(26, "10 cm", 35, "10 cm"), drawn, garment.Methods{}),
		},
		{
			name: "armhole-straight", title: "A dropped shoulder: no inset",
			asks: "What does the armhole of a plain, straight body need?",
			look: "Look for steps at the sides: there are none below the shoulder. The length of the edge is the depth, and half the width of a sleeve with a straight top.",
			edge: garment.ArmholeEdge, spec: armhole(swatch(21, "10 cm", 30, "10 cm"), garment.Armhole{Depth: long("15 cm")}, garment.Methods{}),
		},
	}
}

// armhole is a front with an armhole and a shallow neck.
func armhole(s *gauge.Swatch, a garment.Armhole, m garment.Methods) garment.Spec {
	return garment.Spec{
		Swatch: s, Armhole: a, Methods: m,
		Body:     garment.Body{Width: long("33 cm"), Length: long("2 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: long("12 cm"), Depth: long("5 cm")},
		Shoulder: garment.Shoulder{Drop: long("1.5 cm")},
	}
}

func caps() []example {
	return []example{
		{
			name: "cap-shallow", title: "A set-in cap, wide and shallow",
			asks: "How high does a cap get over a wide sleeve?",
			look: "Look at the length along the edge: the height is not chosen, it follows from that length.",
			edge: garment.CapEdge, spec: sleeve(garment.SleeveSpec{Cuff: long("30 cm"), Top: long("33 cm"), Cap: garment.SetInCap, Ease: long("0.5 cm"), Flat: garment.Exactly(long("7 cm"))}),
		},
		{
			name: "cap-high", title: "A set-in cap, narrow and high",
			asks: "And over a narrow sleeve for the same armhole?",
			look: "Look at both charts: fewer stitches go over more rows for an edge of the same length. A high cap hangs smoothly, a shallow one lets the arm rise.",
			edge: garment.CapEdge, against: "cap-shallow",
			spec: sleeve(garment.SleeveSpec{Cuff: long("24 cm"), Top: long("27 cm"), Cap: garment.SetInCap, Ease: long("0.5 cm"), Flat: garment.Exactly(long("7 cm"))}),
		},
		{
			name: "cap-straight", title: "A straight top",
			asks: "What is shaped on a sleeve that is sewn to a straight side?",
			look: "Look at the sides: the top is bound off in one row, and only the increases below it are spread, by the division rule.",
			edge: garment.CuffToUnderarm,
			spec: garment.Spec{
				Swatch: swatch(19, "10 cm", 26, "10 cm"),
				Body:   garment.Body{Width: long("34 cm"), Length: long("2 cm")}, Armhole: garment.Armhole{Depth: long("14.5 cm")},
				Neck:     garment.Neck{Shape: garment.RoundNeck, Width: long("13 cm"), Depth: long("5 cm")},
				Shoulder: garment.Shoulder{Drop: long("1.5 cm")},
				Sleeve:   &garment.SleeveSpec{Length: long("14 cm"), Cuff: long("20 cm"), Top: long("29 cm")},
			},
		},
	}
}

// sleeve is a garment with armholes that are set in, and a sleeve for them.
func sleeve(s garment.SleeveSpec) garment.Spec {
	spec := armhole(swatch(28, "12.5 cm", 38, "12.5 cm"), garment.Armhole{
		Depth: long("15 cm"), Inset: long("4.5 cm"), BindOff: garment.Exactly(long("2 cm")),
	}, garment.Methods{})
	s.Length = long("4 cm")
	spec.Sleeve = &s
	return spec
}

// long reads a length, in whatever unit.
func long(length string) gauge.Length { return gauge.MustParseLength(length) }

// swatch is so many stitches over a width and so many rows over a height.
func swatch(stitches int, width string, rows int, height string) *gauge.Swatch {
	return &gauge.Swatch{Stitches: stitches, Width: long(width), Rows: rows, Height: long(height)}
}
