package bed_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// everyOther returns a step at every second row from the given one on.
func everyOther(m shaping.Method, from, stitches, times int) shaping.Schedule {
	return shaping.Expand(shaping.Phrase{From: from, Every: 2, Stitches: stitches, Times: times}).By(m, m)
}

// boundOffEach returns a step of those sizes at every second row from the given one on.
func boundOffEach(from int, sizes ...int) shaping.Schedule {
	var steps shaping.Schedule
	for i, size := range sizes {
		steps = append(steps, everyOther(shaping.BindOff, from+2*i, -size, 1)...)
	}
	return steps
}

// twoNeedles is a piece knitted flat in the hand.
func twoNeedles(name string, panels ...shaping.Panel) order.Outline {
	return order.Outline{Name: name, Place: shaping.Hand, Panels: panels}
}

// courseOf returns the row of that panel as it was knitted.
func courseOf(t fataler, cloth bed.Cloth, panel string, row int) bed.Course {
	t.Helper()
	for c := range cloth.Courses() {
		if c.Panel == panel && c.Row == row {
			return c
		}
	}
	t.Fatalf("%s has no row %d", panel, row)
	return bed.Course{}
}

// treads returns how many neighbouring wales end at the same height, from left to
// right: the steps of the outline as they can be counted on the cloth.
func treads(cloth bed.Cloth) []int {
	var list []int
	before := 0
	for _, height := range cloth.Wales() {
		if height != before {
			list = append(list, 0)
		}
		list[len(list)-1]++
		before = height
	}
	return list
}

// count is a number of stitches that a publication prints, and the row that has it.
type count struct {
	panel string
	row   int
	want  int
}

// printed is a piece of which a publication prints the steps and some of the counts.
type printed struct {
	name    string
	source  string
	outline order.Outline
	treads  []int // see the function; nil where wales of several steps are of one height
	counts  []count
}

// knitPrinted knits the pieces and compares what can be counted on the cloth.
func knitPrinted(t *testing.T, pieces []printed) {
	for _, p := range pieces {
		t.Run(p.name, func(t *testing.T) {
			cloth := knit(t, plan(t, p.outline))
			if diff := cmp.Diff(p.treads, treads(cloth)); p.treads != nil && diff != "" {
				t.Errorf("%s: stitches of the steps from left to right (-printed +knitted):\n%s", p.source, diff)
			}
			for _, n := range p.counts {
				if got := courseOf(t, cloth, n.panel, n.row).Needles.Len(); got != n.want {
					t.Errorf("%s: %s, row %d: %d stitches, printed %d", p.source, n.panel, n.row, got, n.want)
				}
			}
		})
	}
}

