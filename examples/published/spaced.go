package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

func alongRow(in struct{ Stitches, Times int }) (string, error) {
	distances, err := shaping.AlongRow(in.Stitches, in.Times)
	return spread(distances, "stitch"), err
}

// evenSpacing spreads over rows. Ends are "plain after", "last shaped" or "first and last
// shaped".
func evenSpacing(in struct {
	Rows, Times    int
	Ends           string
	EverySecondRow bool
}) (string, error) {
	ends := map[string]shaping.Ends{
		"plain after": shaping.PlainAfter, "last shaped": shaping.LastShaped, "first and last shaped": shaping.FirstAndLastShaped,
	}
	e, ok := ends[in.Ends]
	if !ok {
		return "", fmt.Errorf("%w: ends %q: plain after, last shaped or first and last shaped", errInputs, in.Ends)
	}
	s, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: in.Rows, Times: in.Times, Ends: e, EverySecondRow: in.EverySecondRow})
	if err != nil {
		return "", err
	}
	said := spread(s.Distances, "row")
	if s.From == 1 {
		said = "row 1, then " + said
	}
	if s.Plain > 0 {
		said += fmt.Sprintf(", then %d plain", s.Plain)
	}
	return said, nil
}

// spread says distances in words.
func spread(distances []shaping.Distance, of string) string {
	var list []string
	for _, d := range distances {
		list = append(list, fmt.Sprintf("every %s %s %s", plural.Ordinal(d.Every), of, times(d.Times)))
	}
	return strings.Join(list, ", ")
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// phrase is a [shaping.Phrase] in the table.
type phrase struct{ From, Every, Stitches, Times int }

func (p phrase) phrase() shaping.Phrase {
	return shaping.Phrase{From: p.From, Every: p.Every, Stitches: p.Stitches, Times: p.Times}
}

// tooMany refuses what would take long to make.
func tooMany(times ...int) error {
	all := 0
	for _, n := range times {
		if n < 0 || n > shaping.MaxRows-all {
			return fmt.Errorf("%w: %d times: from 0, and %d in all", errInputs, n, shaping.MaxRows)
		}
		all += n
	}
	return nil
}

// expanded writes out the steps of phrases.
func expanded(phrases []phrase) (shaping.Schedule, error) {
	var list []shaping.Phrase
	var all []int
	for _, p := range phrases {
		list, all = append(list, p.phrase()), append(all, p.Times)
	}
	if err := tooMany(all...); err != nil {
		return nil, err
	}
	return shaping.Expand(list...), nil
}

// expand says how many stitches go and which phrases the steps are said in again, each with
// its last row.
func expand(in struct{ Phrases []phrase }) (string, error) {
	steps, err := expanded(in.Phrases)
	if err != nil {
		return "", err
	}
	if err := steps.Validate(); err != nil {
		return "", err
	}
	said, row, list := steps.Phrases(), 0, []string{}
	for i, p := range said {
		after := p.Times
		if i == 0 {
			row, after = p.From, p.Times-1
		}
		row += after * p.Every
		list = append(list, fmt.Sprintf("%s to row %d", times(p.Times), row))
	}
	return fmt.Sprintf("%s: %s", plural.Stitches(-steps.Total()), strings.Join(list, ", ")), nil
}

// checkRules says whether the rules of the bed or of the hand let single stitches go as the
// phrases say.
func checkRules(in struct {
	Phrases []phrase
	Rows    int
	Place   shaping.Place
	Method  shaping.Method
}) (string, error) {
	steps, err := expanded(in.Phrases)
	if err != nil {
		return "", err
	}
	if err := shaping.RulesFor(in.Method, shaping.Right, shaping.Right, in.Place).Check(steps, in.Rows); err != nil {
		return "", err
	}
	return "allowed", nil
}

func shoulderGroups(in struct{ Stitches, Drop int }) (string, error) {
	groups, err := shaping.ShoulderGroups(in.Stitches, in.Drop)
	return listed(groups), err
}

// listed says numbers one after the other.
func listed(numbers []int) string {
	var list []string
	for _, n := range numbers {
		list = append(list, strconv.Itoa(n))
	}
	return strings.Join(list, ", ")
}

// gone says the stitches that go at each step.
func gone(s shaping.Schedule) string {
	var list []int
	for _, step := range s {
		list = append(list, -step.Stitches)
	}
	return listed(list)
}
