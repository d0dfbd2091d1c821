package plan

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// ErrPlan: a plan is malformed, or a field of it is missing or out of range.
var ErrPlan = errors.New("plan cannot be used")

// fault returns an error about a place in a document; cause may be nil.
func fault(path, given, want string, cause error) error {
	return &garment.Error{Field: path, Given: oneLine(given), Want: oneLine(want), Err: cause}
}

// sealed has a fault wrap kind beside its cause. Other errors stay as they are.
func sealed(err, kind error) error {
	f, ok := errors.AsType[*garment.Error](err)
	if !ok {
		return err
	}
	whole := *f
	switch {
	case f.Err == nil:
		whole.Err = kind
	case !errors.Is(f.Err, kind):
		whole.Err = fmt.Errorf("%w: %w", kind, f.Err)
	}
	return &whole
}

// wanted returns what the error of a value says would work, without the value.
func wanted(err error) string {
	if e, ok := errors.AsType[*gauge.ParseError](err); ok {
		return e.Problem + ": " + e.Try
	}
	if e, ok := errors.AsType[*gauge.Error](err); ok {
		return e.Want
	}
	if e, ok := errors.AsType[*shaping.Error](err); ok {
		return e.Want
	}
	if e, ok := errors.AsType[*garment.Error](err); ok {
		return e.Want
	}
	return err.Error()
}

// quoted returns a text from a document for a message: in quotes and not long.
func quoted(s string) string { return strconv.Quote(short(s)) }

// short cuts a text that is too long for a message.
func short(s string) string {
	const longest = 40
	if runes := []rune(s[:min(len(s), 4*longest+4)]); len(runes) > longest {
		return string(runes[:longest]) + "..."
	}
	return s
}

// oneLine writes what cannot be seen, line ends included, as Go escapes it.
func oneLine(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if unicode.IsPrint(r) {
			b.WriteRune(r)
			continue
		}
		escaped := strconv.QuoteRune(r)
		b.WriteString(escaped[1 : len(escaped)-1])
	}
	return b.String()
}
