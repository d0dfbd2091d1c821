package bodies

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
)

// Made returns bodies that nobody has, half of them men, the same ones each time. All
// lengths of one lie at one place among the percentiles, so that they belong together, and
// each girth and breadth at a place of its own near another one.
func Made(n int) ([]Body, error) {
	table, err := Percentiles()
	if err != nil {
		return nil, err
	}
	draw := rand.New(rand.NewPCG(1, 2))
	list := make([]Body, n)
	for i := range list {
		from := table[i%2*len(known) : (i%2+1)*len(known)]
		tall, stout := draw.Float64(), draw.Float64()
		const apart = 0.2 // two girths of one body, at most
		b := &list[i]
		b.Name = fmt.Sprintf("made %d", i)
		for _, c := range slices.Concat(lengths, heights) {
			*c.of(b) = between(from, c, tall)
		}
		for _, c := range girths {
			about := stout + float64((draw.Float64()-0.5)*apart)
			*c.of(b) = between(from, c, min(max(about, 0), 1))
		}
	}
	return list, nil
}

// known are the places of the percentiles.
var known = []float64{0, 0.05, 0.5, 0.95, 1}

// between returns a measurement at a place from 0 to 1, as if it grew evenly between the
// percentiles, in whole millimetres.
func between(table []Body, c column, place float64) gauge.Length {
	i := 1
	for known[i] < place {
		i++
	}
	low, high := c.of(&table[i-1]).Millimetres(), c.of(&table[i]).Millimetres()
	part := decimal.NewFromFloat((place - known[i-1]) / (known[i] - known[i-1]))
	return gauge.Millimetres(low.Add(high.Sub(low).Mul(part)).Round(0))
}
