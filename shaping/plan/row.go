package plan

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/shaping"
)

// rowForm has the keys of a row.
type rowForm struct {
	Row    int          `json:"row" within:"1 5000"`
	Panel  panelName    `json:"panel"`
	From   shaping.Side `json:"from"`
	Before []action     `json:"before,omitzero"`
	Knit   []run        `json:"knit"`
	After  []action     `json:"after,omitzero"`
}

func (r *rowForm) check(n *node) error {
	if len(r.Knit) != 1 {
		return n.at("knit").fault("a row knits one run of needles: [[first, last]]", nil)
	}
	return nil
}

// run is the needles from the first to the last.
type run [2]shaping.Needle

func (r *run) readNode(n *node) error {
	if n.kind != list || len(n.items) != 2 {
		return n.fault(`write the first and the last needle, such as ["L10", "R10"]`, nil)
	}
	for i, item := range n.items {
		if err := decodeText(item, &r[i]); err != nil {
			return err
		}
	}
	return checkSpan(n.items[0], shaping.Span{First: r[0], Last: r[1]})
}

// formOfRow returns the form of a row, which stands at path. It refuses what could not be read
// back, short of what the values themselves refuse when they are written.
func formOfRow(r shaping.Row, path string) (rowForm, error) {
	switch {
	case r.Row < 1 || r.Row > shaping.MaxRows:
		return rowForm{}, fault(path+".row", fmt.Sprint(r.Row), fmt.Sprintf("1 to %d", shaping.MaxRows), nil)
	case !slices.Contains(panelNames, r.Panel):
		return rowForm{}, fault(path+".panel", quoted(r.Panel), "one of "+strings.Join(panelNames, ", "), nil)
	case r.Knit.First.IsValid() && r.Knit.Last.IsValid() && !r.Knit.IsValid():
		return rowForm{}, fault(path+".knit", fmt.Sprint(r.Knit), "the first needle is never right of the last", nil)
	}
	form := rowForm{Row: r.Row, Panel: panelName(r.Panel), From: r.From, Knit: []run{{r.Knit.First, r.Knit.Last}}}
	var err error
	if form.Before, err = actions(r.Before, path+".before"); err != nil {
		return rowForm{}, err
	}
	form.After, err = actions(r.After, path+".after")
	return form, err
}

// actions checks that actions hold nothing that their keys cannot say.
func actions(list []shaping.Action, path string) ([]action, error) {
	var made []action
	for i, a := range list {
		if said := formOfAction(a).action(); said != a {
			return nil, fault(fmt.Sprintf("%s[%d]", path, i), a.String(), "the action has a field that it does not use", nil)
		}
		if why := lacking(a); why != "" {
			return nil, fault(fmt.Sprintf("%s[%d]", path, i), a.String(), why, nil)
		}
		made = append(made, action(a))
	}
	return made, nil
}

func (r rowForm) row() shaping.Row {
	made := shaping.Row{Row: r.Row, Panel: string(r.Panel), From: r.From, Knit: shaping.Span{First: r.Knit[0][0], Last: r.Knit[0][1]}}
	for _, a := range r.Before {
		made.Before = append(made.Before, shaping.Action(a))
	}
	for _, a := range r.After {
		made.After = append(made.After, shaping.Action(a))
	}
	return made
}
