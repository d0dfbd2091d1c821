package garment_test

import (
	"errors"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// checkOpenedBands checks the bands of random cardigans; a refusal must be a good one.
func checkOpenedBands(t *testing.T, check func(*rapid.T, garment.Set)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]gauge.Length{metric, imperial}).Draw(t, "step")
		spec := gen.CardiganSpec(step).Draw(t, "spec")
		spec.Sleeve, spec.Band = nil, gen.BandSpec(step).Draw(t, "its band")
		spec.Opening.Buttons = rapid.IntRange(0, 9).Draw(t, "its buttons")
		s, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		check(t, s)
	})
}

// Every strip of every band is made up by its parts, side by side, and follows the wearer from
// the right front's hem round the neck to the left front's.
func TestOpenedBandsAreWhole(t *testing.T) {
	checkOpenedBands(t, func(t *rapid.T, s garment.Set) {
		vee, bed := s.Pieces[0].Spec.Neck.Shape == garment.VeeNeck, s.Pieces[0].Work.Place == shaping.Bed
		var names, order []string
		for _, b := range s.Bands {
			names = append(names, b.Name)
			for _, strip := range b.Strips {
				sum, next := 0, strip.Needles.First
				for _, p := range strip.Parts {
					sum += p.Count
					if p.Count > 0 && bed && (p.Needles.First != next || p.Needles.Len() != p.Count) || p.Count < p.Live {
						t.Fatalf("%s: %+v, the next needle is %v", b.Name, p, next)
					}
					next = next.Toward(shaping.Right, p.Count)
					if p.Kind != garment.SeamPart && (len(order) == 0 || order[len(order)-1] != p.Piece) {
						order = append(order, p.Piece)
					}
				}
				if sum != strip.Stitches || !b.Grid.Allows(sum) || bed && strip.Needles != shaping.Centred(sum) {
					t.Fatalf("%s, %s: parts of %d, strip of %d on %v", b.Name, strip.Name, sum, strip.Stitches, strip.Needles)
				}
			}
		}
		wantNames, wantOrder := []string{garment.LongBand}, []string{shaping.RightFront, shaping.Back, shaping.LeftFront}
		if !vee {
			wantNames = []string{garment.Neckband, garment.RightFrontBand, garment.LeftFrontBand}
			wantOrder = append(wantOrder, shaping.RightFront, garment.Neckband, shaping.LeftFront)
		}
		if !slices.Equal(names, wantNames) || !slices.Equal(order, wantOrder) {
			t.Fatalf("bands %q along %q, want %q along %q", names, order, wantNames, wantOrder)
		}
	})
}

// A front edge has as many rows as the cloth has there, both fronts the same stitches, and
// every live stitch of the neck is picked up once.
func TestOpenedBandsFollowTheCloth(t *testing.T) {
	checkOpenedBands(t, func(t *rapid.T, s garment.Set) {
		edges, live := map[string]garment.Part{}, map[string]int{}
		for _, b := range s.Bands {
			for _, strip := range b.Strips {
				for _, p := range strip.Parts {
					live[p.Piece] += p.Live
					if p.Kind == garment.EdgePart {
						edges[p.Piece] = p
					}
				}
			}
		}
		if len(edges) != 2 || edges[shaping.RightFront].Count != edges[shaping.LeftFront].Count {
			t.Fatalf("front edges %+v", edges)
		}
		for _, p := range s.Pieces {
			if got, want := live[p.Name()], liveAtNeck(p); got != want {
				t.Fatalf("%s: %d live stitches are picked up, its neck has %d", p.Name(), got, want)
			}
			if p.Name() == shaping.Back {
				continue
			}
			inner := p.Outer().Opposite()
			rows := 0
			for course := range p.Cloth.Courses() {
				if course.Needles.End(inner) == p.Work.Panels[0].Needles.End(inner) {
					rows++
				}
			}
			if e := edges[p.Name()]; p.Widths.Flat > 0 && e.Rows != rows || e.Rows > rows || e.Rows < p.Heights.NeckStart() {
				t.Fatalf("%s: %d rows along the front edge, the cloth has %d, the neck begins at %d", p.Name(), e.Rows, rows, p.Heights.NeckStart())
			}
		}
	})
}

