package garment

import (
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// Piece is a garment piece that has been planned and knitted by the judge.
// Treat it as a value: what it holds is shared.
type Piece struct {
	Work    shaping.Work
	Cloth   bed.Cloth
	Spec    Spec // as given
	Gauge   gauge.Gauge
	Heights Heights
	// ShoulderRow is the first row, from 1, at which a shoulder is shaped. Steps at an outer
	// edge below it are the armhole's. Without a slope it lies above the piece.
	ShoulderRow int
	Widths      Widths
	Sizes       []Size
	Edges       []Edge
	Warnings    []string // what the knitter should know before starting, one sentence each
}

// Made reports whether there are pieces and all of them are as this package planned and
// knitted them: it knits them once more. The zero Piece is not, nor is one whose work
// was changed or whose gauge is gone.
func Made(pieces ...Piece) bool {
	for _, p := range pieces {
		cloth, err := bed.Knit(p.Work)
		if err != nil || !cloth.Equal(p.Cloth) || p.Gauge.IsZero() {
			return false
		}
	}
	return len(pieces) > 0
}

// clone returns a copy that shares nothing that can be changed.
func (p Piece) clone() Piece {
	p.Work, p.Spec = p.Work.Clone(), p.Spec.Clone()
	p.Sizes, p.Edges, p.Warnings = slices.Clone(p.Sizes), slices.Clone(p.Edges), slices.Clone(p.Warnings)
	return p
}

// Size returns the size of that name; ok is false if there is none. See [Size.Name].
func (p Piece) Size(name string) (s Size, ok bool) {
	i := slices.IndexFunc(p.Sizes, func(s Size) bool { return s.Name == name })
	if i < 0 {
		return Size{}, false
	}
	return p.Sizes[i], true
}

// Name returns the name of the piece, such as "front".
func (p Piece) Name() string { return p.Work.Name }

func (p Piece) isSleeve() bool { return p.Widths.isSleeve() }

// knitted orders the rows of a piece and has them knitted.
func knitted(o order.Outline) (shaping.Work, bed.Cloth, error) {
	work, err := order.Arrange(o)
	if err != nil {
		return work, bed.Cloth{}, err
	}
	cloth, err := bed.Knit(work)
	return work, cloth, err
}

// Size is one length of the piece: as asked, as it will be knitted, and by how
// much the counting of the swatch leaves it uncertain.
type Size struct {
	// "width" at the underarm, "length" up to it, "cuff" or "hem" at the cast-on edge, "waist",
	// "waistHeight"; of one of two fronts its own part of a width; of fronts and backs "armhole", "inset", "neckWidth", "neckDepth",
	// "shoulder", "drop", "height"; of set-in caps "flat", "cap" and "capEdge". Of the last two
	// what was asked follows from the armhole and the ease; the last is a length along the
	// edge and has no count.
	Name      string
	Asked     gauge.Length
	Knitted   gauge.Length
	PlusMinus gauge.Length
	Count     int    // in whole stitches or rows; 0 if it has none
	Counted   string // "stitches" or "rows"
	Why       string // what moved it by more than half a stitch or row; empty if nothing did
}

// Off returns the knitted length less the asked one.
func (s Size) Off() gauge.Length { return s.Knitted.Sub(s.Asked) }

// The names of drawn edges.
const (
	NeckEdge     = "neck"
	ArmholeEdge  = "armhole"
	ShoulderEdge = "shoulder" // where the spec draws it; equal groups follow no drawing
	CapEdge      = "cap"

	// Straight stretches of the sides, where they move.
	HemToUnderarm   = "hem to underarm"
	HemToWaist      = "hem to waist"
	WaistToUnderarm = "waist to underarm"
	CuffToUnderarm  = "cuff to underarm"
)

// Edge is one drawn edge and the schedule that follows it. A neck's is that of its curve: what
// is flat in the middle is not part of it, though one of two fronts takes off its share with
// the first step.
type Edge struct {
	Name      string // such as NeckEdge
	Panel     string // where its first step lies
	Side      shaping.Side
	Path      string           // SVG path data in millimetres, in the box of whole stitches and rows
	Stitches  int              // stitches that go, with negative steps; less than 0 if they come. At a shoulder the last group is no step.
	Rows      int              // rows of the edge, from FirstRow on
	FirstRow  int              // the row of the piece that is row 1 of the schedule
	Schedule  shaping.Schedule // rows count from 1 at FirstRow
	Area      float64          // between drawing and staircase, cm2
	Floor     float64          // what no staircase can do without, cm2
	Deviation gauge.Length     // the greatest of the staircase from the drawing, at any row
}
