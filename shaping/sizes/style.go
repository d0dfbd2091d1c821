package sizes

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// Style is what a garment is in all sizes.
type Style struct {
	// Spec is the garment in any one size. Its figures of the body are not looked at: width,
	// length, hem and waist of the body, depth and inset of the armhole, width of the neck,
	// length, cuff and top of the sleeve, head and hand. But an inset above 0 asks for
	// armholes that go in, a waist for sides that follow the waist, and a sleeve for sleeves.
	//
	// The flat parts of necks and caps, and what an armhole takes off at once and the height
	// of its curve, keep their proportion to the width, inset or depth that they are part of.
	// All else is the same in all sizes.
	Spec garment.Spec
	Ease Ease
	// Below is how far the garment reaches below the waist; default three eighths of the
	// length from nape to waist. No source.
	Below garment.Optional
}

// Ease is by how much a garment is larger than the body.
type Ease struct {
	// Body is that round chest and waist. Default 8 cm: 2 to 4 in are a standard fit, as of
	// "Factoring in ease" (knittingmagic.biz), which gives a chest of 40 in a garment of 42
	// to 44 in.
	Body garment.Optional
	// Sleeve is that round the upper arm and the wrist. Default 4 cm; no source.
	Sleeve garment.Optional
	// Armhole is by how much it is deeper. Default 2.5 cm; no source.
	Armhole garment.Optional
}

// The rules without a source are common practice.

func defaultBodyEase() gauge.Length    { return millimetres(80) }
func defaultSleeveEase() gauge.Length  { return millimetres(40) }
func defaultArmholeEase() gauge.Length { return millimetres(25) }

// belowArmpit is by how much the underarm of a garment without ease lies below the fold of
// the armpit, to which surveys measure; no source.
func belowArmpit() gauge.Length { return millimetres(35) }

// bandRoom is what a band fills of a neck at each side; no source.
func bandRoom() gauge.Length { return millimetres(20) }

// headRoom is what the edge of a neck is longer than the head needs, as whole stitches and
// rows may take as much; no source.
func headRoom() gauge.Length { return millimetres(10) }

// neckRise is how much higher the neck points of a back lie than its middle: about 1 in,
// begun with the shoulders (knittingrobin.blogspot.com, 3 March 2014).
func neckRise() gauge.Length { return gauge.MustParseLength("1 in") }

// flattest is the least fall of a shoulder: 3/4 in are a little less than average
// (knittingrobin.blogspot.com, 16 September 2013).
func flattest() gauge.Length { return gauge.MustParseLength("3/4 in") }

// usualDrop is the fall of a shoulder in most patterns for two needles
// (knittingrobin.blogspot.com, 16 September 2013 and 3 March 2014).
func usualDrop() gauge.Length { return gauge.MustParseLength("1 in") }

// tape is a garment for one body in the making.
type tape struct {
	Style
	body   Body
	filled []Filled
}

