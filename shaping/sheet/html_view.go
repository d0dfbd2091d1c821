package sheet

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"io"
	"reflect"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
)

// view is what the page for the screen shows.
type view struct {
	Title        string
	Sheet        string // the fingerprint of its steps
	View         string
	Contents     []contentsView
	ContentsNote string
	Facts        []string
	Failed       []checkView
	Passed       []checkView
	ToKnow       []ofPieces[string]
	SizeHeads    []string
	Sizes        []ofPieces[sizesView]
	Needed       []ofPieces[[]string]
	Yarn         yarnTable
	Unit, Side   string // what a reading and a side are, where that is not said with them
	Pieces       []pieceView
	Joining      joiningView
	Order        []string // of joining, where a piece stands alone
	Words        [][2]string
	Dangers      []string
}

// contentsView leads to the first step of a piece, a band or the joining.
type contentsView struct {
	Name  string
	First int
	Text  string
}

type checkView struct{ Outcome, Says string }

type sizesView struct {
	Note    string
	Rows    [][]string
	Remarks []string
}

type pieceView struct {
	Name             string
	Schematic, Chart template.HTML
	ChartName        string
	Lists            []listView
	Finish           []listView
	Joins            []string // how it lies beside the others
	Shapes           [][2]string
	Account          string
}

type tableView struct {
	Name  string
	Heads []string
	Rows  [][]string
}

// joiningView is the joining in its order: seams, and bands between them.
type joiningView struct {
	Name  string
	Parts []bandView
}

// bandView is a band, or some seams; the first of those have no name.
type bandView struct {
	Name  string
	In    string // what the contents call it
	First int    // its first step
	Notes []string
	Lists []listView
}

// newView returns the page of a set of pieces that were made.
func newView(set garment.Set) (view, error) {
	s := newSetWriter(nil, set)
	first := s.pieces[0]
	v := view{
		Title:        first.titleText(),
		View:         oneline.Capital(first.voice.view()),
		ContentsNote: s.contentsNote(),
		Facts:        s.together(),
		ToKnow:       forPieces(s.pieces, (*writer).toKnow),
		SizeHeads:    sizeHeads(),
		Sizes: forPieces(s.pieces, func(p *writer) []sizesView {
			return []sizesView{{p.sizesNote(), p.sizeRows(), p.sizeRemarks()}}
		}),
		Needed:  forPieces(s.pieces, func(p *writer) [][]string { return [][]string{p.needed()} }),
		Yarn:    s.yarnTable(set),
		Dangers: s.halved().dangers(),
	}
	v.Unit, v.Side = first.voice.labels()
	for _, c := range s.checks {
		shown := checkView{outcome(c), oneline.Of(c.Says)}
		if c.Passed {
			v.Passed = append(v.Passed, shown)
		} else {
			v.Failed = append(v.Failed, shown)
		}
	}
	var n numbering
	for i, p := range s.pieces {
		c := p.inContents()
		v.Contents = append(v.Contents, contentsView{p.work.Name, n.steps + 1,
			fmt.Sprintf("cast on %d; %d rows high, %d knitted; %s %s; %s", c.CastOn, c.High, c.Knitted, p.voice.columns(), c.Across, c.Finished)})
		shown, err := p.pieceView(&n, s.nameOf(i), i+1)
		if err != nil {
			return view{}, err
		}
		v.Pieces = append(v.Pieces, shown)
	}
	v.Joining = s.joiningView(&n)
	for _, part := range v.Joining.Parts {
		if !slices.ContainsFunc(v.Contents, func(c contentsView) bool { return c.Name == part.In }) {
			v.Contents = append(v.Contents, contentsView{Name: part.In, First: part.First})
		}
	}
	if len(v.Joining.Parts) == 0 && len(s.pieces) == 1 {
		v.Order = first.joiningOrder()
	}
	v.Words = slices.DeleteFunc(first.wordsOf(n.text.String()), func(k [2]string) bool { return k[0] == "[ ]" })
	v.Sheet = n.fingerprint()
	return v, nil
}

// pieceView is what is shown of a piece alone.
func (s *writer) pieceView(n *numbering, name string, number int) (pieceView, error) {
	lines := slices.Concat(s.start(), s.ordered(s.beginning(), alone))
	v := pieceView{
		Name:      name,
		ChartName: fmt.Sprintf("Chart of the %s", s.work.Name),
		Lists:     n.lists(s.work.Name, lines),
		Finish:    n.lists(s.work.Name, s.toFinish()),
		Shapes:    s.shapesInWords(),
		Account:   s.work.Ledger.String(),
	}
	if s.isTrunk() {
		v.Joins = s.joinShoulders()
	}
	var err error
	if v.Schematic, err = picture(draw.Schematic, fmt.Sprintf("schematic-%d", number), s.piece); err != nil {
		return v, err
	}
	v.Chart, err = picture(draw.Chart, fmt.Sprintf("chart-%d", number), s.piece)
	return v, err
}

// picture returns a drawing as part of the page. Package draw escapes what it writes.
func picture(draws func(io.Writer, draw.Look, ...garment.Piece) error, id string, piece garment.Piece) (template.HTML, error) {
	var text bytes.Buffer
	err := draws(&text, draw.Look{Inline: true, ID: id}, piece)
	return template.HTML(text.String()), err
}

// joiningView shows the seams, with the steps of each band where it is picked up.
func (s *setWriter) joiningView(n *numbering) joiningView {
	v := joiningView{Name: joiningHeading}
	for joints := s.joints(); len(joints) > 0; {
		if band := joints[0].band; band != nil {
			v.Parts = append(v.Parts, bandWriter{writer: s.halved(), band: *band, inPlace: true}.bandView(n))
			joints = joints[1:]
			continue
		}
		part := bandView{In: "joining", First: n.steps + 1}
		if i := len(v.Parts); i > 0 {
			part.Name = "After the " + v.Parts[i-1].In
		}
		var said []line
		for len(joints) > 0 && joints[0].band == nil {
			said = append(said, step(cmp.Or(joints[0].full, joints[0].text)))
			joints = joints[1:]
		}
		part.Lists = n.lists(part.In, said)
		v.Parts = append(v.Parts, part)
	}
	return v
}

func (b bandWriter) bandView(n *numbering) bandView {
	v := bandView{Name: oneline.Capital(b.band.Name), In: b.band.Name, First: n.steps + 1}
	said := b.pickUp()
	for _, l := range said[0] {
		v.Notes = append(v.Notes, l.text)
	}
	for _, lines := range said[1:] {
		v.Lists = append(v.Lists, n.lists(b.band.Name, lines)...)
	}
	return v
}

// ofPieces is what is so of the pieces that it names; of all of them it names none.
type ofPieces[T any] struct {
	Names string
	Said  T
}

// forPieces says of each piece what there is to say, and once what several have in common.
func forPieces[T any](pieces []*writer, of func(*writer) []T) []ofPieces[T] {
	var list []ofPieces[T]
	var names [][]string
	for _, p := range pieces {
		for _, said := range of(p) {
			i := slices.IndexFunc(list, func(other ofPieces[T]) bool { return reflect.DeepEqual(other.Said, said) })
			if i < 0 {
				i = len(list)
				list, names = append(list, ofPieces[T]{Said: said}), append(names, nil)
			}
			names[i] = append(names[i], p.work.Name)
		}
	}
	for i := range list {
		if len(names[i]) < len(pieces) {
			list[i].Names = strings.Join(names[i], ", ")
		}
	}
	return list
}
