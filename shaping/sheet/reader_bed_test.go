package sheet_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"example.com/walewise/shaping"
)

// bedKnitter knits on a bed of needles with a carriage.
type bedKnitter struct {
	progress
	all      shaping.Span // the needles that ever had a stitch
	loops    map[shaping.Needle]int
	held     map[shaping.Needle]bool
	carriage shaping.Side
	onWaste  bool // waste yarn was knitted over the stitches in work
	toHold   bool // the carriage passes needles on hold by
	yarn     bool // threaded
	counting bool
	counter  int
	waste    int                     // stitches on waste yarn
	pushed   []shaping.Needle        // into work beyond the edges, without a stitch yet
	forward  map[shaping.Needle]bool // where a transfer has left them
}

func (b *bedKnitter) mark() *regexp.Regexp { return bedMark }

var bedMark = regexp.MustCompile(`^(\d{3} (?:left|right)) `)

func (b *bedKnitter) begin(mark words) {
	here := fmt.Sprintf("%03d %v", b.counter, b.carriage)
	must(mark[0] == here, "said to begin at %s, stands at %s", mark[0], here)
}

func (b *bedKnitter) stop() {}

func (b *bedKnitter) stitches() map[string]int {
	onHold := b.all.Runs(func(n shaping.Needle) bool { return b.loops[n] > 0 })
	count := 0
	var names []string
	for _, run := range onHold {
		count += run.Len()
		names = append(names, run.String())
	}
	return map[string]int{
		"on waste yarn": b.waste, "on hold (" + strings.Join(names, ", ") + ")": count,
		"bound off": b.Ledger.BoundOff, "decreased": b.Ledger.Decreased,
	}
}

// working returns the needles that the carriage would knit now.
func (b *bedKnitter) working() []shaping.Span {
	return b.all.Runs(func(n shaping.Needle) bool { return b.loops[n] > 0 && !(b.held[n] && b.toHold) })
}

func (b *bedKnitter) inWork() shaping.Span {
	w := b.working()
	must(len(w) == 1, "needles in work: %v", w)
	return w[0]
}

func (b *bedKnitter) castOn(w words) {
	b.all = w.counted(0, 1)
	b.Ledger.CastOn = b.all.Len()
	b.Wales = map[shaping.Needle]int{}
	for n := range b.all.All() {
		b.loops[n], b.Wales[n] = 1, 0
	}
	b.carriage = w.side(2)
}

// hold puts needles on hold at the end where the row will stop.
func (b *bedKnitter) hold(span shaping.Span) {
	must(b.toHold, "the carriage is not set to hold")
	far := b.carriage.Opposite()
	work := b.working()
	must(work[0].Around(work[len(work)-1]).End(far) == span.End(far), "hold %v while %v are in work and the carriage is at the %v", span, work, b.carriage)
	b.setHeld(span, true)
}

func (b *bedKnitter) setHeld(span shaping.Span, held bool) {
	for n := range span.All() {
		must(b.loops[n] > 0 && b.held[n] != held, "%v has %d loops, held %v already", n, b.loops[n], b.held[n])
		b.held[n] = held
	}
}

// returned takes back needles that are named with their number.
func (b *bedKnitter) returned(w words) {
	b.setHeld(w.counted(0, 1), false)
}

// bindOff takes loops off needles, beginning with the one named first.
func (b *bedKnitter) bindOff(named words) {
	span := named.span(0)
	first, _, _ := strings.Cut(named[0], "-")
	must(needle(first) == span.End(b.carriage) && b.inWork().End(b.carriage) == span.End(b.carriage),
		"bind off %s while %v are in work and the carriage is at the %v", named[0], b.inWork(), b.carriage)
	b.finish(span)
}

func (b *bedKnitter) finish(span shaping.Span) {
	for n := range span.All() {
		must(b.loops[n] > 0 && !b.held[n], "bind off %v: %d loops, held %v", n, b.loops[n], b.held[n])
		b.loops[n] = 0
		b.Ledger.BoundOff++
	}
}

