package browsercheck

import (
	"bytes"
	"fmt"
	"image/png"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

var papers = map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter}

// checkPrint prints the page, and there is something on the paper.
func checkPrint(p *page) {
	p.open(desktop)
	for name, size := range papers {
		if len(p.print(size)) == 0 {
			p.problem("%s: nothing is printed", name)
		}
	}
}

// checkCut prints the sheet with the text of each step in a colour of its own. A colour on
// two sheets of paper is a step cut in two, one on none is a step that is not printed.
func checkCut(p *page) {
	p.open(desktop)
	steps := p.state().Steps
	panel := mark(steps + 1)
	marks := make([]mark, steps)
	for i := range marks {
		marks[i] = mark(i + 1)
	}
	eval[any](p, "(steps, panel) => look.paint(steps, panel)", marks, panel)
	for name, size := range papers {
		on := p.print(size)
		for _, m := range marks {
			if len(on[m]) != 1 {
				p.problem("%s: step %d is on the pages %v", name, m, on[m])
			}
		}
		if len(on[panel]) > 0 {
			p.problem("%s: the panel is printed", name)
		}
	}
}

// mark is a number that is written as a colour. Colours come back from the paper rounded,
// so that only every fourth shade counts. Text in black has the mark 0.
type mark int

func (m mark) MarshalText() ([]byte, error) {
	return fmt.Appendf(nil, "#00%02x%02x", m/64*4+2, m%64*4+2), nil
}

func markOf(green, blue string) mark {
	g, _ := strconv.ParseUint(green, 16, 8) // two digits each
	b, _ := strconv.ParseUint(blue, 16, 8)
	return mark(g/4*64 + b/4)
}

var pdfPart = regexp.MustCompile(`<page number="(\d+)"` +
	`|<fontspec id="(\d+)"[^>]* color="#[0-9a-f]{2}([0-9a-f]{2})([0-9a-f]{2})"` +
	`|<text [^>]*font="(\d+)">(.*)</text>`)

// print prints the page and returns on which sheets of paper there is text of each mark.
func (p *page) print(size chromedp.PaperSize) map[mark][]int {
	p.t.Helper()
	pdf := run(p, chromedp.PrintToPDF(chromedp.PDFPaper(size)))
	reader := exec.Command("pdftohtml", "-xml", "-i", "-stdout", "-", "-")
	reader.Stdin = bytes.NewReader(pdf)
	text, err := reader.Output()
	if err != nil {
		p.t.Fatal(err)
	}
	on := make(map[mark][]int)
	fonts := make(map[string]mark)
	paper := 0
	for _, m := range pdfPart.FindAllStringSubmatch(string(text), -1) {
		switch number, font, used, words := m[1], m[2], m[5], m[6]; {
		case number != "":
			paper, _ = strconv.Atoi(number)
		case font != "":
			fonts[font] = markOf(m[3], m[4])
		case strings.TrimSpace(words) != "":
			if m := fonts[used]; !slices.Contains(on[m], paper) {
				on[m] = append(on[m], paper)
			}
		}
	}
	return on
}

// checkPaperBoxes prints the box of a ticked step as that of one that is not.
func checkPaperBoxes(p *page) {
	p.open(desktop)
	p.prefer("print", "prefers-color-scheme", "light")
	empty := p.box()
	eval[any](p, "() => document.getElementById('tick-2').click()")
	if !bytes.Equal(p.box(), empty) {
		p.problem("a ticked box is not printed as an empty one")
	}
	if blank(p.t, empty) {
		p.problem("no box is printed")
	}
}

// box returns the picture of the box of step 2, which is not the step in hand.
func (p *page) box() []byte {
	p.t.Helper()
	clip := eval[cdppage.Viewport](p, "() => look.box(2)")
	return call(p, cdppage.CaptureScreenshot, cdppage.CaptureScreenshotParams{Clip: &clip}).Data
}

// blank reports whether a picture has one colour only.
func blank(t *testing.T, picture []byte) bool {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(picture))
	if err != nil {
		t.Fatal(err)
	}
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if img.At(x, y) != img.At(0, 0) {
				return false
			}
		}
	}
	return true
}
