package main

import (
	"fmt"

	"example.com/walewise/shaping"
)

// largestRule bounds the numbers in rules.
const largestRule = 1_000_000

// rules are shaping rules as a request writes them: the phase is less than every.
func (s *source) rules(place string, fields ...field) shaping.Rules {
	r := freeRules()
	fields = append([]field{
		{"every", func(at string) { r.Every = s.count(at, 1, largestRule) }},
		{"phase", func(at string) { r.Phase = s.count(at, 0, largestRule) }},
		{"apart", func(at string) { r.Apart = s.count(at, 1, largestRule) }},
		{"most", func(at string) { r.Most = s.count(at, 0, largestRule) }},
		{"base", func(at string) { r.Base = s.count(at, 0, largestRule) }},
		{"plain", func(at string) { r.Plain = s.count(at, 0, largestRule) }},
		{"single", func(at string) { r.Single = s.beat(at) }},
	}, fields...)
	s.object(place, fields...)
	s.checkPhase(place, r.Phase, r.Every)
	return r
}

// freeRules are the rules of a request that names none.
func freeRules() shaping.Rules { return shaping.Rules{Every: 1, Apart: 1} }

// rulesForBoth reads rules that may have others for stitches that come.
func (s *source) rulesForBoth(place string) shaping.Rules {
	var coming *shaping.Rules
	r := s.rules(place, field{"coming", func(at string) {
		of := s.rules(at)
		coming = &of
	}})
	r.Coming = coming
	return r
}

func (s *source) beat(place string) shaping.Beat {
	b := shaping.Beat{Every: 1}
	s.object(place,
		field{"every", func(at string) { b.Every = s.count(at, 1, largestRule) }},
		field{"phase", func(at string) { b.Phase = s.count(at, 0, largestRule) }},
	)
	s.checkPhase(place, b.Phase, b.Every)
	return b
}

func (s *source) checkPhase(place string, phase, every int) {
	if phase >= every {
		s.fail(place+".phase", fmt.Sprint(phase), fmt.Sprintf("less than every, which is %d: 0 to %d", every, every-1))
	}
}

// withShortPhases returns rules that a request can write. They allow what the given ones
// do, and more rows at the lower end where a phase is not less than its every.
func withShortPhases(r shaping.Rules) shaping.Rules {
	r.Every, r.Apart = max(r.Every, 1), max(r.Apart, 1)
	r.Phase %= r.Every
	if !r.Single.IsZero() {
		r.Single.Every = max(r.Single.Every, 1)
		r.Single.Phase %= r.Single.Every
	}
	if r.Coming != nil {
		coming := withShortPhases(*r.Coming)
		r.Coming = &coming
	}
	return r
}
