package garment_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// adultBanded is [adult] with a neckband in a rib of two and two.
func adultBanded() garment.Spec {
	s := adult()
	s.Band = &garment.BandSpec{Height: length("2.5 cm"), Repeat: 4, Plus: 2}
	return s
}

func ofBand(f func(*garment.BandSpec)) change {
	return func(s *garment.Spec) {
		b := *s.Band
		f(&b)
		s.Band = &b
	}
}

func TestBandRefusals(t *testing.T) {
	repeat := func(repeat, plus int) change {
		return ofBand(func(b *garment.BandSpec) { b.Repeat, b.Plus = repeat, plus })
	}
	high := func(l string) change { return ofBand(func(b *garment.BandSpec) { b.Height = length(l) }) }
	none := func(s *garment.Spec) { s.Band = nil }
	needles := func(n int) change { return func(s *garment.Spec) { s.Setup.Needles = n } }
	inHand := func(s *garment.Spec) { s.Setup.On = shaping.Hand }
	fine := ofBand(func(b *garment.BandSpec) { b.Gauge = newGauge("180", "30", "10 cm") })
	deep := func(s *garment.Spec) {
		s.Neck.Depth, s.Body.Length = length("300 cm"), length("300 cm")
	}
	cases := []refused{
		{high("0 cm"), "band.height 0 cm: a length above 0 is needed", "band.height", garment.ErrSpec, []change{high("0.1 cm"), none}},
		{high("-1 cm"), "band.height -1 cm: a length above 0 is needed", "band.height", garment.ErrSpec, nil},
		{high("1001 cm"), "band.height 1001 cm: at most 1000 cm", "band.height", garment.ErrSpec, []change{high("1000 cm")}},
		{both(high("1000 cm"), ofBand(func(b *garment.BandSpec) { b.Folded = true })), "band.height 1000 cm: the band would have 6000 rows, at most 4999 are planned: at most 833.0 cm", "band.height", garment.ErrFit, []change{
			high("833.0 cm"),
		}},
		{both(high("1000 cm"), ofBand(func(b *garment.BandSpec) { b.Gauge = newGauge("22", "60", "10 cm") })), "band.height 1000 cm: the band would have 6000 rows, at most 5000 are planned: at most 833.3 cm", "band.height", garment.ErrFit, []change{
			high("833.3 cm"),
		}},
		{repeat(-1, 0), "band.repeat -1: 0 to 50 stitches", "band.repeat", garment.ErrSpec, []change{repeat(0, 0), repeat(50, 0)}},
		{repeat(51, 0), "band.repeat 51: 0 to 50 stitches", "band.repeat", garment.ErrSpec, nil},
		{repeat(4, 4), "band.plus 4: 0 to 3 stitches beside a repeat of 4", "band.plus", garment.ErrSpec, []change{repeat(4, 0), repeat(4, 3)}},
		{repeat(4, -1), "band.plus -1: 0 to 3 stitches beside a repeat of 4", "band.plus", garment.ErrSpec, nil},
		{repeat(1, 1), "band.plus 1: 0 without a repeat: leave it out, or give band.repeat", "band.plus", garment.ErrSpec, []change{repeat(1, 0), repeat(2, 1)}},
		{repeat(0, 2), "band.plus 2: 0 without a repeat: leave it out, or give band.repeat", "band.plus", garment.ErrSpec, []change{repeat(0, 0), repeat(3, 2)}},
		{fine, "work.needles 200: the neckband along the front takes 410 stitches: at least 410 needles, checks.bed warning, work.on hand or no band", "work.needles", garment.ErrBed, []change{
			needles(410), none, inHand, func(s *garment.Spec) { s.Checks.Bed = garment.AsWarning },
		}},
		{both(fine, both(deep, needles(1000))), "work.needles 1000: the neckband along the front takes 10830 stitches: work.on hand or no band", "work.needles", garment.ErrBed, []change{none, inHand}},
		{both(fine, both(deep, func(s *garment.Spec) { s.Checks.Bed = garment.AsWarning })), "work.needles 200: the neckband along the front takes 10830 stitches: work.on hand or no band", "work.needles", garment.ErrBed, []change{none, inHand}},
	}
	checkRefusals(t, cases, adultBanded, garment.Pieces, func(s garment.Set) bool { return s.Pieces == nil && s.Bands == nil })
}

