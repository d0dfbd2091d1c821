// Command embed plans tea cosies: a small pattern tool that imports walewise.
//
//	go run ./examples/embed
//
// A cosy is one flat piece. A wall goes round the pot, and on it stand two domes, which are
// sewn together above handle and spout and gathered round the knob of the lid.
package main

import (
	"errors"
	"fmt"
	"log"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// Pot is a teapot as a tape measure sees it.
type Pot struct {
	Name  string
	Girth gauge.Length // round the belly
	Knob  gauge.Length // round the knob of the lid
	Wall  gauge.Length // from the table to where handle and spout begin
	Dome  gauge.Length // from there to the knob, over the belly
}

// Cosy is a plan for a pot, and what became of it on the needles.
type Cosy struct {
	Pot   Pot
	Gauge gauge.Gauge
	Work  shaping.Work
	Cloth bed.Cloth
}

// ErrLoose: whole stitches do not come near enough to the pot.
var ErrLoose = errors.New("does not sit on the pot")

// NewCosy plans a cosy, has it knitted by the judge, and checks that it sits on the pot.
func NewCosy(pot Pot, swatch gauge.Swatch) (Cosy, error) {
	g, err := swatch.Gauge()
	if err != nil {
		return Cosy{}, err
	}
	dome := g.Stitches(pot.Girth).Div(2).Round(gauge.Rounding{})
	left := g.Stitches(pot.Knob).Div(2).Round(gauge.SameParity(dome, gauge.Up))
	wall := g.Rows(pot.Wall).Round(gauge.Even(gauge.Nearest)) // so that the carriage comes back
	rows := g.Rows(pot.Dome).Round(gauge.Rounding{})
	panels, err := cosyPanels(dome, (dome-left)/2, wall, rows)
	if err != nil {
		return Cosy{}, fmt.Errorf("dome: %w", err)
	}
	cosy := Cosy{Pot: pot, Gauge: g}
	outline := order.Outline{Name: "cosy", Place: shaping.Bed, Carriage: shaping.Right, Panels: panels}
	if cosy.Work, err = order.Arrange(outline); err != nil {
		return Cosy{}, err
	}
	if cosy.Cloth, err = bed.Knit(cosy.Work); err != nil {
		return Cosy{}, err
	}
	return cosy, cosy.sits()
}

// cosyPanels returns the wall and the two domes, each with both edges shaped alike.
func cosyPanels(dome, gone, wall, rows int) (shaping.Tree, error) {
	arch, err := curve.ParsePath("M 0 100 Q 0 50 100 0") // a parabola, upright at its foot
	if err != nil {
		return nil, err
	}
	drawing, err := arch.In(gone, rows)
	if err != nil {
		return nil, err
	}
	rules := shaping.RulesFor(shaping.Fashioned, shaping.Left, shaping.Right, shaping.Bed)
	rules.Most = 2 // double decreases too
	wordings, err := drawing.Wordings(rules, curve.Phrasing{})
	if err != nil {
		return nil, err
	}
	edge := wordings.Default().Schedule.By(shaping.Fashioned, shaping.Fashioned).Shifted(wall)
	all := shaping.Centred(2 * dome)
	right := shaping.Panel{
		Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: wall + 1, LastRow: wall + rows,
		Needles: all.Edge(shaping.Right, dome), Left: edge, Right: edge,
	}
	body := shaping.Panel{Name: shaping.Body, FirstRow: 1, LastRow: wall, Needles: all}
	return shaping.Tree{body, right, mirror.AxisFor(2 * dome).Panel(right)}, nil
}

// sits checks the cloth against the pot: a finger's breadth more or less is no harm.
func (c Cosy) sits() error {
	round := c.Gauge.Width(c.Cloth.Needles().Len())
	if round.Sub(c.Pot.Girth).Abs().Cmp(gauge.MustParseLength("1 cm")) > 0 {
		return fmt.Errorf("%s round: %w", round.Format(gauge.Centimetre, 1), ErrLoose)
	}
	return nil
}

// print prints the pattern and the cloth, a character for 2 stitches and 5 rows.
func (c Cosy) print() {
	wall, dome := c.Work.Panels[0], c.Work.Panels[1]
	fmt.Printf("  Cast on %d, carriage at the right, and knit %d rows.\n", wall.Needles.Len(), wall.Rows())
	fmt.Printf("  Then two domes of %d stitches and %d rows, first the right one. Decrease at both edges, %s.\n", dome.Needles.Len(), dome.Rows(), dome.Left.Words())
	fmt.Printf("  Gather the last %d of each. Knitted by the judge: %v.\n", dome.InWork(dome.LastRow).Len(), c.Cloth.Ledger())
	for row := dome.LastRow; row > 0; row -= 5 {
		for needle, height := range c.Cloth.Wales() {
			if needle%2 == 0 {
				fmt.Print(map[bool]string{true: "#", false: "."}[height >= row])
			}
		}
		fmt.Println()
	}
}

// plan prints the cosy of a pot, or why there is none and what would work.
func plan(pot Pot, swatch gauge.Swatch) {
	fmt.Printf("%s, %s round\n", pot.Name, pot.Girth)
	cosy, err := NewCosy(pot, swatch)
	blocked, ok := errors.AsType[*curve.Error](err)
	switch {
	case err == nil:
		cosy.print()
	case errors.Is(err, ErrLoose):
		fmt.Println("  Take a finer yarn:", err)
	case ok && errors.Is(err, curve.ErrInfeasible):
		fmt.Printf("  No dome takes off %d stitches at an edge in %d rows.", blocked.Asked.Stitches, blocked.Asked.Rows)
		for _, other := range blocked.Nearest {
			if other.Rules == blocked.Asked.Rules { // worked as asked, with other numbers
				fmt.Printf(" One takes off %d in %d.", other.Stitches, other.Rows)
			}
		}
		fmt.Println()
	default:
		log.Fatal(err)
	}
}

func main() {
	cm := gauge.MustParseLength
	wool := gauge.Swatch{Stitches: 36, Width: cm("18.3 cm"), Rows: 50, Height: cm("18.1 cm")}
	rug := gauge.Swatch{Stitches: 13, Width: cm("24.5 cm"), Rows: 16, Height: cm("22 cm")}
	breakfast := Pot{"The breakfast pot", cm("47 cm"), cm("11 cm"), cm("5 cm"), cm("15 cm")}
	plan(breakfast, wool)
	plan(Pot{"The squat pot", cm("58 cm"), cm("11 cm"), cm("4 cm"), cm("7 cm")}, wool)
	plan(breakfast, rug)
}