// liveAtNeck returns the stitches of a piece that stay live beside those of its shoulders and
// underarms: those on waste yarn in the end that the last rows of its panels did not knit.
func liveAtNeck(p garment.Piece) int {
	top := map[shaping.Span]bool{}
	for _, panel := range p.Work.Panels {
		for _, row := range p.Work.Rows {
			if row.Panel == panel.Name && row.Row == panel.LastRow {
				top[row.Knit] = true
			}
		}
	}
	live := 0
	for _, row := range p.Work.Rows {
		for _, a := range row.After {
			if a.Do == shaping.DoWaste && !top[a.Needles] {
				live += a.Needles.Len()
			}
		}
	}
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		if outer := p.Outer(); outer.IsValid() && side != outer {
			continue
		}
		for _, panel := range p.Work.Panels {
			if panel.Parent == "" || panel.Name == shaping.HalfAt(side) {
				live += panel.Steps(side).Between(1, p.ShoulderRow-1).Of(shaping.Hold).Total()
			}
		}
	}
	return live
}

// Buttons of both fronts face each other, at distances that differ by one stitch at most, the
// smaller ones below, and leave the margins free.
func TestButtonsFaceEachOther(t *testing.T) {
	seen := 0
	checkOpenedBands(t, func(t *rapid.T, s garment.Set) {
		spec := s.Pieces[0].Spec
		up := map[string][]int{}
		for _, b := range s.Bands {
			for _, strip := range b.Strips {
				for _, p := range strip.Parts {
					if p.Kind != garment.EdgePart {
						if p.Buttons != nil {
							t.Fatalf("buttons at %+v", p)
						}
						continue
					}
					for _, at := range p.Buttons {
						if p.Piece == shaping.LeftFront {
							at = strip.Stitches + 1 - at
						}
						up[p.Piece] = append(up[p.Piece], at)
					}
					top, margin := p.Count, max(b.Gauge.Stitches(length("1.5 cm")).Round(gauge.Rounding{}), 1)
					if spec.Neck.Shape != garment.VeeNeck || len(b.Strips) == 5 {
						top = strip.Stitches - margin
					}
					list := up[p.Piece]
					if len(list) != spec.Opening.Buttons {
						t.Fatalf("%d of %d buttons", len(list), spec.Opening.Buttons)
					}
					if len(list) > 0 && list[0] != margin+1 || len(list) > 1 && list[len(list)-1] != top {
						t.Fatalf("buttons at %d, margin %d, uppermost at %d", list, margin, top)
					}
					for i := 2; i < len(list); i++ {
						if more := list[i] - 2*list[i-1] + list[i-2]; more != 0 && more != 1 {
							t.Fatalf("buttons at %d", list)
						}
					}
					seen += len(list)
				}
			}
		}
		if !slices.Equal(up[shaping.RightFront], up[shaping.LeftFront]) {
			t.Fatalf("buttons at %d and %d", up[shaping.RightFront], up[shaping.LeftFront])
		}
	})
	if seen == 0 {
		t.Error("no buttons were drawn")
	}
}

// No way to part a band that needs fewer strips has room on the bed.
func TestOpenedBandsHaveFewStrips(t *testing.T) {
	checkOpenedBands(t, func(t *rapid.T, s garment.Set) {
		spec := s.Pieces[0].Spec
		if spec.Setup.On == shaping.Hand || len(s.Bands[0].Strips) == 1 {
			if len(s.Bands[0].Strips) != 1 {
				t.Fatal("strips in the hand")
			}
			return
		}
		spec.Setup.Needles, spec.Opening = shaping.MaxNeedle, &garment.Opening{Overlap: spec.Opening.Overlap} // one strip may have room for fewer buttons
		wide, err := garment.Pieces(spec)
		if err != nil {
			t.Fatal(err)
		}
		first := s.Pieces[0].Spec.Setup.BedNeedles()
		if b := wide.Bands[0]; len(b.Strips) == 1 && b.Strips[0].Stitches <= first {
			t.Fatalf("%d strips, though %d stitches have room on %d needles", len(s.Bands[0].Strips), b.Strips[0].Stitches, first)
		}
	})
}

