package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// checkMethods refuses pairs that leave a step without a method.
func checkMethods(m Methods) error {
	for _, edge := range []struct {
		field string
		pair  Pair
	}{{"methods.neck", m.Neck}, {"methods.shoulder", m.Shoulder}, {"methods.armhole", m.Armhole}} {
		if edge.pair.IsZero() {
			continue
		}
		for _, method := range []shaping.Method{edge.pair.Several, edge.pair.Single} {
			open := method == 0 && edge.pair == By(shaping.Fashioned)
			if !open && method != shaping.Hold && method != shaping.BindOff && method != shaping.Fashioned {
				return &Error{Field: edge.field, Given: edge.pair.String(), Want: "hold, bindOff or fashioned, or a list of two of them: for several stitches and for single ones", Err: ErrSpec}
			}
		}
	}
	return nil
}

// of returns the method for a step of that many stitches.
func (p Pair) of(stitches int) shaping.Method {
	if stitches == 1 {
		return p.Single
	}
	return p.Several
}

// tied reports whether a method works at one end of a row only: where the row
// starts or where it ends.
func tied(m shaping.Method) bool { return m == shaping.Hold || m == shaping.BindOff }

// tied returns the method of the pair that works at one end of a row only, the one
// for several stitches first; 0 if neither does.
func (p Pair) tied() shaping.Method {
	for _, m := range []shaping.Method{p.Several, p.Single} {
		if tied(m) {
			return m
		}
	}
	return 0
}

// mixed reports whether one method of the pair is tied to an end of the row and the
// other is not.
func (p Pair) mixed() bool { return p.Several != 0 && tied(p.Several) != tied(p.Single) }

// most returns how many stitches may go at once, 0 for any number.
func (p Pair) most() int {
	switch p.Several {
	case 0:
		return 1
	case shaping.Fashioned:
		return 2 // a double decrease
	}
	return 0
}

// rules returns the rules for an edge worked by the pair, of a panel whose first row
// starts at start; in the hand that row is a right-side row. They hold for one edge:
// see alternating for two that follow each other.
func (p Pair) rules(edge, start shaping.Side, place shaping.Place) shaping.Rules {
	single := shaping.RulesFor(p.Single, edge, start, place)
	if p.Several == 0 {
		return single
	}
	rules := shaping.RulesFor(p.Several, edge, start, place)
	rules.Most = p.most()
	if p.Single != p.Several {
		rules.Single = shaping.Beat{Every: single.Every, Phase: single.Phase}
	}
	return rules
}

// alternating returns rules for two edges of which one has its tied steps a row
// before the other and both have their decreases at the same rows: with the two
// kinds at odd and at even rows, steps at either edge stay two rows apart. tied and
// fashioned are the rows before the first step of each kind.
func (p Pair) alternating(tied, fashioned int) shaping.Rules {
	rules := shaping.Rules{Every: 2, Phase: tied, Apart: 2, Most: p.most(), Single: shaping.Beat{Every: 2, Phase: fashioned}}
	if p.Several == shaping.Fashioned {
		rules.Phase, rules.Single.Phase = fashioned, tied
	}
	return rules
}

// outerRules returns the rules for the traced edge of an armhole or a cap by a pair of
// which one method is tied: at the first row what goes at once, if anything does, then
// tied steps at odd and decreases at even rows. One edge may be a row later.
func (p Pair) outerRules(atOnce int) shaping.Rules {
	base := 0
	if atOnce > 0 {
		base = 2
	}
	rules := p.alternating(base, base+1)
	if p.Several == p.Single {
		rules.Single = shaping.Beat{}
	}
	rules.Plain = 1
	return rules
}

// atOnce returns the step by which stitches are taken off at once at an underarm, none if
// there are none. rowOf says at which row of the piece a step of the traced edge stands.
func (p Pair) atOnce(stitches int, rowOf func(shaping.Step) int) shaping.Schedule {
	if stitches == 0 {
		return nil
	}
	step := shaping.Step{Row: 1, Stitches: -stitches, Method: p.Several}
	step.Row = rowOf(step)
	return shaping.Schedule{step}
}

// outerRow returns the row at which a step of the body's outer edges is worked at one of
// them, traced above the underarm for the one where its first tied step can stand first.
// At the other, tied steps are one row later. In the hand decreases that come with tied
// steps are at the next right-side row.
func (j job) outerRow(p Pair, underarm int, edge shaping.Side, step shaping.Step) int {
	row := underarm + step.Row
	switch {
	case !tied(step.Method):
		if j.place == shaping.Hand && p.mixed() && underarm%2 == 0 {
			row++
		}
	case edge != j.tiedFirst(p.tied(), underarm+1):
		row++
	}
	return row
}

// moved returns a copy of the steps, each at another row.
func moved(steps shaping.Schedule, to func(shaping.Step) int) shaping.Schedule {
	made := make(shaping.Schedule, len(steps))
	for i, step := range steps {
		step.Row = to(step)
		made[i] = step
	}
	return made
}

// neighbours reports whether two of the steps stand in neighbouring rows.
func neighbours(steps shaping.Schedule) bool {
	for i := 1; i < len(steps); i++ {
		if steps[i].Row-steps[i-1].Row < 2 {
			return true
		}
	}
	return false
}

// doubles are single and double decreases, as a document says them.
const doubles = `["fashioned", "fashioned"]`

// doublesDo reports whether an edge that single decreases cannot work could be worked with
// double ones, given the error of its trace.
func doublesDo(d drawing, err error) bool {
	rules := d.rules
	if rules.Most != 1 {
		return false
	}
	rules.Most = 2
	return slices.Contains(nearest(err), curve.Request{Stitches: d.stitches, Rows: d.rows, Rules: rules})
}

// words says a pair's way of taking stitches off.
func (p Pair) words() string {
	switch p {
	case By(shaping.Fashioned):
		return "by single decreases"
	case Pair{shaping.Fashioned, shaping.Fashioned}:
		return "by single and double decreases"
	}
	return fmt.Sprintf("by %v", p)
}
