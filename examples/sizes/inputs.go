package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sizes"
)

// inputs are the bodies and the ease, as the command line has them.
type inputs struct {
	flags                        *flag.FlagSet
	bodies, whom                 string
	body, sleeve, armhole, below gauge.Length
	given                        map[string]bool
}

func newInputs(flags *flag.FlagSet) sample.Inputs[sizes.Range] {
	in := &inputs{flags: flags}
	flags.StringVar(&in.bodies, "bodies", "", "read the bodies from `FILE`, CSV or JSON; - is standard input; without it an embedded demo")
	flags.StringVar(&in.whom, "for", "", "take the bodies built in of `WHOM`: men, women or children; not with -bodies")
	flags.Var(&in.body, "ease", "`LENGTH` by which the garment is wider round than chest and waist, such as \"6 cm\"; without it 8 cm")
	flags.Var(&in.sleeve, "sleeve-ease", "`LENGTH` by which a sleeve is wider round than upper arm and wrist; without it 4 cm")
	flags.Var(&in.armhole, "armhole-ease", "`LENGTH` by which the armhole is deeper than the body's; without it 2.5 cm")
	flags.Var(&in.below, "below", "`LENGTH` of the garment below the waist; without it three eighths of the length from nape to waist")
	return in
}

func (in *inputs) Problem(given map[string]bool) string {
	in.given = given
	switch {
	case given["bodies"] && given["for"]:
		return "-bodies with -for: take a table or the bodies built in"
	case given["for"] && builtIn(in.whom) == nil:
		return fmt.Sprintf("-for %q: men, women or children", in.whom)
	case in.bodies == "-" && in.flags.Lookup("spec").Value.String() == "-":
		return "-spec - with -bodies -: only one of them can be standard input"
	}
	return ""
}

// Plan plans the spec, whatever its size, for all bodies.
func (in *inputs) Plan(spec garment.Spec, stdin io.Reader) (sizes.Range, error) {
	bodies, err := in.read(stdin)
	if err != nil {
		return sizes.Range{}, err
	}
	return sizes.Plan(sizes.Style{
		Spec: spec,
		Ease: sizes.Ease{
			Body: in.asked("ease", in.body), Sleeve: in.asked("sleeve-ease", in.sleeve), Armhole: in.asked("armhole-ease", in.armhole),
		},
		Below: in.asked("below", in.below),
	}, bodies)
}

// asked returns the length of a flag, left open where it was not given.
func (in *inputs) asked(name string, l gauge.Length) garment.Optional {
	if !in.given[name] {
		return garment.Optional{}
	}
	return garment.Exactly(l)
}

// read reads the bodies.
func (in *inputs) read(stdin io.Reader) ([]sizes.Body, error) {
	switch {
	case in.given["for"]:
		return builtIn(in.whom), nil
	case !in.given["bodies"]:
		return sizes.ReadCSV(bytes.NewReader(crew))
	}
	f, err := sample.Open(in.bodies, stdin)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	// One byte more than is allowed, so that what reads the table says so.
	text, err := io.ReadAll(io.LimitReader(f, sizes.MaxBytes+1))
	if err != nil {
		return nil, err
	}
	if isObject(text) {
		return plan.ParseBodies(text)
	}
	return sizes.ReadCSV(bytes.NewReader(text))
}

// isObject reports whether a text begins as JSON does and no CSV table.
func isObject(text []byte) bool {
	text = bytes.TrimSpace(bytes.TrimPrefix(text, []byte("\ufeff")))
	return len(text) > 0 && (text[0] == '{' || text[0] == '[')
}

func builtIn(whom string) []sizes.Body {
	switch whom {
	case "men":
		return sizes.Men()
	case "women":
		return sizes.Women()
	case "children":
		return sizes.Children()
	}
	return nil
}
