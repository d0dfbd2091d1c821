package curve_test

import "example.com/walewise/shaping"

// milpGroup is a kind of edge. Short tests take the first two cases of each.
type milpGroup struct {
	name  string
	cases []milpCase
}

// milpGroups returns the cases: a new edge of an old form is a line here, a new form
// an entry of forms.
func milpGroups() []milpGroup {
	return []milpGroup{
		{"neck", milpNecks()},
		{"vee", milpVees()},
		{"armhole", milpArmholes()},
		{"cap", milpCaps()},
		{"seam", milpSeams()},
		{"shoulder", milpShoulders()},
		{"drawn neck", milpDrawnNecks()},
		{"drawn cap", milpDrawnCaps()},
		{"drawn shoulder", milpDrawnShoulders()},
		{"degenerate", milpDegenerate()},
		{"infeasible", milpInfeasible()},
	}
}

// Where published examples are mirrored.
const (
	handbook713   = "knitting handbook, English edition, zanotowane.pl/713/7786"
	crewForum     = "forum.knittinghelp.com t/42150"
	leaflet1262   = "leaflet no. 1262, Easy to Make Fashions from Rochelle's Mohlon"
	woolBook1918  = "Handbook of Wool Knitting and Crochet (1918)"
	classicWool   = "Classic Fashions in Wool, Book 55, no. 201"
	services1940  = "Guide to Knitting for the Services, Australian Comforts Fund, 1940"
	spoolCotton94 = "Spool Cotton Co. book 94, size 38"
	crepeDeMode   = "Chadwick's Red Heart Crepe-de-Mode, size 38"
	theKnitter    = "The Knitter, 20 June 2017"
)

// milpNecks are half round necks: the base is half of the flat part.
func milpNecks() []milpCase {
	return []milpCase{
		{"front of 32", handbook713, "ellipse", 16, 14, shaping.Rules{Every: 2, Apart: 2, Base: 6}},
		{"deep, any number at once", invented, "ellipse", 24, 48, shaping.Rules{Every: 2, Apart: 2}},
		{"back of 32", handbook713, "ellipse", 16, 6, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Base: 10}},
		{"crew", crewForum, "ellipse", 5, 12, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
		{"back, two at once", leaflet1262, "ellipse", 6, 6, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 2}},
		{"child's", "Red Heart leaflet RHK0329-014721M, 2008", "ellipse", 8, 12, shaping.Rules{Every: 2, Apart: 2, Base: 4}},
		{"baby's", invented, "ellipse", 6, 8, shaping.Rules{Every: 2, Apart: 2, Most: 2, Plain: 2}},
		{"deep, a base and up to 4", invented, "ellipse", 30, 60, shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 12}},
		{"deep, a base and single ones", invented, "ellipse", 28, 64, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 8}},
		{"shallow and wide", invented, "ellipse", 45, 16, shaping.Rules{Every: 2, Apart: 2, Base: 30}},
		{"wide, up to 3", invented, "ellipse", 50, 36, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 3, Base: 26}},
		{"any row, not in neighbouring ones", invented, "ellipse", 30, 60, shaping.Rules{Every: 1, Apart: 2, Most: 3}},
		{"any row, three apart", invented, "ellipse", 24, 56, shaping.Rules{Every: 1, Apart: 3, Most: 3, Base: 9}},
		{"every 4th row", invented, "ellipse", 22, 60, shaping.Rules{Every: 4, Phase: 2, Apart: 4, Most: 4, Base: 8}},
		{"bound off, then decreased", invented, "ellipse", 26, 50,
			shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 10, SeveralUntil: 13, Single: shaping.Beat{Every: 1, Phase: 14}}},
		{"held, single ones at other rows", invented, "ellipse", 20, 44,
			shaping.Rules{Every: 2, Apart: 2, Most: 3, Single: shaping.Beat{Every: 2, Phase: 1}}},
		{"plain rows at the shoulder", invented, "ellipse", 18, 40, shaping.Rules{Every: 2, Apart: 2, Most: 2, Base: 8, Plain: 10}},
		{"fine, up to 2", invented, "ellipse", 60, 110, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 2, Base: 24}},
		{"largest, a base and up to 4", invented, "ellipse", 90, 160, shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 40}},
		{"largest, any row", invented, "ellipse", 90, 160, shaping.Rules{Every: 1, Apart: 2, Most: 2, Base: 30}},
	}
}

