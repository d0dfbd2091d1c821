package sheet_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/walewise/shaping"
)

// A reader of a sheet that begins in the middle takes in how things stand there, and knows
// nothing else of what was knitted before.

// whereItStands returns the sentences that say how things stand, none if the sheet begins
// at the beginning.
func whereItStands(text string, p *progress) []string {
	head, rest, from := strings.Cut(text, "\nWHERE YOU ARE\n")
	if !from {
		return nil
	}
	p.behind, p.stands = strings.Contains(head, "\nBack, knitted"), true
	if front := regexp.MustCompile(`\n(Right|Left) front, knitted`).FindStringSubmatch(head); front != nil {
		p.front = strings.ToLower(front[1])
	}
	here, _, _ := strings.Cut(rest, "\n\n")
	return strings.Split(strings.TrimSuffix(strings.Join(strings.Fields(here), " "), "."), ". ")
}

// standing checks the account at a reading and takes in what it says of stitches that are
// gone.
func (p *progress) standing(account string, stand map[string]int) {
	found := regexp.MustCompile(`^(.*) = (\d+) cast on(?: \+ (\d+) increased)?$`).FindStringSubmatch(account)
	must(found != nil, "not understood: %q", account)
	number := func(text string) int {
		n, _ := strconv.Atoi(text)
		return n
	}
	p.Ledger.CastOn, p.Ledger.Increased = number(found[2]), number(found[3])
	for _, term := range strings.Split(found[1], " + ") {
		count, what, _ := strings.Cut(term, " ")
		switch what {
		case "bound off":
			p.Ledger.BoundOff = number(count)
		case "decreased":
			p.Ledger.Decreased = number(count)
		}
	}
	stand["bound off"], stand["decreased"] = p.Ledger.BoundOff, p.Ledger.Decreased
	checkAccount(fmt.Sprintf("%s = %d", found[1], p.came()), stand, p.came())
	p.stands = false
}

// inHalf takes in the half that is being worked.
func (p *progress) inHalf(half string) { p.panel = half + " half" }

func (b *bedKnitter) stand() map[string]int {
	stand := b.stitches()
	inWork := 0
	for _, run := range b.working() {
		inWork += run.Len()
	}
	held := b.all.Runs(func(n shaping.Needle) bool { return b.held[n] })
	for what := range stand {
		if strings.HasPrefix(what, "on hold") {
			delete(stand, what)
		}
	}
	var names []string
	count := 0
	for _, run := range held {
		names = append(names, run.String())
		count += run.Len()
	}
	stand["in work"], stand["on hold ("+strings.Join(names, ", ")+")"] = inWork, count
	return stand
}

// there puts a stitch on each of the needles.
func (b *bedKnitter) there(span shaping.Span) {
	b.all = b.all.Around(span)
	for n := range span.All() {
		must(b.loops[n] == 0, "%v has a stitch already", n)
		b.loops[n] = 1
	}
}

var waitsAtBed = regexp.MustCompile(`^the (?:middle|left half|right half|neck(?: of the (?:left|right) half)?|underarm at the (?:left|right) edge|shoulder at the (?:left|right) edge|cap's (?:left|right) edge) (.+) \((\d+)\)$`)

// standingAtBed are the phrases that say how things stand on a bed.
var standingAtBed = []phrase[*bedKnitter]{
	say("Counter {n}, carriage at the {side}", func(b *bedKnitter, w words) {
		b.counter, b.carriage = w.number(0), w.side(1)
		b.counting, b.yarn = true, true
		b.Wales = map[shaping.Needle]int{}
	}),
	say("The stitches are cast on; no row is knitted yet", func(b *bedKnitter, _ words) {
		must(b.counter == 0, "counter %d", b.counter)
	}),
	say("You have just knitted row {n}, from {side} to {side}", (*bedKnitter).justKnitted),
	say("and wrapped {needle}", func(b *bedKnitter, w words) {
		b.forward[w.needle(0)] = true // looked at when its place is known
	}),
	say("The {side} half is finished, its yarn is broken; the {side} half begins", func(b *bedKnitter, w words) {
		must(w.side(0) == w.side(1).Opposite(), "both are the %s half", w[0])
		b.yarn = false
	}),
	say("This is the {side} half: the neck is at its {side} end, the outer edge at its {side} end; it becomes the wearer's {side} shoulder", func(b *bedKnitter, w words) {
		b.inHalf(w[0])
		b.half(w.side(1), w.side(2), w.side(3), w.side(2))
	}),
	say("This is the band, in {stitch}: it has {rows}, of which {n} are left", func(b *bedKnitter, w words) {
		must(b.counter+w.number(1) == w.number(0), "%s of %s at counter %d", w[1], w[0], b.counter)
	}),
	say("In work: nothing", func(b *bedKnitter, _ words) { must(!b.yarn, "nothing to knit with the yarn threaded") }),
	say("In work: {span}, {stitches}", func(b *bedKnitter, w words) {
		b.there(w.counted(0, 1))
		for n := range b.forward {
			must(b.inWork().Beyond(b.carriage, 1).First == n, "%v was wrapped and %v are in work", n, b.inWork())
		}
		clear(b.forward)
	}),
	say("On hold: {rest}", func(b *bedKnitter, w words) {
		for _, part := range strings.Split(w[0], "; ") {
			found := waitsAtBed.FindStringSubmatch(part)
			must(found != nil, "not understood: %q", part)
			count := 0
			for _, span := range spans(found[1]) {
				b.there(span)
				b.setHeld(span, true)
				count += span.Len()
			}
			must(found[2] == strconv.Itoa(count), "%s are %d", found[1], count)
		}
	}),
	say("The carriage is set to hold", func(b *bedKnitter, _ words) { b.toHold = true }),
	say("On waste yarn: the shoulder of the {side} half, {stitches} that are off the bed", func(b *bedKnitter, w words) { b.waste += w.number(1) }),
	say("Bound off: the shoulder of the {side} half, {stitches} that are off the bed", remark[*bedKnitter]),
}

