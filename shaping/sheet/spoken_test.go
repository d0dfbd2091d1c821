package sheet_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// The shapes in words are those of both edges: read back, what is said of a shape gives the
// steps at the right, and from the readings in brackets those at the left.
func TestShapesAreTrue(t *testing.T) {
	read := map[string]int{}
	all := func(rt rapid.TB, s garment.Spec) {
		for _, name := range []string{"front", "back", "sleeve"} {
			piece, err := pieces(s)[name]()
			if err != nil {
				continue // not every drawn jumper can be made
			}
			checkShapes(t, rt, piece, read)
		}
	}
	rapid.Check(t, func(rt *rapid.T) { all(rt, jumperSpec(rt)) })
	for rows := range 20 { // necks around the underarms, where the halves shape the armholes
		s := jumper()
		s.Neck = garment.Neck{Shape: garment.VeeNeck, Width: s.Neck.Width, Depth: gauge.MustParseLength("14 cm").Add(gauge.MustParseLength("3 mm").Mul(rows))}
		all(t, s)
	}
	flared := jumper() // which may not be drawn in a short run
	flared.Body.Hem, flared.Body.Waist = flared.Body.Width.Add(gauge.MustParseLength("4 cm")), nil
	all(t, flared)
	for _, name := range []string{garment.NeckEdge, garment.ArmholeEdge, garment.CapEdge, garment.HemToUnderarm} {
		if read[name] == 0 {
			t.Errorf("no %s was read", name)
		}
	}
}

// checkShapes reads what is said of a piece's shapes and counts the edges that it reads.
func checkShapes(t *testing.T, rt rapid.TB, piece garment.Piece, read map[string]int) {
	text := strings.Join(strings.Fields(sheetOfPiece(t, piece)), " ")
	for _, edge := range piece.Edges {
		if edge.Name == garment.ShoulderEdge || len(edge.Schedule) == 0 {
			continue
		}
		read[edge.Name]++
		checkSpoken(rt, text, piece, edge, edge.Panel == shaping.LeftHalf || !piece.Outer().IsValid() && edge.Panel == shaping.Body && edge.Side == shaping.Left)
	}
}

// checkSpoken compares what is said of an edge with its steps; left means that it is the
// second of two.
func checkSpoken(rt rapid.TB, text string, piece garment.Piece, edge garment.Edge, left bool) {
	said := regexp.MustCompile(" " + edge.Name + `: \d+ stitch(?:es)?(?: more)? at (?:each side|the (?:left|right) edge(?:, the first \d+ of them level)?)\. (.+?)\. Off the drawn line`).FindStringSubmatch(text)
	if said == nil {
		rt.Fatalf("%s: nothing is said of the %s:\n%s", piece.Name(), edge.Name, text)
	}
	if diff := cmp.Diff(workedAt(piece, edge), readSteps(rt, said[1], left)); diff != "" {
		rt.Errorf("%s, %s at the %v (-worked +said):\n%s\n%s", piece.Name(), edge.Name, edge.Side, said[1], diff)
	}
}

// The shapes of two fronts are said with the edge where they are, those of their necks with
// the flat part.
func TestShapesOfFrontsAreTrue(t *testing.T) {
	read := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		both, ok := fronts(gen.CardiganSpec(gauge.MustParseLength("1 mm")).Draw(rt, "spec"))
		if !ok {
			return
		}
		for _, piece := range both {
			checkShapes(t, rt, piece, read)
		}
	})
	usual := jumper() // which may not be drawn in a short run
	usual.Opening = &garment.Opening{}
	both, ok := fronts(usual)
	if !ok {
		t.Fatal("no usual fronts")
	}
	for _, piece := range both {
		checkShapes(t, t, piece, read)
	}
	if read[garment.NeckEdge] == 0 || read[garment.ArmholeEdge] == 0 {
		t.Errorf("read were %v", read)
	}
}

// said is a step as the shapes in words have it.
type said struct {
	Row, Stitches int
	Way           string
}

// workedAt returns the steps of an edge, with those taken off at once at an underarm.
func workedAt(piece garment.Piece, edge garment.Edge) []said {
	first, last := edge.FirstRow+edge.Schedule[0].Row-1, edge.FirstRow+edge.Schedule[len(edge.Schedule)-1].Row-1
	outer := edge.Name == garment.ArmholeEdge || edge.Name == garment.CapEdge
	var steps []said
	for _, p := range piece.Work.Panels {
		if atNeck := edge.Name == garment.NeckEdge; atNeck && p.Name != edge.Panel || !atNeck && p.Parent != "" && p.Name != edge.Side.String()+" half" {
			continue
		}
		for _, step := range p.Steps(edge.Side).Between(1, last) {
			way := map[shaping.Method]string{shaping.Hold: "on hold", shaping.BindOff: "bound off"}[step.Method]
			switch {
			case step.Row < first && (way == "" || !outer) && !(edge.Name == garment.NeckEdge && piece.Outer().IsValid()):
				continue // of the stretch below
			case way != "":
			case step.Stitches > 0:
				way = "increased"
			default:
				way = "decreased"
			}
			steps = append(steps, said{step.Row, max(step.Stitches, -step.Stitches), way})
		}
	}
	return steps
}

var (
	kindSaid = regexp.MustCompile(`(?:^At|; from) (counter|row) (\d+)(?: \((?:at the left edge|in the left half) (?:counter|row) (\d+)\))? (on hold|bound off|decreased|increased): `)
	runSaid  = regexp.MustCompile(`^(\d+) stitch(?:es)?(?:| (\d+) rows later| in the (next) row| every row, (\d+) times| every (\d+)\w\w(?: and (\d+)\w\w)? row(?: in turn)?, (\d+) times)$`)
)

// readSteps reads the words of a shape for one edge.
func readSteps(rt rapid.TB, text string, left bool) []said {
	text = regexp.MustCompile(` \(rows-stitches-times[^)]*\)`).ReplaceAllString(text, "")
	number := func(digits string) int {
		n, _ := strconv.Atoi(digits)
		return n
	}
	var steps []said
	heads := kindSaid.FindAllStringSubmatchIndex(text, -1)
	for i, at := range heads {
		head := kindSaid.FindStringSubmatch(text[at[0]:at[1]])
		end := len(text)
		if i+1 < len(heads) {
			end = heads[i+1][0]
		}
		row := number(head[2])
		if left && head[3] != "" {
			row = number(head[3])
		}
		if head[1] == "counter" {
			row++
		}
		for j, run := range strings.Split(text[at[1]:end], "; ") {
			found := runSaid.FindStringSubmatch(run)
			if found == nil {
				rt.Fatalf("not understood: %q in %q", run, text)
			}
			apart, times := [2]int{number(found[5]), number(found[5])}, 1
			switch {
			case found[2] != "":
				apart[0] = number(found[2])
			case found[3] != "":
				apart[0] = 1
			case found[4] != "":
				apart, times = [2]int{1, 1}, number(found[4])
			case found[6] != "":
				apart[1], times = number(found[6]), number(found[7])
			case found[7] != "":
				times = number(found[7])
			}
			for n := range times {
				if first := j == 0; !first || n > 0 {
					turn := n
					if first {
						turn--
					}
					row += apart[turn%2]
				}
				steps = append(steps, said{row, number(found[1]), head[4]})
			}
		}
	}
	return steps
}
