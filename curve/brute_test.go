package curve_test

import (
	"math"
	"slices"

	"example.com/walewise/shaping"
)

// The slow way to trace: look at every schedule. It shares nothing with the package
// but the definition, and works in floating point: areas that are equal come out within
// 1e-11 of each other for the small boxes here, far inside the 1e-7 that count as a tie.

// sketch is a drawing for the slow way.
type sketch struct {
	rows, stitches int
	f              func(t float64) float64 // stitches gone
	integral       func(t float64) float64 // of f over [0, t]
	inverse        func(c float64) float64 // where f reaches c
	corners        []float64               // where f is not smooth inside the box
	cost           [][]float64             // by row and level, see table
}

// table returns the sketch with the area of every row at every level.
func (s sketch) table() sketch {
	s.cost = make([][]float64, s.rows+1)
	for r := 1; r <= s.rows; r++ {
		for c := range s.stitches + 1 {
			s.cost[r] = append(s.cost[r], s.row(r, c))
		}
	}
	return s
}

func sketchLine(stitches, rows int) sketch {
	n, r := float64(stitches), float64(rows)
	return sketch{
		rows: rows, stitches: stitches,
		f:        func(t float64) float64 { return n * t / r },
		integral: func(t float64) float64 { return n * t * t / (2 * r) },
		inverse:  func(c float64) float64 { return r * c / n },
	}
}

func sketchEllipse(stitches, rows int) sketch {
	n, r := float64(stitches), float64(rows)
	return sketch{
		rows: rows, stitches: stitches,
		f: func(t float64) float64 { return n * math.Sqrt(max(0, 1-(1-t/r)*(1-t/r))) },
		integral: func(t float64) float64 {
			u := 1 - t/r
			return n * r / 2 * (math.Acos(u) - u*math.Sqrt(max(0, 1-u*u)))
		},
		inverse: func(c float64) float64 { return r * (1 - math.Sqrt(1-c*c/(n*n))) },
	}
}

// row returns the integral of |f - level| over row r.
func (s sketch) row(r, level int) float64 {
	from, to, c := float64(r-1), float64(r), float64(level)
	if s.stitches == 0 {
		return math.Abs(c)
	}
	crossing := to
	switch {
	case level <= 0:
		crossing = from
	case level <= s.stitches:
		crossing = min(max(s.inverse(c), from), to)
	}
	below := c*(crossing-from) - (s.integral(crossing) - s.integral(from))
	above := s.integral(to) - s.integral(crossing) - c*(to-crossing)
	return below + above
}

// answer is what the slow way finds.
type answer struct {
	steps []int // of the best schedule, stitches that go at each row counted from 1; nil if there is none
	area  float64
	// Schedules left by area, and of those by phrases, and of those by deviation.
	tied, phrases, deviation int
}

// bruteForce returns the best schedule.
func bruteForce(s sketch, rules shaping.Rules) answer {
	b := newBrute(s, rules)
	b.look(1, 0, 0, 0)
	return b.choose()
}

// bruteWordings returns the best schedule for each number of phrases that brings
// something, and nil if there is no schedule at all.
func bruteWordings(s sketch, rules shaping.Rules, steady bool) [][]int {
	b := newBrute(s, rules)
	b.steady = steady
	clear(b.bound)
	b.all = true
	b.look(1, 0, 0, 0)
	b.measure()
	all := b.found
	var words [][]int
	best := math.Inf(1)
	for phrases := 0; phrases <= 12; phrases++ {
		b.found = slices.DeleteFunc(slices.Clone(all), func(c candidate) bool { return c.phrases > phrases })
		if len(b.found) == 0 {
			continue
		}
		a := b.choose()
		if a.area < best-tie {
			words = append(words, a.steps)
			best = a.area
		}
	}
	return words
}

func newBrute(s sketch, rules shaping.Rules) *brute {
	b := &brute{sketch: s, apart: rules.Apart, rules: rules, first: firstAllowed(rules), least: math.Inf(1)}
	b.bound = make([]float64, s.rows+2)
	b.may = make([][]bool, s.rows+1)
	for r := s.rows; r >= 1; r-- {
		b.bound[r] = b.bound[r+1]
		if r >= b.first {
			b.bound[r] += slices.Min(s.cost[r])
		}
		b.may[r] = make([]bool, s.stitches+1)
		for step := range b.may[r] {
			b.may[r][step] = step == 0 || mayStand(rules, b.first, r, s.rows, step)
		}
	}
	b.steps = make([]int, s.rows+1)
	return b
}

type brute struct {
	sketch
	rules shaping.Rules
	apart int
	first int
	may   [][]bool  // by row and stitches of a step
	bound []float64 // no schedule has less area from this row on
	steps []int
	least float64
	found []candidate

	steady bool // no phrases of two distances in turn
	all    bool // keep all schedules
}

type candidate struct {
	steps     []int
	area      float64
	phrases   int
	deviation float64
}

const tie = 1e-7

// look tries every step at row r, the last step being at row last, 0 for none. Only
// what cannot be among the best any more is not looked at.
func (b *brute) look(r, gone, last int, area float64) {
	if area+b.bound[min(r, b.rows+1)] > b.least+tie && !b.all {
		return
	}
	if r > b.rows {
		if gone == b.stitches {
			b.least = min(b.least, area)
			b.found = append(b.found, candidate{steps: slices.Clone(b.steps), area: area})
		}
		return
	}
	for step := 0; step <= b.stitches-gone; step++ {
		then := last
		if step > 0 {
			if !b.may[r][step] || last > 0 && r-last < b.apart {
				continue
			}
			then = r
		}
		b.steps[r] = step
		here := area
		if r >= b.first {
			here += b.cost[r][gone+step]
		}
		b.look(r+1, gone+step, then, here)
	}
	b.steps[r] = 0
}

