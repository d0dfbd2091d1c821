package plan

import (
	"bytes"
	"encoding/json"
	"slices"

	"example.com/walewise/gauge"
)

// sizeOrder is the order in which sizes are written; others follow.
var sizeOrder = []string{"width", "length", "armhole", "neckWidth", "neckDepth", "shoulder", "drop"}

// sizeList is an object with a key for each size.
type sizeList []Size

// sizeForm has the keys of one size.
type sizeForm struct {
	Asked     gauge.Length `json:"asked"`
	Knitted   gauge.Length `json:"knitted"`
	PlusMinus gauge.Length `json:"plusMinus"`
}

func (f *sizeForm) check(n *node) error {
	if f.PlusMinus.Sign() < 0 {
		return n.at("plusMinus").fault("write it without a sign", nil)
	}
	return nil
}

// ordered returns the sizes in the order in which they are written.
func ordered(list []Size) []Size {
	rank := func(s Size) int {
		if i := slices.Index(sizeOrder, s.Name); i >= 0 {
			return i
		}
		return len(sizeOrder)
	}
	made := slices.Clone(list)
	slices.SortStableFunc(made, func(a, b Size) int { return rank(a) - rank(b) })
	return made
}

func (s *sizeList) readNode(n *node) error {
	if n.kind != object {
		return n.fault("write an object in { } with a key for each size", nil)
	}
	var made []Size
	for _, item := range n.items {
		if !plainKey.MatchString(item.key) {
			return fault(item.path(), "", "a size has a name of at most 40 letters and digits", nil)
		}
		var form sizeForm
		if err := decode(item, &form); err != nil {
			return err
		}
		made = append(made, Size{item.key, form.Asked, form.Knitted, form.PlusMinus})
	}
	*s = ordered(made)
	return nil
}

func (s sizeList) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, size := range s {
		if i > 0 {
			b.WriteByte(',')
		}
		value, err := json.Marshal(sizeForm{size.Asked, size.Knitted, size.PlusMinus})
		if err != nil {
			return nil, err
		}
		b.WriteString(jsonText(size.Name))
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}
