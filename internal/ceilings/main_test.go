package main

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const printed = `goos: linux
pkg: example.com/walewise/shaping/bed
cpu: some processor
BenchmarkKnit/loops=30356-2         	    5000	    151000.5 ns/op	 201.03 Mloops/s	   36864 B/op	      38 allocs/op
BenchmarkKnit/loops=1488            	       5	       999.4 ns/op	     999 B/op	      36 allocs/op
PASS
pkg: example.com/walewise/gauge
BenchmarkStitches-16 	 1000000	      1040 ns/op	     480 B/op	      17 allocs/op
`

func TestReadBenchmarks(t *testing.T) {
	got, err := readBenchmarks(strings.NewReader(printed))
	if err != nil {
		t.Fatal(err)
	}
	want := []benchmark{
		{name{"shaping/bed", "Knit/loops=30356"}, 151000.5, 36864, 38},
		{name{"shaping/bed", "Knit/loops=1488"}, 999.4, 999, 36},
		{name{"gauge", "Stitches"}, 1040, 480, 17},
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(benchmark{}, name{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for _, text := range []string{"", "PASS\n", "BenchmarkX-2 5 10 ns/op\n", printed + "--- FAIL: BenchmarkY\n", printed + "FAIL\n"} {
		if got, err := readBenchmarks(strings.NewReader(text)); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}

func TestHold(t *testing.T) {
	ran, err := readBenchmarks(strings.NewReader(printed))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ file, want string }{
		{"# all of them\n\nshaping/bed Knit/loops=30356 38 # as it is\n", "shaping/bed Knit/loops=30356: 38 allocations, at most 38\n"},
		{"gauge Stitches 16\n", "gauge Stitches: 17 allocations, MORE THAN 16\n"},
		{"gauge Round 16\n", "gauge Round did not run\n"},
		{"shaping Stitches 16\n", "shaping Stitches did not run\n"},
	} {
		ceilings, err := readCeilings(strings.NewReader(c.file))
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		err = hold(ran, ceilings, &b)
		if b.String() != c.want || errors.Is(err, errAbove) == strings.Contains(c.want, "at most") {
			t.Errorf("%q: says %q and %v, want %q", c.file, b.String(), err, c.want)
		}
	}
	if _, err := readCeilings(strings.NewReader("gauge Stitches\n")); err == nil {
		t.Error("a ceiling without a number is read")
	}
}

func TestTable(t *testing.T) {
	ran, err := readBenchmarks(strings.NewReader(printed))
	if err != nil {
		t.Fatal(err)
	}
	want := "| package | benchmark | time | memory | allocations |\n|---|---|---|---|---|\n" +
		"| `shaping/bed` | `Knit/loops=30356` | 151 µs | 37 kB | 38 |\n" +
		"| `shaping/bed` | `Knit/loops=1488` | 999 ns | 999 B | 36 |\n" +
		"| `gauge` | `Stitches` | 1.0 µs | 480 B | 17 |\n"
	if got := table(ran); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