// choose applies the rules for ties, one after the other, to all that was found.
func (b *brute) choose() (a answer) {
	keep := func(key func(*candidate) float64, within float64) {
		least := math.Inf(1)
		for i := range b.found {
			least = min(least, key(&b.found[i]))
		}
		var kept []candidate
		for _, c := range b.found {
			if key(&c) <= least+within {
				kept = append(kept, c)
			}
		}
		b.found = kept
	}
	if len(b.found) == 0 {
		return a
	}
	keep(func(c *candidate) float64 { return c.area }, tie)
	a.tied = len(b.found)
	b.measure()
	keep(func(c *candidate) float64 { return float64(c.phrases) }, 0)
	a.phrases = len(b.found)
	keep(func(c *candidate) float64 { return c.deviation }, tie)
	a.deviation = len(b.found)
	for r := 1; r <= b.rows; r++ {
		keep(func(c *candidate) float64 { return float64(c.steps[r]) }, 0)
	}
	a.steps, a.area = b.found[0].steps, b.found[0].area
	return a
}

// measure finds the phrases and the deviation of all that was found.
func (b *brute) measure() {
	for i := range b.found {
		c := &b.found[i]
		c.phrases = fewestPhrases(c.steps, b.rules, b.first, b.steady)
		c.deviation = 0
		gone := 0
		for r := 1; r <= b.rows; r++ {
			gone += c.steps[r]
			c.deviation = max(c.deviation, math.Abs(b.f(float64(r)-0.5)-float64(gone)))
		}
	}
}

// firstAllowed looks for the first row where a step may stand.
func firstAllowed(rules shaping.Rules) int {
	for r := 1; ; r++ {
		onMain := r > rules.Phase && (r-1-rules.Phase)%max(rules.Every, 1) == 0
		onSingle := onMain
		if rules.Single != (shaping.Beat{}) {
			onSingle = r > rules.Single.Phase && (r-1-rules.Single.Phase)%max(rules.Single.Every, 1) == 0
		}
		switch {
		case rules.Base >= 2:
			if onMain {
				return r
			}
		case onSingle, onMain && rules.Most != 1 && (rules.SeveralUntil == 0 || r <= rules.SeveralUntil):
			return r
		}
	}
}

// mayStand reports whether a step of that many stitches may stand at row r.
func mayStand(rules shaping.Rules, first, r, rows, stitches int) bool {
	beat := shaping.Beat{Every: rules.Every, Phase: rules.Phase}
	if stitches == 1 && rules.Single != (shaping.Beat{}) {
		beat = rules.Single
	}
	if stitches > 1 && rules.SeveralUntil > 0 && r > rules.SeveralUntil {
		return false
	}
	most := rules.Most
	if most == 0 {
		most = math.MaxInt
	}
	if r == first {
		most = max(most, rules.Base)
	}
	return r >= first && r <= rows-rules.Plain && (r-1-beat.Phase)%max(beat.Every, 1) == 0 && r > beat.Phase && stitches <= most
}

// fewestPhrases tries every way to part the steps into phrases.
func fewestPhrases(steps []int, rules shaping.Rules, first int, steady bool) int {
	var rows, sizes []int
	for r, s := range steps {
		if own := rules.For(-s); s != 0 && !(own.Base > 0 && r == first && firstAllowed(own) == first) {
			rows, sizes = append(rows, r), append(sizes, s)
		}
	}

	var fewest func(from, before int) int
	fewest = func(from, before int) int {
		if from == len(rows) {
			return 0
		}
		least := math.MaxInt
		for to := from + 1; to <= len(rows); to++ {
			var distances []int
			if before > 0 {
				distances = append(distances, rows[from]-before)
			}
			equal := true
			for i := from + 1; i < to; i++ {
				distances = append(distances, rows[i]-rows[i-1])
				equal = equal && sizes[i] == sizes[from]
			}
			own := rules.For(-sizes[from])
			every := own.Every
			if sizes[from]*sizes[from] == 1 && own.Single != (shaping.Beat{}) {
				every = own.Single.Every
			}
			if equal && inPhrase(distances, max(every, 1), steady) {
				least = min(least, 1+fewest(to, rows[to-1]))
			}
		}
		return least
	}
	return fewest(0, 0) // the first phrase starts freely
}

// inPhrase reports whether these are the distances of one phrase.
func inPhrase(distances []int, every int, steady bool) bool {
	same, turns := true, len(distances) >= 3 && !steady
	for i := range distances {
		same = same && distances[i] == distances[0]
		if i >= 2 {
			turns = turns && distances[i] == distances[i-2]
		}
	}
	if turns {
		apart := distances[1] - distances[0]
		turns = apart == every || apart == -every
	}
	return same || turns
}

// sketchStair is the edge that stays at so many units of stitches in each row.
func sketchStair(units []int64, unit int64, stitches int) sketch {
	at := func(r int) float64 { return float64(units[r-1]) / float64(unit) }
	s := sketch{rows: len(units), stitches: stitches, f: func(t float64) float64 { return at(int(t) + 1) }}
	s.cost = make([][]float64, s.rows+1)
	for r := 1; r <= s.rows; r++ {
		for c := range stitches + 1 {
			s.cost[r] = append(s.cost[r], math.Abs(at(r)-float64(c)))
		}
	}
	return s
}
