package garment_test

import (
	"encoding/json"
	"testing"

	"example.com/walewise/shaping/garment"
)

// A pair that is read is written and read again as the same; one that is refused stays as it
// was.
func FuzzPair(f *testing.F) {
	for _, seed := range []string{`"hold"`, `["bindOff", "fashioned"]`, `["hold"]`, `[]`, `null`, `[null, "hold"]`, `"`, `{}`, `[["hold"]]`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		var pair, again garment.Pair
		if err := json.Unmarshal(text, &pair); err != nil {
			if pair != (garment.Pair{}) {
				t.Errorf("%q: %v beside the error %v", text, pair, err)
			}
			return
		}
		written, err := json.Marshal(pair)
		if err != nil { // a method that is not set, as null leaves it
			return
		}
		if err := json.Unmarshal(written, &again); err != nil || again != pair {
			t.Errorf("%q reads as %v, is written as %s and reads as %v (%v)", text, pair, written, again, err)
		}
	})
}
