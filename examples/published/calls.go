package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.com/walewise/internal/command"
)

// call is one way to ask the library.
type call struct {
	name string // of the function that is asked, as the table calls it
	ask  func(inputs json.RawMessage) (string, error)
}

func calls() []call {
	return []call{
		asking("shaping.AlongRow", alongRow),
		asking("shaping.EvenSpacing", evenSpacing),
		asking("shaping.Expand", expand),
		asking("shaping.Rules.Check", checkRules),
		asking("shaping.ShoulderGroups", shoulderGroups),
		asking("gauge.Gauge.Stitches", stitches),
		asking("gauge.Gauge.Rows", rows),
		asking("gauge.Gauge.Width", width),
		asking("gauge.Gauge.StitchesFor", stitchesFor),
		asking("gauge.Gauge.RowsFor", rowsFor),
		asking("gauge.RoundTogether", roundTogether),
		asking("gauge.Length.Format", formatLength),
		asking("curve.Trace", trace),
		asking("curve.Edge.Length", edgeLength),
		asking("curve.Edge.Area", edgeArea),
		asking("bed.Knit", knit),
		asking("garment.Front", front),
		asking("garment.Back", back),
		asking("garment.Sleeve", sleeve),
		asking("garment.Pieces", pieces),
		asking("sizes.Style.For", forBody),
		asking("sizes.Body.Measurement", measurement),
	}
}

// errInputs says that an example asks for something that its call does not know.
var errInputs = errors.New("cannot be used")

// asking returns the call of a function with inputs of its own.
func asking[T any](name string, ask func(T) (string, error)) call {
	return call{name, func(inputs json.RawMessage) (string, error) {
		var in T
		if err := decode(inputs, &in); err != nil {
			return "", fmt.Errorf("%w: %w", errInputs, err)
		}
		return ask(in)
	}}
}

// answer returns what the library gives. Where it refuses, the refusal is the answer.
func (c call) answer(inputs json.RawMessage) (string, error) {
	gives, err := c.ask(inputs)
	if errors.Is(err, errInputs) {
		return "", err
	}
	if err != nil {
		return "refused: " + command.OneLine(err), nil
	}
	return gives, nil
}

// callOf returns the call of a name.
func callOf(name string) (call, bool) {
	for _, c := range calls() {
		if c.name == name {
			return c, true
		}
	}
	return call{}, false
}

// callNames lists the calls for a message.
func callNames() string {
	var names []string
	for _, c := range calls() {
		names = append(names, c.name)
	}
	return strings.Join(names, ", ")
}

// one is something of an answer that inputs ask for by its name.
type one[T any] struct {
	name string
	of   func(T) string
}

// pick returns the one of that name.
func pick[T any](name string, list []one[T]) (func(T) string, error) {
	var names []string
	for _, o := range list {
		if o.name == name {
			return o.of, nil
		}
		names = append(names, o.name)
	}
	return nil, fmt.Errorf("%w: gives %q: one of %s", errInputs, name, strings.Join(names, ", "))
}
