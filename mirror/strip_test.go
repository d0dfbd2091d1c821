package mirror_test

import (
	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

// strip draws a body without a split that can be knitted on a bed: shaped at
// both edges in every way, its first row from either side.
func strip(t *rapid.T) shaping.Work {
	inWork := shaping.Centred(rapid.IntRange(4, 20).Draw(t, "cast on"))
	live := inWork
	body := shaping.Panel{Name: shaping.Body, FirstRow: 1, LastRow: rapid.IntRange(2, 16).Draw(t, "rows"), Needles: inWork}
	w := shaping.Work{Name: "left front", Place: shaping.Bed, Facing: shaping.PurlSide}
	near := rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right}).Draw(t, "from")
	held := map[shaping.Side]bool{}
	steps := map[shaping.Side]shaping.Schedule{}

	for number := 1; number <= body.LastRow; number++ {
		row := shaping.Row{Row: number, Panel: shaping.Body, From: near}
		if number == 1 {
			row.Before = []shaping.Action{do(shaping.DoCastOn, inWork)}
		}
		for _, edge := range []shaping.Side{near, near.Opposite()} {
			step := shaping.Step{Row: number}
			edgeNeedles := inWork.Edge(edge, 3)
			most := inWork.Len() - 3
			kind := rapid.IntRange(0, 5).Draw(t, "shaping")
			switch {
			case number == 1:
			case kind == 1 && edge == near && !held[edge] && most > 0:
				step.Method, step.Stitches = shaping.BindOff, -rapid.IntRange(1, min(3, most)).Draw(t, "off")
				row.Before = append(row.Before, do(shaping.DoBindOff, inWork.Edge(edge, -step.Stitches)))
			case kind == 2 && edge == near && !held[edge]:
				step.Method, step.Stitches = shaping.CastOn, rapid.IntRange(1, 3).Draw(t, "on")
				row.Before = append(row.Before, do(shaping.DoCastOnEdge, inWork.Beyond(edge, step.Stitches)))
			case kind == 3 && !held[edge] && most > 0:
				step.Method, step.Stitches = shaping.Fashioned, -1
				row.Before = append(row.Before, shaping.Action{Do: shaping.DoShift, Needles: edgeNeedles, Toward: edge.Opposite()})
			case kind == 4 && !held[edge]:
				step.Method, step.Stitches = shaping.Fashioned, 1
				row.Before = append(row.Before,
					shaping.Action{Do: shaping.DoShift, Needles: edgeNeedles, Toward: edge},
					do(shaping.DoFill, one(edgeNeedles.End(edge.Opposite()))))
			case kind == 5 && edge != near && most > 0:
				step.Method, step.Stitches = shaping.Hold, -rapid.IntRange(1, min(3, most)).Draw(t, "held")
				gone := inWork.Edge(edge, -step.Stitches)
				row.Before = append(row.Before, do(shaping.DoHold, gone))
				row.After = append(row.After, do(shaping.DoWrap, one(gone.End(edge.Opposite()))))
				held[edge] = true
			}
			if step.Stitches == 0 {
				continue
			}
			steps[edge] = append(steps[edge], step)
			inWork = inWork.Moved(edge, step.Stitches)
			if step.Method != shaping.Hold {
				live = live.Moved(edge, step.Stitches)
			}
		}
		row.Knit = inWork
		w.Rows = append(w.Rows, row)
		near = near.Opposite()
	}
	last := &w.Rows[len(w.Rows)-1]
	last.After = append(last.After, do(shaping.DoWaste, live))
	body.Left, body.Right = steps[shaping.Left], steps[shaping.Right]
	w.Panels = shaping.Tree{body}
	w.Ledger = body.Ledger()
	return w
}
