package garment_test

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// checkBands checks the bands of jumpers of random specs; a refusal must be a good one.
func checkBands(t *testing.T, check func(*rapid.T, garment.Set, garment.Band)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]gauge.Length{metric, imperial}).Draw(t, "step")
		spec := gen.JumperSpec(step).Draw(t, "spec")
		spec.Sleeve = nil // it has nothing to do with the neck
		spec.Band = gen.BandSpec(step).Draw(t, "band")
		s, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		b, ok := s.Band(garment.Neckband)
		if !ok || len(s.Bands) != 1 {
			t.Fatalf("bands %v", s.Bands)
		}
		check(t, s, b)
	})
}

// The parts of a strip lie side by side on its needles, in the order that the joined pieces
// have, and make up its stitches, which the repeat allows.
func TestBandIsWhole(t *testing.T) {
	checkBands(t, func(t *rapid.T, s garment.Set, b garment.Band) {
		bed := s.Pieces[0].Work.Place == shaping.Bed
		sum := 0
		for _, strip := range b.Strips {
			stitches, next := 0, strip.Needles.First
			for _, p := range strip.Parts {
				stitches += p.Count
				switch {
				case p.Count < 0 || p.Needles.Len() != p.Count && bed, !bed && !p.Needles.IsEmpty():
					t.Fatalf("%d stitches on %v", p.Count, p.Needles)
				case p.Needles.IsEmpty():
				case p.Needles.First != next:
					t.Fatalf("%v after %v", p.Needles, next)
				default:
					next = p.Needles.Last.Toward(shaping.Right, 1)
				}
			}
			if stitches != strip.Stitches || bed && strip.Needles != shaping.Centred(stitches) || !b.Grid.Allows(stitches) {
				t.Fatalf("%s: parts of %d, strip of %d on %v for %v", strip.Name, stitches, strip.Stitches, strip.Needles, b.Grid)
			}
			if off := strip.Correction(); !off.Equal(gauge.Whole(stitches).Sub(strip.Wanted)) {
				t.Fatalf("correction %v", off)
			}
			sum += stitches
		}
		if sum != b.Stitches() || b.Along("front")+b.Along("back")+seamStitches(b) != sum || b.Along("right sleeve") != 0 {
			t.Fatalf("%d stitches, %d along the front, %d along the back", sum, b.Along("front"), b.Along("back"))
		}
		if got, want := lying(b), joinedOrder(s, len(b.Strips)); !slices.Equal(got, want) {
			t.Fatalf("parts %q, want %q", got, want)
		}
	})
}

func seamStitches(b garment.Band) int {
	n := 0
	for _, strip := range b.Strips {
		for _, p := range strip.Parts {
			if p.Kind == garment.SeamPart {
				n += p.Count
			}
		}
	}
	return n
}

// lying names the halves and middles as the parts follow each other.
func lying(b garment.Band) []string {
	var list []string
	for _, strip := range b.Strips {
		list = append(list, "strip")
		for _, p := range strip.Parts {
			name := p.Piece + " middle"
			switch {
			case p.Kind == garment.SeamPart:
				name = "seam"
			case p.Side != 0:
				name = fmt.Sprintf("%s %v", p.Piece, p.Side)
			}
			if list[len(list)-1] != name {
				list = append(list, name)
			}
		}
	}
	return list
}

// joinedOrder is how the parts must lie: on the bed with the purl side facing from left to right,
// the front's right half joined to the back's left half; in the hand with the right side
// facing from right to left, beginning at the front's right half, which is the wearer's left.
func joinedOrder(s garment.Set, strips int) []string {
	switch {
	case s.Pieces[0].Work.Place == shaping.Hand:
		return []string{"strip", "front right", "front middle", "front left", "seam", "back right", "back middle", "back left", "seam"}
	case strips == 2:
		return []string{"strip", "front left", "front middle", "front right", "seam", "strip", "seam", "back left", "back middle", "back right"}
	}
	return []string{"strip", "front left", "front middle", "front right", "seam", "back left", "back middle", "back right"}
}

