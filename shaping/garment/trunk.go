package garment

import (
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/order"
)

// Front plans the front of a garment, knits it and returns it. It returns an
// [*Error] that names the field of the spec if the front cannot be made; what planner
// and judge would refuse beyond that, which would be a fault of this library, as it is.
// A spec with an opening has no front in one piece: see [Fronts].
func Front(s Spec) (Piece, error) {
	j, err := newJob(s)
	if err != nil {
		return Piece{}, err
	}
	if s.Opening != nil {
		return Piece{}, &Error{Field: "opening", Want: "parts the front into two: plan both, or leave it out for a front in one piece", Err: ErrSpec}
	}
	return j.alone(newFront(j))
}

func newFront(j job) (Piece, error) {
	f := newTrunk(shaping.Front, j)
	f.neckField = "neck"
	return f.plan()
}

// trunk is a front or a back in the making.
type trunk struct {
	job
	name                    string
	outer                   shaping.Side // of one of two fronts, the edge with the armhole; else none
	opening                 Neck         // of this piece
	neckField               string       // where the spec has its depth and flat part
	neck, shoulder, armhole Pair

	widths  Widths // of one of two fronts those of both together, as of a front in one piece
	heights Heights
	turned  int   // rows that the armhole of one of two fronts has more, for where its row 1 started
	groups  []int // of the shoulder, from tip to neck

	paths        paths
	sides        []slant
	neckEdge     twoEdges // left: the right edge of the left half
	armholeEdge  twoEdges // without what is taken off at once
	shoulderEdge twoEdges // of a drawn shoulder
	lastTied     int      // row of the traced armhole where its last hold or bind off stands, 0 without one
}

func newTrunk(name string, j job) *trunk {
	return &trunk{
		job: j, name: name, opening: j.spec.Neck,
		neck:     j.spec.Methods.Neck.Or(By(shaping.Hold)),
		shoulder: j.spec.Methods.Shoulder.Or(By(shaping.Hold)),
		armhole:  j.spec.Methods.Armhole.Or(defaultArmhole()),
	}
}

// defaultArmhole returns how stitches go at an armhole and a cap that the spec leaves open.
func defaultArmhole() Pair { return Pair{shaping.BindOff, shaping.Fashioned} }

// plan chooses the numbers, traces the edges and knits the piece.
func (f *trunk) plan() (Piece, error) {
	steps := []func() error{
		f.readPaths, f.chooseWidths, f.chooseHeights, f.chooseCarriage, f.chooseGroups, f.checkUnderarm, f.slantSides, f.checkNarrowest, f.drawNeck, f.drawArmhole,
	}
	if f.begun != nil {
		// Which widths can still be reached depends on the rows left.
		steps[1], steps[2] = steps[2], steps[1]
		steps = append(steps, f.checkBegun)
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return Piece{}, err
		}
	}
	return f.piece()
}

// firstHalf returns the side of the half that goes first: where the row after the
// split starts.
func (f *trunk) firstHalf() shaping.Side { return f.start(f.heights.NeckStart() + 1) }

// piece orders the rows, knits them and reports.
func (f *trunk) piece() (Piece, error) {
	outline := order.Outline{
		Name: f.name, Place: f.place, Carriage: f.carriage, Panels: f.panels(), ShoulderRow: f.shoulderRow(), Outer: f.outer,
	}
	if f.neck.Several == shaping.BindOff {
		outline.Centre = order.BoundOff
	}
	if f.shoulder.Several != shaping.Hold {
		outline.Top = order.BoundOff
	}
	work, cloth, err := knitted(outline)
	if err != nil {
		return Piece{}, err
	}
	edges, err := f.edges()
	if err != nil {
		return Piece{}, err
	}
	sizes := f.sizes()
	return Piece{
		Work: work, Cloth: cloth, Spec: f.spec, Gauge: f.gauge,
		Heights: f.heights, ShoulderRow: f.shoulderRow(), Widths: f.ownWidths(),
		Sizes: sizes, Edges: edges, Warnings: f.warnings(sizes),
	}, nil
}

// panels returns the body and its halves in the order in which they are worked.
func (f *trunk) panels() shaping.Tree {
	if f.outer.IsValid() {
		return shaping.Tree{f.opened()}
	}
	split := f.heights.NeckStart()
	body := shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: split, Needles: shaping.Centred(f.widths.CastOn),
		Left:  f.outerSteps(shaping.Left).Between(1, split),
		Right: f.outerSteps(shaping.Right).Between(1, split),
	}
	first := f.firstHalf()
	return shaping.Tree{body, f.half(body, first), f.half(body, first.Opposite())}
}

// half returns the half on one side of the body: from the flat middle of the neck to
// the outer edge, with what the body holds of the shoulder.
func (f *trunk) half(body shaping.Panel, side shaping.Side) shaping.Panel {
	first, last := body.LastRow+1, f.top(side)
	p := shaping.Panel{Name: shaping.RightHalf, Parent: body.Name, FirstRow: first, LastRow: last, Needles: body.InWork(body.LastRow)}
	flat := shaping.Centred(f.widths.Flat)
	neck, outer := f.neckEdge.at(side).Schedule, f.outerSteps(side).Between(first, last)
	if side == shaping.Right {
		p.Left, p.Right = neck, outer
		p.Needles.First = shaping.NeedleAt(flatEnd(flat))
	} else {
		p.Name = shaping.LeftHalf
		p.Left, p.Right = outer, neck
		p.Needles.Last = shaping.NeedleAt(flatEnd(flat) - 1 - flat.Len())
	}
	p.Needles = p.Needles.Moved(side, f.shoulderHeld(side, body.LastRow))
	return p
}

// flatEnd returns the index of the first needle right of the neck's middle part, which
// without one is R1: the neck is then even, as the body is.
func flatEnd(flat shaping.Span) int {
	if flat.IsEmpty() {
		return 0
	}
	return flat.Last.Index() + 1
}

// curved returns the stitches of the neck on each side of its flat middle.
func (f *trunk) curved() int { return (f.widths.Neck - f.widths.Flat) / 2 }

// top returns the last row of the half on one side.
func (f *trunk) top(side shaping.Side) int {
	return f.heights.Top() + f.lag(side, f.neckSteps(side), f.shoulderSteps(side))
}

// outerSteps returns everything that happens at one outer edge, in rows of the piece.
func (f *trunk) outerSteps(edge shaping.Side) shaping.Schedule {
	if f.begun != nil && f.begun.above {
		return append(f.begun.outer(edge), f.shoulderSteps(edge)...)
	}
	steps := append(slanted(f.sides), f.underarm(edge)...)
	steps = append(steps, f.armholeEdge.at(edge).Schedule...)
	return f.begun.goesOnWith(append(steps, f.shoulderSteps(edge)...), edge)
}
