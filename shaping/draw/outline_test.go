package draw

import (
	"math"
	"os"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"pgregory.net/rapid"
)

// area returns what a closed line encloses, in square millimetres.
func area(points []point) float64 {
	sum := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += float64(p.x)*float64(q.y) - float64(q.x)*float64(p.y)
	}
	return math.Abs(sum) / 2 / 1e6
}

// The outline encloses as much as the loops that the judge has knitted, but for what lies
// between the drawing and its steps.
func TestOutlineEnclosesTheCloth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := gauge.MustParseLength("1 mm")
		spec := rapid.OneOf(gen.JumperSpec(mm), gen.CardiganSpec(mm)).Draw(t, "spec")
		set, err := garment.Pieces(spec)
		if err != nil {
			t.Skip(err)
		}
		for _, p := range set.Pieces {
			cell := p.Gauge.Width(1).Millimetres().Mul(p.Gauge.Height(1).Millimetres()).InexactFloat64()
			between := 0.0
			for _, e := range p.Edges {
				between += e.Area * 100
			}
			// A row over the whole width, for edges that are shaped a row apart and for what
			// is bound off with separate yarn, and a few stitches at the ends of the shoulders.
			slack := cell * float64(2*p.Widths.Widest()+2*p.Heights.Drop+p.Widths.Shoulder)
			cloth := float64(p.Cloth.Loops()) * cell
			for _, points := range [][]point{drawn(p).points(), drawn(p).blocked().points()} {
				if got := area(points); math.Abs(got-cloth) > between+slack {
					t.Fatalf("%s: the outline encloses %.0f mm2, the cloth has %.0f; between lie %.0f and %.0f", p.Name(), got, cloth, between, slack)
				}
			}
		}
	})
}

// Without what the seams take the outline has the widths and the height that the piece says.
func TestFinishedOutlineHasTheSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := gauge.MustParseLength("1 mm")
		spec := rapid.OneOf(gen.JumperSpec(mm), gen.CardiganSpec(mm)).Draw(t, "spec")
		set, err := garment.Pieces(spec)
		if err != nil {
			t.Skip(err)
		}
		for _, p := range set.Pieces {
			points := drawn(p).finished().points()
			for _, s := range p.Sizes {
				var got svgw.Number
				switch s.Name {
				case "width":
					if p.Outer().IsValid() && heights(p).NeckStart() < heights(p).Underarm {
						continue // the neck begins lower
					}
					got = widthAt(points, drawn(p).finished().up(heights(p).Underarm)-2)
				case "hem", "cuff":
					got = widthAt(points, 2)
				case "height":
					for _, at := range points {
						got = max(got, at.y)
					}
				default:
					continue
				}
				if want := full(s.Knitted); got < want-20 || got > want+20 {
					t.Fatalf("%s: %s is %v in the outline, %v in the piece", p.Name(), s.Name, got, want)
				}
			}
		}
	})
}

// widthAt returns how wide the outline is at a height, on the outside.
func widthAt(points []point, y svgw.Number) svgw.Number {
	least, most := svgw.Number(math.MaxInt64), svgw.Number(math.MinInt64)
	for i, p := range points {
		q := points[(i+1)%len(points)]
		if y < min(p.y, q.y) || y > max(p.y, q.y) {
			continue
		}
		if p.y == q.y {
			least, most = min(least, p.x, q.x), max(most, p.x, q.x)
			continue
		}
		x := p.x + (q.x-p.x)*(y-p.y)/(q.y-p.y)
		least, most = min(least, x), max(most, x)
	}
	return most - least
}

// Of a piece that is alike on both sides the blocked outline is alike too.
func TestBlockedOutlineIsAlikeOnBothSides(t *testing.T) {
	for _, program := range []string{"frontpiece", "pullover"} {
		text, err := os.ReadFile("../../examples/" + program + "/demo.json")
		if err != nil {
			t.Fatal(err)
		}
		spec, err := plan.ParseSpec(text)
		if err != nil {
			t.Fatal(err)
		}
		set, err := garment.Pieces(spec)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range set.Pieces {
			points := drawn(p).blocked().points()
			middle := svgw.Number(0) // of an odd piece half a stitch to the right
			if p.Work.Panels[0].Needles.Len()%2 == 1 {
				middle = full(p.Gauge.Width(1))
			}
			n := len(points)
			for i, at := range points {
				other := points[n-1-i]
				if d := at.x + other.x - middle; at.y != other.y || d < -2 || d > 2 {
					t.Errorf("%s %s: %v has %v at the other side", program, p.Name(), at, other)
				}
			}
		}
	}
}

