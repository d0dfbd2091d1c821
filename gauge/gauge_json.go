package gauge

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"

	"github.com/shopspring/decimal"
)

// gaugeDocument is the form of a gauge in documents.
type gaugeDocument struct {
	Stitches json.RawMessage `json:"stitches"`
	Rows     json.RawMessage `json:"rows"`
	Over     Length          `json:"over"`
}

var errMoreThanOne = errors.New("gauge: more than one JSON value")

var errSwatchGauge = errors.New("gauge: counted over a width and a height of their own: keep the swatch")

// MarshalJSON returns {"stitches": "22", "rows": "30", "over": "10 cm"} with the
// counts and the length that were given, or null for the zero value. A gauge whose
// width and height differ, as a swatch's do, cannot be written so and is an error.
func (g Gauge) MarshalJSON() ([]byte, error) {
	if g.IsZero() {
		return []byte("null"), nil
	}
	if !g.width.Equal(g.height) {
		return nil, errSwatchGauge
	}
	return json.Marshal(struct {
		Stitches string `json:"stitches"`
		Rows     string `json:"rows"`
		Over     Length `json:"over"`
	}{plainDecimal(g.stitches), plainDecimal(g.rows), g.width})
}

// UnmarshalJSON reads what [Gauge.MarshalJSON] writes; counts may be numbers too,
// null is no gauge. It leaves g as it was on an error, which is an [*Error] that
// names the field where one can be named.
func (g *Gauge) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		*g = Gauge{}
		return nil
	}
	var doc gaugeDocument
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&doc); err != nil {
		return err
	}
	if _, err := decoder.Token(); err != io.EOF {
		return errMoreThanOne
	}
	stitches, err := number("stitches", doc.Stitches)
	if err != nil {
		return err
	}
	rows, err := number("rows", doc.Rows)
	if err != nil {
		return err
	}
	made, err := New(stitches, rows, doc.Over)
	if err == nil {
		*g = made
	}
	return err
}

// number reads a decimal from a JSON string or number: digits with or without a
// point, no exponent.
func number(field string, raw json.RawMessage) (decimal.Decimal, error) {
	text := string(raw)
	if len(raw) > 0 && raw[0] == '"' {
		if err := json.Unmarshal(raw, &text); err != nil {
			return decimal.Decimal{}, err
		}
	}
	if len(text) > longestText || !isNumber(text) {
		given := quoted(text)
		if text == "" {
			given = "missing"
		}
		return decimal.Decimal{}, &Error{Field: field, Given: given, Want: `a number such as "22" or "22.5"`, Err: ErrRange}
	}
	value, exact := numberValue(text)
	if !exact {
		return decimal.Decimal{}, &Error{Field: field, Given: quoted(text), Want: `a number such as "22" or "22.5"`, Err: ErrRange}
	}
	return value, nil
}
