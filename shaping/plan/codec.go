package plan

import (
	"fmt"
	"io"
	"slices"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// planForm has the keys of a plan.
type planForm struct {
	Format string `json:"format"`
	Title  string `json:"title"`
	garment.GaugeSpec
	Pieces []pieceForm `json:"pieces"`
}

func (p *planForm) check(n *node) error {
	if err := checkTitle(p.Title); err != nil {
		return err
	}
	if err := checkGauge(p.GaugeSpec); err != nil {
		return err
	}
	if len(p.Pieces) == 0 {
		return fault("pieces", "", noPieces, nil)
	}
	var names []string
	for i, piece := range p.Pieces {
		if slices.Contains(names, string(piece.Name)) {
			return n.at("pieces").items[i].at("name").fault(sameName, nil)
		}
		names = append(names, string(piece.Name))
	}
	return nil
}

// Read reads a plan. It returns a [*garment.Error] that wraps [ErrPlan] if the
// document is longer than [MaxBytes], is not a plan or has a key too few, too many
// or with a value that cannot be read. Whether the plan can be knitted is not
// checked.
func Read(r io.Reader) (Plan, error) {
	text, err := readBounded(r)
	if err != nil {
		return Plan{}, sealed(err, ErrPlan)
	}
	return Parse(text)
}

// Parse is [Read] for a document in memory.
func Parse(text []byte) (Plan, error) {
	root, err := open(text, PlanFormat)
	if err != nil {
		return Plan{}, sealed(err, ErrPlan)
	}
	var form planForm
	if err := decode(root, &form); err != nil {
		return Plan{}, sealed(err, ErrPlan)
	}
	p := Plan{Title: form.Title, Gauge: form.Gauge, Swatch: form.Swatch, Swatches: form.Swatches}
	for _, piece := range form.Pieces {
		p.Pieces = append(p.Pieces, piece.piece())
	}
	return p, nil
}

// Write writes a plan, indented, with a line end after it. It writes nothing and
// returns a [*garment.Error] that wraps [ErrPlan] if [Parse] could not read the plan
// back: no piece, two of one name, a row or a needle out of bounds, an action with a
// field that it does not use, or more than [MaxBytes].
func Write(w io.Writer, p Plan) error {
	if err := p.check(); err != nil {
		return sealed(err, ErrPlan)
	}
	form := planForm{Format: PlanFormat, Title: p.Title, GaugeSpec: p.gaugeSpec(), Pieces: []pieceForm{}}
	for i, piece := range p.Pieces {
		made, err := formOf(piece, fmt.Sprintf("pieces[%d]", i))
		if err != nil {
			return sealed(err, ErrPlan)
		}
		form.Pieces = append(form.Pieces, made)
	}
	text, err := marshal(form)
	if err != nil {
		return sealed(err, ErrPlan)
	}
	if len(text) > MaxBytes {
		return sealed(tooLong(fmt.Sprintf("of %d bytes", len(text))), ErrPlan)
	}
	if err := form.readBack(); err != nil {
		return err
	}
	return write(w, text)
}

// readBack reads everything but the rows, which were checked one by one: they are most of the
// document, and reading takes longer than writing.
func (p planForm) readBack() error {
	p.Pieces = slices.Clone(p.Pieces)
	for i := range p.Pieces {
		p.Pieces[i].Rows = []rowForm{}
	}
	text, err := marshal(p)
	if err == nil {
		_, err = Parse(text)
	}
	return err
}

// check refuses what would not be known by its place once it is written, or takes long to
// write; [Write] reads back what it writes.
func (p Plan) check() error {
	if err := checkTitle(p.Title); err != nil {
		return err
	}
	if err := checkGauge(p.gaugeSpec()); err != nil {
		return err
	}
	if len(p.Pieces) == 0 {
		return fault("pieces", "", noPieces, nil)
	}
	names := map[string]bool{}
	for i, piece := range p.Pieces {
		path := fmt.Sprintf("pieces[%d]", i)
		if names[piece.Work.Name] {
			return fault(path+".name", quoted(piece.Work.Name), sameName, nil)
		}
		names[piece.Work.Name] = true
		if err := piece.check(path); err != nil {
			return err
		}
	}
	return nil
}

func (p Piece) check(path string) error {
	sizes := map[string]bool{}
	for _, size := range p.Sizes {
		if sizes[size.Name] {
			return fault(path+".size."+short(size.Name), "", "the key stands twice", nil)
		}
		sizes[size.Name] = true
	}
	for i, warning := range p.Warnings {
		if err := checkText(fmt.Sprintf("%s.warnings[%d]", path, i), warning); err != nil {
			return err
		}
	}
	for i, edge := range p.Edges {
		if err := checkText(fmt.Sprintf("%s.edges[%d]", path, i), edge.Name+edge.Path+edge.Words); err != nil {
			return err
		}
		for _, square := range []struct {
			name string
			area decimal.Decimal
		}{{"area", edge.Area}, {"floor", edge.Floor}} {
			if e := square.area.Exponent(); e < -mostPlaces || e > mostPlaces {
				return fault(fmt.Sprintf("%s.edges[%d].%s", path, i, square.name), "with too many digits", fmt.Sprintf("at most %d places", mostPlaces), nil)
			}
		}
	}
	if n := len(p.Work.Rows); n > shaping.MaxRows {
		return fault(path+".rows", fmt.Sprintf("%d of them", n), fmt.Sprintf("at most %d", shaping.MaxRows), nil)
	}
	return nil
}

// What both directions say of the same fault.
const (
	noPieces = "a plan has at least one piece"
	sameName = "an earlier piece has this name"
)
