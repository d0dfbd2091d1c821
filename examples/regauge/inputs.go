package main

import (
	"flag"
	"fmt"
	"io"

	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

// inputs are the new gauge, as the command line has it.
type inputs struct {
	flags *flag.FlagSet
	file  string
}

func newInputs(flags *flag.FlagSet) sample.Inputs[regauged] {
	in := &inputs{flags: flags}
	flags.StringVar(&in.file, "new", "", "read the new gauge, swatch or swatches from `FILE`; - is standard input; together with -spec")
	return in
}

func (in *inputs) Problem(given map[string]bool) string {
	switch {
	case given["check"]:
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
	after, err := garment.Pieces(spec.Regauged(by))
	if err != nil {
		return regauged{}, fmt.Errorf("by the new gauge: %w", err)
	}
	return regauged{before, after}, nil
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
