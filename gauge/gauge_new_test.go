package gauge_test

import (
	"testing"
	"time"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

func TestNewLimits(t *testing.T) {
	huge, tiny := decimal.New(1, 2_000_000_000), decimal.New(1, -2_000_000_000)
	for _, c := range []struct {
		why            string
		stitches, rows decimal.Decimal
		over           gauge.Length
		field          string // of the error, "" for none
	}{
		{"fewest", number("1"), number("1"), length("10 cm"), ""},
		{"most", number("200"), number("300"), length("10 cm"), ""},
		{"fewest to the inch", number("0.254"), number("0.254"), length("1 in"), ""},
		{"most to the inch", number("50.8"), number("76.2"), length("1 in"), ""},
		{"counted over 1000 m", number("1000000"), number("1000000"), length("100000 cm"), ""},
		{"counted over 1000 m and one more", number("1000001"), number("1000000"), length("100000 cm"), "stitches"},
		{"too few stitches", number("0.999"), number("1"), length("10 cm"), "stitches"},
		{"too many stitches", number("200.001"), number("1"), length("10 cm"), "stitches"},
		{"too few rows", number("1"), number("0.999"), length("10 cm"), "rows"},
		{"too many rows", number("200"), number("300.001"), length("10 cm"), "rows"},
		{"zero stitches", number("0"), number("30"), length("10 cm"), "stitches"},
		{"negative stitches", number("-22"), number("30"), length("10 cm"), "stitches"},
		{"zero rows", number("22"), number("0"), length("10 cm"), "rows"},
		{"negative rows", number("22"), number("-30"), length("10 cm"), "rows"},
		{"over nothing", number("22"), number("30"), gauge.Length{}, "over"},
		{"over a negative length", number("22"), number("30"), length("-10 cm"), "over"},
		{"over more than 1000 m", number("22"), number("30"), length("1000 cm").Mul(101), "over"},
		{"stitches with two thousand million digits", huge, number("30"), length("10 cm"), "stitches"},
		{"rows with two thousand million digits", number("22"), huge, length("10 cm"), "rows"},
		{"over a length with two thousand million digits", number("22"), number("30"), gauge.Millimetres(huge), "over"},
		{"stitches with as many places", tiny, number("30"), length("10 cm"), "stitches"},
		{"over a length with as many places", number("22"), number("30"), gauge.Millimetres(tiny), "over"},
	} {
		done := make(chan struct{})
		go func() {
			defer close(done)
			g, err := gauge.New(c.stitches, c.rows, c.over)
			switch {
			case c.field == "" && (err != nil || g.IsZero()):
				t.Errorf("%s: got %v", c.why, err)
			case c.field != "" && (err == nil || field(err) != c.field || !g.IsZero() || len(err.Error()) > 200):
				t.Errorf("%s: got %v, %v; want an error for %q", c.why, g, err, c.field)
			}
		}()
		select {
		case <-done:
		case <-time.After(10 * time.Second):
			t.Fatalf("%s: still not refused after 10 s", c.why)
		}
	}
}

func TestSwatchGauge(t *testing.T) {
	s := gauge.Swatch{Stitches: 40, Width: length("18 cm"), Rows: 50, Height: length("16 cm")}
	g, err := s.Gauge()
	if err != nil {
		t.Fatal(err)
	}
	if got := g.Stitches(length("36 cm")); !got.Equal(gauge.Whole(80)) {
		t.Errorf("got %v stitches, want 80", got)
	}
	if got := g.Rows(length("32 cm")); !got.Equal(gauge.Whole(100)) {
		t.Errorf("got %v rows, want 100", got)
	}
	if want := "40 stitches to 18 cm, 50 rows to 16 cm"; g.String() != want {
		t.Errorf("got %q, want %q", g, want)
	}
	if got, want := g.Format(gauge.Inch, 1), "40 stitches to 7.1 in, 50 rows to 6.3 in"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if text, err := g.MarshalJSON(); err == nil {
		t.Errorf("got %s, want an error: there is one length in the document", text)
	}
	for name, spoil := range map[string]func(*gauge.Swatch){
		"stitches": func(s *gauge.Swatch) { s.Stitches = 0 },
		"rows":     func(s *gauge.Swatch) { s.Rows = -50 },
		"width":    func(s *gauge.Swatch) { s.Width = gauge.Length{} },
		"height":   func(s *gauge.Swatch) { s.Height = length("-16 cm") },
	} {
		bad := s
		spoil(&bad)
		_, err := bad.Gauge()
		wantRange(t, err, name)
	}
}

func TestGaugeEqual(t *testing.T) {
	g := newGauge("22", "30", "10 cm")
	if !g.Equal(newGauge("22.0", "30", "100 mm")) || (gauge.Gauge{}).Equal(g) || g.Equal(gauge.Gauge{}) {
		t.Error("equal gauges differ or different ones are equal")
	}
	if g.Equal(newGauge("44", "60", "20 cm")) {
		t.Error("what was counted over 20 cm is not what was counted over 10 cm")
	}
	if want := "22 stitches and 30 rows to 10 cm"; g.String() != want {
		t.Errorf("got %q, want %q", g, want)
	}
}
