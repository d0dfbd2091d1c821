package garment_test

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// filled returns a spec in which every pointer and list is set.
func filled() garment.Spec {
	s := adultOpened()
	stretch, margin := decimal.NewFromInt(30), decimal.NewFromInt(5)
	swatch := gauge.Swatch{Stitches: 40, Width: length("18 cm"), Rows: 56, Height: length("18.5 cm")}
	s.Swatch, s.Swatches = &swatch, []gauge.Swatch{swatch}
	s.Body.Waist = &garment.Waist{Width: length("46 cm"), Height: length("18 cm")}
	s.Neck.Stretch = &stretch
	s.Back = &garment.BackSpec{Neck: garment.BackNeck{Depth: length("2 cm")}}
	s.Sleeve = &garment.SleeveSpec{Length: length("45 cm"), Stretch: &stretch}
	s.Yarn = &garment.YarnSpec{Margin: &margin, Ball: &garment.Ball{Grams: decimal.NewFromInt(50)}}
	return s
}

// A clone is equal and shares no pointer and no list.
func TestClone(t *testing.T) {
	s := filled()
	c := s.Clone()
	if diff := cmp.Diff(s, c); diff != "" {
		t.Fatalf("-spec +clone:\n%s", diff)
	}
	var shared func(path string, a, b reflect.Value)
	shared = func(path string, a, b reflect.Value) {
		switch a.Kind() {
		case reflect.Pointer:
			if a.IsNil() {
				t.Errorf("%s is not set", path)
			} else if a.Pointer() == b.Pointer() {
				t.Errorf("%s is shared", path)
			} else {
				shared(path, a.Elem(), b.Elem())
			}
		case reflect.Slice:
			if a.Len() == 0 || a.Pointer() == b.Pointer() {
				t.Errorf("%s is not set or is shared", path)
			}
		case reflect.Struct:
			for i := range a.NumField() {
				if f := a.Type().Field(i); f.IsExported() { // values of other packages are immutable
					shared(path+"."+f.Name, a.Field(i), b.Field(i))
				}
			}
		}
	}
	shared("Spec", reflect.ValueOf(s), reflect.ValueOf(c))
}

// What was planned stays as it is when the caller's spec changes.
func TestSetKeepsItsSpec(t *testing.T) {
	s := adultOpened()
	swatch := gauge.Swatch{Stitches: 40, Width: length("18 cm"), Rows: 56, Height: length("18.5 cm"), Grams: decimal.NewFromInt(12)}
	s = s.Regauged(garment.GaugeSpec{Swatches: []gauge.Swatch{swatch, swatch}})
	s.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Grams: decimal.NewFromInt(50)}}
	set, err := garment.Pieces(s)
	if err != nil {
		t.Fatal(err)
	}
	before, _ := set.Yarn()
	s.Swatches[0].Stitches, s.Yarn.Ball.Grams, s.Band.Repeat = 99, decimal.NewFromInt(1), 9
	if after, _ := set.Yarn(); after.Balls != before.Balls || after.Total.Grams.String() != before.Total.Grams.String() || set.Pieces[0].Spec.Band.Repeat == 9 {
		t.Errorf("%d balls for %v g, before %d for %v g", after.Balls, after.Total.Grams, before.Balls, before.Total.Grams)
	}
	other := s.Regauged(garment.GaugeSpec{Gauge: newGauge("22", "30", "10 cm")})
	if other.Band.Repeat = 4; s.Band.Repeat != 9 {
		t.Error("a spec and that by another gauge share their band")
	}
}

// What the review of a newcomer found: each is refused or told.
func TestRefusedOrTold(t *testing.T) {
	mean, err := gauge.Mean(gauge.Swatch{Stitches: 40, Width: length("18 cm"), Rows: 56, Height: length("18.5 cm")}, gauge.Swatch{Stitches: 50, Width: length("22 cm"), Rows: 60, Height: length("20 cm")})
	if err != nil {
		t.Fatal(err)
	}
	far := decimal.New(1, -40000000)
	for _, c := range []struct {
		field  string
		change change
	}{
		{"gauge", func(s *garment.Spec) { s.Gauge = mean }},
		{"units", func(s *garment.Spec) { s.Units = gauge.Unit(9) }},
		{"title", func(s *garment.Spec) { s.Title = "a\xff" }},
		{"body.width", func(s *garment.Spec) { s.Body.Width = gauge.Centimetres(far) }},
		{"head", func(s *garment.Spec) { s.Head = gauge.Centimetres(decimal.New(1, 40000000)) }},
		{"neck.stretch", func(s *garment.Spec) { s.Neck.Stretch = &far }},
		{"opening.overlap", func(s *garment.Spec) { s.Opening = &garment.Opening{Overlap: garment.Exactly(length("5.1 cm"))} }},
	} {
		s := adultOpened()
		c.change(&s)
		_, err := garment.Pieces(s)
		if refusal, ok := err.(*garment.Error); !ok || refusal.Field != c.field {
			t.Errorf("%s: error %v", c.field, err)
		}
	}
	whole := adult()
	front, err := garment.Front(whole)
	if err != nil {
		t.Fatal(err)
	}
	whole.Opening = &garment.Opening{}
	if _, err := garment.GoOn(front, 60, whole); err == nil || err.(*garment.Error).Field != "opening" {
		t.Errorf("a front in one piece gone on with as two: error %v", err)
	}
}

// The pieces of a set share nothing that can be changed.
func TestPiecesShareNothing(t *testing.T) {
	set, err := garment.Pieces(adultJumper())
	if err != nil {
		t.Fatal(err)
	}
	right, _ := set.Piece(shaping.RightSleeve)
	left, _ := set.Piece(shaping.LeftSleeve)
	wide, _ := left.Size("width")
	right.Spec.Sleeve.Top, right.Work.Rows[0].Row, right.Sizes[0].Count, right.Edges[0].Name = length("99 cm"), 99, 99, "changed"
	if !garment.Made(left) || garment.Made(right) || left.Spec.Sleeve.Top.Equal(right.Spec.Sleeve.Top) || left.Sizes[0].Count == 99 || left.Edges[0].Name == "changed" {
		t.Error("the left sleeve changed with the right one")
	}
	if _, ok := left.Size("girth"); ok || wide.Name != "width" {
		t.Errorf("the size %q", wide.Name)
	}
}
