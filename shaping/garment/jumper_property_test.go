package garment_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// checkJumpers checks jumpers of random specs; a refusal must be a good one.
func checkJumpers(t *testing.T, check func(*rapid.T, garment.Set)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		spec := gen.JumperSpec(rapid.SampledFrom([]gauge.Length{metric, imperial}).Draw(t, "step")).Draw(t, "spec")
		s, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		check(t, s)
	})
}

// checkSleeves checks those of them that have sleeves.
func checkSleeves(t *testing.T, check func(*rapid.T, garment.Set)) {
	t.Helper()
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		if len(s.Pieces) > 2 {
			check(t, s)
		}
	})
}

func TestFewJumpersAreRefused(t *testing.T) {
	refused, all := map[string]int{}, 0
	capped, near := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		all++
		s, err := garment.Pieces(gen.JumperSpec(metric).Draw(t, "spec"))
		if err == nil {
			if sleeve, ok := s.Piece("right sleeve"); ok && sleeve.Heights.Cap > 0 {
				capped++
				if c := checkOf(t, s, "armholes"); c.Off().Abs().Cmp(length("3 mm")) <= 0 {
					near++
				}
			}
			return
		}
		checkRefusal(t, err)
		var refusal *garment.Error
		errors.As(err, &refusal)
		field := refusal.Field
		if errors.Is(err, garment.ErrCheck) {
			field = "check of " + field
		}
		refused[field]++
	})
	total := 0
	for _, n := range refused {
		total += n
	}
	t.Logf("%d of %d specs refused: %v; %d of %d caps within 3 mm", total, all, refused, near, capped)
	if all >= enough && total*100 > all*35 {
		t.Errorf("%d of %d specs refused: %v", total, all, refused)
	}
}

func TestJumperIsKnitted(t *testing.T) {
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		var names []string
		for _, p := range s.Pieces {
			names = append(names, p.Name())
			if found, ok := s.Piece(p.Name()); !ok || found.Name() != p.Name() {
				t.Fatalf("piece %q is not found by its name", p.Name())
			}
			checkKnitted(t, p)
		}
		want := []string{"front", "back", "right sleeve", "left sleeve"}
		if s.Pieces[0].Spec.Sleeve == nil {
			want = want[:2]
		}
		if !slices.Equal(names, want) {
			t.Fatalf("pieces %q, want %q", names, want)
		}
	})
}

// checkKnitted: what was knitted is what was promised, and every stitch is accounted for.
func checkKnitted(t fataler, p garment.Piece) {
	t.Helper()
	lies, off := p.Cloth.Needles(), 0
	if p.Outer().IsValid() { // the reflection of the other front may lie a needle off the middle
		off = lies.First.Index() - shaping.Centred(lies.Len()).First.Index()
	}
	if p.Cloth.Loops() == 0 || off < -1 || off > 1 || lies.Len() != p.Widths.Widest() || off == 0 && lies != shaping.Centred(p.Widths.Widest()) {
		t.Fatalf("%s of %d loops on %v, widths %+v", p.Name(), p.Cloth.Loops(), p.Cloth.Needles(), p.Widths)
	}
	if got := p.Cloth.Ledger(); got != p.Work.Ledger {
		t.Fatalf("%s: ledger %v, promised %v", p.Name(), got, p.Work.Ledger)
	}
	for course := range p.Cloth.Courses() {
		if !course.Ledger.Balances() {
			t.Fatalf("%s: row %d of %s: %v", p.Name(), course.Row, course.Panel, course.Ledger)
		}
	}
	if got, want := p.Cloth.Rows(), p.Work.Panels.Rows(); got != want {
		t.Fatalf("%s: %d rows, panels have %d", p.Name(), got, want)
	}
}

// The back obeys all the rules of a front.
func TestBackIsLikeAFront(t *testing.T) {
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		back := s.Pieces[1]
		checkSteps(t, back)
		checkEnds(t, back)
		for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
			checkWaleHeights(t, back, side)
		}
	})
}

