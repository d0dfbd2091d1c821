package plan_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
	"example.com/walewise/shaping/plan"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// What is read is written byte for byte, with the line end that the file lacks.
func TestTinyPlan(t *testing.T) {
	p, err := plan.Read(bytes.NewReader(tiny(t)))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := plan.Write(&b, p); err != nil {
		t.Fatal(err)
	}
	golden.Check(t, "../../testdata/plan-tiny.json", bytes.TrimSuffix(b.Bytes(), []byte("\n")))
	if diff := cmp.Diff(worked.TinyFront(), p.Pieces[0].Work.Panels, same); diff != "" {
		t.Errorf("panels (-want +got):\n%s", diff)
	}
	if _, err := bed.Knit(p.Pieces[0].Work); err != nil {
		t.Errorf("what was read cannot be knitted: %v", err)
	}
}

func TestParseRefuses(t *testing.T) {
	const rows = "pieces[0].rows"
	for _, c := range []struct{ name, old, by, want string }{
		{"unknown key", `"facing"`, `"face"`, `pieces[0].face: unknown key, the keys here are name, on, facing, panels, rows, ledger, size, edges, warnings`},
		{"repeated key", `"from": "right",`, `"from": "right", "from": "right",`, rows + `[0].from: the key stands twice`},
		{"null", `"edges": []`, `"edges": null`, `pieces[0].edges null: null is no value: leave the key out`},
		{"missing key", `"warnings": []`, `"edges2": []`, `pieces[0].edges2: unknown key, did you mean "edges"?`},
		{"needle 0", `"L10"`, `"L0"`, `pieces[0].panels[0].first "L0": needles are numbered 1 to 1000 on each side; there is no needle 0`},
		{"needle beyond the bed", `"L10"`, `"L1001"`, `pieces[0].panels[0].first "L1001": needles are numbered 1 to 1000 on each side; there is no needle 0`},
		{"no needle", `"L10"`, `"l10"`, `pieces[0].panels[0].first "l10": a needle such as L12 or R1`},
		{"needle that is a number", `"L10"`, `-10`, `pieces[0].panels[0].first -10: write a needle such as L12 or R1`},
		{"first right of last", `"last": "R10"`, `"last": "L11"`, `pieces[0].panels[0].first "L10": the first needle is never right of the last, here L11`},
		{"row 0", `"row": 1,`, `"row": 0,`, rows + `[0].row 0: write a whole number from 1 to 5000`},
		{"row 5001", `"row": 1,`, `"row": 5001,`, rows + `[0].row 5001: write a whole number from 1 to 5000`},
		{"row that does not fit in an int", `"row": 1,`, `"row": 99999999999999999999,`, rows + `[0].row 99999999999999999999: write a whole number from 1 to 5000`},
		{"last row before the first", `"lastRow": 6`, `"lastRow": 0`, `pieces[0].panels[0].lastRow 0: write a whole number from 1 to 5000`},
		{"unknown side", `"from": "right"`, `"from": "up"`, rows + `[0].from "up": one of left, right`},
		{"unknown action", `"do": "castOn"`, `"do": "cast on"`, rows + `[0].before[0].do "cast on": one of castOn, hold, return, waste, bindOff, castOnEdge, wrap, shift, fill, carriage, counter`},
		{"no action", `"do": "castOn",`, ``, rows + `[0].before[0].do: the key is missing: one of castOn, hold, return, waste, bindOff, castOnEdge, wrap, shift, fill, carriage, counter`},
		{"key of another action", `"do": "hold",`, `"do": "hold", "toward": "left",`, rows + `[6].before[0].toward: hold does not have this key, it has do, first, last`},
		{"key of no action", `"do": "hold",`, `"do": "hold", "frist": "L1",`, rows + `[6].before[0].frist: unknown key, did you mean "first"?`},
		{"wrap of two", `"first": "R4"`, `"first": "R4", "last": "R4"`, rows + `[6].after[0].last: wrap does not have this key, it has do, first`},
		{"separate yarn of a hold", `"do": "hold",`, `"do": "hold", "yarn": "separate",`, rows + `[6].before[0].yarn: hold does not have this key, it has do, first, last`},
		{"other yarn", `"do": "hold",`, `"do": "bindOff", "yarn": "red",`, rows + `[6].before[0].yarn "red": "separate", or no key`},
		{"shift toward nowhere", `"do": "hold"`, `"do": "shift"`, rows + `[6].before[0].toward: the key is missing: shift needs it`},
		{"action that is a word", `"before": [`, `"before": ["castOn",`, rows + `[0].before[0] "castOn": write an object in { } with "do" and what the action needs`},
		{"action that is right of itself", `"first": "L2",`, `"first": "R3",`, rows + `[6].before[0].first "R3": the first needle is never right of the last, here R2`},
		{"two runs", `"knit": [`, `"knit": [["L10", "R10"],`, rows + `[0].knit [...]: a row knits one run of needles: [[first, last]]`},
		{"three ends", `"knit": [`, `"knit": [["L10", "R10", "R11"],`, rows + `[0].knit[0] [...]: write the first and the last needle, such as ["L10", "R10"]`},
		{"step of nothing", `"stitches": -2`, `"stitches": 0`, `pieces[0].panels[1].left[0].stitches 0: a step moves at least one stitch`},
		{"no such panel", `"panel": "body"`, `"panel": "trunk"`, rows + `[0].panel "trunk": one of body, right half, left half`},
		{"no such piece", `"name": "front"`, `"name": "frnt"`, `pieces[0].name "frnt": one of front, back, left sleeve, right sleeve, left front, right front`},
		{"debt", `"live": 20`, `"live": -20`, `pieces[0].ledger.live -20: write a whole number from 0 to 1000000`},
		{"size without a number", `"size": {}`, `"size": {"width": {"asked": "1 cm", "knitted": "1 cm"}}`, `pieces[0].size.width.plusMinus: the key is missing: a length with its unit, such as "23.5 cm"`},
		{"size with a strange name", `"size": {}`, `"size": {"wide-ness": {}}`, `pieces[0].size."wide-ness": a size has a name of at most 40 letters and digits`},
		{"warning that is a number", `"warnings": []`, `"warnings": [1]`, `pieces[0].warnings[0] 1: write a text in quotes`},
		{"both gauge and swatch", `"gauge"`, `"swatch": {"stitches": 40, "width": "18 cm", "rows": 56, "height": "18 cm"}, "gauge"`, `gauge and swatch: write only one of them`},
		{"both gauge and swatches", `"gauge"`, `"swatches": [` + oneSwatch + `], "gauge"`, `gauge and swatches: write only one of them`},
		{"a spec", `walewise-plan/1`, `walewise-spec/1`, `format "walewise-spec/1": only "walewise-plan/1" can be read here; this is a spec: make a plan of it first`},
		{"endless phrase", `"edges": []`, `"edges": [` + edge(`{"from": 1, "every": [2], "stitches": -1, "times": 5001}`) + `]`, `pieces[0].edges[0].phrases[0].times 5001: write a whole number from 1 to 5000`},
		{"steps in one row", `"edges": []`, `"edges": [` + edge(`{"from": 1, "every": [], "stitches": -1, "times": 2}`) + `]`, `pieces[0].edges[0].phrases[0].every [...]: several steps have a distance between them`},
		{"three distances", `"edges": []`, `"edges": [` + edge(`{"from": 1, "every": [1, 2, 3], "stitches": -1, "times": 2}`) + `]`, `pieces[0].edges[0].phrases[0].every [...]: one distance, or two that come in turn`},
		{"phrase of nothing", `"edges": []`, `"edges": [` + edge(`{"from": 1, "every": [2], "stitches": 0, "times": 5}`) + `]`, `pieces[0].edges[0].phrases[0].stitches 0: a step moves at least one stitch`},
		{"deviation of a sign", `"edges": []`, `"edges": [` + strings.Replace(edge(""), "3.20 mm", "-3.20 mm", 1) + `]`, `pieces[0].edges[0].deviation "-3.20 mm": write it without a sign`},
		{"deviation without a unit", `"edges": []`, `"edges": [` + strings.Replace(edge(""), "3.20 mm", "3.20", 1) + `]`, `pieces[0].edges[0].deviation "3.20": the unit is missing: 3.20 cm, 3.20 mm or 3.20 in`},
		{"edge without a name", `"edges": []`, `"edges": [` + strings.Replace(edge(""), `"neck"`, `""`, 1) + `]`, `pieces[0].edges[0].name "": a name of 1 to 200 bytes`},
		{"sizes in a list", `"size": {}`, `"size": []`, `pieces[0].size [...]: write an object in { } with a key for each size`},
		{"size of less than nothing", `"size": {}`, `"size": {"width": {"asked": "1 cm", "knitted": "1 cm", "plusMinus": "-1 cm"}}`, `pieces[0].size.width.plusMinus "-1 cm": write it without a sign`},
		{"run that ends at no needle", `"knit": [`, `"knit": [["L10", "R0"],`, `pieces[0].rows[0].knit[0][1] "R0": needles are numbered 1 to 1000 on each side; there is no needle 0`},
		{"half that ends before it begins", `"lastRow": 12`, `"lastRow": 6`, `pieces[0].panels[1].lastRow 6: the last row does not come before the first, row 7`},
		{"long title", `"title": "`, `"title": "` + strings.Repeat("a", 200), `title of 236 characters: at most 200`},
		{"area in mm2", `"edges": []`, `"edges": [` + strings.Replace(edge(""), "cm2", "mm2", 1) + `]`, `pieces[0].edges[0].area "1.20 mm2": write an area in square centimetres, such as "12.34 cm2"`},
	} {
		t.Run(c.name, func(t *testing.T) { refusesPlan(t, replaced(t, string(tiny(t)), c.old, c.by), c.want) })
	}
	const panels, listed = `"panels": [`, `"rows": [`
	text := string(tiny(t))
	head, pieces, _ := strings.Cut(text, `"pieces": [`)
	piece := strings.TrimRight(pieces, "]}\n ") + "]}"
	before, after, _ := strings.Cut(text, panels)
	_, after, _ = strings.Cut(after, listed)
	for _, c := range []struct{ name, text, want string }{
		{"no pieces", head + `"pieces": []}`, `pieces: a plan has at least one piece`},
		{"two fronts", head + `"pieces": [` + piece + `, ` + piece + `]}`, `pieces[1].name "front": an earlier piece has this name`},
		{"no panels", before + panels + `], ` + listed + after, `pieces[0].panels [...]: a piece has at least a body`},
		{"too many rows", strings.Replace(text, listed, listed+strings.Repeat(oneRow+", ", shaping.MaxRows), 1), `pieces[0].rows 5018 of them: at most 5000`},
	} {
		t.Run(c.name, func(t *testing.T) { refusesPlan(t, c.text, c.want) })
	}
}

