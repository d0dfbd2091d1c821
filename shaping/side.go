package shaping

// Side is the left or the right of a piece as seen on its stated [Facing], the
// same for every row. The zero value is no side.
type Side uint8

// The two sides.
const (
	Left Side = iota + 1
	Right
)

var sideWords = words{"", "left", "right"}

// Opposite returns the other side; that of no side is no side.
func (s Side) Opposite() Side {
	switch s {
	case Left:
		return Right
	case Right:
		return Left
	}
	return s
}

// IsValid reports whether s is Left or Right.
func (s Side) IsValid() bool { return s == Left || s == Right }

// String returns "left" or "right".
func (s Side) String() string { return sideWords.name("Side", uint8(s)) }

// AppendText appends "left" or "right"; it returns an error for any other value.
func (s Side) AppendText(b []byte) ([]byte, error) { return sideWords.append("side", b, uint8(s)) }

// MarshalText returns "left" or "right"; it returns an error for any other value.
func (s Side) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText reads "left" or "right" and leaves s as it was on an error.
func (s *Side) UnmarshalText(text []byte) error {
	v, err := sideWords.parse("side", text)
	if err == nil {
		*s = Side(v)
	}
	return err
}

// Facing is the side of the fabric that faces whoever reads left and right. The
// zero value is no facing.
type Facing uint8

// The two facings.
const (
	PurlSide Facing = iota + 1 // the purl side to the knitter, as on a single bed
	KnitSide                   // the knit side, the right side of plain fabric
)

var facingWords = words{"", "purl", "knit"}

// Opposite returns the other facing; that of no facing is no facing.
func (f Facing) Opposite() Facing {
	switch f {
	case PurlSide:
		return KnitSide
	case KnitSide:
		return PurlSide
	}
	return f
}

// IsValid reports whether f is PurlSide or KnitSide.
func (f Facing) IsValid() bool { return f == PurlSide || f == KnitSide }

// String returns "purl" or "knit".
func (f Facing) String() string { return facingWords.name("Facing", uint8(f)) }

// AppendText appends "purl" or "knit"; it returns an error for any other value.
func (f Facing) AppendText(b []byte) ([]byte, error) {
	return facingWords.append("facing", b, uint8(f))
}

// MarshalText returns "purl" or "knit"; it returns an error for any other value.
func (f Facing) MarshalText() ([]byte, error) { return f.AppendText(nil) }

// UnmarshalText reads "purl" or "knit" and leaves f as it was on an error.
func (f *Facing) UnmarshalText(text []byte) error {
	v, err := facingWords.parse("facing", text)
	if err == nil {
		*f = Facing(v)
	}
	return err
}

// Place is where a piece is knitted. The zero value is no place.
type Place uint8

// The two places.
const (
	Bed  Place = iota + 1 // on a flat bed with a carriage
	Hand                  // flat, on two needles
)

var placeWords = words{"", "bed", "hand"}

// IsValid reports whether p is Bed or Hand.
func (p Place) IsValid() bool { return p == Bed || p == Hand }

// Facing returns the fabric side that faces the knitter at odd rows: PurlSide on
// the bed, KnitSide in the hand.
func (p Place) Facing() Facing {
	switch p {
	case Bed:
		return PurlSide
	case Hand:
		return KnitSide
	}
	return 0
}

// String returns "bed" or "hand".
func (p Place) String() string { return placeWords.name("Place", uint8(p)) }

// AppendText appends "bed" or "hand"; it returns an error for any other value.
func (p Place) AppendText(b []byte) ([]byte, error) { return placeWords.append("place", b, uint8(p)) }

// MarshalText returns "bed" or "hand"; it returns an error for any other value.
func (p Place) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText reads "bed" or "hand" and leaves p as it was on an error.
func (p *Place) UnmarshalText(text []byte) error {
	v, err := placeWords.parse("place", text)
	if err == nil {
		*p = Place(v)
	}
	return err
}
