package sheet_test

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// The reader of these tests knows the printed order of work and how knitting goes, and
// nothing of the piece that was printed. It carries out sentence by sentence what it
// reads; a sentence that it does not understand, or that cannot be done as things
// stand on its needles, is a misreading. What comes off must be what the judge knitted.

// knitted is what came off somebody's needles, as far as both can know it: in the hand
// no needle has a name, so wales are not told apart there.
type knitted struct {
	Passes []pass
	Wraps  []pass // the row before the wrap, with the wrapped needle alone
	Wales  map[shaping.Needle]int
	Ledger shaping.Ledger
	// Threads are the rows after which one was tied to mark an underarm.
	Threads []int
}

// pass is one row.
type pass struct {
	Panel    string
	Row      int
	From     shaping.Side
	Needles  shaping.Span
	Stitches int
}

func judged(piece garment.Piece) knitted {
	inHand := piece.Work.Place == shaping.Hand
	k := knitted{Ledger: piece.Cloth.Ledger()}
	from := map[[2]any]shaping.Side{}
	for c := range piece.Cloth.Courses() {
		p := pass{c.Panel, c.Row, c.From, c.Needles, c.Needles.Len()}
		if inHand {
			p.Needles = shaping.Span{}
		}
		from[[2]any{c.Panel, c.Row}] = c.From
		k.Passes = append(k.Passes, p)
	}
	for w := range piece.Cloth.Wraps() {
		p := pass{w.Panel, w.Row, from[[2]any{w.Panel, w.Row}], shaping.Span{First: w.Needle, Last: w.Needle}, 1}
		if inHand {
			p.Needles = shaping.Span{}
		}
		k.Wraps = append(k.Wraps, p)
	}
	if !inHand {
		k.Wales = maps.Collect(piece.Cloth.Wales())
	}
	switch {
	case piece.Widths.BindOff > 0:
	case piece.Outer().IsValid():
		k.Threads = []int{piece.Heights.Underarm}
	case len(piece.Work.Panels) > 1:
		k.Threads = []int{piece.Heights.Underarm, piece.Heights.Underarm}
	}
	return k
}

// misreading is what stops a reader.
type misreading string

func must(ok bool, format string, args ...any) {
	if !ok {
		panic(misreading(fmt.Sprintf(format, args...)))
	}
}

// follow knits what the sheet says.
func follow(text string) (knitted, error) {
	if strings.Contains(text, "knitted in the hand") {
		return carryOut(text, &handKnitter{holders: map[string]int{}}, inHand)
	}
	return carryOut(text, &bedKnitter{loops: map[shaping.Needle]int{}, held: map[shaping.Needle]bool{}, forward: map[shaping.Needle]bool{}}, atBed)
}

// knitter carries out what the phrases of its craft say.
type knitter interface {
	mark() *regexp.Regexp     // how a line names the place where it begins
	begin(mark words)         // a line at that place
	stop()                    // a sentence is over
	stitches() map[string]int // all that were cast on, by what became of them
	stand() map[string]int    // those that are not finished in the middle of a panel
	common() *progress
}

// progress is what knitters of both crafts keep in mind.
type progress struct {
	knitted
	panel  string
	neck   shaping.Side // where the half has it; none in the body
	behind bool         // the piece lies behind whoever wears it
	front  string       // which of two fronts it is, in small letters; else empty
	boxes  int          // to tick on the line
	band   int          // rows of it
	stands bool         // it is being said how things stand
	do     func(sentence string)
	again  repeat
}

func (p *progress) common() *progress { return p }

// repeat is what a line with several boxes says.
type repeat struct {
	at    []string // the place of each time
	ask   string
	names []string // what each time names
	then  []string // after each asking, in turn
	last  string   // after the last one, if something else
	round int      // the time that is being worked, from 0
}

// places takes in where a line with several boxes is to be carried out. Those of many times
// stand there, and the line has one of its own.
func (p *progress) places(w words, ask string) {
	p.again = repeat{at: strings.Split(w[1], ", "), ask: ask}
	must(len(p.again.at) == w.number(0), "%d times at %s", w.number(0), w[1])
	boxed := 0
	for i, at := range p.again.at {
		if place, ok := strings.CutPrefix(at, "[ ] "); ok {
			p.again.at[i] = place
			boxed++
		}
	}
	if boxed > 0 {
		must(p.boxes == 1, "%d boxes at the beginning and %d in the list", p.boxes, boxed)
		p.boxes = boxed
	}
}

