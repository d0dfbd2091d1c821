package gen

import (
	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

// Work generates works on the panels of [Tree], with a row for every row of
// every panel, its actions in the form that the steps ask for, and the true
// ledger. Sides, wraps and the order of actions are random: the work is well
// formed but need not be one that can be knitted.
func Work() *rapid.Generator[shaping.Work] {
	return rapid.Custom(func(t *rapid.T) shaping.Work {
		w := shaping.Work{
			Name:   rapid.SampledFrom([]string{shaping.Front, shaping.Back, shaping.LeftSleeve, shaping.RightSleeve, shaping.LeftFront, shaping.RightFront}).Draw(t, "name"),
			Place:  rapid.SampledFrom([]shaping.Place{shaping.Bed, shaping.Hand}).Draw(t, "place"),
			Facing: rapid.SampledFrom([]shaping.Facing{shaping.PurlSide, shaping.KnitSide}).Draw(t, "facing"),
			Panels: Tree().Draw(t, "panels"),
		}
		for _, p := range w.Panels {
			w.Ledger = w.Ledger.Add(p.Ledger())
			for row := p.FirstRow; row <= p.LastRow; row++ {
				w.Rows = append(w.Rows, workRow(t, p, row))
			}
		}
		// Counted twice so far: what the panels took over from their parents.
		for _, p := range w.Panels[1:] {
			w.Ledger.CastOn -= p.Needles.Len()
			w.Ledger.Live -= p.Needles.Len()
		}
		return w
	})
}

func workRow(t *rapid.T, p shaping.Panel, row int) shaping.Row {
	side := rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right})
	r := shaping.Row{Row: row, Panel: p.Name, From: side.Draw(t, "from"), Knit: p.InWork(row)}
	if row == p.FirstRow {
		if p.Parent == "" {
			r.Before = append(r.Before, shaping.Action{Do: shaping.DoCastOn, Needles: p.Needles})
		} else {
			r.Before = append(r.Before,
				shaping.Action{Do: shaping.DoCarriage, Side: r.From},
				shaping.Action{Do: shaping.DoCounter, Counter: row - 1})
		}
	}
	before := p.InWork(row - 1)
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		step, ok := p.Steps(edge).At(row)
		if !ok {
			continue
		}
		gone := before.Edge(edge, -step.Stitches)
		come := before.Beyond(edge, step.Stitches)
		switch {
		case step.Method == shaping.Hold:
			r.Before = append(r.Before, shaping.Action{Do: shaping.DoHold, Needles: gone})
			inmost := gone.End(edge.Opposite())
			r.After = append(r.After, shaping.Action{Do: shaping.DoWrap, Needles: shaping.Span{First: inmost, Last: inmost}})
		case step.Method == shaping.BindOff:
			r.Before = append(r.Before, shaping.Action{Do: shaping.DoBindOff, Needles: gone, Separate: rapid.Bool().Draw(t, "separate")})
		case step.Method == shaping.CastOn:
			r.Before = append(r.Before, shaping.Action{Do: shaping.DoCastOnEdge, Needles: come})
		case step.Stitches < 0:
			r.Before = append(r.Before, shaping.Action{Do: shaping.DoShift, Needles: before.Edge(edge, 3), Toward: edge.Opposite()})
		default:
			r.Before = append(r.Before, shaping.Action{Do: shaping.DoShift, Needles: before.Edge(edge, 3), Toward: edge})
		}
	}
	return r
}
