package garment

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/order"
)

// Sleeve plans the sleeve for the wearer's left or right arm, knits it and returns it.
// Both are worked alike. Front and back are planned for it, as a set-in cap is made to fit
// their armholes; what refuses them refuses the sleeve. It returns the same kinds of errors
// as [Front].
func Sleeve(s Spec, side shaping.Side) (Piece, error) {
	j, err := newJob(s)
	if err != nil {
		return Piece{}, err
	}
	if !side.IsValid() {
		return Piece{}, &Error{Given: side.String(), Want: "a sleeve is the left or the right one", Err: ErrSpec}
	}
	if err := checkSleeve(s); err != nil {
		return Piece{}, err
	}
	trunks, err := j.trunks()
	if err != nil {
		return Piece{}, err
	}
	return j.alone(newSleeve(j, side, trunks))
}

// sleeve is a sleeve in the making.
type sleeve struct {
	job
	name    string
	asked   SleeveSpec
	pair    Pair         // of the cap
	armhole gauge.Length // along the edges of front and back

	widths  Widths
	heights Heights
	sides   []slant // one, or none if they are upright
	cap     capEdge
}

// newSleeve plans a sleeve of a spec that checkSleeve has passed, for the armholes of front
// and back.
func newSleeve(j job, side shaping.Side, trunks []Piece) (Piece, error) {
	s, err := fittedSleeve(j, side, trunks)
	if err != nil {
		return Piece{}, err
	}
	return s.piece()
}

