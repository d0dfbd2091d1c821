package garment_test

import (
	"encoding/json"
	"errors"
	"slices"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// TestTexts: what is written reads back, and a bad text changes nothing.
func TestTexts(t *testing.T) {
	for text, e := range map[string]garment.StartEdge{"waste": garment.WasteEdge, "closed": garment.ClosedEdge} {
		b, err := e.MarshalText()
		got := garment.StartEdge(9)
		if err != nil || string(b) != text || got.UnmarshalText(b) != nil || got != e {
			t.Errorf("start edge %v: %q, %v, back %v", e, b, err, got)
		}
	}
	for text, s := range map[string]garment.NeckShape{"round": garment.RoundNeck, "vee": garment.VeeNeck, "square": garment.SquareNeck, "path": garment.PathNeck} {
		b, err := s.MarshalText()
		var got garment.NeckShape
		if err != nil || string(b) != text || got.UnmarshalText(b) != nil || got != s {
			t.Errorf("neck shape %v: %q, %v, back %v", s, b, err, got)
		}
	}
	for text, c := range map[string]garment.Cap{"straight": garment.StraightTop, "set-in": garment.SetInCap} {
		b, err := c.MarshalText()
		got := garment.Cap(9)
		if err != nil || string(b) != text || c.String() != text || !c.IsValid() || got.UnmarshalText(b) != nil || got != c {
			t.Errorf("cap %v: %q, %v, back %v", c, b, err, got)
		}
	}
	for text, s := range map[string]garment.Severity{"warning": garment.AsWarning, "error": garment.AsError} {
		b, err := s.MarshalText()
		var got garment.Severity
		if err != nil || string(b) != text || s.String() != text || !s.IsValid() || got.UnmarshalText(b) != nil || got != s {
			t.Errorf("severity %v: %q, %v, back %v", s, b, err, got)
		}
	}
	for _, o := range []garment.Optional{given("0 cm"), given("2.5 cm"), given("3 1/8 in")} {
		b, err := o.MarshalText()
		var got garment.Optional
		if err != nil || got.UnmarshalText(b) != nil || !got.Equal(o) || got.IsZero() {
			t.Errorf("optional %v: %q, %v, back %v", o, b, err, got)
		}
	}
	for text, p := range map[string]garment.Pair{
		`"hold"`: garment.By(shaping.Hold), `["bindOff","fashioned"]`: {Several: shaping.BindOff, Single: shaping.Fashioned},
	} {
		b, err := json.Marshal(p)
		var got garment.Pair
		if err != nil || string(b) != text || json.Unmarshal(b, &got) != nil || got != p {
			t.Errorf("pair %v: %s, %v, back %v", p, b, err, got)
		}
	}
}

func TestTextsThatAreRefused(t *testing.T) {
	edge, shape, optional, pair := garment.ClosedEdge, garment.VeeNeck, given("1 cm"), garment.By(shaping.Hold)
	top, severity := garment.SetInCap, garment.AsError
	for _, text := range []string{"", "Waste", "no edge", "no shape", "rundhals", "no top", "setin", "no severity", "Error"} {
		if err := top.UnmarshalText([]byte(text)); !errors.Is(err, garment.ErrSpec) || top != garment.SetInCap {
			t.Errorf("cap %q: %v, now %v", text, err, top)
		}
		if err := severity.UnmarshalText([]byte(text)); !errors.Is(err, garment.ErrSpec) || severity != garment.AsError {
			t.Errorf("severity %q: %v, now %v", text, err, severity)
		}
		if err := edge.UnmarshalText([]byte(text)); !errors.Is(err, garment.ErrSpec) || edge != garment.ClosedEdge {
			t.Errorf("start edge %q: %v, now %v", text, err, edge)
		}
		if err := shape.UnmarshalText([]byte(text)); !errors.Is(err, garment.ErrSpec) || shape != garment.VeeNeck {
			t.Errorf("neck shape %q: %v, now %v", text, err, shape)
		}
		if err := optional.UnmarshalText([]byte(text)); err == nil || !optional.Equal(given("1 cm")) {
			t.Errorf("optional %q: %v, now %v", text, err, optional)
		}
	}
	for _, text := range []string{`"purl"`, `7`, `[]`, `["hold"]`, `["hold","hold","hold"]`, `["hold",7]`, `{}`} {
		if err := json.Unmarshal([]byte(text), &pair); err == nil || pair != garment.By(shaping.Hold) {
			t.Errorf("pair %s: %v, now %v", text, err, pair)
		}
	}
}

func TestZeroValues(t *testing.T) {
	if _, err := garment.Front(garment.Spec{}); !errors.Is(err, garment.ErrSpec) {
		t.Errorf("zero spec: %v", err)
	}
	var p garment.Piece
	if p.Name() != "" || p.Cloth.Loops() != 0 || p.Heights.Top()+p.Heights.Tip()+p.Heights.NeckStart() != 0 {
		t.Errorf("zero piece: %q", p.Name())
	}
	if off := (garment.Size{}).Off(); !off.IsZero() {
		t.Errorf("zero size is off by %v", off)
	}
	var o garment.Optional
	if b, err := o.MarshalText(); len(b) != 0 || err == nil || !o.IsZero() || o.Equal(given("0 cm")) || !o.Or(length("1 cm")).Equal(length("1 cm")) {
		t.Errorf("zero optional: %q, %v", b, err)
	}
	if got := given("0 cm").Or(length("1 cm")); !got.Equal(gauge.Length{}) {
		t.Errorf("a given 0 is %v", got)
	}
	if def := garment.By(shaping.Hold); (garment.Pair{}).Or(def) != def || def.Or(garment.Pair{}) != def {
		t.Error("pair with a default")
	}
	for name, make := range map[string]func(garment.Spec) error{
		"back":   func(s garment.Spec) error { _, err := garment.Back(s); return err },
		"sleeve": func(s garment.Spec) error { _, err := garment.Sleeve(s, 0); return err },
		"jumper": func(s garment.Spec) error { _, err := garment.Pieces(s); return err },
	} {
		if err := make(garment.Spec{}); !errors.Is(err, garment.ErrSpec) {
			t.Errorf("%s of the zero spec: %v", name, err)
		}
	}
	if _, err := garment.Sleeve(adultJumper(), 0); !errors.Is(err, garment.ErrSpec) {
		t.Errorf("sleeve of no side: %v", err)
	}
	if p, ok := (garment.Set{}).Piece("front"); ok || p.Name() != "" || len((garment.Set{}).Failed()) != 0 {
		t.Errorf("the empty set has a piece %q", p.Name())
	}
	if p, ok := (garment.Set{}).Piece(""); ok {
		t.Errorf("the empty set has a piece %q without a name", p.Name())
	}
	if c := (garment.Check{}); !c.Off().IsZero() || c.CountOff() != 0 {
		t.Errorf("the zero check is off by %v and %d", c.Off(), c.CountOff())
	}
	if l := p.ArmholeLength(shaping.Left).Add(p.NeckLength()).Add(p.CapLength()); !l.IsZero() {
		t.Errorf("edges of the zero piece are %v long", l)
	}
	if def := garment.AsError; garment.Severity(0).Or(def) != def || garment.AsWarning.Or(def) != garment.AsWarning || garment.Severity(0).IsValid() || garment.Severity(9).IsValid() || garment.Cap(9).IsValid() {
		t.Error("severity with a default")
	}
	words := []string{garment.StartEdge(9).String(), garment.NeckShape(0).String(), garment.NeckShape(9).String(), garment.By(shaping.Hold).String(), garment.Cap(9).String(), garment.Severity(0).String(), garment.Severity(9).String()}
	if want := []string{"no edge", "no shape", "no shape", "hold", "no top", "no severity", "no severity"}; !slices.Equal(words, want) {
		t.Errorf("words %q, want %q", words, want)
	}
}
