package gauge_test

import (
	"errors"
	"testing"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

func length(s string) gauge.Length    { return gauge.MustParseLength(s) }
func number(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// newGauge returns a gauge of so many stitches and rows over a length.
func newGauge(stitches, rows, over string) gauge.Gauge {
	g, err := gauge.New(number(stitches), number(rows), length(over))
	if err != nil {
		panic(err)
	}
	return g
}

// field returns the field that an error names, or "" if it names none.
func field(err error) string {
	var e *gauge.Error
	if errors.As(err, &e) {
		return e.Field
	}
	return ""
}

func wantRange(t *testing.T, err error, name string) {
	t.Helper()
	if !errors.Is(err, gauge.ErrRange) || field(err) != name {
		t.Errorf("got %v (field %q), want ErrRange for %q", err, field(err), name)
	}
}
