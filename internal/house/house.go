// Package house holds the rules of where things stand in this module: what may
// lie at the top level, and which package may import which. Its test applies
// them to the module itself.
package house

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"
)

const module = "example.com/walewise"

const (
	decimal = "github.com/shopspring/decimal"
	cmp     = "github.com/google/go-cmp"
	rapid   = "pgregory.net/rapid"
)

// top lists what may lie at the top level, beside names that begin with a dot.
var top = []string{
	"CHANGELOG.md", "DEVELOPERS.md", "README.md",
	"curve", "examples", "gauge", "go.mod", "go.sum", "internal", "mirror", "shaping", "testdata",
}

// allowance is what the code of a library package may import beside the
// standard library. A sibling reached through a package under internal counts
// as imported.
type allowance struct {
	siblings []string
	decimal  bool // lengths are exact decimals; packages of whole numbers do without
	alone    bool // nothing from internal either
}

// library has a line for every library package, below those that it may import.
// A package need not exist yet; one that is missing here must not exist.
// The planner (order) and the judge (bed) never import each other.
var library = map[string]allowance{
	"gauge":   {decimal: true},
	"shaping": {},
	"curve":   {siblings: []string{"gauge", "shaping"}, decimal: true},
	"mirror":  {siblings: []string{"shaping"}},

	"shaping/order": {siblings: []string{"shaping", "mirror"}},
	"shaping/bed":   {siblings: []string{"shaping"}, alone: true},
	"shaping/garment": {
		siblings: []string{"gauge", "curve", "shaping", "mirror", "shaping/order", "shaping/bed"},
		decimal:  true,
	},
	"shaping/sizes": {
		siblings: []string{"gauge", "shaping", "shaping/garment"},
		decimal:  true,
	},
	"shaping/plan": {
		siblings: []string{"gauge", "shaping", "shaping/garment", "shaping/sizes"},
		decimal:  true,
	},
	"shaping/draw": {
		siblings: []string{
			"gauge", "curve", "shaping", "mirror", "shaping/order", "shaping/bed",
			"shaping/garment", "shaping/plan",
		},
		decimal: true,
	},
	"shaping/sheet": {
		siblings: []string{
			"gauge", "curve", "shaping", "mirror", "shaping/order", "shaping/bed",
			"shaping/garment", "shaping/sizes", "shaping/plan", "shaping/draw",
		},
		decimal: true,
	},
}

// topLevel returns what lies at the top of the tree and should not. What
// .gitignore names is left out of account.
func topLevel(tree fs.FS) ([]string, error) {
	ignored, err := ignoredNames(tree)
	if err != nil {
		return nil, err
	}
	entries, err := fs.ReadDir(tree, ".")
	if err != nil {
		return nil, err
	}
	var problems []string
	for _, e := range entries {
		matches := func(pattern string) bool {
			ok, _ := path.Match(pattern, e.Name())
			return ok
		}
		if strings.HasPrefix(e.Name(), ".") || slices.Contains(top, e.Name()) || slices.ContainsFunc(ignored, matches) {
			continue
		}
		problems = append(problems, fmt.Sprintf("%s: not a name of the top level", e.Name()))
	}
	return problems, nil
}

// ignoredNames returns the patterns of .gitignore that are a plain name.
func ignoredNames(tree fs.FS) ([]string, error) {
	b, err := fs.ReadFile(tree, ".gitignore")
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var patterns []string
	for s := bufio.NewScanner(bytes.NewReader(b)); s.Scan(); {
		line := strings.TrimSuffix(strings.TrimSpace(s.Text()), "/")
		if line != "" && !strings.ContainsAny(line, "#!/") {
			patterns = append(patterns, line)
		}
	}
	return patterns, nil
}

// place is one import: the package that has it and the file.
type place struct {
	path string // as written in the file
	file string
}

// folder is what the files of one package import.
type folder struct {
	code   []place // the package
	inside []place // its tests within the package
	beside []place // its tests in the package of the same name with _test
}

