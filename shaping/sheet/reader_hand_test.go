package sheet_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/walewise/shaping"
)

// handKnitter knits with two needles. Each is a list of stitches, the one at the tip
// last; of a stitch it says at which place it waits unworked, nothing if it can be worked.
type handKnitter struct {
	progress
	left, right []string // as held: a row goes from the left needle to the right
	row         int      // the last one worked
	begun       bool     // a row is being worked
	worked      int      // stitches of the row so far
	size        int      // stitches of the half, those that waited as it began included
	waiting     int      // those
	slipped     int      // stitches slipped to the right needle to reach others
	otherHalf   []string // on its holder
	holders     map[string]int
	offLive     int // stitches of finished shoulders
}

var handMark = regexp.MustCompile(`^(?:row (\d+) (RS|WS)|after (\d+)) `)

func (h *handKnitter) mark() *regexp.Regexp { return handMark }

func (h *handKnitter) begin(mark words) {
	if mark[2] != "" {
		must(mark.number(2) == h.row, "after row %d", h.row)
		return
	}
	must(mark.number(0) == h.row+1 && mark[1] == faceOf(h.row+1), "it is row %d", h.row+1)
}

// faceOf returns the side of the fabric that faces the knitter in a row.
func faceOf(row int) string { return [2]string{"WS", "RS"}[row%2] }

// strokeOf returns the stroke that makes plain fabric in a row.
func strokeOf(row int) string { return [2]string{"p", "k"}[row%2] }

// from returns the side where a row begins, seen on the right side.
func from(row int) shaping.Side { return [2]shaping.Side{shaping.Left, shaping.Right}[row%2] }

func (h *handKnitter) stop() {
	if h.begun {
		must(h.remaining() == 0 && !h.turnsBefore(), "row %d stops with %d unworked", h.row, h.remaining())
		h.turn()
	}
}

func (h *handKnitter) stitches() map[string]int {
	must(h.remaining() == 0 && atTip(h.right, "") == 0, "a stitch is still in work")
	off, waiting := h.offLive, len(h.left)+len(h.right)+len(h.otherHalf)
	onHolders := &waiting
	if waiting == 0 {
		onHolders = &off // when all is done nothing waits any more
	}
	for _, n := range h.holders {
		*onHolders += n
	}
	return map[string]int{
		"taken off live": off, "waiting or on holders": waiting,
		"bound off": h.Ledger.BoundOff, "decreased": h.Ledger.Decreased,
	}
}

// remaining returns how many stitches can be worked before the turn or the end.
func (h *handKnitter) remaining() int { return atTip(h.left, "") }

// atTip returns how many stitches at the tip of the needle wait at the place.
func atTip(needle []string, place string) int {
	n := 0
	for n < len(needle) && needle[len(needle)-1-n] == place {
		n++
	}
	return n
}

// turnsBefore reports whether stitches wait beyond those that can be worked.
func (h *handKnitter) turnsBefore() bool { return h.remaining() < len(h.left) }

// beginRow begins the next row, unless it has begun.
func (h *handKnitter) beginRow() {
	if h.begun {
		return
	}
	must(atTip(h.right, "") == 0, "row %d begins amid stitches", h.row+1)
	h.row++
	h.begun, h.worked = true, 0
}

// turn ends the row.
func (h *handKnitter) turn() {
	h.Passes = append(h.Passes, pass{Panel: h.panel, Row: h.row, From: from(h.row), Stitches: h.worked})
	h.left, h.right = h.right, h.left
	h.begun = false
}

// take takes a stitch that can be worked off the left needle.
func (h *handKnitter) take() {
	must(h.remaining() > 0, "row %d runs out of stitches", h.row)
	h.left = h.left[:len(h.left)-1]
}

// work works that many stitches with the stroke that fits the side.
func (h *handKnitter) work(stroke string, count int) {
	h.beginRow()
	must(strings.ToLower(stroke) == strokeOf(h.row), "%s in row %d", stroke, h.row)
	for range count {
		h.take()
		h.right = append(h.right, "")
		h.worked++
	}
}

