package plan

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/walewise/shaping"
)

var actionType = reflect.TypeFor[actionForm]()

// action is an action that is written with the keys it has.
type action shaping.Action

// actionForm has the keys of all actions.
type actionForm struct {
	Do     shaping.Do     `json:"do"`
	First  shaping.Needle `json:"first,omitzero"`
	Last   shaping.Needle `json:"last,omitzero"`
	Toward shaping.Side   `json:"toward,omitzero"`
	Yarn   yarn           `json:"yarn,omitzero"`
	Side   shaping.Side   `json:"side,omitzero"`
	Row    *counter       `json:"row,omitzero"`
}

// yarn is whether there is a length of yarn of its own.
type yarn bool

func (y yarn) MarshalText() ([]byte, error) { return []byte("separate"), nil }

func (y *yarn) UnmarshalText(text []byte) error {
	if string(text) != "separate" {
		return nameError(`"separate", or no key`)
	}
	*y = true
	return nil
}

// counter is a reading of the row counter.
type counter int

func (c *counter) readNode(n *node) error {
	whole, err := decodeWhole(n, within{0, shaping.MaxRows, true})
	*c = counter(whole)
	return err
}

// keysOf returns the keys of an action; those from optional on may be left out.
func keysOf(do shaping.Do) (known []string, optional int) {
	switch do {
	case shaping.DoWrap:
		return []string{"do", "first"}, 2
	case shaping.DoShift:
		return []string{"do", "first", "last", "toward"}, 4
	case shaping.DoBindOff:
		return []string{"do", "first", "last", "yarn"}, 3
	case shaping.DoCarriage:
		return []string{"do", "side"}, 2
	case shaping.DoCounter:
		return []string{"do", "row"}, 2
	}
	return []string{"do", "first", "last"}, 3
}

func (a *action) readNode(n *node) error {
	if n.kind != object {
		return n.fault(`write an object in { } with "do" and what the action needs`, nil)
	}
	what := n.at("do")
	if what == nil {
		return fault(joined(n.path(), "do"), "", "the key is missing: "+wantedOf(fieldsOf(actionType)[0].typ), nil)
	}
	var do shaping.Do
	if err := decodeText(what, &do); err != nil {
		return err
	}
	known, optional := keysOf(do)
	for _, item := range n.items {
		if !slices.Contains(known, item.key) && slices.Contains(keys(fieldsOf(actionType)), item.key) {
			return fault(item.path(), "", fmt.Sprintf("%v does not have this key, it has %s", do, strings.Join(known, ", ")), nil)
		}
	}
	if err := n.allow(known); err != nil {
		return err
	}
	for _, key := range known[:optional] {
		if n.at(key) == nil {
			return fault(joined(n.path(), key), "", fmt.Sprintf("the key is missing: %v needs it", do), nil)
		}
	}
	var form actionForm
	if err := decode(n, &form); err != nil {
		return err
	}
	*a = action(form.action())
	if a.Needles.IsEmpty() {
		return nil
	}
	return checkSpan(n.at("first"), a.Needles)
}

func formOfAction(a shaping.Action) actionForm {
	form := actionForm{Do: a.Do}
	switch a.Do {
	case shaping.DoCarriage:
		form.Side = a.Side
	case shaping.DoCounter:
		reading := counter(a.Counter)
		form.Row = &reading
	case shaping.DoWrap:
		form.First = a.Needles.First
	case shaping.DoShift:
		form.First, form.Last, form.Toward = a.Needles.First, a.Needles.Last, a.Toward
	case shaping.DoBindOff:
		form.First, form.Last, form.Yarn = a.Needles.First, a.Needles.Last, yarn(a.Separate)
	default:
		form.First, form.Last = a.Needles.First, a.Needles.Last
	}
	return form
}

// lacking says what an action needs that it does not have, "" if it has everything.
func lacking(a shaping.Action) string {
	switch {
	case a.Do == shaping.DoCarriage:
		if a.Side == 0 {
			return "it needs a side"
		}
	case a.Do == shaping.DoCounter:
		if a.Counter < 0 || a.Counter > shaping.MaxRows {
			return fmt.Sprintf("a reading from 0 to %d", shaping.MaxRows)
		}
	case a.Needles.IsEmpty() || !a.Needles.IsValid():
		return "it needs needles, the first never right of the last"
	case a.Do == shaping.DoShift && a.Toward == 0:
		return "it needs a side to shift toward"
	}
	return ""
}

// action returns what the form says.
func (f actionForm) action() shaping.Action {
	a := shaping.Action{
		Do: f.Do, Needles: shaping.Span{First: f.First, Last: f.Last},
		Toward: f.Toward, Separate: bool(f.Yarn), Side: f.Side,
	}
	if f.Do == shaping.DoWrap {
		a.Needles.Last = f.First
	}
	if f.Row != nil {
		a.Counter = int(*f.Row)
	}
	return a
}

func (a action) MarshalJSON() ([]byte, error) { return json.Marshal(formOfAction(shaping.Action(a))) }