func (b *bedKnitter) justKnitted(w words) {
	must(w.number(0) == b.counter && w.side(2) == b.carriage && w.side(1) == b.carriage.Opposite(), "row %s to the %s", w[0], w[2])
}

func (h *handKnitter) stand() map[string]int {
	inWork, waiting := h.remaining(), len(h.left)-h.remaining()+len(h.right)+len(h.otherHalf)
	for _, n := range h.holders {
		waiting += n
	}
	return map[string]int{"in work": inWork, "waiting or on holders": waiting, "taken off live": h.offLive}
}

var (
	waitsInHand = regexp.MustCompile(`^(\d+) sts? stays? unworked at (the neck|the (?:left|right) edge)$`)
	onHolder    = regexp.MustCompile(`^(\d+) sts? of the (?:(middle|neck(?: of the (?:left|right) half)?)|(left|right) half(?: \(with the (\d+) that wait\))?|(?:underarm at the (left|right) edge|cap's (left|right) edge))$`)
)

// onNeedle puts stitches on the needles as they are said to lie when the next row begins.
func (h *handKnitter) onNeedle(parts []string) {
	found := regexp.MustCompile(`^(\d+) sts? in work$`).FindStringSubmatch(parts[0])
	must(found != nil, "not understood: %q", parts[0])
	n := words(found).number(1)
	for _, part := range parts[1:] {
		found := waitsInHand.FindStringSubmatch(part)
		must(found != nil, "not understood: %q", part)
		waiting := slices.Repeat([]string{found[2]}, words(found).number(1))
		if h.place(found[2]) == from(h.row+1) {
			h.right = append(h.right, waiting...)
		} else {
			h.left = append(h.left, waiting...)
		}
	}
	h.left = append(h.left, make([]string, n)...)
}

// standingInHand are the phrases that say how things stand on two needles.
var standingInHand = []phrase[*handKnitter]{
	say("The sts are cast on; no row is worked yet", func(h *handKnitter, _ words) { h.row = 0 }),
	say("You have just worked row {n} ({face})", (*handKnitter).justWorked),
	say("which ended with w&t", remark[*handKnitter]),
	say("The {side} half is finished, its yarn is broken; the {side} half begins", func(h *handKnitter, w words) {
		must(w.side(0) == w.side(1).Opposite(), "both are the %s half", w[0])
	}),
	say("The next row is row {n} ({face})", func(h *handKnitter, w words) {
		must(h.row == 0 || h.row == w.number(0)-1, "after row %d", h.row)
		h.row = w.number(0) - 1
		must(w[1] == faceOf(h.row+1), "row %d is a %s row", h.row+1, faceOf(h.row+1))
	}),
	say("seen on the RS it begins at the {side}", func(h *handKnitter, w words) {
		must(w.side(0) == from(h.row+1), "row %d begins at the %v", h.row+1, from(h.row+1))
	}),
	say("This is the {side} half: seen on the RS the neck is at its {side} end, the outer edge at its {side} end; it becomes the wearer's {side} shoulder", func(h *handKnitter, w words) {
		h.inHalf(w[0])
		h.half(w.side(1), w.side(2), w.side(3), w.side(2).Opposite())
	}),
	say("This is the band, in {stitch}: it has {rows}, of which {n} are left", func(h *handKnitter, w words) {
		must(h.row+w.number(1) == w.number(0), "%s of %s after row %d", w[1], w[0], h.row)
	}),
	say("On the needle: nothing", remark[*handKnitter]),
	say("On the needle: {rest}", func(h *handKnitter, w words) {
		if w[0] != "nothing" {
			h.onNeedle(strings.Split(w[0], "; "))
		}
	}),
	say("On holders: {rest}", func(h *handKnitter, w words) {
		for _, part := range strings.Split(w[0], "; ") {
			found := onHolder.FindStringSubmatch(part)
			must(found != nil, "not understood: %q", part)
			n := words(found).number(1)
			switch {
			case found[2] != "":
				h.holders["the neck"] += n
			case found[3] != "":
				wait := 0
				if found[4] != "" {
					wait = words(found).number(4)
				}
				h.otherHalf = append(slices.Repeat([]string{"the " + found[3] + " edge"}, wait), make([]string, n-wait)...)
			default:
				h.holders[found[5]+found[6]+" edge"] += n
			}
		}
	}),
	say("On a holder, off: the shoulder of the {side} half, {sts}", func(h *handKnitter, w words) { h.offLive += w.number(1) }),
	say("Bound off: the shoulder of the {side} half, {sts}", remark[*handKnitter]),
}

func (h *handKnitter) justWorked(w words) {
	h.row = w.number(0)
	must(w[1] == faceOf(h.row), "row %d is a %s row", h.row, faceOf(h.row))
}
