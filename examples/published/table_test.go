package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/internal/sample/sampletest"
)

// examples returns those of the module's table.
func examples(t testing.TB) []example {
	t.Helper()
	list, err := readTable("", nil)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// Every example of the table is asked of the library and holds. What it says is in order: see
// TestRefusesTables.
func TestPublishedExamples(t *testing.T) {
	list := examples(t)
	if len(list) < 40 {
		t.Errorf("%d examples, want 40 at least", len(list))
	}
	for _, e := range list {
		if _, err := compare(e); err != nil {
			t.Error(err)
		}
		if strings.Contains(strings.ToLower(e.Note), "from memory") && e.Standing == seen {
			t.Errorf("%s: from memory, and seen", e.ID)
		}
	}
}

// A table that is wrong about an example is refused, whichever it is: that says that it agrees
// where it differs, and that it differs where it agrees.
func TestVerdictsAreComputed(t *testing.T) {
	for _, e := range examples(t) {
		c, err := compare(e)
		if err != nil {
			t.Fatal(err)
		}
		agrees, differs := e, e
		agrees.Published, agrees.Differs = e.Published+" or so", ""
		if _, err := compare(agrees); err == nil || !strings.Contains(err.Error(), "it agrees, but") {
			t.Errorf("%s: of %q it is said that it agrees: %v", e.ID, agrees.Published, err)
		}
		differs.Published, differs.Differs = c.gives, "for no reason"
		if _, err := compare(differs); err == nil || !strings.Contains(err.Error(), "it differs, but") {
			t.Errorf("%s: of %q it is said that it differs: %v", e.ID, differs.Published, err)
		}
	}
	wrong := slices.Clone(examples(t)[:3])
	for i := range wrong {
		wrong[i].Published, wrong[i].Differs = "nothing", ""
	}
	if _, err := compareAll(wrong); err == nil || !strings.HasPrefix(err.Error(), wrong[0].ID+": ") || !strings.HasSuffix(err.Error(), " (and 2 more)") {
		t.Errorf("three wrong ones: %v", err)
	}
}

func TestAgree(t *testing.T) {
	for _, c := range []struct {
		published, gives string
		want             bool
	}{
		{"8, 9", "8, 9", true},
		{"8, 9", "9, 8", false},
		{"42 in to 44 in", "42 in", true},
		{"42 in to 44 in", "44 in", true},
		{"42 in to 44 in", "110 cm", true},
		{"42 in to 44 in", "41.9 in", false},
		{"42 in to 44 in", "44.1 in", false},
		{"42 in to 44 in", "refused", false},
		{"42 to 44", "43", false},
	} {
		if got := agree(c.published, c.gives); got != c.want {
			t.Errorf("published %q, given %q: %t", c.published, c.gives, got)
		}
	}
}

// Every example could have come out otherwise: there is a number in its inputs that gives
// another answer when it has a digit more or another digit. Those that look a figure up have
// no such number.
func TestInputsMatter(t *testing.T) {
	for _, e := range examples(t) {
		if e.Call == "sizes.Body.Measurement" {
			continue
		}
		call, _ := callOf(e.Call)
		before, err := call.answer(e.Inputs)
		if err != nil {
			t.Fatal(err)
		}
		moves := slices.ContainsFunc(numbersIn(e.Inputs), func(n number) bool {
			digit := "1"
			if n.text[0] == '1' {
				digit = "2"
			}
			return slices.ContainsFunc([]string{digit + n.text, digit + n.text[1:]}, func(text string) bool {
				after, err := call.answer(n.replaced(e.Inputs, text))
				return err == nil && after != before
			})
		})
		if !moves {
			t.Errorf("%s: whatever number of %s is changed, the answer is %q", e.ID, e.Inputs, before)
		}
	}
}

// Numbers that nobody would write are answered or refused; none of them ends the program.
func TestExtremeInputs(t *testing.T) {
	for _, e := range examples(t) {
		call, _ := callOf(e.Call)
		for _, n := range numbersIn(e.Inputs) {
			for _, text := range []string{"0", "-1", "0.0000001", "1001", "1000000000", "9223372036854775807", "99999999999999999999", "1e9999"} {
				inputs := n.replaced(e.Inputs, text)
				if gives, err := call.answer(inputs); err != nil && (gives != "" || !errors.Is(err, errInputs)) {
					t.Errorf("%s of %s: gives %q, error %v", e.Call, inputs, gives, err)
				}
			}
		}
	}
}

// number is a number in inputs, or one that a text begins with, such as 54 of "54 cm".
type number struct {
	text string
	from int
}

// replaced returns the inputs with another number in its place.
func (n number) replaced(inputs []byte, by string) json.RawMessage {
	return slices.Concat(inputs[:n.from], []byte(by), inputs[n.from+len(n.text):])
}

// numbersIn returns the numbers without their signs, but those that say how an answer is
// printed.
func numbersIn(inputs []byte) []number {
	const digits = "0123456789."
	var all []number
	tokens := json.NewDecoder(bytes.NewReader(inputs))
	tokens.UseNumber()
	var before json.Token
	for {
		token, err := tokens.Token()
		if err != nil {
			return all
		}
		text, end := "", int(tokens.InputOffset())
		switch v := token.(type) {
		case json.Number:
			text = v.String()
		case string:
			text, end = v, end-1
		}
		if i := strings.IndexAny(text, digits); i >= 0 && before != "places" {
			rest := text[i:]
			all = append(all, number{rest[:len(rest)-len(strings.TrimLeft(rest, digits))], end - len(rest)})
		}
		before = token
	}
}

const tinyTable = `{"format": "walewise-published/1", "examples": [
	{"id": "a-1", "topic": "t", "asks": "a", "source": "s", "year": "1918", "standing": "seen",
	 "call": "shaping.AlongRow", "inputs": {"stitches": 8, "times": 2}, "published": "every 4th stitch 2 times"}]}`

func TestRefusesTables(t *testing.T) {
	if out, _, err := runPublished(tinyTable, "-table", "-"); err != nil || !strings.HasSuffix(out, "1 of 1 agree.\n") {
		t.Fatalf("%v, printed %q", err, out)
	}
	twice := strings.TrimSuffix(tinyTable, "]}") + "," + tinyTable[strings.Index(tinyTable, "{\"id\""):]
	for _, c := range []struct{ old, by, says string }{
		{tinyTable, "", "EOF"},
		{tinyTable, tinyTable + "{}", "something follows the document"},
		{tinyTable, twice, `example 2, "a-1": another example has this id`},
		{tinyTable, `{"format": "walewise-published/1"}`, "it has no examples"},
		{"published/1", "published/2", `must be "walewise-published/1"`},
		{`"topic"`, `"matter"`, `unknown field "matter"`},
		{`"a-1"`, `"A 1"`, "id: small letters"},
		{`"topic": "t"`, `"topic": " "`, "topic is empty"},
		{`"asks": "a"`, `"asks": ""`, "asks is empty"},
		{`"source": "s"`, `"source": ""`, "source is empty"},
		{`"year": "1918"`, `"year": ""`, `four digits or "undated"`},
		{`"year": "1918"`, `"year": "about 1918"`, `four digits or "undated"`},
		{`"standing": "seen"`, `"standing": ""`, "from memory"},
		{"shaping.AlongRow", "shaping.Along", "one of shaping.AlongRow, "},
		{`"stitches": 8`, `"stitches": 9`, `published is "every 4th stitch 2 times", given is "every 4th stitch once, every 5th stitch once"`},
		{`"stitches": 8`, `"rows": 8`, `a-1: inputs: cannot be used: json: unknown field "rows"`},
		{`"stitches": 8`, `"stitches": 1`, `given is "refused: `},
		{`every 4th stitch 2 times"`, `", "differs": "so"`, "published is empty"},
		{`2 times"`, `2 times", "differs": "so"`, "the table says that it differs"},
	} {
		out, _, err := runPublished(sampletest.Replaced(t, tinyTable, c.old, c.by), "-table", "-")
		if err == nil || out != "" || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: printed %q, error %v, want one that says %s", c.by, out, err, c.says)
		}
	}
	if _, _, err := runPublished(tinyTable+strings.Repeat(" ", maxBytes), "-table", "-"); err == nil || !strings.Contains(err.Error(), "bytes") {
		t.Errorf("a table that is too long: %v", err)
	}
}

