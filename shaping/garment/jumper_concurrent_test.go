package garment_test

import (
	"fmt"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping/garment"
)

// Jumpers of one spec made at the same time are the same.
func TestJumpersAtOnce(t *testing.T) {
	made := 0
	for example := range 8 {
		spec := gen.JumperSpec(metric).Example(example)
		const hands = 8
		var sets [hands]garment.Set
		var errs [hands]error
		var all sync.WaitGroup
		for i := range hands {
			all.Go(func() { sets[i], errs[i] = garment.Pieces(spec) })
		}
		all.Wait()
		made += len(sets[0].Pieces)
		for i, s := range sets[1:] {
			if diff := cmp.Diff(fmt.Sprint(errs[0]), fmt.Sprint(errs[i+1])); diff != "" {
				t.Fatalf("refusals (-first +other):\n%s", diff)
			}
			if diff := cmp.Diff(sets[0].Checks, s.Checks); diff != "" {
				t.Fatalf("checks (-first +other):\n%s", diff)
			}
			for j, p := range sets[0].Pieces {
				checkEqual(t, p, s.Pieces[j])
			}
		}
	}
	if made == 0 {
		t.Error("all are refused")
	}
}

// A set does not share its warnings with another, nor its pieces among each other.
func TestWarningsAreTheirOwn(t *testing.T) {
	s := adultJumper()
	s.Hand = length("40 cm")
	set := jumper(t, s)
	right, _ := set.Piece("right sleeve")
	left, _ := set.Piece("left sleeve")
	if len(right.Warnings) == 0 || len(left.Warnings) != len(right.Warnings) {
		t.Fatalf("warnings %q and %q", right.Warnings, left.Warnings)
	}
	right.Warnings[0] = ""
	if left.Warnings[0] == "" {
		t.Error("a warning of the left sleeve is that of the right one")
	}
}
