package examples_test

import (
	"strings"
	"testing"

	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
)

// Pictures that README shows and no sample program keeps for itself.
func TestPictures(t *testing.T) {
	t.Run("regauge", func(t *testing.T) {
		spec, by := regauging(t)
		before, now := piecesOf(t, spec).Pieces[0], piecesOf(t, spec.Regauged(by)).Pieces[0]
		golden.Check(t, "testdata/regauge.svg", schematic(t, called("front before", before), called("front now", now)))
	})
	t.Run("sizes", func(t *testing.T) {
		var fronts []garment.Piece
		for _, size := range crew(t).Sizes {
			fronts = append(fronts, called("front, "+size.Body.Name, size.Set.Pieces[0]))
		}
		golden.Check(t, "testdata/sizes.svg", schematic(t, fronts...))
	})
	t.Run("gallery", func(t *testing.T) {
		out, messages, err := sampletest.Script(t, "..", "go", "run", "./examples/gallery", "-only", galleryNeck, "-as", "svg")
		if err != nil {
			t.Fatalf("%v: %s", err, messages)
		}
		golden.Check(t, "testdata/gallery.svg", []byte(out))
	})
}

// called returns a piece by another name, so that a picture tells it from others.
func called(name string, p garment.Piece) garment.Piece {
	p.Work.Name = name
	return p
}

func schematic(t *testing.T, pieces ...garment.Piece) []byte {
	t.Helper()
	var picture strings.Builder
	if err := draw.Schematic(&picture, draw.Look{}, pieces...); err != nil {
		t.Fatal(err)
	}
	return []byte(picture.String())
}