// One strip hangs on the bed if it can, and two only if it cannot; what has no room is
// refused or told.
func TestBandHasRoom(t *testing.T) {
	apart, told := 0, 0
	checkBands(t, func(t *rapid.T, s garment.Set, b garment.Band) {
		spec := s.Pieces[0].Spec
		if spec.Setup.On == shaping.Hand {
			if len(b.Strips) != 1 {
				t.Fatalf("%d strips in the hand", len(b.Strips))
			}
			return
		}
		half := spec.Setup.BedNeedles() / 2
		if len(b.Strips) == 2 {
			apart++
			spec.Setup.Needles = shaping.MaxNeedle
			wide, err := garment.Pieces(spec)
			if err != nil {
				t.Fatal(err)
			}
			if one, _ := wide.Band(garment.Neckband); len(one.Strips) == 1 && (one.Stitches()+1)/2 <= half {
				t.Fatalf("%d stitches apart on %d needles a side", one.Stitches(), half)
			}
		}
		for i, strip := range b.Strips {
			room := (strip.Stitches+1)/2 <= half
			c := s.Checks[len(s.Checks)-len(b.Strips)+i]
			if c.Name != "bed" || c.Passed != room || c.First.Count != (strip.Stitches+1)/2 || !strings.Contains(c.Says, strip.Needles.String()) {
				t.Fatalf("strip of %d, %d needles a side: %+v", strip.Stitches, half, c)
			}
			if room {
				continue
			}
			told++
			if spec.Checks.Bed != garment.AsWarning || !slices.Contains(s.Pieces[i].Warnings, c.Says) {
				t.Fatalf("checks.bed %v, warnings %q", spec.Checks.Bed, s.Pieces[i].Warnings)
			}
		}
	})
	t.Logf("%d in two strips, %d strips too wide", apart, told)
}

// The sides of each piece get the same, live stitches and flat middles their own number, and
// a stitch that is left over lies in the point of a vee or in one seam.
func TestBandSidesAreEqual(t *testing.T) {
	odd := map[garment.PartKind]int{}
	checkBands(t, func(t *rapid.T, s garment.Set, b garment.Band) {
		for _, strip := range b.Strips {
			type place struct {
				piece string
				kind  garment.PartKind
			}
			sides := map[place][]garment.Part{}
			fixed, over, pairs := 0, 0, 0
			for _, p := range strip.Parts {
				if p.Count < p.Live {
					t.Fatalf("%d of %d live stitches", p.Count, p.Live)
				}
				switch p.Kind {
				case garment.SlopePart, garment.StraightPart:
					at := place{p.Piece, p.Kind}
					sides[at] = append(sides[at], p)
					pairs += p.Count
				case garment.LivePart, garment.BoundOffPart:
					piece, _ := s.Piece(p.Piece)
					if p.Count != piece.Widths.Flat {
						t.Fatalf("%d for a middle of %d", p.Count, piece.Widths.Flat)
					}
					fixed += p.Count
				default:
					over += p.Count
					if p.Count > 0 {
						odd[p.Kind]++
						if p.Kind == garment.PointPart && p.Piece == "back" {
							t.Fatal("the odd stitch lies in the middle of the back")
						}
					}
				}
			}
			if over > 1 || pairs%2 != 0 || over == 1 && b.Grid.Multiple < 2 {
				t.Fatalf("%d in pairs, %d fixed, %d over", pairs, fixed, over)
			}
			for at, list := range sides {
				if len(list) != 2 || list[0].Side != list[1].Side.Opposite() || list[0].Count != list[1].Count || !list[0].Wanted.Equal(list[1].Wanted) || list[0].Live != list[1].Live {
					t.Fatalf("%v: %+v", at, list)
				}
			}
		}
	})
	t.Logf("odd stitches %v", odd)
}

