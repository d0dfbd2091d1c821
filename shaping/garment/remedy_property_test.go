package garment_test

import (
	"errors"
	"iter"
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

// fromTo finds the two lengths between which a refusal says that one may lie.
var fromTo = regexp.MustCompile(`(?:one at a time over \d+ rows?|the band or the underarm): from ([0-9.]+ (?:cm|in)) to ([0-9.]+ (?:cm|in))`)

// lengths are the lengths of a spec, and how each is changed without a change to what other
// specs share with it.
var lengths = map[string]func(*garment.Spec, gauge.Length){
	"body.width":        func(s *garment.Spec, l gauge.Length) { s.Body.Width = l },
	"armhole.depth":     func(s *garment.Spec, l gauge.Length) { s.Armhole.Depth = l },
	"armhole.inset":     func(s *garment.Spec, l gauge.Length) { s.Armhole.Inset = l },
	"armhole.curve":     func(s *garment.Spec, l gauge.Length) { s.Armhole.Curve = garment.Exactly(l) },
	"neck.width":        func(s *garment.Spec, l gauge.Length) { s.Neck.Width = l },
	"neck.depth":        func(s *garment.Spec, l gauge.Length) { s.Neck.Depth = l },
	"shoulder.drop":     func(s *garment.Spec, l gauge.Length) { s.Shoulder.Drop = l },
	"start.band":        func(s *garment.Spec, l gauge.Length) { s.Start.Band = l },
	"neck.flat":         func(s *garment.Spec, l gauge.Length) { s.Neck.Flat = garment.Exactly(l) },
	"armhole.bindOff":   func(s *garment.Spec, l gauge.Length) { s.Armhole.BindOff = garment.Exactly(l) },
	"body.length":       func(s *garment.Spec, l gauge.Length) { s.Body.Length = l },
	"body.hem":          func(s *garment.Spec, l gauge.Length) { s.Body.Hem = l },
	"body.waist.width":  withWaist(func(w *garment.Waist, l gauge.Length) { w.Width = l }),
	"body.waist.height": withWaist(func(w *garment.Waist, l gauge.Length) { w.Height = l }),
	"back.neck.depth":   withBack(func(n *garment.BackNeck, l gauge.Length) { n.Depth = l }),
	"back.neck.flat":    withBack(func(n *garment.BackNeck, l gauge.Length) { n.Flat = garment.Exactly(l) }),
	"opening.overlap": func(s *garment.Spec, l gauge.Length) {
		s.Opening = &garment.Opening{Overlap: garment.Exactly(l)}
	},
	"sleeve.length": withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Length = l }),
	"sleeve.cuff":   withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Cuff = l }),
	"sleeve.top":    withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Top = l }),
	"sleeve.band":   withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Band = garment.Exactly(l) }),
	"sleeve.ease":   withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Ease = l }),
	"sleeve.flat":   withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Flat = garment.Exactly(l) }),
	"sleeve.plain":  withSleeve(func(v *garment.SleeveSpec, l gauge.Length) { v.Plain = l }),
}

func withWaist(set func(*garment.Waist, gauge.Length)) func(*garment.Spec, gauge.Length) {
	return func(s *garment.Spec, l gauge.Length) {
		w := garment.Waist{Width: s.Body.Width, Height: s.Body.Length}
		if s.Body.Waist != nil {
			w = *s.Body.Waist
		}
		set(&w, l)
		s.Body.Waist = &w
	}
}

func withBack(set func(*garment.BackNeck, gauge.Length)) func(*garment.Spec, gauge.Length) {
	return func(s *garment.Spec, l gauge.Length) {
		b := garment.BackSpec{Neck: garment.BackNeck{Depth: length("2.5 cm")}}
		if s.Back != nil {
			b = *s.Back
		}
		set(&b.Neck, l)
		s.Back = &b
	}
}

func withSleeve(set func(*garment.SleeveSpec, gauge.Length)) func(*garment.Spec, gauge.Length) {
	return func(s *garment.Spec, l gauge.Length) {
		v := garment.SleeveSpec{Length: s.Body.Length, Cuff: s.Armhole.Depth, Top: s.Armhole.Depth.Mul(2)}
		if s.Sleeve != nil {
			v = *s.Sleeve
		}
		set(&v, l)
		s.Sleeve = &v
	}
}

