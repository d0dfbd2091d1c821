package gauge

import "fmt"

// Direction is where a rounding goes. The zero value is Nearest.
type Direction uint8

// The directions.
const (
	Nearest Direction = iota // ties away from zero
	Up                       // to the larger number
	Down                     // to the smaller number
)

// String returns "nearest", "up" or "down".
func (d Direction) String() string {
	switch d {
	case Nearest:
		return "nearest"
	case Up:
		return "up"
	case Down:
		return "down"
	}
	return fmt.Sprintf("Direction(%d)", uint8(d))
}

// Rounding is a rule that makes a count whole: the number in the direction that
// is a multiple of Multiple, plus Plus. The zero value rounds to the nearest whole
// number. With a Plus of 0 the rule Nearest is the same for reflected pieces: what
// is minus x rounds to minus what x rounds to.
type Rounding struct {
	Direction Direction
	Multiple  int // below 2: every whole number
	Plus      int
}

// Even returns the rule for even numbers.
func Even(d Direction) Rounding { return Rounding{d, 2, 0} }

// Odd returns the rule for odd numbers.
func Odd(d Direction) Rounding { return Rounding{d, 2, 1} }

// SameParity returns the rule for numbers that are even or odd as n is.
func SameParity(n int, d Direction) Rounding { return Rounding{d, 2, n & 1} }

// Allows reports whether the rule can choose n.
func (r Rounding) Allows(n int) bool { return (n-r.Plus)%max(r.Multiple, 1) == 0 }

// String says the rule in words, such as "nearest even number".
func (r Rounding) String() string {
	switch {
	case r.Multiple < 2:
		return r.Direction.String() + " whole number"
	case r.Multiple == 2 && r.Plus&1 == 0:
		return r.Direction.String() + " even number"
	case r.Multiple == 2:
		return r.Direction.String() + " odd number"
	}
	return fmt.Sprintf("%v multiple of %d plus %d", r.Direction, r.Multiple, r.Plus)
}
