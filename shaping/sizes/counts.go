package sizes

import (
	"slices"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// None stands in [Count.Values] for a size that does not have what is counted.
const None = -1

// Count is one number of a piece in all sizes.
type Count struct {
	Name    string // as of the constants here
	Counted string // "stitches" or "rows"
	Values  []int  // of each size, or None
}

// The names of counts. Rows are those of the highest wale from the cast-on edge, so that
// they are readings of the counter.
const (
	CastOn     = "cast on"            // stitches, seams included
	BandRows   = "band"               // rows
	AtWaist    = "at the waist"       // stitches
	ToWaist    = "to the waist"       // rows
	AtUnderarm = "at the underarm"    // stitches
	ToUnderarm = "to the underarm"    // rows
	AtOnce     = "at each underarm"   // stitches taken off at once
	Inset      = "at each armhole"    // stitches that go in all
	NeckStart  = "to the neck"        // rows
	Flat       = "middle of the neck" // stitches, flat
	NeckWidth  = "neck"               // stitches
	Shoulder   = "each shoulder"      // stitches
	Tip        = "to the shoulder"    // rows, up to its outer end
	TopFlat    = "top of the cap"     // stitches
	CapRows    = "cap"                // rows, from the underarm
	Top        = "to the top"         // rows
)

// PieceCounts is one piece in all sizes.
type PieceCounts struct {
	Name   string
	Counts []Count // in the order of the work; those that no size has are left out
	Edges  []Edge  // in the order of the work
}

// Count returns the values of a count; ok is false if no size has it.
func (p PieceCounts) Count(name string) (values []int, ok bool) {
	for _, c := range p.Counts {
		if c.Name == name {
			return c.Values, true
		}
	}
	return nil, false
}

// Edge is one shaped edge in all sizes, at one side: neck and shoulder those of the half that
// is worked first, armhole and cap where they begin first, the right one if both begin in the
// same row. At the other side what is bound off or held may stand a row before or after.
type Edge struct {
	Name  string         // as of an edge of package garment
	Sides []shaping.Side // of each size, where the edge lies on the piece; of a neck that of its half
	// Once is what an armhole or a cap takes off at once at the underarm, as a step of each
	// size; none is one of no stitches.
	Once []shaping.Step
	// Last is what stays of a shoulder to the end, in stitches of each size; nil for other
	// edges.
	Last  []int
	Words []Words // of sizes that follow each other; none if no size has steps
}

// Counts lays the pieces of all sizes side by side.
func (r Range) Counts() []PieceCounts {
	var pieces []PieceCounts
	for _, name := range r.pieces() {
		p := PieceCounts{Name: name}
		made := make([]*garment.Piece, len(r.Sizes))
		for i, s := range r.Sizes {
			if piece, ok := s.Set.Piece(name); ok {
				made[i] = &piece
			}
		}
		for _, c := range counted() {
			count := Count{Name: c.name, Counted: c.what}
			for _, piece := range made {
				value := None
				if piece != nil {
					value = c.of(*piece)
				}
				count.Values = append(count.Values, value)
			}
			if slices.ContainsFunc(count.Values, func(n int) bool { return n != None }) {
				p.Counts = append(p.Counts, count)
			}
		}
		p.Edges = edges(made)
		pieces = append(pieces, p)
	}
	return pieces
}

// pieces returns the names of the pieces that any size has.
func (r Range) pieces() []string {
	var names []string
	for _, s := range r.Sizes {
		for _, p := range s.Set.Pieces {
			if !slices.Contains(names, p.Name()) {
				names = append(names, p.Name())
			}
		}
	}
	return names
}

// number is one number of a piece.
type number struct {
	name, what string
	of         func(garment.Piece) int
}

// counted returns the numbers in the order of the work.
func counted() []number {
	stitches := func(name string, of func(garment.Widths) int) number {
		return number{name, "stitches", func(p garment.Piece) int { return orNone(of(p.Widths)) }}
	}
	rows := func(name string, of func(garment.Heights) int) number {
		return number{name, "rows", func(p garment.Piece) int { return orNone(of(p.Heights)) }}
	}
	trunk := func(n number) number {
		return number{n.name, n.what, func(p garment.Piece) int {
			if p.Heights.Armhole == 0 {
				return None
			}
			return n.of(p)
		}}
	}
	sleeve := func(n number) number {
		return number{n.name, n.what, func(p garment.Piece) int {
			if p.Heights.Armhole > 0 || p.Heights.Cap == 0 {
				return None
			}
			return n.of(p)
		}}
	}
	return []number{
		stitches(CastOn, func(w garment.Widths) int { return w.CastOn }),
		rows(BandRows, func(h garment.Heights) int { return h.Band }),
		rows(ToWaist, func(h garment.Heights) int { return h.Waist }),
		stitches(AtWaist, func(w garment.Widths) int { return w.Waist }),
		rows(ToUnderarm, func(h garment.Heights) int { return h.Underarm }),
		stitches(AtUnderarm, func(w garment.Widths) int { return w.Body }),
		stitches(AtOnce, func(w garment.Widths) int { return w.BindOff }),
		stitches(Inset, func(w garment.Widths) int { return w.Inset }),
		trunk(rows(NeckStart, garment.Heights.NeckStart)),
		trunk(stitches(Flat, func(w garment.Widths) int { return w.Flat })),
		trunk(stitches(NeckWidth, func(w garment.Widths) int { return w.Neck })),
		trunk(rows(Tip, garment.Heights.Tip)),
		trunk(stitches(Shoulder, func(w garment.Widths) int { return w.Shoulder })),
		sleeve(rows(CapRows, func(h garment.Heights) int { return h.Cap })),
		sleeve(stitches(TopFlat, func(w garment.Widths) int { return w.Flat })),
		rows(Top, garment.Heights.Top),
	}
}

func orNone(n int) int {
	if n == 0 {
		return None
	}
	return n
}

// edges returns the edges of a piece in all sizes; a size that does not have it is nil.
func edges(made []*garment.Piece) []Edge {
	var list []Edge
	for _, name := range []string{
		garment.CuffToUnderarm, garment.HemToWaist, garment.WaistToUnderarm, garment.HemToUnderarm,
		garment.ArmholeEdge, garment.CapEdge, garment.NeckEdge, garment.ShoulderEdge,
	} {
		e := Edge{Name: name, Sides: make([]shaping.Side, len(made)), Once: make([]shaping.Step, len(made))}
		schedules := make([]shaping.Schedule, len(made))
		some := false
		for i, p := range made {
			if p == nil {
				continue
			}
			e.Sides[i] = side(*p, name)
			steps := steps(*p, name, e.Sides[i])
			if name == garment.ArmholeEdge || name == garment.CapEdge {
				e.Once[i], steps = atOnce(*p, steps)
			}
			schedules[i] = steps
			some = some || len(steps) > 0 || e.Once[i].Stitches != 0
		}
		if !some {
			continue
		}
		if name == garment.ShoulderEdge {
			for i, p := range made {
				last := None
				if p != nil {
					last = p.Widths.Shoulder + schedules[i].Total()
				}
				e.Last = append(e.Last, last)
			}
		}
		e.Words = sayAll(schedules)
		list = append(list, e)
	}
	return list
}

// side returns the side at which an edge is said.
func side(p garment.Piece, name string) shaping.Side {
	outer := outerSides(p)
	switch name {
	case garment.NeckEdge, garment.ShoulderEdge:
		for _, panel := range p.Work.Panels {
			switch panel.Name {
			case shaping.RightHalf:
				return shaping.Right
			case shaping.LeftHalf:
				return shaping.Left
			}
		}
	case garment.ArmholeEdge, garment.CapEdge:
		first := steps(p, name, outer[0])
		for _, other := range outer[1:] {
			if steps := steps(p, name, other); len(steps) > 0 && (len(first) == 0 || steps[0].Row < first[0].Row) {
				return other
			}
		}
	}
	return outer[0]
}

// outerSides returns the sides of a piece that are not its neck's: both of one with two
// halves and of a sleeve.
func outerSides(p garment.Piece) []shaping.Side {
	if neck, ok := neckOf(p); ok && len(p.Work.Panels) == 1 {
		return []shaping.Side{neck.Side.Opposite()}
	}
	return []shaping.Side{shaping.Right, shaping.Left}
}

// neckOf returns the neck edge that the piece names first.
func neckOf(p garment.Piece) (e garment.Edge, ok bool) {
	i := slices.IndexFunc(p.Edges, func(e garment.Edge) bool { return e.Name == garment.NeckEdge })
	if i < 0 {
		return e, false
	}
	return p.Edges[i], true
}

// steps returns the steps of an edge at one side of a piece, in rows of the piece.
func steps(p garment.Piece, name string, side shaping.Side) shaping.Schedule {
	switch name {
	case garment.NeckEdge:
		if half, ok := p.Work.Panels.Panel(shaping.HalfAt(side)); ok {
			return half.Steps(side.Opposite())
		}
		neck, _ := neckOf(p)
		return neck.Schedule.Shifted(neck.FirstRow - 1)
	case garment.ShoulderEdge:
		return outer(p, side).Between(p.ShoulderRow, lastRow)
	case garment.ArmholeEdge, garment.CapEdge:
		if (name == garment.CapEdge) != (p.Heights.Armhole == 0) {
			return nil
		}
		var rest shaping.Schedule
		sides := sideSteps(p, side)
		for _, step := range outer(p, side).Between(1, p.ShoulderRow-1) {
			if _, ok := sides.At(step.Row); !ok {
				rest = append(rest, step)
			}
		}
		return rest
	}
	return sideSteps(p, side, name)
}

// atOnce parts the step that takes the stitches of an underarm off at once from the steps of
// an armhole or a cap.
func atOnce(p garment.Piece, steps shaping.Schedule) (shaping.Step, shaping.Schedule) {
	if len(steps) == 0 || steps[0].Stitches != -p.Widths.BindOff || steps[0].Method == shaping.Fashioned {
		return shaping.Step{}, steps
	}
	return steps[0], steps[1:]
}

// lastRow is above every piece.
const lastRow = 1 << 20

// outer returns the steps at one outer edge of a piece from the cast-on edge to its top.
func outer(p garment.Piece, side shaping.Side) shaping.Schedule {
	var steps shaping.Schedule
	for _, panel := range p.Work.Panels {
		if panel.Parent == "" || panel.Name == shaping.HalfAt(side) {
			steps = append(steps, panel.Steps(side)...)
		}
	}
	return steps
}

// sideSteps returns the steps of the straight stretches of one side, or of those of the
// given names.
func sideSteps(p garment.Piece, side shaping.Side, names ...string) shaping.Schedule {
	var steps shaping.Schedule
	for _, e := range p.Edges {
		switch e.Name {
		case garment.NeckEdge, garment.ArmholeEdge, garment.ShoulderEdge, garment.CapEdge:
			continue
		}
		if e.Side == side && (len(names) == 0 || slices.Contains(names, e.Name)) {
			steps = append(steps, e.Schedule.Shifted(e.FirstRow-1)...)
		}
	}
	return steps
}