// A drawn shoulder that is steep at the tip has its first steps higher up; its line begins at
// the tip all the same.
func TestSteepShoulderIsDrawnFromItsTip(t *testing.T) {
	spec, err := plan.ParseSpec([]byte(`{"format": "walewise-spec/1", "gauge": {"stitches": "23", "rows": "32", "over": "10 cm"},
		"body": {"width": "50 cm", "length": "10 cm"}, "armhole": {"depth": "20 cm", "inset": "4 cm"},
		"neck": {"shape": "round", "width": "18 cm", "depth": "7 cm"},
		"shoulder": {"drop": "4 cm", "path": "M 0 40 C 8 16 40 3 90 0"}}`))
	if err != nil {
		t.Fatal(err)
	}
	front, err := garment.Front(spec)
	if err != nil {
		t.Fatal(err)
	}
	if front.ShoulderRow <= front.Heights.Tip() {
		t.Fatalf("the first shoulder step is at row %d, the tip %d rows high: not steep enough", front.ShoulderRow, front.Heights.Tip())
	}
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		edge := drawn(front).outer(side)
		x := drawn(front).boundary(front.Work.Panels[0].Needles, side) + inward(side, drawn(front).across(front.Widths.Inset))
		found := false
		for _, p := range edge {
			found = found || p == point{x, drawn(front).up(front.Heights.Tip())}
		}
		if !found {
			t.Errorf("%v: no corner at the tip, %v stitches in and %d rows high: %v", side, front.Widths.Inset, front.Heights.Tip(), edge)
		}
	}
}

// Where the shoulder slopes in equal groups the drawn line begins as high as its outermost
// wale is, the closing row included, and ends as high as the one at the neck.
func TestDrawnShoulderLiesOnItsWales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := gauge.MustParseLength("1 mm")
		spec := rapid.OneOf(gen.JumperSpec(mm), gen.CardiganSpec(mm)).Draw(t, "spec")
		spec.Shoulder.Path = ""
		set, err := garment.Pieces(spec)
		if err != nil {
			t.Skip(err)
		}
		for _, p := range set.Pieces {
			if p.Widths.Neck == 0 {
				continue
			}
			f, o := lay(p), drawn(p)
			for _, m := range f.marks {
				if m.step.Row < p.ShoulderRow || m.edge != outerOf(p, m.panel, m.edge) {
					continue
				}
				// The first group that goes is the outermost: its wale ends at the tip.
				runs := f.wales[m.needle.Index()-f.needles.First.Index()]
				if got := runs[len(runs)-1].to; got != o.tip(m.edge) {
					t.Fatalf("%s: the wale of %v ends at %d, the drawn shoulder at the %v begins at %d", p.Name(), m.needle, got, m.edge, o.tip(m.edge))
				}
				break
			}
		}
	})
}

// outerOf returns the outer edge of a panel, the given one where both are.
func outerOf(p garment.Piece, panel string, edge shaping.Side) shaping.Side {
	switch {
	case p.Outer().IsValid():
		return p.Outer()
	case panel == shaping.LeftHalf:
		return shaping.Left
	case panel == shaping.RightHalf:
		return shaping.Right
	}
	return edge
}

func TestView(t *testing.T) {
	for _, c := range []struct {
		on     shaping.Place
		facing shaping.Facing
		side   string
		means  string
	}{
		{shaping.Bed, shaping.PurlSide, "Bed view: the purl side faces you", "left and right are those of the bed"},
		{shaping.Bed, shaping.KnitSide, "Right side view: the knit side faces you", "left and right are the other way round than at the bed"},
		{shaping.Hand, shaping.KnitSide, "Right side view: the knit side faces you", "odd rows begin at the right"},
		{shaping.Hand, shaping.PurlSide, "Wrong side view: the purl side faces you", "odd rows begin at the left"},
	} {
		side, means := view(garment.Piece{Work: shaping.Work{Place: c.on, Facing: c.on.Facing()}}, c.facing)
		if side != c.side || means != c.means {
			t.Errorf("%v seen on the %v side: %s, %s", c.on, c.facing, side, means)
		}
	}
}