// repeat carries out such a line; before and after are called each time.
func (p *progress) repeat(before, after func(round int)) {
	must(p.boxes == len(p.again.at), "%d boxes for %d times", p.boxes, len(p.again.at))
	for round := range p.again.at {
		p.again.round = round
		before(round)
		p.do(p.again.ask)
		switch then := p.again.then; {
		case round == len(p.again.at)-1 && p.again.last != "":
			p.do(p.again.last)
		case len(then) > 0:
			p.do(then[round%len(then)])
		}
		after(round)
	}
	p.boxes = 1
}

// thenDo takes in what is said to be done after each asking: the same, or two things in
// turn, and perhaps something else the last time. Each is put into the template.
func (r *repeat) thenDo(said, template string) {
	said, last, different := strings.Cut(said, ", the last time ")
	if different {
		r.last = fmt.Sprintf(template, last)
	}
	for _, one := range strings.Split(strings.TrimSuffix(said, " in turn"), " and ") {
		r.then = append(r.then, fmt.Sprintf(template, one))
	}
	must(strings.HasSuffix(said, " in turn") == (len(r.then) == 2), "in turn: %s", said)
}

// place returns the side of a place such as "the neck".
func (p *progress) place(name string) shaping.Side {
	if name == "the neck" {
		must(p.neck != 0, "no neck in the %s", p.panel)
		return p.neck
	}
	return side(strings.Fields(name)[1])
}

// half takes in how a half is said to lie; worn is where one of a front does.
func (p *progress) half(neck, outer, wearer, worn shaping.Side) {
	must(neck == outer.Opposite() && p.panel == outer.String()+" half", "the %s with the neck at the %v", p.panel, neck)
	if p.behind {
		worn = worn.Opposite()
	}
	must(wearer == worn, "the %s is the wearer's %v, not %v", p.panel, worn, wearer)
	p.neck = neck
}

// opened takes in how one of two fronts is said to lie; worn is where its outer edge is.
func (p *progress) opened(neck, outer, wearer, worn shaping.Side) {
	must(neck == outer.Opposite() && wearer == worn && p.front == worn.String(), "a %s front with the neck at the %v, worn on the %v", p.front, neck, wearer)
	p.neck = neck
}

// lines returns the order of work, each line of it unfolded: its continuations added
// and its spaces made single.
func lines(text string) []string {
	if _, rest, from := strings.Cut(text, "\nWHERE YOU ARE\n"); from {
		_, text, _ = strings.Cut(rest, "\nWORDS\n")
		_, text, _ = strings.Cut(text, "\n\n")
	} else {
		_, text, _ = strings.Cut(text, "\nSTART\n")
	}
	text, _, ends := strings.Cut(text, "\nFINISH\n")
	must(ends, "no order of work between START and FINISH")
	var list []string
	for _, block := range strings.Split(text, "\n\n") {
		fresh := true
		for _, line := range strings.Split(block, "\n") {
			opens := fresh || opening.MatchString(line) // a box further in belongs to its line
			line = strings.Join(strings.Fields(line), " ")
			if opens {
				list = append(list, line)
			} else {
				list[len(list)-1] += " " + line
			}
			fresh = heading.MatchString(line)
		}
	}
	return list
}

var (
	opening = regexp.MustCompile(`^(?: {0,2}(?:\[ \]|From here|Check:)| *->)`)
	heading = regexp.MustCompile(`^(?:(FRONT|BACK), (.+)|(?:RIGHT |LEFT )?SLEEVE|(RIGHT|LEFT) FRONT)$`)
	boxes   = regexp.MustCompile(`^((?:\[ \])+) `)
)

