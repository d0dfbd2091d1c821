package main

import (
	"encoding/json"
	"fmt"
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
	"github.com/shopspring/decimal"
)

// plainBody is what a body in the table leaves out: no more than a style has to know.
const plainBody = `{"name": "M", "chest": "94 cm", "shoulders": "37.5 cm", "backWaist": "42 cm", "arm": "56 cm"}`

// plainStyle is a jumper with sleeves set in, straightStyle one with straight armholes.
const (
	plainStyle = `{
		"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"},
		"armhole": {"inset": "5 cm"}, "neck": {"shape": "round", "stretch": "33"}, "sleeve": {"cap": "set-in"}
	}`
	straightStyle = `{
		"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"},
		"neck": {"shape": "round"}, "sleeve": {"cap": "straight"}
	}`
)

// ofSpec lists what the spec made for a body can be asked for.
func ofSpec() []one[fitted] {
	return []one[fitted]{
		{"round the body", func(f fitted) string { return f.length(f.spec.Body.Width.Mul(2)) }},
		{"upper arm", func(f fitted) string { return f.length(f.spec.Sleeve.Top) }},
		{"cuff", func(f fitted) string { return f.length(f.spec.Sleeve.Cuff) }},
		{"sleeve", func(f fitted) string { return f.length(f.spec.Sleeve.Length) }},
		{"cap", func(f fitted) string { return f.length(f.body.Arm.Sub(f.spec.Sleeve.Length)) }},
		{"front neck", func(f fitted) string { return f.length(f.spec.Neck.Depth) }},
		{"neck edge", func(f fitted) string {
			// The edge as [sizes.Style.For] takes it: twice the width and eight sevenths of the depths.
			depths := f.spec.Neck.Depth.Add(f.spec.Back.Neck.Depth).Millimetres()
			return f.length(f.spec.Neck.Width.Mul(2).Add(gauge.Millimetres(depths.Mul(decimal.NewFromInt(8)).DivRound(decimal.NewFromInt(7), 3))))
		}},
		{"neck without the band", func(f fitted) string {
			for _, l := range f.filled {
				if l.Key == "neck" {
					return f.length(l.Length)
				}
			}
			return "measured"
		}},
	}
}

// fitted is the spec made for a body.
type fitted struct {
	body   sizes.Body
	spec   garment.Spec
	filled []sizes.Filled
	formatted
}

func (f fitted) length(l gauge.Length) string { return l.Format(f.Unit, f.Places) }

// forBody makes the spec of a plain jumper for a body.
func forBody(in struct {
	Body     json.RawMessage // what differs from plainBody
	Ease     garment.Optional
	Straight bool
	Gives    string
	formatted
}) (string, error) {
	gives, err := pick(in.Gives, ofSpec())
	if err != nil {
		return "", err
	}
	if _, err := in.say(gauge.Length{}); err != nil {
		return "", err
	}
	var b sizes.Body
	if err := filledIn(plainBody, in.Body, &b); err != nil {
		return "", err
	}
	style := sizes.Style{Ease: sizes.Ease{Body: in.Ease}}
	says := plainStyle
	if in.Straight {
		says = straightStyle
	}
	if err := filledIn(says, nil, &style.Spec); err != nil {
		return "", err
	}
	spec, filled, err := style.For(b)
	if err != nil {
		return "", err
	}
	return gives(fitted{b, spec, filled, in.formatted}), nil
}

// measurement looks a measurement up in the built-in bodies.
func measurement(in struct {
	Table, Size, Key string
	formatted
}) (string, error) {
	tables := map[string][]sizes.Body{"men": sizes.Men(), "women": sizes.Women(), "children": sizes.Children()}
	list := tables[in.Table]
	i := slices.IndexFunc(list, func(b sizes.Body) bool { return b.Name == in.Size })
	if i < 0 {
		var names []string
		for _, b := range list {
			names = append(names, b.Name)
		}
		return "", fmt.Errorf("%w: table %q, size %q: men, women or children, who have the sizes %q", errInputs, in.Table, in.Size, names)
	}
	l, ok := list[i].Measurement(in.Key)
	if !ok {
		return "", fmt.Errorf("%w: key %q: one of %q", errInputs, in.Key, sizes.Keys())
	}
	return in.formatted.say(l)
}
