package bodies

import (
	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// The rules without a source are common practice.
var (
	// At the chest and the waist: 2 to 4 in are a standard fit (Craft Yarn Council).
	ease = mm(80)
	// At the upper arm and the wrist; no source.
	sleeveEase = mm(40)
	// By how much the underarm of a jumper lies below the armpit; no source.
	armholeEase = mm(60)
	// From the waist to the hem; no source.
	belowWaist = mm(180)
	// Of hem and cuffs, knitted with the pieces; no source.
	bandHeight = mm(50)
	// Of the front: at least 7 to 8 cm (stylishknitting.com, How to knit neckline).
	neckDepth = mm(80)
	// How much higher the neck points of a back lie than its middle: about 1 in, begun with
	// the shoulders (knittingrobin.blogspot.com, 3 March 2014).
	neckRise = inches("1")
	// The least fall of a shoulder: 3/4 in are a little less than average
	// (knittingrobin.blogspot.com, 16 September 2013).
	flattest = inches("0.75")
	// By how much a cap is lower than the armhole is deep, for chests of 31 to 48 in
	// (slippedstitches.wordpress.com, March 2014).
	capAllowance = inches("3")
	// Of a sleeve without increases, at each end (papermoonknits.com, Sleeve magic).
	plain = inches("1")
)

// Jumper returns the spec of a jumper with standard ease, set-in sleeves and sides that
// follow the waist where it is narrower than the chest, on a bed of the usual width.
func (b Body) Jumper(g gauge.Gauge) garment.Spec {
	width, depth, top := half(b.Chest.Add(ease)), b.armhole(), b.Biceps.Add(sleeveEase)
	inset := longer(half(width.Sub(b.Shoulders)), gauge.Length{})
	s := garment.Spec{
		Title: "Jumper, " + b.Name,
		Gauge: g,
		Start: garment.Start{Edge: garment.ClosedEdge, Band: bandHeight},
		Seam:  garment.Seam{Stitches: 1},
		Body:  garment.Body{Width: width, Length: b.BackWaist.Add(belowWaist).Sub(b.drop()).Sub(depth)},
		// Half at once (30daysweater.com, day 8).
		Armhole:  garment.Armhole{Depth: depth, Inset: inset, BindOff: garment.Exactly(half(inset))},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: b.neck(), Depth: neckDepth},
		Back:     &garment.BackSpec{Neck: garment.BackNeck{Depth: neckRise}},
		Shoulder: garment.Shoulder{Drop: b.drop()},
		Sleeve: &garment.SleeveSpec{
			Length: b.Arm.Sub(depth.Sub(capAllowance)), // the cap itself follows from its edge
			Cuff:   b.Wrist.Add(sleeveEase), Top: top, Cap: garment.SetInCap, Plain: plain,
		},
		Head: b.Head,
		Hand: b.Hand,
	}
	// What would take in less than 2 cm at each side is left straight; no source.
	const worthwhile = 40
	if waist := half(b.Waist.Add(ease)); width.Sub(waist).Cmp(mm(worthwhile)) >= 0 {
		s.Body.Waist = &garment.Waist{Width: waist, Height: belowWaist}
	}
	// At the hips the hem may lie close; no source.
	if hips := half(b.Hips); hips.Cmp(width) > 0 {
		s.Body.Hem = hips
	}
	return s
}

// drop is how far the shoulder falls from the neck point to its tip: from the nape to the
// shoulder point, less the rise of the back neck, which is part of that.
func (b Body) drop() gauge.Length {
	return longer(b.Nape.Sub(b.ShoulderPoint).Sub(neckRise), flattest)
}

// armhole is how deep the armhole is below the tip of the shoulder: from the nape to the
// armpit, less the fall of the shoulder, and ease; half as deep as the sleeve is wide at
// the least, so that a thick arm has room, without source.
func (b Body) armhole() gauge.Length {
	depth := b.Nape.Sub(b.Armpit).Sub(b.drop()).Add(armholeEase)
	return longer(depth, half(b.Biceps.Add(sleeveEase)))
}

// neck is the width of the neck: what the base of the neck would be across if it were
// round, and 2 cm at each side that the band fills. It is wider for a large head: as deep as
// these necks are the opening is twice as long as it is wide, and 12 cm more, and it gives
// by a quarter, so that four fifths of the head must go through it. No source.
func (b Body) neck() gauge.Length {
	pi, places := decimal.RequireFromString("3.1416"), int32(1)
	across := gauge.Millimetres(b.NeckBase.Millimetres().DivRound(pi, places)).Add(mm(2 * 20))
	forHead := half(gauge.Millimetres(b.Head.Millimetres().Mul(decimal.New(8, -1))).Sub(mm(120)))
	return longer(across, forHead)
}

func mm(n int64) gauge.Length { return gauge.Millimetres(decimal.NewFromInt(n)) }

func inches(n string) gauge.Length { return gauge.Inches(decimal.RequireFromString(n)) }

// half returns half a length, exactly.
func half(l gauge.Length) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.New(5, -1)))
}

func longer(a, b gauge.Length) gauge.Length {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}
