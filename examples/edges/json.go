package main

import (
	"encoding/json"
	"strconv"

	"example.com/walewise/curve"
	"example.com/walewise/internal/command"
	"example.com/walewise/shaping"
)

// document is JSON as it is written. Commas stand by themselves where a value follows another.
type document []byte

func (d *document) open(bracket byte) {
	d.comma()
	*d = append(*d, bracket)
}

func (d *document) close(bracket byte) { *d = append(*d, bracket) }

func (d *document) comma() {
	if n := len(*d); n > 0 {
		switch (*d)[n-1] {
		case '{', '[', ':':
		default:
			*d = append(*d, ',')
		}
	}
}

// key writes a key, which has no character to escape.
func (d *document) key(name string) {
	d.comma()
	*d = append(*d, '"')
	*d = append(*d, name...)
	*d = append(*d, '"', ':')
}

func (d *document) count(name string, n int) {
	d.key(name)
	*d = strconv.AppendInt(*d, int64(n), 10)
}

func (d *document) float(name string, x float64) {
	const places = 9
	d.key(name)
	*d = strconv.AppendFloat(*d, x, 'f', places, 64)
}

func (d *document) text(name, s string) {
	d.key(name)
	quoted, _ := json.Marshal(s) // texts have no errors
	*d = append(*d, quoted...)
}

// appendJSON writes an answer as one line.
func appendJSON(to []byte, a answer) []byte {
	d := document(to)
	d.open('{')
	if a.id != nil {
		d.key("id")
		d = append(d, a.id...)
	}
	if a.err != nil {
		d.refusal(a)
	} else {
		d.wordings(a)
	}
	d.close('}')
	return d
}

func (d *document) wordings(a answer) {
	trace := a.wordings.Trace
	d.count("stitches", a.drawing.Stitches())
	d.count("rows", a.drawing.Rows())
	d.steps(trace.Schedule)
	d.float("area", trace.Measures.Area)
	d.float("floor", trace.Measures.Floor)
	d.float("deviation", trace.Measures.Deviation)
	d.key("wordings")
	d.open('[')
	for _, w := range a.wordings.All {
		d.wording(w, a)
	}
	d.close(']')
	if a.wordings.Partial {
		d.key("partial")
		*d = append(*d, "true"...)
	}
}

func (d *document) steps(s shaping.Schedule) {
	d.key("steps")
	d.open('[')
	for _, step := range s {
		d.open('{')
		d.count("row", step.Row)
		d.count("stitches", step.Stitches)
		d.close('}')
	}
	d.close(']')
}

func (d *document) wording(w curve.Wording, a answer) {
	d.open('{')
	d.count("count", len(w.Phrases))
	d.count("base", -w.Base)
	d.key("phrases")
	d.open('[')
	for _, p := range w.Phrases {
		d.phrase(p, a.rules)
	}
	d.close(']')
	d.steps(w.Schedule)
	d.float("area", w.Measures.Area)
	d.float("deviation", w.Measures.Deviation)
	d.text("words", words(w, a.side))
	d.close('}')
}

func (d *document) phrase(p shaping.Phrase, r shaping.Rules) {
	every := p.Every
	if every == 0 { // one step that starts freely has no distance: that of its rows
		every = r.For(p.Stitches).BeatOf(p.Stitches).Every
	}
	d.open('{')
	d.count("from", p.From)
	d.key("every")
	d.open('[')
	*d = strconv.AppendInt(*d, int64(every), 10)
	if p.Then != 0 {
		d.comma()
		*d = strconv.AppendInt(*d, int64(p.Then), 10)
	}
	d.close(']')
	d.count("stitches", p.Stitches)
	d.count("times", p.Times)
	d.close('}')
}

func (d *document) refusal(a answer) {
	d.text("error", command.OneLine(a.err))
	if !a.infeasible {
		return
	}
	d.key("nearest")
	d.open('[')
	for _, r := range a.nearest {
		d.rules(r)
	}
	d.close(']')
	d.key("sizes")
	d.open('[')
	for _, size := range a.sizes {
		d.open('{')
		d.count("stitches", size.Stitches)
		d.count("rows", size.Rows)
		d.close('}')
	}
	d.close(']')
}

// rules writes rules as a request does.
func (d *document) rules(r shaping.Rules) {
	d.open('{')
	d.beat(shaping.Beat{Every: r.Every, Phase: r.Phase})
	d.count("apart", r.Apart)
	d.count("most", r.Most)
	d.count("base", r.Base)
	d.count("plain", r.Plain)
	if !r.Single.IsZero() {
		d.key("single")
		d.open('{')
		d.beat(r.Single)
		d.close('}')
	}
	if r.Coming != nil {
		d.key("coming")
		d.rules(*r.Coming)
	}
	d.close('}')
}

func (d *document) beat(b shaping.Beat) {
	d.count("every", b.Every)
	d.count("phase", b.Phase)
}
