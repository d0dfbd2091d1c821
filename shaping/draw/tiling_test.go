package draw_test

import (
	"bytes"
	"errors"
	"strconv"
	"testing"

	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
	"pgregory.net/rapid"
)

// Sheets show the outline at its true size, each shifted by as much as it lies beside or
// below the first, and together they hold all of it.
func TestTilesHoldTheOutlineAtFullSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, look := drawPiece(t), looks().Draw(t, "look")
		paper := rapid.SampledFrom([]draw.Paper{draw.A4, draw.Letter}).Draw(t, "paper")
		tiling, err := draw.Tile(paper, p)
		if err != nil {
			t.Fatal(err)
		}
		paperWidth, paperHeight := paper.Size()
		const overlap = 15_000
		var first []place
		width, height := 0, 0     // of a sheet
		covered := map[int]bool{} // corners of the outline that lie on a sheet
		for row := 1; row <= tiling.Rows(); row++ {
			for column := 1; column <= tiling.Columns(); column++ {
				var svg bytes.Buffer
				if err := tiling.Write(&svg, look, row, column); err != nil {
					t.Fatal(err)
				}
				picture := read(t, svg.Bytes())
				box := numbersOf(t, picture[0].attrs["viewBox"])
				width, height = box[2], box[3]
				if picture[0].attrs["width"] != text(width)+"mm" || picture[0].attrs["height"] != text(height)+"mm" {
					t.Fatalf("%s by %s for %v", picture[0].attrs["width"], picture[0].attrs["height"], box)
				}
				if width > thousandths(paperWidth.Millimetres().InexactFloat64())-15_000 || height > thousandths(paperHeight.Millimetres().InexactFloat64())-15_000 {
					t.Fatalf("%v leaves no margin on %v", box, paper)
				}
				bar := picture.classed("check-bar")[0].subpaths(t)[0]
				if bar[1].x-bar[0].x != 100_000 {
					t.Fatalf("the bar of 10 cm is %d long", bar[1].x-bar[0].x)
				}
				corners := picture.classed("outline")[0].subpaths(t)[0]
				if first == nil {
					first = corners
				}
				if got, want := tiling.IsBlank(row, column), !touches(corners, width, height); got != want && !look.Facing.IsValid() {
					t.Fatalf("row %d, column %d: blank %v, want %v", row, column, got, want)
				}
				for i, c := range corners {
					want := place{first[i].x - (column-1)*(width-overlap), first[i].y - (row-1)*(height-overlap)}
					if d := (place{c.x - want.x, c.y - want.y}); d.x*d.x+d.y*d.y > 100 {
						t.Fatalf("row %d, column %d: a corner lies at %v, not at %v", row, column, c, want)
					}
					if c.x >= 0 && c.x <= width && c.y >= 0 && c.y <= height {
						covered[i] = true
					}
				}
			}
		}
		if len(covered) != len(first) {
			t.Fatalf("%d of %d corners lie on a sheet", len(covered), len(first))
		}
		// The outline lies within the frames, and no column or row of sheets is too many.
		least, most := first[0], first[0]
		for _, c := range first {
			least, most = place{min(least.x, c.x), min(least.y, c.y)}, place{max(most.x, c.x), max(most.y, c.y)}
		}
		const room = 700
		all := place{tiling.Columns()*(width-overlap) + overlap, tiling.Rows()*(height-overlap) + overlap}
		if least.x < room || least.y < room || most.x > all.x-room || most.y > all.y-room {
			t.Fatalf("the outline from %v to %v does not lie within %v", least, most, all)
		}
		if tiling.Columns() > 1 && most.x-least.x+1_600 <= all.x-(width-overlap) ||
			tiling.Rows() > 1 && most.y-least.y+1_600 <= all.y-(height-overlap) {
			t.Fatalf("the outline from %v to %v has too many sheets, %d by %d", least, most, tiling.Columns(), tiling.Rows())
		}
		tall := 0
		for _, c := range first {
			tall = max(tall, first[0].y-c.y, c.y-first[0].y)
		}
		for _, s := range p.Sizes {
			if want := thousandths(s.Knitted.Millimetres().InexactFloat64()); s.Name == "height" && (tall < want-20 || tall > want+20) {
				t.Fatalf("%s: %d high on paper, %d in the cloth", p.Name(), tall, want)
			}
		}
	})
}

// touches reports whether a closed line comes into a rectangle, looked at step by step.
func touches(corners []place, width, height int) bool {
	for i, c := range corners {
		next := corners[(i+1)%len(corners)]
		const steps = 2000
		for k := range steps + 1 {
			x, y := c.x+(next.x-c.x)*k/steps, c.y+(next.y-c.y)*k/steps
			if x >= 0 && x <= width && y >= 0 && y <= height {
				return true
			}
		}
	}
	return false
}

// text returns thousandths as they are written.
func text(n int) string { return strconv.FormatFloat(float64(n)/1000, 'f', -1, 64) }

func TestTileRefuses(t *testing.T) {
	front, err := garment.Front(demo(t, "frontpiece"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := draw.Tile(draw.A4, garment.Piece{}); err != draw.ErrPiece {
		t.Errorf("no piece: error %v", err)
	}
	if _, err := draw.Tile(draw.Paper(7), front); err != draw.ErrPaper {
		t.Errorf("no paper: error %v", err)
	}
	back, err := garment.Back(demo(t, "pullover"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := draw.Tile(draw.A4, front, back); err != draw.ErrAlike {
		t.Errorf("front and back: error %v", err)
	}
	tiling, err := draw.Tile(draw.Letter, front)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range [][2]int{{0, 1}, {1, 0}, {tiling.Rows() + 1, 1}, {1, tiling.Columns() + 1}} {
		var svg bytes.Buffer
		if err := tiling.Write(&svg, draw.Look{}, at[0], at[1]); !errors.Is(err, draw.ErrSheet) || svg.Len() > 0 {
			t.Errorf("sheet %v: error %v, %d bytes written", at, err, svg.Len())
		}
	}
	var none draw.Tiling
	if none.Rows() != 0 || none.Columns() != 0 {
		t.Errorf("the zero tiling has %d rows and %d columns", none.Rows(), none.Columns())
	}
	if err := none.Write(&bytes.Buffer{}, draw.Look{}, 1, 1); !errors.Is(err, draw.ErrSheet) {
		t.Errorf("the zero tiling: error %v", err)
	}
	if !none.IsBlank(1, 1) {
		t.Error("the zero tiling has a sheet with a line on it")
	}
	if got := draw.Paper(7).String(); got != "Paper(7)" {
		t.Errorf("no paper is called %s", got)
	}
	if w, h := draw.Paper(7).Size(); !w.IsZero() || !h.IsZero() {
		t.Errorf("no paper is %v by %v", w, h)
	}
}
