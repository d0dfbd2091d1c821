package sheet_test

import (
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping/garment"
)

// yarnSection returns the part of the page of a garment that says how much yarn it takes.
func yarnSection(t testing.TB, s garment.Spec) string {
	t.Helper()
	text, _ := writeSet(t, s)
	_, rest, _ := strings.Cut(text, "\nYARN\n")
	section, _, _ := strings.Cut(rest, "\nCHECKS\n")
	return section
}

func TestGoldenYarn(t *testing.T) {
	golden.Check(t, filepath.Join("testdata", "yarn.golden"), []byte(yarnSection(t, bySwatches(jumper()))))
}

func TestYarnIsSaid(t *testing.T) {
	inches, oneBall, unlike, unknown := bySwatches(jumper()), bySwatches(jumper()), bySwatches(jumper()), jumper()
	inches.Units = gauge.Inch
	cone := inches
	cone.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Metres: number("9144")}}
	oneBall.Yarn.Ball = &garment.Ball{Grams: number("1000")}
	unlike.Swatches[0].Metres, unlike.Yarn.Ball = number("0"), &garment.Ball{Metres: number("125")}
	unknown.Yarn = &garment.YarnSpec{Margin: new(number("7.50"))}
	margin := bySwatches(jumper())
	margin.Yarn.Margin = new(number("7.50"))
	for _, c := range []struct {
		why  string
		spec garment.Spec
		says string
	}{
		{"125 m are 136.7 yards of 0.9144 m", inches, "balls of 50 g and 137 yd; take them of one dye lot."},
		{"9144 m are 10,000 yards (international yard, 1959)", cone, "1 ball of 10000 yd."},
		{"one ball", oneBall, "With the margin that is 1 ball of 1000 g."},
		{"grams of the swatch, metres of the ball", unlike, "How many balls of 125 m that is cannot be said"},
		{"no weight", unknown, "How much is needed is not known: weigh the swatch"},
		{"a margin of its own", margin, "and 7.5 % more"},
	} {
		if text := strings.Join(strings.Fields(yarnSection(t, c.spec)), " "); !strings.Contains(text, c.says) {
			t.Errorf("%s: %q is not in %s", c.why, c.says, text)
		}
	}
	if text := yarnSection(t, jumper()); text != "" {
		t.Errorf("of a spec that says nothing of yarn: %s", text)
	}
	text, piece := write(t, bySwatches(jumper()))
	y, ok := piece.Yarn()
	if said := "Yarn: " + y.Total.Grams.StringFixed(1) + " g or " + y.Total.Metres.StringFixed(0) + " m for the"; !ok || !strings.Contains(text, said) {
		t.Errorf("%q is not said of the front", said)
	}
}

// Of several swatches their mean and how far they lie apart is said, and that they do not
// agree.
func TestSwatchesAreSaid(t *testing.T) {
	s := bySwatches(jumper())
	s.Swatches[0].Tension, s.Swatches[1].Tension = "6", "6 and a half"
	text, piece := write(t, s)
	text = strings.Join(strings.Fields(text), " ")
	across, up := piece.Gauge.Spread(1)
	for _, said := range []string{
		"74 stitches to 33.7 cm, 102 rows to 33.2 cm in 2 swatches together, tension 6; 6 and a half, washed and rested. Over 10 cm 22.0 stitches and 30.7 rows.",
		"The swatches lie up to " + across.StringFixed(1) + " % from this mean in stitches and " + up.StringFixed(1) + " % in rows.",
		"or how far the swatches lie apart where that is more",
		"more than counting explains: knit, wash and rest them again before you cast on.",
	} {
		if !strings.Contains(text, said) {
			t.Errorf("%q is not said", said)
		}
	}
	one, _ := write(t, jumper())
	if strings.Contains(one, "swatches") {
		t.Error("a gauge speaks of swatches")
	}
}
