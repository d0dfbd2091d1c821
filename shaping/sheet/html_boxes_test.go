package sheet_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

var (
	several   = regexp.MustCompile(`(\d+)\s+times,\s+at\s+(?:counter|rows)`)
	keyBox    = regexp.MustCompile(`(?m)^  \[ \] +a box to tick`)
	printed   = regexp.MustCompile(`(?m)^ +\[ \] (.*(?:\n {6,}[^ \[].*)*)`)
	pickedUp  = regexp.MustCompile(`^(?:([LR]\d+(?:-[LR]\d+)?) +)? *(\d+)  (.*)$`)
	blockedTo = regexp.MustCompile(`(?m)^    (\S.*?)  +(\S.*)$`)
	seamLies  = regexp.MustCompile(`(?m)^ +the seam of the wearer's (?:right|left) shoulder lies here\n`)
	shoulders = regexp.MustCompile(`^(?:Join (?:both shoulders|the (?:right|left))|Leave (?:both|the other))`)
)

// checkBoxes fails if a page has other steps than the printed sheet, but for the seams, which
// that says with the bands as well, and for what finishes a piece, which has no box there.
func checkBoxes(t rapid.TB, page *element, set garment.Set) {
	var out strings.Builder
	if err := sheet.WriteSet(&out, set); err != nil {
		t.Fatal(err)
	}
	parts := regexp.MustCompile("\n={80,}\n").Split(out.String(), -1)
	for i, shown := range page.ofClass("piece") {
		text := parts[1+i]
		if boxes := boxesOf(text); len(orderOf(shown)) != boxes {
			t.Fatalf("%d steps for %d boxes", len(orderOf(shown)), boxes)
		}
		checkFinish(t, shown, text)
	}
	_, joining, _ := strings.Cut(parts[0], "\nJOINING")
	want := inOrder(stepsOf(joining), parts[1+len(set.Pieces):len(parts)-1])
	var got []string
	for _, section := range page.ofClass("joining") {
		for _, step := range section.ofClass("step") {
			got = append(got, strings.ReplaceAll(step.words("do"), "\u00a0", " "))
		}
	}
	if diff := gocmp.Diff(want, got, gocmp.Comparer(sameSeam)); diff != "" {
		t.Fatalf("joining (-want +got):\n%s", diff)
	}
}

// boxesOf counts the boxes of a printed piece.
func boxesOf(text string) int {
	boxes := strings.Count(text, "[ ]") - len(keyBox.FindAllString(text, -1))
	for _, found := range several.FindAllStringSubmatch(text, -1) {
		if n, _ := strconv.Atoi(found[1]); n > 8 {
			boxes-- // that before a list of boxes
		}
	}
	return boxes
}