// For returns the spec of the garment for one body, and what was filled in for
// measurements that are missing. It returns an [*Error] that names a measurement that is
// missing and that no rule can stand for.
//
//   - The body is half of chest and ease wide, and as long as from the nape to the waist and
//     below it. It follows the waist where the style asks for it and where that takes in
//     2 cm or more at each side, and at the hem the hips where they are wider.
//   - The armhole goes in from the body's width to the shoulders. It is as deep as the
//     body's and its ease, and half as deep as the sleeve is wide at least. If neither
//     armhole nor armpit was measured it is 1 in deeper than that; no source.
//   - The shoulders fall by as much as the nape lies above their points, less 1 in of the
//     back's neck, and 3/4 in at least. If fall was not measured, as the style says, else by
//     1 in, as in most patterns for two needles.
//   - The neck is as wide as its base would be if it were round, and 2 cm at each side that
//     the band fills. If it was not measured, a third of the shoulders stands for the base
//     (a third of the back's width: zanotowane.pl/713/7786). It is so wide at least that the
//     edge, of twice its width and eight sevenths of its depths of front and back, is as
//     long as the mean of head and neck (stylishknitting.com, How to knit neckline), and as
//     the head and 1 cm when it is stretched. If the head was not measured a large one
//     stands for it: 53.73 cm of children with a chest below 30 in (boys of five years and
//     two standard deviations above their median: WHO Child Growth Standards, 2007), 60.1 cm
//     of others (the 95th percentile of [Men]).
//   - If the style leaves them open, the front's neck is half as deep as that base and the
//     room of the band are wide, from 2 in (2 to 3 in: a handbook; about 3 in:
//     chezlizzie.blogspot.com, 25 March 2021) to 8 cm (7 to 8 cm at least for adults:
//     stylishknitting.com), and the back's is 1 in deep.
//   - Sleeves are as wide as arm and wrist and their ease. If these were not measured, 33
//     and 20 percent of what the garment is round the body (E. Zimmermann's percentages, as
//     in lindysknitslaces.com, 19 March 2010).
//   - Sleeves are as long as the inner arm, or as the arm less the height of the cap, which
//     is taken as the armhole's depth less 2 in for chests below 31 in, 3 in to 48 in and 4
//     in above (slippedstitches.wordpress.com, March 2014). Into a straight armhole goes a
//     sleeve as long as from the middle of the back to the wrist, less half of the body's
//     width (designyourownsweater, "Sleeve").
func (s Style) For(b Body) (garment.Spec, []Filled, error) {
	t := &tape{Style: s, body: b}
	if err := t.required(); err != nil {
		return garment.Spec{}, nil, err
	}
	spec := t.spec()
	return spec, t.filled, nil
}

// required refuses a body without the measurements that nothing can stand for.
func (t *tape) required() error {
	b := t.body
	missing := func(key, why string) error {
		return &Error{Size: b.Name, Key: key, Want: "missing: " + why, Err: ErrBodies}
	}
	switch {
	case b.Chest.IsZero():
		return missing("chest", "measure it round the fullest part")
	case b.Shoulders.IsZero():
		return missing("shoulders", "measure across the back from shoulder point to shoulder point, as they do not follow from the chest")
	case b.Head.IsZero() && b.Chest.Cmp(gauge.MustParseLength("21 in")) < 0:
		return missing("head", "measure it: for so small a child no rule is safe")
	case b.BackWaist.IsZero():
		return missing("backWaist", "measure from the nape to the waist, as it does not follow from the chest")
	case t.Style.Spec.Sleeve == nil:
	case t.straight() && b.Arm.IsZero():
		return missing("arm", "measure from the shoulder point to the wrist, as the sleeve of a straight armhole begins below it")
	case b.Arm.IsZero() && b.InnerArm.IsZero():
		return missing("arm", "measure from the shoulder point to the wrist, or give innerArm, from the underarm to the wrist")
	}
	return nil
}

// straight reports whether the armholes do not go in.
func (t *tape) straight() bool { return t.Style.Spec.Armhole.Inset.IsZero() }

// spec replaces the figures of the body.
func (t *tape) spec() garment.Spec {
	b, s := t.body, t.Style.Spec
	style := t.Style.Spec
	width, top := half(t.round()), t.top()
	drop := t.drop()
	depth := t.armhole(top, drop)
	below := t.Below.Or(part(b.BackWaist, 3, 8))
	if s.Title == "" {
		s.Title = "A garment"
	}
	s.Title = fmt.Sprintf("%s, size %s", s.Title, b.Name)
	s.Body = garment.Body{Width: width, Length: b.BackWaist.Add(below).Sub(drop).Sub(depth), Waist: t.waist(width, below), Hem: t.hem(width)}
	s.Armhole = garment.Armhole{Depth: depth, Path: style.Armhole.Path, Curve: inProportion(style.Armhole.Curve, style.Armhole.Depth, depth)}
	if !t.straight() {
		s.Armhole.Inset = longer(half(width.Sub(b.Shoulders)), gauge.Length{})
		// Half at once (30daysweater.com, day 8).
		s.Armhole.BindOff = garment.Exactly(half(s.Armhole.Inset))
		if !style.Armhole.BindOff.IsZero() {
			s.Armhole.BindOff = inProportion(style.Armhole.BindOff, style.Armhole.Inset, s.Armhole.Inset)
		}
	}
	s.Head, s.Hand = b.Head, b.Hand
	if s.Opening == nil { // an open neck need not let it through
		s.Head = t.head()
	}
	t.neck(&s)
	s.Shoulder.Drop = drop
	if s.Sleeve != nil {
		s.Sleeve = t.sleeve(width, depth, top)
	}
	t.unchecked()
	return s
}