// A band makes the neck no wider for the head: what does not pass without one does not with
// it, and of edge and band the shorter counts.
func TestHeadPassesTheBand(t *testing.T) {
	shorter, longer := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		spec := gen.JumperSpec(metric).Draw(t, "spec")
		spec.Sleeve, spec.Checks.Neck, spec.Checks.Bed = nil, garment.AsWarning, garment.AsWarning
		spec.Head = gauge.Millimetres(decimal.NewFromInt(int64(rapid.IntRange(300, 640).Draw(t, "head"))))
		bare, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		spec.Band = gen.BandSpec(metric).Draw(t, "band")
		s, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		b, _ := s.Band(garment.Neckband)
		without, with := checkOf(t, bare, "neck"), checkOf(t, s, "neck")
		if with.Passed && !without.Passed || with.First.Length.Cmp(without.First.Length) > 0 {
			t.Fatalf("without a band %+v\nwith one %+v", without, with)
		}
		if with.First.Count != b.Stitches() || with.First.Counted != "stitches" || !strings.Contains(with.Says, fmt.Sprintf("with its band of %d stitches", b.Stitches())) {
			t.Fatalf("band of %d: %+v", b.Stitches(), with)
		}
		opening := s.Pieces[0].NeckLength().Add(s.Pieces[1].NeckLength())
		if b.Length().Cmp(opening) < 0 {
			shorter++
			opening = b.Length()
		} else {
			longer++
		}
		if !strings.Contains(with.Says, ": "+fine(spec, opening)+" round") {
			t.Fatalf("opening of %v: %s", opening, with.Says)
		}
	})
	t.Logf("%d bands shorter than the edge, %d not", shorter, longer)
}