// carryOut knits the order of work of a sheet.
func carryOut[K knitter](text string, k K, craft []phrase[K]) (done knitted, err error) {
	reading := ""
	defer func() {
		switch fault := recover().(type) {
		case nil:
		case misreading:
			err = fmt.Errorf("%s; in the line\n%s", fault, reading)
		default:
			panic(fault)
		}
	}()
	p := k.common()
	p.do = func(sentence string) {
		for rest := sentence; rest != ""; {
			if after, ok := understand(craft, k, rest); ok {
				rest = after
			} else if after, ok := understand(eitherWay, p, rest); ok {
				rest = after
			} else if account, ok := strings.CutPrefix(rest, "Check: "); ok {
				if p.stands {
					p.standing(account, k.stand())
				} else {
					checkAccount(account, k.stitches(), p.came())
				}
				rest = ""
			} else {
				must(false, "not understood: %q", rest)
			}
		}
		k.stop()
	}
	for _, reading = range whereItStands(text, p) {
		p.do(reading)
	}
	for _, reading = range lines(text) {
		line := reading
		if found := heading.FindStringSubmatch(line); found != nil {
			p.behind = found[1] == "BACK"
			p.front = strings.ToLower(found[3])
			p.panel = strings.ToLower(cmp.Or(found[2], shaping.Body))
			continue
		}
		p.boxes = 1
		if found := boxes.FindStringSubmatch(line); found != nil {
			line = line[len(found[0]):]
			p.boxes = strings.Count(found[1], "[ ]")
			if p.panel != "" {
				mark := k.mark().FindStringSubmatch(line)
				must(mark != nil, "the line does not say where it begins")
				line = line[len(mark[0]):]
				k.begin(mark[1:])
			}
		}
		for _, sentence := range strings.Split(strings.TrimSuffix(line, "."), ". ") {
			p.do(sentence)
		}
		must(p.boxes == 1, "%d boxes for a line that is done once", p.boxes)
	}
	for _, n := range k.stitches() {
		p.Ledger.Live += n
	}
	p.Ledger.Live -= p.Ledger.Decreased + p.Ledger.BoundOff
	return p.knitted, nil
}

// phrase is something that can be said in a craft, and what it means there.
type phrase[K any] struct {
	said  *regexp.Regexp
	means func(K, words)
}

// say returns the phrase said by the template, in which names in braces stand for what
// changes; it begins a sentence or follows another phrase after a comma or semicolon.
func say[K any](template string, means func(K, words)) phrase[K] {
	pattern := regexp.QuoteMeta(template)
	for name, is := range changing {
		pattern = strings.ReplaceAll(pattern, regexp.QuoteMeta("{"+name+"}"), is)
	}
	if first := template[:1]; first != "{" && strings.ToLower(first) != strings.ToUpper(first) {
		pattern = "(?i:" + first + ")" + pattern[1:]
	}
	return phrase[K]{regexp.MustCompile("^" + pattern + "(?:[,;] |$)"), means}
}

// changing is what changes in phrases.
var changing = map[string]string{
	"n": `(\d+)`, "rows": `(\d+) rows?`, "stitches": `(\d+) stitch(?:es)?`, "sts": `(\d+) sts?`,
	"needle": `([LR]\d+)`, "span": `([LR]\d+(?:-[LR]\d+)?)`, "side": `(left|right)`, "place": `(the neck|the (?:left|right) edge)`,
	"stitch": `(?:mock rib, a rib reformed by hand with the latch tool,|rib) or another stitch that does not roll`,
	"length": `[\d.]+ (?:cm|in|mm)`, "these": `(?:this needle|these needles)`, "go": `(?:go|come)`, "part": `(the neck|the underarm|the cap's (?:left|right) edge)`,
	"then": `(.+?)`, "loosely": `(?: loosely)?`, "the": `(?:the|a)`, "face": `(RS|WS)`, "they stay": `(?:they stay|it stays)`, "wait": `(?:that wait|that waits)`, "joined": `(?:shoulders are joined|shoulder is joined|top is joined)`, "k": `([KkPp])`, "list": `([^:]+?)`, "rest": `(.+)`,
}

// understand carries out the first phrase of the text and returns what follows it.
func understand[K any](phrases []phrase[K], k K, text string) (rest string, ok bool) {
	for _, p := range phrases {
		if found := p.said.FindStringSubmatch(text); found != nil {
			p.means(k, found[1:])
			return text[len(found[0]):], true
		}
	}
	return "", false
}

// remark is the meaning of what asks for nothing that shows in the count of stitches.
func remark[K any](K, words) {}

