package shaping_test

import (
	"errors"
	"regexp"
	"strconv"
	"testing"

	"example.com/walewise/shaping"
)

// Where figures come from that are not another's.
const (
	byHand         = "worked by hand"
	commonPractice = "common practice, no source"
)

// needSource fails a test case that does not say where its figures come from.
func needSource(t *testing.T, source string) {
	t.Helper()
	if source == "" {
		t.Fatal("the case names no source")
	}
}

// needError fails unless err is an *Error of the given kind with all its texts,
// and returns it.
func needError(t fataler, err, kind error) *shaping.Error {
	t.Helper()
	e, ok := errors.AsType[*shaping.Error](err)
	switch {
	case !ok:
		t.Fatalf("error %v is no *shaping.Error", err)
	case !errors.Is(err, kind):
		t.Fatalf("error %q is not of kind %q", err, kind)
	case e.What == "" || e.Given == "" || e.Want == "":
		t.Fatalf("error %#v leaves something unsaid", e)
	}
	return e
}

// fataler is what *testing.T and *rapid.T have in common.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// numbers returns the numbers in a text in order.
func numbers(text string) []int {
	var found []int
	for _, digits := range regexp.MustCompile(`-?\d+`).FindAllString(text, -1) {
		n, err := strconv.Atoi(digits)
		if err != nil {
			panic(err)
		}
		found = append(found, n)
	}
	return found
}

func sum(numbers []int) int {
	total := 0
	for _, n := range numbers {
		total += n
	}
	return total
}
