package draw_test

import (
	"os"
	"path/filepath"
	"testing"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

// demo returns the spec of a sample program.
func demo(t testing.TB, program string) garment.Spec {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "examples", program, "demo.json"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	spec, err := plan.ReadSpec(f)
	if err != nil {
		t.Fatal(err)
	}
	return spec
}
