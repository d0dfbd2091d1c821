package house

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	gocmp "github.com/google/go-cmp/cmp"
)

// root is the top of the module as seen from this package. In a checkout it has the files that
// git knows, since what somebody has made there of their own is theirs.
func root(t *testing.T) fs.FS {
	t.Helper()
	const top = "../.."
	names, err := exec.Command("git", "-C", top, "ls-files", "-z").Output()
	if err != nil {
		return os.DirFS(top)
	}
	known := fstest.MapFS{}
	for name := range strings.SplitSeq(strings.Trim(string(names), "\x00"), "\x00") {
		text, err := os.ReadFile(filepath.Join(top, filepath.FromSlash(name)))
		if errors.Is(err, fs.ErrNotExist) {
			continue // removed, and git not told yet
		}
		if err != nil {
			t.Fatal(err)
		}
		known[name] = &fstest.MapFile{Data: text}
	}
	return known
}

func TestTopLevelOfThisModule(t *testing.T) {
	problems, err := topLevel(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range problems {
		t.Error(p)
	}
}

func TestBoundariesOfThisModule(t *testing.T) {
	problems, err := boundaries(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range problems {
		t.Error(p)
	}
}

// The check of this module would pass for nothing if it looked elsewhere.
func TestReadsThisModule(t *testing.T) {
	b, err := fs.ReadFile(root(t), "go.mod")
	if err != nil {
		t.Fatal(err)
	}
	if first, _, _ := strings.Cut(string(b), "\n"); strings.TrimSpace(first) != "module "+module {
		t.Errorf("go.mod begins with %q", first)
	}
	folders, err := imports(root(t))
	if err != nil {
		t.Fatal(err)
	}
	if f := folders["internal/house"]; f == nil || len(f.code) == 0 || len(f.inside) == 0 {
		t.Error("did not find the imports of this package")
	}
	if folders["internal/tools"] != nil || folders["internal/schemacheck"] != nil {
		t.Error("went into a nested module")
	}
}

// The table names only packages that it has, and no two stand above each other.
func TestTableHasAnOrder(t *testing.T) {
	for p, a := range library {
		for _, s := range a.siblings {
			below, ok := library[s]
			if !ok {
				t.Errorf("%s: sibling %s has no line", p, s)
			}
			if slices.Contains(below.siblings, p) || s == p {
				t.Errorf("%s and %s stand above each other", p, s)
			}
			if below.decimal && !a.decimal {
				t.Errorf("%s: no decimals, but %s has them", p, s)
			}
		}
	}
	if slices.Contains(library["shaping/order"].siblings, "shaping/bed") || slices.Contains(library["shaping/bed"].siblings, "shaping/order") {
		t.Error("planner and judge know each other")
	}
}

func file(pkg string, imported ...string) *fstest.MapFile {
	var b strings.Builder
	b.WriteString("package " + pkg + "\n")
	for _, i := range imported {
		b.WriteString("import _ \"" + i + "\"\n")
	}
	// Only the imports are read: what follows them may be half written.
	b.WriteString("func {\n")
	return &fstest.MapFile{Data: []byte(b.String())}
}

func TestBoundaries(t *testing.T) {
	for _, c := range []struct {
		name string
		tree fstest.MapFS
		want []string
	}{
		{"an empty module", fstest.MapFS{"go.mod": {}}, nil},
		{
			"all that is allowed",
			fstest.MapFS{
				"go.mod":                           {},
				"gauge/a.go":                       file("gauge", "errors", decimal),
				"curve/a.go":                       file("curve", module+"/gauge", module+"/shaping", module+"/internal/solver"),
				"curve/a_test.go":                  file("curve_test", module+"/internal/gen", module+"/shaping/order", rapid, cmp+"/cmp"),
				"shaping/order/a.go":               file("order", module+"/shaping", module+"/mirror"),
				"shaping/order/a_test.go":          file("order_test", module+"/shaping/bed"),
				"shaping/bed/a.go":                 file("bed", module+"/shaping"),
				"shaping/bed/in_test.go":           file("bed", "testing", module+"/internal/worked"),
				"internal/solver/a.go":             file("solver", "math/bits"),
				"internal/gen/a.go":                file("gen", rapid, module+"/shaping/garment"),
				"internal/tools/go.mod":            {},
				"internal/tools/a.go":              file("main", "example.org/linter"),
				"examples/edges/main.go":           file("main", module+"/curve", module+"/shaping/plan", decimal),
				"curve/testdata/a.go":              file("a", "example.org/other"),
				".ci/a.go":                         file("a", "example.org/other"),
				"examples/frontpiece/main_test.go": file("main", module+"/internal/golden", module+"/shaping/bed"),
			},
			nil,
		},
		{
			"the planner imports the judge",
			fstest.MapFS{"shaping/order/a.go": file("order", module+"/shaping/bed")},
			[]string{"shaping/order/a.go: imports " + module + "/shaping/bed: not below shaping/order"},
		},
		{
			"the judge imports the planner in a test of its own package",
			fstest.MapFS{"shaping/bed/a_test.go": file("bed", module+"/shaping/order")},
			[]string{"shaping/bed/a_test.go: imports " + module + "/shaping/order: not below shaping/bed"},
		},
		{
			"the planner reaches the judge through internal",
			fstest.MapFS{
				"shaping/order/a.go": file("order", module+"/internal/x"),
				"internal/x/x.go":    file("x", module+"/internal/y"),
				"internal/y/y.go":    file("y", module+"/shaping/bed", module+"/internal/x"),
			},
			[]string{"shaping/order/a.go by way of internal/x/x.go by way of internal/y/y.go: imports " + module + "/shaping/bed: not below shaping/order"},
		},
		{
			"the judge uses internal",
			fstest.MapFS{"shaping/bed/a.go": file("bed", module+"/internal/x")},
			[]string{"shaping/bed/a.go: imports " + module + "/internal/x: shaping/bed uses nothing from internal"},
		},
		{
			"upwards",
			fstest.MapFS{"shaping/a.go": file("shaping", module+"/gauge")},
			[]string{"shaping/a.go: imports " + module + "/gauge: not below shaping"},
		},
		{
			"decimals among whole numbers",
			fstest.MapFS{"mirror/a.go": file("mirror", decimal)},
			[]string{"mirror/a.go: imports " + decimal + ": mirror knows whole numbers only"},
		},
		{
			"test tools in the library, straight and through internal",
			fstest.MapFS{
				"gauge/a.go":        file("gauge", cmp+"/cmp"),
				"curve/a.go":        file("curve", module+"/internal/gen"),
				"internal/gen/a.go": file("gen", rapid, "testing"),
			},
			[]string{
				"curve/a.go by way of internal/gen/a.go: imports " + rapid + ": not one of the dependencies of the library",
				"curve/a.go by way of internal/gen/a.go: imports testing: not in the code of curve",
				"gauge/a.go: imports " + cmp + "/cmp: not one of the dependencies of the library",
			},
		},
		{
			"another dependency in code, test, internal and sample",
			fstest.MapFS{
				"gauge/a.go":           file("gauge", "example.org/other"),
				"gauge/a_test.go":      file("gauge_test", "example.org/other"),
				"internal/x/a.go":      file("x", "example.org/other"),
				"examples/x/main.go":   file("main", "example.org/other"),
				"gauge/c.go":           file("gauge", "C"),
				"curve/a.go":           file("curve", module+"/examples/x"),
				"examples/x/a_test.go": file("main", "example.com/walewise2"),
			},
			[]string{
				"curve/a.go: imports " + module + "/examples/x: sample programs are not imported",
				"examples/x/main.go: imports example.org/other: not one of the dependencies of the library",
				"examples/x/a_test.go: imports example.com/walewise2: not one of the dependencies",
				"gauge/a.go: imports example.org/other: not one of the dependencies of the library",
				"gauge/c.go: imports C: not in the code of gauge",
				"gauge/a_test.go: imports example.org/other: not one of the dependencies",
				"internal/x/a.go: imports example.org/other: not one of the dependencies",
			},
		},
		{
			"packages that the table does not have",
			fstest.MapFS{"doc.go": file("walewise"), "shaping/yarn/a.go": file("yarn", "fmt")},
			[]string{".: no line in the table of packages", "shaping/yarn: no line in the table of packages"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := boundaries(c.tree)
			if err != nil {
				t.Fatal(err)
			}
			if diff := gocmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestTopLevel(t *testing.T) {
	tree := fstest.MapFS{".gitignore": {Data: []byte("# notes\n**/testdata/rapid/\n_artifacts/\n*.prof\n")}, ".ci/run": {}}
	for _, name := range top {
		if path.Ext(name) == "" {
			name += "/file"
		}
		tree[name] = &fstest.MapFile{}
	}
	for _, name := range []string{"_artifacts/a", "cpu.prof"} {
		tree[name] = &fstest.MapFile{}
	}
	if got, err := topLevel(tree); err != nil || len(got) != 0 {
		t.Errorf("the fixed list itself: %q, %v", got, err)
	}
	maps.Copy(tree, fstest.MapFS{"cmd/main.go": {}, "doc.go": {}, "Makefile": {}})
	got, err := topLevel(tree)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"Makefile: not a name of the top level",
		"cmd: not a name of the top level",
		"doc.go: not a name of the top level",
	}
	if diff := gocmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