// TestNamedLengthsWork gives one field of a sound spec a length that is too much or
// too little: the lengths that the refusal names are not refused.
func TestNamedLengthsWork(t *testing.T) {
	ofFront := []string{"body.width", "armhole.depth", "armhole.inset", "armhole.curve", "neck.width", "neck.depth", "shoulder.drop", "start.band", "neck.flat", "armhole.bindOff", "body.hem", "body.waist.width", "body.waist.height"}
	ofOthers := []string{"back.neck.depth", "back.neck.flat", "sleeve.length", "sleeve.cuff", "sleeve.top", "sleeve.band", "sleeve.ease", "sleeve.flat", "sleeve.plain", "start.band", "armhole.depth"}
	for _, test := range []struct {
		name  string
		specs *rapid.Generator[garment.Spec]
		names []string
		make  func(garment.Spec) error
	}{
		{"front", gen.FrontSpec(metric), ofFront, func(s garment.Spec) error { _, err := garment.Front(s); return err }},
		{"jumper", gen.JumperSpec(metric), ofOthers, func(s garment.Spec) error {
			s.Checks = garment.Checks{Shoulders: garment.AsWarning, Sides: garment.AsWarning, Bed: s.Checks.Bed}
			_, err := garment.Pieces(s)
			return err
		}},
		{"fronts", gen.CardiganSpec(metric), append(ofFront, "opening.overlap", "opening.overlap"), func(s garment.Spec) error { _, _, err := garment.Fronts(s); return err }},
	} {
		t.Run(test.name, func(t *testing.T) {
			tried := map[string]int{}
			rapid.Check(t, func(t *rapid.T) {
				s := test.specs.Draw(t, "spec")
				spoil := rapid.SampledFrom(test.names).Draw(t, "field")
				lengths[spoil](&s, metric.Mul(rapid.IntRange(1, rapid.SampledFrom([]int{40, 800, 3000}).Draw(t, "most")).Draw(t, "length")))
				err := test.make(s)
				var refusal *garment.Error
				if !errors.As(err, &refusal) {
					return
				}
				for field, l := range curesOf(refusal) {
					tried[field]++
					followCure(t, s, test.make, refusal, field, l, 3)
				}
			})
			t.Logf("refusals that name a length: %v", tried)
		})
	}
}

// curesOf yields the lengths that a refusal names, each with its field.
func curesOf(refusal *garment.Error) iter.Seq2[string, string] {
	return func(yield func(field, length string) bool) {
		if found := fromTo.FindStringSubmatch(refusal.Want); found != nil {
			_ = yield(refusal.Field, found[1]) && yield(refusal.Field, found[2])
			return
		}
		if found := named.FindStringSubmatch(refusal.Want); found != nil {
			field := refusal.Field
			if strings.Contains(found[0], "armhole.curve") {
				field = "armhole.curve"
			}
			yield(field, found[1])
		}
	}
}

// followCure gives a field the length that its refusal names. The same rule must not refuse
// it again. Another may, such as when what is within the bounds is too steep for the methods;
// but what that names in turn must do, after so many steps at most.
func followCure(t *rapid.T, s garment.Spec, make func(garment.Spec) error, refusal *garment.Error, field, l string, steps int) {
	t.Helper()
	lengths[field](&s, length(l))
	err := make(s)
	second := (*garment.Error)(nil)
	if !errors.As(err, &second) || second.Field != refusal.Field || neither(refusal, second) {
		return
	}
	if steps == 0 || ruleOf(refusal) == ruleOf(second) {
		t.Fatalf("%v\nwith %s %s: %v", refusal, field, l, err)
	}
	for field, l := range curesOf(second) {
		followCure(t, s, make, second, field, l, steps-1)
	}
}

// neither reports whether no sleeve at all suits the armhole: a narrower one has fewer
// stitches than the underarms take, a wider one too long an edge.
func neither(first, second *garment.Error) bool {
	const wide, narrow = "wider than the armhole", "underarms take"
	says := func(e *garment.Error, what string) bool { return strings.Contains(e.Want, what) }
	return says(first, wide) && says(second, narrow) || says(first, narrow) && says(second, wide)
}

// ruleOf returns the words of a refusal without its numbers.
func ruleOf(refusal *garment.Error) string {
	return regexp.MustCompile(`[0-9.]+|stitch(es)?|rows?`).ReplaceAllString(refusal.Want, "")
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
	if strings.Contains(refusal.Want, edge+` ["fashioned", "fashioned"]`) {
		found[edge+" doubles"] = by(garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned})
	}
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