func milpVees() []milpCase {
	return []milpCase{
		{"every knit row", classicWool, "line", 21, 42, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"half of 30", "knit1knitall.blogspot.com, 13 August 2015", "line", 15, 36, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1}},
		{"of any rows", "natalieinstitches.com, 10 November 2021", "line", 15, 30, shaping.Rules{Most: 1}},
		{"on each odd row", woolBook1918 + ", A serviceable sweater", "line", 31, 61, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"deep, right-side rows", invented, "line", 28, 90, shaping.Rules{Every: 2, Apart: 2, Most: 1, Plain: 6}},
		{"deep, any row", invented, "line", 33, 90, shaping.Rules{Every: 1, Apart: 2, Most: 1, Plain: 7}},
		{"three apart", invented, "line", 17, 64, shaping.Rules{Every: 1, Apart: 3, Most: 2}},
		{"double decreases every 4th row", invented, "line", 24, 60, shaping.Rules{Every: 4, Phase: 3, Apart: 4, Most: 2}},
		{"steep, singles of their own", invented, "line", 25, 50,
			shaping.Rules{Every: 4, Apart: 2, Most: 2, Single: shaping.Beat{Every: 2, Phase: 1}}},
		{"rounded below", invented, "ellipse", 20, 70, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"largest", invented, "line", 90, 160, shaping.Rules{Every: 2, Apart: 2, Most: 4}},
		{"long, singles of their own", invented, "line", 53, 160,
			shaping.Rules{Every: 1, Apart: 2, Most: 3, Single: shaping.Beat{Every: 2, Phase: 5}}},
	}
}

// milpArmholes begin with a base.
func milpArmholes() []milpCase {
	return []milpCase{
		{"12 at once", classicWool, "ellipse", 20, 14, shaping.Rules{Every: 2, Apart: 2, Most: 2, Base: 12}},
		{"5 at once", leaflet1262, "ellipse", 9, 10, shaping.Rules{Every: 2, Apart: 2, Most: 1, Base: 5}},
		{"7 at once", leaflet1262, "ellipse", 12, 12, shaping.Rules{Every: 2, Apart: 2, Most: 1, Base: 7}},
		{"8 at once", leaflet1262, "ellipse", 15, 16, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 8}},
		{"9 at once", services1940, "ellipse", 15, 14, shaping.Rules{Every: 2, Apart: 2, Most: 1, Base: 9}},
		{"10 at once", spoolCotton94, "ellipse", 18, 18, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 10}},
		{"4, 3, 2, 1", "10rowsaday.com", "ellipse", 10, 8, shaping.Rules{Every: 2, Apart: 2, Most: 4}},
		{"2 at a time", woolBook1918 + ", A serviceable sweater", "line", 8, 8, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
		{"8 at once and 26 more", "designyourownsweater.blogspot.com, Set-in sleeves", "ellipse", 34, 66, shaping.Rules{Apart: 2, Most: 1, Base: 8}},
		{"half at once", "30daysweater.com, day 8", "ellipse", 16, 18, shaping.Rules{Every: 2, Apart: 2, Most: 1, Base: 8}},
		{"deep, two apart", invented, "ellipse", 22, 70, shaping.Rules{Every: 1, Apart: 2, Most: 1, Base: 10, Plain: 20}},
		{"deep, three apart", invented, "ellipse", 19, 60, shaping.Rules{Every: 1, Phase: 1, Apart: 3, Most: 2, Base: 8}},
		{"every 4th row", invented, "ellipse", 16, 50, shaping.Rules{Every: 4, Apart: 2, Most: 2, Base: 7, Single: shaping.Beat{Every: 2, Phase: 2}}},
		{"base, decreases at any row", invented, "ellipse", 24, 52,
			shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 9, Single: shaping.Beat{Every: 1, Phase: 2}}},
		{"straight", invented, "line", 18, 40, shaping.Rules{Every: 2, Apart: 2, Most: 1, Base: 3}},
		{"largest", invented, "ellipse", 90, 160, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 45}},
	}
}

