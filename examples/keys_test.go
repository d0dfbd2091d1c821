package examples_test

import (
	"encoding"
	"encoding/json"
	"fmt"
	"maps"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping/garment"
	"github.com/google/go-cmp/cmp"
)

// schema is what is looked at of a JSON Schema.
type schema struct {
	Ref                 string            `json:"$ref"`
	Defs                map[string]schema `json:"$defs"`
	Description         string            `json:"description"`
	Properties          map[string]schema `json:"properties"`
	Required            []string          `json:"required"`
	Items               *schema           `json:"items"`
	AllOf, AnyOf, OneOf []schema
}

func schemaOf(t *testing.T, path ...string) schema {
	t.Helper()
	var s schema
	if err := json.Unmarshal([]byte(read(t, path...)), &s); err != nil {
		t.Fatal(path, err)
	}
	return s
}

// property is a key that a schema has, or a type of Go.
type property struct {
	says     string
	required bool
}

// properties returns the keys below a part of a schema by their paths, such as
// "swatches[].width".
func (s schema) properties(part schema, path string) map[string]property {
	found := map[string]property{}
	if name, ok := strings.CutPrefix(part.Ref, "#/$defs/"); ok {
		maps.Copy(found, s.properties(s.Defs[name], path))
	}
	if part.Items != nil {
		maps.Copy(found, s.properties(*part.Items, path+"[]"))
	}
	for i, way := range slices.Concat(part.AllOf, part.AnyOf, part.OneOf) {
		for at, p := range s.properties(way, path) {
			if _, twice := found[at]; twice {
				at = fmt.Sprintf("%s (%d)", at, i)
			}
			found[at] = p
		}
	}
	for name, of := range part.Properties {
		at := strings.TrimPrefix(path+"."+name, ".")
		found[at] = property{of.Description, slices.Contains(part.Required, name)}
		maps.Copy(found, s.properties(of, at))
	}
	return found
}

// leftOut parts what a key says from what stands for it when it is left out.
const leftOut = " Left out: "

// Every key of every document is described, and one that may be left out with what stands
// for it then.
func TestKeysAreDescribed(t *testing.T) {
	names, err := filepath.Glob("../testdata/schema/*.json")
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		s := schemaOf(t, name)
		all := s.properties(s, "")
		for def, part := range s.Defs {
			maps.Copy(all, s.properties(part, "$"+def))
		}
		for path, p := range all {
			says, without, optional := strings.Cut(p.says, leftOut)
			switch {
			case p.says == "":
				t.Errorf("%s: %s has no description", name, path)
			case optional == p.required:
				t.Errorf("%s: %s, required %t, says %q", name, path, p.required, p.says)
			case !strings.HasSuffix(says, ".") || optional && !strings.HasSuffix(without, ".") || strings.Contains(p.says, "|"):
				t.Errorf("%s: %s is no sentence for a table: %q", name, path, p.says)
			}
		}
	}
}

// gaugeKeys are those of a gauge in a document. The type itself has no fields to be seen.
type gaugeKeys struct {
	Stitches string `json:"stitches"`
	Rows     string `json:"rows"`
	Over     string `json:"over"`
}

// keysOf returns the paths of the keys of a type in the order of its fields.
func keysOf(of reflect.Type, path string) (paths []string, required map[string]bool) {
	required = map[string]bool{}
	switch {
	case of == reflect.TypeFor[gauge.Gauge]():
		return keysOf(reflect.TypeFor[gaugeKeys](), path)
	case of.Kind() == reflect.Pointer:
		return keysOf(of.Elem(), path)
	case of.Kind() == reflect.Slice:
		return keysOf(of.Elem(), path+"[]")
	case of.Kind() != reflect.Struct || reflect.PointerTo(of).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()):
		return nil, nil
	}
	for _, f := range reflect.VisibleFields(of) {
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" {
			continue
		}
		at := strings.TrimPrefix(path+"."+name, ".")
		below, requiredBelow := keysOf(f.Type, at)
		paths = append(append(paths, at), below...)
		required[at] = !strings.Contains(options, "omitzero")
		maps.Copy(required, requiredBelow)
	}
	return paths, required
}