func TestFrontAndBackAgree(t *testing.T) {
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		front, back := s.Pieces[0], s.Pieces[1]
		w, h := back.Widths, back.Heights
		w.Flat, h.Neck = front.Widths.Flat, front.Heights.Neck
		if w != front.Widths || h != front.Heights {
			t.Fatalf("front %+v, %+v\nback %+v, %+v", front.Widths, front.Heights, back.Widths, back.Heights)
		}
		for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
			first, second := rowsAt(front, side), rowsAt(back, side)
			// Below the underarm row by row; there one edge may go a row before the other.
			for row := range h.Underarm - 1 {
				if first[row].outer != second[row].outer {
					t.Fatalf("row %d: the front reaches %d on the %v, the back %d", row+1, first[row].outer, side, second[row].outer)
				}
			}
			_, base, foot, tip := armholeOf(front, side)
			_, otherBase, otherFoot, otherTip := armholeOf(back, side.Opposite())
			if base != otherBase || foot-otherFoot > 1 || otherFoot-foot > 1 || tip-otherTip > 1 || otherTip-tip > 1 {
				t.Fatalf("armholes on the %v: front %d stitches at row %d, tip at %d, back %d at row %d, tip at %d", side, base, foot, tip, otherBase, otherFoot, otherTip)
			}
			if a, b := shoulderOf(front, side), shoulderOf(back, side.Opposite()); a != b || a != w.Shoulder {
				t.Fatalf("shoulders of %d and %d stitches, want %d", a, b, w.Shoulder)
			}
		}
	})
}

// shoulderOf counts the stitches of a shoulder: from the outer end of the last row before it
// is shaped to the inner end of the last row of all.
func shoulderOf(p garment.Piece, side shaping.Side) int {
	outer, inner := 0, 0
	for _, at := range rowsAt(p, side) {
		if at.row < p.ShoulderRow {
			outer = at.outer
		}
		inner = at.inner
	}
	return outer - inner
}

// Hem, waist and underarm have their widths at their heights, and in between the sides go
// one way, by one stitch at a time, in the same rows at both edges.
func TestSidesMove(t *testing.T) {
	moving := 0
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		for _, p := range s.Pieces {
			checkSides(t, p)
			if p.Widths.CastOn != p.Widths.Body || p.Widths.Waist > 0 {
				moving++
			}
		}
	})
	t.Logf("%d pieces with sides that move", moving)
}

func checkSides(t fataler, p garment.Piece) {
	t.Helper()
	h, w := p.Heights, p.Widths
	left, right := rowsAt(p, shaping.Left), rowsAt(p, shaping.Right)
	width := func(row int) int { return left[row-1].outer + right[row-1].outer }
	if width(1) != w.CastOn {
		t.Fatalf("%s: row 1 has %d stitches, cast on are %d", p.Name(), width(1), w.CastOn)
	}
	// In the row of the underarm one edge may be bound off already.
	stretches := [][3]int{{max(h.Band, 1), max(h.Underarm-1, 1), w.Body}}
	if w.Waist > 0 {
		waist := max(min(h.Waist, h.Underarm-1), 1)
		stretches = [][3]int{{min(max(h.Band, 1), waist), waist, w.Waist}, {waist, max(h.Underarm-1, 1), w.Body}}
	}
	for row := 2; row <= h.Band; row++ {
		if row < h.Underarm && width(row) != width(1) {
			t.Fatalf("%s: row %d of the band is shaped", p.Name(), row)
		}
	}
	for i, stretch := range stretches {
		from, to := stretch[0], stretch[1]
		if h.Underarm > 1 && width(to) != stretch[2] {
			t.Fatalf("%s: row %d has %d stitches, want %d: %+v, %+v", p.Name(), to, width(to), stretch[2], w, h)
		}
		ends := [2]int{h.Band, h.Underarm}
		if w.Waist > 0 {
			ends[1-i] = h.Waist
		}
		var distances []int
		wider, shaped := width(to)-width(from), 0
		for row := from + 1; row <= to; row++ {
			atLeft, atRight := left[row-1].outer-left[row-2].outer, right[row-1].outer-right[row-2].outer
			if atLeft != atRight {
				t.Fatalf("%s: row %d: %+d at the left, %+d at the right", p.Name(), row, atLeft, atRight)
			}
			if atLeft == 0 {
				continue
			}
			switch {
			case atLeft != 1 && atLeft != -1 || atLeft > 0 != (wider > 0):
				t.Fatalf("%s: row %d: %+d at each edge, on the way from %d to %d stitches", p.Name(), row, atLeft, width(from), width(to))
			case shaped > 0 && row-shaped < 2:
				t.Fatalf("%s: rows %d and %d are shaped", p.Name(), shaped, row)
			case p.Work.Place == shaping.Hand && row%2 == 0:
				t.Fatalf("%s: row %d is a wrong-side row", p.Name(), row)
			}
			if shaped == 0 {
				distances = append(distances, row-ends[0])
			} else {
				distances = append(distances, row-shaped)
			}
			shaped = row
		}
		if shaped > 0 {
			checkDistances(t, p, append(distances, ends[1]-shaped))
		}
	}
}

