package gen

import (
	"pgregory.net/rapid"

	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/order"
)

// Outline generates pieces that can be worked on a bed or in the hand: a body, shaped
// or not, and two halves that are each other's reflection, every step at a row that
// its method allows; in the hand what the second half holds or binds off is one row
// later. Body and halves are shaped by every method, the shoulder may begin in the
// body, and the carriage starts from either side.
func Outline() *rapid.Generator[order.Outline] {
	return rapid.Custom(func(t *rapid.T) order.Outline {
		m := &outlineMaker{
			treeMaker: treeMaker{t: t},
			place:     rapid.SampledFrom([]shaping.Place{shaping.Bed, shaping.Hand}).Draw(t, "place"),
			carriage:  shaping.Right,
			shoulder:  rapid.SampledFrom([]shaping.Method{shaping.Hold, shaping.BindOff, shaping.Fashioned}).Draw(t, "shoulder"),
		}
		if m.place == shaping.Bed {
			m.carriage = rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right}).Draw(t, "carriage")
		}
		body := m.body()
		endings := rapid.SampledFrom([]order.Ending{order.OnWaste, order.BoundOff})
		return order.Outline{
			Name: "front", Place: m.place, Carriage: m.carriage,
			Panels: append(shaping.Tree{body}, m.halves(body)...),
			Centre: endings.Draw(t, "centre"), Top: endings.Draw(t, "top"),
		}
	})
}

// fewest is how many stitches stay in work in a body before it is split.
const fewest = 10

type outlineMaker struct {
	treeMaker
	place    shaping.Place
	carriage shaping.Side   // where row 1 starts
	shoulder shaping.Method // at the outer edges of the halves
	heldBody int            // stitches the body puts on hold at each edge
}

// body draws a body whose two edges are shaped by the same sizes, each at rows of
// its own.
func (m *outlineMaker) body() shaping.Panel {
	p := shaping.Panel{
		Name: shaping.Body, FirstRow: 1,
		Needles: shaping.Centred(m.draw("cast on", fewest, 70)),
	}
	row, inWork := 1, p.Needles.Len()
	several := rapid.SampledFrom([]shaping.Method{shaping.BindOff, shaping.CastOn}).Draw(m.t, "several")
	run := func(method shaping.Method, coming bool, most int) (total int) {
		for range m.draw("steps", 0, 4) {
			size := m.draw("size", 1, most)
			if !coming {
				if inWork-2*size < fewest {
					return total
				}
				size = -size
			}
			row += 2 * m.draw("plain", 0, 2)
			// Steps where a row ends and where it starts fall on two neighbouring rows.
			for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
				rules := shaping.RulesFor(method, edge, m.carriage, shaping.Bed)
				step := shaping.Step{Row: row - 1 + rules.FirstRow(), Stitches: size, Method: method}
				if edge == shaping.Left {
					p.Left = append(p.Left, step)
				} else {
					p.Right = append(p.Right, step)
				}
			}
			row += 2
			inWork += 2 * size
			total += size
		}
		return total
	}
	run(several, several == shaping.CastOn, 6)
	run(shaping.Fashioned, rapid.Bool().Draw(m.t, "increase"), 1)
	if m.shoulder == shaping.Hold {
		m.heldBody = -run(shaping.Hold, false, 5)
	}
	p.LastRow = row + m.draw("rows", 0, 6)
	return p
}

// halves draws the half that goes first and reflects it.
func (m *outlineMaker) halves(body shaping.Panel) shaping.Tree {
	first := m.carriage // where the row after the body starts
	if body.Rows()%2 != 0 {
		first = first.Opposite()
	}
	inWork := body.InWork(body.LastRow)
	most := inWork.Len()/2 - 1
	size := m.draw("half", 2, most)
	p := shaping.Panel{
		Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: body.LastRow + 1,
		Needles: inWork.Edge(first, size).Moved(first, m.heldBody),
	}
	if first == shaping.Right {
		p.Name = shaping.RightHalf
	}
	rows := m.draw("rows of a half", 2, 20)
	if m.shoulder == shaping.Hold {
		rows += rows % 2 // the closing row ends at the outer edge
	}
	p.LastRow = body.LastRow + rows
	left := size
	edge := func(method shaping.Method, side shaping.Side, last int) shaping.Schedule {
		var s shaping.Schedule
		rules := shaping.RulesFor(method, side, first, shaping.Bed)
		for row := rules.FirstRow(); row <= last; row += 2 * m.draw("apart", 1, 3) {
			size := m.draw("size", 1, 4)
			if method == shaping.Fashioned {
				size = 1
			}
			if left-size < 1 {
				break
			}
			left -= size
			s = append(s, shaping.Step{Row: body.LastRow + row, Stitches: -size, Method: method})
		}
		return s
	}
	neck := edge(rapid.SampledFrom([]shaping.Method{shaping.Hold, shaping.BindOff, shaping.Fashioned}).Draw(m.t, "neck"), first.Opposite(), rows)
	outer := edge(m.shoulder, first, rows-2)
	p.Left, p.Right = neck, outer
	if first == shaping.Left {
		p.Left, p.Right = outer, neck
	}
	second := mirror.AxisFor(body.Needles.Len()).Panel(p)
	if m.place == shaping.Hand {
		second = later(second, m.heldBody > 0)
	}
	return shaping.Tree{p, second}
}

// later moves what is held and bound off by one row, and with it, or for a closing row
// over what the body holds, the end of the panel.
func later(p shaping.Panel, closing bool) shaping.Panel {
	for _, steps := range []shaping.Schedule{p.Left, p.Right} {
		for i := range steps {
			if m := steps[i].Method; m == shaping.Hold || m == shaping.BindOff {
				steps[i].Row++
				closing = true
			}
		}
	}
	if closing {
		p.LastRow++
	}
	return p
}
