package main

import (
	"fmt"
	"strings"

	"example.com/walewise/curve"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// words says a wording: "6 stitches go at the right edge: row 1: 2 stitches; row 3: 1
// stitch every 2nd row, 4 times".
func words(w curve.Wording, side shaping.Side) string {
	var said []string
	if w.Base != 0 {
		said = append(said, w.Schedule[:1].Words())
	}
	if len(w.Phrases) > 0 {
		said = append(said, shaping.Words(w.Phrases...))
	}
	return strings.TrimSuffix(sum(w.Schedule)+at(side)+": "+strings.Join(said, "; "), ": ")
}

// sum says how many stitches go and how many come.
func sum(s shaping.Schedule) string {
	going, coming := 0, 0
	for _, step := range s {
		going += max(-step.Stitches, 0)
		coming += max(step.Stitches, 0)
	}
	switch {
	case coming == 0 && going == 0:
		return "no stitches go or come"
	case coming == 0:
		return plural.Stitches(going) + verb(going, " goes", " go")
	case going == 0:
		return plural.Stitches(coming) + verb(coming, " comes", " come")
	}
	return fmt.Sprintf("%s%s and %d%s (+)", plural.Stitches(going), verb(going, " goes", " go"), coming, verb(coming, " comes", " come"))
}

func verb(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func at(side shaping.Side) string {
	if !side.IsValid() {
		return ""
	}
	return fmt.Sprintf(" at the %v edge", side)
}