// No other number that the repeat allows is nearer to what is wanted, but where live stitches
// need more; and no part moves further than its share of the correction.
func TestBandIsNearest(t *testing.T) {
	checkBands(t, func(t *rapid.T, _ garment.Set, b garment.Band) {
		for _, strip := range b.Strips {
			fixed, least := 0, 0
			var lower, upper []int
			for _, p := range strip.Parts {
				switch p.Kind {
				case garment.SlopePart, garment.StraightPart:
					least += max(p.Live, 1)
				default:
					whole := p.Wanted.Round(gauge.Rounding{})
					least += whole
					fixed += whole
				}
			}
			step := b.Grid.Multiple
			if step < 2 {
				step = 2
			}
			off := strip.Correction().Abs()
			for _, other := range []int{strip.Stitches - step, strip.Stitches + step} {
				if away := gauge.Whole(other).Sub(strip.Wanted).Abs(); other >= least && away.Cmp(off) < 0 {
					t.Fatalf("%d for %v, %d is nearer", strip.Stitches, strip.Wanted, other)
				}
			}
			// The smallest distance within which the parts can make up the rest.
			rest := strip.Stitches - fixed
			const beyond = 100
			farthest := beyond
			for distance := 1; distance < beyond; distance++ {
				low, high := 0, 0
				lower, upper = lower[:0], upper[:0]
				for _, p := range strip.Parts {
					if p.Kind != garment.SlopePart && p.Kind != garment.StraightPart {
						continue
					}
					low += max(p.Wanted.Round(gauge.Rounding{Direction: gauge.Up})-distance, p.Live, 1)
					high += p.Wanted.Round(gauge.Rounding{Direction: gauge.Down}) + distance
				}
				if low <= rest && rest <= high {
					farthest = distance
					break
				}
			}
			parts := 0
			for _, p := range strip.Parts {
				if p.Kind != garment.SlopePart && p.Kind != garment.StraightPart {
					continue
				}
				parts++
				if gauge.Whole(p.Count).Sub(p.Wanted).Abs().Cmp(gauge.Whole(farthest)) > 0 {
					t.Fatalf("%d for %v, though all can stay within %d", p.Count, p.Wanted, farthest)
				}
			}
			// Within one stitch and an equal share of what the repeat adds.
			if added := strip.Correction(); added.Sign() > 0 {
				if share := added.Add(gauge.Whole(1)).Div(parts); gauge.Whole(farthest-1).Cmp(share.Add(gauge.Whole(1))) > 0 {
					t.Fatalf("parts move by up to %d for a correction of %v over %d parts", farthest, added, parts)
				}
			}
		}
	})
}

// What is wanted of slopes and straight rows, computed anew from the rows that were knitted.
func TestBandFollowsTheCloth(t *testing.T) {
	checkBands(t, func(t *rapid.T, s garment.Set, b garment.Band) {
		const near = 1e-3 // of a stitch, and of a millimetre
		for _, piece := range s.Pieces {
			measured := map[shaping.Side]neckEdge{shaping.Left: neckEdgeOf(piece, shaping.Left), shaping.Right: neckEdgeOf(piece, shaping.Right)}
			perMM := b.Gauge.Stitches(length("100 cm")).Decimal(9).InexactFloat64() / 1000
			wanted := map[garment.PartKind]float64{}
			for _, e := range measured {
				wanted[garment.SlopePart] += max(e.slope*perMM, float64(e.live)) / 2
				wanted[garment.StraightPart] += float64(e.straight) * millimetres(piece.Gauge.Height(1)) * perMM / 2
			}
			for _, strip := range b.Strips {
				for _, p := range strip.Parts {
					if p.Piece != piece.Name() {
						continue
					}
					e := measured[p.Side]
					length := float64(e.straight) * millimetres(piece.Gauge.Height(1))
					switch p.Kind {
					default:
						continue
					case garment.StraightPart:
						if p.Rows != e.straight || p.Live != 0 {
							t.Fatalf("%s %v: %d straight rows, the cloth has %d", p.Piece, p.Side, p.Rows, e.straight)
						}
					case garment.SlopePart:
						length = e.slope
						if p.Rows != e.rows || p.Stitches != e.stitches || p.Live != e.live || p.Steps != e.steps {
							t.Fatalf("%s %v: %+v, the cloth has %+v", p.Piece, p.Side, p, e)
						}
					}
					if got := millimetres(p.Length); math.Abs(got-length) > near*max(1, float64(p.Rows)/100) {
						t.Fatalf("%s %v %v: %v mm, the cloth has %v", p.Piece, p.Side, p.Kind, got, length)
					}
					if got := p.Wanted.Decimal(9).InexactFloat64(); math.Abs(got-wanted[p.Kind]) > near*max(1, perMM) {
						t.Fatalf("%s %v %v: %v stitches, the cloth asks for %v", p.Piece, p.Side, p.Kind, got, wanted[p.Kind])
					}
				}
			}
		}
	})
}

func millimetres(l gauge.Length) float64 { return l.Millimetres().InexactFloat64() }

