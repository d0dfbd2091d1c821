package sheet_test

import (
	"bytes"
	"path/filepath"
	"strings"
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

// fashioned returns fashioned steps at the first row and then after each distance.
func fashioned(stitches, first int, distances ...int) shaping.Schedule {
	steps := shaping.Schedule{{Row: first, Stitches: stitches, Method: shaping.Fashioned}}
	for _, apart := range distances {
		first += apart
		steps = append(steps, shaping.Step{Row: first, Stitches: stitches, Method: shaping.Fashioned})
	}
	return steps
}

// by returns the steps worked by another method.
func by(method shaping.Method, steps shaping.Schedule) shaping.Schedule {
	return steps.By(method, method)
}

// sleeveOf plans and knits a piece of one panel with the same steps at both edges.
func sleeveOf(t testing.TB, place shaping.Place, castOn, rows int, steps shaping.Schedule) garment.Piece {
	t.Helper()
	return panelOf(t, place, castOn, rows, steps, steps)
}

// panelOf plans and knits a piece of one panel.
func panelOf(t testing.TB, place shaping.Place, castOn, rows int, left, right shaping.Schedule) garment.Piece {
	t.Helper()
	front, err := garment.Front(spec())
	if err != nil {
		t.Fatal(err)
	}
	work, err := order.Arrange(order.Outline{
		Name: "right sleeve", Place: place, Carriage: shaping.Right,
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: rows, Needles: shaping.Centred(castOn), Left: left, Right: right}},
	})
	if err != nil {
		t.Fatal(err)
	}
	cloth, err := bed.Knit(work)
	if err != nil {
		t.Fatal(err)
	}
	piece := garment.Piece{Work: work, Cloth: cloth, Gauge: front.Gauge}
	piece.Spec.Setup.On = place
	return piece
}

// Equal steps at equal distances are one entry, however far apart they are, and so are
// those at two distances in turn and a last one followed by other rows.
func TestStepsAreGathered(t *testing.T) {
	tens := []int{10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10}
	for _, c := range []struct {
		name        string
		place       shaping.Place
		rows        int
		steps       shaping.Schedule
		boxes, says string
	}{
		{"14 times every 10th row", shaping.Bed, 160, fashioned(1, 11, tens...), "[ ] ",
			"14 times, at counter [ ] 010, [ ] 020, [ ] 030, [ ] 040, [ ] 050, [ ] 060, [ ] 070, [ ] 080, [ ] 090, [ ] 100, [ ] 110, [ ] 120, [ ] 130, [ ] 140: increase 1 at each end: "},
		{"every 10th row", shaping.Bed, 160, fashioned(1, 11, tens...), "[ ] ", "Each time knit 10 rows."},
		{"a short end", shaping.Bed, 144, fashioned(1, 11, tens...), "[ ] ", "Each time knit 10 rows, the last time 4 rows."},
		{"5th and 6th row in turn", shaping.Bed, 60, fashioned(1, 11, 5, 6, 5, 6), "[ ][ ][ ][ ][ ]", "Each time knit 5 rows and 6 rows in turn."},
		{"in turn with a long end", shaping.Bed, 40, fashioned(-1, 11, 5, 6, 5, 6), "[ ][ ][ ][ ][ ]", "Each time knit 5 rows and 6 rows in turn, the last time 8 rows."},
		{"in the hand", shaping.Hand, 160, fashioned(1, 11, tens...), "[ ] ", "k2, m1, k to last 2 sts, m1, k2. Each time then work 9 rows even."},
		{"in WS rows", shaping.Hand, 160, fashioned(1, 12, tens...), "[ ] ", "p2, m1, p to last 2 sts, m1, p2. Each time then work 9 rows even."},
		{"in turn in the hand", shaping.Hand, 60, fashioned(1, 11, 4, 6, 4, 6), "[ ][ ][ ][ ][ ]", "Then in turn: after the first time work 3 rows even, after the second work 5 rows even, and so on."},
	} {
		piece := sleeveOf(t, c.place, 40, c.rows, c.steps)
		text := sheetOfPiece(t, piece)
		if err := compare(text, piece); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		found := false
		for _, line := range lines(text) {
			found = found || strings.HasPrefix(line, c.boxes) && strings.Contains(line, c.says)
		}
		if !found {
			t.Errorf("%s: no line with %s says %q:\n%s", c.name, c.boxes, c.says, text)
		}
	}
}