// move moves the group at an edge by one needle, and the needle that this empties must
// be the one that is said.
func (b *bedKnitter) move(group shaping.Span, toward shaping.Side, empty shaping.Needle) {
	edge, inner := toward.Opposite(), group.Beyond(toward, 1).First
	work := b.inWork()
	must(group.End(edge) == work.End(edge) && work.ContainsSpan(group) && work.Contains(inner), "move %v to the %v while %v are in work", group, toward, work)
	must(group.End(edge) == empty, "moving %v does not empty %v", group, empty)
	b.loops[inner] += b.loops[group.End(toward)]
	for n := group.End(toward); n != empty; n = n.Toward(edge, 1) {
		b.loops[n] = b.loops[n.Toward(edge, 1)]
	}
	b.loops[empty] = 0
	b.Ledger.Decreased++
	b.left(group.Moved(toward, 1))
}

// left takes in where a transfer has left needles.
func (b *bedKnitter) left(group shaping.Span) {
	for n := range group.All() {
		b.forward[n] = true
	}
}

// push brings an empty needle beside the edge into work.
func (b *bedKnitter) push(n shaping.Needle) {
	must(b.loops[n] == 0, "%v has a stitch", n)
	b.pushed = append(b.pushed, n)
}

// widen moves the group at an edge outwards by one needle and fills the needle that this
// empties, which must be the one that is said.
func (b *bedKnitter) widen(group shaping.Span, toward shaping.Side, filled shaping.Needle) {
	work, beyond := b.inWork(), group.Beyond(toward, 1).First
	must(group.End(toward) == work.End(toward) && work.ContainsSpan(group) && b.loops[beyond] == 0, "move %v to the %v while %v are in work", group, toward, work)
	must(group.End(toward.Opposite()) == filled, "moving %v does not empty %v", group, filled)
	at := slices.Index(b.pushed, beyond)
	must(at >= 0, "%v is not in work but %v", beyond, b.pushed)
	b.pushed = slices.Delete(b.pushed, at, at+1)
	b.left(group.Moved(toward, 1))
	for n := beyond; n != filled; n = n.Toward(toward.Opposite(), 1) {
		b.loops[n] = b.loops[n.Toward(toward.Opposite(), 1)]
	}
	b.loops[filled] = 1
	b.Ledger.Increased++
	b.all = b.all.Around(shaping.Span{First: beyond, Last: beyond})
	if _, known := b.Wales[beyond]; !known {
		b.Wales[beyond] = 0
	}
}

// outwards returns the side to which a group at the place is moved to make room, which
// must be the one that is said.
func (b *bedKnitter) outwards(place string, said shaping.Side) shaping.Side {
	must(b.place(place) == said, "move to the %v at %s", said, place)
	return said
}

// inwards returns the side to which a group at the place is moved, which must be the
// one that is said.
func (b *bedKnitter) inwards(place string, said shaping.Side) shaping.Side {
	must(b.place(place) == said.Opposite(), "move to the %v at %s", said, place)
	return said
}

func (b *bedKnitter) knit(rows int) {
	must(b.yarn && b.counting, "knitting without yarn or counter")
	must(len(b.pushed) == 0, "%v are in work without a stitch", b.pushed)
	must(len(b.forward) == 0 || !b.toHold, "%v do not knit where a transfer has left them", slices.Collect(maps.Keys(b.forward)))
	clear(b.forward)
	for range rows {
		work := b.inWork()
		for n := range work.All() {
			b.loops[n] = 1
			b.Wales[n]++
		}
		b.counter++
		b.Passes = append(b.Passes, pass{b.panel, b.counter, b.carriage, work, work.Len()})
		b.carriage = b.carriage.Opposite()
	}
}

// wrap lays the yarn under the held needle beside the carriage.
func (b *bedKnitter) wrap(n shaping.Needle) {
	must(b.held[n] && b.inWork().Beyond(b.carriage, 1).First == n, "wrap %v while %v are in work and the carriage is at the %v", n, b.inWork(), b.carriage)
	last := b.Passes[len(b.Passes)-1]
	last.Needles, last.Stitches = shaping.Span{First: n, Last: n}, 1
	b.Wraps = append(b.Wraps, last)
}

// given returns the name that a repeated line gives for this time.
func (b *bedKnitter) given() words { return words{b.again.names[b.again.round]} }