// checkDistances: the rows between steps, and those before the first and after the last, are
// as many as can be alike. Where the spec keeps rows plain, none are kept besides.
func checkDistances(t fataler, p garment.Piece, distances []int) {
	t.Helper()
	apart := 1
	if p.Work.Place == shaping.Hand {
		apart = 4 // two by two rows, with one more at either end
	}
	if v := p.Spec.Sleeve; v != nil && v.Plain.Sign() > 0 && p.Widths.Neck == 0 {
		distances = distances[1 : len(distances)-1]
		apart = min(apart, 2)
	}
	if len(distances) > 0 && slices.Max(distances)-slices.Min(distances) > apart {
		t.Fatalf("%s: %d rows between the steps of a side: %+v", p.Name(), distances, p.Heights)
	}
}

// The sides of a sleeve end as wide as they should, the rows asked for are plain, and both
// sleeves are alike.
func TestSleeves(t *testing.T) {
	plained := 0
	checkSleeves(t, func(t *rapid.T, s garment.Set) {
		right, left := s.Pieces[2], s.Pieces[3]
		right.Work.Name = left.Work.Name
		right.Warnings = slices.Clone(right.Warnings)
		for i, warning := range right.Warnings {
			right.Warnings[i] = strings.Replace(warning, "Right sleeve", "Left sleeve", 1)
		}
		checkEqual(t, right, left)
		steps := right.Work.Panels[0].Left.Between(1, right.Heights.Underarm)
		if other := right.Work.Panels[0].Right.Between(1, right.Heights.Underarm); !slices.Equal(steps, other) {
			t.Fatalf("sides: left %v, right %v", steps, other)
		}
		w, h := right.Widths, right.Heights
		if w.CastOn+2*steps.Total() != w.Body {
			t.Fatalf("%d cast on, %d steps, %d at the underarm", w.CastOn, len(steps), w.Body)
		}
		if plain := right.Gauge.Rows(right.Spec.Sleeve.Plain).Round(gauge.Rounding{}); len(steps) > 0 && plain > 0 {
			plained++
			if first, last := steps[0].Row, steps[len(steps)-1].Row; first <= h.Band+plain || last > h.Underarm-plain {
				t.Fatalf("rows %d to %d are shaped: the band has %d rows, the sleeve %d, %d at each end are plain", first, last, h.Band, h.Underarm, plain)
			}
		}
		checkCap(t, s)
	})
	t.Logf("%d sleeves with plain rows", plained)
}

// checkCap: a straight top goes at once; of a cap stitches go and never come, first what the
// body takes off at once.
func checkCap(t *rapid.T, s garment.Set) {
	t.Helper()
	p := s.Pieces[2]
	rows := rowsAt(p, shaping.Right)
	others := rowsAt(p, shaping.Left)
	top := rows[len(rows)-1].outer + others[len(others)-1].outer
	if p.Spec.Sleeve.Cap == garment.StraightTop {
		if p.Heights.Cap != 0 || top != p.Widths.Body || p.Widths.Inset != 0 {
			t.Fatalf("a straight top of %d stitches: %+v, %+v", top, p.Widths, p.Heights)
		}
		return
	}
	if top != p.Widths.Flat || p.Widths.Flat+2*p.Widths.Inset != p.Widths.Body || len(rows) != p.Heights.Top() {
		t.Fatalf("%d stitches after row %d of a cap: %+v, %+v", top, len(rows), p.Widths, p.Heights)
	}
	for _, rows := range [][]reached{rows, others} {
		for i := p.Heights.Underarm; i < len(rows); i++ {
			if rows[i].outer > rows[i-1].outer {
				t.Fatalf("stitches come in row %d of a cap", i+1)
			}
		}
	}
	if _, bases := capOf(p); p.Widths.BindOff != s.Pieces[0].Widths.BindOff || !slices.Equal(bases, []int{p.Widths.BindOff, p.Widths.BindOff}) {
		t.Fatalf("%v stitches go at the underarms of the sleeve, %d at those of the body", bases, s.Pieces[0].Widths.BindOff)
	}
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		steps := p.Work.Panels[0].Steps(side)
		for i := 1; i < len(steps); i++ {
			if steps[i].Row-steps[i-1].Row < 2 {
				t.Fatalf("%v edge: %v and %v in neighbouring rows", side, steps[i-1], steps[i])
			}
		}
	}
}

