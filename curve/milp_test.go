package curve_test

import (
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// milpCase is a request of the size that garments have. Stitches and rows are those of
// Trace.
type milpCase struct {
	name           string
	source         string
	form           string // the name of one of forms
	stitches, rows int
	rules          shaping.Rules
}

const invented = "invented"

// demandGlpsol is the environment variable that makes a missing solver a failure, and has
// the largest cases run.
const demandGlpsol = "WALEWISE_NEED_GLPSOL"

// A solver that knows nothing of stitches finds the same least area, or that there is no
// schedule.
func TestTraceEqualsMILP(t *testing.T) {
	solver := needGlpsol(t)
	var times milpTimes
	t.Run("cases", func(t *testing.T) { // ends when all its parallel tests have
		for _, group := range milpGroups() {
			cases := group.cases
			if testing.Short() {
				cases = cases[:2]
			}
			for _, c := range cases {
				t.Run(group.name+"/"+c.name, func(t *testing.T) {
					if c.rows*c.stitches > 5_000 && os.Getenv(demandGlpsol) == "" {
						t.Skip("the solver takes seconds: runs with " + demandGlpsol)
					}
					t.Parallel()
					solver.check(t, c, &times)
				})
			}
		}
	})
	times.log(t)
}

// glpsol is the path of the command line solver of GLPK.
type glpsol string

func needGlpsol(t *testing.T) glpsol {
	path, err := exec.LookPath("glpsol")
	switch {
	case err == nil:
		return glpsol(path)
	case os.Getenv(demandGlpsol) != "":
		t.Fatalf("glpsol of the Debian package glpk-utils is missing: %v", err)
	}
	t.Skipf("glpsol of the Debian package glpk-utils is missing: %v", err)
	return ""
}

// check compares Trace with the solver.
func (g glpsol) check(t *testing.T, c milpCase, times *milpTimes) {
	if c.source == "" {
		t.Fatal("the case names no source")
	}
	i := slices.IndexFunc(forms(), func(f form) bool { return f.name == c.form })
	if i < 0 {
		t.Fatalf("no form is called %q", c.form)
	}
	f, rules := forms()[i], c.rules
	if c.stitches < 0 && rules.Coming != nil {
		rules = *rules.Coming
	}
	began := time.Now()
	got, err := curve.Trace(f.edge, c.stitches, c.rows, c.rules)
	traced := time.Since(began)
	want, solved := g.solve(t, milpOf(f.sketch(max(c.stitches, -c.stitches), c.rows).table(), rules))
	times.add(traced, solved)

	switch {
	case err != nil && !errors.Is(err, curve.ErrInfeasible):
		t.Fatal(err)
	case err != nil && want.feasible:
		t.Fatalf("%v, but the solver found %v with area %v", err, want.schedule, want.area)
	case err == nil && !want.feasible:
		t.Fatalf("got %v, but the solver proved that there is no schedule", got.Schedule)
	case err != nil:
		return
	}
	const within = 1e-6
	if math.Abs(got.Measures.Area-want.area) > within {
		t.Errorf("got area %v of %v, want %v of %v", got.Measures.Area, got.Schedule, want.area, want.schedule)
	}
	// The solver's schedule is one, and what its columns cost is what it measures: the
	// program asks the same question.
	if c.stitches < 0 {
		for i := range want.schedule {
			want.schedule[i].Stitches *= -1
		}
	}
	if err := c.rules.Check(want.schedule, c.rows); err != nil {
		t.Errorf("the solver's %v: %v", want.schedule, err)
	}
	if m := must(curve.Measure(f.edge, c.stitches, c.rows, c.rules, want.schedule)); math.Abs(m.Area-want.area) > within {
		t.Errorf("the solver's %v has area %v, but costs %v", want.schedule, m.Area, want.area)
	}
}

// solve returns the solution and how long the solver took.
func (g glpsol) solve(t *testing.T, m *milp) (solution, time.Duration) {
	t.Helper()
	model, plain := filepath.Join(t.TempDir(), "model.lp"), filepath.Join(t.TempDir(), "solution.txt")
	if err := os.WriteFile(model, []byte(m.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	const limit = "60" // seconds, after which it gives up without an answer
	began := time.Now()
	said, err := exec.CommandContext(t.Context(), string(g), "--lp", model, "--write", plain, "--tmlim", limit).CombinedOutput()
	took := time.Since(began)
	if err != nil {
		t.Fatalf("glpsol: %v\n%s", err, said)
	}
	text, err := os.ReadFile(plain)
	if err != nil {
		t.Fatalf("glpsol wrote no solution: %v\n%s", err, said)
	}
	s, err := m.read(string(text))
	if err != nil {
		t.Fatalf("glpsol: %v\n%s", err, said)
	}
	return s, took
}

// milpTimes are the times of all cases.
type milpTimes struct {
	mu            sync.Mutex
	trace, solver []time.Duration
}

func (m *milpTimes) add(trace, solver time.Duration) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.trace, m.solver = append(m.trace, trace), append(m.solver, solver)
}

func (m *milpTimes) log(t *testing.T) {
	if len(m.trace) == 0 { // another test was asked for by name
		return
	}
	t.Logf("%d cases", len(m.trace))
	for _, of := range []struct {
		name  string
		times []time.Duration
	}{{"glpsol", m.solver}, {"Trace", m.trace}} {
		slices.Sort(of.times)
		t.Logf("%s: median %v, greatest %v", of.name, of.times[len(of.times)/2], of.times[len(of.times)-1])
	}
}
