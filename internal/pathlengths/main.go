// Pathlengths asks a browser how long paths are.
//
//	go run . [-browser COMMAND] PATHS
//
// PATHS is a file with SVG path data on each line; empty lines and those that start
// with # are left out. The command is that of a Chromium, which is run without a
// window. The answer is JSON on standard output: the browser's name and version, and each
// path with what its SVGPathElement.getTotalLength returns.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"html"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("pathlengths", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() {
		fmt.Fprintln(stderr, "usage: pathlengths [-browser COMMAND] PATHS")
		flags.PrintDefaults()
	}
	browser := flags.String("browser", "chromium", "the `command` of a Chromium")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() != 1 {
		flags.Usage()
		return 2
	}
	text, err := os.ReadFile(flags.Arg(0))
	if err != nil {
		fmt.Fprintln(stderr, "pathlengths:", err)
		return 2
	}
	answer, err := ask(*browser, paths(string(text)))
	if err != nil {
		fmt.Fprintln(stderr, "pathlengths:", err)
		return 1
	}
	lines, err := json.MarshalIndent(answer, "", "\t")
	if err != nil {
		fmt.Fprintln(stderr, "pathlengths:", err)
		return 1
	}
	fmt.Fprintf(stdout, "%s\n", lines)
	return 0
}

// paths returns the lines that hold path data.
func paths(text string) []string {
	var all []string
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			all = append(all, line)
		}
	}
	return all
}

type answer struct {
	Browser string   `json:"browser"`
	Paths   []length `json:"paths"`
}

type length struct {
	Path   string  `json:"path"`
	Length float64 `json:"length"`
}

// ask runs the browser on a page that writes the lengths into itself.
func ask(browser string, paths []string) (answer, error) {
	version, err := exec.Command(browser, "--version").Output()
	if err != nil {
		return answer{}, fmt.Errorf("version of %s: %w", browser, err)
	}
	folder, err := os.MkdirTemp("", "pathlengths")
	if err != nil {
		return answer{}, err
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "page.html")
	if err := os.WriteFile(file, []byte(page(paths)), 0o600); err != nil {
		return answer{}, err
	}
	dom, err := exec.Command(browser,
		"--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--user-data-dir="+filepath.Join(folder, "profile"),
		"--dump-dom", "file://"+filepath.ToSlash(file)).Output()
	if err != nil {
		return answer{}, fmt.Errorf("%s: %w", browser, err)
	}
	lengths, err := lengthsIn(string(dom))
	if err != nil {
		return answer{}, err
	}
	if len(lengths) != len(paths) {
		return answer{}, fmt.Errorf("%d lengths for %d paths", len(lengths), len(paths))
	}
	a := answer{Browser: strings.Join(strings.Fields(string(version)), " ")}
	for i, path := range paths {
		a.Paths = append(a.Paths, length{path, lengths[i]})
	}
	return a, nil
}

const (
	opening = `<pre id="lengths">`
	closing = `</pre>`
)

func page(paths []string) string {
	var b strings.Builder
	b.WriteString("<!DOCTYPE html>\n<meta charset=\"utf-8\">\n<title>Lengths of paths</title>\n<svg>\n")
	for _, path := range paths {
		fmt.Fprintf(&b, "<path d=\"%s\"/>\n", html.EscapeString(path))
	}
	b.WriteString("</svg>\n" + opening + closing + `
<script>
const lengths = Array.from(document.querySelectorAll("path"), path => path.getTotalLength());
document.getElementById("lengths").textContent = JSON.stringify(lengths);
</script>
`)
	return b.String()
}

// lengthsIn finds the lengths in the page that the browser gives back.
func lengthsIn(dom string) ([]float64, error) {
	_, rest, found := strings.Cut(dom, opening)
	text, _, ended := strings.Cut(rest, closing)
	if !found || !ended {
		return nil, errors.New("the browser gave back no lengths")
	}
	var lengths []float64
	if err := json.Unmarshal([]byte(html.UnescapeString(text)), &lengths); err != nil {
		return nil, fmt.Errorf("lengths %q: %w", text, err)
	}
	return lengths, nil
}