// A band at the gauge of the pieces is as long as the edge, within its stitches; one of a finer
// gauge, which picks up live stitches one for one all the same, draws the edge in.
func TestFineBandLimitsTheNeck(t *testing.T) {
	for _, c := range []struct {
		band gauge.Gauge
		want string
	}{
		{gauge.Gauge{}, "Neck opening with its band of 110 stitches: 49.24 cm round, stretched by 25 % 61.55 cm, the head 60.00 cm: 1.55 cm more."},
		{newGauge("26", "36", "10 cm"), "Neck opening with its band of 122 stitches: 46.92 cm round, stretched by 25 % 58.65 cm, the head 60.00 cm: 1.35 cm less. It does not pass: it must be 48.0 cm round or stretch by 28 %, or have an opening that closes."},
	} {
		s := adultBanded()
		s.Head, s.Band.Gauge = length("60 cm"), c.band
		set, err := garment.Pieces(s)
		if err != nil {
			t.Fatal(err)
		}
		if got := checkOf(t, set, "neck").Says; got != c.want {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
}

// Where the repeat asks for an odd number and both sides are equal, the stitch that is left
// over lies in the point of a front's vee, else in a seam: in the hand the one where the round
// begins.
func TestOddStitch(t *testing.T) {
	vee := func(s *garment.Spec) {
		s.Neck.Shape, s.Neck.Depth, s.Methods.Neck = garment.VeeNeck, length("18 cm"), garment.By(shaping.Fashioned)
	}
	oddBody := func(s *garment.Spec) { s.Body.Width = length("50.4 cm") }
	inHand := func(s *garment.Spec) { s.Setup.On = shaping.Hand }
	narrow := func(s *garment.Spec) { s.Setup.Needles, s.Checks.Bed = 80, garment.AsWarning }
	for _, c := range []struct {
		name    string
		changes []change
		want    []string // where the strips have it
	}{
		{"round", nil, []string{"front seam right"}},
		{"round, in the hand", []change{inHand}, []string{"back seam left"}},
		{"round, apart", []change{narrow}, []string{"front seam right", "back seam left"}},
		{"round, the back without a flat middle", []change{backNeck("2.5 cm", "0 cm")}, []string{"front seam right"}},
		{"vee", []change{vee}, []string{"front point"}},
		{"vee, in the hand", []change{vee, inHand}, []string{"front point"}},
		{"vee with a stitch in its middle", []change{vee, oddBody}, []string{"front seam right"}},
		{"vee, apart", []change{vee, narrow}, []string{"front point", "back seam left"}},
	} {
		s := adultBanded()
		s.Band.Repeat, s.Band.Plus = 2, 1
		for _, change := range c.changes {
			change(&s)
		}
		var got []string
		for _, strip := range picked(t, s).Strips {
			for _, p := range strip.Parts {
				if (p.Kind == garment.SeamPart || p.Kind == garment.PointPart) && p.Count == 1 {
					said := fmt.Sprintf("%s %v", p.Piece, p.Kind)
					if p.Side.IsValid() {
						said += fmt.Sprintf(" %v", p.Side)
					}
					got = append(got, said)
				}
			}
		}
		if strings.Join(got, ", ") != strings.Join(c.want, ", ") {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// fine writes a length as checks do.
func fine(s garment.Spec, l gauge.Length) string {
	if s.Units == gauge.Inch {
		return l.Format(gauge.Inch, 2)
	}
	return l.Format(gauge.Centimetre, 2)
}

// The parts of an opened front, of which each side is a piece of its own, and of a single edge.
func TestStripOfAnyParts(t *testing.T) {
	part := func(piece string, side shaping.Side, kind garment.PartKind, wanted string, live int) garment.Part {
		want := gauge.Whole(int(decimal.RequireFromString(wanted).Mul(decimal.NewFromInt(10)).IntPart())).Div(10)
		return garment.Part{Piece: piece, Side: side, Kind: kind, Rows: 40, Stitches: max(live, 12), Steps: 9, Live: live, Wanted: want}
	}
	opened := []garment.Part{
		part("left front", shaping.Left, garment.SlopePart, "20.2", 14),
		part("left front", shaping.Left, garment.StraightPart, "5.4", 0),
		{Piece: "left front", Kind: garment.SeamPart},
		part("back", shaping.Left, garment.SlopePart, "9.7", 5),
		part("back", 0, garment.LivePart, "26", 26),
		part("back", shaping.Right, garment.SlopePart, "9.7", 5),
		{Piece: "back", Kind: garment.SeamPart},
		part("right front", shaping.Right, garment.StraightPart, "6.2", 0),
		part("right front", shaping.Right, garment.SlopePart, "20.4", 14),
	}
	for _, c := range []struct {
		name  string
		parts []garment.Part
		grid  gauge.Rounding
		want  []int
	}{
		{"opened, a rib of two and two", opened, gauge.Rounding{Multiple: 4, Plus: 2}, []int{20, 6, 0, 10, 26, 10, 0, 6, 20}},
		{"opened, odd", opened, gauge.Rounding{Multiple: 2, Plus: 1}, []int{20, 6, 0, 9, 26, 9, 1, 6, 20}},
		{"opened, a wide repeat", opened, gauge.Rounding{Multiple: 40}, []int{17, 4, 0, 6, 26, 6, 0, 4, 17}},
		{"a single edge", opened[1:2], gauge.Rounding{Multiple: 3, Plus: 2}, []int{5}},
		{"a single edge, all live", []garment.Part{part("front", shaping.Left, garment.SlopePart, "20", 20)}, gauge.Rounding{Multiple: 30, Plus: 10}, []int{40}},
	} {
		parts := make([]garment.Part, len(c.parts))
		copy(parts, c.parts)
		s, err := garment.StripOf(parts, c.grid)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var got []int
		for _, p := range s.Parts {
			got = append(got, p.Count)
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) || !c.grid.Allows(s.Stitches) {
			t.Errorf("%s: %v, want %v; %d of %v", c.name, got, c.want, s.Stitches, s.Wanted)
		}
	}
}

// In the hand the left half ends a row later and may have one row more above its last
// decrease: both sides are parted alike all the same.
func TestSidesArePartedAlike(t *testing.T) {
	uneven := 0
	for tenths := 40; tenths < 160; tenths++ {
		s := adultBanded()
		s.Setup.On, s.Methods.Neck = shaping.Hand, garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}
		s.Neck.Depth = length("1 mm").Mul(tenths)
		rows := map[garment.PartKind][]int{}
		for _, p := range picked(t, s).Strips[0].Parts {
			if p.Piece == "front" {
				rows[p.Kind] = append(rows[p.Kind], p.Rows)
			}
		}
		slope, straight := rows[garment.SlopePart], rows[garment.StraightPart]
		if len(slope) != 2 || len(straight) == 1 {
			t.Fatalf("%d mm deep: slopes of %v rows, straight %v", tenths, slope, straight)
		}
		if len(straight) == 2 && straight[0] != straight[1] {
			uneven++
		}
	}
	if uneven == 0 {
		t.Error("no depth has straight rows that differ")
	}
}

func TestNoBand(t *testing.T) {
	set, err := garment.Pieces(adult())
	if b, ok := set.Band(garment.Neckband); err != nil || set.Bands != nil || ok || b.Stitches() != 0 || !b.Length().IsZero() {
		t.Errorf("bands %v, %v", set.Bands, err)
	}
	var zero garment.Strip
	if zero.Along("front") != 0 || zero.Correction().Sign() != 0 || garment.PartKind(0).IsValid() || garment.PartKind(9).String() != "no part" {
		t.Errorf("zero strip %+v", zero)
	}
	for kind, want := range map[garment.PartKind]string{
		garment.LivePart: "live", garment.BoundOffPart: "bound off", garment.PointPart: "point",
		garment.SlopePart: "slope", garment.StraightPart: "straight", garment.SeamPart: "seam",
	} {
		if got := kind.String(); got != want || !kind.IsValid() {
			t.Errorf("kind %q, want %q", got, want)
		}
	}
}