// What has no room on the bed is refused, or told where that is asked for.
func TestOpenedBandsHaveRoom(t *testing.T) {
	checkOpenedBands(t, func(t *rapid.T, s garment.Set) {
		spec := s.Pieces[0].Spec
		if spec.Setup.On == shaping.Hand {
			return
		}
		for _, b := range s.Bands {
			for _, strip := range b.Strips {
				if (strip.Stitches+1)/2 <= spec.Setup.BedNeedles()/2 {
					continue
				}
				told := slices.ContainsFunc(s.Failed(), func(c garment.Check) bool { return c.Name == "bed" && c.What == b.Name+" on the bed" })
				if spec.Checks.Bed != garment.AsWarning || !told {
					t.Fatalf("%s, %s: %d stitches on %d needles, checks.bed %v, told %v", b.Name, strip.Name, strip.Stitches, spec.Setup.BedNeedles(), spec.Checks.Bed, told)
				}
			}
		}
	})
	// The neckband alone is too wide: the fronts are narrow, and their edges short.
	s := adultOpened()
	s.Band.Gauge = newGauge("100", "30", "10 cm")
	s.Body.Length, s.Neck.Depth = length("10 cm"), length("20 cm")
	if _, err := garment.Pieces(s); !errors.Is(err, garment.ErrBed) {
		t.Errorf("error %v", err)
	}
}

// adultOpened is a front that opens, with a band.
func adultOpened() garment.Spec {
	s := adultBanded()
	s.Opening = &garment.Opening{}
	return s
}

func TestOpenedBandRefusals(t *testing.T) {
	buttons := func(n int) change {
		return func(s *garment.Spec) { s.Opening = &garment.Opening{Buttons: n} }
	}
	for _, c := range []struct {
		change      change
		field, says string
		is          error
		works       change
	}{
		{buttons(-1), "opening.buttons", "opening.buttons -1: 0 to 50", garment.ErrSpec, buttons(0)},
		{buttons(51), "opening.buttons", "opening.buttons 51: 0 to 50", garment.ErrSpec, buttons(30)},
		{both(buttons(3), func(s *garment.Spec) { s.Band = nil }), "opening.buttons", "opening.buttons 3: buttons lie on bands along the fronts: give a band, or leave them out", garment.ErrSpec, both(buttons(0), func(s *garment.Spec) { s.Band = nil })},
	} {
		s := adultOpened()
		c.change(&s)
		_, err := garment.Pieces(s)
		refusal, ok := errors.AsType[*garment.Error](err)
		if !ok || !errors.Is(err, c.is) || refusal.Field != c.field || err.Error() != c.says {
			t.Errorf("error %v, want %s", err, c.says)
		}
		c.works(&s)
		if _, err := garment.Pieces(s); err != nil {
			t.Errorf("%s: %v", c.says, err)
		}
	}
	// As many as are said to have room do, and one more does not.
	s := adultOpened()
	s.Opening.Buttons = 50
	s.Body.Length, s.Start.Band = length("10 cm"), length("2 cm")
	_, err := garment.Pieces(s)
	if err == nil || !errors.Is(err, garment.ErrFit) {
		t.Fatalf("error %v", err)
	}
	most, _ := strconv.Atoi(regexp.MustCompile(`at most (\d+)`).FindStringSubmatch(err.Error())[1])
	s.Opening.Buttons = most
	if _, err := garment.Pieces(s); err != nil || most < 5 {
		t.Errorf("%d buttons: %v", most, err)
	}
	s.Opening.Buttons++
	if _, err := garment.Pieces(s); !errors.Is(err, garment.ErrFit) {
		t.Errorf("%d buttons: error %v", s.Opening.Buttons, err)
	}
}
