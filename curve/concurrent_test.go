package curve_test

import (
	"sync"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
	"github.com/google/go-cmp/cmp"
)

// A drawing is asked by many at once, who get what each of them would get alone.
func TestDrawingIsAskedAtOnce(t *testing.T) {
	rules := []shaping.Rules{{}, {Every: 2, Apart: 2, Most: 4}, {Every: 2, Phase: 1, Apart: 2}, {Apart: 3, Most: 2}}
	for _, form := range forms() {
		drawing, err := form.edge.In(15, 40)
		if err != nil {
			t.Fatal(err)
		}
		ask := func(r shaping.Rules) curve.Wordings {
			w, err := drawing.Wordings(r, curve.Phrasing{})
			if err != nil {
				t.Errorf("%s: %v", form.name, err)
			}
			return w
		}
		var alone, atOnce [4]curve.Wordings
		for i, r := range rules {
			alone[i] = ask(r)
		}
		var all sync.WaitGroup
		for i, r := range rules {
			all.Go(func() { atOnce[i] = ask(r) })
		}
		all.Wait()
		if diff := cmp.Diff(alone, atOnce); diff != "" {
			t.Errorf("%s (-alone +at once):\n%s", form.name, diff)
		}
	}
}
