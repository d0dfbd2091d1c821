package garment_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// named finds the length that a refusal names for the field it is about.
var named = regexp.MustCompile(`(?:at most|at least|which is|fits is \d+ stitches,|armhole\.curve to|no shoulders: at most|^too low .*:) ([0-9.]+ (?:cm|in))`)

// TestNamedLengthsWork gives one field of a sound spec a length that is too much or
// too little: the length that the refusal names is not refused.
func TestNamedLengthsWork(t *testing.T) {
	fields := map[string]func(*garment.Spec, gauge.Length){
		"body.width":      func(s *garment.Spec, l gauge.Length) { s.Body.Width = l },
		"armhole.depth":   func(s *garment.Spec, l gauge.Length) { s.Armhole.Depth = l },
		"armhole.inset":   func(s *garment.Spec, l gauge.Length) { s.Armhole.Inset = l },
		"armhole.curve":   func(s *garment.Spec, l gauge.Length) { s.Armhole.Curve = garment.Exactly(l) },
		"neck.width":      func(s *garment.Spec, l gauge.Length) { s.Neck.Width = l },
		"neck.depth":      func(s *garment.Spec, l gauge.Length) { s.Neck.Depth = l },
		"shoulder.drop":   func(s *garment.Spec, l gauge.Length) { s.Shoulder.Drop = l },
		"start.band":      func(s *garment.Spec, l gauge.Length) { s.Start.Band = l },
		"neck.flat":       func(s *garment.Spec, l gauge.Length) { s.Neck.Flat = garment.Exactly(l) },
		"armhole.bindOff": func(s *garment.Spec, l gauge.Length) { s.Armhole.BindOff = garment.Exactly(l) },
	}
	names := []string{"body.width", "armhole.depth", "armhole.inset", "armhole.curve", "neck.width", "neck.depth", "shoulder.drop", "start.band", "neck.flat", "armhole.bindOff"}
	tried := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		s := gen.FrontSpec(metric).Draw(t, "spec")
		spoil := rapid.SampledFrom(names).Draw(t, "field")
		fields[spoil](&s, metric.Mul(rapid.IntRange(1, rapid.SampledFrom([]int{40, 800, 3000}).Draw(t, "most")).Draw(t, "length")))
		_, err := garment.Front(s)
		var refusal *garment.Error
		if !errors.As(err, &refusal) {
			return
		}
		value := named.FindStringSubmatch(refusal.Want)
		if value == nil {
			return
		}
		tried[refusal.Field]++
		cure := refusal.Field
		if strings.Contains(value[0], "armhole.curve") {
			cure = "armhole.curve"
		}
		fields[cure](&s, length(value[1]))
		_, again := garment.Front(s)
		var second *garment.Error
		// What is within the bounds may still be too steep for the methods.
		const steep = "cannot go"
		if errors.As(again, &second) && second.Field == refusal.Field && strings.Contains(second.Want, steep) == strings.Contains(refusal.Want, steep) {
			t.Fatalf("%v\nwith what it names: %v", err, again)
		}
	})
	t.Logf("refusals that name a length: %v", tried)
}

// TestNamedMethodsWork gives one edge of a sound spec methods that may not be able to
// work it: whatever the refusal names instead is not refused for that edge.
func TestNamedMethodsWork(t *testing.T) {
	edges := map[string]func(*garment.Spec) *garment.Pair{
		"methods.neck":     func(s *garment.Spec) *garment.Pair { return &s.Methods.Neck },
		"methods.shoulder": func(s *garment.Spec) *garment.Pair { return &s.Methods.Shoulder },
		"methods.armhole":  func(s *garment.Spec) *garment.Pair { return &s.Methods.Armhole },
	}
	any := rapid.SampledFrom([]shaping.Method{shaping.Hold, shaping.BindOff, shaping.Fashioned})
	tried := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		s := gen.FrontSpec(metric).Draw(t, "spec")
		edge := rapid.SampledFrom([]string{"methods.neck", "methods.shoulder", "methods.armhole"}).Draw(t, "edge")
		*edges[edge](&s) = garment.Pair{Several: any.Draw(t, "several"), Single: any.Draw(t, "single")}
		if rapid.Bool().Draw(t, "single decreases") {
			*edges[edge](&s) = garment.By(shaping.Fashioned)
		}
		_, err := garment.Front(s)
		var refusal *garment.Error
		if !errors.As(err, &refusal) {
			return
		}
		for named, cure := range cures(refusal, edge, edges[edge]) {
			cured := s
			cure(&cured)
			_, again := garment.Front(cured)
			tried[strings.TrimRight(named, "0123456789. cm")]++
			if second := (*garment.Error)(nil); errors.As(again, &second) && second.Field == refusal.Field {
				t.Fatalf("%v\nwith %s: %v", err, named, again)
			}
		}
	})
	t.Logf("tried: %v", tried)
}

// cures returns what a refusal names for an edge, each as a change of the spec.
func cures(refusal *garment.Error, edge string, pair func(*garment.Spec) *garment.Pair) map[string]change {
	found := map[string]change{}
	by := func(p garment.Pair) change { return func(s *garment.Spec) { *pair(s) = p } }
	methods := refusal.Field == edge || strings.Contains(refusal.Want, edge)
	for _, m := range []shaping.Method{shaping.Hold, shaping.BindOff} {
		if methods && strings.Contains(refusal.Want, m.String()) {
			found[edge+" "+m.String()] = by(garment.By(m))
		}
		if methods && strings.Contains(refusal.Want, "as a list with fashioned") {
			found[edge+" "+m.String()+" and fashioned"] = by(garment.Pair{Several: m, Single: shaping.Fashioned})
		}
	}
	for _, length := range []struct {
		pattern *regexp.Regexp
		set     func(*garment.Spec, gauge.Length)
	}{
		{regexp.MustCompile(`shoulder\.drop of ([0-9.]+ (?:cm|in))`), func(s *garment.Spec, l gauge.Length) { s.Shoulder.Drop = l }},
		{regexp.MustCompile(`rows: at least ([0-9.]+ (?:cm|in))`), func(s *garment.Spec, l gauge.Length) { s.Neck.Depth = l }},
		{regexp.MustCompile(`armhole\.curve to ([0-9.]+ (?:cm|in))`), func(s *garment.Spec, l gauge.Length) { s.Armhole.Curve = garment.Exactly(l) }},
		{regexp.MustCompile(`armhole\.bindOff to ([0-9.]+ (?:cm|in))`), func(s *garment.Spec, l gauge.Length) { s.Armhole.BindOff = garment.Exactly(l) }},
	} {
		if value := length.pattern.FindStringSubmatch(refusal.Want); value != nil {
			found[value[0]] = func(s *garment.Spec) { length.set(s, gauge.MustParseLength(value[1])) }
		}
	}
	return found
}
