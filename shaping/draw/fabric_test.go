package draw

import (
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
	"pgregory.net/rapid"
)

// Loops lie where the judge knitted them, also where needles are emptied and come back, and
// where stitches are cast on beside an edge.
func TestFabricHasTheCellsOfTheCloth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outline := gen.Outline().Draw(t, "outline")
		work, err := order.Arrange(outline)
		if err != nil {
			t.Skip(err)
		}
		cloth, err := bed.Knit(work)
		if err != nil {
			t.Fatal(err)
		}
		checkFabric(t, garment.Piece{Work: work, Cloth: cloth})
	})
}

func TestFabricOfGarments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set, err := garment.Pieces(gen.JumperSpec(gauge.MustParseLength("1 mm")).Draw(t, "spec"))
		if err != nil {
			t.Skip(err)
		}
		for _, p := range set.Pieces {
			checkFabric(t, p)
		}
	})
}

// checkFabric holds the runs of a piece against the judge's cloth: as many rows in each
// wale, one above the other, and no gap or step between wales that were knitted in one row
// and the row below.
func checkFabric(t *rapid.T, p garment.Piece) {
	f := lay(p)
	for i, runs := range f.wales {
		n, rows, last := shaping.NeedleAt(f.needles.First.Index()+i), 0, 0
		for _, r := range runs {
			if r.from < last || r.to < r.from || r.ends == 0 || r.begins == 0 {
				t.Fatalf("%s, %v: runs %v", p.Name(), n, runs)
			}
			rows, last = rows+r.to-r.from, r.to
		}
		if rows != p.Cloth.Height(n) {
			t.Fatalf("%s, %v: %d rows lie there, %d were knitted", p.Name(), n, rows, p.Cloth.Height(n))
		}
	}
	// What begins beside an edge begins as high as its neighbour towards the piece is then.
	for _, m := range f.marks {
		if m.step.Stitches < 0 {
			continue
		}
		inner := m.needle.Toward(m.edge.Opposite(), 1)
		if got, want := f.at(m.needle, m.height), f.at(inner, m.height); !got || !want {
			t.Fatalf("%s: %v comes at %d, its neighbour %v is not as high", p.Name(), m.needle, m.height, inner)
		}
	}
}

// Stitches that are cast on beside an edge lie as high as the edge is there.
func TestCastOnBesideAnEdgeLiesAtItsHeight(t *testing.T) {
	work, err := order.Arrange(order.Outline{
		Name: shaping.Back, Place: shaping.Bed, Carriage: shaping.Right, Top: order.BoundOff,
		Panels: shaping.Tree{{
			Name: shaping.Body, FirstRow: 1, LastRow: 8, Needles: shaping.Centred(4),
			Right: shaping.Schedule{{Row: 5, Stitches: 2, Method: shaping.CastOn}},
		}},
		ShoulderRow: 20,
	})
	if err != nil {
		t.Fatal(err)
	}
	cloth, err := bed.Knit(work)
	if err != nil {
		t.Fatal(err)
	}
	f := lay(garment.Piece{Work: work, Cloth: cloth})
	want := run{from: 4, to: 8, begins: shaping.DoCastOnEdge, ends: shaping.DoBindOff}
	for i, runs := range f.wales[4:] {
		if len(runs) != 1 || runs[0] != want {
			t.Errorf("R%d: %+v, want %+v", i+3, runs, want)
		}
	}
}

// at reports whether a needle's wale has a stitch on a row of height.
func (f fabric) at(n shaping.Needle, height int) bool {
	i := n.Index() - f.needles.First.Index()
	if i < 0 || i >= len(f.wales) {
		return false
	}
	for _, r := range f.wales[i] {
		if r.from < height && height <= r.to {
			return true
		}
	}
	return false
}
