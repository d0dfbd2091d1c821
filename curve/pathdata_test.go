package curve_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/walewise/curve"
)

// The grammar is that of SVG 2, section 9.3.9. Each path is written in the normal form
// of the same edge.
func TestParsePath(t *testing.T) {
	for _, c := range []struct{ path, want string }{
		{"M 0 240 L 60 0", "M 0 240 L 60 0"},
		{"M0,240L60,0", "M 0 240 L 60 0"},
		{"m 0 240 l 60 -240", "M 0 240 L 60 0"},
		{"M 0 240 60 0", "M 0 240 L 60 0"},
		{"m 0 240 60-240", "M 0 240 L 60 0"},
		{" \t\r\n\fM\t0 ,\n240\fL\r60 , 0 ", "M 0 240 L 60 0"},
		{"M-7 1e3L53+760", "M 0 240 L 60 0"},
		{"M 0 240 V 0", "M 0 240 L 0 0"},
		{"M 5 240 v -100,-140", "M 0 240 L 0 140 L 0 0"},
		{"M 1 9 H 4 6 V 0", "M 0 9 L 3 9 L 5 9 L 5 0"},
		{"M 1 9 h 4,-6 V 0", "M 0 9 L 4 9 L -2 9 L -2 0"},
		{"M1.5.5L.5-.5", "M 0 1 L -1 0"},
		{"M 0 1e1 l 2.5E-1 -1e+1", "M 0 10 L 0.25 0"},
		{"M 0 9 L 0 9 L 1 0 l 0 0", "M 0 9 L 1 0"},
		{"M 0 9 C 1 8 2 7 3 6", "M 0 3 C 1 2 2 1 3 0"},
		{"M 0 9 c 1 -1 2 -2 3 -3 1-1 2-2 3-3", "M 0 6 C 1 5 2 4 3 3 C 4 2 5 1 6 0"},
		{"M 0 9 C 0 8 2 7 3 6 S 6 4 7 3", "M 0 6 C 0 5 2 4 3 3 C 4 2 6 1 7 0"},
		{"M 0 9 c 0 -1 2 -2 3 -3 s 3 -2 4 -3", "M 0 6 C 0 5 2 4 3 3 C 4 2 6 1 7 0"},
		{"M 0 9 S 2 7 3 6", "M 0 3 C 0 3 2 1 3 0"},
		{"M 0 9 Q 2 7 3 6 S 5 4 6 3", "M 0 6 Q 2 4 3 3 C 3 3 5 1 6 0"},
		{"M 0 9 Q 2 7 3 6 T 6 3 9 0", "M 0 9 Q 2 7 3 6 Q 4 5 6 3 Q 8 1 9 0"},
		{"M 0 9 q 2 -2 3 -3 t 3 -3", "M 0 6 Q 2 4 3 3 Q 4 2 6 0"},
		{"M 0 9 C 1 8 2 7 3 6 T 6 3", "M 0 6 C 1 5 2 4 3 3 Q 3 3 6 0"},
		{"M 0 30 A 30 30 0 0 0 30 0", "M 0 30 A 30 30 0 0 0 30 0"},
		{"m0 30a30 30 0 0030-30", "M 0 30 A 30 30 0 0 0 30 0"},
		{"M0 30A30,30,0,0,0,30,0", "M 0 30 A 30 30 0 0 0 30 0"},
		{"M 0 30 A -30 -30 77 0 0 30 0", "M 0 30 A 30 30 0 0 0 30 0"},
		{"M 0 1a1 1 0 01.5.5", ""}, // falls, but reads
		{"M 0 1a1 2 0 01.5-.5", "M 0 0.5 A 1 2 0 0 1 0.5 0"},
		{"M 0 20 A 150 100 -150 0 0 9 0", "M 0 20 A 150 100 30 0 0 9 0"},
		{"M 0 20 A 0 10 0 0 0 9 0", "M 0 20 L 9 0"},
		{"M 0 20 A 5 5 0 1 1 0 20 L 9 0", "M 0 20 L 9 0"},
		// Rounded half away from zero, once, after adding.
		{"M 0 1 L 0.0005 0", "M 0 1 L 0.001 0"},
		{"M 0 1 L -0.0005 0", "M 0 1 L -0.001 0"},
		{"M 0 1 L 0.00049999999999 0", "M 0 1 L 0 0"},
		{"M 0 1 l 0.0004 -.5 0.0004 -.5", "M 0 1 L 0 0.5 L 0.001 0"},
		{"M 0 1 L 0.30000000000000004 0", "M 0 1 L 0.3 0"},
		{"M 0 1 L 0." + strings.Repeat("3", 5000) + " 0", "M 0 1 L 0.333 0"},
		{"M 0 1 L " + strings.Repeat("0", 5000) + "7 0", "M 0 1 L 7 0"},
		{"M 0 1 L 7" + strings.Repeat("0", 5000) + "e-5000 0", "M 0 1 L 7 0"},
		{"M 0 1 L 1e-999999999999999999999 0e999999999999999999999", "M 0 1 L 0 0"},
	} {
		edge, err := curve.ParsePath(c.path)
		if c.want == "" {
			if !errors.Is(err, curve.ErrRange) {
				t.Errorf("%.60s: got %v", c.path, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%.60s: %v", c.path, err)
		} else if got := edge.Path(); got != c.want {
			t.Errorf("%.60s: got %s, want %s", c.path, got, c.want)
		}
	}
}

func TestParsePathRefuses(t *testing.T) {
	syntax, bounds := curve.ErrSyntax, curve.ErrRange
	for _, c := range []struct {
		path  string
		kind  error
		given string
	}{
		{"", syntax, "at its end"},
		{" \n ", syntax, "at its end"},
		{"L 0 0", syntax, `"L 0 0" at byte 0`},
		{"0 0", syntax, `"0 0" at byte 0`},
		{"M", syntax, "at its end"},
		{"M 5", syntax, "at its end"},
		{"M,0 9", syntax, `",0 9" at byte 1`},
		{"M 0,,9", syntax, `",9" at byte 4`},
		{"M 0 9 L", syntax, "at its end"},
		{"M 0 9 L 1", syntax, "at its end"},
		{"M 0 9 5 5 V 3 4 2", bounds, "segment 3 (V) at byte 14"},
		{"M 0 9 L 1 0,", syntax, `"," at byte 11`},
		{"M 0 9, L 1 0", syntax, `", L 1 0" at byte 5`},
		{"M 0 9 L 1 0 , V 0", syntax, `", V 0" at byte 12`},
		{"M 0 9 L 1 0 V 0,V 0", syntax, `",V 0" at byte 15`},
		{"M 0 9 L 1 0 Z", syntax, `"Z" at byte 12`},
		{"M 0 9 L 1 0 z m", syntax, `"z m" at byte 12`},
		{"M 0 9 L 1 5 M 1 5 L 2 0", syntax, `"M 1 5 L 2 0" at byte 12`},
		{"M 0 9 m 1 5", syntax, `"m 1 5" at byte 6`},
		{"M 0 9 X 1 0", syntax, `"X 1 0" at byte 6`},
		{"M 0 9 L 1. 0", syntax, `"1. 0" at byte 8`},
		{"M 0 9 L . 0", syntax, `". 0" at byte 8`},
		{"M 0 9 L - 0", syntax, `"- 0" at byte 8`},
		{"M 0 9 L +-1 0", syntax, `"+-1 0" at byte 8`},
		{"M 0 9 L 1e 0", syntax, `"e 0" at byte 9`},
		{"M 0 9 L 1e- 0", syntax, `"e- 0" at byte 9`},
		{"M 0 9 L 1e1.5.5", syntax, ""}, // 1e1, .5, .5 and no fourth number
		{"M 0 9 L NaN 0", syntax, `"NaN 0" at byte 8`},
		{"M 0 9 L 0x1 0", syntax, `"x1 0" at byte 9`},
		{"M 0 9 L ١ 0", syntax, ""},
		{"M 0 9 L 1 0 \u00a0", syntax, ""},
		{"M 0 9 L 1 0\x00", syntax, `"\x00" at byte 11`},
		{"M 0 9 C 1 8 2 7 3", syntax, "at its end"},
		{"M 0 9 A 1 1 0 2 0 3 0", syntax, `"2 0 3 0" at byte 14`},
		{"M 0 9 A 1 1 0 0 +1 3 0", syntax, `"+1 3 0" at byte 16`},
		{"M 0 9 A 1 1 0 0", syntax, "at its end"},
		{"M 0 9 A 1 1 0-1 3 0", syntax, ""},
		{"M 0 9 L 1000000.001 0", bounds, `"1000000.001 0" at byte 8`},
		{"M 0 9 L 1e7 0", bounds, `"1e7 0" at byte 8`},
		{"M 0 9 L 1e999999999 0", bounds, `"1e999999999 0" at byte 8`},
		{"M 0 9 L 9" + strings.Repeat("0", 100), bounds, ""},
		{"M 900000 9 l 900000 -1", bounds, `"900000 -1" at byte 13`},
		{"M 0 9 A 1e7 1 0 0 0 1 0", bounds, `"1e7 1 0 0 0 1 0" at byte 8`},
		{"M -600000 9 L 600000 0", bounds, "120000 cm"},
		{"M 0 9 Q 900000 8 0 0 T 1 -1", bounds, ""},
		{"M 0 9", bounds, "0 cm"},
		{"M 0 9 L 9 9", bounds, "0 cm"},
		{"M 0 9 L 9 10", bounds, "segment 1 (L) at byte 6"},
		{"M 0 9 5 5 v 0.001 V 0", bounds, "segment 2 (v) at byte 10"},
		{"M 0 9 C 0 12 5 3 5 0", bounds, "segment 1 (C) at byte 6"},
		{"M 0 9 L 0 9 q 0 5 0 -1", bounds, "segment 2 (q) at byte 12"},
		{"M 0 9 A 5 5 0 1 0 5 4", bounds, "segment 1 (A) at byte 6"},
	} {
		_, err := curve.ParsePath(c.path)
		var e *curve.Error
		if !errors.As(err, &e) || !errors.Is(err, c.kind) {
			t.Errorf("%.40q: got %v, want %v", c.path, err, c.kind)
			continue
		}
		if c.given != "" && e.Given != c.given {
			t.Errorf("%.40q: given %s, want %s", c.path, e.Given, c.given)
		}
	}
}

func TestParsePathLimits(t *testing.T) {
	path := "M 0 20000" + strings.Repeat("q1-.5 0-1", 20_000)
	edge, err := curve.ParsePath(path)
	if err != nil || len(curve.Pieces(edge)) != 40_000 {
		t.Fatalf("20,000 segments: %v", err)
	}
	if _, err := curve.ParsePath(path + "v-1"); !errors.Is(err, curve.ErrRange) {
		t.Errorf("one more: %v", err)
	}
	long := "M 0 9 V 0"
	long += strings.Repeat(" ", 1<<20-len(long))
	if _, err := curve.ParsePath(long); err != nil {
		t.Errorf("1 MiB: %v", err)
	}
	if _, err := curve.ParsePath(long + " "); !errors.Is(err, curve.ErrRange) {
		t.Errorf("more than 1 MiB: %v", err)
	}
}

func FuzzParsePath(f *testing.F) {
	for _, path := range drawnEdges() {
		f.Add(path)
	}
	for _, path := range []string{"", "M 0 1a1 2 0 01.5-.5", "m0 1e3-7-.5.5Z", "M 0 9 S 2 7 3 6T1 1,"} {
		f.Add(path)
	}
	f.Fuzz(func(t *testing.T, data string) {
		edge, err := curve.ParsePath(data)
		if err != nil {
			var e *curve.Error
			if !errors.As(err, &e) || !errors.Is(err, curve.ErrSyntax) && !errors.Is(err, curve.ErrRange) {
				t.Fatalf("%#v", err)
			}
			return
		}
		readsBack(t, edge)
	})
}

func BenchmarkParsePath(b *testing.B) {
	for _, segments := range []int{1, 100, 10_000} {
		path := "M 0 240" + strings.Repeat(" c 60 0 120 -.005 120 -.02", segments)
		b.Run(fmt.Sprintf("segments=%d", segments), func(b *testing.B) {
			path := path
			if segments > 8000 {
				path = strings.ReplaceAll(path, "120", "1.2")
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := curve.ParsePath(path); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