// fittedSleeve chooses the numbers of a sleeve.
func fittedSleeve(j job, side shaping.Side, trunks []Piece) (*sleeve, error) {
	s := &sleeve{
		job: j, name: sleeveName(side), asked: *j.spec.Sleeve, pair: capPair(j.spec.Methods.Armhole),
		armhole: armholeLength(trunks),
	}
	steps := []func() error{s.chooseWidths, s.chooseHeights, s.slantSides}
	if s.begun != nil {
		// Which widths can still be reached depends on the rows left.
		steps = []func() error{s.chooseHeights, s.keepSides}
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return nil, err
		}
	}
	if s.asked.Cap == SetInCap {
		s.widths.BindOff = trunks[0].Widths.BindOff
		if err := s.fitCap(); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// sleeveName returns the name of the sleeve for one arm.
func sleeveName(side shaping.Side) string {
	if side == shaping.Left {
		return shaping.LeftSleeve
	}
	return shaping.RightSleeve
}

// capPair returns how stitches go at a cap: several at once as at the armhole, or bound off
// where that is worked by decreases only, and single ones by decreases.
func capPair(armhole Pair) Pair {
	pair := defaultArmhole()
	if tied(armhole.Several) {
		pair.Several = armhole.Several
	}
	return pair
}

// armholeLength returns the length along an armhole, front and back together: the mean of
// the two armholes, of which one may be a row longer.
func armholeLength(trunks []Piece) gauge.Length {
	sum := gauge.Length{}
	for _, p := range trunks {
		sum = sum.Add(p.ArmholeLength(shaping.Left)).Add(p.ArmholeLength(shaping.Right))
	}
	return halfLength(sum)
}

// checkSleeve refuses a sleeve that is missing, or whose lengths are out of range.
func checkSleeve(s Spec) error {
	if s.Sleeve == nil {
		return &Error{Field: "sleeve", Want: "missing: give length, cuff and top", Err: ErrSpec}
	}
	v := s.Sleeve
	for _, l := range []struct {
		field    string
		length   gauge.Length
		required bool
	}{
		{"sleeve.length", v.Length, true},
		{"sleeve.cuff", v.Cuff, true},
		{"sleeve.top", v.Top, true},
		{"sleeve.band", v.Band.Or(gauge.Length{}), false},
		{"sleeve.ease", v.Ease, false},
		{"sleeve.flat", v.Flat.Or(gauge.Length{}), false},
		{"sleeve.plain", v.Plain, false},
	} {
		if err := s.checkLength(l.field, l.length, l.required); err != nil {
			return err
		}
	}
	band := v.Band.Or(s.Start.Band)
	switch {
	case !v.Cap.IsValid():
		return &Error{Field: "sleeve.cap", Given: v.Cap.String(), Want: "straight or set-in", Err: ErrSpec}
	case band.Cmp(v.Length) > 0:
		return s.fitError("sleeve.band", band, "longer than the sleeve: at most "+s.limit(v.Length))
	case band.Add(v.Plain.Mul(2)).Cmp(v.Length) > 0:
		return s.fitError("sleeve.plain", v.Plain, "twice, with the band, longer than the sleeve: at most "+s.limit(halfLength(v.Length.Sub(band))))
	case v.Cap != SetInCap && !v.Flat.IsZero():
		return s.fitError("sleeve.flat", v.Flat.Or(gauge.Length{}), "a straight top is flat all over: leave it out, or give sleeve.cap set-in")
	case v.Flat.Or(gauge.Length{}).Cmp(v.Top) > 0:
		return s.fitError("sleeve.flat", v.Flat.Or(gauge.Length{}), "wider than the sleeve: at most "+s.limit(v.Top))
	}
	return nil
}

// chooseWidths chooses the stitches: of cuff and top, which are both even or both odd, the
// one that loses more by it keeps its nearest whole number.
func (s *sleeve) chooseWidths() error {
	cuff, top := s.gauge.Stitches(s.asked.Cuff), s.gauge.Stitches(s.asked.Top)
	nearest := func(want gauge.Count, as int) int { return want.Round(gauge.SameParity(as, gauge.Nearest)) }
	w := Widths{Seam: s.spec.Seam.Stitches}
	w.CastOn, w.Body = cuff.Round(gauge.Rounding{}), top.Round(gauge.Rounding{})
	if (w.CastOn-w.Body)%2 != 0 {
		off := func(want gauge.Count, n int) gauge.Count { return gauge.Whole(n).Sub(want).Abs() }
		otherCuff, otherTop := nearest(cuff, w.Body), nearest(top, w.CastOn)
		// By as many stitches a narrow cuff is changed more than a wide top.
		if off(top, otherTop).Cmp(off(cuff, otherCuff)) <= 0 {
			w.Body = otherTop
		} else {
			w.CastOn = otherCuff
		}
	}
	if err := s.checkLeast("sleeve.cuff", s.asked.Cuff, w.CastOn, leastStitches); err != nil {
		return err
	}
	if err := s.checkLeast("sleeve.top", s.asked.Top, w.Body, leastStitches); err != nil {
		return err
	}
	w.CastOn += 2 * w.Seam
	w.Body += 2 * w.Seam
	s.widths = w
	return s.checkRoom(w, false)
}

// chooseHeights chooses the rows up to the underarm.
func (s *sleeve) chooseHeights() error {
	h := Heights{Underarm: max(s.gauge.Rows(s.asked.Length).Round(gauge.Rounding{}), 1)}
	if s.begun != nil {
		h.Underarm = max(h.Underarm, s.begun.rows)
	}
	h.Band = min(s.gauge.Rows(s.asked.Band.Or(s.spec.Start.Band)).Round(gauge.Rounding{}), h.Underarm)
	if s.begun != nil {
		h.Band = s.begun.band(h.Band)
	}
	s.heights = h
	if h.Underarm > curve.MaxRows {
		return s.spec.fitError("sleeve.length", s.asked.Length, fmt.Sprintf("%d rows, at most %d are planned, which is %s",
			h.Underarm, curve.MaxRows, s.spec.atMost(s.gauge.Height(curve.MaxRows))))
	}
	return nil
}

// slantSides shapes the sides from the cuff's band to the underarm, without the rows that
// the spec wants plain.
func (s *sleeve) slantSides() error {
	w, h := s.widths, s.heights
	plain := s.gauge.Rows(s.asked.Plain).Round(gauge.Rounding{})
	made, err := s.checkBend(bend{
		field: "sleeve.cuff", given: s.asked.Cuff, ends: []int{w.Body - 2*w.Seam}, plainKept: plain > 0,
		least: leastStitches, most: w.whole(s.mostStitches(), false),
		stretches: []slant{{
			name: CuffToUnderarm, above: h.Band + plain, rows: max(h.Underarm-h.Band-2*plain, 0), stitches: (w.CastOn - w.Body) / 2,
		}},
	}, func(rows []int) error {
		return s.spec.fitError("sleeve.length", s.asked.Length, fmt.Sprintf("too few rows to be shaped beside the band and the plain rows: at least %s",
			s.spec.atLeast(s.gauge.Height(h.Band+2*plain+rows[0]))))
	})
	s.sides = made
	return err
}

// outerSteps returns everything that happens at one edge.
func (s *sleeve) outerSteps(edge shaping.Side) shaping.Schedule {
	steps := append(slanted(s.sides), s.underarm(edge)...)
	return s.begun.goesOnWith(append(steps, s.laid(s.cap.traced, edge)...), edge)
}

// piece orders the rows, knits them and reports.
func (s *sleeve) piece() (Piece, error) {
	body := shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: s.heights.Top(), Needles: shaping.Centred(s.widths.CastOn),
		Left: s.outerSteps(shaping.Left), Right: s.outerSteps(shaping.Right),
	}
	outline := order.Outline{
		Name: s.name, Place: s.place, Carriage: s.carriage, Panels: shaping.Tree{body}, Top: order.BoundOff,
	}
	if s.pair.Several == shaping.Hold {
		outline.Top = order.OnWaste
	}
	work, cloth, err := knitted(outline)
	if err != nil {
		return Piece{}, err
	}
	edges, err := s.edges()
	if err != nil {
		return Piece{}, err
	}
	p := Piece{
		Work: work, Cloth: cloth, Spec: s.spec, Gauge: s.gauge,
		Heights: s.heights, ShoulderRow: s.heights.Top() + 1, Widths: s.widths, Edges: edges,
	}
	p.Sizes = s.sizes(p)
	p.Warnings = s.warnings(p.Sizes)
	return p, nil
}

