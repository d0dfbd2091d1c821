package garment

// Cap is how a sleeve ends at the top: StraightTop or SetInCap.
type Cap uint8

// The tops of sleeves.
const (
	StraightTop Cap = iota // level, for an armhole that is straight
	SetInCap               // rounded, as long along its edge as the armhole and the ease
)

var capWords = [...]string{StraightTop: "straight", SetInCap: "set-in"}

// IsValid reports whether c is one of the tops.
func (c Cap) IsValid() bool { return int(c) < len(capWords) }

// String returns "straight" or "set-in".
func (c Cap) String() string {
	if c.IsValid() {
		return capWords[c]
	}
	return "no top"
}

// MarshalText returns "straight" or "set-in".
func (c Cap) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads "straight" or "set-in" and leaves c as it was on an error.
func (c *Cap) UnmarshalText(text []byte) error {
	for v, word := range capWords {
		if word == string(text) {
			*c = Cap(v)
			return nil
		}
	}
	return &Error{Given: quoted(string(text)), Want: "straight or set-in", Err: ErrSpec}
}
