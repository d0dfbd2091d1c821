package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// source reads the values of one line, strictly: no key is unknown or stands twice. It
// keeps the first fault and goes on, so that the id is found wherever it stands.
type source struct {
	line   []byte
	tokens *json.Decoder
	err    error
	ended  bool // what follows is not JSON
}

func newSource(line []byte) *source {
	s := &source{line: line, tokens: json.NewDecoder(bytes.NewReader(line))}
	s.tokens.UseNumber()
	if !utf8.Valid(line) {
		s.ended = true
		s.fail("request", "", "not UTF-8: write it as UTF-8")
	}
	return s
}

// fail keeps a fault if it is the first.
func (s *source) fail(field, given, want string) {
	if s.err == nil {
		s.err = &fault{field, given, want}
	}
}

// next returns the next token, and nil for null and after the end.
func (s *source) next() json.Token {
	if s.ended {
		return nil
	}
	token, err := s.tokens.Token()
	if err != nil {
		s.ended = true
		s.fail("request", "", s.malformed(err))
	}
	return token
}

func (s *source) malformed(err error) string {
	if syntax, ok := errors.AsType[*json.SyntaxError](err); ok && syntax.Offset < int64(len(s.line)) {
		return fmt.Sprintf("not JSON from byte %d on: a comma, quote or bracket too many or too few", max(syntax.Offset, 1))
	}
	return "not JSON: it ends too early"
}

// end refuses what follows the request.
func (s *source) end() {
	if s.ended {
		return
	}
	if _, err := s.tokens.Token(); !errors.Is(err, io.EOF) {
		s.fail("request", "", "something follows it: write one object on each line")
	}
}

// field is a key of an object and how its value is read. The place is that of the value.
type field struct {
	key  string
	read func(place string)
}

// object reads an object at a place, which is empty for the request itself.
func (s *source) object(place string, fields ...field) {
	keys := func() string {
		var keys []string
		for _, f := range fields {
			keys = append(keys, f.key)
		}
		return strings.Join(keys, ", ")
	}
	if !s.opens('{', named(place), func() string { return "write an object in { } with keys among " + keys() }) {
		return
	}
	seen := 0
	for s.more() {
		key, _ := s.next().(string)
		at := key
		if place != "" {
			at = place + "." + key
		}
		i := indexOf(fields, key)
		switch {
		case i < 0:
			s.fail(shown(at), "", "unknown key: the keys here are "+keys())
			s.value()
		case seen&(1<<i) != 0:
			s.fail(at, "", "the key stands twice: write it once")
			s.value()
		default:
			seen |= 1 << i
			fields[i].read(at)
		}
	}
	s.next()
}

func indexOf(fields []field, key string) int {
	for i := range fields {
		if fields[i].key == key {
			return i
		}
	}
	return -1
}

// named names a place in a message.
func named(place string) string {
	if place == "" {
		return "request"
	}
	return place
}

// shown returns a key that is not known for a message.
func shown(key string) string {
	if text := quoted(key); text != `"`+key+`"` || key == "" {
		return text
	}
	return key
}

// list reads a list, each item by the function.
func (s *source) list(place, want string, read func(place string)) {
	if !s.opens('[', place, func() string { return want }) {
		return
	}
	for i := 0; s.more(); i++ {
		read(place + "[" + strconv.Itoa(i) + "]")
	}
	s.next()
}

// opens reads the start of an object or a list, or refuses and reads the whole value.
func (s *source) opens(bracket json.Delim, place string, want func() string) bool {
	token := s.next()
	if token == bracket {
		return true
	}
	if given := s.whole(token); !s.ended {
		s.fail(place, given.given(), want())
	}
	return false
}

func (s *source) more() bool { return !s.ended && s.tokens.More() }

// value is a value that is no object or list, or says that it is one.
type value struct {
	kind kind
	text string
}

type kind uint8

const (
	other kind = iota // an object, a list or null
	letters
	number
	boolean
)

// given says the value in a message.
func (v value) given() string {
	if v.kind == letters {
		return quoted(v.text)
	}
	return short(v.text)
}

// value reads a value to its end.
func (s *source) value() value { return s.whole(s.next()) }

// whole returns the value that a token begins and reads the rest of it.
func (s *source) whole(token json.Token) value {
	switch token := token.(type) {
	case string:
		return value{letters, token}
	case json.Number:
		return value{number, token.String()}
	case bool:
		return value{boolean, strconv.FormatBool(token)}
	case json.Delim:
		for depth := 1; depth > 0 && !s.ended; {
			switch s.next() {
			case json.Delim('{'), json.Delim('['):
				depth++
			case json.Delim('}'), json.Delim(']'):
				depth--
			}
		}
		if token == '{' {
			return value{other, "{...}"}
		}
		return value{other, "[...]"}
	}
	return value{other, "null"}
}

// raw reads a value to its end and returns it as it is written.
func (s *source) raw() ([]byte, value) {
	if s.ended {
		return nil, value{}
	}
	start := s.tokens.InputOffset()
	v := s.value()
	return bytes.TrimLeft(s.line[start:s.tokens.InputOffset()], ": \t"), v
}

// refuse keeps a fault about a value that was read.
func (s *source) refuse(place string, v value, want string) {
	if !s.ended {
		s.fail(place, v.given(), want)
	}
}

// text reads a text.
func (s *source) text(place, want string) string {
	v := s.value()
	if v.kind != letters {
		s.refuse(place, v, want)
		return ""
	}
	return v.text
}

// truth reads true or false.
func (s *source) truth(place string) bool {
	v := s.value()
	if v.kind != boolean {
		s.refuse(place, v, "true or false, without quotes")
	}
	return v.text == "true"
}

// count reads a whole number.
func (s *source) count(place string, least, most int) int {
	v := s.value()
	n, err := strconv.Atoi(v.text)
	if v.kind != number || err != nil || n < least || n > most {
		s.refuse(place, v, fmt.Sprintf("a whole number from %d to %d, without quotes", least, most))
		return least
	}
	return n
}

// length reads a length with its unit, or a number of millimetres.
func (s *source) length(place string) gauge.Length {
	const want = `a length such as "23.5 cm", or a number of millimetres`
	v := s.value()
	if v.kind != letters {
		return gauge.Millimetres(s.decimalOf(place, v, want))
	}
	l, err := gauge.ParseLength(v.text)
	if e, ok := errors.AsType[*gauge.ParseError](err); ok {
		s.refuse(place, v, e.Problem+": "+e.Try)
	}
	return l
}

// decimal reads a decimal from a text or a number.
func (s *source) decimal(place, want string) decimal.Decimal {
	return s.decimalOf(place, s.value(), want)
}

// decimalOf bounds the digits and the exponent: numbers are reckoned with exactly.
func (s *source) decimalOf(place string, v value, want string) decimal.Decimal {
	if v.kind == number || v.kind == letters {
		if len(v.text) > longestShown {
			s.refuse(place, v, fmt.Sprintf("a number of at most %d characters", longestShown))
			return decimal.Decimal{}
		}
		const least, most = -30, 20
		if d, err := decimal.NewFromString(v.text); err == nil && least <= d.Exponent() && d.Exponent() <= most {
			return d
		}
	}
	s.refuse(place, v, want)
	return decimal.Decimal{}
}