// The pieces are knitted in the hand. What is bound off is printed as so many at the
// beginning of so many rows, so that it falls one row apart at the two edges; which
// rows of the piece they are is not printed and chosen here.
func TestPublishedPieces(t *testing.T) {
	const (
		mohlon   = "leaflet no. 1262, Easy to Make Fashions from Rochelle's Mohlon (clyx.com)"
		services = "Guide to Knitting for the Services, Australian Comforts Fund, 1940 (patternlinks.com)"
		spool    = "Spool Cotton Co. book 94, size 38 (freevintageknitting.com/print/1798)"
		classic  = "Classic Fashions in Wool, book 55, no. 201 (freevintageknitting.com)"
	)
	// 21 single stitches at each side, those in the middle next to each other.
	veeTreads := slices.Concat(slices.Repeat([]int{1}, 20), []int{2}, slices.Repeat([]int{1}, 20))
	knitPrinted(t, []printed{
		{
			"back of 120 stitches", mohlon, mohlonBack(120, 5, 4, 10),
			[]int{5, 1, 1, 1, 1, 10, 10, 10, 2, 2, 2, 30, 2, 2, 2, 10, 10, 10, 1, 1, 1, 1, 5},
			[]count{{shaping.Body, 40, 102}, {shaping.RightHalf, 41, 36}, {shaping.LeftHalf, 41, 36}},
		},
		{
			"back of 132 stitches", mohlon, mohlonBack(132, 7, 5, 11),
			[]int{7, 1, 1, 1, 1, 1, 11, 11, 11, 2, 2, 2, 30, 2, 2, 2, 11, 11, 11, 1, 1, 1, 1, 1, 7},
			[]count{{shaping.Body, 40, 108}, {shaping.RightHalf, 41, 39}, {shaping.LeftHalf, 41, 39}},
		},
		{
			"back of 144 stitches", mohlon, mohlonBack(144, 8, 7, 12),
			[]int{8, 1, 1, 1, 1, 1, 1, 1, 12, 12, 12, 2, 2, 2, 30, 2, 2, 2, 12, 12, 12, 1, 1, 1, 1, 1, 1, 1, 8},
			[]count{{shaping.Body, 40, 114}, {shaping.RightHalf, 41, 42}, {shaping.LeftHalf, 41, 42}},
		},
		{
			"front of 96 stitches", services, servicesFront(96, 23),
			[]int{9, 1, 1, 1, 1, 1, 1, 23, 20, 23, 1, 1, 1, 1, 1, 1, 9},
			[]count{{shaping.Body, 40, 66}, {shaping.RightHalf, 50, 23}, {shaping.LeftHalf, 50, 23}},
		},
		{
			"front of 102 stitches", services, servicesFront(102, 26),
			[]int{9, 1, 1, 1, 1, 1, 1, 26, 20, 26, 1, 1, 1, 1, 1, 1, 9},
			[]count{{shaping.Body, 40, 72}, {shaping.RightHalf, 50, 26}, {shaping.LeftHalf, 50, 26}},
		},
		{
			// 10 bound off on 2 rows, then 1 decreased at the end of each row to 136; 8
			// bound off at the beginning of each row until 56 remain.
			"back of 172 stitches", spool, twoNeedles("back", shaping.Panel{
				Name: shaping.Body, FirstRow: 1, LastRow: 50, Needles: shaping.Centred(172),
				Left:  slices.Concat(boundOffEach(12, 10), everyOther(shaping.Fashioned, 13, -1, 8), boundOffEach(42, 8, 8, 8, 8, 8)),
				Right: slices.Concat(boundOffEach(11, 10), everyOther(shaping.Fashioned, 14, -1, 8), boundOffEach(41, 8, 8, 8, 8, 8)),
			}),
			[]int{10, 1, 1, 1, 1, 1, 1, 1, 1, 8, 8, 8, 8, 8, 56, 8, 8, 8, 8, 8, 1, 1, 1, 1, 1, 1, 1, 1, 10},
			[]count{{shaping.Body, 28, 136}, {shaping.Body, 40, 136}, {shaping.Body, 50, 56}},
		},
		{
			// 12 bound off on 2 rows, 2 on 4 rows, then 1 decreased at each end of every
			// right-side row to 94; 13 bound off on each of 4 rows, 42 are left.
			"back of 134 stitches", classic, classicBack(134, 4, 13, 13),
			[]int{12, 2, 2, 1, 1, 1, 1, 13, 13, 42, 13, 13, 1, 1, 1, 1, 2, 2, 12},
			[]count{{shaping.Body, 40, 94}, {shaping.Body, 44, 42}},
		},
		{
			// The other size: to 90; 8 on each of 6 rows.
			"back of 126 stitches", classic, classicBack(126, 2, 8, 8, 8),
			[]int{12, 2, 2, 1, 1, 8, 8, 8, 42, 8, 8, 8, 1, 1, 2, 2, 12},
			[]count{{shaping.Body, 40, 90}, {shaping.Body, 46, 42}},
		},
		{
			// The same armholes; divided in half, 1 decreased at the centre edge of every
			// right-side row until 26 remain, which is 42 rows; 13 bound off twice.
			"front of 134 stitches", classic, classicFront(134, 4, 13),
			slices.Concat([]int{12, 2, 2, 1, 1, 1, 1, 13, 13}, veeTreads, []int{13, 13, 1, 1, 1, 1, 2, 2, 12}),
			[]count{{shaping.Body, 40, 94}, {shaping.RightHalf, 82, 26}, {shaping.LeftHalf, 82, 26}},
		},
		{
			// The other size: until 24 remain; 8 three times.
			"front of 126 stitches", classic, classicFront(126, 2, 8, 8),
			slices.Concat([]int{12, 2, 2, 1, 1, 8, 8, 8}, veeTreads, []int{8, 8, 8, 1, 1, 2, 2, 12}),
			[]count{{shaping.Body, 40, 90}, {shaping.RightHalf, 82, 24}, {shaping.LeftHalf, 82, 24}},
		},
	})
}

