package mirror

import (
	"slices"
	"strings"

	"example.com/walewise/shaping"
)

// Name returns the name of the reflected panel or piece: "right half" for "left
// half", "left sleeve" for "right sleeve". A name that does not begin with the
// word left or right and a space stays as it is.
func Name(name string) string {
	if rest, ok := strings.CutPrefix(name, "left "); ok {
		return "right " + rest
	}
	if rest, ok := strings.CutPrefix(name, "right "); ok {
		return "left " + rest
	}
	return name
}

// Work returns the reflection of a piece, such as the right front for the left
// front: another piece, seen on the same facing. The axis is that of the first
// panel, the body. Place, facing and ledger stay.
func Work(w shaping.Work) shaping.Work {
	w = reflected(w)
	w.Name = Name(w.Name)
	return w
}

// View returns the same piece as it is seen on the given facing. If that is not
// the facing it has, the piece is reflected except for its own name: a left
// sleeve is one from both sides, but what lies at its left when seen on the knit
// side lies at its right when seen on the purl side. A facing that is not valid,
// in w or asked for, changes nothing.
func View(w shaping.Work, facing shaping.Facing) shaping.Work {
	if !w.Facing.IsValid() || facing != w.Facing.Opposite() {
		return w.Clone()
	}
	w = reflected(w)
	w.Facing = facing
	return w
}

// reflected reflects panels and rows.
func reflected(w shaping.Work) shaping.Work {
	axis := Even
	if len(w.Panels) > 0 {
		axis = AxisFor(w.Panels[0].Needles.Len())
	}
	w.Panels = axis.Tree(w.Panels)
	w.Rows = slices.Clone(w.Rows)
	for i, r := range w.Rows {
		w.Rows[i] = axis.Row(r)
	}
	return w
}
