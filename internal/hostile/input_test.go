//go:build linux

package hostile_test

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// demand is the environment variable that asks for these tests, which take a minute.
const demand = "WALEWISE_NEED_HOSTILE"

const (
	enough      = 200 // inputs that each program must refuse at least
	copies      = 42  // of each valid document, each with a fault
	commandRuns = 160 // command lines that chance puts together
)

// source is a document that a program reads from standard input.
type source struct {
	args []string
	file string // a valid one
}

// sources are the documents that the programs read, by the name of the program. Those that
// read none are not in it.
func sources(t *testing.T) map[string][]source {
	file := func(name string) string {
		path, err := filepath.Abs(filepath.Join(module, filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		return path
	}
	demo := func(program string) string { return file("examples/" + program + "/demo.json") }
	plan := func(program string) string { return file("examples/" + program + "/testdata/demo.json.golden") }
	args := func(args ...string) []string { return args }
	return map[string][]source{
		"frontpiece": {
			{args("-spec", "-"), demo("frontpiece")},
			{args("-spec", "-", "-as", "html"), file("examples/frontpiece/drawn-neck.json")},
			{args("-spec", "-", "-from", "100"), file("examples/frontpiece/vee-in-hand.json")},
			{args("-check", "-"), file("testdata/plan-tiny.json")},
			{args("-check", "-"), plan("frontpiece")},
		},
		"pullover": {
			{args("-spec", "-"), demo("pullover")},
			{args("-spec", "-", "-out", "out"), demo("pullover")},
			{args("-check", "-"), plan("pullover")},
		},
		"cardigan": {
			{args("-spec", "-"), demo("cardigan")},
			{args("-spec", "-", "-as", "svg"), file("examples/cardigan/round-in-hand.json")},
			{args("-check", "-"), plan("cardigan")},
		},
		"regauge": {
			{args("-spec", "-", "-new", file("examples/regauge/washed.json")), demo("regauge")},
			{args("-new", "-", "-spec", demo("regauge")), file("examples/regauge/washed.json")},
			{args("-new", "-", "-knitted", "60", "-spec", demo("regauge")), file("examples/regauge/washed.json")},
			{args("-check", "-"), plan("regauge")},
		},
		"sizes": {
			{args("-spec", "-"), demo("sizes")},
			{args("-bodies", "-", "-out", "out"), file("examples/sizes/crew.csv")},
			{args("-bodies", "-", "-as", "json"), file("examples/sizes/crew.json")},
			{args("-check", "-"), plan("frontpiece")},
		},
		"published": {
			{args("-table", "-"), file("testdata/published.json")},
			{args("-as", "csv", "-table", "-"), file("testdata/published.json")},
		},
	}
}

func TestSamplePrograms(t *testing.T) {
	if os.Getenv(demand) == "" {
		t.Skip("takes a minute: runs with " + demand)
	}
	programs := build(t)
	t.Run("inputs", func(t *testing.T) { testInputs(t, programs) })
	t.Run("folders", func(t *testing.T) { testFolders(t, programs) })
	t.Run("streams", func(t *testing.T) { testStreams(t, programs) })
}

// The inputs are the same each time: chance begins at the name of the program.
func chance(name string) *rand.Rand {
	h := fnv.New64()
	h.Write([]byte(name))
	return rand.New(rand.NewPCG(1, h.Sum64()))
}

// What is no document and no command line is refused, and so is no valid document.
func testInputs(t *testing.T, programs []program) {
	read := sources(t)
	for _, p := range programs {
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			k, random := keep(t, p), chance(p.name)
			if len(p.flags) == 0 {
				k.ignoresArguments()
				return
			}
			for _, s := range read[p.name] {
				k.tryDocuments(s, random)
			}
			if p.name == "edges" {
				k.tryRequests(random)
			}
			k.tryCommandLines(random)
			if k.refused < enough {
				t.Errorf("only %d inputs were refused", k.refused)
			}
			k.log()
		})
	}
}

// tryDocuments starts the program on a document and on what becomes of it.
func (k *kept) tryDocuments(s source, random *rand.Rand) {
	valid, err := os.ReadFile(s.file)
	if err != nil {
		k.Fatal(err)
	}
	of := strings.Join(s.args[:min(2, len(s.args))], " ") + ", " + filepath.Base(s.file)
	if e := k.try(input{what: of, args: s.args, document: valid}); e.status != 0 {
		k.Errorf("%s: a valid document is refused: %s", of, e.said)
	}
	for made := range spoil(valid, random, copies) {
		k.try(input{what: of + ", " + made.how, args: s.args, document: made.text, useless: made.useless})
	}
}

// tryCommandLines starts the program with each of its flags and a value that may be absurd,
// and with several of them.
func (k *kept) tryCommandLines(random *rand.Rand) {
	line := func(useless bool, args ...string) {
		k.try(input{what: fmt.Sprintf("%.60q", args), args: args, document: []byte("knit 1, purl 1\n"), useless: useless})
	}
	for _, args := range [][]string{{"-nonsense"}, {"--nonsense=1"}, {"-"}, {"---"}, {"-="}, {"-\n"}, {"-\x1b[31m"}, {"-\xff"}, {"two", "words"}, {"\x1b[31m"}} {
		line(true, args...)
	}
	// In pairs that go together, with one of them absurd.
	for _, pair := range [][]string{{"from", "60", "panel"}, {"from", "60", "piece"}, {"knitted", "60", "piece"}, {"for", "men", "ease"}} {
		if slices.Contains(k.flags, pair[0]) && slices.Contains(k.flags, pair[2]) {
			for _, v := range absurd {
				line(false, "-"+pair[0], pair[1], "-"+pair[2], v)
			}
		}
	}
	for _, flag := range k.flags {
		line(flag != "force", "-"+flag)
		for _, v := range absurd {
			line(false, "-"+flag, v)
		}
		line(false, "-"+flag+"="+absurd[random.IntN(len(absurd))])
	}
	known := append([]string{"help=junk"}, k.flags...)
	for range commandRuns {
		var args []string
		for range 2 + random.IntN(3) {
			args = append(args, "-"+known[random.IntN(len(known))], usual[random.IntN(len(usual))])
		}
		line(false, args...)
	}
}

// absurd are values that few flags take, and usual are some that many take. None of them names
// a file outside the working folder that could be written.
var (
	absurd = []string{
		"", " ", "-", "--", "-1", "0", "999999999999", "9223372036854775808", "1<<40", "1e400", "junk", "-junk", "60\n",
		"6 cm", "-6 cm", "99999999999999999999 cm", "0.000000000000000000000000000000001 mm", "1/0 in",
		".", "missing.json", "missing/below", "/dev/null", "/dev/null/below", "/dev/zero", "/dev/full",
		"\xff\xfe", "\x1b[31m", "two\nlines", "\u202e", "%s%d%!", strings.Repeat("A", 300), strings.Repeat("A", 100_000),
	}
	usual = append([]string{
		"text", "json", "csv", "html", "svg", "60", "out", "front", "back", "body", "right half", "neck-vee", "children", "8 cm",
	}, absurd...)
)

// ignoresArguments tests a program that takes none: it prints the same whatever it is given.
func (k *kept) ignoresArguments() {
	want := k.try(input{what: "no argument"})
	for _, v := range absurd {
		if e := k.try(input{what: fmt.Sprintf("%.60q", v), args: []string{v}}); e.status != 0 || string(e.out) != string(want.out) {
			k.Errorf("%.60q: status %d, %d bytes printed", v, e.status, len(e.out))
		}
	}
	k.log()
}
