package sheet_test

import (
	"bytes"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
	"example.com/walewise/shaping/sheet"
)

// jumper returns a small jumper with everything that a front alone has not: sides that
// move, a back's neck, sleeves with a set-in cap; invented figures.
func jumper() garment.Spec {
	l := gauge.MustParseLength
	s := spec()
	s.Title = "A child's waisted jumper"
	s.Body.Waist = &garment.Waist{Width: l("31 cm"), Height: l("11 cm")}
	s.Sleeve = &garment.SleeveSpec{Length: l("26 cm"), Cuff: l("16 cm"), Top: l("26 cm"), Cap: garment.SetInCap, Ease: l("1 cm")}
	return s
}

// straight returns a jumper without armholes, its body wider at the hem.
func straight() garment.Spec {
	l := gauge.MustParseLength
	s := jumper()
	s.Title = "A child's flared jumper"
	s.Armhole = garment.Armhole{Depth: s.Armhole.Depth}
	s.Body.Waist, s.Body.Hem = nil, l("38 cm")
	s.Sleeve.Cap, s.Sleeve.Ease, s.Sleeve.Top = garment.StraightTop, gauge.Length{}, l("30 cm")
	return s
}

// pieces makes the pieces of a jumper other than a front without sides.
func pieces(s garment.Spec) map[string]func() (garment.Piece, error) {
	return map[string]func() (garment.Piece, error){
		"front":  func() (garment.Piece, error) { return garment.Front(s) },
		"back":   func() (garment.Piece, error) { return garment.Back(s) },
		"sleeve": func() (garment.Piece, error) { return garment.Sleeve(s, shaping.Right) },
	}
}

func sheetOfPiece(t testing.TB, piece garment.Piece) string {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.Write(&out, piece); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestGoldenPieces(t *testing.T) {
	hand := jumper()
	hand.Setup.On = shaping.Hand
	for kind, s := range map[string]garment.Spec{"waisted": jumper(), "flared": straight(), "hand-waisted": hand} {
		for name, make := range pieces(s) {
			piece, err := make()
			if err != nil {
				t.Errorf("%s %s: %v", kind, name, err)
				continue
			}
			text := sheetOfPiece(t, piece)
			golden.Check(t, filepath.Join("testdata", kind+"-"+name+".golden"), []byte(text))
			if err := compare(text, piece); err != nil {
				t.Errorf("%s %s: %v", kind, name, err)
			}
		}
	}
}

// The sheets of all pieces of a jumper suffice to knit them.
func TestPiecesAreEnough(t *testing.T) {
	made := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		s := jumperSpec(rt)
		for _, name := range []string{"front", "back", "sleeve"} {
			piece, err := pieces(s)[name]()
			if err != nil {
				continue // not every drawn jumper can be made
			}
			made[name]++
			if err := compare(sheetOfPiece(t, piece), piece); err != nil {
				rt.Fatalf("%s: %v", name, err)
			}
		}
	})
	for name := range pieces(garment.Spec{}) {
		if made[name] == 0 {
			t.Errorf("no %s was made", name)
		}
	}
}

// jumperSpec draws a front's spec and adds what the other pieces need: sides that move, a
// back's neck, a sleeve.
func jumperSpec(rt *rapid.T) garment.Spec {
	s := gen.FrontSpec(gauge.MustParseLength("1 mm")).Draw(rt, "front")
	part := func(label string, of gauge.Length, least, most int) gauge.Length {
		const mm = 1
		tenths := rapid.IntRange(least, most).Draw(rt, label)
		return gauge.MustParseLength("1 mm").Mul(max(mm, int(of.Millimetres().IntPart())*tenths/10))
	}
	switch rapid.IntRange(0, 2).Draw(rt, "sides") {
	case 1:
		s.Body.Hem = part("hem", s.Body.Width, 8, 12)
	case 2:
		s.Body.Waist = &garment.Waist{Width: part("waist", s.Body.Width, 8, 11), Height: part("waist's height", s.Body.Length, 4, 6)}
	}
	s.Back = &garment.BackSpec{Neck: garment.BackNeck{Depth: part("back neck", s.Neck.Depth, 2, 9)}}
	s.Sleeve = &garment.SleeveSpec{
		Length: part("sleeve", s.Body.Length, 5, 14), Top: part("top", s.Armhole.Depth, 12, 22), Cuff: part("cuff", s.Armhole.Depth, 5, 12),
		Cap: rapid.SampledFrom([]garment.Cap{garment.StraightTop, garment.SetInCap}).Draw(rt, "cap"),
	}
	return s
}