// wasteYarn takes the stitches in work off on waste yarn; an even number of rows brings
// the carriage back.
func (b *bedKnitter) wasteYarn(rows int) {
	must(!b.yarn && !b.counting && rows%2 == 0, "waste yarn with main yarn threaded, the counter on, or in %d rows", rows)
	b.onWaste = true
}

// pushOff takes the stitches in work off the bed.
func (b *bedKnitter) pushOff(words) {
	must(b.onWaste, "no waste yarn was knitted")
	b.onWaste = false
	for _, span := range b.working() {
		for n := range span.All() {
			b.loops[n] = 0
			b.waste++
		}
	}
}

func spans(list string) []shaping.Span {
	var all []shaping.Span
	for _, name := range strings.Split(list, ", ") {
		all = append(all, words{name}.span(0))
	}
	return all
}

// atBed are the phrases of work on a bed.
var atBed = append(standingAtBed, []phrase[*bedKnitter]{
	// the start
	say("Cast on {span} ({stitches}) in waste yarn and knit 8 rows or more that end at the {side}", (*bedKnitter).castOn),
	say("Cast on {span} ({stitches}) in main yarn with a closed edge and a tail of {length}, so that the carriage then stands at the {side}", func(b *bedKnitter, w words) {
		b.castOn(w)
		b.yarn = true
	}),
	say("Knit one row of ravel cord to the {side}", func(b *bedKnitter, w words) {
		must(w.side(0) == b.carriage.Opposite(), "the carriage is at the %v already", b.carriage)
		b.carriage = w.side(0)
	}),
	say("Change to main yarn, leave a tail of {length}", func(b *bedKnitter, _ words) { b.yarn = true }),
	say("Counter to 000, carriage at the {side}", func(b *bedKnitter, w words) {
		must(w.side(0) == b.carriage, "the carriage is at the %v", b.carriage)
		b.counter, b.counting = 0, true
	}),
	say("Counter to 000", func(b *bedKnitter, _ words) { b.counter, b.counting = 0, true }),
	say("Hang weights under the stitches and move them up every 10 rows or so", remark[*bedKnitter]),
	say("when stitches go on hold, move their weights to those in work beside the turn", remark[*bedKnitter]),
	say("after increases hang the outermost ones on the new edge stitches", remark[*bedKnitter]),
	say("Count rows; do not measure on the bed", remark[*bedKnitter]),
	say("If its rows are higher or lower than the gauge's, count in a washed swatch of it how many make {length}, knit that many, an {rest} number, and then set the counter to {n}", func(b *bedKnitter, w words) {
		must(w[0] == parity(b.band) && w.number(1) == b.band, "the band has %d rows", b.band)
	}),
	say("The {stitches} are on {span}", func(b *bedKnitter, w words) {
		must(b.inWork() == w.counted(1, 0), "%v are in work", b.inWork())
	}),

	// a half begins
	say("Begins at counter {n} with the carriage at the {side}", func(b *bedKnitter, w words) {
		b.begin(words{w[0] + " " + w[1]})
	}),
	say("The half has {span}, {stitches}: the neck is at its {side} end, the outer edge at its {side} end; it becomes the wearer's {side} shoulder", func(b *bedKnitter, w words) {
		b.half(w.side(2), w.side(3), w.side(4), w.side(3))
		for n := range w.counted(0, 1).All() {
			must(b.loops[n] > 0, "%v has no stitch", n)
		}
	}),
	say("The front edge, and above it the neck, is at its {side} end, the outer edge with side and armhole at its {side} end; it is worn on the wearer's {side}", func(b *bedKnitter, w words) {
		b.opened(w.side(0), w.side(1), w.side(2), w.side(1))
	}),
	say("Of them {span} ({stitches}) are on hold already, as shoulder", func(b *bedKnitter, w words) {
		for n := range w.counted(0, 1).All() {
			must(b.held[n], "%v is not on hold", n)
		}
	}),
	say("Put the {side} half {span} ({n}) on hold", func(b *bedKnitter, w words) {
		b.hold(w.counted(1, 2))
	}),
	say("Put on hold: {rest}", func(b *bedKnitter, w words) {
		for _, part := range strings.Split(w[0], ", ") {
			found := partOnHold.FindStringSubmatch(part)
			must(found != nil, "not understood: %q", part)
			b.setHeld(words(found[1:]).counted(0, 1), true)
		}
	}),
	say("Put {span} on hold: {rest}", func(b *bedKnitter, w words) {
		named := map[shaping.Needle]bool{}
		for _, part := range strings.Split(w[1], ", ") {
			found := partOnHold.FindStringSubmatch(part)
			must(found != nil, "not understood: %q", part)
			for n := range words(found[1:]).counted(0, 1).All() {
				named[n] = true
			}
		}
		for n := range w.span(0).All() {
			must(named[n] || b.loops[n] == 0, "%v is not part of anything named", n)
		}
		b.hold(w.span(0))
	}),
	say("Take the carriage, unthreaded, to the {side}: everything is on hold, so nothing knits", func(b *bedKnitter, w words) {
		must(len(b.working()) == 0 && !b.yarn, "%v would knit, yarn threaded %v", b.working(), b.yarn)
		b.carriage = w.side(0)
	}),
	say("Counter on, set back to {n}", func(b *bedKnitter, w words) { b.counting, b.counter = true, w.number(0) }),
	say("Join the main yarn at the {side} with a tail of {length}: the first stitch to knit is {needle}", func(b *bedKnitter, w words) {
		must(!b.yarn && w.side(0) == b.carriage && w.needle(1) == b.inWork().End(b.carriage), "the carriage is at the %v of %v", b.carriage, b.inWork())
		b.yarn = true
	}),
	say("Push {span} ({stitches}) back into work; everything else stays on hold", func(b *bedKnitter, w words) {
		b.returned(w)
		must(b.inWork() == w.span(0), "%v are in work", b.inWork())
	}),

	// steps
	say("Set the carriage to hold; it stays so until the last stitches are off", func(b *bedKnitter, _ words) { b.toHold = true }),
	say("Put {span} on hold at {place} ({stitches})", func(b *bedKnitter, w words) {
		must(b.place(w[1]) == b.carriage.Opposite(), "hold %s with the carriage at the %v", w[0], b.carriage)
		b.hold(w.counted(0, 2))
	}),
	say("Push {span} ({stitches}) back into work by hand; the carriage stays set to hold", (*bedKnitter).returned),
	say("With a separate length of yarn, tails of {length}, bind off the {stitches} in the middle, {span}", func(b *bedKnitter, w words) {
		b.finish(w.counted(1, 0))
	}),
	say("draw the end through the last loop and push {these} out of work", remark[*bedKnitter]),
	say("Bind off {stitches} at {place}: {span}; push {these} out of work", (*bedKnitter).bindOffStep),
	say("Hang a small weight on the {stitches} held at the {side} edge: {they stay} on hold to the end", func(b *bedKnitter, w words) {
		outer := b.all.Runs(func(n shaping.Needle) bool { return b.loops[n] > 0 && b.held[n] })
		if w.side(1) == shaping.Right {
			slices.Reverse(outer)
		}
		held := 0
		for i, run := range outer {
			work := b.inWork().End(w.side(1))
			if i == 0 || (b.neck == 0 || b.front != "") && (run.First.Index() < work.Index()) == (w.side(1) == shaping.Left) {
				held += run.Len()
			}
		}
		must(held == w.number(0), "%d are held at the %v edge", held, w.side(1))
	}),
	say("Decrease 1 at {place}: move {span} one needle to the {side}; push the empty {needle} out of work", func(b *bedKnitter, w words) {
		b.move(w.span(1), b.inwards(w[0], w.side(2)), w.needle(3))
	}),
	say("Decrease 2 at {place}: move {span} one needle to the {side}, then {span}, so that three loops lie on {needle}; push the empty {needle} and {needle} out of work", func(b *bedKnitter, w words) {
		toward := b.inwards(w[0], w.side(2))
		b.move(w.span(1), toward, w.needle(5))
		b.move(w.span(3), toward, w.needle(6))
		must(b.loops[w.needle(4)] == 3, "%d loops lie on %v", b.loops[w.needle(4)], w.needle(4))
	}),
	say("Decrease 1 at each end: move {span} one needle to the right and {span} one needle to the left; push the empty {needle} and {needle} out of work", func(b *bedKnitter, w words) {
		b.move(w.span(0), shaping.Right, w.needle(2))
		b.move(w.span(1), shaping.Left, w.needle(3))
	}),
	say("Increase 1 at {place}: push {needle} into work, move {span} one needle to the {side}; fill the empty {needle} with the purl bar of the neighbour", func(b *bedKnitter, w words) {
		b.push(w.needle(1))
		b.widen(w.span(2), b.outwards(w[0], w.side(3)), w.needle(4))
	}),
	say("Increase 1 at each end: push {needle} and {needle} into work, move {span} one needle to the left and {span} one needle to the right; fill the empty {needle} and {needle} with the purl bar of the neighbour", func(b *bedKnitter, w words) {
		b.push(w.needle(0))
		b.push(w.needle(1))
		b.widen(w.span(2), shaping.Left, w.needle(4))
		b.widen(w.span(3), shaping.Right, w.needle(5))
	}),
	say("push the needles you moved back to working position", func(b *bedKnitter, _ words) {
		must(len(b.forward) > 0, "no needle was moved")
		clear(b.forward)
	}),
	say("Tie a contrasting thread to the edge stitch at both edges, on {needle} and {needle}: the underarms", func(b *bedKnitter, w words) {
		work := b.inWork()
		must(b.neck == 0 && w.needle(0) == work.First && w.needle(1) == work.Last, "%v are in work", work)
		b.Threads = append(b.Threads, b.counter, b.counter)
	}),
	say("Tie a contrasting thread to the edge stitch at {place}, on {needle}: the underarm", func(b *bedKnitter, w words) {
		must(b.place(w[0]) == b.neck.Opposite() && b.loops[w.needle(1)] == 1 && b.loops[w.needle(1).Toward(b.place(w[0]), 1)] == 0, "%v is not at the edge", w.needle(1))
		b.Threads = append(b.Threads, b.counter)
	}),

	// steps that repeat
	say("{n} times, at counter {list}: {rest}", func(b *bedKnitter, w words) {
		b.places(w, w[2])
	}),
	say("In turn these are {rest}", (*bedKnitter).inTurn),
	say("In turn the needle to push into work and the one to fill are {rest}", (*bedKnitter).inTurn),
	say("In turn the needles to push into work and those to fill are {rest}", (*bedKnitter).inTurn),
	say("Each time {rest}", func(b *bedKnitter, w words) {
		if rows, plain := strings.CutPrefix(w[0], "knit "); plain && !strings.Contains(rows, "wrap") && !strings.Contains(rows, ", knit") {
			b.again.thenDo(rows, "knit %s")
		} else {
			b.again.then = []string{w[0]}
		}
		b.repeat(func(round int) {
			at := b.again.at[round]
			if !strings.Contains(at, " ") { // all of them from the same side
				at += " " + b.carriage.String()
			}
			b.begin(words{at})
		}, func(int) {})
	}),
	say("put the next stitch on hold at {place}", func(b *bedKnitter, w words) { b.holdNext(w[0], 1) }),
	say("put the next {stitches} on hold at {place}", func(b *bedKnitter, w words) { b.holdNext(w[1], w.number(0)) }),
	say("bind off the next stitch at {place}", func(b *bedKnitter, w words) { b.bindOffNext(w[0], 1) }),
	say("bind off the next {stitches} at {place}", func(b *bedKnitter, w words) { b.bindOffNext(w[1], w.number(0)) }),
	say("decrease 1 at {place}: move the edge stitch one needle inwards (first {span}, each time one needle further in) and push the emptied needle out of work", func(b *bedKnitter, w words) {
		b.decreaseNext(w[0], w.span(1), 1)
	}),
	say("decrease 1 at {place}: move the {n} edge stitches one needle inwards (first {span}, each time one needle further in) and push the emptied needle out of work", func(b *bedKnitter, w words) {
		b.decreaseNext(w[0], w.span(2), w.number(1))
	}),
	say("decrease 1 at each end: move the edge stitch one needle inwards (first {span} to the right and {span} to the left, each time one needle further in) and push the emptied needles out of work", func(b *bedKnitter, w words) {
		b.decreaseBoth(w.span(0), w.span(1), 1)
	}),
	say("decrease 1 at each end: move the {n} edge stitches one needle inwards (first {span} to the right and {span} to the left, each time one needle further in) and push the emptied needles out of work", func(b *bedKnitter, w words) {
		b.decreaseBoth(w.span(1), w.span(2), w.number(0))
	}),
	say("increase 1 at {place}: push the next needle into work, move the edge stitch one needle outwards (first {span}, each time one needle further out) and fill the emptied needle with the purl bar of the neighbour", func(b *bedKnitter, w words) {
		b.widenOne(w[0], w.span(1), 1)
	}),
	say("increase 1 at {place}: push the next needle into work, move the {n} edge stitches one needle outwards (first {span}, each time one needle further out) and fill the emptied needle with the purl bar of the neighbour", func(b *bedKnitter, w words) {
		b.widenOne(w[0], w.span(2), w.number(1))
	}),
	say("increase 1 at each end: push the next needle at either end into work, move the edge stitch one needle outwards (first {span} to the left and {span} to the right, each time one needle further out) and fill the emptied needles with the purl bar of the neighbour", func(b *bedKnitter, w words) {
		b.widenBoth(w.span(0), w.span(1), 1)
	}),
	say("increase 1 at each end: push the next needle at either end into work, move the {n} edge stitches one needle outwards (first {span} to the left and {span} to the right, each time one needle further out) and fill the emptied needles with the purl bar of the neighbour", func(b *bedKnitter, w words) {
		b.widenBoth(w.span(1), w.span(2), w.number(0))
	}),

	// rows
	say("knit {rows}", func(b *bedKnitter, w words) { b.knit(w.number(0)) }),
	say("wrap {needle}", func(b *bedKnitter, w words) { b.wrap(w.needle(0)) }),
	say("wrap it", func(b *bedKnitter, _ words) { b.wrap(b.given().needle(0)) }),
	say("wrap the innermost of them ({list})", func(b *bedKnitter, w words) {
		named := words(strings.Split(w[0], "; "))
		must(len(named) == len(b.again.at) && b.given().span(0).Contains(named.needle(b.again.round)), "wraps %s", w[0])
		b.wrap(named.needle(b.again.round))
	}),
	say("the carriage ends at the {side}", func(b *bedKnitter, w words) {
		must(w.side(0) == b.carriage, "the carriage is at the %v", b.carriage)
	}),
	say("-> counter {n}; in work {span}, {n}", func(b *bedKnitter, w words) {
		last := b.Passes[len(b.Passes)-1]
		must(w.number(0) == b.counter && w.span(1) == last.Needles && w.number(2) == last.Stitches, "it is counter %d and %v, %d", b.counter, last.Needles, last.Stitches)
	}),

	// off the bed
	say("Bind off the last {stitches}, {span}", func(b *bedKnitter, w words) {
		must(b.inWork() == w.counted(1, 0), "%v are in work", b.inWork())
		b.bindOff(w[1:])
	}),
	say("break the yarn with a tail of {length} and draw it through the last loop", func(b *bedKnitter, _ words) { b.yarn = false }),
	say("Break the yarn with a tail of {length} if the {joined} with it, else {length}", func(b *bedKnitter, _ words) { b.yarn = false }),
	say("Push the empty needles out of work", remark[*bedKnitter]),
	say("Counter off", func(b *bedKnitter, _ words) { b.counting = false }),
	say("Knit {rows} of waste yarn over {span} ({stitches})", func(b *bedKnitter, w words) {
		must(b.inWork() == w.counted(1, 2), "%v are in work", b.inWork())
		b.wasteYarn(w.number(0))
	}),
	say("break it and push the stitches off by hand", (*bedKnitter).pushOff),
	say("so that the carriage stays where it is", remark[*bedKnitter]),
	say("so that the carriage stays where it is: they stay live for joining", remark[*bedKnitter]),
	say("Push {list} ({stitches}, {part}) back into work", func(b *bedKnitter, w words) {
		for _, span := range spans(w[0]) {
			b.setHeld(span, false)
		}
		count := 0
		for _, span := range b.working() {
			count += span.Len()
		}
		must(slices.Equal(b.working(), spans(w[0])) && count == w.number(1), "%d in work: %v", count, b.working())
	}),
	say("Knit {rows} of waste yarn over them in one strip", func(b *bedKnitter, w words) { b.wasteYarn(w.number(0)) }),
	say("ready for the neckband", remark[*bedKnitter]),
	say("the yarn runs past the empty needles between them", func(b *bedKnitter, _ words) {
		work := b.working()
		must(len(work) > 1, "only %v are in work", work)
		for i := 1; i < len(work); i++ {
			must(work[i].First.Index()-work[i-1].Last.Index() <= 5, "the yarn runs far from %v to %v", work[i-1], work[i])
		}
	}),
	say("Lift {needle}, {the} stitch of {part}, onto a safety pin: it stays live", func(b *bedKnitter, w words) {
		b.setHeld(w.span(0), false)
		b.loops[w.needle(0)] = 0
		b.waste++
	}),
	say("Set the carriage back to knit all needles", func(b *bedKnitter, _ words) { b.toHold = false }),
}...)

