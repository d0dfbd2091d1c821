package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/shaping/garment"
)

// gaugeText says the gauge as it was counted, and at which tension.
func gaugeText(p garment.Piece) string {
	text := inUnit(p.Gauge, p.Spec.Units)
	var tensions []string
	for _, swatch := range p.Spec.GaugeSpec().List() {
		if t := oneline.Of(swatch.Tension); t != "" && !slices.Contains(tensions, t) {
			tensions = append(tensions, t)
		}
	}
	if len(tensions) > 0 {
		text += ", tension " + strings.Join(tensions, "; ")
	}
	return text
}

// inUnit says a gauge in centimetres or inches.
func inUnit(g gauge.Gauge, u gauge.Unit) string {
	if u == gauge.Inch {
		return g.Format(gauge.Inch, 2)
	}
	return g.String()
}

// overText says the gauge over the length that gauges are compared by.
func overText(p garment.Piece) string {
	over := "10 cm"
	if p.Spec.Units == gauge.Inch {
		over = "4 in"
	}
	const places = 1
	length := gauge.MustParseLength(over)
	return fmt.Sprintf("over %s %s stitches and %s rows", over,
		p.Gauge.Stitches(length).Decimal(places).StringFixed(places), p.Gauge.Rows(length).Decimal(places).StringFixed(places))
}

// spreadText says how far several swatches lie apart, after a space; of one it says
// nothing.
func spreadText(p garment.Piece) string {
	if p.Gauge.Swatches() < 2 {
		return ""
	}
	const places = 1
	stitches, rows := p.Gauge.Spread(places)
	return fmt.Sprintf(" The swatches lie up to %s%s%% from this mean in stitches and %s%s%% in rows.",
		stitches.StringFixed(places), noBreak, rows.StringFixed(places), noBreak)
}

// doubtText says, after a space, that swatches lie too far apart to be a measure; what is
// to be done stands among the warnings of each piece.
func doubtText(p garment.Piece) string {
	if p.Gauge.Agree() {
		return ""
	}
	return " That is more than counting explains: knit, wash and rest them again."
}

// meanText says of several swatches, after a space, what can be read off one: their mean
// over the usual length, and how far they lie apart.
func meanText(p garment.Piece) string {
	if p.Gauge.Swatches() < 2 {
		return ""
	}
	return " " + oneline.Capital(overText(p)) + "." + spreadText(p)
}
