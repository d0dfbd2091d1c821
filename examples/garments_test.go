package examples_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sizes"
)

func frontpieceSums(t *testing.T) string {
	spec := specOf(t, "frontpiece")
	front, err := garment.Front(spec)
	if err != nil {
		t.Fatal(err)
	}
	s, w, h := spec.Swatch, front.Widths, front.Heights
	across := func(l any) string { return fmt.Sprintf("%v × %d ÷ %v", l, s.Stitches, s.Width) }
	up := func(l any) string { return fmt.Sprintf("%v × %d ÷ %v", l, s.Rows, s.Height) }
	armhole := front.Cloth.Ledger().Decreased + front.Cloth.Ledger().BoundOff
	groups := front.Work.Panels[1].Left // the shoulder of the half that is worked first
	finished := front.Finished(w.Body)
	return table(t,
		sum{"width", across(spec.Body.Width), nearest, stitches(finished)},
		sum{"  with the seams", fmt.Sprintf("%d + 2 × %d", finished, w.Seam), exactly, stitches(w.Body)},
		sum{"neck, odd as the width", across(spec.Neck.Width), nearestOdd, stitches(w.Neck)},
		sum{"each shoulder", fmt.Sprintf("(%v − 2 × %v − %v) × %d ÷ %v ÷ 2", spec.Body.Width, spec.Armhole.Inset, spec.Neck.Width, s.Stitches, s.Width), nearest, stitches(w.Shoulder - w.Seam)},
		sum{"each armhole", fmt.Sprintf("(%d − %d − 2 × %d) ÷ 2", finished, w.Neck, w.Shoulder-w.Seam), exactly, stitches(w.Inset)},
		sum{"height", up(fmt.Sprintf("(%v + %v + %v)", spec.Body.Length, spec.Armhole.Depth, spec.Shoulder.Drop)), nearest, rows(h.Top())},
		sum{"shoulder's drop", up(spec.Shoulder.Drop), nearestEven, rows(h.Drop)},
		sum{"neck's depth", up(spec.Neck.Depth), nearestEven, rows(h.Neck)},
		sum{"neck from row", fmt.Sprintf("%d − %d + 1", h.Top(), h.Neck), exactly, fmt.Sprint(h.NeckStart() + 1)},
		sum{"shoulder's holds", fmt.Sprintf("%d ÷ 2", h.Drop), exactly, fmt.Sprint(len(groups))},
		sum{"left live", fmt.Sprintf("%d − 2 × %d", w.Body, w.Inset), exactly, stitches(w.Body - armhole)},
	)
}

// galleryNeck is the example of the gallery that README shows.
const galleryNeck = "neck-round-deep"

// The gallery does its sums by hand itself; here they are done once more.
func gallerySums(t *testing.T) string {
	_, rest, _ := strings.Cut(read(t, "gallery", "testdata", "gallery.text.golden"), galleryNeck+":")
	_, rest, _ = strings.Cut(rest, "From lengths to whole numbers: ")
	rest, _, ok := strings.Cut(rest, "\n\n")
	if !ok {
		t.Fatal("the gallery has no sums")
	}
	lines := strings.Split(rest, "\n")
	for _, line := range lines[1:] {
		m := regexp.MustCompile(`^    .+?  +(.+?) += ([\d.]+) `).FindStringSubmatch(line)
		if m == nil || strings.TrimSuffix(strings.TrimRight(rounded(work(t, m[1]), 3), "0"), ".") != m[2] {
			t.Errorf("not so by hand: %s", line)
		}
	}
	for i := range lines {
		lines[i] = strings.TrimPrefix(lines[i], "    ")
	}
	return strings.Join(lines, "\n") + "\n"
}

func pulloverSums(t *testing.T) string {
	spec := specOf(t, "pullover")
	set := piecesOf(t, spec)
	front, sleeve := set.Pieces[0], set.Pieces[2]
	band, _ := set.Band(garment.Neckband)
	yarn, _ := set.Yarn()
	var opening gauge.Length
	for _, check := range set.Checks {
		if check.Name == "neck" {
			opening = check.First.Length
		}
	}
	var edge garment.Size
	for _, size := range sleeve.Sizes {
		if size.Name == "capEdge" {
			edge = size
		}
	}
	var armholes []string
	for _, piece := range set.Pieces[:2] {
		for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
			armholes = append(armholes, cm(piece.ArmholeLength(side)))
		}
	}
	s := spec.Swatch
	round := fmt.Sprintf("%d × 10 cm ÷ %v", band.Stitches(), spec.Band.Gauge.Stitches(gauge.MustParseLength("10 cm")))
	grams := fmt.Sprintf("%d × %v g ÷ (%d × %d)", yarn.Total.Loops, s.Grams, s.Stitches, s.Rows)
	margin := fmt.Sprintf(" × (100 + %v) ÷ 100", yarn.Margin)
	return table(t,
		sum{"width of the front", fmt.Sprintf("%v × %d ÷ %v", spec.Body.Width, s.Stitches, s.Width), nearest, stitches(front.Finished(front.Widths.Body))},
		sum{"edge wanted of a cap", fmt.Sprintf("(%s) ÷ 2 + %v", strings.Join(armholes, " + "), spec.Sleeve.Ease), exactly, cm(edge.Asked)},
		sum{"neck opening", round, exactly, cm(band.Length())},
		sum{"  stretched", round + fmt.Sprintf(" × (100 + %v) ÷ 100", spec.Neck.Stretch), exactly, cm(opening)},
		sum{"yarn", grams, exactly, yarn.Total.Grams.StringFixed(1) + " g"},
		sum{"  with its margin", grams + margin, exactly, yarn.WithMargin.Grams.StringFixed(1) + " g"},
		sum{"  in balls", fmt.Sprintf("%s g ÷ %v g", yarn.WithMargin.Grams.StringFixed(1), spec.Yarn.Ball.Grams), up, fmt.Sprintf("%d balls", yarn.Balls)},
	)
}

