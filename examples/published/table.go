package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"example.com/walewise/internal/sample"
)

const (
	format   = "walewise-published/1"
	undated  = "undated"
	maxBytes = 1 << 20
)

// table is the document that holds the examples.
type table struct {
	Format   string    `json:"format"`
	Examples []example `json:"examples"`
}

// example is a worked example of a publication.
type example struct {
	ID       string   `json:"id"`
	Topic    string   `json:"topic"`
	Asks     string   `json:"asks"`
	Source   string   `json:"source"`
	Year     string   `json:"year"`
	Standing standing `json:"standing"`
	// Call is the function that is asked, Inputs is what it is asked with.
	Call      string          `json:"call"`
	Inputs    json.RawMessage `json:"inputs"`
	Published string          `json:"published"`
	// Differs says why the library gives another answer; it is empty where the two agree.
	Differs string `json:"differs,omitempty"`
	Note    string `json:"note,omitempty"` // such as what was chosen here because it is not printed
}

// standing is what the published answer rests on.
type standing string

const (
	seen      standing = "seen"      // in the source, as the inputs are
	completed standing = "completed" // by the method of the source, from the inputs seen there
	computed  standing = "computed"  // from what the source says
	recalled  standing = "from memory"
)

func standings() []standing { return []standing{seen, completed, computed, recalled} }

// readTable reads a table; without the name of a file that of the module.
func readTable(file string, stdin io.Reader) ([]example, error) {
	if file == "" {
		found, err := findTable()
		if err != nil {
			return nil, err
		}
		file = found
	}
	r, err := sample.Open(file, stdin)
	if err != nil {
		return nil, err
	}
	defer r.Close()
	b, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, err
	}
	if len(b) > maxBytes {
		return nil, fmt.Errorf("the table has more than %d bytes", maxBytes)
	}
	return parseTable(b)
}

// findTable looks for the table of the module from the working folder upwards, so that the
// program can be run from any folder of the module.
func findTable() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		file := filepath.Join(dir, "testdata", "published.json")
		if _, err := os.Stat(file); !errors.Is(err, fs.ErrNotExist) {
			return file, err
		}
		above := filepath.Dir(dir)
		if above == dir {
			return "", errors.New("there is no testdata/published.json here or above: name a table with -table")
		}
		dir = above
	}
}

// parseTable reads the text of a table, strictly.
func parseTable(b []byte) ([]example, error) {
	var t table
	if err := decode(b, &t); err != nil {
		return nil, fmt.Errorf("table: %w", err)
	}
	if t.Format != format {
		return nil, fmt.Errorf("table: format %q: must be %q", t.Format, format)
	}
	if len(t.Examples) == 0 {
		return nil, errors.New("table: it has no examples")
	}
	ids := map[string]bool{}
	for i, e := range t.Examples {
		what := e.problem()
		if ids[e.ID] {
			what = "another example has this id"
		}
		if what != "" {
			return nil, fmt.Errorf("table: example %d, %q: %s", i+1, e.ID, what)
		}
		ids[e.ID] = true
	}
	return t.Examples, nil
}

var (
	idForm   = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	yearForm = regexp.MustCompile(`^[0-9]{4}$`)
)

// problem says in a line what is wrong with an example; it is empty if nothing is.
func (e example) problem() string {
	for _, field := range []struct{ name, text string }{
		{"topic", e.Topic}, {"asks", e.Asks}, {"source", e.Source}, {"published", e.Published},
	} {
		if strings.TrimSpace(field.text) == "" {
			return field.name + " is empty"
		}
	}
	switch {
	case !idForm.MatchString(e.ID):
		return "id: small letters, digits and hyphens between them"
	case e.Year != undated && !yearForm.MatchString(e.Year):
		return fmt.Sprintf("year %q: four digits or %q", e.Year, undated)
	case !slices.Contains(standings(), e.Standing):
		return fmt.Sprintf("standing %q: one of %q", e.Standing, standings())
	}
	if _, ok := callOf(e.Call); !ok {
		return fmt.Sprintf("call %q: one of %s", e.Call, callNames())
	}
	return ""
}

// decode reads JSON, without keys that are not known and without anything after it.
func decode(b []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return errors.New("something follows the document")
	}
	return nil
}