// round returns what the garment is round the body.
func (t *tape) round() gauge.Length { return t.body.Chest.Add(t.Ease.Body.Or(defaultBodyEase())) }

// waist returns the waist that the sides follow, nil where they stay straight: what would
// take in less than 2 cm at each side is left; no source.
func (t *tape) waist(width, below gauge.Length) *garment.Waist {
	if t.Style.Spec.Body.Waist == nil {
		return nil
	}
	if t.body.Waist.IsZero() {
		t.left("waist", "not given: the sides stay straight")
		return nil
	}
	waist := half(t.body.Waist.Add(t.Ease.Body.Or(defaultBodyEase())))
	if width.Sub(waist).Cmp(millimetres(2*20)) < 0 {
		return nil
	}
	return &garment.Waist{Width: waist, Height: below}
}

// hem returns the width at the hem where the hips are wider, where it may lie close; no
// source.
func (t *tape) hem(width gauge.Length) gauge.Length {
	if hips := half(t.body.Hips); hips.Cmp(width) > 0 {
		return hips
	}
	return gauge.Length{}
}

// drop is how far the shoulder falls from the neck point to its tip.
func (t *tape) drop() gauge.Length {
	if !t.body.Fall.IsZero() {
		return longer(t.body.Fall.Sub(neckRise()), flattest())
	}
	if drop := t.Style.Spec.Shoulder.Drop; !drop.IsZero() {
		t.fill("fall", "shoulder drop", drop, "as the style says", "")
		return drop
	}
	t.fill("fall", "shoulder drop", usualDrop(), "1 in, as in most patterns", "knittingrobin.blogspot.com, 16 September 2013")
	return usualDrop()
}

// top is how wide a sleeve is at the underarm.
func (t *tape) top() gauge.Length {
	if !t.body.UpperArm.IsZero() {
		return t.body.UpperArm.Add(t.Ease.Sleeve.Or(defaultSleeveEase()))
	}
	top := percent(t.round(), 33)
	t.fill("upperArm", "width at the upper arm", top, "33 % of what the garment is round the body", zimmermann)
	return top
}

const zimmermann = "E. Zimmermann's percentages, as in lindysknitslaces.com, 19 March 2010"

// armhole is how deep the armhole is below the tip of the shoulder.
func (t *tape) armhole(top, drop gauge.Length) gauge.Length {
	ease, least := t.Ease.Armhole.Or(defaultArmholeEase()), half(top)
	switch b := t.body; {
	case !b.Armhole.IsZero():
		return longer(b.Armhole.Add(ease), least)
	case !b.Armpit.IsZero():
		return longer(b.Armpit.Sub(drop).Add(belowArmpit()).Add(ease), least)
	}
	depth := least.Add(gauge.MustParseLength("1 in"))
	t.fill("armhole", "armhole depth", depth, "half of the width at the upper arm and 1 in", "")
	return depth
}

// neck sets the neck of front and back.
func (t *tape) neck(s *garment.Spec) {
	style := t.Style.Spec
	across, round := t.neckBase()
	across = across.Add(bandRoom().Mul(2))
	if s.Neck.Depth.IsZero() {
		s.Neck.Depth = shorter(longer(half(across), gauge.MustParseLength("2 in")), millimetres(80))
		t.fill("", "neck depth", s.Neck.Depth, "half of the neck's width, from 2 in to 8 cm", "stylishknitting.com, How to knit neckline; chezlizzie.blogspot.com, 25 March 2021")
	}
	back := garment.BackSpec{Neck: garment.BackNeck{Depth: neckRise()}}
	if s.Back != nil {
		back = *s.Back
	}
	if back.Neck.Depth.IsZero() {
		back.Neck.Depth = neckRise()
	}
	width := across
	if s.Opening == nil {
		width = longer(across, t.forHead(s.Head, round, s.Neck.Depth.Add(back.Neck.Depth)))
	}
	s.Neck.Width = width
	s.Neck.Flat = inProportion(style.Neck.Flat, style.Neck.Width, width)
	back.Neck.Flat = inProportion(back.Neck.Flat, style.Neck.Width, width)
	s.Back = &back
}

