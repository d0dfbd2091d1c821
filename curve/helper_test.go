package curve_test

import (
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// must returns the value of a call that cannot fail in these tests.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// mm returns a length of so many millimetres.
func mm(millimetres string) gauge.Length {
	return gauge.Millimetres(decimal.RequireFromString(millimetres))
}

// tens returns a length of so many times ten metres.
func tens(text string) gauge.Length { return mm(text + "e4") }

func millimetres(l gauge.Length) float64 { return l.Millimetres().InexactFloat64() }