// neckEdge is the edge of a neck at one side, as it was knitted.
type neckEdge struct {
	slope          float64 // in millimetres, along the middles of the steps
	rows, stitches int     // of the slope
	steps, live    int
	straight       int
}

// neckEdgeOf measures one side of the neck, row by row.
func neckEdgeOf(p garment.Piece, side shaping.Side) neckEdge {
	name := shaping.RightHalf
	if side == shaping.Left {
		name = shaping.LeftHalf
	}
	half, _ := p.Work.Panels.Panel(name)
	inner := side.Opposite()
	var e neckEdge
	// The rows at which stitches go, and how many in each.
	at := half.Needles.End(inner).Index()
	gone, heights := []int{}, []int{}
	for _, row := range p.Work.Rows {
		if row.Panel != name {
			continue
		}
		if now := row.Knit.End(inner).Index(); now != at {
			gone, heights = append(gone, max(now-at, at-now)), append(heights, row.Row-1)
			at = now
		}
		for _, a := range row.Before {
			beside := a.Needles.End(side).Toward(side, 1) == row.Knit.End(inner)
			if a.Do == shaping.DoHold && half.Needles.ContainsSpan(a.Needles) && beside {
				e.live += a.Needles.Len()
			}
		}
	}
	foot, head := half.FirstRow-1, half.LastRow
	for _, n := range gone {
		e.stitches += n
	}
	e.steps = len(gone)
	if e.steps == 0 {
		e.straight = head - foot
		return e
	}
	last := heights[e.steps-1]
	e.straight = head - last
	if e.straight < 6 {
		e.straight = 0
	}
	e.rows = head - foot - e.straight
	// The corners of the line.
	wale, row := millimetres(p.Gauge.Width(1)), millimetres(p.Gauge.Height(1))
	x, y := 0.0, float64(foot)
	to := func(nextX, nextY float64) {
		e.slope += math.Hypot((nextX-x)*wale, (nextY-y)*row)
		x, y = nextX, nextY
	}
	before := 0
	for i, n := range gone {
		to(float64(before)+float64(n)/2, float64(heights[i]))
		before += n
	}
	if e.straight > 0 {
		to(float64(before)-0.5, float64(last))
	} else {
		to(float64(before), float64(head))
	}
	return e
}

// Read back, the phrases give the stitches and rows of their parts.
func TestBandPhrasesAddUp(t *testing.T) {
	read := map[string]int{}
	checkBands(t, func(t *rapid.T, _ garment.Set, b garment.Band) {
		for _, strip := range b.Strips {
			for _, p := range strip.Parts {
				stitches, kind, err := readPhrase(p.Phrase, p)
				if err != nil || stitches != p.Count {
					t.Fatalf("%q says %d of %d over %d rows: %v", p.Phrase, stitches, p.Count, p.Rows, err)
				}
				read[kind]++
			}
		}
	})
	t.Logf("read %v", read)
}

// Every ratio there is up to a hundred rows, both ways round.
func TestRatiosAddUp(t *testing.T) {
	for rows := 1; rows <= 100; rows++ {
		for stitches := 1; stitches <= 2*rows+3; stitches++ {
			down, up := garment.InRows(stitches, rows, false), garment.InRows(stitches, rows, true)
			for _, said := range []string{down, up} {
				if got, err := readRatios(said, rows); err != nil || got != stitches {
					t.Fatalf("%d over %d rows: %q says %d: %v", stitches, rows, said, got, err)
				}
			}
			if turned(down) != up || turned(up) != down {
				t.Fatalf("%d over %d rows: down %q, up %q", stitches, rows, down, up)
			}
			if off := unevenness(t, down, stitches, rows); off > 2 {
				t.Fatalf("%d over %d rows: %q is off by %.2f stitches on the way", stitches, rows, down, off)
			}
		}
	}
}

// turned names ratios the other way round.
func turned(text string) string {
	parts := strings.Split(text, ", then ")
	slices.Reverse(parts)
	for i, part := range parts {
		if head, turn, ok := strings.Cut(part, " in turn: "); ok {
			one, other, _ := strings.Cut(turn, " and ")
			if strings.HasSuffix(other, " times") {
				other += ","
			}
			parts[i] = head + " in turn: " + other + " and " + strings.TrimSuffix(one, ",")
		}
	}
	return strings.Join(parts, ", then ")
}