const oneRow = `{"row": 1, "panel": "body", "from": "right", "before": [], "knit": [["L1", "R1"]], "after": []}`

func refusesPlan(t *testing.T, text, want string) {
	t.Helper()
	_, err := plan.Parse([]byte(text))
	if err == nil {
		t.Fatal("it was read")
	}
	oneLine(t, err)
	if err.Error() != want {
		t.Errorf("says\n%s, want\n%s", err, want)
	}
	if _, ok := errors.AsType[*garment.Error](err); !ok || !errors.Is(err, plan.ErrPlan) {
		t.Errorf("%T is not a *garment.Error that wraps ErrPlan", err)
	}
}

func edge(phrases string) string {
	return `{"name": "neck", "panel": "body", "side": "left", "path": "M0 0", "stitches": 3, "rows": 5, "area": "1.20 cm2",
		"floor": "0.50 cm2", "deviation": "3.20 mm", "phrases": [` + phrases + `], "words": "row 7: 2 stitches"}`
}

func TestWriteRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		set  func(*plan.Plan)
		want string
	}{
		{"no pieces", func(p *plan.Plan) { p.Pieces = nil }, `pieces: a plan has at least one piece`},
		{"two fronts", func(p *plan.Plan) { p.Pieces = append(p.Pieces, p.Pieces[0]) }, `pieces[1].name "front": an earlier piece has this name`},
		{"long title", func(p *plan.Plan) { p.Title = strings.Repeat("a", 201) }, `title of 201 characters: at most 200`},
		{"row beyond the last", func(p *plan.Plan) { p.Pieces[0].Work.Rows[3].Row = shaping.MaxRows + 1 }, `pieces[0].rows[3].row 5001: 1 to 5000`},
		{"phrase without end", func(p *plan.Plan) {
			p.Pieces[0].Edges = []plan.Edge{{Name: "neck", Panel: shaping.Body, Side: shaping.Left, Phrases: []shaping.Phrase{{From: 1, Every: 1, Stitches: -1, Times: 1 << 30}}}}
		}, `pieces[0].edges[0].phrases[0].times 1073741824: write a whole number from 1 to 5000`},
		{"area of many digits", func(p *plan.Plan) { p.Pieces[0].Edges = []plan.Edge{{Area: decimal.New(1, 1<<30)}} }, `pieces[0].edges[0].area with too many digits: at most 20 places`},
		{"floor of many places", func(p *plan.Plan) { p.Pieces[0].Edges = []plan.Edge{{Floor: decimal.New(1, -1<<30)}} }, `pieces[0].edges[0].floor with too many digits: at most 20 places`},
		{"panel that there is not", func(p *plan.Plan) { p.Pieces[0].Work.Rows[0].Panel = "trunk" }, `pieces[0].rows[0].panel "trunk": one of body, right half, left half`},
		{"no place", func(p *plan.Plan) { p.Pieces[0].Work.Place = 0 }, `document: place 0: one of bed, hand`},
		{"row without needles", func(p *plan.Plan) { p.Pieces[0].Work.Rows[0].Knit = shaping.Span{} }, `document: needle 0: L1 to L1000 or R1 to R1000`},
		{"field that is not used", func(p *plan.Plan) { p.Pieces[0].Work.Rows[6].Before[0].Separate = true }, `pieces[0].rows[6].before[0] hold L2-R2 with separate yarn: the action has a field that it does not use`},
		{"a size twice", func(p *plan.Plan) { p.Pieces[0].Sizes = []plan.Size{{Name: "drop"}, {Name: "drop"}} }, `pieces[0].size.drop: the key stands twice`},
		{"row without a side", func(p *plan.Plan) { p.Pieces[0].Work.Rows[0].From = 0 }, `document: side 0: one of left, right`},
		{"longer than allowed", func(p *plan.Plan) { p.Pieces[0].Warnings = []string{strings.Repeat("a", plan.MaxBytes)} }, `document of 1054659 bytes: at most 1 MiB, 1048576 bytes`},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := plan.Parse(tiny(t))
			if err != nil {
				t.Fatal(err)
			}
			c.set(&p)
			var b bytes.Buffer
			err = plan.Write(&b, p)
			if err == nil || err.Error() != c.want || !errors.Is(err, plan.ErrPlan) {
				t.Errorf("says\n%v, want\n%s", err, c.want)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes were written", b.Len())
			}
		})
	}
}