func cardiganSums(t *testing.T) string {
	spec := specOf(t, "cardigan")
	set := piecesOf(t, spec)
	front, _ := set.Piece(shaping.RightFront)
	back, _ := set.Piece(shaping.Back)
	var edge garment.Part
	for _, part := range set.Bands[0].Strips[0].Parts {
		if len(part.Buttons) > 0 {
			edge = part
		}
	}
	first, last := edge.Buttons[0], edge.Buttons[len(edge.Buttons)-1]
	var distances []string
	for i, button := range edge.Buttons[1:] {
		distances = append(distances, fmt.Sprint(button-edge.Buttons[i]))
	}
	s, finished := spec.Swatch, front.Widths.Body-front.Widths.Seam
	return table(t,
		sum{"width of the back", fmt.Sprintf("%v × %d ÷ %v", spec.Body.Width, s.Stitches, s.Width), nearestOdd, stitches(back.Finished(back.Widths.Body))},
		sum{"between the fronts", fmt.Sprintf("%v × %d ÷ %v", spec.Band.Height, s.Stitches, s.Width), nearestOdd, stitches(front.Widths.Overlap)},
		sum{"width of each front", fmt.Sprintf("(%d − %d) ÷ 2", back.Finished(back.Widths.Body), front.Widths.Overlap), exactly, stitches(finished)},
		sum{"picked up along it", fmt.Sprintf("%d × %v ÷ %d × %d ÷ %v", edge.Rows, s.Height, s.Rows, s.Stitches, s.Width), nearest, stitches(edge.Count)},
		sum{"button to button", fmt.Sprintf("(%d − %d) ÷ (%d − 1)", last, first, spec.Opening.Buttons), down, strings.Join(distances, " ") + " stitches"},
	)
}

func regaugeSums(t *testing.T) string {
	spec, by := regauging(t)
	before, after := piecesOf(t, spec).Pieces[0], piecesOf(t, spec.Regauged(by)).Pieces[0]
	s := spec.Swatch
	one, two := by.Swatches[0], by.Swatches[1]
	perWidth := fmt.Sprintf("(%d + %d) ÷ (%v + %v)", one.Stitches, two.Stitches, one.Width, two.Width)
	perHeight := fmt.Sprintf("(%d + %d) ÷ (%v + %v)", one.Rows, two.Rows, one.Height, two.Height)
	height := fmt.Sprintf("(%v + %v + %v)", spec.Body.Length, spec.Armhole.Depth, spec.Shoulder.Drop)
	was := before.Finished(before.Widths.Body)
	return table(t,
		sum{"width before", fmt.Sprintf("%v × %d ÷ %v", spec.Body.Width, s.Stitches, s.Width), nearest, stitches(was)},
		sum{"  now", fmt.Sprintf("%v × %s", spec.Body.Width, perWidth), nearest, stitches(after.Finished(after.Widths.Body))},
		sum{"  with the old count", fmt.Sprintf("%d ÷ (%s)", was, perWidth), exactly, cm(after.Gauge.Width(was))},
		sum{"height before", fmt.Sprintf("%s × %d ÷ %v", height, s.Rows, s.Height), nearest, rows(before.Heights.Top())},
		sum{"  now", fmt.Sprintf("%s × %s", height, perHeight), nearest, rows(after.Heights.Top())},
	)
}

// regauging returns the spec of the demo and its new gauge.
func regauging(t *testing.T) (garment.Spec, garment.GaugeSpec) {
	t.Helper()
	by, err := plan.ParseGauge([]byte(read(t, "regauge", "washed.json")))
	if err != nil {
		t.Fatal(err)
	}
	return specOf(t, "regauge"), by
}

func sizesSums(t *testing.T) string {
	const ease = 8 // cm, unless it is asked for
	var sums []sum
	for _, size := range crew(t).Sizes {
		front := size.Set.Pieces[0]
		s := front.Spec.Swatch
		sums = append(sums, sum{size.Body.Name,
			fmt.Sprintf("(%v + %d cm) ÷ 2 × %d ÷ %v", size.Body.Chest, ease, s.Stitches, s.Width), nearest, stitches(front.Finished(front.Widths.Body))})
	}
	return table(t, sums...)
}

// crew returns the demo planned for its bodies.
func crew(t *testing.T) sizes.Range {
	t.Helper()
	bodies, err := sizes.ReadCSV(strings.NewReader(read(t, "sizes", "crew.csv")))
	if err != nil {
		t.Fatal(err)
	}
	planned, err := sizes.Plan(sizes.Style{Spec: specOf(t, "sizes")}, bodies)
	if err != nil {
		t.Fatal(err)
	}
	return planned
}