// milpCaps are halves of sleeve caps, as far as one quarter of an ellipse or a straight
// line goes.
func milpCaps() []milpCase {
	return []milpCase{
		{"38 each side", "to-knit-knitting-stitches.com, 21 February 2021", "ellipse", 38, 36, shaping.Rules{Every: 2, Apart: 2, Most: 5}},
		{"every row at the top", "kniftyred.blogspot.com", "line", 23, 24, shaping.Rules{Most: 1, Base: 5}},
		{"72 wide", "knittingunplugged.com, 23 May 2016", "ellipse", 28, 38, shaping.Rules{Every: 2, Apart: 2, Most: 3, Base: 6}},
		{"36 rows", "slippedstitches.wordpress.com, March 2014", "line", 25, 36, shaping.Rules{Every: 2, Apart: 2, Most: 3, Base: 5}},
		{"6, 3, 2", "juliatrice.com, Pretty sleeves, part 1", "ellipse", 11, 6, shaping.Rules{Every: 2, Apart: 2, Base: 6}},
		{"flat, any number", invented, "ellipse", 36, 30, shaping.Rules{Every: 2, Phase: 1, Apart: 2}},
		{"high, two apart", invented, "ellipse", 34, 58, shaping.Rules{Every: 1, Apart: 2, Most: 2, Base: 8, Plain: 4}},
		{"high, three apart", invented, "line", 32, 60, shaping.Rules{Every: 1, Apart: 3, Most: 4, Base: 6}},
		{"largest, three apart", invented, "ellipse", 90, 160, shaping.Rules{Every: 1, Apart: 3, Most: 3, Base: 30}},
		{"large, three apart", invented, "ellipse", 60, 120, shaping.Rules{Every: 1, Apart: 3, Most: 3, Base: 20}},
	}
}

// milpSeams are seams of sleeves and bodies. Stitches that come are negative.
func milpSeams() []milpCase {
	beside := shaping.Rules{Every: 4, Phase: 3, Apart: 4, Most: 1}
	return []milpCase{
		{"10 pairs in 88 rounds", "papermoonknits.com, Increasing, part I", "line", -10, 88, shaping.Rules{Most: 1}},
		{"26 in 64 rows", "designyourownsweater.blogspot.com, Set-in sleeves", "line", 26, 64, shaping.Rules{Apart: 2, Most: 1}},
		{"18 in 50 rows", "Berroco blog, 22 January 2015", "line", 18, 50, shaping.Rules{Apart: 2, Most: 1}},
		{"11 in 72 rows", "knittingunplugged.com, 23 May 2016", "line", -11, 72, shaping.Rules{Every: 2, Apart: 2, Most: 1, Plain: 7}},
		{"42 in 176 rows", "designyourownsweater.blogspot.com, Sleeve", "line", -42, 176, shaping.Rules{Apart: 2, Most: 1}},
		{"4 in 20 rows, plain after", "machine knitters' mailing list, 15 September 1997", "line", 4, 20, shaping.Rules{Most: 1, Plain: 4}},
		{"2 at each end every other row", woolBook1918 + ", Costume for the winter-girl", "line", -20, 20, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
		{"12 in 120 rows", woolBook1918, "line", 12, 120, shaping.Rules{Every: 2, Apart: 2, Most: 1, Plain: 24}},
		{"19 every 4th row", "Chadwick's Red Heart Shetland Floss leaflet, size 34", "line", 19, 76, shaping.Rules{Every: 4, Phase: 3, Apart: 4, Most: 1}},
		{"raglan every right-side row", "slippedstitches.wordpress.com, baby sweater", "line", 15, 30, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"3 in 48 rows", "slippedstitches.wordpress.com, baby sweater", "line", -3, 48, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"bell, coming", invented, "ellipse", -18, 80, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"coming by rules of its own", invented, "line", -13, 100, shaping.Rules{Every: 2, Most: 3, Coming: &beside}},
		{"going beside rules for coming", invented, "line", 13, 70, shaping.Rules{Every: 2, Most: 3, Coming: &beside}},
		{"cast on in steps", invented, "ellipse", -30, 24, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 6}},
		{"long", invented, "line", -40, 160, shaping.Rules{Every: 2, Apart: 3, Most: 2, Plain: 12}},
	}
}

