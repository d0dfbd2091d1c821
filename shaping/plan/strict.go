package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/walewise/shaping/garment"
)

// The bounds of documents.
const (
	MaxBytes = 1 << 20          // of a document
	MaxTitle = garment.MaxTitle // characters of a title

	maxDepth = 12 // objects and lists within each other
)

var byteOrderMark = []byte("\ufeff")

// readBounded reads a document that is not longer than allowed.
func readBounded(r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("plan: reading the document: %w", err)
	case len(text) > MaxBytes:
		return nil, tooLong(fmt.Sprintf("of more than %d bytes", MaxBytes))
	}
	return text, nil
}

func tooLong(given string) error {
	return fault("document", given, fmt.Sprintf("at most 1 MiB, %d bytes", MaxBytes), nil)
}

// open reads a document into a tree of nodes and checks its format.
func open(text []byte, format string) (*node, error) {
	if len(text) > MaxBytes {
		return nil, tooLong(fmt.Sprintf("of %d bytes", len(text)))
	}
	if !utf8.Valid(text) {
		return nil, fault("document", "", "not UTF-8: save it as UTF-8", nil)
	}
	text = bytes.TrimPrefix(text, byteOrderMark)
	if err := wellFormed(text); err != nil {
		return nil, err
	}
	root, err := parse(text)
	if err != nil {
		return nil, err
	}
	if root.kind != object {
		return nil, fault("document", root.given(), fmt.Sprintf("write an object in { } whose format is %q", format), nil)
	}
	n := root.at("format")
	switch {
	case n == nil:
		return nil, fault("format", "", fmt.Sprintf("the key is missing: write %q", format), nil)
	case n.kind != letters || n.text != format:
		return nil, fault("format", n.given(), fmt.Sprintf("only %q can be read here", format)+hint(n.text, format), nil)
	}
	return root, nil
}

// hint says what to do with a document of another format, if there is something to do.
func hint(given, format string) string {
	if format == PlanFormat && given == SpecFormat {
		return "; this is a spec: make a plan of it first"
	}
	name, known, _ := strings.Cut(format, "/")
	version, same := strings.CutPrefix(given, name+"/")
	newest, _ := strconv.Atoi(known)
	if number, err := strconv.Atoi(version); same && err == nil && number > newest {
		return "; this is a later version: a later release of walewise reads it"
	}
	return ""
}

// wellFormed checks that text is one JSON value and nothing else.
func wellFormed(text []byte) error {
	decoder := json.NewDecoder(bytes.NewReader(text))
	var value json.RawMessage
	err := decoder.Decode(&value)
	syntax, bad := errors.AsType[*json.SyntaxError](err)
	switch {
	case errors.Is(err, io.EOF):
		return fault("document", "", "empty", nil)
	case bad && syntax.Offset < int64(len(text)):
		return fault("document", place(text, syntax.Offset-1), "not JSON from here on: a comma, quote or bracket too many or too few", nil)
	case err != nil:
		return fault("document", "", "not JSON: it ends too early", nil)
	}
	end := decoder.InputOffset()
	rest := bytes.TrimLeft(text[end:], " \t\r\n")
	if len(rest) > 0 {
		return fault("document", place(text, int64(len(text)-len(rest))), "text after the end of the document", nil)
	}
	return nil
}

// place says where a byte stands in a text.
func place(text []byte, offset int64) string {
	before := text[:max(0, min(offset, int64(len(text))))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return fmt.Sprintf("line %d, column %d", line, column)
}