// checkFinish fails if the steps that finish a piece do not say what the printed sheet does.
func checkFinish(t rapid.TB, shown *element, text string) {
	_, text, _ = strings.Cut(text, "\nFINISH\n")
	steps := shown.ofClass("finish")[0].ofClass("step")
	wash := steps[len(steps)-1].words("do")
	if !strings.HasPrefix(wash, "Wash, and block to the knitted sizes: ") {
		t.Fatalf("the last step is %q", wash)
	}
	sizes := blockedTo.FindAllStringSubmatch(text, -1)
	for _, size := range sizes {
		if !strings.Contains(wash, size[1]+" "+size[2]) {
			t.Fatalf("%q does not say %q", wash, size[0])
		}
	}
	edge, _, _ := strings.Cut(oneLine(text), "Wash, and block")
	var before []string
	for _, step := range steps[:len(steps)-1] {
		before = append(before, oneLine(step.words("do")))
	}
	if got := strings.Join(before, " "); got != strings.TrimSpace(edge) || len(sizes) == 0 {
		t.Fatalf("before washing %q, should be %q; %d sizes", got, edge, len(sizes))
	}
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// stepsOf returns the texts of the boxes of a printed part, of a list as the page says them.
func stepsOf(text string) []string {
	var list []string
	for _, box := range printed.FindAllStringSubmatch(seamLies.ReplaceAllString(text, ""), -1) {
		if part := pickedUp.FindStringSubmatch(strings.ReplaceAll(box[1], "\n", " ")); part != nil {
			on := ""
			if part[1] != "" {
				on = " on " + part[1]
			}
			list = append(list, "Pick up "+part[2]+on+": "+oneLine(part[3])+".")
		} else {
			list = append(list, oneLine(box[1]))
		}
	}
	return list
}

const mitre = "At the point of the vee"

// inOrder puts the steps of printed bands where the seams point at them, without the seams
// that the bands repeat.
func inOrder(seams, bands []string) []string {
	var list []string
	for _, seam := range seams {
		if !strings.Contains(seam, ": see ") {
			list = append(list, seam)
			continue
		}
		for _, step := range stepsOf(bands[0]) {
			if rest, found := strings.CutPrefix(step, "When the shoulders are joined, j"); found {
				step = "J" + rest
			}
			if !shoulders.MatchString(step) {
				list = append(list, step)
			}
		}
		if at := strings.Index(bands[0], mitre); at >= 0 {
			list = append(list, oneLine(bands[0][at:]))
		}
		bands = bands[1:]
	}
	return list
}

// sameSeam reports whether two steps are equal; of setting in sleeves the page says more.
func sameSeam(a, b string) bool {
	sleeves := func(text string) bool {
		return strings.HasPrefix(text, "The sleeves, while the sides are open: ") || strings.HasPrefix(text, "Each sleeve, while the sides are open: pin ")
	}
	return a == b || sleeves(a) && sleeves(b)
}

var (
	joinedTo = regexp.MustCompile(`the (right|left) (?:half of the )?front to the (?:right|left) half`)
	seamOf   = regexp.MustCompile(`the seam of the wearer's (right|left) shoulder`)
	unjoined = regexp.MustCompile(`: see [A-Z]|if that is not done yet|When the shoulders are joined`)
)

// checkSeams fails if a seam is joined twice or never, if one is taken for joined that is
// not, or if something is joined or picked up before all is washed.
func checkSeams(t rapid.TB, page *element) {
	var said []string
	for _, li := range page.all(func(e *element) bool { return e.is("step") || e.is("note") }) {
		said = append(said, oneLine(li.text))
	}
	first := 0
	for _, section := range page.ofClass("joining") {
		for _, li := range section.named("li")[:1] {
			first = slices.Index(said, oneLine(li.text))
		}
	}
	times := map[string]int{}
	opened := strings.Contains(strings.Join(said, " "), "the right front to the")
	inTheHand := !strings.Contains(page.words("p"), "purl side")
	washed, pieces := 0, len(page.ofClass("piece"))
	for i, text := range said {
		if strings.HasPrefix(text, "Wash, and block") {
			washed++
		}
		if i < first {
			continue
		}
		switch {
		case washed < pieces:
			t.Fatalf("%q comes when %d of %d pieces are washed", text, washed, pieces)
		case unjoined.MatchString(text):
			t.Fatalf("%q points elsewhere", text)
		case strings.HasPrefix(text, "Leave ") && slices.Contains(said[first:i], text):
			t.Fatalf("%q twice", text)
		case strings.HasPrefix(text, "Each sleeve"), strings.HasPrefix(text, "The sides"):
			times[strings.Fields(text)[1]]++
			if times["right"] != 1 || times["left"] != 1 || strings.HasPrefix(text, "Each") && times["sides:"] > 0 {
				t.Fatalf("%q comes after the seams %v", text, times)
			}
		case strings.HasPrefix(text, "Join the ends of the strips"), strings.Contains(text, "end of the neckband, "):
			if times["right"] != 1 || times["left"] != 1 {
				t.Fatalf("%q comes after the seams %v", text, times)
			}
		}
		if seam := seamOf.FindStringSubmatch(text); seam != nil {
			half := seam[1]
			if inTheHand && !opened { // a front's right half lies on the wearer's left
				half = map[string]string{"right": "left", "left": "right"}[half]
			}
			if times[half] != 1 {
				t.Fatalf("%q comes after the seams %v", text, times)
			}
		}
		for _, seam := range joinedTo.FindAllStringSubmatch(text, -1) {
			times[seam[1]]++
		}
	}
	for seam, n := range times {
		if n != 1 {
			t.Fatalf("%s is joined %d times", seam, n)
		}
	}
	sleeves := slices.ContainsFunc(page.ofClass("go"), func(link *element) bool { return strings.HasSuffix(link.text, " sleeve") })
	if times["right"] == 0 || times["left"] == 0 || times["sides:"] == 0 || sleeves != (times["sleeve,"] == 1) {
		t.Fatalf("only %v are joined", times)
	}
}
