package garment

import (
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// Strip is what a band picks up at one go, from end to end on the bed or once round in the
// hand.
type Strip struct {
	// Name says from what: "front and back", or where these are apart "front" and "back"; of an
	// opened front "fronts and back", or "right front", "back" and "left front", and where a
	// vee's front edges are apart as well "right front edge" and "left front edge".
	Name     string
	Parts    []Part       // on the bed from left to right, in the hand in the order in which they are picked up
	Stitches int          // picked up in all
	Wanted   gauge.Count  // stitches that its parts ask for
	Needles  shaping.Span // on the bed, about its middle; none in the hand
}

// Correction returns by how many stitches the strip differs from what was wanted: what
// makes up for the repeat, for whole stitches and for equal sides.
func (s Strip) Correction() gauge.Count { return gauge.Whole(s.Stitches).Sub(s.Wanted) }

// pieces returns the names of the pieces that a strip is picked up from.
func (s Strip) pieces() []string {
	var names []string
	for _, p := range s.Parts {
		if p.Piece != Neckband && !slices.Contains(names, p.Piece) {
			names = append(names, p.Piece)
		}
	}
	return names
}

// Along returns the stitches picked up along the neck of a piece, those of seams and of the
// front edges below it not counted.
func (s Strip) Along(piece string) int {
	stitches := 0
	for _, p := range s.Parts {
		if p.Piece == piece && p.Kind != SeamPart && p.Kind != EdgePart {
			stitches += p.Count
		}
	}
	return stitches
}

// strip makes parts whole together and lays them side by side. Slopes and straight rows that
// are each other's reflection get the same number; the middles of necks, which are picked up
// stitch by stitch, keep theirs. The total is the nearest to what is wanted that the grid
// allows and the live stitches leave. Where it is odd or even so that equal sides cannot make
// it up, the point of a front's vee gets a stitch, and without one the last seam.
func (j job) strip(name string, parts []Part, grid gauge.Rounding) (Strip, error) {
	s := Strip{Name: name, Parts: parts}
	twins := twinsOf(parts)
	fixed, even := 0, true
	var whole []gauge.Part
	for _, p := range parts {
		s.Wanted = s.Wanted.Add(p.Wanted)
		if !p.spreads() {
			fixed += p.Wanted.Round(gauge.Rounding{})
		}
	}
	least := fixed
	for _, t := range twins {
		part := gauge.Part{Name: t.kin.of + " " + t.kin.kind.String(), Times: len(t.at), Least: 1}
		for _, i := range t.at {
			part.Want = part.Want.Add(parts[i].Wanted)
			part.Least = max(part.Least, parts[i].Live)
		}
		part.Want = part.Want.Div(len(t.at))
		even = even && len(t.at)%2 == 0
		least += part.Times * part.Least
		whole = append(whole, part)
	}
	if even && grid.Multiple < 2 {
		grid = gauge.SameParity(fixed, gauge.Nearest) // without a repeat nothing stands against equal sides
	}
	s.Stitches = s.Wanted.Round(grid)
	if s.Stitches < least {
		grid.Direction = gauge.Up
		s.Stitches = gauge.Whole(least).Round(grid)
	}
	odd := -1 // the part that has the stitch which equal sides cannot make up
	if even && (s.Stitches-fixed)%2 != 0 {
		odd = oddPart(parts)
		fixed++
	}
	made, err := gauge.RoundTogether(s.Stitches-fixed, whole)
	if err != nil {
		return Strip{}, err
	}
	for i, t := range twins {
		for _, at := range t.at {
			parts[at].Wanted, parts[at].Count = whole[i].Want, made[i].Whole
		}
	}
	for i := range parts {
		p := &parts[i]
		if !p.spreads() {
			p.Count = p.Wanted.Round(gauge.Rounding{})
		}
		if i == odd {
			p.Count++
		}
		p.Phrase = j.phrase(*p)
	}
	if j.place == shaping.Bed {
		s.hang()
	}
	return s, nil
}

// hang names the needles of a strip and of its parts.
func (s *Strip) hang() {
	s.Needles = shaping.Centred(s.Stitches)
	rest := s.Needles
	for i := range s.Parts {
		p := &s.Parts[i]
		p.Needles = rest.Edge(shaping.Left, p.Count)
		rest = rest.Moved(shaping.Left, -p.Count)
	}
}

// spreads reports whether the stitches of a part follow from a length.
func (p Part) spreads() bool {
	return p.Kind == SlopePart || p.Kind == StraightPart || p.Kind == EdgePart || p.Kind == EndPart
}

// kin is what reflected parts have in common; two fronts are kin.
type kin struct {
	of   string
	kind PartKind
}

func kinOf(p Part) kin {
	if p.Piece == shaping.LeftFront || p.Piece == shaping.RightFront {
		p.Piece = shaping.Front
	}
	return kin{p.Piece, p.Kind}
}

// twins are parts that are made equal: a slope or straight rows and their reflection, where
// there is one.
type twins struct {
	kin kin
	at  []int // indices of the parts
}

// twinsOf returns the parts that spread, in the order of the first of each kin.
func twinsOf(parts []Part) []twins {
	var list []twins
next:
	for i, p := range parts {
		if !p.spreads() {
			continue
		}
		k := kinOf(p)
		for n := range list {
			if list[n].kin == k {
				list[n].at = append(list[n].at, i)
				continue next
			}
		}
		list = append(list, twins{k, []int{i}})
	}
	return list
}

// oddPart returns the index of the part that has the odd stitch.
func oddPart(parts []Part) int {
	seam := 0
	for i, p := range parts {
		switch {
		case p.Kind == PointPart && p.Piece != shaping.Back:
			return i
		case p.Kind == SeamPart:
			seam = i
		}
	}
	return seam
}