// mohlonBack: so many bound off on 2 rows and 1 decreased at each end of every other
// row so many times; 30 in the middle, at each side of it 2 bound off three times,
// every other row; each shoulder bound off in three.
//
// The neck starts half an inch before the shoulder: 4 rows here, the gauge is not known.
func mohlonBack(castOn, boundOff, decreases, shoulder int) order.Outline {
	const middle, neck = 30, 3 * 2
	half := neck + 3*shoulder
	o := twoNeedles("back",
		shaping.Panel{
			Name: shaping.Body, FirstRow: 1, LastRow: 40, Needles: shaping.Centred(castOn),
			Left:  slices.Concat(boundOffEach(12, boundOff), everyOther(shaping.Fashioned, 13, -1, decreases)),
			Right: slices.Concat(boundOffEach(11, boundOff), everyOther(shaping.Fashioned, 13, -1, decreases)),
		},
		shaping.Panel{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 48,
			Needles: shaping.Centred(middle).Beyond(shaping.Right, half),
			Left:    boundOffEach(42, 2, 2, 2), Right: boundOffEach(45, shoulder, shoulder),
		},
		shaping.Panel{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 49,
			Needles: shaping.Centred(middle).Beyond(shaping.Left, half),
			Left:    boundOffEach(46, shoulder, shoulder), Right: boundOffEach(43, 2, 2, 2),
		})
	o.Centre, o.Top = order.BoundOff, order.BoundOff
	return o
}

// servicesFront: 9 bound off on 2 rows and 1 decreased at each end of alternate rows 6
// times, then divided with 20 in the middle. How the neck goes on is not known: plain.
func servicesFront(castOn, half int) order.Outline {
	decreases := everyOther(shaping.Fashioned, 13, -1, 6)
	middle := shaping.Centred(20)
	return twoNeedles("front",
		shaping.Panel{
			Name: shaping.Body, FirstRow: 1, LastRow: 40, Needles: shaping.Centred(castOn),
			Left:  slices.Concat(boundOffEach(12, 9), decreases),
			Right: slices.Concat(boundOffEach(11, 9), decreases),
		},
		shaping.Panel{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 50,
			Needles: middle.Beyond(shaping.Right, half),
		},
		shaping.Panel{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 50,
			Needles: middle.Beyond(shaping.Left, half),
		})
}

// classicBack: 12 bound off on 2 rows and 2 on 4 rows, so many decreases at each end of
// the right-side rows, and the shoulders bound off in those groups.
func classicBack(castOn, decreases int, shoulder ...int) order.Outline {
	body := classicBody(castOn, decreases)
	body.LastRow += 2 * len(shoulder)
	body.Left = append(body.Left, boundOffEach(42, shoulder...)...)
	body.Right = append(body.Right, boundOffEach(41, shoulder...)...)
	return twoNeedles("back", body)
}

// classicFront has the armholes of the back. The shoulders are bound off in those
// groups and a last one, which is what is left.
func classicFront(castOn, decreases int, shoulder ...int) order.Outline {
	body := classicBody(castOn, decreases)
	inWork := body.InWork(body.LastRow)
	neck := everyOther(shaping.Fashioned, 41, -1, 21)
	o := twoNeedles("front", body,
		shaping.Panel{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 84 + 2*len(shoulder),
			Needles: inWork.Edge(shaping.Right, inWork.Len()/2),
			Left:    neck, Right: boundOffEach(85, shoulder...),
		},
		shaping.Panel{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 85 + 2*len(shoulder),
			Needles: inWork.Edge(shaping.Left, inWork.Len()/2),
			Left:    boundOffEach(86, shoulder...), Right: neck,
		})
	o.Top = order.BoundOff
	return o
}

func classicBody(castOn, decreases int) shaping.Panel {
	single := everyOther(shaping.Fashioned, 17, -1, decreases)
	return shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: 40, Needles: shaping.Centred(castOn),
		Left:  slices.Concat(boundOffEach(12, 12, 2, 2), single),
		Right: slices.Concat(boundOffEach(11, 12, 2, 2), single),
	}
}
