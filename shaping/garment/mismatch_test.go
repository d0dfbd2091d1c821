package garment_test

import (
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// A front and a back of two specs, which do not belong together: each check that compares
// them says so with both numbers.
func TestPiecesThatDoNotBelongTogether(t *testing.T) {
	for _, test := range []struct {
		name   string
		other  change
		failed string // name of the check
		says   string // of the first that fails
	}{
		{
			"shoulders bound off", func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) }, "shoulders",
			"Wearer's right shoulder: 23 stitches in the front's right half, 23 in the back's left half: equal. The one is live, the other is bound off: they cannot be joined alike.",
		},
		{
			"a wider neck", func(s *garment.Spec) { s.Neck.Width = length("20 cm") }, "shoulders",
			"Wearer's right shoulder: 23 stitches in the front's right half, 21 in the back's left half: 2 apart. Both are live: graft them, or bind them off together.",
		},
		{
			"a deeper armhole", func(s *garment.Spec) { s.Armhole.Depth = length("22 cm") }, "shoulders",
			"Height of the wearer's right shoulder: from row 170 to row 180 in the front's right half, from row 173 to row 183 in the back's left half: at the neck 3 apart.",
		},
		{
			"a longer body", func(s *garment.Spec) { s.Body.Length = length("37 cm"); s.Armhole.Depth = length("20 cm") }, "sides",
			"Wearer's right side: 108 rows up to the underarm at the front's right edge, 111 at the back's left edge: 3 apart.",
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			s, other := adult(), adult()
			test.other(&other)
			back, err := garment.Back(other)
			if err != nil {
				t.Fatal(err)
			}
			checks, err := garment.ChecksOf(s, front(t, s), back)
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range checks {
				if !c.Passed {
					if c.Name != test.failed || c.Says != test.says {
						t.Errorf("%s: %s\nwant %s: %s", c.Name, c.Says, test.failed, test.says)
					}
					return
				}
			}
			t.Error("all checks passed")
		})
	}
}
