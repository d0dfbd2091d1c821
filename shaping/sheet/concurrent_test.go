package sheet_test

import (
	"bytes"
	"io"
	"sync"
	"testing"

	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// What was planned is written in all forms at once, twice each, with the same bytes.
func TestAllFormsAtOnce(t *testing.T) {
	set := setOf(t, jumper())
	forms := map[string]func(io.Writer) error{
		"instructions": func(w io.Writer) error { return sheet.WriteSet(w, set) },
		"page":         func(w io.Writer) error { return sheet.WriteSetPage(w, set) },
		"chart":        func(w io.Writer) error { return draw.Chart(w, draw.Look{}, set.Pieces...) },
		"schematic":    func(w io.Writer) error { return draw.Schematic(w, draw.Look{}, set.Pieces...) },
		"plan":         func(w io.Writer) error { return plan.Write(w, plan.From(set.Pieces...)) },
	}
	var all sync.WaitGroup
	for name, write := range forms {
		var texts [2]bytes.Buffer
		for i := range texts {
			all.Go(func() {
				if err := write(&texts[i]); err != nil {
					t.Errorf("%s: %v", name, err)
				}
			})
		}
		defer func() {
			if texts[0].Len() == 0 || !bytes.Equal(texts[0].Bytes(), texts[1].Bytes()) {
				t.Errorf("%s: %d bytes, and %d others", name, texts[0].Len(), texts[1].Len())
			}
		}()
	}
	all.Wait()
}
