package examples_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// ofTheProject are the blocks of the project's README that are worked by hand.
var ofTheProject = map[string]func(*testing.T) string{
	"neckline sums":  necklineSums,
	"neckline steps": necklineSteps,
}

func TestProjectsReadme(t *testing.T) {
	path := filepath.Join("..", "README.md")
	text, found := strings.ReplaceAll(read(t, path), "\r\n", "\n"), 0
	made := block.ReplaceAllStringFunc(text, func(old string) string {
		name := block.FindStringSubmatch(old)[1]
		if ofTheProject[name] == nil {
			return old // tested beside its program
		}
		found++
		return "<!-- " + name + " -->\n```text\n" + ofTheProject[name](t) + "```\n"
	})
	if found != len(ofTheProject) {
		t.Errorf("%d blocks, want %d", found, len(ofTheProject))
	}
	golden.Check(t, path, []byte(made))
}

// neckline returns the front of the first command, and its half that README prints.
func neckline(t *testing.T) (garment.Piece, shaping.Panel) {
	t.Helper()
	front, err := garment.Front(specOf(t, "frontpiece"))
	if err != nil {
		t.Fatal(err)
	}
	half, ok := front.Work.Panels.Panel(shaping.LeftHalf)
	if !ok {
		t.Fatal("no left half")
	}
	return front, half
}

func necklineSums(t *testing.T) string {
	front, _ := neckline(t)
	s, w, h := front.Spec.Swatch, front.Widths, front.Heights
	flat := w.Neck - 2*neckSide(front)
	across := func(l any) string { return fmt.Sprintf("%v × %d ÷ %v", l, s.Stitches, s.Width) }
	return table(t,
		sum{"width", across(front.Spec.Neck.Width), nearestOdd, stitches(w.Neck)},
		sum{"flat middle", across(front.Spec.Neck.Flat.Or(gauge.Length{})), nearestOdd, stitches(flat)},
		sum{"each side", fmt.Sprintf("(%d − %d) ÷ 2", w.Neck, flat), exactly, stitches(neckSide(front))},
		sum{"depth", fmt.Sprintf("%v × %d ÷ %v", front.Spec.Neck.Depth, s.Rows, s.Height), nearestEven, rows(h.Neck)},
		sum{"begins at counter", fmt.Sprintf("%d − %d", h.Top(), h.Neck), exactly, fmt.Sprint(h.NeckStart())},
	)
}

// neckSide returns the stitches that go at one side of the neck.
func neckSide(front garment.Piece) int {
	half, _ := front.Work.Panels.Panel(shaping.LeftHalf)
	return -half.Right.Total()
}

// necklineSteps reads the drawing off in the middle of every second row, from the middle of
// the neck up, until all its stitches are gone.
func necklineSteps(t *testing.T) string {
	front, half := neckline(t)
	n, depth, start := neckSide(front), front.Heights.Neck, front.Heights.NeckStart()
	text := readOffHead + "   put on hold\n"
	for row := 1; -half.Right.Through(start+row-2) < n; row += 2 {
		name := fmt.Sprintf("counter %d", start+row-1)
		text += strings.TrimRight(readOff(t, name, n, row, depth, -half.Right.Through(start+row))+"   "+onHold(half, start+row), " ") + "\n"
	}
	return text
}

// onHold returns the needles that a half puts on hold at its right edge before a row.
func onHold(half shaping.Panel, row int) string {
	after := half.InWork(row).Last
	count := half.Right.Through(row-1) - half.Right.Through(row)
	if count == 0 {
		return ""
	}
	return shaping.Span{First: after.Toward(shaping.Right, 1), Last: after.Toward(shaping.Right, count)}.String()
}
