package gauge_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
)

// Stitches picked up in rows: 22 in 30, 3 in 4 and 2 in 3 are what the gauges have in common.
func TestStitchesAlong(t *testing.T) {
	for _, c := range []struct {
		band, piece gauge.Gauge
		rows        int
		want        gauge.Count
	}{
		{newGauge("22", "30", "10 cm"), newGauge("22", "30", "10 cm"), 30, gauge.Whole(22)},
		{newGauge("21", "28", "10 cm"), newGauge("21", "28", "4 in"), 28, gauge.Whole(2667).Div(125)}, // 21 * 10.16 / 10, 4 in being 10.16 cm
		{newGauge("18", "24", "4 in"), newGauge("16", "27", "4 in"), 1, gauge.Whole(2).Div(3)},
		{gauge.Gauge{}, newGauge("16", "27", "4 in"), 5, gauge.Count{}},
		{newGauge("16", "27", "4 in"), gauge.Gauge{}, 5, gauge.Count{}},
	} {
		if got := c.band.StitchesAlong(c.rows, c.piece); !got.Equal(c.want) {
			t.Errorf("%v along %d rows of %v: %v, want %v", c.band, c.rows, c.piece, got, c.want)
		}
	}
}

// It is what the height of the rows asks for, to what that height is rounded to.
func TestStitchesAlongIsByHeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		band, piece := drawGauge(t), drawGauge(t)
		rows := rapid.IntRange(0, 2000).Draw(t, "rows")
		off := band.StitchesAlong(rows, piece).Sub(band.Stitches(piece.Height(rows))).Abs()
		if off.Cmp(gauge.Whole(1).Div(400_000)) > 0 { // half a millionth of a millimetre at 200 stitches to 10 cm
			t.Fatalf("%d rows: off by %#v", rows, off)
		}
	})
}
