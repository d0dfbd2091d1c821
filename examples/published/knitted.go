package main

import (
	"fmt"
	"slices"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// firstRow is the row in which the shaping of a piece begins if the table does not say: an odd
// one, which starts at the right.
const firstRow = 11

// handmade is a piece knitted flat in the hand, as a publication prints it. Which rows are
// shaped is chosen here where it is not printed.
type handmade struct {
	CastOn int
	Runs   []stretch
	Rows   int // of the body; left out as many as the runs need
	Halves *halves
	At     []int // rows at which the stitches are counted; left out the last of the body
	Claim  int   // stitches that are said to be left at the end; left out nothing is said
}

// stretch is a run of rows that are shaped alike. It has one of BindOff, Ends, and Change with
// Every and Times.
type stretch struct {
	From    int          // its first row; left out the one after the run before
	Edge    shaping.Side // left out both, in turn where it is one of them in a row
	BindOff []int        // at the beginning of every row, of an edge of every row that starts there
	Ends    int          // rows with 1 decreased at the end of each
	Change  int          // stitches that come or, less than 0, go at the edge or at both
	Every   int          // rows from one change to the next
	Times   int
}

// halves are worked one after the other.
type halves struct {
	Middle   int   // stitches between them
	Neck     []int // bound off at the neck, every other row
	Decrease int   // so many right-side rows, each with 1 decreased at the neck, after what is bound off
	Shoulder []int // bound off at the outer edge when the neck is shaped, the last after the last row
}

// shaped is what the runs so far do at the edges, and the row they have come to.
type shaped struct {
	left, right shaping.Schedule
	row         int // the last
}

func (s *shaped) add(edge shaping.Side, step shaping.Step) {
	if edge == shaping.Left {
		s.left = append(s.left, step)
	} else {
		s.right = append(s.right, step)
	}
	s.row = max(s.row, step.Row)
}

// startOf returns the side where a row in the hand starts.
func startOf(row int) shaping.Side {
	if row%2 == 1 {
		return shaping.Right
	}
	return shaping.Left
}

// bindOff binds off at the beginning of every row, or of every one that starts at the edge.
func (s *shaped) bindOff(from int, edge shaping.Side, sizes ...int) {
	for i, n := range sizes {
		step := shaping.Step{Row: from + i, Stitches: -n, Method: shaping.BindOff}
		if edge.IsValid() {
			step.Row += i
			s.add(edge, step)
		} else {
			s.add(startOf(step.Row), step)
		}
	}
}

// change has stitches come or go at the edge, or at both if it is none.
func (s *shaped) change(from int, edge shaping.Side, stitches, every, times int) {
	for i := range times {
		for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
			if side == edge || !edge.IsValid() {
				s.add(side, shaping.Step{Row: from + i*every, Stitches: stitches, Method: shaping.Fashioned})
			}
		}
	}
}

func (s *shaped) run(r stretch) error {
	from := or(r.From, s.row+1)
	switch {
	case len(r.BindOff) > 0:
		s.bindOff(from, r.Edge, r.BindOff...)
	case r.Ends > 0:
		for row := from; row < from+r.Ends; row++ {
			s.change(row, startOf(row).Opposite(), -1, 1, 1)
		}
	case r.Change != 0 && r.Every > 0:
		if r.From == 0 && r.Every%2 == 0 {
			from += 1 - from%2 // a right-side row
		}
		s.change(from, r.Edge, r.Change, r.Every, r.Times)
	default:
		return fmt.Errorf("%w: a run has bindOff, ends, or change and every", errInputs)
	}
	return nil
}

// body returns the body of the piece.
func (in handmade) body() (shaping.Panel, error) {
	s := shaped{row: firstRow - 1}
	for _, r := range in.Runs {
		if r.From < 0 || r.From > shaping.MaxRows || r.Every < 0 || r.Every > shaping.MaxRows {
			return shaping.Panel{}, fmt.Errorf("%w: rows are from 1 to %d", errInputs, shaping.MaxRows)
		}
		if err := tooMany(r.Times, r.Ends); err != nil {
			return shaping.Panel{}, err
		}
		if err := s.run(r); err != nil {
			return shaping.Panel{}, err
		}
	}
	byRow := func(a, b shaping.Step) int { return a.Row - b.Row }
	slices.SortStableFunc(s.left, byRow)
	slices.SortStableFunc(s.right, byRow)
	last := or(in.Rows, s.row)
	if last < 1 || last > shaping.MaxRows {
		return shaping.Panel{}, fmt.Errorf("%w: %d rows: from 1 to %d", errInputs, last, shaping.MaxRows)
	}
	if in.Halves != nil {
		last += last % 2 // a half begins at an odd row
	}
	return shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: last, Needles: shaping.Centred(in.CastOn), Left: s.left, Right: s.right,
	}, nil
}

