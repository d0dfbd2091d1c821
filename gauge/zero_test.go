package gauge_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"example.com/walewise/gauge"
)

func TestZeroValues(t *testing.T) {
	var g gauge.Gauge
	var l gauge.Length
	var c gauge.Count
	var u gauge.Unit
	var r gauge.Rounding
	var s gauge.Swatch
	var tolerance gauge.Tolerance
	if !g.IsZero() || !g.Equal(gauge.Gauge{}) || g.Stitches(length("5 cm")).Sign() != 0 || g.Rows(length("5 cm")).Sign() != 0 {
		t.Error("the zero gauge counts")
	}
	if !g.Width(5).IsZero() || !g.Height(5).IsZero() || !g.Tolerance().Width(length("5 cm")).IsZero() {
		t.Error("the zero gauge has lengths")
	}
	if across, up := g.Spread(2); !across.IsZero() || !up.IsZero() || g.Swatches() != 0 || !g.StitchesFor(newGauge("22", "30", "10 cm"), 5).Equal(c) || !newGauge("22", "30", "10 cm").RowsFor(g, 5).Equal(c) {
		t.Error("the zero gauge lies apart or converts")
	}
	if !tolerance.Width(length("5 cm")).IsZero() || !tolerance.Height(length("5 cm")).IsZero() {
		t.Error("the zero tolerance is some")
	}
	if !l.IsZero() || l.String() != "0 cm" || l.Format(u, 1) != "0.0 cm" || !l.Neg().Abs().Add(l).Sub(l).Mul(3).Equal(l) {
		t.Error("the zero length is some")
	}
	if c.Round(r) != 0 || c.Sign() != 0 || c.String() != "0" || !c.Add(c).Sub(c).Abs().Div(2).Equal(gauge.Whole(0)) || !c.Decimal(2).IsZero() {
		t.Error("the zero count is some")
	}
	if _, err := s.Gauge(); field(err) != "stitches" {
		t.Errorf("zero swatch: %v", err)
	}
	if got, err := gauge.RoundTogether(0, make([]gauge.Part, 3)); err != nil || len(got) != 3 || got[0].Whole != 0 {
		t.Errorf("zero parts: %v, %v", got, err)
	}
	var asError gauge.Error
	var asParseError gauge.ParseError
	for _, v := range []any{g, l, c, u, r, s, tolerance, gauge.Direction(0), gauge.Part{}, gauge.Rounded{}, &asError, &asParseError} {
		_ = fmt.Sprintf("%v %+v %#v", v, v, v)
		if _, err := json.Marshal(v); err != nil {
			t.Errorf("%T: %v", v, err)
		}
	}
	if errors.Unwrap(&asError) != nil || errors.Unwrap(&asParseError) != nil {
		t.Error("zero errors wrap something")
	}
}
