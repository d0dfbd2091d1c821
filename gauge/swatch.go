package gauge

import "github.com/shopspring/decimal"

// Swatch is a measured swatch: washed, rested and counted away from its edges.
type Swatch struct {
	Stitches int             `json:"stitches"`
	Width    Length          `json:"width"`
	Rows     int             `json:"rows"`
	Height   Length          `json:"height"`
	Grams    decimal.Decimal `json:"grams,omitzero"`  // of the whole swatch as counted; 0 if unknown
	Metres   decimal.Decimal `json:"metres,omitzero"` // of yarn in it; 0 if unknown
	Tension  string          `json:"tension,omitzero"`
}

// Gauge returns the swatch's gauge. It returns an [*Error] that names the field
// in the same cases as [New].
func (s Swatch) Gauge() (Gauge, error) {
	return newGauge(decimal.NewFromInt(int64(s.Stitches)), s.Width, "width", decimal.NewFromInt(int64(s.Rows)), s.Height, "height")
}