func milpShoulders() []milpCase {
	held := shaping.Rules{Every: 2, Apart: 2}
	other := shaping.Rules{Every: 2, Phase: 1, Apart: 2}
	return []milpCase{
		{"16 in three", "agneskimphd.blogspot.com, October 2015", "line", 16, 6, held},
		{"21 in three", "jillwolcottknits.com, Brilliant shoulder shaping", "line", 21, 6, other},
		{"19 in three", woolBook1918 + ", A serviceable sweater", "line", 19, 6, other},
		{"23 in four", theKnitter, "line", 23, 8, held},
		{"35 in four", theKnitter, "line", 35, 8, other},
		{"40 in five", spoolCotton94, "line", 40, 10, held},
		{"36 by twos", crepeDeMode, "line", 36, 36, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
		{"26 in four", "Woman's cardigan, Practical Handknits", "line", 26, 8, held},
		{"135 in 120 rows", "knitting.today, Short row calculations", "line", 135, 120, shaping.Rules{Most: 2}},
		{"steep, single ones between", invented, "line", 28, 40, shaping.Rules{Every: 4, Apart: 2, Most: 3, Single: shaping.Beat{Every: 2, Phase: 2}}},
		{"curved", invented, "ellipse", 40, 20, held},
		{"widest", invented, "line", 90, 30, other},
	}
}

// milpDrawnNecks are necks and armholes from path data and with an exponent.
func milpDrawnNecks() []milpCase {
	return []milpCase{
		{"front", invented, "drawn neck", 16, 14, shaping.Rules{Every: 2, Apart: 2, Base: 6}},
		{"squarer front", invented, "superellipse", 16, 14, shaping.Rules{Every: 2, Apart: 2, Base: 6}},
		{"shallow back", invented, "drawn neck", 22, 8, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Base: 12}},
		{"squarer shallow back", invented, "superellipse", 24, 8, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Base: 12}},
		{"deep, a base and up to 4", invented, "drawn neck", 30, 60, shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 12}},
		{"deep and square, single ones", invented, "superellipse", 28, 64, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 8}},
		{"deep, any row", invented, "drawn neck", 24, 56, shaping.Rules{Every: 1, Apart: 3, Most: 3, Base: 9}},
		{"bound off, then decreased", invented, "superellipse", 26, 50,
			shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 10, SeveralUntil: 13, Single: shaping.Beat{Every: 1, Phase: 14}}},
		{"held, single ones at other rows", invented, "drawn neck", 20, 44,
			shaping.Rules{Every: 2, Apart: 2, Most: 3, Single: shaping.Beat{Every: 2, Phase: 1}}},
		{"cast on in steps", invented, "drawn neck", -30, 24, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 6}},
		{"notched", invented, "jump", 24, 50, shaping.Rules{Every: 2, Apart: 2, Most: 4}},
		{"armhole, 10 at once", invented, "superellipse", 18, 40, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 1, Base: 10, Plain: 6}},
		{"wide and square, up to 6", invented, "superellipse", 40, 18, shaping.Rules{Every: 2, Apart: 2, Most: 6}},
		{"largest", invented, "drawn neck", 90, 160, shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 40}},
	}
}

// milpDrawnCaps are halves of sleeve caps that start level, rise steeply and end level.
func milpDrawnCaps() []milpCase {
	return []milpCase{
		{"every 2, up to 4", invented, "drawn cap", 34, 48, shaping.Rules{Every: 2, Apart: 2, Most: 4}},
		{"low, every 2, up to 4", invented, "drawn cap", 36, 30, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 4}},
		{"high, every 2, up to 4", invented, "drawn cap", 30, 64, shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 6}},
		{"a base and plain rows", invented, "drawn cap", 38, 52, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 4, Base: 8, Plain: 3}},
		{"any number at once", invented, "drawn cap", 40, 44, shaping.Rules{Every: 2, Apart: 2}},
		{"three apart", invented, "drawn cap", 30, 50, shaping.Rules{Every: 1, Apart: 3, Most: 4, Base: 5}},
		{"singles of their own", invented, "drawn cap", 28, 46,
			shaping.Rules{Every: 4, Apart: 2, Most: 4, Single: shaping.Beat{Every: 2, Phase: 2}}},
		{"coming", invented, "drawn cap", -32, 50, shaping.Rules{Every: 2, Apart: 2, Most: 4}},
		{"too few rows for 4", invented, "drawn cap", 81, 40, shaping.Rules{Every: 2, Apart: 2, Most: 4}},
		{"large, every 2, up to 4", invented, "drawn cap", 70, 120, shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 10}},
	}
}

