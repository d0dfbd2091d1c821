package gauge

import "github.com/shopspring/decimal"

// Swatch is a measured swatch: washed, rested and counted away from its edges.
type Swatch struct {
	Stitches int             `json:"stitches"` // counted across Width
	Width    Length          `json:"width"`
	Rows     int             `json:"rows"` // counted up Height
	Height   Length          `json:"height"`
	Grams    decimal.Decimal `json:"grams,omitzero"`  // of the stitches and rows counted, so of the whole swatch if all of it was counted; 0 if unknown
	Metres   decimal.Decimal `json:"metres,omitzero"` // of yarn in them; 0 if unknown
	Tension  string          `json:"tension,omitzero"`
}

// Gauge returns the swatch's gauge. It returns an [*Error] that names the field
// in the same cases as [New].
func (s Swatch) Gauge() (Gauge, error) {
	return newGauge(decimal.NewFromInt(int64(s.Stitches)), s.Width, "width", decimal.NewFromInt(int64(s.Rows)), s.Height, "height")
}

// UnmarshalJSON reads an object with the keys stitches, width, rows and height and,
// if they are known, grams, metres and tension. Stitches and rows are whole numbers,
// grams and metres numbers or texts of zero or more. It leaves s as it was on an
// error, which is an [*Error] that names the key, unknown and repeated ones included,
// or "swatch" for no object at all; what [Swatch.Gauge] refuses is not read.
func (s *Swatch) UnmarshalJSON(text []byte) error {
	o := readObject("swatch", text, []string{"stitches", "width", "rows", "height"}, []string{"grams", "metres", "tension"})
	const want = `zero or more, such as "14.2"`
	made := Swatch{
		Stitches: o.whole("stitches"), Width: o.length("width"), Rows: o.whole("rows"), Height: o.length("height"),
		Grams: o.number("grams", want), Metres: o.number("metres", want), Tension: o.text("tension"),
	}
	if o.err != nil {
		return o.err
	}
	if _, err := made.Gauge(); err != nil {
		return err
	}
	*s = made
	return nil
}
