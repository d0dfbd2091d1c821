package examples_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

func embedSums(t *testing.T) string {
	source := read(t, "embed", "main.go")
	wool, width := found(t, source, `wool := .*?Stitches: (\d+)`), found(t, source, `wool := .*?Width: cm\("(.+?)"\)`)
	girth, knob := found(t, source, `breakfast := .*?cm\("(.+?)"\)`), found(t, source, `breakfast := .*?cm\(".+?"\), cm\("(.+?)"\)`)
	number := func(pattern string) (n int) {
		t.Helper()
		if _, err := fmt.Sscan(found(t, read(t, "embed", "main_test.go"), pattern), &n); err != nil {
			t.Fatal(err)
		}
		return n
	}
	dome, top := number(`two domes of (\d+) stitches`), number(`Gather the last (\d+) of each`)
	return table(t,
		sum{"each dome", fmt.Sprintf("%s ÷ 2 × %s ÷ %s", girth, wool, width), nearest, stitches(dome)},
		sum{"left on top", fmt.Sprintf("%s ÷ 2 × %s ÷ %s", knob, wool, width), upToEven, stitches(top)},
		sum{"decreased in all", fmt.Sprintf("2 × (%d − %d)", dome, top), exactly, stitches(number(`cast on = (\d+) decreased`))},
	)
}

// embedCosy is the picture that the program prints.
func embedCosy(t *testing.T) string {
	var text strings.Builder
	for _, m := range regexp.MustCompile(`(?m)^\t// ([.#]+)$`).FindAllStringSubmatch(read(t, "embed", "main_test.go"), -1) {
		text.WriteString(m[1] + "\n")
	}
	return text.String()
}