// What a call does not know is wrong with the table and no answer of the library.
func TestRefusesInputs(t *testing.T) {
	for _, c := range []struct{ call, inputs, says string }{
		{"shaping.EvenSpacing", `{"rows": 20, "times": 4, "ends": "plain"}`, "ends"},
		{"shaping.Expand", `{"phrases": [{"from": 1, "every": 1, "stitches": -1, "times": 1000000000}]}`, "times"},
		{"gauge.Gauge.Rows", `{"lengths": ["1 cm"]}`, "gauge"},
		{"gauge.Gauge.RowsFor", `{"count": 10}`, "gauge"},
		{"gauge.Gauge.Width", `{"gauge": {"stitches": "10", "rows": "10", "over": "10 cm"}, "places": 100}`, "places"},
		{"gauge.Gauge.Stitches", `{"gauge": {"stitches": "10", "rows": "10", "over": "10 cm"}, "round": {"direction": "left"}}`, "direction"},
		{"gauge.RoundTogether", `{"total": 10, "parts": [{"name": "a", "want": "ten"}]}`, "ten"},
		{"gauge.RoundTogether", `{"total": 10, "parts": [{"name": "a", "want": "10/0"}]}`, "10/0"},
		{"curve.Trace", `{"shape": "square", "stitches": 1, "rows": 1}`, "square"},
		{"curve.Edge.Area", `{"shape": "line", "width": "1 cm", "height": "1 cm", "places": -1}`, "places"},
		{"bed.Knit", `{"castOn": 10, "runs": [{}]}`, "run"},
		{"bed.Knit", `{"castOn": 10, "runs": [{"from": 1000000, "bindOff": [1]}]}`, "rows"},
		{"bed.Knit", `{"castOn": 10, "runs": [{"ends": 1000000000}]}`, "times"},
		{"bed.Knit", `{"castOn": 10, "halves": {"middle": 3}}`, "middle"},
		{"bed.Knit", `{"castOn": 10, "halves": {"middle": 2, "decrease": 1000000000}}`, "times"},
		{"bed.Knit", `{"castOn": 10, "runs": [{"bindOff": [1]}], "at": [12]}`, "11 rows"},
		{"garment.Front", `{"gives": "love"}`, "stitches cast on"},
		{"garment.Pieces", `{"gives": "love"}`, "head and neck"},
		{"garment.Back", `{"spec": {"wings": 2}, "gives": "armhole"}`, "wings"},
		{"sizes.Style.For", `{"gives": "love"}`, "upper arm"},
		{"sizes.Style.For", `{"body": {"tail": "1 cm"}, "gives": "cuff"}`, "tail"},
		{"sizes.Style.For", `{"gives": "cuff", "places": 13}`, "places"},
		{"sizes.Body.Measurement", `{"table": "men", "size": "XL", "key": "head"}`, "median"},
		{"sizes.Body.Measurement", `{"table": "men", "size": "median", "key": "tail"}`, "chest"},
	} {
		call, ok := callOf(c.call)
		if !ok {
			t.Fatalf("no call %s", c.call)
		}
		if gives, err := call.answer([]byte(c.inputs)); !errors.Is(err, errInputs) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s of %s: gives %q, error %v, want one that says %s", c.call, c.inputs, gives, err, c.says)
		}
	}
}

