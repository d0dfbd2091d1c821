package gauge

import (
	"encoding/json"
)

// MarshalJSON returns {"stitches": "22", "rows": "30", "over": "10 cm"} with the
// counts and the length that were given, or null for the zero value. A gauge whose
// width and height differ, as a swatch's do, cannot be written so and is an error, and so
// is the [Mean] of several swatches, which would lose how far they lie apart.
func (g Gauge) MarshalJSON() ([]byte, error) {
	if g.IsZero() {
		return []byte("null"), nil
	}
	switch {
	case g.spread != nil:
		return nil, notWritten("the mean of several swatches", "keep the swatches")
	case !g.width.Equal(g.height):
		return nil, notWritten("counted over a width and a height of their own", "keep the swatch")
	}
	return json.Marshal(struct {
		Stitches string `json:"stitches"`
		Rows     string `json:"rows"`
		Over     Length `json:"over"`
	}{plainDecimal(g.stitches), plainDecimal(g.rows), g.width})
}

func notWritten(given, want string) error {
	return &Error{Field: "gauge", Given: given, Want: want, Err: ErrSyntax}
}

// UnmarshalJSON reads what [Gauge.MarshalJSON] writes; counts may be numbers too,
// null is no gauge. It leaves g as it was on an error, which is an [*Error] that
// names the key, unknown and repeated ones included, or "gauge" for no object at all.
func (g *Gauge) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		*g = Gauge{}
		return nil
	}
	o := readObject("gauge", text, []string{"stitches", "rows", "over"}, nil)
	const want = `a number such as "22" or "22.5"`
	stitches, rows, over := o.number("stitches", want), o.number("rows", want), o.length("over")
	if o.err != nil {
		return o.err
	}
	made, err := New(stitches, rows, over)
	if err == nil {
		*g = made
	}
	return err
}
