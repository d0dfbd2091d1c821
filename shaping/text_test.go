package shaping_test

import (
	"encoding"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

// texted is what every type with a text has.
type texted interface {
	comparable
	encoding.TextAppender
	encoding.TextMarshaler
	fmt.Stringer
	IsValid() bool
}

// reader is the pointer that reads the text of a T.
type reader[T any] interface {
	*T
	encoding.TextUnmarshaler
}

// roundTrip checks that a valid v reads back from its own text and that one that
// is not valid has no text; in both cases there is a String.
func roundTrip[T texted, P reader[T]](t fataler, v T) {
	t.Helper()
	text, err := v.MarshalText()
	appended, errAppend := v.AppendText([]byte("x"))
	if v.String() == "" {
		t.Fatalf("%#v has no String", v)
	}
	if !v.IsValid() {
		needError(t, err, shaping.ErrRange)
		needError(t, errAppend, shaping.ErrRange)
		return
	}
	if err != nil || errAppend != nil || string(text) != v.String() || string(appended) != "x"+v.String() {
		t.Fatalf("%#v: text %q (%v), appended %q (%v), String %q", v, text, err, appended, errAppend, v)
	}
	var back T
	if err := P(&back).UnmarshalText(text); err != nil || back != v {
		t.Fatalf("%q reads as %#v (%v), want %#v", text, back, err, v)
	}
	for _, bad := range []string{"", "nothing of the kind", v.String() + " "} {
		needError(t, P(&back).UnmarshalText([]byte(bad)), shaping.ErrSyntax)
		if back != v {
			t.Fatalf("reading %q changed %#v to %#v", bad, v, back)
		}
	}
}

func TestTextRoundTrips(t *testing.T) {
	// Every value of these types, whether it is valid or not.
	for v := range 256 {
		roundTrip[shaping.Side](t, shaping.Side(v))
		roundTrip[shaping.Facing](t, shaping.Facing(v))
		roundTrip[shaping.Place](t, shaping.Place(v))
		roundTrip[shaping.Method](t, shaping.Method(v))
		roundTrip[shaping.Do](t, shaping.Do(v))
	}
	for n := -shaping.MaxNeedle - 2; n <= shaping.MaxNeedle+2; n++ {
		roundTrip[shaping.Needle](t, shaping.Needle(n))
	}
}

func TestWordsOfDocuments(t *testing.T) {
	// Other programs rely on these texts.
	for _, c := range []struct {
		value fmt.Stringer
		want  string
	}{
		{shaping.Left, "left"},
		{shaping.Right, "right"},
		{shaping.PurlSide, "purl"},
		{shaping.KnitSide, "knit"},
		{shaping.Bed, "bed"},
		{shaping.Hand, "hand"},
		{shaping.Hold, "hold"},
		{shaping.BindOff, "bindOff"},
		{shaping.Fashioned, "fashioned"},
		{shaping.CastOn, "castOn"},
		{shaping.DoCastOn, "castOn"},
		{shaping.DoHold, "hold"},
		{shaping.DoReturn, "return"},
		{shaping.DoWaste, "waste"},
		{shaping.DoBindOff, "bindOff"},
		{shaping.DoCastOnEdge, "castOnEdge"},
		{shaping.DoWrap, "wrap"},
		{shaping.DoShift, "shift"},
		{shaping.DoFill, "fill"},
		{shaping.DoCarriage, "carriage"},
		{shaping.DoCounter, "counter"},
	} {
		if got := c.value.String(); got != c.want {
			t.Errorf("%#v is %q, want %q", c.value, got, c.want)
		}
	}
}

func TestOpposites(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side, facing := shaping.Side(rapid.Byte().Draw(t, "side")), shaping.Facing(rapid.Byte().Draw(t, "facing"))
		if side.Opposite().Opposite() != side || facing.Opposite().Opposite() != facing {
			t.Fatalf("%v and %v do not come back", side, facing)
		}
		if (side.Opposite() != side) != side.IsValid() || (facing.Opposite() != facing) != facing.IsValid() {
			t.Fatalf("the opposites of %v and %v", side, facing)
		}
	})
	if shaping.Left.Opposite() != shaping.Right || shaping.PurlSide.Opposite() != shaping.KnitSide {
		t.Error("opposites")
	}
	if shaping.Bed.Facing() != shaping.PurlSide || shaping.Hand.Facing() != shaping.KnitSide {
		t.Error("the purl side faces the knitter on a bed, the knit side in the hand")
	}
}

func TestActionString(t *testing.T) {
	span := shaping.Span{First: shaping.R(12), Last: shaping.R(14)}
	for _, c := range []struct {
		action shaping.Action
		want   string
	}{
		{shaping.Action{Do: shaping.DoHold, Needles: span}, "hold R12-R14"},
		{shaping.Action{Do: shaping.DoWrap, Needles: span.Edge(shaping.Left, 1)}, "wrap R12"},
		{shaping.Action{Do: shaping.DoBindOff, Needles: span, Separate: true}, "bindOff R12-R14 with separate yarn"},
		{shaping.Action{Do: shaping.DoShift, Needles: span, Toward: shaping.Left}, "shift R12-R14 toward left"},
		{shaping.Action{Do: shaping.DoCarriage, Side: shaping.Right}, "carriage right"},
		{shaping.Action{Do: shaping.DoCounter, Counter: 126}, "counter 126"},
	} {
		if got := c.action.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestHalfAt(t *testing.T) {
	for side, want := range map[shaping.Side]string{shaping.Left: "left half", shaping.Right: "right half"} {
		if got := shaping.HalfAt(side); got != want {
			t.Errorf("%v: %s", side, got)
		}
	}
}
