package garment

import "example.com/walewise/gauge"

// Optional is a length that may be left open, where zero is a choice of its own.
// The zero value is left open.
type Optional struct {
	length gauge.Length
	given  bool
}

// Exactly returns the chosen length.
func Exactly(l gauge.Length) Optional { return Optional{l, true} }

// IsZero reports whether the length is left open.
func (o Optional) IsZero() bool { return !o.given }

// Or returns the chosen length, and def if it is left open.
func (o Optional) Or(def gauge.Length) gauge.Length {
	if o.given {
		return o.length
	}
	return def
}

// Equal reports whether both are left open, or both are the same length.
func (o Optional) Equal(p Optional) bool { return o.given == p.given && o.length.Equal(p.length) }

// String returns the length, or "left open".
func (o Optional) String() string {
	if !o.given {
		return "left open"
	}
	return o.length.String()
}

// MarshalText returns the text of the length; it returns an error for one left open,
// which has none: a document leaves it out.
func (o Optional) MarshalText() ([]byte, error) {
	if !o.given {
		return nil, &Error{Want: "a length left open has no text", Err: ErrSpec}
	}
	return o.length.MarshalText()
}

// UnmarshalText reads a length and leaves o as it was on an error.
func (o *Optional) UnmarshalText(text []byte) error {
	l, err := gauge.ParseLength(string(text))
	if err != nil {
		return err
	}
	*o = Exactly(l)
	return nil
}
