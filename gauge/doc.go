// Package gauge holds lengths, the gauge of a swatch, and the rules by which lengths become
// whole stitches and whole rows, for programs that make patterns out of measurements.
//
//	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), gauge.MustParseLength("10 cm"))
//	if err != nil {
//		return err
//	}
//	stitches := g.Stitches(gauge.MustParseLength("54 cm")).Round(gauge.Rounding{}) // 119
//
// # Model
//
// A [Length] is an exact decimal number of millimetres; 1 inch is 25.4 mm exactly
// (international inch, 1959). A [Gauge] keeps the stitches and rows that were counted
// and the lengths they were counted over, never a quotient; the [Mean] of several
// swatches keeps the sums and how far the swatches lie apart. A [Count] is an exact,
// possibly fractional number of stitches or rows. A [Rounding] makes it whole, and
// [RoundTogether] makes several counts whole that must add up. A count says nothing of
// whether it is one of stitches or of rows; an int is one of whole stitches or whole rows.
//
// # Exactness
//
// No binary fraction decides a rounding: lengths stay decimal and counts rational
// until a whole number is chosen. Ties go away from zero, so that reflected pieces
// round alike; 0 between two numbers goes to the larger one. The way back,
// [Gauge.Width] and [Gauge.Height], rounds once, to a millionth of a millimetre.
//
// # Errors
//
// Texts that do not read as a length give a [*ParseError], which wraps [ErrSyntax],
// [ErrUnit] or [ErrRange]; all else gives an [*Error], which wraps one of these or
// [ErrParity]. These kinds are this package's own: gauge.ErrRange is not shaping.ErrRange,
// while those of package curve are the ones of package shaping. Documents are read strictly:
// a key that is unknown, missing or stands twice is an [*Error] that names it.
//
// Computing with lengths and counts is never an error. Zero values are harmless: the zero
// Gauge, which is no gauge, turns every length into no stitches. [MustParseLength] panics.
//
// # Complexity
//
// Lengths and counts are computed with exactly, so time and memory grow with their digits;
// with those of a garment a method takes about a microsecond. [RoundTogether] takes a few
// microseconds for the parts of a body, but has no bound: sixteen parts can take a fifth of a
// second, and parts whose Times run into the hundred thousands many seconds.
//
// # What it does not do
//
// It does not know edges, panels or how anything is knitted.
package gauge
