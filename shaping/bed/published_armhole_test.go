package bed_test

import (
	"slices"
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/order"
)

// edges are the steps of a panel at both of its edges.
type edges struct{ left, right shaping.Schedule }

// and returns the steps of both, in the order of the rows.
func (e edges) and(f edges) edges {
	merged := func(a, b shaping.Schedule) shaping.Schedule {
		all := slices.Concat(a, b)
		slices.SortFunc(all, func(a, b shaping.Step) int { return a.Row - b.Row })
		return all
	}
	return edges{merged(e.left, f.left), merged(e.right, f.right)}
}

// panel is the body of a piece with these edges.
func (e edges) panel(castOn, rows int) shaping.Panel {
	return shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: rows, Needles: shaping.Centred(castOn),
		Left: e.left, Right: e.right,
	}
}

// piece is one that is all body.
func (e edges) piece(name string, castOn, rows int) order.Outline {
	return twoNeedles(name, e.panel(castOn, rows))
}

// boundOffInTurn are stitches bound off at the beginning of every row from the given one
// on. Odd rows begin at the right.
func boundOffInTurn(from int, sizes ...int) edges {
	var e edges
	for i, size := range sizes {
		step := shaping.Step{Row: from + i, Stitches: -size, Method: shaping.BindOff}
		if step.Row%2 == 1 {
			e.right = append(e.right, step)
		} else {
			e.left = append(e.left, step)
		}
	}
	return e
}

// decreasedInTurn are single stitches decreased at the end of so many rows. Odd rows
// end at the left.
func decreasedInTurn(from, rows int) edges {
	e := boundOffInTurn(from, slices.Repeat([]int{1}, rows)...)
	return edges{e.right.By(0, shaping.Fashioned), e.left.By(0, shaping.Fashioned)}
}

// atBothEnds are stitches that go or come at both ends of a row so many times.
func atBothEnds(from, every, stitches, times int) edges {
	steps := shaping.Expand(shaping.Phrase{From: from, Every: every, Stitches: stitches, Times: times}).
		By(shaping.Fashioned, shaping.Fashioned)
	return edges{steps, steps}
}

// stepped are treads that are the same at both edges, with the stitches between them.
func stepped(middle int, fromEdge ...int) []int {
	toEdge := slices.Clone(fromEdge)
	slices.Reverse(toEdge)
	return slices.Concat(fromEdge, []int{middle}, toEdge)
}

func ones(times int) []int { return slices.Repeat([]int{1}, times) }

