package main

import (
	"fmt"
	"strings"

	"example.com/walewise/gauge"
)

// compared is an example and what the library gives for it.
type compared struct {
	example
	gives  string
	agrees bool
}

// compareAll asks the library for every example. It returns an error if the table says of
// one that it agrees where it differs, or the other way round.
func compareAll(list []example) ([]compared, error) {
	var all []compared
	var first error
	wrong := 0
	for _, e := range list {
		c, err := compare(e)
		if err != nil {
			wrong++
			if first == nil {
				first = err
			}
		}
		all = append(all, c)
	}
	if wrong > 1 {
		return nil, fmt.Errorf("%w (and %d more)", first, wrong-1)
	}
	return all, first
}

// compare asks the library for one example.
func compare(e example) (compared, error) {
	call, _ := callOf(e.Call)
	gives, err := call.answer(e.Inputs)
	if err != nil {
		return compared{}, fmt.Errorf("%s: inputs: %w", e.ID, err)
	}
	c := compared{e, gives, agree(e.Published, gives)}
	switch {
	case c.agrees && e.Differs != "":
		return c, fmt.Errorf("%s: the table says that it differs, but published and given is %q", e.ID, gives)
	case !c.agrees && e.Differs == "":
		return c, fmt.Errorf("%s: the table says that it agrees, but published is %q, given is %q", e.ID, e.Published, gives)
	}
	return c, nil
}

// agree reports whether an answer is the published one: the same in letters, or a length
// within two such as "42 in to 44 in".
func agree(published, gives string) bool {
	if published == gives {
		return true
	}
	low, high, ok := strings.Cut(published, " to ")
	if !ok {
		return false
	}
	var lengths [3]gauge.Length
	for i, s := range []string{low, gives, high} {
		l, err := gauge.ParseLength(s)
		if err != nil {
			return false
		}
		lengths[i] = l
	}
	return lengths[0].Cmp(lengths[1]) <= 0 && lengths[1].Cmp(lengths[2]) <= 0
}
