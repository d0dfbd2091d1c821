package garment_test

import (
	"testing"

	"example.com/walewise/shaping/garment"
)

func TestMade(t *testing.T) {
	front, err := garment.Front(adult())
	if err != nil {
		t.Fatal(err)
	}
	unknitted := garment.Piece{Work: front.Work}
	for _, c := range []struct {
		why    string
		pieces []garment.Piece
		want   bool
	}{
		{"a piece", []garment.Piece{front}, true},
		{"two", []garment.Piece{front, front}, true},
		{"none", nil, false},
		{"the zero piece", []garment.Piece{{}}, false},
		{"one of two was not knitted", []garment.Piece{front, unknitted}, false},
	} {
		if got := garment.Made(c.pieces...); got != c.want {
			t.Errorf("%s: %v", c.why, got)
		}
	}
}
