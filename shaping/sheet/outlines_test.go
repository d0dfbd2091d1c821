package sheet_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// Every sheet of every piece is on the page once, in the order in which they are laid.
func TestOutlinesHaveEverySheet(t *testing.T) {
	set, err := garment.Pieces(jumper())
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range []draw.Paper{draw.A4, draw.Letter} {
		var page bytes.Buffer
		if err := sheet.WriteOutlines(&page, paper, set.Pieces...); err != nil {
			t.Fatal(err)
		}
		rest := page.String()
		if !strings.Contains(rest, "size: "+paper.String()) {
			t.Errorf("%v: the page has another size", paper)
		}
		for _, alike := range draw.Alike(set.Pieces...) {
			tiling, err := draw.Tile(paper, alike...)
			if err != nil {
				t.Fatal(err)
			}
			for row := 1; row <= tiling.Rows(); row++ {
				for column := 1; column <= tiling.Columns(); column++ {
					if tiling.IsBlank(row, column) {
						continue
					}
					name := alike[0].Name()
					for _, other := range alike[1:] {
						name += " and " + other.Name()
					}
					says := fmt.Sprintf("%s, full size: row %d of %d from the top, column %d of %d from the left<", strings.ToUpper(name[:1])+name[1:],
						row, tiling.Rows(), column, tiling.Columns())
					_, after, ok := strings.Cut(rest, says)
					if !ok {
						t.Fatalf("%v: %q is not there, or not in its place", paper, says)
					}
					rest = after
				}
			}
		}
		if strings.Contains(rest, "full size: row") {
			t.Errorf("%v: more sheets than there are", paper)
		}
	}
}

func TestOutlinesRefuse(t *testing.T) {
	set, err := garment.Pieces(jumper())
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	if err := sheet.WriteOutlines(&page, draw.A4); err != sheet.ErrPiece {
		t.Errorf("no pieces: error %v", err)
	}
	if err := sheet.WriteOutlines(&page, draw.A4, garment.Piece{}); err != sheet.ErrPiece {
		t.Errorf("a piece that was not made: error %v", err)
	}
	if err := sheet.WriteOutlines(&page, draw.Paper(9), set.Pieces...); err != draw.ErrPaper {
		t.Errorf("no paper: error %v", err)
	}
	if page.Len() > 0 {
		t.Errorf("%d bytes written", page.Len())
	}
}