func milpDrawnShoulders() []milpCase {
	held := shaping.Rules{Every: 2, Apart: 2}
	return []milpCase{
		{"S-shaped, 26 in four", invented, "drawn cap", 26, 8, held},
		{"with a step, 23 in four", invented, "jump", 23, 8, held},
		{"S-shaped and shallow, 40 in three", invented, "drawn cap", 40, 6, shaping.Rules{Every: 2, Phase: 1, Apart: 2}},
		{"curved", invented, "drawn neck", 40, 20, held},
		{"with a step, up to 6", invented, "jump", 35, 30, shaping.Rules{Every: 2, Phase: 1, Apart: 2, Most: 6}},
		{"deep, by twos", invented, "jump", 36, 60, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
	}
}

func milpDegenerate() []milpCase {
	return []milpCase{
		{"one stitch", invented, "line", 1, 9, shaping.Rules{}},
		{"base takes all", invented, "ellipse", 12, 20, shaping.Rules{Every: 2, Phase: 1, Most: 1, Base: 12, Plain: 17}},
		{"no stitch", invented, "ellipse", 0, 20, shaping.Rules{Every: 2}},
		{"no stitch, all rows plain", invented, "line", 0, 5, shaping.Rules{Phase: 9, Plain: 5}},
		{"one stitch, one row", invented, "ellipse", 1, 1, shaping.Rules{Most: 1}},
		{"one row takes all", invented, "line", 40, 1, shaping.Rules{}},
		{"one row per stitch", invented, "line", 40, 40, shaping.Rules{Most: 1}},
		{"one row per stitch of an ellipse", invented, "ellipse", 30, 30, shaping.Rules{Most: 1}},
		{"every allowed row is needed", invented, "ellipse", 20, 40, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
		{"apart leaves just enough", invented, "ellipse", 14, 40, shaping.Rules{Apart: 3, Most: 1}},
		{"plain rows leave one", invented, "line", 7, 30, shaping.Rules{Plain: 29}},
		{"plain rows leave the last base", invented, "ellipse", 9, 30, shaping.Rules{Phase: 12, Base: 9, Most: 2, Plain: 17}},
		{"far more stitches than rows", invented, "ellipse", 80, 5, shaping.Rules{}},
		{"far more rows than stitches", invented, "ellipse", 2, 160, shaping.Rules{Every: 4, Phase: 5, Apart: 3}},
		{"long phase", invented, "line", 12, 60, shaping.Rules{Every: 2, Phase: 31, Apart: 2, Most: 1}},
		{"single rows before the others", invented, "ellipse", 15, 30, shaping.Rules{Every: 3, Phase: 5, Single: shaping.Beat{Every: 1, Phase: 1}}},
		{"no single ones at all", invented, "ellipse", 15, 30, shaping.Rules{Every: 2, Most: 3, Single: shaping.Beat{Every: 1, Phase: 500}}},
		{"apart more than all but two steps", invented, "ellipse", 20, 30, shaping.Rules{Apart: 20}},
	}
}

func milpInfeasible() []milpCase {
	return []milpCase{
		{"a row too few", invented, "line", 41, 40, shaping.Rules{Most: 1}},
		{"apart leaves one too few", invented, "ellipse", 15, 40, shaping.Rules{Apart: 3, Most: 1, Plain: 1}},
		{"every allowed row is not enough", invented, "ellipse", 61, 60, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
		{"base a stitch short", invented, "ellipse", 20, 12, shaping.Rules{Every: 2, Apart: 2, Most: 2, Base: 9}},
		{"no row left", invented, "line", 3, 20, shaping.Rules{Phase: 10, Plain: 10}},
		{"phase beyond the edge", invented, "line", 3, 20, shaping.Rules{Phase: 40}},
		{"pairs only, an odd number", invented, "line", 15, 40, shaping.Rules{Every: 2, Most: 2, Single: shaping.Beat{Every: 1, Phase: 500}}},
		{"a single one after several", invented, "ellipse", 9, 20,
			shaping.Rules{Every: 2, Apart: 3, Most: 3, SeveralUntil: 5, Single: shaping.Beat{Every: 2, Phase: 9}, Plain: 8}},
		{"coming at too few rows", invented, "line", -12, 40, shaping.Rules{Coming: &shaping.Rules{Every: 4, Apart: 4, Most: 1}}},
	}
}
