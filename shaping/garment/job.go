package garment

import (
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// job is what all pieces of a garment have in common.
type job struct {
	spec  Spec
	gauge gauge.Gauge
	place shaping.Place

	carriage shaping.Side // where row 1 starts
	begun    *begun       // what is on the needles of the piece already, nil for one that is not begun
}

// newJob returns the job of a spec whose lengths and choices are in range.
func newJob(s Spec) (job, error) {
	g, err := s.GaugeSpec().Measured()
	if err != nil {
		return job{}, err
	}
	s = s.Clone() // so that what is planned does not change with what the caller keeps
	return job{spec: s, gauge: g, place: s.Setup.place(), carriage: s.Setup.carriage()}, check(s)
}

// start returns where row n of the body starts.
func (j job) start(row int) shaping.Side {
	if row%2 == 1 {
		return j.carriage
	}
	return j.carriage.Opposite()
}

// tiedFirst returns the edge of the body where a step by the method, which is tied to one
// end of a row, can stand at row.
func (j job) tiedFirst(m shaping.Method, row int) shaping.Side {
	starts := j.start(row)
	if m == shaping.Hold {
		return starts.Opposite()
	}
	return starts
}

// wide is a width that was asked for and has become count stitches.
func (j job) wide(name string, asked gauge.Length, count int, why string) Size {
	knitted := j.gauge.Width(count)
	return Size{
		Name: name, Asked: asked, Knitted: knitted, PlusMinus: j.gauge.Tolerance().Width(knitted),
		Count: count, Counted: "stitches", Why: forced(j.gauge.Stitches(asked), count, why),
	}
}

// high is a height that was asked for and has become count rows.
func (j job) high(name string, asked gauge.Length, count int, why string) Size {
	knitted := j.gauge.Height(count)
	return Size{
		Name: name, Asked: asked, Knitted: knitted, PlusMinus: j.gauge.Tolerance().Height(knitted),
		Count: count, Counted: "rows", Why: forced(j.gauge.Rows(asked), count, why),
	}
}

// forced returns why if count is not the nearest whole number to what was wanted.
func forced(want gauge.Count, count int, why string) string {
	if gauge.Whole(count).Sub(want).Abs().Cmp(gauge.Whole(1).Div(2)) <= 0 {
		return ""
	}
	return why
}
