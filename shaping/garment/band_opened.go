package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// The names of the bands of a front that opens.
const (
	RightFrontBand = "right front band"
	LeftFrontBand  = "left front band"
	LongBand       = "band along fronts and neck" // of a vee: up one front, round the neck and down the other
)

// Two fronts have the band of a vee in one, from hem to hem. Any other neck has its band
// first, from front edge to front edge, and then each front its own, over the end of the
// neckband. All are flat, and in the hand picked up with the right side facing from right to
// left: the wearer's right front comes first on the bed and in the hand.

// openedBands plans the bands of two fronts and the back.
func (j job) openedBands(s Set) ([]Band, error) {
	right, _ := s.Piece(shaping.RightFront)
	left, _ := s.Piece(shaping.LeftFront)
	back, _ := s.Piece(shaping.Back)
	if j.spec.Neck.Shape == VeeNeck {
		long, err := j.longBand(right, left, back)
		return []Band{long}, err
	}
	neck, err := j.newBand(Neckband)
	if err != nil {
		return nil, err
	}
	if neck.Strips, err = j.firstWithRoom(neck.Grid, j.roundNeck(right, left, back, neck.Gauge)); err != nil {
		return nil, err
	}
	if err := j.checkBandRoom(neck); err != nil {
		return nil, err
	}
	list := []Band{neck}
	for _, edge := range j.twoEdges(right, left) {
		b, err := j.frontBand(edge, neck)
		if err != nil {
			return nil, err
		}
		list = append(list, b)
	}
	return list, nil
}

// longBand plans the band of a vee. Where the bed is too narrow, the strips are joined at the
// shoulder seams, and if that does not do the front edges are apart as well.
func (j job) longBand(right, left, back Piece) (Band, error) {
	b, err := j.newBand(LongBand)
	if err != nil {
		return Band{}, err
	}
	edges := j.twoEdges(right, left)
	var ways [][]run
	for _, way := range j.roundNeck(right, left, back, b.Gauge) {
		first, last := &way[0], &way[len(way)-1]
		first.parts = slices.Insert(first.parts, 0, edges[0])
		last.parts = append(last.parts, edges[1])
		ways = append(ways, way)
	}
	edgesApart := j.roundNeck(right, left, back, b.Gauge)[1]
	edgesApart = slices.Insert(edgesApart, 0, run{"right front edge", edges[:1]})
	edgesApart = append(edgesApart, run{"left front edge", edges[1:]})
	ways = append(ways, edgesApart)
	if b.Strips, err = j.firstWithRoom(b.Grid, ways); err != nil {
		return Band{}, err
	}
	above := 0 // the uppermost button lies where the vee begins, or near the end of its strip
	if len(b.Strips) == len(edgesApart) {
		above = j.buttonMargin()
	}
	return b, j.placeButtons(b, above)
}

// frontBand plans the band along one front edge, over the end of the neckband.
func (j job) frontBand(edge Part, neck Band) (Band, error) {
	name := RightFrontBand
	if edge.Piece == shaping.LeftFront {
		name = LeftFrontBand
	}
	b, err := j.newBand(name)
	if err != nil {
		return Band{}, err
	}
	end := Part{Piece: Neckband, Side: edge.Side, Kind: EndPart, Rows: neck.layer(), Length: neck.Gauge.Height(neck.layer())}
	end.Wanted = b.Gauge.StitchesAlong(end.Rows, neck.Gauge)
	parts := []Part{edge, end}
	if name == LeftFrontBand {
		slices.Reverse(parts)
	}
	strip, err := j.alongFronts(run{edge.Piece, parts}, b.Grid)
	if err != nil {
		return Band{}, err
	}
	b.Strips = []Strip{strip}
	return b, j.placeButtons(b, j.buttonMargin())
}

// run is what one strip may pick up.
type run struct {
	name  string
	parts []Part
}

// roundNeck returns the ways to pick up the neck of two fronts and the back: in one strip, and
// in three that are joined at the shoulder seams.
func (j job) roundNeck(right, left, back Piece, band gauge.Gauge) [][]run {
	up, behind, down := j.frontNeck(right, band), j.neckParts(back, j.fromSide(), band), j.frontNeck(left, band)
	slices.Reverse(down)
	first, second := []Part{j.seam(shaping.RightFront)}, []Part{j.seam(shaping.Back)}
	return [][]run{
		{{"fronts and back", slices.Concat(up, first, behind, second, down)}},
		{{shaping.RightFront, up}, {shaping.Back, slices.Concat(behind, second)}, {shaping.LeftFront, down}},
	}
}

