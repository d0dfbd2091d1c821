package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/walewise/shaping"
	"pgregory.net/rapid"
)

const (
	tenths = `"gauge":{"stitches":"10","rows":"10","over":"100 mm"}`
	slant  = `"path":"M 0 100 L 50 0"`
)

func TestRefusals(t *testing.T) {
	shape := func(keys string) string { return `{"shape":{` + keys + `},` + tenths + `}` }
	rules := func(keys string) string { return `{` + slant + `,` + tenths + `,"rules":{` + keys + `}}` }
	with := func(keys string) string { return `{` + slant + `,` + tenths + `,` + keys + `}` }
	for _, c := range []struct{ request, says string }{
		{`{`, "request: not JSON: it ends too early"},
		{`{"id" "n"}`, "request: not JSON from byte"},
		{`{} {}`, "request: something follows it"},
		{`[{}]`, "request [...]: write an object"},
		{"{\"id\":\"\xff\"}", "request: not UTF-8"},
		{`{}`, "path missing: write either path or shape"},
		{`{` + slant + `}`, "gauge missing: write one"},
		{`{` + slant + `,"gauge":null}`, "gauge null: write one"},
		{`{` + slant + `,"gauge":{"stitches":"10","rows":"10"}}`, "gauge.over missing"},
		{`{` + slant + `,"gauge":{"stitches":"10","rows":"10","over":"100"}}`, `gauge.over "100": the unit is missing`},
		{`{` + slant + `,"gauge":{"stitches":"10","rows":"10","over":"10 cm","over":"10 cm"}}`, "gauge.over"},
		{with(`"shape":{"kind":"line","width":1,"height":1}`), "shape: path is there too"},
		{with(`"colour":"red"`), "colour: unknown key: the keys here are format, id, path,"},
		{with(`"most":3,"most":3`), "most: the key stands twice"},
		{with(`"most":0`), "most 0: a whole number from 1 to 2000"},
		{with(`"most":"3"`), `most "3": a whole number`},
		{with(`"alternate":"no"`), `alternate "no": true or false`},
		{with(`"side":"top"`), `side "top": "left" or "right"`},
		{with(`"format":"walewise-edge-request/2"`), "format \"walewise-edge-request/2\": \"walewise-edge-request/1\" is read here; it may be left out"},
		{with(`"format":1`), "format 1: \"walewise-edge-request/1\" is read here; it may be left out"},
		{with(`"id":true`), "id true: a text or a number"},
		{with(`"rules":[]`), "rules [...]: write an object"},
		{`{"path":null,` + tenths + `}`, "path null: path data in quotes"},
		{`{"path":"M 0 0 L 10 10",` + tenths + `}`, "path"},
		{rules(`"every":0`), "rules.every 0: a whole number from 1 to"},
		{rules(`"every":2.5`), "rules.every 2.5: a whole number"},
		{rules(`"every":3,"phase":3`), "rules.phase 3: less than every, which is 3: 0 to 2"},
		{rules(`"phase":1`), "rules.phase 1: less than every, which is 1: 0 to 0"},
		{rules(`"single":{"every":2,"phase":2}`), "rules.single.phase 2: less than every"},
		{rules(`"coming":{"most":-1}`), "rules.coming.most -1: a whole number from 0"},
		{rules(`"coming":{"coming":{}}`), "rules.coming.coming: unknown key"},
		{rules(`"Every":2`), "rules.Every: unknown key"},
		{shape(`"kind":"circle","width":1,"height":1`), `shape.kind "circle": "line", "ellipse"`},
		{shape(`"width":1,"height":1`), `shape.kind missing: write "line"`},
		{shape(`"kind":"line","height":1`), `shape.width missing: kind "line" needs it`},
		{shape(`"kind":"line","width":"6","height":1`), `shape.width "6": the unit is missing`},
		{shape(`"kind":"line","width":1e999999999,"height":1`), `shape.width 1e999999999: a length`},
		{shape(`"kind":"line","width":` + strings.Repeat("9", 99) + `,"height":1`), "of at most 40 characters"},
		{shape(`"kind":"line","width":6,"height":0`), "edge height 0 cm"},
		{shape(`"kind":"line","width":60,"height":60,"flat":61`), "shape.flat 6.1 cm: a part of the width: 0 to 6 cm"},
		{shape(`"kind":"line","width":-60,"height":60,"flat":6`), "shape.flat 0.6 cm: a part of the width: 0 to -6 cm"},
		{shape(`"kind":"line","width":60,"height":60,"exponent":2`), `shape.exponent: goes with kind "superellipse" only`},
		{shape(`"kind":"superellipse","width":60,"height":60,"exponent":"two"`), `shape.exponent "two": a number`},
		{shape(`"kind":"superellipse","width":60,"height":60,"exponent":11`), "exponent 11: 0.5 to 10"},
		{shape(`"kind":"points"`), `shape.points missing: kind "points" needs it`},
		{shape(`"kind":"points","points":[[0,0],[1]]`), "shape.points[1] of 1: a list of two lengths"},
		{shape(`"kind":"points","points":[[0,0],[1,"x"]]`), `shape.points[1][1] "x"`},
		{shape(`"kind":"points","points":[[0,0],[1,0]]`), "point 2"},
	} {
		a := ask(t, c.request)
		if !strings.Contains(a.Error, c.says) || len(a.Error) > 300 {
			t.Errorf("%s: says %q, want %q", c.request, a.Error, c.says)
		}
		if a.Nearest != nil || a.Sizes != nil {
			t.Errorf("%s: %+v is no infeasible request", c.request, a)
		}
	}
}