var partOnHold = regexp.MustCompile(`^the (?:first neck stitches|middle|left half|right half) (\S+) \((\d+)\)$`)

func (b *bedKnitter) bindOffStep(w words) {
	must(b.place(w[1]) == b.carriage && w.span(2).Len() == w.number(0), "bind off %s with the carriage at the %v", w[2], b.carriage)
	b.bindOff(w[2:])
}

func (b *bedKnitter) holdNext(place string, count int) {
	must(b.place(place) == b.carriage.Opposite() && b.given().span(0).Len() == count, "hold %v with the carriage at the %v", b.given(), b.carriage)
	b.hold(b.given().span(0))
}

func (b *bedKnitter) bindOffNext(place string, count int) {
	must(b.place(place) == b.carriage && b.given().span(0).Len() == count, "bind off %v with the carriage at the %v", b.given(), b.carriage)
	b.bindOff(b.given())
}

func (b *bedKnitter) decreaseNext(place string, first shaping.Span, count int) {
	b.moveNext(b.given()[0], b.place(place), first, count)
}

func (b *bedKnitter) decreaseBoth(left, right shaping.Span, count int) {
	atLeft, atRight, _ := strings.Cut(b.given()[0], " and ")
	b.moveNext(atLeft, shaping.Left, left, count)
	b.moveNext(atRight, shaping.Right, right, count)
}