// Every size says what was knitted, and why it is off where it is.
func TestSleeveSizes(t *testing.T) {
	half := gauge.Whole(1).Div(2)
	checkSleeves(t, func(t *rapid.T, s garment.Set) {
		p := s.Pieces[2]
		var names []string
		for _, z := range p.Sizes {
			names = append(names, z.Name)
			asked, knitted := p.Gauge.Stitches(z.Asked), p.Gauge.Width(z.Count)
			if z.Counted == "rows" {
				asked, knitted = p.Gauge.Rows(z.Asked), p.Gauge.Height(z.Count)
			}
			if z.Name == "capEdge" {
				if !agree(mm(z.Knitted), mm(p.CapLength())) || z.Count != 0 {
					t.Fatalf("capEdge %v with a count of %d, knitted %v", z.Knitted, z.Count, p.CapLength())
				}
				continue
			}
			w, h := p.Widths, p.Heights
			counts := map[string]int{"width": w.Body - 2*w.Seam, "length": h.Underarm, "cuff": w.CastOn - 2*w.Seam, "flat": w.Flat - 2*w.Seam, "cap": h.Cap}
			if !z.Knitted.Equal(knitted) || z.Count != counts[z.Name] {
				t.Fatalf("%s: knitted %v, %d %s are %v", z.Name, z.Knitted, z.Count, z.Counted, knitted)
			}
			if off := gauge.Whole(z.Count).Sub(asked).Abs(); (off.Cmp(half) > 0) != (z.Why != "") {
				t.Fatalf("%s: %v %s off, why %q", z.Name, off, z.Counted, z.Why)
			}
		}
		want := []string{"width", "length", "cuff"}
		if p.Heights.Cap > 0 {
			want = append(want, "flat", "cap", "capEdge")
		}
		if diff := cmp.Diff(want, names); diff != "" {
			t.Fatalf("sizes (-want +got):\n%s", diff)
		}
	})
}

// A piece alone is what it is in the set, but for the warnings of checks.
func TestPiecesAlone(t *testing.T) {
	alone := []func(garment.Spec) (garment.Piece, error){
		garment.Front, garment.Back,
		func(s garment.Spec) (garment.Piece, error) { return garment.Sleeve(s, shaping.Right) },
		func(s garment.Spec) (garment.Piece, error) { return garment.Sleeve(s, shaping.Left) },
	}
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		i := rapid.IntRange(0, len(s.Pieces)-1).Draw(t, "piece")
		inSet := s.Pieces[i]
		p, err := alone[i](inSet.Spec)
		if err != nil {
			t.Fatalf("%s alone: %v", inSet.Name(), err)
		}
		// Of the checks a piece alone has that of the bed.
		for _, warning := range p.Warnings {
			if !slices.Contains(inSet.Warnings, warning) {
				t.Fatalf("alone it has the warning %q, in the set %q", warning, inSet.Warnings)
			}
		}
		if c := slices.IndexFunc(s.Checks, func(c garment.Check) bool { return slices.Equal(c.Pieces, []string{p.Name()}) }); c >= 0 {
			if said := slices.Contains(p.Warnings, s.Checks[c].Says); said == s.Checks[c].Passed {
				t.Fatalf("%s: passed %v, warnings alone %q", s.Checks[c].Says, s.Checks[c].Passed, p.Warnings)
			}
		}
		inSet.Warnings = p.Warnings
		checkEqual(t, p, inSet)
	})
}