// workUntil works until that many stitches remain.
func (h *handKnitter) workUntil(stroke string, left int) {
	h.beginRow()
	must(h.remaining() >= left, "%d stitches remain, not %d", h.remaining(), left)
	h.work(stroke, h.remaining()-left)
}

// even works a whole row, without its stroke being said.
func (h *handKnitter) even(rows int) {
	for range rows {
		h.beginRow()
		h.workUntil(strokeOf(h.row), 0)
		h.turn()
	}
}

// mostOutside is how many edge stitches may lie outside a decrease.
const mostOutside = 2

// together works several stitches as one, where and as they lean with the edge.
func (h *handKnitter) together(stitches int, face string, begins bool) {
	h.beginRow()
	must(faceOf(h.row) == face, "the decrease belongs to a %s row, row %d is none", face, h.row)
	for range stitches {
		h.take()
	}
	outside := h.remaining()
	if begins {
		outside = h.worked
	}
	must(outside <= mostOutside, "the decrease belongs to an edge, it has %d stitches before it and %d after it", h.worked, h.remaining())
	h.right = append(h.right, "")
	h.worked++
	h.Ledger.Decreased += stitches - 1
}

// makeOne makes a stitch of the bar between two others, some stitches inside an edge.
func (h *handKnitter) makeOne() {
	must(h.begun && h.worked > 0 && h.remaining() > 0, "m1 with %d stitches before it and %d after it", h.worked, h.remaining())
	must(min(h.worked, h.remaining()) <= mostOutside, "the increase belongs to an edge, it has %d stitches before it and %d after it", h.worked, h.remaining())
	h.right = append(h.right, "")
	h.worked++
	h.Ledger.Increased++
}

func (h *handKnitter) bindOff(count int) {
	for range count {
		h.take()
	}
	h.Ledger.BoundOff += count
}

// wait leaves what remains of the row unworked, the next stitch wrapped.
func (h *handKnitter) wait(count int, place string) {
	h.leave(count, place)
	h.Wraps = append(h.Wraps, pass{Panel: h.panel, Row: h.row, From: from(h.row), Stitches: 1})
	h.turn()
}

// leave leaves what remains of the row unworked.
func (h *handKnitter) leave(count int, place string) {
	must(h.begun && h.remaining() == count && count > 0, "%d stitches stay unworked", h.remaining())
	must(h.place(place) == from(h.row).Opposite(), "%s at the end of row %d", place, h.row)
	for i := range count {
		h.left[len(h.left)-1-i] = place
	}
}

// edgeOff puts stitches that wait at an edge on a holder.
func (h *handKnitter) edgeOff(w words) {
	h.waitingOff(w.number(0), "the "+w[1]+" edge")
	h.holders[w[1]+" edge"] += w.number(0)
}

// turned is what "to the turn" asks for: stitches that wait beyond.
func (h *handKnitter) turned() {
	must(h.begun && h.remaining() == 0 && h.turnsBefore(), "nothing to turn before in row %d", h.row)
	h.turn()
}

// waitingOff takes the stitches that wait at a place off the tip of a needle. They lie
// where the yarn is, or beyond what is in work.
func (h *handKnitter) waitingOff(count int, place string) {
	for _, needle := range []*[]string{&h.left, &h.right} {
		work := atTip(*needle, "")
		end := len(*needle) - work
		if n := atTip((*needle)[:end], place); n == count {
			*needle = slices.Delete(*needle, end-n, end)
			return
		}
	}
	must(false, "%d stitches at %s wait on neither needle", count, place)
}

// atWork returns how many stitches of the half do not wait as it begins.
func (h *handKnitter) atWork() int { return h.size - h.waiting }

// lastOff slips the last stitches of the left needle, the other half, to a holder;
// some of them may wait already.
func (h *handKnitter) lastOff(count, waiting int, half string) {
	must(len(h.left) == count && h.remaining() == count-waiting && half != h.panel, "%d stitches are left, %d in work", len(h.left), h.remaining())
	h.otherHalf, h.left = h.left, nil
}

