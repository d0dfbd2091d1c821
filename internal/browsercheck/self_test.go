package browsercheck

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const goodSheet = "testdata/sheet.html"

func TestGoodSheet(t *testing.T) {
	needBrowser(t)
	passes(t, goodSheet)
}

// Each check reports the page that is broken in what it looks at.
func TestBrokenPages(t *testing.T) {
	needBrowser(t)
	for _, c := range []struct{ file, check, want string }{
		{"network", "quiet", "request: http://pictures.invalid/sheep.png"},
		{"console", "quiet", "the yarn is torn"},
		{"exception", "quiet", "the needle is bent"},
		{"drawing", "drawings", `["47 cm"]`},
		{"axe", "axe", "image-alt"},
		{"wide", "width", "408 px wide in 360 px"},
	} {
		t.Run(c.file, func(t *testing.T) {
			t.Parallel()
			reports(t, c.check, "testdata/"+c.file+".html", c.want)
		})
	}
}

// Each check reports the good sheet once it is broken in what it looks at.
func TestBrokenSheets(t *testing.T) {
	needBrowser(t)
	good, err := os.ReadFile(goodSheet)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, check string
		changes     []string // what stands in the sheet, and what in its stead, in pairs
		want        string
	}{
		{"faint in the dark", "axe", []string{"--ink: #eee", "--ink: #555"}, "dark: color-contrast"},
		{"moving", "still", []string{"#hand button {", "#hand button { transition: color 1s;"}, "button#hand-back"},
		{"nothing printed", "print", []string{"@media print {", "@media print { body { display: none; }"}, "nothing is printed"},

		{"no policy", "policy", []string{"default-src", "img-src"}, "forbids nothing"},
		{"no tap", "moves", []string{"by('hand-on').addEventListener('click', on)", "by('hand-on').addEventListener('click', e => e.pointerType === 'touch' || on())"}, "tap, on"},
		{"no Backspace", "moves", []string{"&& e.key !== 'Backspace'", ""}, "Enter, Backspace, back"},
		{"two steps by one key", "keyboard", []string{"!own && (", "(", "e.preventDefault();", ""}, "Enter on the button: step [3]"},
		{"keys of the browser", "keyboard", []string{"if (e.altKey || e.ctrlKey || e.metaKey) return;", ""}, "Alt and ArrowLeft"},
		{"focus not shown", "keyboard", []string{"#hand button {", "#hand button { outline: none;"}, "does not show that it has the focus"},
		{"focus lost", "keyboard", []string{"function show() {", "function show() { by('hand-on').blur();"}, "lost the focus"},
		{"no focus", "keyboard", []string{`id="hand-on">`, `id="hand-on" tabindex="-1">`}, "not reached"},
		{"ticked in hand", "boxes", []string{"else if (i === hand) goOn(i);", ""}, "the step in hand ticked"},
		{"box under the panel", "boxes", []string{"position: sticky; bottom: 0;", "position: fixed; inset: 0;"}, "lies under"},
		{"dead links", "links", []string{"querySelectorAll('.go')", "querySelectorAll('.went')"}, "link to the last piece: step [1]"},
		{"nothing said", "walk", []string{"`Step ${hand + 1}: ${what}`", "'Next.'"}, "nothing new is said"},
		{"another counter", "walk", []string{"textContent = counter;", "textContent = counter + '1';"}, "the counter is"},
		{"no end", "walk", []string{"'All is done.'", "'Fasten.'"}, "at the end"},
		{"end too soon", "left over", []string{"(from + 1 + i) % steps.length", "from + 1 + i", "!ticks[i].checked", "i < steps.length && !ticks[i].checked"}, "the last step done first"},

		{"place not kept", "place", []string{"localStorage.setItem", "sessionStorage.setItem"}, "reloaded: step [1]"},
		{"place of all sheets", "place", []string{"'walewise:' + document.querySelector('main').dataset.sheet", "'walewise'"}, "on another sheet: step [3]"},
		{"place demanded", "no place", []string{"function keep() {", "function keep() { localStorage;"}, "no storage, on"},
		{"place believed", "broken place", []string{"if (!Number.isInteger(kept.hand) || kept.hand < 0 || kept.hand > steps.length || kept.ticks.length !== steps.length) return;", ""}, "exception"},
		{"script demanded", "no script", []string{`aria-labelledby="hand-title" hidden`, `aria-labelledby="hand-title"`}, "buttons that do nothing"},

		{"small buttons", "thumb", []string{"min-width: 44px; min-height: 44px;", ""}, "button#hand-back"},
		{"last step under the panel", "room", []string{"position: sticky;", "position: fixed;"}, "px of step 10 are out of sight"},
		{"buttons out of the window", "room", []string{"#hand {", "#hand { max-height: 6rem;"}, "out of the window"},
		{"large panel", "room", []string{"padding: 0.5rem 0;", "padding: 30vh 0;"}, "of the height"},

		{"a step cut in two", "cut", []string{"break-inside: avoid;", "", "Knit 9 rows", strings.Repeat("Knit 9 rows. ", 300)}, "step 4 is on the pages [1 2]"},
		{"a step not printed", "cut", []string{"@media print {", "@media print { #step-3 { display: none; }"}, "step 3 is on the pages []"},
		{"the panel printed", "cut", []string{"@media print { #hand { display: none; }", "@media print {"}, "the panel is printed"},
		{"ticks printed", "paper boxes", []string{"appearance: none;", ""}, "not printed as an empty one"},
		{"no boxes printed", "paper boxes", []string{"appearance: none; border: 1px solid;", "opacity: 0;"}, "no box is printed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			text := string(good)
			for pair := range slices.Chunk(c.changes, 2) {
				if !strings.Contains(text, pair[0]) {
					t.Fatalf("the good sheet has no %q", pair[0])
				}
				text = strings.ReplaceAll(text, pair[0], pair[1])
			}
			file := filepath.Join(t.TempDir(), "sheet.html")
			if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
			reports(t, c.check, file, c.want)
		})
	}
}

// reports demands that the check of that name finds a fault of a file, in such words.
func reports(t *testing.T, name, file, want string) {
	t.Helper()
	all := slices.Concat(general, plain, workSheet)
	check := all[slices.IndexFunc(all, func(c check) bool { return c.name == name })]
	var problems []string
	// Chromium at times shows the storage of a file empty for a moment, and what is broken in
	// it is not read then.
	for range 3 {
		if problems = check.problems(t, file); strings.Contains(strings.Join(problems, "\n"), want) {
			return
		}
	}
	t.Errorf("no %q in %q", want, problems)
}
