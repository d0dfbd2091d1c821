package gauge

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// object reads the values of a JSON object by their keys. It keeps the first error and
// answers zero values from then on.
type object struct {
	values map[string]json.RawMessage
	err    error
}

// readObject reads an object that has the required keys, may have the optional ones,
// and has no others. The package json itself would let the last of repeated keys win
// and take keys in other capitals. An error about the whole of it names what it is.
func readObject(what string, text []byte, required, optional []string) *object {
	known := slices.Concat(required, optional)
	o := &object{values: make(map[string]json.RawMessage)}
	malformed := func() *object {
		o.fail(what, text, "write one object in { } with "+strings.Join(required, ", "), ErrSyntax)
		return o
	}
	decoder := json.NewDecoder(bytes.NewReader(text))
	if start, err := decoder.Token(); err != nil || start != json.Delim('{') {
		return malformed()
	}
	for decoder.More() {
		token, err := decoder.Token()
		if err != nil {
			return malformed()
		}
		key, _ := token.(string)
		var value json.RawMessage
		if decoder.Decode(&value) != nil {
			return malformed()
		}
		switch _, twice := o.values[key]; {
		case twice:
			o.fail(key, value, "the key stands twice: write it once", ErrSyntax)
		case !slices.Contains(known, key):
			o.fail(key, value, "unknown key: the keys here are "+strings.Join(known, ", "), ErrSyntax)
		}
		o.values[key] = value
	}
	if _, err := decoder.Token(); err != nil {
		return malformed()
	}
	if _, err := decoder.Token(); !errors.Is(err, io.EOF) {
		return malformed()
	}
	for _, key := range required {
		if o.values[key] == nil {
			o.fail(key, nil, "the keys needed are "+strings.Join(required, ", "), ErrRange)
		}
	}
	return o
}

// fail keeps an error about the value of a key.
func (o *object) fail(key string, value json.RawMessage, want string, kind error) {
	if o.err == nil {
		o.err = &Error{Field: plain(key), Given: givenJSON(value), Want: want, Err: kind}
	}
}

// number reads a decimal of zero or more from a text or a number: digits with or
// without a point, or a fraction, but no exponent. A key that is missing is 0.
func (o *object) number(key, want string) decimal.Decimal {
	raw, given := o.values[key]
	if !given {
		return decimal.Decimal{}
	}
	if text := plainText(raw); len(text) <= longestText && isNumber(text) {
		if value, exact := numberValue(text); exact {
			return value
		}
	}
	o.fail(key, raw, want, ErrRange)
	return decimal.Decimal{}
}

// whole reads a whole number that is not in quotes.
func (o *object) whole(key string) int {
	n, err := strconv.Atoi(string(o.values[key]))
	if err != nil {
		o.fail(key, o.values[key], "a whole number without quotes, such as 40", ErrRange)
	}
	return n
}

// length reads a length with its unit.
func (o *object) length(key string) Length {
	// What is no text never reads, and the error says what to type instead.
	l, err := ParseLength(plainText(o.values[key]))
	if e, ok := errors.AsType[*ParseError](err); ok {
		o.fail(key, o.values[key], e.Problem+": "+e.Try, e)
	}
	return l
}

// text reads a text. A key that is missing is an empty one.
func (o *object) text(key string) string {
	raw, given := o.values[key]
	if given && !isText(raw) {
		o.fail(key, raw, "write a text in quotes", ErrSyntax)
		return ""
	}
	return plainText(raw)
}

func isText(value json.RawMessage) bool { return bytes.HasPrefix(value, []byte(`"`)) }

// plainText returns a text without its quotes and any other value as it is written.
func plainText(value json.RawMessage) string {
	var text string
	if isText(value) && json.Unmarshal(value, &text) == nil {
		return text
	}
	return string(value)
}

// givenJSON says a value in a message.
func givenJSON(value json.RawMessage) string {
	switch {
	case len(value) == 0:
		return "missing"
	case isText(value):
		return quoted(plainText(value))
	case value[0] == '{':
		return "{...}"
	case value[0] == '[':
		return "[...]"
	}
	return plain(string(value))
}