// rewritePlan writes a plan, reads it back and writes it again.
func rewritePlan(t interface {
	Helper()
	Fatal(...any)
}, p plan.Plan) {
	t.Helper()
	var first, second bytes.Buffer
	if err := plan.Write(&first, p); err != nil {
		t.Fatal(err)
	}
	again, err := plan.Parse(first.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p, again, same); diff != "" {
		t.Fatal(fmt.Sprintf("read back (-want +got):\n%s", diff))
	}
	if err := plan.Write(&second, again); err != nil {
		t.Fatal(err)
	}
	if first.String() != second.String() {
		t.Fatal("the bytes differ when it is written again")
	}
}

func TestPlanRoundTrip(t *testing.T) {
	g := twenty(t)
	rapid.Check(t, func(t *rapid.T) {
		work := gen.Work().Draw(t, "work")
		// The documents have fixed names for panels.
		names := map[string]string{"": "", shaping.Body: shaping.Body}
		for i, name := range []string{shaping.RightHalf, shaping.LeftHalf} {
			if i+1 < len(work.Panels) {
				names[work.Panels[i+1].Name] = name
			}
		}
		rename := func(name string) string {
			if fixed, ok := names[name]; ok {
				return fixed
			}
			return shaping.LeftHalf
		}
		for i, p := range work.Panels {
			work.Panels[i].Name, work.Panels[i].Parent = rename(p.Name), rename(p.Parent)
		}
		for i, r := range work.Rows {
			work.Rows[i].Panel = rename(r.Panel)
		}
		piece := plan.Piece{Work: work, Warnings: rapid.SliceOfN(rapid.StringN(0, 20, 80), 0, 2).Draw(t, "warnings")}
		for _, panel := range work.Panels {
			for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
				steps := panel.Steps(side)
				piece.Edges = append(piece.Edges, plan.Edge{
					Name: "neck", Panel: panel.Name, Side: side, Stitches: steps.Total(), Rows: panel.Rows(),
					Area: decimal.New(rapid.Int64Range(0, 100_000).Draw(t, "area"), -2), Deviation: gauge.MustParseLength("1.20 mm"),
					Phrases: steps.Phrases(), Words: steps.Words(),
				})
			}
		}
		for _, name := range []string{"width", "neckDepth", "drop", "hem"} {
			piece.Sizes = append(piece.Sizes, plan.Size{Name: name, Asked: gauge.MustParseLength("9 1/4 in"), Knitted: g.Width(7), PlusMinus: g.Tolerance().Width(g.Width(7))})
		}
		rewritePlan(t, plan.Plan{Title: rapid.StringN(0, 50, 200).Draw(t, "title"), Gauge: g, Pieces: []plan.Piece{piece}})
	})
}