// The schema and the program know the same calls, and each is used.
func TestCallsOfSchema(t *testing.T) {
	text, err := os.ReadFile("../../testdata/schema/walewise-published-1.json")
	if err != nil {
		t.Fatal(err)
	}
	var schema struct {
		Defs struct {
			Example struct {
				Properties struct {
					Call     struct{ Enum []string }
					Standing struct{ Enum []standing }
				}
			}
		} `json:"$defs"`
	}
	if err := json.Unmarshal(text, &schema); err != nil {
		t.Fatal(err)
	}
	known := schema.Defs.Example.Properties
	if got := strings.Join(known.Call.Enum, ", "); got != callNames() {
		t.Errorf("the schema has the calls %s", got)
	}
	if !slices.Equal(known.Standing.Enum, standings()) {
		t.Errorf("the schema has %q", known.Standing.Enum)
	}
	used := map[string]bool{}
	for _, e := range examples(t) {
		used[e.Call] = true
	}
	for _, c := range calls() {
		if !used[c.name] {
			t.Errorf("no example calls %s", c.name)
		}
	}
}

// Whatever a table says, it is answered or refused in one short line.
func FuzzTable(f *testing.F) {
	f.Add([]byte(tinyTable))
	for _, c := range calls() {
		for _, e := range examples(f) {
			if e.Call == c.name {
				text, err := json.Marshal(table{format, []example{e}})
				if err != nil {
					f.Fatal(err)
				}
				f.Add(text)
				break
			}
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 4096 {
			return
		}
		out, _, err := runPublished(string(text), "-table", "-")
		if (err == nil) != (out != "") {
			t.Errorf("error %v, printed %q", err, out)
		}
	})
}