// Armholes and shoulders knitted in the hand. Which rows of the piece they are is chosen
// here where it is not printed.
func TestPublishedArmholes(t *testing.T) {
	const (
		setIn      = "designyourownsweater.blogspot.com, January 2007, Set-in sleeves; the decreases by its method"
		crepe      = "Chadwick's Red Heart Crepe-de-Mode, size 38 (freevintageknitting.com/print/2301)"
		shetland   = "Chadwick's Red Heart Shetland Floss leaflet, size 34 (freevintageknitting.com/print/2099)"
		practical  = "Woman's cardigan, Practical Handknits, size 16 (freevintageknitting.com)"
		wool1918   = "Handbook of Wool Knitting and Crochet, 1918"
		yarnsville = "yarnsville.com"
	)
	knitPrinted(t, []printed{
		{
			"back of 174 stitches and 256 rows", setIn, setInBack(t), stepped(106, slices.Concat([]int{8}, ones(26))...),
			[]count{{shaping.Body, 151, 174}, {shaping.Body, 216, 106}, {shaping.Body, 256, 106}},
		},
		{
			// 6 bound off on 4 rows, 1 decreased at the end of each row to 110; 2 bound off at
			// the beginning of each row until 38 remain.
			"back of 142 stitches", crepe,
			boundOffInTurn(11, 6, 6, 6, 6).and(decreasedInTurn(15, 8)).and(boundOffInTurn(41, slices.Repeat([]int{2}, 36)...)).piece("back", 142, 76),
			stepped(38, slices.Concat([]int{6, 6}, ones(4), slices.Repeat([]int{2}, 18))...),
			[]count{{shaping.Body, 22, 110}, {shaping.Body, 40, 110}, {shaping.Body, 76, 38}},
		},
		{
			"swatch of 25 stitches", "10rowsaday.com, wording from Filati Handknitting",
			boundOffInTurn(3, 4, 4, 3, 3, 2, 2, 1, 1).piece("swatch", 25, 10),
			stepped(5, 4, 3, 2, 1), []count{{shaping.Body, 10, 5}},
		},
		{
			// 2 bound off at the beginning of rows 121 to 128, then 48 rows straight.
			"back of 79 stitches", wool1918 + ", A serviceable sweater",
			boundOffInTurn(121, 2, 2, 2, 2, 2, 2, 2, 2).piece("back", 79, 176),
			stepped(63, 2, 2, 2, 2), []count{{shaping.Body, 120, 79}, {shaping.Body, 128, 63}, {shaping.Body, 176, 63}},
		},
		{
			// Half of 16 at once, the rest 1 at the beginning of each row. How many stitches
			// there are is chosen here.
			"half at once", "30daysweater.com, day 8; 16 at each side computed",
			boundOffInTurn(11, slices.Concat([]int{8, 8}, ones(16))...).piece("back", 80, 40),
			stepped(48, slices.Concat([]int{8}, ones(8))...), []count{{shaping.Body, 28, 48}},
		},
		{
			// 6 bound off on 4 rows, 7 on 4 rows.
			"shoulders of 82 stitches", practical,
			boundOffInTurn(11, 6, 6, 6, 6, 7, 7, 7, 7).piece("back", 82, 18),
			stepped(30, 6, 6, 7, 7), []count{{shaping.Body, 18, 30}},
		},
		{
			// 1 decreased at each end of every 8th row to 76, then 3 pairs, every other row
			// here.
			"body of 100 stitches", wool1918,
			halves(atBothEnds(9, 8, -1, 12).and(atBothEnds(99, 2, -1, 3)).panel(100, 110), 20),
			stepped(20, slices.Concat(ones(15), []int{25})...),
			[]count{{shaping.Body, 97, 76}, {shaping.Body, 103, 70}, {shaping.RightHalf, 112, 25}, {shaping.LeftHalf, 112, 25}},
		},
		{
			"back of 118 stitches", shetland,
			halves(boundOffInTurn(11, 9, 9).panel(118, 40), 40), stepped(40, 9, 30),
			[]count{{shaping.Body, 12, 100}, {shaping.RightHalf, 42, 30}, {shaping.LeftHalf, 42, 30}},
		},
		{
			// The raglan slopes take 30 at each side, here on every right-side row.
			"women's back of 90 stitches", yarnsville,
			atBothEnds(11, 2, -1, 30).piece("back", 90, 70), stepped(30, ones(30)...),
			[]count{{shaping.Body, 69, 30}},
		},
		{
			"men's back of 90 stitches", yarnsville,
			atBothEnds(11, 2, -1, 25).piece("back", 90, 60), stepped(40, ones(25)...),
			[]count{{shaping.Body, 59, 40}},
		},
	})
}

// setInBack is 62 cm wide and 64 cm long at 28 stitches and 40 rows over 10 cm, 26 cm of
// it armhole: 8 bound off at once, 26 decreased over 64 rows, 40 rows straight to 38 cm.
// The bind off at the left falls a row early, so that the decreases are the same at both
// edges.
func setInBack(t *testing.T) order.Outline {
	t.Helper()
	const underarm = 152
	spacing, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: 64, Times: 26, Ends: shaping.LastShaped})
	if err != nil {
		t.Fatal(err)
	}
	single := spacing.Schedule(-1, shaping.Fashioned).Shifted(underarm)
	return boundOffInTurn(underarm, 8, 8).and(edges{single, single}).piece("back", 174, underarm+64+40)
}

// halves is a piece whose body is divided with that many stitches in the middle, each
// half worked on for two rows.
func halves(body shaping.Panel, middle int) order.Outline {
	centre, half := shaping.Centred(middle), (body.InWork(body.LastRow).Len()-middle)/2
	beside := func(name string, side shaping.Side) shaping.Panel {
		return shaping.Panel{
			Name: name, Parent: body.Name, FirstRow: body.LastRow + 1, LastRow: body.LastRow + 2,
			Needles: centre.Beyond(side, half),
		}
	}
	return twoNeedles("back", body, beside(shaping.RightHalf, shaping.Right), beside(shaping.LeftHalf, shaping.Left))
}
