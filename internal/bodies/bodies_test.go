package bodies_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/bodies"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
)

const header = "sex,neckcircumferencebase,headcircumference,biacromialbreadth,chestcircumference,waistcircumference," +
	"buttockcircumference,bicepscircumferenceflexed,wristcircumference,handcircumference,waistbacklength,sleeveoutseam," +
	"cervicaleheight,acromialheight,axillaheight\n"

const line = "female,1,2,3,4,5,6,7,8,9,10,11,1200,1130,1050.5\n"

func length(s string) gauge.Length { return gauge.MustParseLength(s) }

func TestRead(t *testing.T) {
	got, err := bodies.Read(strings.NewReader("# a source\n" + header + line + line))
	if err != nil {
		t.Fatal(err)
	}
	want := bodies.Body{Body: sizes.Body{
		Name: "female, line 4", Neck: length("1 mm"), Head: length("2 mm"), Shoulders: length("3 mm"), Chest: length("4 mm"),
		Waist: length("5 mm"), Hips: length("6 mm"), UpperArm: length("7 mm"), Wrist: length("8 mm"), Hand: length("9 mm"),
		BackWaist: length("10 mm"), Arm: length("11 mm"), Fall: length("70 mm"), Armpit: length("149.5 mm"),
	}}
	if len(got) != 2 {
		t.Fatalf("%d bodies, want 2", len(got))
	}
	if diff := cmp.Diff(want, got[1]); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

func TestReadFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "no line with the names of the columns"},
		{"age\n", "line 1: no column sex"},
		{strings.Replace(header, "headcircumference", "hat", 1) + line, "line 2, headcircumference: no such column"},
		{header + strings.Replace(line, ",2,", ",wide,", 1), `line 2, headcircumference: "wide" is no number above 0 and up to 10000`},
		{header + line + strings.Replace(line, ",8,", ",0,", 1), `line 3, wristcircumference: "0" is no number above 0 and up to 10000`},
		{header + strings.Replace(line, ",8,", ",10001,", 1), `line 2, wristcircumference: "10001" is no number above 0 and up to 10000`},
		{header + "female,1\n", "record on line 2: wrong number of fields"},
	} {
		if _, err := bodies.Read(strings.NewReader(c.text)); err == nil || err.Error() != c.want {
			t.Errorf("%q: got %v, want %s", c.text, err, c.want)
		}
	}
}

// Each column of the table grows from the least to the greatest.
func TestPercentilesGrow(t *testing.T) {
	list := percentiles(t)
	if len(list) != 2*5 {
		t.Fatalf("%d bodies", len(list))
	}
	for i, b := range list {
		sex, place, _ := strings.Cut(b.Name, " ")
		if want := []string{"min", "5th", "median", "95th", "max"}[i%5]; place != want || sex != []string{"male", "female"}[i/5] {
			t.Errorf("body %d is called %s", i, b.Name)
		}
		if i%5 == 0 {
			continue
		}
		before, now := measures(list[i-1]), measures(b)
		for j := range now {
			if before[j].Cmp(now[j]) >= 0 {
				t.Errorf("%s: measure %d is %v, of the percentile below %v", b.Name, j, now[j], before[j])
			}
		}
	}
}

// The printed girths follow from median and variation, to half of the last place.
func TestHeadsFollowFromMedianAndVariation(t *testing.T) {
	list, err := bodies.Heads()
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != 2*10 {
		t.Fatalf("%d heads", len(list))
	}
	for _, h := range list {
		for i, girth := range h.Girths {
			spread := h.Variation.Mul(decimal.NewFromInt(int64(2 * (i - 1)))).Add(decimal.NewFromInt(1))
			off := girth.Centimetres().Sub(h.Median.Mul(spread)).Abs()
			if off.Cmp(decimal.RequireFromString("0.005")) > 0 {
				t.Errorf("%s of %d months: %v, off by %v", h.Child, h.Months, girth, off)
			}
		}
	}
}