// Any order of work of a piece without halves can be followed: sides that come and go by
// every method, at one edge and at both, at all distances.
func TestOnePanelIsEnough(t *testing.T) {
	front, err := garment.Front(spec())
	if err != nil {
		t.Fatal(err)
	}
	made := 0
	rapid.Check(t, func(rt *rapid.T) {
		outline := onePanel(rt)
		work, err := order.Arrange(outline)
		if err != nil {
			rt.Fatal(err)
		}
		cloth, err := bed.Knit(work)
		if err != nil {
			rt.Fatal(err)
		}
		made++
		piece := garment.Piece{Work: work, Cloth: cloth, Gauge: front.Gauge}
		piece.Spec.Setup.On = work.Place
		if err := compare(sheetOfPiece(t, piece), piece); err != nil {
			rt.Fatal(err)
		}
	})
	if made == 0 {
		t.Error("no panel was made")
	}
}

// onePanel draws a panel whose edges are shaped in runs of steps of one kind.
func onePanel(rt *rapid.T) order.Outline {
	draw := func(label string, least, most int) int { return rapid.IntRange(least, most).Draw(rt, label) }
	o := order.Outline{
		Name: "right sleeve", Carriage: shaping.Right,
		Place: rapid.SampledFrom([]shaping.Place{shaping.Bed, shaping.Hand}).Draw(rt, "place"),
		Top:   rapid.SampledFrom([]order.Ending{order.OnWaste, order.BoundOff}).Draw(rt, "top"),
	}
	if o.Place == shaping.Bed {
		o.Carriage = rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right}).Draw(rt, "carriage")
	}
	p := shaping.Panel{Name: shaping.Body, FirstRow: 1, Needles: shaping.Centred(draw("cast on", 8, 60))}
	row, inWork := 1+draw("plain", 0, 12), p.Needles.Len()
	// step adds a step at the first row from the next one on that the method can work.
	step := func(method shaping.Method, edge shaping.Side, stitches int) {
		if method != shaping.Fashioned {
			row += (row - shaping.RulesFor(method, edge, o.Carriage, shaping.Bed).FirstRow()) & 1
		}
		s := shaping.Step{Row: row, Stitches: stitches, Method: method}
		if edge == shaping.Left {
			p.Left = append(p.Left, s)
		} else {
			p.Right = append(p.Right, s)
		}
		inWork += stitches
	}
	const least = 8 // in work, so that decreases at both ends do not meet
	for range draw("runs", 1, 5) {
		method := rapid.SampledFrom([]shaping.Method{shaping.Fashioned, shaping.Fashioned, shaping.BindOff, shaping.Hold}).Draw(rt, "method")
		edges := rapid.SampledFrom([][]shaping.Side{{shaping.Left, shaping.Right}, {shaping.Left}, {shaping.Right}}).Draw(rt, "edges")
		size, apart, then := draw("size", 1, 3), draw("apart", 1, 14), draw("in turn", 1, 14)
		if method == shaping.Fashioned {
			size = rapid.SampledFrom([]int{-1, -2, 1}).Draw(rt, "by")
			if held := append(p.Left.Of(shaping.Hold), p.Right.Of(shaping.Hold)...); size > 0 && len(held) > 0 {
				size = -1 // there is no empty needle beside those on hold
			}
		} else {
			size = -size
		}
		if rapid.Bool().Draw(rt, "steady") {
			then = apart
		}
		for times := draw("times", 1, 6); times > 0 && inWork+len(edges)*size >= least; times-- {
			for _, edge := range edges {
				step(method, edge, size)
				if method != shaping.Fashioned {
					row++
				}
			}
			row += apart
			apart, then = then, apart
		}
	}
	p.LastRow = row + draw("rows", 0, 9)
	o.Panels = shaping.Tree{p}
	return o
}
