package svgw_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/internal/svgw"
	"pgregory.net/rapid"
)

func TestWriter(t *testing.T) {
	var b bytes.Buffer
	s := svgw.New(&b)
	s.Open("svg", svgw.A("viewBox", "0 0 2 2"))
	s.Open("g", svgw.A("class", `a"b`))
	s.Text("text", "1 < 2 & 3\x00", svgw.N("x", 1500))
	s.Leaf("path", svgw.A("d", new(svgw.Path).Box(0, 500, 1000, 250).String()))
	if err := s.End(); err != nil {
		t.Fatal(err)
	}
	want := `<svg viewBox="0 0 2 2">
<g class="a&#34;b">
<text x="1.5">1 &lt; 2 &amp; 3` + "\uFFFD" + `</text>
<path d="M0 .5h1v.25h-1z"/>
</g>
</svg>
`
	if b.String() != want {
		t.Errorf("wrote\n%s, want\n%s", b.String(), want)
	}
}

// Whatever a text or a value holds, the document is well-formed and holds it as text, but for
// characters that XML does not have.
func checkText(t interface{ Fatalf(string, ...any) }, text string) {
	var b bytes.Buffer
	s := svgw.New(&b)
	s.Open("svg", svgw.A("class", text))
	s.Text("title", text)
	if err := s.End(); err != nil {
		t.Fatalf("error %v", err)
	}
	want := strings.Map(func(r rune) rune {
		if r == '\t' || r == '\n' || r == '\r' || r >= 0x20 && r != 0xFFFE && r != 0xFFFF {
			return r
		}
		return 0xFFFD
	}, text) // a byte that is no UTF-8 comes as U+FFFD
	d := xml.NewDecoder(&b)
	got, elements := "", 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			elements++
			for _, a := range token.Attr {
				if a.Name.Local == "class" && a.Value != want {
					t.Fatalf("value %q of %q", a.Value, text)
				}
			}
		case xml.CharData:
			if elements == 2 {
				got += string(token)
			}
		}
	}
	if elements != 2 || strings.TrimSuffix(got, "\n") != want && strings.TrimSuffix(got, "\n\n") != want && got != want+"\n" {
		t.Fatalf("%q reads back as %q in %d elements", text, got, elements)
	}
}

func TestTextStaysText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkText(t, rapid.String().Draw(t, "text")) })
}

func FuzzText(f *testing.F) {
	for _, seed := range []string{"", "]]>", "</title>", "\x00\x1f\x7f", "\u202e", "\xff", "\x8f\x87", "&#0;"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) { checkText(t, text) })
}

// A number reads back as what it is, without an exponent and without a sign of zero.
func TestNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := svgw.Number(rapid.Int64Range(-1e12, 1e12).Draw(t, "n"))
		text := n.String()
		back, err := strconv.ParseFloat(text, 64)
		if err != nil || int64(back*1000+0.5*sign(back)) != int64(n) || strings.ContainsAny(text, "eE+") {
			t.Fatalf("%d reads %q", int64(n), text)
		}
	})
	if got := svgw.Number(0).String(); got != "0" {
		t.Errorf("0 reads %q", got)
	}
	if got := svgw.Whole(12).String(); got != "12" {
		t.Errorf("12 reads %q", got)
	}
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

func TestPath(t *testing.T) {
	var p svgw.Path
	if !p.IsEmpty() {
		t.Error("a new path is not empty")
	}
	p.Move(-500, 0).Line(0, 250).Line(0, 250).Right(-1250).Down(2000).Line(-1250, 0)
	const want = "M-.5 0l.5 .25h-1.25v2v-2.25"
	if got := p.String(); got != want {
		t.Errorf("path %q, want %q", got, want)
	}
}

type failing struct{ calls int }

var errFull = errors.New("no room")

func (f *failing) Write([]byte) (int, error) { f.calls++; return 0, errFull }

// The first error stops the writing and comes back.
func TestFirstErrorIsKept(t *testing.T) {
	f := &failing{}
	s := svgw.New(f)
	s.Open("svg")
	for range 5000 {
		s.Leaf("path")
	}
	if err := s.End(); err != errFull || f.calls != 1 {
		t.Errorf("error %v after %d calls", err, f.calls)
	}
}
