package plan

import (
	"encoding"
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// nodeReader is a value that reads itself from a node.
type nodeReader interface{ readNode(n *node) error }

// checker is a struct with rules between or beyond its fields.
type checker interface{ check(n *node) error }

// within bounds a whole number; the zero value does not.
type within struct {
	least, most int
	set         bool
}

// decode reads a node into the value that v points to, key by key along the json
// tags of structs. A key without omitzero is required. The tag within:"1 5000"
// bounds a whole number or those of a list.
func decode(n *node, v any) error {
	return decodeValue(n, reflect.ValueOf(v).Elem(), within{})
}

func decodeValue(n *node, v reflect.Value, bounds within) error {
	switch p := v.Addr().Interface().(type) {
	case nodeReader:
		return p.readNode(n)
	case *gauge.Gauge:
		return decodeGauge(n, p)
	case *decimal.Decimal:
		return decodeDecimal(n, p)
	case *garment.Pair:
		return decodePair(n, p)
	case encoding.TextUnmarshaler:
		return decodeText(n, p)
	}
	switch v.Kind() {
	case reflect.Pointer:
		made := reflect.New(v.Type().Elem())
		if err := decodeValue(n, made.Elem(), bounds); err != nil {
			return err
		}
		v.Set(made)
	case reflect.Struct:
		return decodeStruct(n, v)
	case reflect.Slice:
		return decodeList(n, v, bounds)
	case reflect.String:
		if n.kind != letters {
			return n.fault("write a text in quotes", nil)
		}
		v.SetString(n.text)
	case reflect.Bool:
		if n.kind != boolean {
			return n.fault("write true or false", nil)
		}
		v.SetBool(n.text == "true")
	case reflect.Int:
		whole, err := decodeWhole(n, bounds)
		if err != nil {
			return err
		}
		v.SetInt(int64(whole))
	default:
		return n.fault("cannot be read", nil)
	}
	return nil
}

func decodeStruct(n *node, v reflect.Value) error {
	known := fieldsOf(v.Type())
	if n.kind != object {
		return n.fault("write an object in { } with "+strings.Join(keys(known), ", "), nil)
	}
	if err := n.allow(keys(known)); err != nil {
		return err
	}
	for _, f := range known {
		item := n.at(f.key)
		if item == nil {
			if f.required {
				return fault(joined(n.path(), f.key), "", "the key is missing: "+wantedOf(f.typ), nil)
			}
			continue
		}
		if err := decodeValue(item, v.FieldByIndex(f.index), f.bounds); err != nil {
			return err
		}
	}
	switch p := v.Addr().Interface().(type) {
	case checker:
		return p.check(n)
	case *gauge.Swatch:
		_, err := p.Gauge()
		return gaugeFault(n, err)
	}
	return nil
}

func decodeList(n *node, v reflect.Value, bounds within) error {
	if n.kind != list {
		return n.fault("write a list in [ ]", nil)
	}
	made := reflect.MakeSlice(v.Type(), len(n.items), len(n.items))
	for i, item := range n.items {
		if err := decodeValue(item, made.Index(i), bounds); err != nil {
			return err
		}
	}
	v.Set(made)
	return nil
}

var wholeNumber = regexp.MustCompile(`^-?[0-9]{1,9}$`)

func decodeWhole(n *node, bounds within) (int, error) {
	want := "write a whole number"
	if bounds.set {
		want += fmt.Sprintf(" from %d to %d", bounds.least, bounds.most)
	}
	if n.kind == letters && wholeNumber.MatchString(n.text) {
		return 0, n.fault("write the number without quotes", nil)
	}
	if n.kind != number || !wholeNumber.MatchString(n.text) {
		return 0, n.fault(want, nil)
	}
	whole, err := strconv.Atoi(n.text)
	if err != nil || (bounds.set && (whole < bounds.least || whole > bounds.most)) {
		return 0, n.fault(want, nil)
	}
	return whole, nil
}

// mostPlaces bounds the digits of a decimal on either side of the point.
const mostPlaces = 20

var decimalNumber = regexp.MustCompile(fmt.Sprintf(`^[0-9]{1,%[1]d}(\.[0-9]{1,%[1]d})?$`, mostPlaces))

// decodeDecimal reads a decimal of zero or more from a text or a number.
func decodeDecimal(n *node, d *decimal.Decimal) error {
	if n.kind == letters && strings.Contains(n.text, ",") {
		return n.fault(`write the decimal point as "."`, nil)
	}
	if (n.kind != letters && n.kind != number) || !decimalNumber.MatchString(n.text) {
		return n.fault(`write a decimal such as "14.2", without a sign or an exponent`, nil)
	}
	value, err := decimal.NewFromString(n.text)
	*d = value
	return err
}

// decodeText reads a text into a value that parses it.
func decodeText(n *node, v encoding.TextUnmarshaler) error {
	if n.kind != letters {
		if isLength(reflect.TypeOf(v).Elem()) && n.kind == number {
			return n.fault(fmt.Sprintf("write a text with a unit: %q", short(n.text)+" cm"), nil)
		}
		return n.fault("write "+wantedOf(reflect.TypeOf(v).Elem()), nil)
	}
	if err := v.UnmarshalText([]byte(n.text)); err != nil {
		return n.fault(wanted(err), err)
	}
	return nil
}

// decodePair reads a method, or a list of two.
func decodePair(n *node, pair *garment.Pair) error {
	switch {
	case n.kind == letters:
		var both shaping.Method
		if err := decodeText(n, &both); err != nil {
			return err
		}
		*pair = garment.By(both)
		return nil
	case n.kind != list || len(n.items) != 2:
		return n.fault("write a method, or a list of two: for several stitches and for single ones", nil)
	}
	var two [2]shaping.Method
	for i, item := range n.items {
		if err := decodeText(item, &two[i]); err != nil {
			return err
		}
	}
	*pair = garment.Pair{Several: two[0], Single: two[1]}
	return nil
}

// gaugeForm has the keys of a gauge.
type gaugeForm struct {
	Stitches count        `json:"stitches"`
	Rows     count        `json:"rows"`
	Over     gauge.Length `json:"over"`
}

// count is a text or number that the gauge reads itself.
type count struct{ json string }

func (c *count) readNode(n *node) error {
	switch n.kind {
	case number:
		c.json = n.text
	case letters:
		c.json = jsonText(n.text)
	default:
		return n.fault(`write a number such as "22" or "22.5"`, nil)
	}
	return nil
}

func decodeGauge(n *node, g *gauge.Gauge) error {
	var form gaugeForm
	if err := decode(n, &form); err != nil {
		return err
	}
	text := fmt.Sprintf(`{"stitches":%s,"rows":%s,"over":%s}`, form.Stitches.json, form.Rows.json, jsonText(n.at("over").text))
	return gaugeFault(n, g.UnmarshalJSON([]byte(text)))
}