// imports reads the tree, without nested modules and what the go command leaves
// out, into folders by their path.
func imports(tree fs.FS) (map[string]*folder, error) {
	folders := map[string]*folder{}
	err := fs.WalkDir(tree, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := path.Base(name)
		if d.IsDir() {
			if name == "." {
				return nil
			}
			_, err := fs.Stat(tree, path.Join(name, "go.mod"))
			if err == nil || base == "testdata" || base[0] == '.' || base[0] == '_' {
				return fs.SkipDir
			}
			return nil
		}
		if path.Ext(name) != ".go" || base[0] == '.' || base[0] == '_' {
			return nil
		}
		src, err := fs.ReadFile(tree, name)
		if err != nil {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, src, parser.ImportsOnly)
		if err != nil {
			return err
		}
		dir := path.Dir(name)
		if folders[dir] == nil {
			folders[dir] = &folder{}
		}
		list := &folders[dir].code
		if strings.HasSuffix(base, "_test.go") {
			list = &folders[dir].inside
			if strings.HasSuffix(f.Name.Name, "_test") {
				list = &folders[dir].beside
			}
		}
		for _, i := range f.Imports {
			imported, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			*list = append(*list, place{imported, name})
		}
		return nil
	})
	return folders, err
}

// boundaries returns the imports of the tree that the rules do not allow.
func boundaries(tree fs.FS) ([]string, error) {
	folders, err := imports(tree)
	if err != nil {
		return nil, err
	}
	var problems []string
	for _, dir := range slices.Sorted(maps.Keys(folders)) {
		f := folders[dir]
		allowed, listed := library[dir]
		example, inner := under(dir, "examples"), under(dir, "internal")
		if !listed && !example && !inner {
			problems = append(problems, fmt.Sprintf("%s: no line in the table of packages", dir))
			continue
		}
		refuse := func(p place, what string) {
			problems = append(problems, fmt.Sprintf("%s: imports %s: %s", p.file, p.path, what))
		}
		// The code of packages under internal is judged where a library package
		// or a sample program reaches it.
		if !inner {
			reached := reach(folders, f.code)
			if listed && allowed.alone {
				reached = f.code
			}
			for _, p := range reached {
				own, ours := sibling(p.path)
				switch {
				case p.path == "testing" || p.path == "C":
					refuse(p, "not in the code of "+dir)
				case standard(p.path):
				case ours && under(own, "internal"):
					if allowed.alone {
						refuse(p, dir+" uses nothing from internal")
					}
				case ours && under(own, "examples"):
					refuse(p, "sample programs are not imported")
				case ours:
					if listed && !slices.Contains(allowed.siblings, own) {
						refuse(p, "not below "+dir)
					}
				case p.path == decimal:
					if listed && !allowed.decimal {
						refuse(p, dir+" knows whole numbers only")
					}
				default:
					refuse(p, "not one of the dependencies of the library")
				}
			}
		} else {
			for _, p := range f.code {
				if !standard(p.path) && !dependency(p.path) {
					refuse(p, "not one of the dependencies")
				}
			}
		}
		for _, p := range slices.Concat(f.inside, f.beside) {
			if !standard(p.path) && !dependency(p.path) {
				refuse(p, "not one of the dependencies")
			}
		}
		// A test within a package is part of it; only one beside it stands above.
		for _, p := range f.inside {
			own, ours := sibling(p.path)
			if listed && ours && own != dir && !under(own, "internal") && !slices.Contains(allowed.siblings, own) {
				refuse(p, "not below "+dir)
			}
		}
	}
	return problems, nil
}

// reach returns the imports of code and of all packages under internal that it
// reaches through such packages.
func reach(folders map[string]*folder, code []place) []place {
	all := slices.Clone(code)
	seen := map[string]bool{}
	for i := 0; i < len(all); i++ {
		own, ours := sibling(all[i].path)
		if !ours || !under(own, "internal") || seen[own] || folders[own] == nil {
			continue
		}
		seen[own] = true
		for _, p := range folders[own].code {
			all = append(all, place{p.path, all[i].file + " by way of " + p.file})
		}
	}
	return all
}

func standard(imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	return !strings.Contains(first, ".")
}

// dependency tells whether a test may import a package that is not standard.
func dependency(imported string) bool {
	return slices.ContainsFunc([]string{module, decimal, cmp, rapid}, func(m string) bool { return under(imported, m) })
}

// sibling returns the path within the module.
func sibling(imported string) (string, bool) {
	return strings.CutPrefix(imported, module+"/")
}

func under(p, parent string) bool {
	return p == parent || strings.HasPrefix(p, parent+"/")
}