// A rule that works is written as a request has it, with a phase less than its every.
func TestNearest(t *testing.T) {
	for _, c := range []struct{ rules, nearest, sizes string }{
		{
			`{"every":3,"phase":2,"most":1}`,
			`{"every":3,"phase":2,"apart":1,"most":2,"base":0,"plain":0} {"every":1,"phase":0,"apart":1,"most":1,"base":0,"plain":0}`,
			"[{5 15} {3 10}]",
		},
		{
			`{"most":1,"plain":6,"single":{"every":1},"coming":{"every":2,"phase":1}}`,
			`{"every":1,"phase":0,"apart":1,"most":2,"base":0,"plain":6,"single":{"every":1,"phase":0},"coming":{"every":2,"phase":1,"apart":1,"most":0,"base":0,"plain":0}} ` +
				`{"every":1,"phase":0,"apart":1,"most":1,"base":0,"plain":5,"single":{"every":1,"phase":0},"coming":{"every":2,"phase":1,"apart":1,"most":0,"base":0,"plain":0}}`,
			"[{5 11} {4 10}]",
		},
	} {
		a := ask(t, `{`+slant+`,`+tenths+`,"rules":`+c.rules+`}`)
		if got := string(bytes.Join(raws(a.Nearest), []byte(" "))); got != c.nearest {
			t.Errorf("%s: nearest\n%s, want\n%s", c.rules, got, c.nearest)
		}
		if got := fmt.Sprint(a.Sizes); got != c.sizes {
			t.Errorf("%s: sizes %s, want %s", c.rules, got, c.sizes)
		}
		for _, near := range a.Nearest {
			if b := ask(t, `{`+slant+`,`+tenths+`,"rules":`+string(near)+`}`); b.Error != "" {
				t.Errorf("%s: %s does not work: %s", c.rules, near, b.Error)
			}
		}
	}
}

func raws(of []json.RawMessage) (texts [][]byte) {
	for _, text := range of {
		texts = append(texts, text)
	}
	return texts
}

// The id is echoed as it is written, wherever it stands.
func TestID(t *testing.T) {
	for _, id := range []string{`"n1"`, `""`, `"\u00e9\n\"é"`, `-0.50`, `1e400`, `": \t"`} {
		for _, request := range []string{
			`{"id" : ` + id + ` , "x":[{"id":3}]}`, `{"x":{"id":[2]},"path":7,"id":` + id + `}`, `{"id":` + id + `,`,
		} {
			if a := ask(t, request); string(a.ID) != id || a.Error == "" {
				t.Errorf("%s: id %s, error %q", request, a.ID, a.Error)
			}
		}
	}
	if a := ask(t, `{}`); a.ID != nil {
		t.Errorf("no id is echoed as %s", a.ID)
	}
}