// eitherWay are the phrases of both crafts.
var eitherWay = []phrase[*progress]{
	say("The first {rows} are the band and count in the length: knit them in {stitch}", func(p *progress, w words) { p.band = w.number(0) }),
	say("The first row is the band and counts in the length: knit it in {stitch}", func(p *progress, _ words) { p.band = 1 }),
	say("The cast on is not a row", remark[*progress]),
	say("Plain knitting rolls at such an edge: plan a band or a hem unless you like it so", remark[*progress]),
	say("From here stitches go at the neck, the {side} end", func(p *progress, w words) {
		must(w.side(0) == p.neck, "the neck is at the %v", p.neck)
	}),
	say("From here stitches {go} at the outer edge, the {side} end", func(p *progress, w words) {
		must(w.side(0) == p.neck.Opposite(), "the outer edge of the %s", p.panel)
	}),
	say("From here both ends are shaped, the neck at the {side} and the outer edge at the {side}: mind the end", func(p *progress, w words) {
		must(w.side(0) == p.neck && w.side(1) == p.neck.Opposite(), "the ends of the %s", p.panel)
	}),
	say("EVERY STITCH {n} cast on + {n} increased = {rest}", func(p *progress, w words) {
		must(w.number(1) == p.Ledger.Increased && w.number(1) > 0, "%d stitches were increased", p.Ledger.Increased)
		p.lastAccount(w.number(0), w[2])
	}),
	say("EVERY STITCH {n} cast on = {rest}", func(p *progress, w words) {
		must(p.Ledger.Increased == 0, "%d stitches were increased", p.Ledger.Increased)
		p.lastAccount(w.number(0), w[1])
	}),
}

// lastAccount checks what is said to have become of all stitches.
func (p *progress) lastAccount(castOn int, said string) {
	l := p.Ledger
	must(castOn == l.CastOn, "%d stitches were cast on", l.CastOn)
	checkAccount(fmt.Sprintf("%s = %d", said, p.came()), map[string]int{
		"decreased": l.Decreased, "bound off": l.BoundOff, "live": p.came() - l.Decreased - l.BoundOff,
	}, p.came())
}

// came returns the stitches cast on or increased.
func (p *progress) came() int { return p.Ledger.CastOn + p.Ledger.Increased }

// parity says whether a number of rows ends at the side where it began.
func parity(rows int) string { return [2]string{"even", "odd"}[rows%2] }

// checkAccount compares an account such as "15 on waste yarn + 4 decreased = 19" with
// where the stitches are.
func checkAccount(text string, want map[string]int, sum int) {
	terms, total, _ := strings.Cut(text, " = ")
	must(total == strconv.Itoa(sum), "a sum of %s for %d stitches", total, sum)
	got := map[string]int{}
	for _, term := range strings.Split(terms, " + ") {
		count, what, _ := strings.Cut(term, " ")
		got[what] = words{count}.number(0)
		sum -= got[what]
	}
	must(sum == 0, "the account misses its sum by %d", sum)
	none := func(_ string, n int) bool { return n == 0 }
	maps.DeleteFunc(got, none)
	maps.DeleteFunc(want, none)
	diff := gocmp.Diff(want, got)
	must(diff == "", "the account (-on the needles +said):\n%s", diff)
}

// words are what stands in a sentence where its phrase changes.
type words []string

func (w words) number(i int) int {
	n, err := strconv.Atoi(w[i])
	must(err == nil, "no number: %q", w[i])
	return n
}

func (w words) side(i int) shaping.Side { return side(w[i]) }

func (w words) needle(i int) shaping.Needle { return w.span(i).First }

// span reads a span named from either end.
func (w words) span(i int) shaping.Span {
	from, to, several := strings.Cut(w[i], "-")
	if !several {
		to = from
	}
	s := shaping.Span{First: needle(from), Last: needle(to)}
	if s.First.Index() > s.Last.Index() {
		s.First, s.Last = s.Last, s.First
	}
	return s
}

// counted reads a span that is said to have as many needles.
func (w words) counted(spanAt, numberAt int) shaping.Span {
	s := w.span(spanAt)
	must(s.Len() == w.number(numberAt), "%v are %d stitches, not %s", s, s.Len(), w[numberAt])
	return s
}

func needle(name string) shaping.Needle {
	n, err := shaping.ParseNeedle(name)
	must(err == nil, "no needle: %q", name)
	return n
}

