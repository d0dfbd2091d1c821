package main

import (
	"flag"
	"fmt"
	"io"

	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// inputs are the new gauge and what is knitted, as the command line has them.
type inputs struct {
	flags   *flag.FlagSet
	file    string
	knitted int
	piece   string
	begun   bool // with -knitted
}

func newInputs(flags *flag.FlagSet) sample.Inputs[regauged] {
	in := &inputs{flags: flags}
	flags.StringVar(&in.file, "new", "", "read the new gauge, swatch or swatches from `FILE`; - is standard input; together with -spec")
	flags.IntVar(&in.knitted, "knitted", 0, "`ROWS` of one piece are knitted already: plan the rest of it")
	flags.StringVar(&in.piece, "piece", "", "with -knitted: the `PIECE`, such as \"back\"; without it the first one")
	return in
}

func (in *inputs) Problem(given map[string]bool) string {
	in.begun = given["knitted"]
	switch {
	case given["check"]:
	case given["piece"] && !in.begun:
		return "-piece without -knitted: say how many rows of it are knitted"
	case given["new"] && !given["spec"]:
		return "-new without -spec: give both, or neither for the demo"
	case given["spec"] && !given["new"]:
		return "-spec without -new: give both, or neither for the demo"
	case in.file == "-" && in.flags.Lookup("spec").Value.String() == "-":
		return "-spec and -new: only one of them can be read from standard input"
	}
	return ""
}

// Plan plans the spec by its own gauge and by the new one.
func (in *inputs) Plan(spec garment.Spec, stdin io.Reader) (regauged, error) {
	by, err := in.gauge(stdin)
	if err != nil {
		return regauged{}, err
	}
	before, err := garment.Pieces(spec)
	if err != nil {
		return regauged{}, fmt.Errorf("by the gauge of the spec: %w", err)
	}
	if in.begun {
		return in.goOn(before, spec.Regauged(by))
	}
	after, err := garment.Pieces(spec.Regauged(by))
	if err != nil {
		return regauged{}, fmt.Errorf("by the new gauge: %w", err)
	}
	return regauged{before: before, after: after}, nil
}

// goOn plans the rest of one piece anew.
func (in *inputs) goOn(before garment.Set, spec garment.Spec) (regauged, error) {
	piece, ok := before.Pieces[0], true
	if in.piece != "" {
		piece, ok = before.Piece(in.piece)
	}
	if !ok {
		return regauged{}, fmt.Errorf("-piece %q: the pieces are %s", in.piece, sample.Names(before.Pieces))
	}
	rest, err := garment.GoOn(piece, in.knitted, spec)
	if err != nil {
		return regauged{}, fmt.Errorf("by the new gauge: %w", err)
	}
	return regauged{
		before: garment.Set{Pieces: []garment.Piece{piece}}, after: garment.Set{Pieces: []garment.Piece{rest}},
		from: &sheet.Reading{Panel: shaping.Body, Counter: in.knitted},
	}, nil
}

// gauge reads the new gauge, that of the demo if no file is named.
func (in *inputs) gauge(stdin io.Reader) (garment.GaugeSpec, error) {
	if in.file == "" {
		return plan.ParseGauge(washed)
	}
	f, err := sample.Open(in.file, stdin)
	if err != nil {
		return garment.GaugeSpec{}, err
	}
	defer f.Close()
	return plan.ReadGauge(f)
}
