package curve_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/walewise/shaping"
)

// milp is the search for the schedule of least area as a mixed-integer linear program,
// in the CPLEX LP format. One unit walks from no stitches gone before the first allowed
// row to all of them gone after the last row. In every row it chooses one binary
// column: to stay at its level, or to take a step of some number of stitches. The cost
// of the choice is the area of the row at the level where it leads, less what the row
// costs at its best level: that part nothing avoids, and it stands with the column start
// that is always 1. The optimum is the same, and a solver finds it far sooner.
type milp struct {
	objective, rows, binaries strings.Builder
	// steps are the steps that the columns stand for, in the order of the objective,
	// which is the order that solvers number columns in. A column that stays has none.
	steps []shaping.Step
}

// start is the column that is always 1.
const start = "start"

// milpOf returns the program for a sketch with its table.
func milpOf(s sketch, rules shaping.Rules) *milp {
	var m milp
	first := firstAllowed(rules)
	into := make([][]string, s.stitches+1) // by level, the columns that lead there
	into[0] = []string{start}
	stepsAt := make([][]string, s.rows+1) // by row, the columns that are a step
	floor := 0.0
	for r := first; r <= s.rows; r++ {
		least := slices.Min(s.cost[r])
		floor += least
		next := make([][]string, s.stitches+1)
		for level, before := range into {
			if before == nil {
				continue
			}
			var leave []string
			for k := 0; level+k <= s.stitches; k++ {
				if k > 0 && !mayStand(rules, first, r, s.rows, k) {
					continue
				}
				column := fmt.Sprintf("row%d_from%d_to%d", r, level, level+k)
				m.column(column, s.cost[r][level+k]-least, shaping.Step{Row: r, Stitches: -k})
				leave = append(leave, column)
				next[level+k] = append(next[level+k], column)
				if k > 0 {
					stepsAt[r] = append(stepsAt[r], column)
				}
			}
			m.row(fmt.Sprintf("at%d_before%d", level, r), leave, before, "= 0")
		}
		if window := stepsAt[max(first, r-rules.Apart+1) : r+1]; len(window) > 1 {
			if near := slices.Concat(window...); near != nil {
				m.row(fmt.Sprintf("apart%d", r), near, nil, "<= 1")
			}
		}
		into = next
	}
	m.row("arrive", into[s.stitches], nil, "= 1")
	fmt.Fprintf(&m.objective, " + %v %s\n", floor, start)
	return &m
}

func (m *milp) column(name string, cost float64, step shaping.Step) {
	fmt.Fprintf(&m.objective, " + %v %s\n", cost, name)
	fmt.Fprintf(&m.binaries, " %s\n", name)
	m.steps = append(m.steps, step)
}

// row adds the condition that the columns of one list less those of another are as the
// relation says. The column unused is always 0: a row needs at least one.
func (m *milp) row(name string, plus, minus []string, relation string) {
	fmt.Fprintf(&m.rows, " %s: 0 unused\n", name)
	for _, column := range plus {
		fmt.Fprintf(&m.rows, " + %s\n", column)
	}
	for _, column := range minus {
		fmt.Fprintf(&m.rows, " - %s\n", column)
	}
	fmt.Fprintf(&m.rows, " %s\n", relation)
}

func (m *milp) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Minimize\n area:\n%s + 0 unused\nSubject To\n%s", m.objective.String(), m.rows.String())
	// Without an integer column the solver would answer in another format.
	fmt.Fprintf(&b, "Bounds\n %s = 1\n unused = 0\nGeneral\n %[1]s\nBinary\n%sEnd\n", start, m.binaries.String())
	return b.String()
}

// solution is what the solver says.
type solution struct {
	feasible bool
	area     float64
	schedule shaping.Schedule
}

// read reads a solution in the plain text format of glpsol. Only an optimum or the
// proof that there is no solution is one.
func (m *milp) read(text string) (s solution, err error) {
	var status string
	for line := range strings.Lines(text) {
		switch words := strings.Fields(line); {
		case len(words) == 6 && words[0] == "s": // s mip rows columns status objective
			status = words[4]
			if s.area, err = strconv.ParseFloat(words[5], 64); err != nil {
				return s, err
			}
		case len(words) == 3 && words[0] == "j": // j column value
			column, err := strconv.Atoi(words[1])
			if err != nil {
				return s, err
			}
			value, err := strconv.ParseFloat(words[2], 64)
			if err != nil {
				return s, err
			}
			if i := column - 1; value > 0.5 && i < len(m.steps) && m.steps[i].Stitches != 0 {
				s.schedule = append(s.schedule, m.steps[i])
			}
		}
	}
	switch status {
	case "o":
		s.feasible = true
	case "n":
	default:
		return s, fmt.Errorf("status %q is neither an optimum nor the proof that there is none", status)
	}
	return s, nil
}