// neckBase returns the width of the neck's base, as if it were round, and its girth.
func (t *tape) neckBase() (across, round gauge.Length) {
	pi := decimal.RequireFromString("3.1416")
	if neck := t.body.Neck; !neck.IsZero() {
		return gauge.Millimetres(neck.Millimetres().DivRound(pi, places)), neck
	}
	across = part(t.body.Shoulders, 1, 3)
	t.fill("neck", "neck width without the band", across, "a third of the shoulders", "zanotowane.pl/713/7786")
	return across, gauge.Millimetres(across.Millimetres().Mul(pi))
}

// head returns the head that the neck must let through: a large one where it was not
// measured. Of children up to 30 in it is that of boys of 60 months, two standard deviations
// above the median, with which the WHO Child Growth Standards (2007) end; of others the 95th
// percentile of the men of [Men]. That 30 in part them has no source.
func (t *tape) head() gauge.Length {
	switch {
	case !t.body.Head.IsZero():
		return t.body.Head
	case t.body.Chest.Cmp(gauge.MustParseLength("30 in")) < 0:
		head := gauge.MustParseLength("53.73 cm")
		t.fill("head", "the neck is made for one of", head, "a large one of boys of five years", "WHO Child Growth Standards, head circumference-for-age (2007)")
		return head
	}
	head := gauge.MustParseLength("60.1 cm")
	t.fill("head", "the neck is made for one of", head, "a large one of men", "C. C. Gordon et al., Natick TR-15/007, 2014")
	return head
}

// forHead is the least width of a neck so deep in all that lets a head through: its edge
// is taken to be twice its width and eight sevenths of its depths long, which no source
// says.
func (t *tape) forHead(head, neck, depths gauge.Length) gauge.Length {
	stretch := decimal.NewFromInt(25) // as package garment has it
	if given := t.Style.Spec.Neck.Stretch; given != nil {
		stretch = *given
	}
	hundred := decimal.NewFromInt(100)
	stretched := gauge.Millimetres(head.Millimetres().Mul(hundred).DivRound(hundred.Add(stretch), places))
	edge := longer(stretched.Add(headRoom()), half(head.Add(neck)))
	return half(edge.Sub(part(depths, 8, 7)))
}

// sleeve returns the sleeve.
func (t *tape) sleeve(width, depth, top gauge.Length) *garment.SleeveSpec {
	b, s := t.body, *t.Style.Spec.Sleeve
	s.Flat = inProportion(s.Flat, s.Top, top)
	s.Top = top
	switch {
	case t.straight():
		s.Length = b.Arm.Add(half(b.Shoulders)).Sub(half(width))
	case !b.InnerArm.IsZero():
		s.Length = b.InnerArm
	default:
		s.Length = b.Arm.Sub(depth.Sub(capAllowance(b.Chest)))
	}
	if b.Wrist.IsZero() {
		s.Cuff = percent(t.round(), 20)
		t.fill("wrist", "width at the cuff", s.Cuff, "20 % of what the garment is round the body", zimmermann)
	} else {
		s.Cuff = b.Wrist.Add(t.Ease.Sleeve.Or(defaultSleeveEase()))
	}
	return &s
}

// capAllowance is by how much a cap is lower than the armhole is deep
// (slippedstitches.wordpress.com, March 2014: 2 in for a chest up to 30 in, 3 in for 31 to
// 48 in, 4 in above).
func capAllowance(chest gauge.Length) gauge.Length {
	switch {
	case chest.Cmp(gauge.MustParseLength("31 in")) < 0:
		return gauge.MustParseLength("2 in")
	case chest.Cmp(gauge.MustParseLength("48 in")) <= 0:
		return gauge.MustParseLength("3 in")
	}
	return gauge.MustParseLength("4 in")
}

// unchecked lists what cannot be checked.
func (t *tape) unchecked() {
	if t.body.Hips.IsZero() {
		t.left("hips", "not given: whether the hem goes round them is not checked")
	}
	if t.Style.Spec.Sleeve != nil && t.body.Hand.IsZero() {
		t.left("hand", "not given: whether the cuff goes over it is not checked")
	}
}
