package garment

import (
	"errors"
	"fmt"
	"slices"

	"example.com/walewise/gauge"
)

// GaugeSpec is what a spec says of the gauge: one of the swatch, several swatches of the
// same fabric, and the gauge.
type GaugeSpec struct {
	Swatch   *gauge.Swatch  `json:"swatch,omitzero"`
	Swatches []gauge.Swatch `json:"swatches,omitzero"` // 1 to [gauge.MaxSwatches]
	Gauge    gauge.Gauge    `json:"gauge,omitzero"`
}

// GaugeSpec returns what the spec says of the gauge.
func (s Spec) GaugeSpec() GaugeSpec {
	return GaugeSpec{Swatch: s.Swatch, Swatches: s.Swatches, Gauge: s.Gauge}.clone()
}

// Regauged returns the spec with another gauge: what was measured, chosen and drawn
// stays, lengths, methods, seam stitches, repeats of a band and its own gauge included.
// What the yarn weighs and how long it is goes with the old swatches, since a stitch of
// another size takes another length of yarn: give swatches with grams or metres to keep it.
func (s Spec) Regauged(by GaugeSpec) Spec {
	s, by = s.Clone(), by.clone()
	s.Swatch, s.Swatches, s.Gauge = by.Swatch, by.Swatches, by.Gauge
	return s
}

func (g GaugeSpec) clone() GaugeSpec {
	return GaugeSpec{Swatch: copied(g.Swatch), Swatches: slices.Clone(g.Swatches), Gauge: g.Gauge}
}

// List returns the swatches, one or several; there are none beside a gauge.
func (g GaugeSpec) List() []gauge.Swatch {
	if g.Swatch != nil {
		return []gauge.Swatch{*g.Swatch}
	}
	return slices.Clone(g.Swatches)
}

// Keys lists which of "gauge", "swatch" and "swatches" are given.
func (g GaugeSpec) Keys() []string {
	var keys []string
	for _, k := range []struct {
		key   string
		given bool
	}{{"gauge", !g.Gauge.IsZero()}, {"swatch", g.Swatch != nil}, {"swatches", g.Swatches != nil}} {
		if k.given {
			keys = append(keys, k.key)
		}
	}
	return keys
}

// Measured returns the gauge, that of the swatch or the [gauge.Mean] of the swatches. It
// returns an [*Error] if none of them is given, or two are, and one that names a field
// such as "swatches[1].width" for swatches that give no gauge.
func (g GaugeSpec) Measured() (gauge.Gauge, error) {
	switch given := g.Keys(); {
	case len(given) == 0:
		return gauge.Gauge{}, &Error{Field: "gauge", Want: "missing: give a gauge, a swatch or swatches", Err: ErrSpec}
	case len(given) > 1:
		return gauge.Gauge{}, &Error{Field: given[1], Want: fmt.Sprintf("given together with a %s: give one of the two", given[0]), Err: ErrSpec}
	case given[0] == "gauge" && g.Gauge.Swatches() > 1:
		return gauge.Gauge{}, &Error{Field: "gauge", Given: g.Gauge.String(), Want: "the mean of swatches: give these as swatches, so that what lies between them is kept", Err: ErrSpec}
	case given[0] == "gauge":
		return g.Gauge, nil
	}
	made, err := gauge.Mean(g.Swatches...)
	if g.Swatch != nil {
		made, err = g.Swatch.Gauge()
	}
	if fault := (*gauge.Error)(nil); errors.As(err, &fault) {
		field := fault.Field
		if g.Swatch != nil {
			field = "swatch." + field
		}
		return gauge.Gauge{}, &Error{Field: field, Given: fault.Given, Want: fault.Want, Err: ErrSpec}
	}
	return made, err
}

// swatchWarnings says that swatches differ by more than their counting explains.
func (j job) swatchWarnings() []string {
	if j.gauge.Agree() {
		return nil
	}
	const places = 1
	stitches, rows := j.gauge.Spread(places)
	return []string{fmt.Sprintf("The swatches differ by up to %s %% in stitches and %s %% in rows from their mean, which is more than counting explains: knit, wash and rest them again before you cast on.",
		stitches.StringFixed(places), rows.StringFixed(places))}
}
