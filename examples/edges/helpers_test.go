package main

import (
	"encoding/json"
	"strings"

	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping"
)

// tester is what a test and a property have in common.
type tester interface {
	Helper()
	Fatalf(format string, args ...any)
}

var runEdges = sampletest.Command(run).Run

// answered is an answer as a script reads it.
type answered struct {
	ID                     json.RawMessage
	Stitches, Rows         int
	Steps                  []step
	Area, Floor, Deviation float64
	Wordings               []struct {
		Count, Base int
		Phrases     []struct {
			From, Stitches, Times int
			Every                 []int
		}
		Steps           []step
		Area, Deviation float64
		Words           string
	}
	Error   string
	Nearest []json.RawMessage
	Sizes   []struct{ Stitches, Rows int }
}

type step struct{ Row, Stitches int }

// ask answers one line.
func ask(t tester, request string) answered {
	t.Helper()
	out, _, err := runEdges(request)
	if err != nil || strings.Count(out, "\n") != 1 {
		t.Fatalf("%s: error %v, printed %q", request, err, out)
	}
	var a answered
	decoder := json.NewDecoder(strings.NewReader(out))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&a); err != nil {
		t.Fatalf("%s: %v in %s", request, err, out)
	}
	return a
}

// checkWordings checks that the phrases say the steps, by the rule that scripts are told.
func checkWordings(t tester, request string, a answered, rules shaping.Rules) {
	t.Helper()
	for _, w := range a.Wordings {
		var said []step
		if w.Base != 0 {
			first := w.Steps[0].Row
			if first != rules.FirstRow() && first != rules.For(1).FirstRow() {
				t.Fatalf("%s: a base in row %d", request, first)
			}
			said = append(said, step{first, -w.Base})
		}
		if w.Count != len(w.Phrases) || w.Words == "" || w.Area < a.Area-1e-6 {
			t.Fatalf("%s: wording %+v of %+v", request, w, a)
		}
		for n, p := range w.Phrases {
			if len(p.Every) < 1 || len(p.Every) > 2 {
				t.Fatalf("%s: distances %v", request, p.Every)
			}
			row := p.From
			for i := range p.Times {
				if i > 0 {
					// A later phrase has used its first distance up to its first step.
					used := i - 1
					if n > 0 {
						used = i
					}
					row += p.Every[used%len(p.Every)]
				} else if n > 0 && row-said[len(said)-1].Row != p.Every[0] {
					t.Fatalf("%s: phrase %+v begins at %d after %+v", request, p, row, said)
				}
				said = append(said, step{row, p.Stitches})
			}
		}
		if len(said) != len(w.Steps) {
			t.Fatalf("%s: says %v, steps %v", request, said, w.Steps)
		}
		sum := 0
		for i := range said {
			sum += said[i].Stitches
			if said[i] != w.Steps[i] {
				t.Fatalf("%s: says %v, steps %v", request, said, w.Steps)
			}
		}
		if sum != -a.Stitches {
			t.Fatalf("%s: %d stitches of %d", request, sum, a.Stitches)
		}
	}
}
