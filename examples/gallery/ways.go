package main

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// ways is how an edge can be said.
type ways struct {
	Begins  string // where its first row lies
	Allowed string // what the technique allows
	List    []way
	Chosen  string // which one the piece follows, and why
}

// way is one of them.
type way struct {
	Phrases   int
	Words     string
	Shorthand string
	Area      string // between the drawn line and the stairs
	Deviation string // the farthest that the stairs lie off the line
	Followed  bool
}

// way returns a wording as it is printed.
func (p planned) way(phrases []shaping.Phrase, m curve.Measures) way {
	w := way{Phrases: len(phrases), Words: shaping.Words(phrases...), Shorthand: shorthand(phrases), Area: p.area(m.Area), Deviation: p.off(m)}
	if len(phrases) == 0 {
		w.Words, w.Shorthand = "no stitches go: the edge is upright", "–"
	}
	return w
}

// off says the greatest deviation in stitches and as a length.
func (p planned) off(m curve.Measures) string {
	width := p.piece.Gauge.Width(1).Millimetres().Mul(decimal.NewFromFloat(m.Deviation))
	return fmt.Sprintf("%.1f st, %s", m.Deviation, p.fine(gauge.Millimetres(width)))
}

func (p planned) ways() (ways, error) {
	if p.edge != nil {
		return p.drawnWays(), nil
	}
	steps, m, err := p.spread()
	if err != nil {
		return ways{}, err
	}
	one := p.way(steps.schedule.Phrases(), m)
	one.Followed = true
	return ways{Begins: p.begins(steps.first), Allowed: steps.allowed, List: []way{one}, Chosen: steps.chosen}, nil
}

func (p planned) drawnWays() ways {
	all := p.edge.wordings
	made := ways{Begins: p.begins(p.edge.FirstRow), Allowed: allowed(p.edge.rules, p.edge.methods)}
	if n := p.piece.Widths.BindOff; n > 0 {
		made.Begins += fmt.Sprintf(" In it %s are bound off at once at the underarm, which are not part of the curve.", plural.Stitches(n))
	}
	if p.example.edge == garment.ShoulderEdge {
		made.Allowed += closing
	}
	for i, w := range all.All {
		one := p.way(w.Phrases, w.Measures)
		one.Followed = i == p.edge.followed
		made.List = append(made.List, one)
	}
	followed, least := all.All[p.edge.followed], all.Trace
	switch {
	case len(followed.Phrases) == 0:
		made.Chosen = nothingGoes
	case len(all.All) == 1:
		made.Chosen = "The piece follows it: more phrases come no nearer."
	case p.example.edge == garment.CapEdge:
		made.Chosen = fmt.Sprintf("The sleeve follows the one in %s. The height of a cap is open as well: of the heights and ways whose edge has the length wanted, to 3 mm, it is the one of the fewest phrases.", inPhrases(len(followed.Phrases)))
	case len(followed.Phrases) == len(least.Phrases):
		made.Chosen = fmt.Sprintf("The piece follows the one in %s, the nearest of all: any with fewer has more than a twentieth more area.", inPhrases(len(followed.Phrases)))
	default:
		made.Chosen = fmt.Sprintf("The piece follows the one in %s: it is the one of the fewest whose area is no more than a twentieth above the least, that of %d.", inPhrases(len(followed.Phrases)), len(least.Phrases))
	}
	return made
}

const nothingGoes = "Nothing goes, so there is nothing to choose."

// closing says what becomes of the last group of a shoulder.
const closing = " The group at the neck comes last and is never held: from it the closing row is knitted over all."

func inPhrases(n int) string {
	if n == 1 {
		return "1 phrase"
	}
	return fmt.Sprintf("%d phrases", n)
}

// begins says which row of the piece is row 1 of the edge.
func (p planned) begins(row int) string {
	if p.piece.Work.Place == shaping.Hand {
		return fmt.Sprintf("Row 1 of the edge is row %d of the piece.", row)
	}
	return fmt.Sprintf("Row 1 of the edge is row %d of the piece: before it the counter shows %03d.", row, row-1)
}