// The same edge by its shape and by a path has the same answer.
func TestShapesAreTheirPaths(t *testing.T) {
	const gauge = `"gauge":{"stitches":"30","rows":"40","over":"10 cm"}`
	for _, c := range []struct{ shape, path string }{
		{`"kind":"line","width":60,"height":80`, "M 0 80 L 60 0"},
		{`"kind":"line","width":"6 cm","height":80,"flat":20`, "M 0 80 H 20 L 60 0"},
		{`"kind":"line","width":-60,"height":80,"flat":-20`, "M 0 80 H -20 L -60 0"},
		{`"kind":"ellipse","width":60,"height":80`, "M 0 80 A 60 80 0 0 0 60 0"},
		{`"kind":"ellipse","width":60,"height":80,"flat":"2 cm"`, "M 0 80 H 20 A 40 80 0 0 0 60 0"},
		{`"kind":"superellipse","width":-60,"height":80,"flat":"-2 cm"`, "M 0 80 H -20 A 40 80 0 0 1 -60 0"},
		{`"kind":"superellipse","width":60,"height":80,"flat":60`, "M 0 80 H 60 V 0"},
		{`"kind":"points","points":[[0,0],["1 cm","2 cm"]],"width":60,"height":80`, "M 0 80 L 60 0"},
		{`"kind":"points","points":[[5,5],["65 mm",85]]`, "M 0 80 L 60 0"},
		{`"kind":"points","points":[[0,0],[40,80]],"flat":20`, "M 0 80 H 20 L 60 0"},
	} {
		got, want := ask(t, `{"shape":{`+c.shape+`},`+gauge+`}`), ask(t, `{"path":"`+c.path+`",`+gauge+`}`)
		if got.Error != "" || fmt.Sprint(got.Steps) != fmt.Sprint(want.Steps) || len(got.Steps) == 0 {
			t.Errorf("%s: %+v\nwant %+v", c.shape, got, want)
		}
		slack := 1e-6
		if strings.Contains(c.shape, "points") { // the curve between them is rounded to 1/1000 mm
			slack = 1e-3
		}
		for _, off := range []float64{got.Area - want.Area, got.Floor - want.Floor, got.Deviation - want.Deviation} {
			if math.Abs(off) > slack {
				t.Errorf("%s: off by %g: %+v\nwant %+v", c.shape, off, got, want)
			}
		}
	}
}

// drawRules draws rules as text and as the library has them.
func drawRules(t *rapid.T, name string, nested bool) (string, shaping.Rules) {
	draw := func(key string, least, most int) int { return rapid.IntRange(least, most).Draw(t, name+key) }
	r := shaping.Rules{Every: draw("every", 1, 3), Apart: draw("apart", 1, 4), Most: draw("most", 0, 3), Plain: draw("plain", 0, 5)}
	r.Phase, r.Base = draw("phase", 0, r.Every-1), draw("base", 0, 1)*draw("based", 1, 9)
	text := fmt.Sprintf(`{"every":%d,"phase":%d,"apart":%d,"most":%d,"base":%d,"plain":%d`, r.Every, r.Phase, r.Apart, r.Most, r.Base, r.Plain)
	if rapid.Bool().Draw(t, name+"single") {
		r.Single.Every = draw("single every", 1, 3)
		r.Single.Phase = draw("single phase", 0, r.Single.Every-1)
		text += fmt.Sprintf(`,"single":{"every":%d,"phase":%d}`, r.Single.Every, r.Single.Phase)
	}
	if !nested && rapid.Bool().Draw(t, name+"both") {
		coming, of := drawRules(t, "coming ", true)
		r.Coming = &of
		text += `,"coming":` + coming
	}
	return text + "}", r
}

