package curve

import (
	"math"

	"example.com/walewise/shaping"
)

// Result is a schedule and how far it lies from the drawing.
type Result struct {
	Schedule shaping.Schedule
	Measures Measures
}

// Trace returns the schedule of least area between the edge and its staircase that
// the rules allow, exactly, with the tie rules of the package comment. The edge is
// stretched to the box of that many stitches and rows, so that its own size does not
// matter. Stitches go if the number is positive, so that the steps are negative; of
// a negative number that many come, by the rules for coming stitches. Rows of the
// steps count from 1 at the first row of the edge; the steps have no method.
//
// Zero stitches give no steps. It returns an [*Error] that wraps
//
//   - [ErrRange] if the edge is the zero Edge or turns back, if there are no rows, if
//     there are more than [MaxRows] or [MaxStitches], or if the rules are not valid;
//   - [ErrInfeasible] if no schedule obeys the rules, with requests that work.
//
// It is short for [Edge.In] and [Drawing.Trace].
func Trace(edge Edge, stitches, rows int, rules shaping.Rules) (Result, error) {
	d, err := edge.In(stitches, rows)
	if err != nil {
		return Result{}, err
	}
	return d.Trace(rules, Phrasing{})
}

// Trace is the function [Trace] for the drawing. Of one that turns back steps go and come.
// The phrasing matters only among schedules that tie.
func (d Drawing) Trace(r shaping.Rules, how Phrasing) (Result, error) {
	rules, err := d.rules(r)
	if err != nil {
		return Result{}, err
	}
	schedule, ok := d.trace(rules, how)
	if !ok {
		return Result{}, d.infeasible(r)
	}
	return Result{schedule, d.measure(schedule, rules.first)}, nil
}

// trace returns the schedule, and false if there is none.
func (d Drawing) trace(r *rules, how Phrasing) (shaping.Schedule, bool) {
	if d.isFlat() {
		return nil, true
	}
	k := takeDesk(d.d, r)
	defer k.leave()
	p := &k.program
	for margin := narrow; ; margin *= 3 {
		if margin == 9*narrow && d.turns && !feasible(d.d.net, d.d.rows, r, p.least, p.most) {
			return nil, false // what lies outside the bands only seems to lead on
		}
		p.solve(margin)
		least := p.togoAt(0, 0)
		if least >= unreachable {
			return nil, false
		}
		limit := least + d.d.slack()
		t := ties{p, limit}
		steps, found := t.sole(d.toward())
		if found == several {
			k.arrivals.reset(p)
			if k.arrivals.leaves > limit {
				s := &k.search
				s.reset(&k.arrivals, how.Steady, math.MaxInt)
				if s.wordless() <= limit {
					return s.bare(d.toward()), true
				}
				s.begin(limit)
				for s.whole > limit && s.again(false) {
				}
				return s.tell(limit).choose(d.toward()), true
			}
		}
		if found == sole {
			return steps, true
		}
	}
}

// narrow is the margin about the drawing that is tried first, in stitches.
const narrow = 2
