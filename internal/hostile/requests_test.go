//go:build linux

package hostile_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"
)

// tryRequests puts what becomes of a request between two requests: every line is answered, in
// order, the two as ever, and what is wrong with one is its answer.
func (k *kept) tryRequests(random *rand.Rand) {
	text, err := os.ReadFile(filepath.Join(module, "examples", "edges", "testdata", "requests.jsonl"))
	if err != nil {
		k.Fatal(err)
	}
	requests := slices.DeleteFunc(bytes.Split(text, []byte("\n")), func(line []byte) bool { return len(line) == 0 })
	asked := requests[0]
	want := bytes.TrimSpace(k.ask("the first request", asked, false)[0])
	for number, valid := range requests {
		for made := range spoil(valid, random, copies) {
			if number > 0 && made.useless {
				continue // the same for each
			}
			what := fmt.Sprintf("request %d, %s", number+1, made.how)
			answers := k.ask(what, bytes.Join([][]byte{asked, made.text, asked}, []byte("\n")), made.useless)
			if n := len(answers); n < 2 || !bytes.Equal(answers[0], want) || !bytes.Equal(answers[n-1], want) {
				k.fail(input{what: what, document: made.text}, "the requests around it are not answered as ever")
			}
		}
	}
}

// ask has requests answered and returns the answers, one for each line that is not blank.
func (k *kept) ask(what string, lines []byte, useless bool) [][]byte {
	k.Helper()
	in := input{what: what, document: lines}
	e := k.try(in)
	answers := bytes.Split(bytes.TrimSuffix(e.out, []byte("\n")), []byte("\n"))
	if n := asks(lines); len(answers) != n {
		k.fail(in, fmt.Sprintf("%d answers to %d lines", len(answers), n))
	}
	made := 0
	for i, answer := range answers {
		refused, problem := judge(answer)
		if refused {
			k.refused++
		} else if made++; useless && i > 0 && i < len(answers)-1 {
			problem = "it made something of it"
		}
		if problem != "" {
			k.fail(in, fmt.Sprintf("%s: %.300q", problem, answer))
		}
	}
	if made <= 2 && e.user > mostTime {
		k.fail(in, fmt.Sprintf("it took %v of the processor to refuse", e.user))
	}
	return answers
}

// asks counts the lines that are not blank, or too long to know.
func asks(lines []byte) int {
	n := 0
	for line := range bytes.SplitSeq(lines, []byte("\n")) {
		if len(bytes.TrimSpace(line)) > 0 || len(bytes.TrimRight(line, "\r")) > mebi {
			n++
		}
	}
	return n
}

// judge tells whether an answer refuses, and what is wrong with the answer.
func judge(answer []byte) (refused bool, problem string) {
	var a struct {
		Error *string
		Steps *[]any
	}
	switch err := json.Unmarshal(answer, &a); {
	case err != nil:
		return false, err.Error()
	case !utf8.Valid(answer):
		return false, "not UTF-8"
	case (a.Error == nil) == (a.Steps == nil):
		return false, "neither steps nor an error, or both"
	case a.Error == nil:
		return false, ""
	case *a.Error == "" || strings.Contains(*a.Error, "\n") || utf8.RuneCountInString(*a.Error) > longestMessage:
		return true, "the error is not one line"
	}
	return true, ""
}