// slippedBack takes the stitches of the first half back to the left needle.
func (h *handKnitter) slippedBack(w words) {
	must(w.number(0) == h.slipped && w[1]+" half" == h.panel, "%d of the %s were slipped", h.slipped, h.panel)
	must(len(h.left) == 0, "%d stitches are left", len(h.left))
	h.left = make([]string, h.slipped)
	h.right = h.right[:len(h.right)-h.slipped]
}

// takeUp puts the other half back on the needle and joins the yarn at the neck.
func (h *handKnitter) takeUp(count int, half string) {
	must(len(h.left)+len(h.right) == 0, "there are %d stitches on the needles", len(h.left)+len(h.right))
	must(count == len(h.otherHalf) && half == h.panel, "the half on the holder has %d stitches", len(h.otherHalf))
	must(atTip(h.otherHalf, "") == h.atWork(), "%d of its stitches can be worked, not %d", atTip(h.otherHalf, ""), h.atWork())
	must(faceOf(h.row+1) == "RS" && from(h.row+1) == h.neck, "row %d (%s) cannot begin at the neck with the RS facing", h.row+1, faceOf(h.row+1))
	h.left, h.otherHalf = h.otherHalf, nil
}

// inHand are the phrases of work with two needles.
var inHand = append(standingInHand, []phrase[*handKnitter]{
	// the start
	say("CO {sts} with a tail of {length}", (*handKnitter).castOn),
	say("CO {sts} in waste yarn and work 6 rows, the last one a WS row", (*handKnitter).castOn),
	say("Change to main yarn with a tail of {length}: the lower edge stays open for a hem or a band", remark[*handKnitter]),
	say("Change to main yarn with a tail of {length}: the lower edge stays open and is bound off at the end", remark[*handKnitter]),
	say("Row 1 is the next row, a RS row", remark[*handKnitter]),
	say("row 1 is a RS row", remark[*handKnitter]),
	say("If its rows are higher or lower than the gauge's, count in a washed swatch of it how many make {length}, knit that many, an {rest} number, and then go on with row {n}", func(h *handKnitter, w words) {
		must(w[0] == parity(h.band) && w.number(1) == h.band+1, "the band has %d rows", h.band)
	}),

	// a half begins
	say("Begins with row {n} ({face}) over {sts}", func(h *handKnitter, w words) {
		must(h.otherHalf != nil || w.number(0) == h.row+1, "it is row %d", h.row+1)
		h.row = w.number(0) - 1
		must(w[1] == faceOf(h.row+1), "row %d is a %s row", h.row+1, faceOf(h.row+1))
		h.size, h.waiting = w.number(2), 0
	}),
	say("Seen on the RS the neck is at its {side} end, the outer edge at its {side} end; it becomes the wearer's {side} shoulder", func(h *handKnitter, w words) {
		h.half(w.side(0), w.side(1), w.side(2), w.side(1).Opposite())
	}),
	say("The front edge, and above it the neck, is at its {side} end, the outer edge with side and armhole at its {side} end; it is worn on the wearer's {side}", func(h *handKnitter, w words) {
		h.opened(w.side(0), w.side(1), w.side(2), w.side(1).Opposite())
	}),
	say("Of them {sts} at the outer edge wait unworked already, as shoulder", func(h *handKnitter, w words) { h.waiting = w.number(0) }),
	say("First slip the {sts} of this half to the right needle", func(h *handKnitter, w words) {
		h.slipped = w.number(0)
		must(h.slipped == h.atWork() && h.remaining() >= h.slipped, "%d of %d stitches", h.slipped, h.remaining())
		must(atTip(h.right, "the "+h.neck.Opposite().String()+" edge") >= h.waiting, "%d stitches wait behind", len(h.right))
		h.right = append(h.right, make([]string, h.slipped)...)
		h.left = h.left[:len(h.left)-h.slipped]
	}),
	say("With a separate length of yarn, tails of {length}, BO the next {sts} and draw the end through the last loop", func(h *handKnitter, w words) { h.bindOff(w.number(0)) }),
	say("Slip the next {sts}, the middle, to a holder", func(h *handKnitter, w words) {
		for range w.number(0) {
			h.take()
		}
		h.holders["the neck"] += w.number(0)
	}),
	say("Slip the last {sts}, the {side} half, to a holder", func(h *handKnitter, w words) { h.lastOff(w.number(0), 0, w[1]+" half") }),
	say("Slip the last {sts} (with the {n} that wait), the {side} half, to a holder", func(h *handKnitter, w words) {
		h.lastOff(w.number(0), w.number(1), w[2]+" half")
	}),
	say("Slip the {sts} of the {side} half back to the left needle, but not the {n} that wait at the {side} edge, and go on with the yarn of the body", func(h *handKnitter, w words) {
		must(w.number(2) == h.waiting && w.side(3) == h.neck.Opposite(), "%d wait", h.waiting)
		h.slippedBack(w)
	}),
	say("Slip the {sts} of the {side} half back to the left needle and go on with the yarn of the body", (*handKnitter).slippedBack),
	say("Put the {sts} of the {side} half back on the needle, RS facing, and join the yarn at the neck with a tail of {length}", func(h *handKnitter, w words) {
		h.takeUp(w.number(0), w[1]+" half")
	}),
	say("The {sts} at the {side} edge go on waiting", func(h *handKnitter, w words) {
		must(w.number(0) == len(h.left)-h.remaining() && w.side(1) == h.neck.Opposite(), "%d of %d can be worked", h.remaining(), len(h.left))
	}),

	// parts of a row
	say("BO {sts} at {place}", func(h *handKnitter, w words) {
		h.beginRow()
		must(h.worked == 0 && h.place(w[1]) == from(h.row) && h.remaining() > w.number(0), "BO at %s as row %d goes", w[1], h.row)
		h.bindOff(w.number(0))
		h.work(strokeOf(h.row), 1) // the stitch that is left over
	}),
	say("{k}{n}, leaving {sts} unworked at {place}", func(h *handKnitter, w words) {
		h.work(w[0], w.number(1))
		h.leave(w.number(2), w[3])
		h.turn()
	}),
	say("{k}{n}", func(h *handKnitter, w words) { h.work(w[0], w.number(1)) }),
	say("ssk", func(h *handKnitter, _ words) { h.together(2, "RS", true) }),
	say("sssk", func(h *handKnitter, _ words) { h.together(3, "RS", true) }),
	say("k2tog", func(h *handKnitter, _ words) { h.together(2, "RS", false) }),
	say("k3tog", func(h *handKnitter, _ words) { h.together(3, "RS", false) }),
	say("p2tog", func(h *handKnitter, _ words) { h.together(2, "WS", true) }),
	say("p3tog", func(h *handKnitter, _ words) { h.together(3, "WS", true) }),
	say("ssp", func(h *handKnitter, _ words) { h.together(2, "WS", false) }),
	say("sssp", func(h *handKnitter, _ words) { h.together(3, "WS", false) }),
	say("m1", func(h *handKnitter, _ words) { h.makeOne() }),
	say("{k} to end", func(h *handKnitter, w words) { h.toEnd(w[0], 0) }),
	say("{k} to last {sts}", func(h *handKnitter, w words) { h.toEnd(w[0], w.number(1)) }),
	say("{k} to the turn", func(h *handKnitter, w words) { h.workUntil(w[0], 0) }),
	say("{k} to {sts} before the turn", func(h *handKnitter, w words) {
		h.workUntil(w[0], w.number(1))
		must(h.turnsBefore(), "nothing waits in row %d", h.row)
	}),
	say("turn", func(h *handKnitter, _ words) { h.turned() }),
	say("{k} to the last st in work", func(h *handKnitter, w words) { h.workUntil(w[0], 1) }),
	say("{k} to the last {sts} in work", func(h *handKnitter, w words) { h.workUntil(w[0], w.number(1)) }),
	say("w&t", func(h *handKnitter, _ words) { h.wait(h.remaining(), h.endOfRow()) }),
	say("w&t: 1 st stays unworked at {place}", func(h *handKnitter, w words) { h.wait(1, w[0]) }),
	say("w&t: {sts} stay unworked at {place}", func(h *handKnitter, w words) { h.wait(w.number(0), w[1]) }),

	// whole rows
	say("{k} all {sts}, those that waited with their wraps: work each wrap together with its st", func(h *handKnitter, w words) {
		must(!h.begun, "%d of all are worked already", h.worked)
		h.close(w)
	}),
	say("{k} the other {sts}, those that waited with their wraps: work each wrap together with its st", func(h *handKnitter, w words) {
		must(h.begun, "no st is worked yet")
		h.close(w)
	}),
	say("{k} back", func(h *handKnitter, w words) {
		h.work(w[0], h.Passes[len(h.Passes)-1].Stitches)
		must(h.remaining() == 0, "the row before began elsewhere")
		h.turn()
	}),
	say("{k} 1 row even", func(h *handKnitter, w words) {
		h.workUntil(w[0], 0)
		h.turn()
	}),
	say("{k} 1 row", func(h *handKnitter, w words) { h.workUntil(w[0], 0) }),
	say("to the turn", func(h *handKnitter, _ words) { h.turned() }),
	say("work {rows} even", func(h *handKnitter, w words) { h.even(w.number(0)) }),
	say("to the end of row {n} ({face})", func(h *handKnitter, w words) {
		must(w.number(0) == h.row && w[1] == faceOf(h.row), "it is row %d", h.row)
	}),
	say("-> after row {n} ({face}): {sts} in work", func(h *handKnitter, w words) {
		last := h.Passes[len(h.Passes)-1].Stitches
		must(w.number(0) == h.row && w[1] == faceOf(h.row) && w.number(2) == last, "it is after row %d with %d stitches", h.row, last)
	}),

	// rows that repeat
	say("{n} times, at rows {list}: {rest}", func(h *handKnitter, w words) {
		h.places(w, w[2])
	}),
	say("Each time then {then}, after the last time {rest}", func(h *handKnitter, w words) { h.again.then, h.again.last = w[:1], w[1] }),
	say("Each time then {rest}", func(h *handKnitter, w words) { h.again.then = w }),
	say("Then in turn: after the first time {then}, after the second {then}, and so on, after the last time {rest}", func(h *handKnitter, w words) { h.again.then, h.again.last = w[:2], w[2] }),
	say("Then in turn: after the first time {then}, after the second {then}, and so on", func(h *handKnitter, w words) { h.again.then = w }),
	say("In turn {list} sts are in work", func(h *handKnitter, w words) {
		left := strings.Split(w[0], ", ")
		h.repeat(func(round int) {
			must(h.again.at[round] == strconv.Itoa(h.row+1), "it is row %d", h.row+1)
		}, func(round int) {
			last := h.Passes[len(h.Passes)-1].Stitches
			must(left[round] == strconv.Itoa(last), "%d stitches are in work", last)
		})
	}),

	// off the needles
	say("BO the last {sts}{loosely}, at the beginning of the next row", func(h *handKnitter, w words) {
		must(h.remaining() == w.number(0), "%d stitches are left", h.remaining())
		h.bindOff(w.number(0))
	}),
	say("Break the yarn and draw it through", remark[*handKnitter]),
	say("Break the yarn with a tail of {length} if the {joined} with it, else {length}", remark[*handKnitter]),
	say("Slip the {sts} to a holder: they stay live for joining", func(h *handKnitter, w words) {
		must(h.remaining() == w.number(0), "%d stitches are left", h.remaining())
		h.left = h.left[:len(h.left)-w.number(0)]
		h.offLive += w.number(0)
	}),
	say("Slip the {sts} {wait} at the {side} edge to a holder: {they stay} live for the sleeve", (*handKnitter).edgeOff),
	say("Slip the {sts} {wait} at the {side} edge to a holder: {they stay} live for joining", func(h *handKnitter, w words) {
		must(h.holders[w[1]+" edge"] == 0, "others of that edge are on a holder already")
		h.edgeOff(w)
	}),
	say("Slip the {sts} {wait} at the {side} edge to the holder of that edge, in the same order: {they stay} live for joining", func(h *handKnitter, w words) {
		must(h.holders[w[1]+" edge"] > 0, "nothing of that edge is on a holder")
		h.edgeOff(w)
	}),
	say("Slip the {sts} {wait} at the neck to the holder of the middle, in the same order", func(h *handKnitter, w words) {
		must(h.holders["the neck"] > 0, "nothing of the middle is on a holder")
		h.waitingOff(w.number(0), "the neck")
		h.holders["the neck"] += w.number(0)
	}),
	say("Slip the {sts} {wait} at the neck to a holder, in the same order", func(h *handKnitter, w words) {
		must(h.holders["the neck"] == 0, "the middle is on a holder already")
		h.waitingOff(w.number(0), "the neck")
		h.holders["the neck"] += w.number(0)
	}),
	say("Slip the {sts} {wait} at the neck to the holder of the neck, in the same order", func(h *handKnitter, w words) {
		must(h.holders["the neck"] > 0, "nothing of the neck is on a holder")
		h.waitingOff(w.number(0), "the neck")
		h.holders["the neck"] += w.number(0)
	}),
	say("Set the row counter back: the next row is row {n}", func(h *handKnitter, w words) {
		must(w.number(0) == h.row+1, "the next row is row %d", h.row+1)
	}),
	say("Slip all {sts} of the neck onto one holder", func(h *handKnitter, w words) {
		if waiting := w.number(0) - h.holders["the neck"]; waiting > 0 {
			h.waitingOff(waiting, "the neck")
			h.holders["the neck"] += waiting
		}
		must(h.holders["the neck"] == w.number(0), "the neck has %d stitches", h.holders["the neck"])
	}),
	say("The st of the neck is on its holder", func(h *handKnitter, _ words) {
		must(h.holders["the neck"] == 1, "the neck has %d stitches", h.holders["the neck"])
	}),
	say("The {sts} of the neck are on their holder", func(h *handKnitter, w words) {
		must(h.holders["the neck"] == w.number(0), "the neck has %d stitches", h.holders["the neck"])
	}),
	say("ready for the neckband", remark[*handKnitter]),
	say("Tie a contrasting thread to the edge stitch at both edges: the underarms", func(h *handKnitter, _ words) {
		must(h.neck == 0, "both edges of a half")
		h.Threads = append(h.Threads, h.row, h.row)
	}),
	say("Tie a contrasting thread to the edge stitch at {place}: the underarm", func(h *handKnitter, w words) {
		must(h.place(w[0]) == h.neck.Opposite(), "%s is no outer edge", w[0])
		h.Threads = append(h.Threads, h.row)
	}),
}...)

// close works that many stitches to the end of a closing row, those that wait among them.
func (h *handKnitter) close(w words) {
	h.beginRow()
	for i := range min(w.number(1), len(h.left)) {
		h.left[len(h.left)-1-i] = ""
	}
	h.work(w[0], w.number(1))
}

func (h *handKnitter) castOn(w words) {
	h.Ledger.CastOn = w.number(0)
	h.left = make([]string, w.number(0))
}

// toEnd works to the needle's end but for some; nothing may wait there.
func (h *handKnitter) toEnd(stroke string, but int) {
	h.beginRow()
	must(!h.turnsBefore(), "stitches wait at the end of row %d", h.row)
	h.workUntil(stroke, but)
}

// endOfRow names the place where the row that is being worked ends.
func (h *handKnitter) endOfRow() string {
	end := from(h.row).Opposite()
	if end == h.neck {
		return "the neck"
	}
	return "the " + end.String() + " edge"
}