func side(name string) shaping.Side {
	var s shaping.Side
	must(s.UnmarshalText([]byte(name)) == nil, "no side: %q", name)
	return s
}

// compare knits a sheet and returns an error if it is not what the judge knitted.
func compare(text string, piece garment.Piece) error {
	got, err := follow(text)
	if err != nil {
		return err
	}
	if diff := gocmp.Diff(judged(piece), got); diff != "" {
		return errors.New("not what was judged (-judged +knitted):\n" + diff)
	}
	return nil
}

// sheetOf returns the instructions of a spec; ok is false if no front can be made of it.
func sheetOf(s garment.Spec) (text string, piece garment.Piece, ok bool) {
	piece, err := garment.Front(s)
	if err != nil {
		return "", piece, false
	}
	var out strings.Builder
	if err := sheet.Write(&out, piece); err != nil {
		panic(err)
	}
	return out.String(), piece, true
}

// The printed order of work suffices to knit the piece.
func TestSheetIsEnough(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text, piece, ok := sheetOf(gen.FrontSpec(gauge.MustParseLength("1 mm")).Draw(rt, "spec"))
		if !ok {
			return
		}
		if err := compare(text, piece); err != nil {
			rt.Fatal(err)
		}
	})
}

// It does for every way to work the small front, among them those of the golden files.
func TestSheetIsEnoughForEveryMethod(t *testing.T) {
	l := gauge.MustParseLength
	places := map[string]func(*garment.Spec){
		"on the bed":                    func(*garment.Spec) {},
		"on the bed from a closed edge": func(s *garment.Spec) { s.Setup.Carriage, s.Start.Edge = shaping.Left, garment.ClosedEdge },
		"in the hand":                   func(s *garment.Spec) { s.Setup.On = shaping.Hand },
		"in the hand without a band":    func(s *garment.Spec) { s.Setup.On, s.Start = shaping.Hand, garment.Start{Edge: garment.ClosedEdge} },
	}
	const drawn = "M 0 60 C 30 60 50 30 50 0"
	necks := map[string]func(*garment.Neck){
		"round":   func(*garment.Neck) {},
		"drawn":   func(n *garment.Neck) { n.Shape, n.Path = garment.PathNeck, drawn },
		"shallow": func(n *garment.Neck) { n.Depth, n.Flat = l("1.5 cm"), garment.Exactly(l("9 cm")) },
		"vee":     func(n *garment.Neck) { n.Shape, n.Depth = garment.VeeNeck, l("11 cm") },
		"square":  func(n *garment.Neck) { n.Shape = garment.SquareNeck },
	}
	decreases := garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned}
	bindOffFirst := garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}
	holdFirst := garment.Pair{Several: shaping.Hold, Single: shaping.Fashioned}
	atNecks := []garment.Pair{garment.By(shaping.Hold), garment.By(shaping.BindOff), bindOffFirst, decreases}
	atShoulders := []garment.Pair{garment.By(shaping.Hold), garment.By(shaping.BindOff)}
	atArmholes := []func(*garment.Spec){
		func(s *garment.Spec) { s.Methods.Armhole = bindOffFirst },
		func(s *garment.Spec) { s.Methods.Armhole = holdFirst },
		func(s *garment.Spec) { s.Units, s.Armhole = gauge.Inch, garment.Armhole{Depth: s.Armhole.Depth} }, // straight
		func(s *garment.Spec) { s.Armhole.Path, s.Shoulder.Path = drawn, drawn },
	}
	made := map[string]int{}
	for place, setUp := range places {
		for neck, shape := range necks {
			for _, neckBy := range atNecks {
				for _, shoulderBy := range atShoulders {
					for _, armhole := range atArmholes {
						s := spec()
						setUp(&s)
						shape(&s.Neck)
						s.Methods = garment.Methods{Neck: neckBy, Shoulder: shoulderBy}
						armhole(&s)
						text, piece, ok := sheetOf(s)
						if !ok {
							continue // not every shape can be worked by every method
						}
						made[place]++
						if err := compare(text, piece); err != nil {
							t.Errorf("%s, neck %s, methods %v: %v", place, neck, s.Methods, err)
						}
					}
				}
			}
		}
	}
	for place := range places {
		if made[place] < 60 {
			t.Errorf("only %d fronts were made %s", made[place], place)
		}
	}
}