// edges returns the drawn edges for the report.
func (s *sleeve) edges() ([]Edge, error) {
	var edges []Edge
	for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
		for _, slant := range s.sides {
			edge, err := s.slantEdge(slant, side, shaping.Body)
			if err != nil {
				return nil, err
			}
			edges = append(edges, edge)
		}
		if s.widths.Inset == 0 {
			continue
		}
		edge, err := s.worked(s.cap.drawing, s.laid(s.cap.traced, side), s.capFirst(side))
		if err != nil {
			return nil, err
		}
		edge.Panel, edge.Side = shaping.Body, side
		edges = append(edges, edge.counted())
	}
	return edges, nil
}

// sizes lists what was asked and what was knitted.
func (s *sleeve) sizes(p Piece) []Size {
	w, h := s.widths, s.heights
	both := parity(w.Body) + ", as both cuff and top must be"
	sizes := []Size{
		s.wide("width", s.asked.Top, w.Body-2*w.Seam, s.whyReached(s.asked.Top, w.Body-2*w.Seam, both)),
		s.high("length", s.asked.Length, h.Underarm, s.whyKnitted("")),
		s.wide("cuff", s.asked.Cuff, w.CastOn-2*w.Seam, s.whyKnitted(both)),
	}
	if s.asked.Cap != SetInCap {
		return sizes
	}
	along := p.CapLength()
	return append(sizes,
		s.wide("flat", s.cap.flat, w.Flat-2*w.Seam, parity(w.Flat)+", as the sleeve is"),
		s.high("cap", s.cap.height, h.Cap, "the nearest that gives the length along the edge"),
		Size{
			Name: "capEdge", Asked: s.cap.wanted, Knitted: along,
			// Part of it runs up and part across: uncertain by no more than both together.
			PlusMinus: s.gauge.Tolerance().Height(along).Add(s.gauge.Tolerance().Width(along)),
		})
}

// warnings says what the knitter should know before starting.
func (s *sleeve) warnings(sizes []Size) []string {
	list := append(s.swatchWarnings(), s.begunWarnings(sizes)...)
	inset := s.spec.Armhole.Inset.Sign() > 0
	if s.asked.Cap != SetInCap {
		if inset {
			list = append(list, "The top is straight and the armhole is not: a set-in cap follows it.")
		}
		return list
	}
	list = append(list, apartWarning(s.capFirst(shaping.Left), s.capFirst(shaping.Right))...)
	if depth := s.spec.Armhole.Depth; s.gauge.Height(s.heights.Cap).Cmp(depth) > 0 {
		list = append(list, fmt.Sprintf("The cap is %s high, the armhole %s deep: it will not lie smoothly. A wider sleeve.top or less sleeve.ease makes it lower.",
			s.spec.nearly(s.gauge.Height(s.heights.Cap)), s.spec.text(depth)))
	}
	if !inset {
		list = append(list, "The cap is set into a straight armhole: without an inset a straight top is usual.")
	}
	return list
}

// capFirst returns the row at which the drawing of the cap begins at one edge.
func (s *sleeve) capFirst(edge shaping.Side) int {
	return s.outerRow(s.pair, s.heights.Underarm, edge, shaping.Step{Row: 1, Method: s.pair.tied()})
}