// Different steps at the two edges can meet in one row, and an increase can find few
// stitches there.
func TestRowsOfTwoSteps(t *testing.T) {
	for _, c := range []struct {
		name        string
		place       shaping.Place
		castOn      int
		left, right shaping.Schedule
		says        string
	}{
		{"increase, then hold", shaping.Hand, 20, by(shaping.Hold, fashioned(-3, 5)), fashioned(1, 5),
			"K2, m1, k15, leaving 3 sts unworked at the left edge."},
		{"bind off, then increase", shaping.Hand, 20, fashioned(1, 5), by(shaping.BindOff, fashioned(-3, 5)),
			"BO 3 sts at the right edge, k to last 2 sts, m1, k2."},
		{"decrease, then increase", shaping.Hand, 20, fashioned(1, 5), fashioned(-1, 5), "K1, ssk, k to last 2 sts, m1, k2."},
		{"increase, then decrease", shaping.Hand, 20, fashioned(-1, 4), fashioned(1, 4), "P1, p2tog, p to last 2 sts, m1, p2."},
		{"decreases that meet", shaping.Hand, 3, fashioned(-1, 5), fashioned(-1, 5), "K3tog."},
		{"decreases that meet in a WS row", shaping.Hand, 5, fashioned(-1, 2, 2), fashioned(-1, 2, 2), "Sssp. K 1 row."},
		{"increases over few stitches", shaping.Hand, 3, fashioned(1, 5), fashioned(1, 5), "K2, m1, k to last 1 st, m1, k1."},
		{"decrease and increase", shaping.Bed, 20, fashioned(1, 5), fashioned(-1, 5),
			"Decrease 1 at the right edge: move R8-R10 one needle to the left; push the empty R10 out of work. " +
				"Increase 1 at the left edge: push L11 into work, move L10-L8 one needle to the left; fill the empty L8 with the purl bar of the neighbour."},
		{"increases over few needles", shaping.Bed, 4, fashioned(1, 5), fashioned(1, 5),
			"Increase 1 at the right edge: push R3 into work, move L1-R2 one needle to the right; fill the empty L1 with the purl bar of the neighbour. " +
				"Increase 1 at the left edge: push L3 into work, move L2-R1 one needle to the left; fill the empty R1 with the purl bar of the neighbour."},
	} {
		piece := panelOf(t, c.place, c.castOn, 5, c.left, c.right)
		text := sheetOfPiece(t, piece)
		if err := compare(text, piece); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if !strings.Contains(strings.Join(lines(text), "\n"), c.says) {
			t.Errorf("%s: no line says %q:\n%s", c.name, c.says, strings.Join(lines(text), "\n"))
		}
	}
}

// A cap worked by any method can be followed. What is held at its underarms is put away
// before the edge is decreased, and what is held at its top later.
func TestCapsAreEnough(t *testing.T) {
	hold := garment.Pair{Several: shaping.Hold, Single: shaping.Fashioned}
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, pair := range []garment.Pair{hold, garment.By(shaping.Hold), garment.By(shaping.BindOff)} {
			s := jumper()
			s.Setup.On, s.Methods.Armhole = place, pair
			piece, err := garment.Sleeve(s, shaping.Left)
			if err != nil {
				t.Errorf("%v, %v: %v", place, pair, err)
				continue
			}
			text := sheetOfPiece(t, piece)
			if err := compare(text, piece); err != nil {
				t.Errorf("%v, %v: %v", place, pair, err)
			}
			away := map[shaping.Place]string{shaping.Bed: "Hang a small weight", shaping.Hand: "that wait"}[place]
			if n := strings.Count(strings.Join(lines(text), "\n"), away); pair == hold && n != 4 {
				t.Errorf("%v: held stitches are put away %d times, want twice at each edge", place, n)
			}
		}
	}
}

// A half of a back lies at the other side of the wearer than one of a front that is seen
// alike, and joins the half beside it then.
func TestHalvesAreWorn(t *testing.T) {
	for _, c := range []struct {
		place      shaping.Place
		name, says string
	}{
		{shaping.Bed, "front", "this piece's right half lies on the wearer's right: it joins the left half of a back knitted with the purl side facing you."},
		{shaping.Bed, "back", "this piece's right half lies on the wearer's left: it joins the left half of a front knitted with the purl side facing you."},
		{shaping.Hand, "front", "this piece's right half lies on the wearer's left: it joins the left half of a back as you look at its RS."},
		{shaping.Hand, "back", "this piece's right half lies on the wearer's right: it joins the left half of a front as you look at its RS."},
	} {
		s := jumper()
		s.Setup.On = c.place
		piece, err := pieces(s)[c.name]()
		if err != nil {
			t.Fatal(err)
		}
		if text := strings.Join(strings.Fields(sheetOfPiece(t, piece)), " "); !strings.Contains(text, c.says) {
			t.Errorf("%v, %s: the sheet does not say %q", c.place, c.name, c.says)
		}
	}
}

// What is wrong in the sheet of a piece that grows shows when it is followed.
func TestReaderNoticesFaultsInIncreases(t *testing.T) {
	steps := fashioned(1, 3, 8, 10, 10)
	atBed, inHand := sleeveOf(t, shaping.Bed, 40, 37, steps), sleeveOf(t, shaping.Hand, 40, 37, steps)
	for _, fault := range []struct {
		name           string
		piece          garment.Piece
		wrong, instead string
	}{
		{"the wrong needle filled", atBed, "fill the empty L19", "fill the empty L18"},
		{"the group beside the edge", atBed, "L19-L17 one needle to the left", "L20-L18 one needle to the left"},
		{"moved inwards", atBed, "L20-L18 one needle to the right", "L20-L18 one needle to the left"},
		{"a needle too few to fill", atBed, "L20 and R20. Each", "L20 and R20; L24 and\n                          R24, L21 and R21. Each"},
		{"the wrong needle pushed into work", atBed, "push L22 and R21", "push L21 and R21"},
		{"the first group elsewhere", atBed, "(first L20-L18", "(first L21-L19"},
		{"rows of the last time", atBed, "time 6\n                          rows", "time 7\n                          rows"},
		{"a wrong account", atBed, "40 cast on + 6 increased", "40 cast on + 8 increased"},
		{"no increase", inHand, "k2, k to last 2 sts", "k2, m1, k to last 2 sts"},
		{"a stitch too many", inHand, "m1, m1, k2", "m1, k2"},
		{"in the middle of the row", inHand, "k to last 20 sts, m1, k20", "k to last 2 sts, m1, k2"},
		{"a knit row purled", inHand, "k2, m1, p to", "k2, m1, k to"},
	} {
		checkNoticed(t, sheetOfPiece(t, fault.piece), fault.piece, fault.name, fault.wrong, fault.instead)
	}
}