// allowed says what the rules of a drawn edge allow.
func allowed(r shaping.Rules, by garment.Pair) string {
	several, single := r.BeatOf(2), r.BeatOf(1)
	switch {
	case by.Several == 0:
		return fmt.Sprintf("One stitch at a time is %s, at rows %s: the right-side rows.", gone(by.Single), rowsOf(single))
	case by.Several == shaping.Fashioned:
		return "One stitch or two at once are decreased, at any row but never at two rows that follow each other."
	case r.Single.IsZero():
		return fmt.Sprintf("Any number of stitches is %s at once, at rows %s.", gone(by.Several), rowsOf(several))
	case r.SeveralUntil > 0:
		return fmt.Sprintf("Two stitches or more are %s, here at %s; after that single ones are %s, at rows %s: a bind off above them would undo their edge.",
			gone(by.Several), rowsUpTo(several, r.SeveralUntil), gone(by.Single), rowsOf(single))
	}
	return fmt.Sprintf("Two stitches or more are %s at rows %s; single ones are %s at rows %s.", gone(by.Several), rowsOf(several), gone(by.Single), rowsOf(single))
}

func gone(m shaping.Method) string {
	switch m {
	case shaping.Hold:
		return "held"
	case shaping.BindOff:
		return "bound off"
	}
	return "decreased"
}

// rowsOf says the rows of a beat: "1, 3, 5 and so on".
func rowsOf(b shaping.Beat) string {
	first := b.Phase + 1
	return fmt.Sprintf("%d, %d, %d and so on", first, first+b.Every, first+2*b.Every)
}

// rowsUpTo says the rows of a beat up to the last: "row 3", "rows 2, 4".
func rowsUpTo(b shaping.Beat, last int) string {
	text, rows := "row", ""
	for row := b.Phase + 1; row <= last; row += b.Every {
		if rows != "" {
			text, rows = "rows", rows+", "
		}
		rows += fmt.Sprint(row)
	}
	return text + " " + rows
}

// spread is an edge whose steps are spread evenly and follow no drawing.
type spread struct {
	schedule        shaping.Schedule
	first           int // its first row in the piece
	allowed, chosen string
}

// spread returns the steps of an edge that is not drawn, and how far they lie off the
// straight line.
func (p planned) spread() (spread, curve.Measures, error) {
	switch p.example.edge {
	case garment.ShoulderEdge:
		return p.shoulderSpread()
	case garment.ArmholeEdge:
		return spread{first: p.piece.Heights.Underarm + 1, chosen: nothingGoes}, curve.Measures{}, nil
	}
	for _, e := range p.piece.Edges {
		if e.Name == p.example.edge {
			line, err := curve.ParsePath(e.Path)
			if err != nil {
				return spread{}, curve.Measures{}, err
			}
			m, err := curve.Measure(line, e.Stitches, e.Rows, shaping.Rules{}, e.Schedule)
			return spread{e.Schedule, e.FirstRow, "One stitch at a time is increased, never at two rows that follow each other.",
				"The sleeve follows the division rule, which gives the same at both edges and ends with plain rows."}, m, err
		}
	}
	return spread{}, curve.Measures{}, fmt.Errorf("%s has no edge %s", p.piece.Name(), p.example.edge)
}

// shoulderSpread returns the equal groups of a shoulder but the last.
func (p planned) shoulderSpread() (spread, curve.Measures, error) {
	w, h, g := p.piece.Widths, p.piece.Heights, p.piece.Gauge
	groups := p.groups()
	var steps shaping.Schedule
	for i, stitches := range groups[:len(groups)-1] {
		steps = append(steps, shaping.Step{Row: 1 + 2*i, Stitches: -stitches, Method: shaping.Hold})
	}
	line, err := curve.Line(g.Width(w.Shoulder), g.Height(h.Drop))
	if err != nil {
		return spread{}, curve.Measures{}, err
	}
	m, err := curve.Measure(line, w.Shoulder, h.Drop, shaping.Rules{}, steps)
	return spread{
		steps, h.Tip(), "Any number of stitches is held at once, at rows 1, 3, 5 and so on." + closing,
		fmt.Sprintf("The piece follows the groups; %s are left at the neck.", plural.Stitches(groups[len(groups)-1])),
	}, m, err
}