// frontNeck returns the parts of the neck of one of two fronts, from its front edge to the
// shoulder.
func (j job) frontNeck(front Piece, band gauge.Gauge) []Part {
	var parts []Part
	if front.Widths.Flat > 0 {
		parts = append(parts, j.neckMiddle(front))
	}
	return append(parts, j.neckSide(front, front.Outer(), band)...)
}

// twoEdges returns the rows of the right and the left front below the neck. In the hand one
// may have a row more: both get as many stitches, so that the buttons face each other.
func (j job) twoEdges(right, left Piece) [2]Part {
	edges := [2]Part{j.frontEdge(right), j.frontEdge(left)}
	mean := edges[0].Wanted.Add(edges[1].Wanted).Div(len(edges))
	for i := range edges {
		edges[i].Wanted = mean
	}
	return edges
}

// frontEdge returns the rows of one of two fronts below its neck.
func (j job) frontEdge(front Piece) Part {
	rows := front.FrontEdge()
	p := Part{Piece: front.Name(), Side: front.Outer(), Kind: EdgePart, Rows: rows, Length: front.Gauge.Height(rows)}
	p.Wanted = j.bandGauge().StitchesAlong(rows, front.Gauge)
	return p
}

// firstWithRoom returns the strips of the first way of which each has room on the bed, and
// of the last one if there is none.
func (j job) firstWithRoom(grid gauge.Rounding, ways [][]run) ([]Strip, error) {
	var strips []Strip
	for _, way := range ways {
		strips = nil
		room := true
		for _, r := range way {
			s, err := j.alongFronts(r, grid)
			if err != nil {
				return nil, err
			}
			strips = append(strips, s)
			room = room && (j.place != shaping.Bed || j.hasRoom(s.Stitches))
		}
		if room {
			break
		}
	}
	return strips, nil
}

// alongFronts makes a strip. The parts of the left front alone are made whole in the order of
// those of the right one, so that both get the same.
func (j job) alongFronts(r run, grid gauge.Rounding) (Strip, error) {
	parts := slices.Clone(r.parts)
	left := !slices.ContainsFunc(parts, func(p Part) bool { return p.Piece != shaping.LeftFront && p.Piece != Neckband }) // a band's end comes with its front
	if left {
		slices.Reverse(parts)
	}
	s, err := j.strip(r.name, parts, grid)
	if err != nil || !left {
		return s, err
	}
	slices.Reverse(s.Parts)
	if j.place == shaping.Bed {
		s.hang()
	}
	return s, nil
}

// buttonMargin returns how many stitches lie between an outermost button and the end of a
// band: those of 1.5 cm, one at least. Common practice, no source.
func (j job) buttonMargin() int {
	return max(j.bandGauge().Stitches(gauge.MustParseLength("1.5 cm")).Round(gauge.Rounding{}), 1)
}

// mostButtons is how many buttons a front has at most.
const mostButtons = 50

// placeButtons spreads the buttons along the front edges in a band, and along the end of the
// neckband beside them: the margin stays free at the lower end, and so many stitches at the
// upper one. The distances between them differ by one stitch at most, the smaller ones below.
func (j job) placeButtons(b Band, above int) error {
	for _, s := range b.Strips {
		before := 0
		for i := range s.Parts {
			if p := &s.Parts[i]; p.Kind == EdgePart {
				stitches := p.Count
				for _, other := range s.Parts {
					if other.Kind == EndPart {
						stitches += other.Count
					}
				}
				at, err := j.buttonsAt(*p, stitches, above)
				if err != nil {
					return err
				}
				for k, n := range at {
					if p.Piece == shaping.LeftFront { // whose lower end is that of the strip
						n = s.Stitches + 1 - n
					} else {
						n += before
					}
					at[k] = n
				}
				p.Buttons = at
			}
			before += s.Parts[i].Count
		}
	}
	return j.checkBandRoom(b)
}

// buttonsAt returns the stitches at which the buttons of a front edge lie, counted from its
// lower end.
func (j job) buttonsAt(edge Part, stitches, above int) ([]int, error) {
	buttons, first := j.spec.Opening.Buttons, j.buttonMargin()+1
	if buttons == 0 {
		return nil, nil
	}
	const apart = 3 // stitches from one to the next at least, so that there is fabric between them
	if most := max((stitches-above-first)/apart+1, 0); buttons > most {
		return nil, &Error{Field: "opening.buttons", Given: fmt.Sprint(buttons), Err: ErrFit,
			Want: fmt.Sprintf("the band along the %s has %s: at most %d", edge.Piece, plural.Stitches(stitches), most)}
	}
	at := []int{first}
	if buttons == 1 {
		return at, nil
	}
	distances, err := shaping.AlongRow(stitches-above-first, buttons-1)
	if err != nil {
		return nil, err
	}
	for _, d := range distances {
		for range d.Times {
			at = append(at, at[len(at)-1]+d.Every)
		}
	}
	return at, nil
}
