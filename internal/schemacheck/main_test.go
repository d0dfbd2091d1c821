package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const schema = `{
	"$schema": "https://json-schema.org/draft/2020-12/schema",
	"type": "object",
	"required": ["name", "rows"],
	"additionalProperties": false,
	"properties": {
		"name": {"enum": ["front", "back"]},
		"rows": {"type": "array", "prefixItems": [{"const": 1}], "items": {"$ref": "#/$defs/row"}}
	},
	"$defs": {"row": {"type": "integer", "minimum": 1}}
}`

func TestRun(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"schema.json":  schema,
		"broken.json":  `{"type": "objekt"}`,
		"good.json":    `{"name": "front", "rows": [1, 2, 3]}`,
		"other.json":   `{"name": "back", "rows": []}`,
		"bad.json":     `{"name": "side", "rows": [2, 0, "3"], "row": 1}`,
		"partial.json": `{"name": "front"`,
		"two.json":     `{"name": "front", "rows": []} {}`,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		args string
		code int
		// The beginning of each line on standard output, in order.
		lines []string
	}{
		{"schema.json good.json other.json", 0, nil},
		{"schema.json good.json bad.json", 1, []string{
			"bad.json: /: additional properties 'row' not allowed",
			"bad.json: /name: value must be one of",
			"bad.json: /rows/0: value must be 1",
			"bad.json: /rows/1: minimum: got 0, want 1",
			"bad.json: /rows/2: got string, want integer",
		}},
		{"schema.json partial.json two.json missing.json", 1, []string{"partial.json: ", "two.json: ", "missing.json: "}},
		{"-not schema.json bad.json", 0, nil},
		{"-not schema.json bad.json good.json", 1, []string{"good.json: keeps to the schema, and must not"}},
		{"-not schema.json partial.json", 1, []string{"partial.json: "}},
		{"missing.json good.json", 2, nil},
		{"broken.json good.json", 2, nil},
		{"schema.json", 2, nil},
		{"-unknown schema.json good.json", 2, nil},
	} {
		t.Run(c.args, func(t *testing.T) {
			t.Chdir(dir)
			var stdout, stderr bytes.Buffer
			code := run(strings.Fields(c.args), &stdout, &stderr)
			if code != c.code {
				t.Errorf("exit code %d, want %d; says %q, %q", code, c.code, stdout.String(), stderr.String())
			}
			if c.code == 2 && stderr.Len() == 0 {
				t.Error("says nothing on standard error")
			}
			got := strings.Split(strings.TrimSuffix(stdout.String(), "\n"), "\n")
			if stdout.Len() == 0 {
				got = nil
			}
			if len(got) != len(c.lines) {
				t.Fatalf("%d lines, want %d:\n%s", len(got), len(c.lines), stdout.String())
			}
			for i, want := range c.lines {
				if !strings.HasPrefix(got[i], want) {
					t.Errorf("line %d is %q, want it to begin with %q", i+1, got[i], want)
				}
			}
		})
	}
}