// Phrases say their steps, the steps obey the rules, and what is named as working works.
func TestAnswersAreTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string, least, most int) int { return rapid.IntRange(least, most).Draw(t, name) }
		rows := at("rows", 2, 24)
		path := fmt.Sprintf("M 0 %d C %d %d %d 10 %d 0", rows*10,
			at("first", -80, 120), rows*5, at("second", -80, 120), at("end", -60, 150))
		text, rules := drawRules(t, "", false)
		request := func(rules string) string {
			return fmt.Sprintf(`{"path":%q,%s,"rules":%s,"most":4}`, path, tenths, rules)
		}
		a := ask(t, request(text))
		if a.Error == "" {
			checkWordings(t, text, a, rules)
			checkRules(t, a, rules)
			return
		}
		if a.Nearest == nil || a.Sizes == nil || len(a.Nearest)+len(a.Sizes) == 0 {
			t.Fatalf("%s: %+v", request(text), a)
		}
		for _, near := range a.Nearest {
			if b := ask(t, request(string(near))); b.Error != "" {
				t.Fatalf("%s: %s does not work: %+v", request(text), near, b)
			}
		}
		for _, size := range a.Sizes {
			shape := fmt.Sprintf(`{"shape":{"kind":"line","width":%d,"height":%d},%s,"rules":%s}`, size.Stitches*10, size.Rows*10, tenths, text)
			if b := ask(t, shape); b.Error != "" {
				t.Fatalf("%s: %+v does not work: %s", request(text), size, b.Error)
			}
		}
	})
}

// checkRules checks that all steps of an answer obey the rules.
func checkRules(t tester, a answered, rules shaping.Rules) {
	t.Helper()
	for _, steps := range append([][]step{a.Steps}, stepsOf(a)...) {
		var s shaping.Schedule
		for _, one := range steps {
			s = append(s, shaping.Step{Row: one.Row, Stitches: one.Stitches})
		}
		if err := rules.Check(s, a.Rows); err != nil {
			t.Fatalf("%v: %v", s, err)
		}
	}
}

func stepsOf(a answered) (all [][]step) {
	for _, w := range a.Wordings {
		all = append(all, w.Steps)
	}
	return all
}

// Whatever a line holds, the answer is one line of JSON, with the id if there is one.
func FuzzAnswer(f *testing.F) {
	for line := range strings.Lines(requests(f)) {
		f.Add(strings.TrimSpace(line))
	}
	f.Fuzz(func(t *testing.T, line string) {
		if line = strings.TrimSpace(line); line == "" || strings.ContainsAny(line, "\r\n") || heavy(line) {
			return
		}
		out, _, err := runEdges(line)
		if err != nil || strings.Count(out, "\n") != 1 || !json.Valid([]byte(out)) {
			t.Fatalf("error %v, printed %q", err, out)
		}
		var asked, got map[string]json.RawMessage
		if json.Unmarshal([]byte(out), &got) != nil {
			t.Fatalf("no object: %q", out)
		}
		if json.Unmarshal([]byte(line), &asked) != nil || strings.Count(line, `id`) > 1 || bytes.ContainsRune([]byte(line), '\\') {
			return
		}
		id, ok := asked["id"]
		if ok && strings.IndexByte(`"-0123456789`, id[0]) >= 0 && !bytes.ContainsRune([]byte(line), '\ufffd') && string(id) != string(got["id"]) {
			t.Fatalf("id %s is echoed as %s", id, got["id"])
		}
	})
}

// heavy reports whether a request may have a box so large that it takes long.
func heavy(line string) bool {
	q, err := read([]byte(line))
	if err != nil {
		return false
	}
	d, err := q.edge.At(q.gauge)
	return err == nil && d.Rows()*max(d.Stitches(), 100) > 20_000
}

// BenchmarkAnswer answers a request of 60 rows by 30 stitches.
func BenchmarkAnswer(b *testing.B) {
	const line = `{"id":"n1","path":"M 0 240 C 66 240 120 186 120 0","gauge":{"stitches":"25","rows":"25","over":"10 cm"},` +
		`"rules":{"every":2,"apart":2}}`
	b.ReportAllocs()
	var out []byte
	for b.Loop() {
		var a answer
		a.make([]byte(line))
		if a.err != nil || a.drawing.Rows() != 60 || a.drawing.Stitches() != 30 {
			b.Fatal(a.err)
		}
		out = appendJSON(out[:0], a)
	}
}

// BenchmarkRead reads the same request.
func BenchmarkRead(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := read([]byte(sample)); err != nil {
			b.Fatal(err)
		}
	}
}
