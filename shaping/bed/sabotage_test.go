package bed_test

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
)

// verdict is what the judge did with a mutant.
type verdict int

const (
	unchanged verdict = iota // the mutant is the valid work
	refused
	sameCloth
)

// verdicts counts them.
type verdicts [3]int

func (v verdicts) String() string {
	return fmt.Sprintf("%d changes, %d refused, %d the same cloth", v[refused]+v[sameCloth], v[refused], v[sameCloth])
}

// judged fails if a mutant is accepted and its cloth is another than the valid work's,
// or lacks one of its wraps.
func judged(t fataler, m mutant, valid shaping.Work, cloth bed.Cloth) verdict {
	t.Helper()
	w := valid.Clone()
	m.make(&w)
	if reflect.DeepEqual(w, valid) {
		return unchanged
	}
	changed, err := bed.Knit(w)
	if err != nil {
		asRefusal(t, err)
		return refused
	}
	if want, got := resultOf(cloth), resultOf(changed); !reflect.DeepEqual(want, got) {
		t.Fatalf("%s: accepted, and the cloth is another (-want +got):\n%s", m.what, cmp.Diff(want, got, cmp.AllowUnexported(result{})))
	}
	wraps := slices.Collect(changed.Wraps())
	for wrap := range cloth.Wraps() {
		if !slices.Contains(wraps, wrap) {
			t.Fatalf("%s: accepted without the wrap of %v after row %d of %s", m.what, wrap.Needle, wrap.Row, wrap.Panel)
		}
	}
	return sameCloth
}

// One thing changed at a time in a work that is valid: it is refused, or the same
// cloth comes off the needles.
func TestSabotage(t *testing.T) {
	totals := map[shaping.Place]verdicts{}
	for _, v := range validWorks(t) {
		t.Run(v.name, func(t *testing.T) {
			if testing.Short() && len(v.work.Rows) > 100 {
				t.Skip("takes half a minute under the race detector; the tiny front has the same actions")
			}
			cloth := knit(t, v.work)
			kinds := map[string]func(shaping.Work) []mutant{
				"piece": pieceMutants, "panels": panelMutants, "rows": rowMutants, "actions": actionMutants,
			}
			for _, kind := range slices.Sorted(maps.Keys(kinds)) {
				var counts verdicts
				for _, m := range kinds[kind](v.work) {
					got := judged(t, m, v.work, cloth)
					counts[got]++
					if got == sameCloth && (kind == "rows" || kind == "panels") && !strings.HasSuffix(m.what, "after the next") {
						t.Errorf("accepted: %s", m.what)
					}
				}
				t.Logf("%s: %v", kind, counts)
				if counts[refused] == 0 {
					t.Errorf("%s: nothing was refused", kind)
				}
				sum := totals[v.work.Place]
				for i, n := range counts {
					sum[i] += n
				}
				totals[v.work.Place] = sum
			}
		})
	}
	for place, counts := range totals {
		t.Logf("%v: %v", place, counts)
	}
}

// Between them the sabotaged works have every action, in every way it is done, on the
// bed and in the hand.
func TestEveryActionIsSabotaged(t *testing.T) {
	inHand := []string{
		"bindOff", "bindOff separately", "castOn", "castOnEdge", "fill", "hold",
		"return", "shift inwards", "shift outwards", "waste", "wrap",
	}
	want := map[shaping.Place][]string{
		shaping.Hand: inHand,
		shaping.Bed:  slices.Sorted(slices.Values(append([]string{"carriage", "counter"}, inHand...))),
	}
	ways := map[shaping.Place]map[string]bool{shaping.Bed: {}, shaping.Hand: {}}
	for _, v := range validWorks(t) {
		for _, row := range v.work.Rows {
			for _, a := range slices.Concat(row.Before, row.After) {
				ways[v.work.Place][wayOf(a, row)] = true
			}
		}
	}
	got := map[shaping.Place][]string{}
	for place, seen := range ways {
		got[place] = slices.Sorted(maps.Keys(seen))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// wayOf names the action and how it is done.
func wayOf(a shaping.Action, row shaping.Row) string {
	switch {
	case a.Do == shaping.DoBindOff && a.Separate:
		return "bindOff separately"
	case a.Do == shaping.DoShift && row.Knit.Contains(a.Needles.End(a.Toward.Opposite())):
		return "shift outwards" // the needle that is left is filled and knitted
	case a.Do == shaping.DoShift:
		return "shift inwards"
	}
	return a.Do.String()
}

// The same with works and changes drawn at random.
func TestSabotageAtRandom(t *testing.T) {
	totals := map[shaping.Place]verdicts{}
	rapid.Check(t, func(t *rapid.T) {
		w := plan(t, gen.Outline().Draw(t, "outline"))
		cloth := knit(t, w)
		list := slices.Concat(pieceMutants(w), panelMutants(w), rowMutants(w), actionMutants(w))
		counts := totals[w.Place]
		for range 20 {
			counts[judged(t, rapid.SampledFrom(list).Draw(t, "mutant"), w, cloth)]++
		}
		totals[w.Place] = counts
	})
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		t.Logf("%v: %v", place, totals[place])
		if totals[place][refused] == 0 {
			t.Errorf("%v: nothing was refused", place)
		}
	}
}