// outline is the whole piece.
func (in handmade) outline() (order.Outline, error) {
	body, err := in.body()
	o := order.Outline{Name: "piece", Place: shaping.Hand, Panels: shaping.Tree{body}}
	if err != nil || in.Halves == nil {
		return o, err
	}
	if err := body.Validate(); err != nil {
		return o, err
	}
	h := *in.Halves
	if err := tooMany(h.Decrease); err != nil {
		return o, err
	}
	inWork := body.InWork(body.LastRow)
	stitches := (inWork.Len() - h.Middle) / 2
	if h.Middle < 0 || stitches < 1 || 2*stitches+h.Middle != inWork.Len() {
		return o, fmt.Errorf("%w: middle %d: it leaves no two halves of %d stitches", errInputs, h.Middle, inWork.Len())
	}
	o.Panels = append(o.Panels, h.half(shaping.Right, inWork.Edge(shaping.Right, stitches), body.LastRow), h.half(shaping.Left, inWork.Edge(shaping.Left, stitches), body.LastRow))
	if len(h.Neck) > 0 {
		o.Centre = order.BoundOff
	}
	if len(h.Shoulder) > 0 {
		o.Top = order.BoundOff
	}
	return o, nil
}

// half is the half at that side of a piece that is divided after a row.
func (h halves) half(side shaping.Side, needles shaping.Span, divided int) shaping.Panel {
	name, neckFrom := shaping.RightHalf, divided+2 // a row that starts at the neck
	if side == shaping.Left {
		name, neckFrom = shaping.LeftHalf, divided+3
	}
	var neck, outer shaped
	neck.bindOff(neckFrom, side.Opposite(), h.Neck...)
	single := divided + 1
	if len(h.Neck) > 0 {
		single += 2*len(h.Neck) + 2
	}
	neck.change(single, side.Opposite(), -1, 2, h.Decrease)
	last := max(neck.row, divided+2)
	if groups := len(h.Shoulder) - 1; groups > 0 {
		from := last + 1
		if startOf(from) != side {
			from++
		}
		outer.bindOff(from, side, h.Shoulder[:groups]...)
		last = outer.row + 1
	}
	p := shaping.Panel{Name: name, Parent: shaping.Body, FirstRow: divided + 1, LastRow: last, Needles: needles}
	p.Left, p.Right = slices.Concat(neck.left, outer.left), slices.Concat(neck.right, outer.right)
	return p
}

// knit plans the piece and has the judge knit it. It says the stitches that are counted, or
// those of half, neck and half where the piece is divided.
func knit(in handmade) (string, error) {
	o, err := in.outline()
	if err != nil {
		return "", err
	}
	work, err := order.Arrange(o)
	if err != nil {
		return "", err
	}
	work.Ledger.Live = or(in.Claim, work.Ledger.Live)
	cloth, err := bed.Knit(work)
	if err != nil {
		return "", err
	}
	counted := func(panel string, row int) int {
		for c := range cloth.Courses() {
			if c.Panel == panel && c.Row == row {
				return c.Needles.Len()
			}
		}
		return 0
	}
	body := o.Panels[0]
	if in.Halves != nil {
		var shoulders [2]int
		for i, p := range o.Panels[1:] {
			bound := in.Halves.Shoulder[:max(0, len(in.Halves.Shoulder)-1)]
			shoulders[i] = counted(p.Name, p.LastRow) + sum(bound)
		}
		neck := counted(shaping.Body, body.LastRow) - sum(shoulders[:])
		return fmt.Sprintf("%d - %d - %d", shoulders[0], neck, shoulders[1]), nil
	}
	var list []int
	for _, row := range in.At {
		if row < 1 || row > body.LastRow {
			return "", fmt.Errorf("%w: at %d: the body has %d rows", errInputs, row, body.LastRow)
		}
		list = append(list, counted(shaping.Body, row))
	}
	if len(in.At) == 0 {
		list = []int{counted(shaping.Body, body.LastRow)}
	}
	return listed(list), nil
}

func sum(list []int) int {
	all := 0
	for _, n := range list {
		all += n
	}
	return all
}