// moveNext moves the group whose outermost needle is named; first is the first one's.
func (b *bedKnitter) moveNext(name string, edge shaping.Side, first shaping.Span, count int) {
	inwards := edge.Opposite()
	group := shaping.Span{First: needle(name), Last: needle(name)}.Moved(inwards, count-1)
	must(group == first.Moved(inwards, b.again.round).Moved(edge, -b.again.round), "the group of %s is %v, the first one %v", name, group, first)
	b.move(group, inwards, needle(name))
}

func (b *bedKnitter) inTurn(w words) {
	b.again.names = strings.Split(w[0], "; ")
	must(len(b.again.names) == len(b.again.at), "%d times: %s", len(b.again.at), w[0])
}

func (b *bedKnitter) widenBoth(left, right shaping.Span, count int) {
	pushed, filled, _ := strings.Cut(b.given()[0], ", ")
	for _, name := range strings.Split(pushed, " and ") {
		b.push(needle(name))
	}
	atLeft, atRight, _ := strings.Cut(filled, " and ")
	b.widenNext(atLeft, shaping.Left, left, count)
	b.widenNext(atRight, shaping.Right, right, count)
}

func (b *bedKnitter) widenOne(place string, first shaping.Span, count int) {
	pushed, filled, _ := strings.Cut(b.given()[0], ", ")
	b.push(needle(pushed))
	b.widenNext(filled, b.place(place), first, count)
}

// widenNext moves the group whose innermost needle is named outwards; first is the first
// one's.
func (b *bedKnitter) widenNext(name string, edge shaping.Side, first shaping.Span, count int) {
	group := shaping.Span{First: needle(name), Last: needle(name)}.Moved(edge, count-1)
	must(group == first.Moved(edge, b.again.round).Moved(edge.Opposite(), -b.again.round), "the group of %s is %v, the first one %v", name, group, first)
	b.widen(group, edge, needle(name))
}
