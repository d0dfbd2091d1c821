package curve

import (
	"fmt"
	"sort"
	"strings"

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
		{"severalUntil", 0, false, func(r *shaping.Rules) *int { return &r.SeveralUntil }},
	}
}

// side is the rules for stitches that go, or those for stitches that come.
type side struct {
	prefix string
	of     func(*shaping.Rules) *shaping.Rules
}

func sidesOf(r shaping.Rules) []side {
	sides := []side{{"", func(r *shaping.Rules) *shaping.Rules { return r }}}
	if r.Coming != nil {
		sides = append(sides, side{"coming.", func(r *shaping.Rules) *shaping.Rules { return r.Coming }})
	}
	return sides
}

// loose is one rule of one side, as asked for.
type loose struct {
	rule
	side  side
	value int
}

func (l loose) name() string { return l.side.prefix + l.rule.name }

// with returns rules with another value of one.
func (l loose) with(r shaping.Rules, value int) shaping.Rules {
	r = ownRules(r)
	*l.of(l.side.of(&r)) = value
	return r
}

// ownRules returns rules that share nothing with those that were given.
func ownRules(r shaping.Rules) shaping.Rules {
	if r.Coming != nil {
		coming := *r.Coming
		r.Coming = &coming
	}
	return r
}

// looseRules returns the rules that hold for the steps of the drawing.
func (d Drawing) looseRules(r shaping.Rules) []loose {
	var list []loose
	for n, side := range sidesOf(r) {
		if !d.turns && n == 0 && d.toward() < 0 && r.Coming != nil || !d.turns && n == 1 && d.toward() > 0 {
			continue
		}
		for _, rule := range ruleList() {
			own := side.of(&r)
			if !rule.forSingle || !own.Single.IsZero() {
				list = append(list, loose{rule, side, *rule.of(own)})
			}
		}
	}
	return list
}

// works reports whether a request can be traced.
func (d Drawing) works(q Request) bool {
	made := Drawing{d: d.d, stitches: q.Stitches, turns: d.turns}
	rules, err := made.rules(q.Rules)
	if err != nil {
		return false
	}
	net := made.levels()
	least, most := 0, net
	if d.turns {
		least, most = d.d.levels(rules)
	}
	return feasible(net, q.Rows, rules, least, most)
}

// infeasible returns the error for rules that leave no way. It blames the first rule
// without which there would be one, and names requests that work: each such rule loosened as
// little as need be, more rows, fewer stitches; and if no rule alone is to blame, several
// loosened together.
func (d Drawing) infeasible(r shaping.Rules) error {
	q := Request{d.stitches, d.d.rows, ownRules(r)}
	e := &Error{
		What: "stitches", Given: fmt.Sprintf("%d in %d rows", q.Stitches, q.Rows),
		Want: "the rules together leave no way", Asked: q, Err: ErrInfeasible,
	}
	for _, l := range d.looseRules(r) {
		if !d.works(Request{q.Stitches, q.Rows, l.with(r, l.free)}) {
			continue
		}
		if e.Rule == "" {
			e.Rule = l.name()
			e.Want = fmt.Sprintf("the rule %s %d leaves no way", e.Rule, l.value)
		}
		e.Nearest = append(e.Nearest, Request{q.Stitches, q.Rows, d.loosened(q, l)})
	}
	if e.Rule == "" {
		together, names := d.together(q)
		e.Nearest = append(e.Nearest, together)
		e.Want = fmt.Sprintf("the rules %s together leave no way", strings.Join(names, " and "))
	}
	if !d.turns {
		e.Nearest = append(e.Nearest, d.otherSizes(q)...)
	}
	return e
}

// otherSizes returns the nearest requests of more rows and of fewer stitches that work.
func (d Drawing) otherSizes(q Request) []Request {
	var sizes []Request
	if by, ok := nearest(MaxRows-q.Rows, func(by int) bool {
		return d.works(Request{q.Stitches, q.Rows + by, q.Rules})
	}); ok {
		sizes = append(sizes, Request{q.Stitches, q.Rows + by, q.Rules})
	}
	fewer := func(by int) Request { return Request{q.Stitches - by*sign(q.Stitches), q.Rows, q.Rules} }
	if by, ok := nearest(abs(q.Stitches)-1, func(by int) bool { return d.works(fewer(by)) }); ok {
		sizes = append(sizes, fewer(by))
	}
	return sizes
}

// loosened returns the rules of a request with one of them loosened as little as need be;
// without it the request works.
func (d Drawing) loosened(q Request, l loose) shaping.Rules {
	toward, count := -1, l.value-l.free
	switch l.rule.name {
	case "most":
		toward, count = 1, max(abs(q.Stitches)-l.value, 0)
	case "severalUntil":
		toward, count = 1, max(q.Rows-l.value, 0)
	}
	try := func(by int) shaping.Rules { return l.with(q.Rules, l.value+toward*by) }
	by, ok := nearest(count, func(by int) bool { return d.works(Request{q.Stitches, q.Rows, try(by)}) })
	if !ok {
		return l.with(q.Rules, l.free)
	}
	return try(by)
}

// together returns a request that works with several rules loosened, as few and as little
// as need be, and their names. Without any rule each request works.
func (d Drawing) together(q Request) (Request, []string) {
	list, free := d.looseRules(q.Rules), q
	for _, l := range list {
		free.Rules = l.with(free.Rules, l.free)
	}
	// Back to what was asked, one rule after the other, where that still works.
	var blocking []loose
	for _, l := range list {
		if kept := (Request{q.Stitches, q.Rows, l.with(free.Rules, l.value)}); d.works(kept) {
			free = kept
		} else {
			blocking = append(blocking, l)
		}
	}
	var names []string
	for _, l := range blocking {
		asked := Request{q.Stitches, q.Rows, l.with(free.Rules, l.value)}
		free.Rules = d.loosened(asked, l)
		names = append(names, fmt.Sprintf("%s %d", l.name(), l.value))
	}
	return free, names
}

// nearest returns the first number from 1 to most that works. It takes for granted that
// all greater ones work too; where that fails it may miss the first, or find none.
func nearest(most int, works func(by int) bool) (by int, ok bool) {
	// Ever longer strides up to the first that works, then the gap before it.
	fails, by := 0, 1
	for by < most && !works(by) {
		fails, by = by, 2*by
	}
	by = min(by, most)
	if by < 1 {
		return 0, false
	}
	by = fails + 1 + sort.Search(by-fails-1, func(i int) bool { return works(fails + 1 + i) })
	return by, works(by)
}
