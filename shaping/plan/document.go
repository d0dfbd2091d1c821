package plan

import (
	"slices"
	"strconv"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// PlanFormat is the format of the plans that are read and written here.
const PlanFormat = "walewise-plan/1"

// Plan is how the pieces of a garment are knitted. Treat it as a value: what it
// holds is shared. Its document is what [Write] writes and [Read] reads, not what package
// encoding/json makes of it.
type Plan struct {
	Title string

	// One of the three, as given in the spec.
	Gauge    gauge.Gauge
	Swatch   *gauge.Swatch
	Swatches []gauge.Swatch

	Pieces []Piece // at least one
}

// gaugeSpec returns what the plan says of the gauge.
func (p Plan) gaugeSpec() garment.GaugeSpec {
	return garment.GaugeSpec{Gauge: p.Gauge, Swatch: p.Swatch, Swatches: p.Swatches}
}

// Piece is one piece: the order of work, the drawn edges that it follows, and how
// large it becomes.
type Piece struct {
	Work     shaping.Work
	Sizes    []Size
	Edges    []Edge
	Warnings []string // what the knitter should know before starting
}

// Size is one length of a piece.
type Size struct {
	Name      string // "width", "length", "armhole", "neckWidth", "neckDepth", "shoulder", "drop" or another
	Asked     gauge.Length
	Knitted   gauge.Length
	PlusMinus gauge.Length // what the counting of the swatch leaves uncertain, to either side
}

// Edge is one drawn edge and how its steps are said. Its rows are rows of the piece.
type Edge struct {
	Name      string // such as "neck"
	Panel     string
	Side      shaping.Side
	Path      string          // SVG path data in millimetres
	Stitches  int             // stitches that go; less than 0 if they come
	Rows      int             // rows of the edge
	Area      decimal.Decimal // between drawing and steps, in cm2
	Floor     decimal.Decimal // the part of it that no steps can avoid, in cm2
	Deviation gauge.Length    // the greatest of the steps from the drawing, at any row
	Phrases   []shaping.Phrase
	Words     string
}

// From returns the plan of pieces that were knitted. Title and gauge, swatch or swatches
// are those of the first piece's spec. Knitted lengths and deviations are rounded
// to a hundredth of a millimetre, areas to a hundredth of a square centimetre.
func From(pieces ...garment.Piece) Plan {
	var p Plan
	for i, piece := range pieces {
		if i == 0 {
			g := piece.Spec.GaugeSpec()
			p.Title, p.Gauge, p.Swatch, p.Swatches = piece.Spec.Title, g.Gauge, g.Swatch, g.Swatches
		}
		p.Pieces = append(p.Pieces, fromPiece(piece))
	}
	return p
}

func fromPiece(p garment.Piece) Piece {
	made := Piece{Work: p.Work.Clone(), Warnings: slices.Clone(p.Warnings)}
	for _, s := range p.Sizes {
		made.Sizes = append(made.Sizes, Size{
			Name: s.Name, Asked: s.Asked, Knitted: hundredths(s.Knitted), PlusMinus: hundredths(s.PlusMinus),
		})
	}
	made.Sizes = ordered(made.Sizes)
	for _, e := range p.Edges {
		steps := e.Schedule.Shifted(e.FirstRow - 1)
		made.Edges = append(made.Edges, Edge{
			Name: e.Name, Panel: e.Panel, Side: e.Side, Path: e.Path, Stitches: e.Stitches, Rows: e.Rows,
			Area: area(e.Area), Floor: area(e.Floor), Deviation: hundredths(e.Deviation),
			Phrases: steps.Phrases(), Words: steps.Words(),
		})
	}
	return made
}

func hundredths(l gauge.Length) gauge.Length { return gauge.Millimetres(l.Millimetres().Round(2)) }

// area returns square centimetres to two places; what is no number is 0.
func area(cm2 float64) decimal.Decimal {
	d, err := decimal.NewFromString(strconv.FormatFloat(cm2, 'f', 2, 64))
	if err != nil {
		return decimal.Decimal{}
	}
	return d
}
