package curve

import (
	"fmt"
	"sort"

	"example.com/walewise/shaping"
)

// rule is one of the rules by name, and the value that does not restrict.
type rule struct {
	name      string
	free      int
	forSingle bool // a rule of the rows for single stitches, if they have their own
	of        func(*shaping.Rules) *int
}

// ruleList returns the rules in the order in which they are tried as the one that
// blocks a request.
func ruleList() []rule {
	return []rule{
		{"most", 0, false, func(r *shaping.Rules) *int { return &r.Most }},
		{"apart", 1, false, func(r *shaping.Rules) *int { return &r.Apart }},
		{"every", 1, false, func(r *shaping.Rules) *int { return &r.Every }},
		{"single.every", 1, true, func(r *shaping.Rules) *int { return &r.Single.Every }},
		{"plain", 0, false, func(r *shaping.Rules) *int { return &r.Plain }},
		{"phase", 0, false, func(r *shaping.Rules) *int { return &r.Phase }},
		{"single.phase", 0, true, func(r *shaping.Rules) *int { return &r.Single.Phase }},
	}
}

// works reports whether the request can be traced.
func (q Request) works() bool {
	return feasible(abs(q.Stitches), q.Rows, newRules(q.Rules.For(-q.Stitches), shaping.Rules{}, false))
}

// with returns the request with another value of a rule for its own steps.
func (q Request) with(r rule, value int) Request {
	if q.Stitches < 0 && q.Rules.Coming != nil {
		coming := *q.Rules.Coming
		*r.of(&coming) = value
		q.Rules.Coming = &coming
	} else {
		*r.of(&q.Rules) = value
	}
	return q
}

// infeasible returns the error for a request that does not work. It blames the first
// rule without which it would work, and names requests that do: that rule loosened as
// little as need be, more rows, fewer stitches.
func (d Drawing) infeasible(r shaping.Rules) error {
	q := Request{d.stitches, d.d.rows, r}
	e := &Error{
		What:  "stitches",
		Given: fmt.Sprintf("%d in %d rows", q.Stitches, q.Rows),
		Want:  "the rules together leave no way",
		Err:   ErrInfeasible,
	}
	rules := q.Rules.For(-q.Stitches)
	for _, r := range ruleList() {
		if r.forSingle && rules.Single.IsZero() {
			continue
		}
		if value := *r.of(&rules); q.with(r, r.free).works() {
			e.Rule = r.name
			e.Want = fmt.Sprintf("the rule %s %d leaves no way", r.name, value)
			e.Nearest = append(e.Nearest, q.loosened(r, value))
			break
		}
	}
	if near, ok := nearest(MaxRows-q.Rows, func(by int) Request {
		return Request{q.Stitches, q.Rows + by, q.Rules}
	}); ok {
		e.Nearest = append(e.Nearest, near)
	}
	fewer := func(by int) Request { return Request{q.Stitches - by*sign(q.Stitches), q.Rows, q.Rules} }
	if near, ok := nearest(abs(q.Stitches)-1, fewer); ok {
		e.Nearest = append(e.Nearest, near)
	}
	if len(e.Nearest) == 0 {
		e.Nearest = []Request{fewer(abs(q.Stitches))} // no stitches and no steps
	}
	return e
}

// loosened returns the request with the rule loosened from value as little as need
// be; without the rule it works.
func (q Request) loosened(r rule, value int) Request {
	toward, count := -1, value-r.free
	if r.name == "most" {
		toward, count = 1, abs(q.Stitches)-value
	}
	near, ok := nearest(count, func(by int) Request { return q.with(r, value+toward*by) })
	if !ok {
		near = q.with(r, r.free)
	}
	return near
}

// nearest returns the first request that works of those that differ by 1, 2, ...,
// most from one that does not. It takes for granted that all further ones work too;
// where that fails it may miss the first, or find none.
func nearest(most int, differing func(by int) Request) (q Request, ok bool) {
	// Ever longer strides up to the first that works, then the gap before it.
	fails, by := 0, 1
	for by < most && !differing(by).works() {
		fails, by = by, 2*by
	}
	by = min(by, most)
	if by < 1 {
		return q, false
	}
	by = fails + 1 + sort.Search(by-fails-1, func(i int) bool { return differing(fails + 1 + i).works() })
	q = differing(by)
	return q, q.works()
}
