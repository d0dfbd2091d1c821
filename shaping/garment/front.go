package garment

import (
	"example.com/walewise/gauge"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// Front plans the front of a garment, knits it and returns it. It returns an
// [*Error] that names the field of the spec if the front cannot be made.
func Front(s Spec) (Piece, error) {
	g, err := gaugeOf(s)
	if err != nil {
		return Piece{}, err
	}
	if err := checkFront(s); err != nil {
		return Piece{}, err
	}
	f := front{spec: s, gauge: g, neck: s.Methods.Neck.Or(By(shaping.Hold)), shoulder: s.Methods.Shoulder.Or(By(shaping.Hold))}
	if f.widths, err = widths(s, g); err != nil {
		return Piece{}, err
	}
	if err := checkBed(s, f.widths, g); err != nil {
		return Piece{}, err
	}
	if f.heights, err = heights(s, g); err != nil {
		return Piece{}, err
	}
	if f.groups, err = f.widths.groups(s, f.heights, g); err != nil {
		return Piece{}, err
	}
	if err := f.checkUnderarm(); err != nil {
		return Piece{}, err
	}
	if err := f.drawNeck(); err != nil {
		return Piece{}, err
	}
	if err := f.drawArmhole(); err != nil {
		return Piece{}, err
	}
	return f.piece()
}

// front is a front in the making.
type front struct {
	spec           Spec
	gauge          gauge.Gauge
	neck, shoulder Pair

	widths  Widths
	heights Heights
	groups  []int // of the shoulder, from tip to neck

	neckEdge    Edge
	armholeEdge Edge // no stitches if the inset is bound off whole or there is none
}

// carriage returns where the carriage stands before row 1.
func (f front) carriage() shaping.Side {
	if f.spec.Setup.Carriage == shaping.Left {
		return shaping.Left
	}
	return shaping.Right
}

// start returns where row n of the body starts.
func (f front) start(row int) shaping.Side {
	if row%2 == 1 {
		return f.carriage()
	}
	return f.carriage().Opposite()
}

// piece orders the rows, knits them and reports.
func (f front) piece() (Piece, error) {
	outline := order.Outline{
		Name: "front", Place: shaping.Bed, Carriage: f.carriage(), Panels: f.panels(),
	}
	if f.neck.Several == shaping.BindOff {
		outline.Centre = order.BoundOff
	}
	if f.shoulder.Several == shaping.BindOff {
		outline.Top = order.BoundOff
	}
	work, err := order.Arrange(outline)
	if err != nil {
		return Piece{}, err
	}
	cloth, err := bed.Knit(work)
	if err != nil {
		return Piece{}, err
	}
	return Piece{
		Work: work, Cloth: cloth, Spec: f.spec, Gauge: f.gauge,
		Heights: f.heights, Widths: f.widths,
		Sizes: f.sizes(), Edges: f.edges(work.Panels), Warnings: f.warnings(),
	}, nil
}

// panels returns the body and its halves, the half on the carriage's side first.
func (f front) panels() shaping.Tree {
	h := f.heights
	needles := shaping.Centred(f.widths.Body)
	body := shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: h.NeckStart(), Needles: needles,
		Left:  f.outerSteps(shaping.Left).Between(1, h.NeckStart()),
		Right: f.outerSteps(shaping.Right).Between(1, h.NeckStart()),
	}
	end := body.InWork(body.LastRow)
	flat := shaping.Centred(f.widths.Flat)
	right := shaping.Panel{
		Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: h.NeckStart() + 1, LastRow: h.Top(),
		Needles: shaping.Span{First: shaping.NeedleAt(f.flatEnd(flat)), Last: end.Last},
		Left:    f.neckEdge.Schedule.Shifted(h.NeckStart()),
		Right:   f.outerSteps(shaping.Right).Between(h.NeckStart()+1, h.Top()),
	}
	left := mirror.AxisFor(f.widths.Body).Panel(right)
	left.Left = f.outerSteps(shaping.Left).Between(h.NeckStart()+1, h.Top())
	if f.start(h.NeckStart()+1) == shaping.Left {
		return shaping.Tree{body, left, right}
	}
	return shaping.Tree{body, right, left}
}

// flatEnd returns the index of the first needle right of the neck's middle part.
func (f front) flatEnd(flat shaping.Span) int {
	if flat.IsEmpty() {
		return 0
	}
	return flat.Last.Index() + 1
}

// outerSteps returns everything that happens at one outer edge, in rows of the piece.
func (f front) outerSteps(edge shaping.Side) shaping.Schedule {
	var steps shaping.Schedule
	if f.widths.BindOff > 0 {
		steps = append(steps, shaping.Step{Row: f.bindOffRow(edge), Stitches: -f.widths.BindOff, Method: shaping.BindOff})
	}
	steps = append(steps, f.armholeEdge.Schedule.Shifted(f.heights.Underarm)...)
	row := f.heights.Tip() // the first hold; binding off works one row later
	if f.shoulder.Several == shaping.BindOff {
		row++
	}
	for _, group := range f.groups[:len(f.groups)-1] {
		steps = append(steps, shaping.Step{Row: row, Stitches: -group, Method: f.shoulder.Several})
		row += 2
	}
	return steps
}
