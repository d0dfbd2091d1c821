package sizes

import (
	"errors"
	"fmt"

	"example.com/walewise/shaping/garment"
)

// Size is a garment in one size.
type Size struct {
	Body   Body
	Filled []Filled // what stands for measurements that are missing
	Spec   garment.Spec
	Set    garment.Set
}

// Range is a garment in several sizes, in the order of the bodies. Treat it as a value: what
// it holds is shared.
type Range struct {
	Style Style
	Sizes []Size
}

// Plan plans a garment for each body and has every piece knitted. It returns an [*Error]
// that names the size: in the cases of [Check] and [Style.For], and one that wraps the
// error of [garment.Pieces] where a size cannot be made.
func Plan(style Style, bodies []Body) (Range, error) {
	if err := Check(bodies); err != nil {
		return Range{}, err
	}
	style.Spec = style.Spec.Clone()
	r := Range{Style: style}
	for _, b := range bodies {
		spec, filled, err := style.For(b)
		if err != nil {
			return Range{}, err
		}
		set, err := garment.Pieces(spec)
		if err != nil {
			return Range{}, inSize(b.Name, err)
		}
		r.Sizes = append(r.Sizes, Size{b, filled, spec, set})
	}
	return r, nil
}

// Slice returns the sizes from one to before another, counted from 0, as far as there are such.
func (r Range) Slice(from, to int) Range {
	to = min(max(to, 0), len(r.Sizes))
	return Range{r.Style, r.Sizes[min(max(from, 0), to):to]}
}

// Names returns the names of the sizes.
func (r Range) Names() []string {
	var names []string
	for _, s := range r.Sizes {
		names = append(names, s.Body.Name)
	}
	return names
}

// inSize has an error of package garment name the size and the measurement that gives the
// field.
func inSize(name string, err error) error {
	e, ok := errors.AsType[*garment.Error](err)
	if !ok {
		return fmt.Errorf("size %s: %w", name, err)
	}
	want := e.Want
	if from := givenBy(e.Field); from != "" {
		want += fmt.Sprintf(" (in a table of bodies it comes from %s)", from)
	}
	return &Error{Size: name, Key: e.Field, Given: e.Given, Want: want, Err: err}
}

// givenBy says which measurements a field of the spec comes from; it is empty for those of
// the style.
func givenBy(field string) string {
	switch field {
	case "body.width":
		return "chest and the ease"
	case "body.length":
		return "backWaist, less the armhole and the shoulder"
	case "body.hem":
		return "hips"
	case "body.waist.width":
		return "waist and the ease"
	case "body.waist.height":
		return "what lies below the waist"
	case "armhole.depth":
		return "armhole, armpit or upperArm and the ease"
	case "armhole.inset":
		return "chest, the ease and shoulders"
	case "neck.width":
		return "neck, head or shoulders"
	case "shoulder.drop":
		return "fall"
	case "sleeve.length":
		return "innerArm, or arm less the cap"
	case "sleeve.cuff":
		return "wrist and the ease"
	case "sleeve.top":
		return "upperArm and the ease"
	}
	return ""
}
