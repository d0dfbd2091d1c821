package plan

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"sync"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// field is one key of a struct.
type field struct {
	key      string
	index    []int
	typ      reflect.Type
	required bool
	bounds   within
}

// known holds the fields of the few struct types of documents, by type: they are
// read from tags once. Nobody sees or changes it otherwise.
var known sync.Map

// fieldsOf returns the keys of a struct in their order.
func fieldsOf(t reflect.Type) []field {
	if fields, ok := known.Load(t); ok {
		return fields.([]field)
	}
	fields, _ := known.LoadOrStore(t, readFields(t))
	return fields.([]field)
}

func readFields(t reflect.Type) []field {
	var fields []field
	for _, f := range reflect.VisibleFields(t) {
		key, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if key == "" || key == "-" {
			continue
		}
		made := field{key: key, index: f.Index, typ: f.Type, required: !strings.Contains(options, "omitzero")}
		if _, err := fmt.Sscan(f.Tag.Get("within"), &made.bounds.least, &made.bounds.most); err == nil {
			made.bounds.set = true
		}
		fields = append(fields, made)
	}
	return fields
}

func keys(fields []field) []string {
	var keys []string
	for _, f := range fields {
		keys = append(keys, f.key)
	}
	return keys
}

func isLength(t reflect.Type) bool {
	return t == reflect.TypeFor[gauge.Length]() || t == reflect.TypeFor[garment.Optional]()
}

// wantedOf says what a value of the type, one that is required somewhere, looks like.
func wantedOf(t reflect.Type) string {
	if isLength(t) {
		return `a length with its unit, such as "23.5 cm"`
	}
	switch v := reflect.New(t).Interface().(type) {
	case *count:
		return `a number such as "22" or "22.5"`
	case *gauge.Gauge:
		return "an object in { } with stitches, rows, over"
	case encoding.TextUnmarshaler:
		if err := v.UnmarshalText(nil); err != nil {
			return wanted(err)
		}
		return "a text in quotes"
	}
	switch t.Kind() {
	case reflect.Struct:
		return "an object in { } with " + strings.Join(keys(fieldsOf(t)), ", ")
	case reflect.Slice:
		return "a list in [ ]"
	case reflect.Int:
		return "a whole number"
	}
	return "a text in quotes"
}

// gaugeFault has an error of a gauge or swatch name its place in the document.
func gaugeFault(n *node, err error) error {
	if err == nil {
		return nil
	}
	e, ok := errors.AsType[*gauge.Error](err)
	if !ok {
		return n.fault(wanted(err), err)
	}
	return fault(joined(n.path(), e.Field), e.Given, e.Want, err)
}

// jsonText returns a text as JSON.
func jsonText(s string) string {
	b, _ := json.Marshal(s) // of a string there is no error
	return string(b)
}