// Golden sheets can be followed as they stand, by a reader who has no piece to compare.
func TestGoldenSheetsCanBeFollowed(t *testing.T) {
	files, err := filepath.Glob("testdata/*.golden")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), "EVERY STITCH") {
			continue // a table
		}
		if _, err := follow(string(text)); err != nil {
			t.Errorf("%s: %v", file, err)
		}
	}
}

// What is wrong in a sheet shows when it is followed.
func TestReaderNoticesFaults(t *testing.T) {
	bed, hand, vee := spec(), spec(), spec()
	hand.Setup.On = shaping.Hand
	vee.Setup.On = shaping.Hand
	vee.Neck = garment.Neck{Shape: garment.VeeNeck, Width: vee.Neck.Width, Depth: gauge.MustParseLength("11 cm")}
	vee.Methods.Neck = garment.By(shaping.Fashioned)
	for _, fault := range []struct {
		name           string
		spec           garment.Spec
		wrong, instead string // what is printed, and of what it takes the place
	}{
		{"a word nobody knows", bed, "Knit as you like.", "Knit 54 rows."},
		{"a row missing", bed, "Knit 53 rows.", "Knit 54 rows."},
		{"the wrong end", bed, "at the right edge: L39-L37", "at the left edge: L39-L37"},
		{"bound off from the far end", bed, "L37-L39; push", "L39-L37; push"},
		{"more needles than stitches", bed, "Cast on L39-R40", "Cast on L39-R39"},
		{"a group that is too wide", bed, "move the 2", "move the\n                          3"},
		{"held needles that knit", bed, "Set the carriage back to knit all needles. Knit 1 row, wrap L14,", "Knit 1 row, wrap L14,"},
		{"no wrap", bed, "Knit 1 row,\n", "Knit 1 row, wrap L14,\n"},
		{"the wrong needle wrapped", bed, "wrap L15", "wrap L14"},
		{"the wrong reading to go back to", bed, "set back to 096", "set back to 095"},
		{"one box too many", bed, "[ ][ ][ ]", "[ ][ ]"},
		{"a wrong account", bed, "48 on hold", "47 on hold"},
		{"a wrong last account", bed, "5 decreased + 12 bound off", "4 decreased + 12 bound off"},
		{"the other shoulder", bed, "it becomes the wearer's\n  right", "it becomes the wearer's\n  left"},
		{"knit in a WS row", hand, "K13, w&t", "P13, w&t"},
		{"a stitch too few", hand, "K21, w&t: 4", "K22, w&t: 4"},
		{"stitches that are not there", hand, "K23, w&t: 4", "K22, w&t: 4"},
		{"a turn without a wrap", hand, "k to the last 2 sts in work, turn", "k to the last 2 sts in work, w&t"},
		{"too few come back to close", hand, "P all 14 sts", "P all 15 sts"},
		{"the middle on no holder", hand, "Slip\n                          the next 9 sts", "Slip\n                          the next 10 sts"},
		{"the wrong edge", hand, "BO 3 sts at the left edge", "BO 3 sts at the right edge"},
		{"a lean against the edge", vee, "k to last 3 sts, ssk, k1", "k to last 3 sts, k2tog, k1"},
		{"a WS decrease in a RS row", vee, "k1, p2tog, k to last", "k1, ssk, k to last"},
		{"stitches left over", vee, "k to last 4 sts, k2tog, k1", "k to last 3 sts, k2tog, k1"},
		{"no room for the decrease", vee, "k to last 2 sts, k2tog, k1", "k to last 3 sts, k2tog, k1"},
		{"nothing to turn before", vee, "k1, ssk, k to the turn, turn", "k1, ssk, k to end"},
	} {
		text, piece := write(t, fault.spec)
		checkNoticed(t, text, piece, fault.name, fault.wrong, fault.instead)
	}
}

// checkNoticed fails the test if a sheet with something wrong instead of what is printed
// leads to what was judged.
func checkNoticed(t *testing.T, text string, piece garment.Piece, name, wrong, instead string) {
	t.Helper()
	if !strings.Contains(text, instead) {
		t.Errorf("%s: %q is not in the sheet", name, instead)
	} else if err := compare(strings.Replace(text, instead, wrong, 1), piece); err == nil {
		t.Errorf("%s is not noticed", name)
	}
}
