package plan

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// GaugeFormat is the format of documents that have nothing but a gauge, such as one
// measured anew for a spec that there is already.
const GaugeFormat = "walewise-gauge/1"

// gaugeOnlyForm has the keys of such a document.
type gaugeOnlyForm struct {
	Format string `json:"format"`
	garment.GaugeSpec
}

func (g *gaugeOnlyForm) check(*node) error { return checkGauge(g.GaugeSpec) }

// checkGauge refuses more than one of gauge, swatch and swatches, none of them, and too
// few or too many swatches.
func checkGauge(g garment.GaugeSpec) error {
	switch given, n := g.Keys(), len(g.Swatches); {
	case len(given) == 0:
		return fault("gauge", "", "the key is missing: write either a gauge or a swatch, or several swatches", nil)
	case len(given) > 1:
		return fault(given[0], "and "+strings.Join(given[1:], " and "), "write only one of them", nil)
	case g.Swatches != nil && (n < 1 || n > gauge.MaxSwatches):
		return fault("swatches", fmt.Sprintf("%d of them", n), fmt.Sprintf("1 to %d", gauge.MaxSwatches), nil)
	}
	return nil
}

// ReadGauge reads a document with a gauge, a swatch or several swatches and nothing else.
// It returns the same errors as [ReadSpec].
func ReadGauge(r io.Reader) (garment.GaugeSpec, error) {
	text, err := readBounded(r)
	if err != nil {
		return garment.GaugeSpec{}, sealed(err, garment.ErrSpec)
	}
	return ParseGauge(text)
}

// ParseGauge is [ReadGauge] for a document in memory.
func ParseGauge(text []byte) (garment.GaugeSpec, error) {
	root, err := open(text, GaugeFormat)
	if err != nil {
		return garment.GaugeSpec{}, sealed(err, garment.ErrSpec)
	}
	var form gaugeOnlyForm
	if err := decode(root, &form); err != nil {
		return garment.GaugeSpec{}, sealed(err, garment.ErrSpec)
	}
	return form.GaugeSpec, nil
}

// WriteGauge writes such a document, indented, with a line end after it. It writes
// nothing and returns the error of [ParseGauge] if it could not be read back.
func WriteGauge(w io.Writer, g garment.GaugeSpec) error {
	text, err := marshal(gaugeOnlyForm{Format: GaugeFormat, GaugeSpec: g})
	if err != nil {
		return sealed(err, garment.ErrSpec)
	}
	if _, err := ParseGauge(text); err != nil {
		return err
	}
	return write(w, text)
}
