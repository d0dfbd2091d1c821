package order_test

import (
	"testing"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
	"github.com/google/go-cmp/cmp"
)

func plan(t *testing.T, panels shaping.Tree, carriage shaping.Side) shaping.Work {
	t.Helper()
	w, err := order.Arrange(order.Outline{Name: "front", Place: shaping.Bed, Carriage: carriage, Panels: panels})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// The front worked by hand has exactly the wale heights that were worked out.
func TestHandFront(t *testing.T) {
	w := plan(t, worked.HandFront(), shaping.Right)
	cloth, err := bed.Knit(w)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range worked.HandFrontHeights() {
		for _, n := range []shaping.Needle{shaping.R(i + 1), shaping.L(i + 1)} {
			if got := cloth.Height(n); got != want {
				t.Errorf("height of %v = %d, want %d", n, got, want)
			}
		}
	}
	if got, want := cloth.Rows(), 126+24+24; got != want {
		t.Errorf("%d rows in all, want %d", got, want)
	}
	if diff := cmp.Diff(shaping.Ledger{CastOn: 110, Live: 110}, cloth.Ledger()); diff != "" {
		t.Errorf("ledger (-want +got):\n%s", diff)
	}
}