// unevenness returns by how many stitches at most what is picked up so far is off an even
// spread, at the end of any ratio.
func unevenness(t *testing.T, text string, stitches, rows int) float64 {
	picked, along, most := 0, 0, 0.0
	each := float64(stitches) / float64(rows)
	for _, step := range ratioSteps(text, rows) {
		if step.rows == 0 {
			t.Fatalf("cannot read %q", text)
		}
		picked, along = picked+step.stitches, along+step.rows
		most = max(most, math.Abs(float64(picked)-each*float64(along)))
	}
	return most
}

// ratioStep is a ratio that is picked up once.
type ratioStep struct{ stitches, rows int }

// ratioSteps returns the ratios that a text asks for one after the other; what cannot be read
// is an empty step.
func ratioSteps(text string, rows int) []ratioStep {
	var steps []ratioStep
	number := func(s string) int { n, _ := strconv.Atoi(s); return n }
	for _, said := range strings.Split(text, ", then ") {
		turns := 1
		if head, turn, ok := strings.Cut(said, " times in turn: "); ok {
			turns, said = number(head), turn
		}
		var once []ratioStep
		for _, said := range strings.Split(said, " and ") {
			said = strings.TrimSuffix(said, ",")
			step, times := ratioStep{}, 1
			if m := eachRow.FindStringSubmatch(said); m != nil {
				step, times = ratioStep{number(m[1]), 1}, rows
			} else if m := onceIn.FindStringSubmatch(said); m != nil {
				step = ratioStep{number(m[1]), number(m[2])}
			} else if m := everyFew.FindStringSubmatch(said); m != nil {
				step, times = ratioStep{number(m[1]), number(m[2])}, number(m[3])
				if m[3] == "" {
					times = rows / step.rows
				}
			}
			once = append(once, slices.Repeat([]ratioStep{step}, times)...)
		}
		steps = append(steps, slices.Repeat(once, turns)...)
	}
	return steps
}

var (
	eachRow  = regexp.MustCompile(`^(\d+) in each row$`)
	everyFew = regexp.MustCompile(`^(\d+) in every (\d+) rows(?:, (\d+) times)?$`)
	onceIn   = regexp.MustCompile(`^(\d+) in (\d+) rows$`)
	oneByOne = regexp.MustCompile(`^(\d+) (?:live|bound off), one for one$`)
	overEdge = regexp.MustCompile(`^(\d+) over (.+), evenly$`)
	withLive = regexp.MustCompile(`^(\d+) live(?: and (\d+) from (?:the turns between them|turns and decreases), evenly)?$`)
	onlyOne  = regexp.MustCompile(`^([01])$`)
)

// readPhrase returns the stitches that a phrase asks for along a part.
func readPhrase(text string, p garment.Part) (stitches int, kind string, err error) {
	number := func(s string) int { n, _ := strconv.Atoi(s); return n }
	if m := oneByOne.FindStringSubmatch(text); m != nil {
		if n := number(m[1]); n != p.Stitches {
			return n, "", fmt.Errorf("the middle has %d", p.Stitches)
		}
		return number(m[1]), "one for one", nil
	}
	if m := overEdge.FindStringSubmatch(text); m != nil {
		l, err := gauge.ParseLength(m[2])
		if err == nil && l.Sub(p.Length).Abs().Cmp(length("1 mm")) > 0 {
			err = errors.New("another length")
		}
		return number(m[1]), "over a length", err
	}
	if m := withLive.FindStringSubmatch(text); m != nil {
		if number(m[1]) != p.Live {
			return 0, "", fmt.Errorf("%d are live", p.Live)
		}
		return number(m[1]) + number(m[2]), "live", nil
	}
	if m := onlyOne.FindStringSubmatch(text); m != nil {
		return number(m[1]), "single", nil
	}
	n, err := readRatios(text, p.Rows)
	return n, "rows", err
}

// readRatios returns the stitches of ratios that must fill the rows.
func readRatios(text string, rows int) (stitches int, err error) {
	used := 0
	for _, step := range ratioSteps(text, rows) {
		if step.rows == 0 {
			return 0, fmt.Errorf("cannot read %q", text)
		}
		stitches, used = stitches+step.stitches, used+step.rows
	}
	if used != rows {
		return stitches, fmt.Errorf("%d rows said, %d are there", used, rows)
	}
	return stitches, nil
}