// The spec of the median man, by hand from his line.
func TestJumper(t *testing.T) {
	s := percentiles(t)[2].Jumper(gauge.Gauge{})
	for _, c := range []struct {
		what      string
		got       gauge.Length
		want, why string
	}{
		{"body", s.Body.Width, "568 mm", "(1056 + 80) / 2"},
		{"waist", s.Body.Waist.Width, "508.5 mm", "(937 + 80) / 2"},
		{"drop", s.Shoulder.Drop, "51.6 mm", "77 - 25.4"},
		{"armhole", s.Armhole.Depth, "198.5 mm", "188 - 51.6 + 60 is less than (357 + 40) / 2"},
		{"inset", s.Armhole.Inset, "76.5 mm", "(568 - 415) / 2"},
		{"at once", s.Armhole.BindOff.Or(gauge.Length{}), "38.25 mm", "76.5 / 2"},
		{"length", s.Body.Length, "406.9 mm", "477 + 180 - 51.6 - 198.5"},
		{"neck", s.Neck.Width, "191.5 mm", "((574 + 433) / 2 - 105.4 * 8/7) / 2, more than 433 / pi + 40"},
		{"neck depth", s.Neck.Depth, "80 mm", "less than (433 / pi + 40) / 2"},
		{"back neck", s.Back.Neck.Depth, "25.4 mm", "1 in"},
		{"cuff", s.Sleeve.Cuff, "216 mm", "176 + 40"},
		{"top", s.Sleeve.Top, "397 mm", "357 + 40"},
		{"sleeve", s.Sleeve.Length, "469.7 mm", "592 - (198.5 - 76.2)"},
		{"head", s.Head, "574 mm", "as measured"},
		{"hand", s.Hand, "212 mm", "as measured"},
	} {
		if !c.got.Equal(length(c.want)) {
			t.Errorf("%s: %v, want %s: %s", c.what, c.got, c.want, c.why)
		}
	}
	if !s.Body.Hem.IsZero() {
		t.Errorf("hem %v for hips of 1017 mm and a body of 1136 mm", s.Body.Hem)
	}
}

// The other side of each rule that takes the larger of two.
func TestJumperOfOtherBodies(t *testing.T) {
	b := percentiles(t)[2]
	for _, c := range []struct {
		what   string
		change func(*bodies.Body)
		got    func(garment.Spec) gauge.Length
		want   string
	}{
		{"flat shoulder", func(b *bodies.Body) { b.Fall = length("30 mm") }, func(s garment.Spec) gauge.Length { return s.Shoulder.Drop }, "19.05 mm"},
		{"thin arm", func(b *bodies.Body) { b.UpperArm = length("30 cm") }, func(s garment.Spec) gauge.Length { return s.Armhole.Depth }, "196.4 mm"},
		{"large head", func(b *bodies.Body) { b.Head = length("80 cm") }, func(s garment.Spec) gauge.Length { return s.Neck.Width }, "264.75 mm"},
		{"small head", func(b *bodies.Body) { b.Head = length("50 cm") }, func(s garment.Spec) gauge.Length { return s.Neck.Width }, "177.8 mm"},
		{"shoulders wider than the body", func(b *bodies.Body) { b.Shoulders = length("60 cm") }, func(s garment.Spec) gauge.Length { return s.Armhole.Inset }, "0 cm"},
		{"wide hips", func(b *bodies.Body) { b.Hips = length("120 cm") }, func(s garment.Spec) gauge.Length { return s.Body.Hem }, "60 cm"},
	} {
		changed := b
		c.change(&changed)
		if got := c.got(changed.Jumper(gauge.Gauge{})); !got.Equal(length(c.want)) {
			t.Errorf("%s: %v, want %s", c.what, got, c.want)
		}
	}
	b.Waist = b.Chest
	if s := b.Jumper(gauge.Gauge{}); s.Body.Waist != nil {
		t.Errorf("a waist of %v for one as wide as the chest", s.Body.Waist.Width)
	}
}

// Made bodies are the same each time, and none is beyond the percentiles.
func TestMade(t *testing.T) {
	one, err := bodies.Made(50)
	if err != nil {
		t.Fatal(err)
	}
	two, _ := bodies.Made(50)
	if diff := cmp.Diff(one, two); diff != "" {
		t.Errorf("two times:\n%s", diff)
	}
	list := percentiles(t)
	for i, b := range one {
		least, most, now := measures(list[i%2*5]), measures(list[i%2*5+4]), measures(b)
		for j := range now {
			if now[j].Cmp(least[j]) < 0 || now[j].Cmp(most[j]) > 0 {
				t.Errorf("%s: measure %d is %v, from %v to %v are known", b.Name, j, now[j], least[j], most[j])
			}
		}
	}
	if cmp.Equal(measures(one[0]), measures(one[2])) {
		t.Error("two men are alike")
	}
}

func percentiles(t *testing.T) []bodies.Body {
	t.Helper()
	list, err := bodies.Percentiles()
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func measures(b bodies.Body) []gauge.Length {
	return []gauge.Length{
		b.Chest, b.Waist, b.Hips, b.Neck, b.Head, b.UpperArm, b.Wrist, b.Hand, b.Shoulders,
		b.BackWaist, b.Arm, b.Fall, b.Armpit,
	}
}