func twenty(t testing.TB) gauge.Gauge {
	t.Helper()
	g, err := gauge.New(decimal.New(22, 0), decimal.New(28, 0), gauge.MustParseLength("10 cm"))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestPlannedWork(t *testing.T) {
	work, err := order.Arrange(order.Outline{Name: "front", Place: shaping.Bed, Carriage: shaping.Right, Panels: worked.HandFront()})
	if err != nil {
		t.Fatal(err)
	}
	rewritePlan(t, plan.Plan{Gauge: twenty(t), Pieces: []plan.Piece{{Work: work}}})
}

func TestFrom(t *testing.T) {
	const swatch = `"swatch": {"stitches": 40, "width": "18.1 cm", "rows": 56, "height": "18.7 cm"}`
	for _, text := range []string{
		replaced(t, least, `"depth": "21 cm"`, `"depth": "21 cm", "inset": "6 cm"`),
		replaced(t, least, `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"title": "As counted", `+swatch),
	} {
		spec, err := plan.ParseSpec([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		front, err := garment.Front(spec)
		if err != nil {
			t.Fatal(err)
		}
		p := plan.From(front)
		if p.Title != spec.Title || len(p.Pieces) != 1 || len(p.Pieces[0].Sizes) != len(front.Sizes) {
			t.Errorf("title %q, %d pieces", p.Title, len(p.Pieces))
		}
		for i, e := range p.Pieces[0].Edges {
			var total int
			for _, phrase := range e.Phrases {
				total += shaping.Expand(phrase).Total()
			}
			if want := front.Edges[i].Schedule.Total(); total != want {
				t.Errorf("%s: phrases move %d stitches, the schedule %d", e.Name, total, want)
			}
		}
		rewritePlan(t, p)
	}
}

func FuzzParsePlan(f *testing.F) {
	f.Add(tiny(f))
	f.Add([]byte(replaced(f, string(tiny(f)), `"edges": []`, `"edges": [`+edge(`{"from": 1, "every": [2, 4], "stitches": -1, "times": 5}`)+`]`)))
	f.Add([]byte(replaced(f, string(tiny(f)), `"size": {}`, `"size": {"hem": {"asked": "1 cm", "knitted": "1 in", "plusMinus": "0 mm"}}`)))
	f.Fuzz(func(t *testing.T, text []byte) {
		p, err := plan.Parse(text)
		if err != nil {
			oneLine(t, err)
			return
		}
		var b bytes.Buffer
		if err := plan.Write(&b, p); err != nil && b.Len() == 0 && strings.Contains(err.Error(), "at most 1 MiB") {
			return // white space made it longer
		}
		rewritePlan(t, p)
	})
}

// A plan shares nothing with the piece that it is of.
func TestFromCopies(t *testing.T) {
	spec, err := plan.ParseSpec([]byte(least))
	if err != nil {
		t.Fatal(err)
	}
	front, err := garment.Front(spec)
	if err != nil {
		t.Fatal(err)
	}
	front.Warnings = []string{"as it was"}
	p := plan.From(front)
	p.Pieces[0].Work.Rows[0].Row, p.Pieces[0].Work.Panels[0].Name, p.Pieces[0].Warnings[0] = 99, "yoke", "changed"
	if front.Work.Rows[0].Row != 1 || front.Work.Panels[0].Name != shaping.Body || front.Warnings[0] != "as it was" {
		t.Error("the piece changed with its plan")
	}
}
