package plan

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/shaping"
)

// pieceForm has the keys of a piece.
type pieceForm struct {
	Name     pieceName      `json:"name"`
	On       shaping.Place  `json:"on"`
	Facing   shaping.Facing `json:"facing"`
	Panels   []panelForm    `json:"panels"`
	Rows     []rowForm      `json:"rows"`
	Ledger   ledgerForm     `json:"ledger"`
	Size     sizeList       `json:"size"`
	Edges    []edgeForm     `json:"edges"`
	Warnings []string       `json:"warnings"`
}

func (p *pieceForm) check(n *node) error {
	switch {
	case len(p.Panels) == 0:
		return n.at("panels").fault("a piece has at least a body", nil)
	case len(p.Rows) > shaping.MaxRows:
		return fault(joined(n.path(), "rows"), fmt.Sprintf("%d of them", len(p.Rows)), fmt.Sprintf("at most %d", shaping.MaxRows), nil)
	}
	return nil
}

// ledgerForm is a ledger with bounds.
type ledgerForm struct {
	CastOn    int `json:"castOn" within:"0 1000000"`
	Increased int `json:"increased" within:"0 1000000"`
	Decreased int `json:"decreased" within:"0 1000000"`
	BoundOff  int `json:"boundOff" within:"0 1000000"`
	Live      int `json:"live" within:"0 1000000"`
}

// panelForm has the keys of a panel.
type panelForm struct {
	Name     panelName      `json:"name"`
	Parent   parentName     `json:"parent"`
	FirstRow int            `json:"firstRow" within:"1 5000"`
	LastRow  int            `json:"lastRow" within:"1 5000"`
	First    shaping.Needle `json:"first"`
	Last     shaping.Needle `json:"last"`
	Left     []stepForm     `json:"left"`
	Right    []stepForm     `json:"right"`
}

func (p *panelForm) check(n *node) error {
	if p.LastRow < p.FirstRow {
		return n.at("lastRow").fault(fmt.Sprintf("the last row does not come before the first, row %d", p.FirstRow), nil)
	}
	return checkSpan(n.at("first"), shaping.Span{First: p.First, Last: p.Last})
}

// checkSpan refuses a span whose first needle stands right of the last.
func checkSpan(first *node, s shaping.Span) error {
	if !s.IsValid() || s.IsEmpty() {
		return first.fault(fmt.Sprintf("the first needle is never right of the last, here %v", s.Last), nil)
	}
	return nil
}

// stepForm has the keys of a step.
type stepForm struct {
	Row      int            `json:"row" within:"1 5000"`
	Stitches int            `json:"stitches" within:"-2000 2000"`
	Method   shaping.Method `json:"method"`
}

func (s *stepForm) check(n *node) error {
	if s.Stitches == 0 {
		return n.at("stitches").fault("a step moves at least one stitch", nil)
	}
	return nil
}

// The names of pieces and of panels are fixed.
var (
	pieceNames = []string{shaping.Front, shaping.Back, shaping.LeftSleeve, shaping.RightSleeve, shaping.LeftFront, shaping.RightFront}
	panelNames = []string{shaping.Body, shaping.RightHalf, shaping.LeftHalf}
)

type (
	pieceName  string
	panelName  string
	parentName string // empty for the body
)

func (p *pieceName) UnmarshalText(text []byte) error { return readName(p, text, pieceNames) }
func (p *panelName) UnmarshalText(text []byte) error { return readName(p, text, panelNames) }

func (p *parentName) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = ""
		return nil
	}
	return readName(p, text, panelNames)
}

type nameError string

func (e nameError) Error() string { return string(e) }

func readName[T ~string](name *T, text []byte, known []string) error {
	if !slices.Contains(known, string(text)) {
		return nameError("one of " + strings.Join(known, ", "))
	}
	*name = T(text)
	return nil
}

// formOf returns the form of a piece, which stands at path.
func formOf(p Piece, path string) (pieceForm, error) {
	form := pieceForm{
		Name: pieceName(p.Work.Name), On: p.Work.Place, Facing: p.Work.Facing,
		Panels: []panelForm{}, Rows: []rowForm{}, Edges: []edgeForm{},
		Ledger: ledgerForm(p.Work.Ledger), Size: ordered(p.Sizes),
		Warnings: append([]string{}, p.Warnings...),
	}
	for _, panel := range p.Work.Panels {
		form.Panels = append(form.Panels, panelForm{
			Name: panelName(panel.Name), Parent: parentName(panel.Parent),
			FirstRow: panel.FirstRow, LastRow: panel.LastRow,
			First: panel.Needles.First, Last: panel.Needles.Last,
			Left: formOfSchedule(panel.Left), Right: formOfSchedule(panel.Right),
		})
	}
	for i, row := range p.Work.Rows {
		made, err := formOfRow(row, fmt.Sprintf("%s.rows[%d]", path, i))
		if err != nil {
			return pieceForm{}, err
		}
		form.Rows = append(form.Rows, made)
	}
	for _, edge := range p.Edges {
		form.Edges = append(form.Edges, formOfEdge(edge))
	}
	return form, nil
}

func formOfSchedule(s shaping.Schedule) []stepForm {
	steps := []stepForm{}
	for _, step := range s {
		steps = append(steps, stepForm(step))
	}
	return steps
}

func (p pieceForm) piece() Piece {
	made := Piece{
		Work: shaping.Work{
			Name: string(p.Name), Place: p.On, Facing: p.Facing, Ledger: shaping.Ledger(p.Ledger),
		},
		Sizes: p.Size,
	}
	if len(p.Warnings) > 0 {
		made.Warnings = p.Warnings
	}
	for _, panel := range p.Panels {
		made.Work.Panels = append(made.Work.Panels, shaping.Panel{
			Name: string(panel.Name), Parent: string(panel.Parent),
			FirstRow: panel.FirstRow, LastRow: panel.LastRow,
			Needles: shaping.Span{First: panel.First, Last: panel.Last},
			Left:    schedule(panel.Left), Right: schedule(panel.Right),
		})
	}
	for _, row := range p.Rows {
		made.Work.Rows = append(made.Work.Rows, row.row())
	}
	for _, edge := range p.Edges {
		made.Edges = append(made.Edges, edge.edge())
	}
	return made
}

func schedule(forms []stepForm) shaping.Schedule {
	var s shaping.Schedule
	for _, step := range forms {
		s = append(s, shaping.Step(step))
	}
	return s
}
