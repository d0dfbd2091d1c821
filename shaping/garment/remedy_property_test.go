package garment_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping/garment"
)

// named finds the length that a refusal names for the field it is about.
var named = regexp.MustCompile(`(?:at most|at least|which is|fits is \d+ stitches,|armhole\.curve to|no shoulders: at most|^\d+ rows are too few .*:) ([0-9.]+ cm)`)

// TestNamedLengthsWork gives one field of a sound spec a length that is too much or
// too little: the length that the refusal names is not refused.
func TestNamedLengthsWork(t *testing.T) {
	fields := map[string]func(*garment.Spec, gauge.Length){
		"body.width":      func(s *garment.Spec, l gauge.Length) { s.Body.Width = l },
		"armhole.depth":   func(s *garment.Spec, l gauge.Length) { s.Armhole.Depth = l },
		"armhole.inset":   func(s *garment.Spec, l gauge.Length) { s.Armhole.Inset = l },
		"armhole.curve":   func(s *garment.Spec, l gauge.Length) { s.Armhole.Curve = l },
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
		const steep = "stitches do not go"
		if errors.As(again, &second) && second.Field == refusal.Field && strings.Contains(second.Want, steep) == strings.Contains(refusal.Want, steep) {
			t.Fatalf("%v\nwith what it names: %v", err, again)
		}
	})
	t.Logf("refusals that name a length: %v", tried)
}