// specKeys returns the paths of the keys of a spec.
func specKeys() (paths []string, required map[string]bool) {
	paths, required = keysOf(reflect.TypeFor[garment.Spec](), "")
	required["format"] = true
	return append([]string{"format"}, paths...), required
}

// The schema of a spec has the keys of the type, and demands the same ones.
func TestSpecHasTheKeysOfItsSchema(t *testing.T) {
	s := schemaOf(t, "..", "testdata", "schema", "walewise-spec-1.json")
	ofSchema := map[string]bool{}
	for path, p := range s.properties(s, "") {
		ofSchema[path] = p.required
	}
	_, ofType := specKeys()
	if diff := cmp.Diff(ofType, ofSchema); diff != "" {
		t.Errorf("-garment.Spec +schema:\n%s", diff)
	}
	var written, here map[string]any
	for to, from := range map[*map[string]any]any{&written: specOf(t, "pullover").Band.Gauge, &here: gaugeKeys{}} {
		text, err := json.Marshal(from)
		if err != nil || json.Unmarshal(text, to) != nil {
			t.Fatal(err)
		}
	}
	if got, want := slices.Sorted(maps.Keys(here)), slices.Sorted(maps.Keys(written)); !slices.Equal(got, want) {
		t.Errorf("a gauge is written with %q, not with %q", want, got)
	}
}

const keysIntro = `# The keys of a spec

Lengths are texts with a unit: ` + "`\"23.5 cm\"`, `\"9 1/4 in\"`, `\"120 mm\"`" + `. Percents, grams, metres and the counts of a gauge are numbers, in quotes or not; stitches, needles and buttons are whole numbers without quotes. A key with a dot stands inside another: ` + "`body.width`" + ` is ` + "`{\"body\": {\"width\": \"53 cm\"}}`" + `. A key that is needed inside another one is needed only where that is given. ` + "[pullover/demo.json](pullover/demo.json)" + ` is a whole spec, and ` + "`go run ./examples/pullover -spec my.json`" + ` prints what comes of yours. The keys of the other documents are described in [testdata/schema](../testdata/schema). A test makes this page from the descriptions there.
`

// groups are the tables of the page by the first parts of their keys.
var groups = []struct{ title, keys string }{
	{"The document", "format title units"},
	{"Swatch and gauge", "swatch swatches gauge"},
	{"Start and seam", "start seam"},
	{"Body", "body"},
	{"Armhole", "armhole"},
	{"Neck", "neck"},
	{"Back", "back"},
	{"Shoulder", "shoulder"},
	{"Sleeve", "sleeve"},
	{"Opening", "opening"},
	{"Band", "band"},
	{"Head, hand and yarn", "head hand yarn"},
	{"Methods", "methods"},
	{"Checks", "checks"},
	{"Work", "work"},
}

// KEYS.md says what the schema says.
func TestKeysPage(t *testing.T) {
	s := schemaOf(t, "..", "testdata", "schema", "walewise-spec-1.json")
	described := s.properties(s, "")
	paths, _ := specKeys()
	page, shown := keysIntro, map[string]bool{}
	for _, group := range groups {
		page += fmt.Sprintf("\n## %s\n\n| key | what it says | left out |\n|---|---|---|\n", group.title)
		for _, path := range paths {
			first, _, _ := strings.Cut(strings.ReplaceAll(path, "[]", ""), ".")
			if !slices.Contains(strings.Fields(group.keys), first) {
				continue
			}
			shown[path] = true
			// Several swatches and the band's gauge have the keys of the one swatch and of the gauge.
			if strings.Contains(path, "[]") || strings.HasPrefix(path, "band.gauge.") {
				continue
			}
			says, without, optional := strings.Cut(described[path].says, leftOut)
			if !optional {
				without = "needed"
			}
			page += fmt.Sprintf("| `%s` | %s | %s |\n", path, says, strings.TrimSuffix(without, "."))
		}
	}
	for _, path := range paths {
		if !shown[path] {
			t.Errorf("%s is in no group", path)
		}
	}
	golden.Check(t, "KEYS.md", []byte(page))
}
