package gauge

import "fmt"

// Direction is where a rounding goes. The zero value is Nearest.
type Direction uint8

// The directions.
const (
	Nearest Direction = iota // ties away from zero, and at 0 to the larger number
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
// number. Where with every number the rule allows its negative too, as with whole, even
// and odd numbers, Nearest is the same for reflected pieces: minus x rounds to minus
// what x rounds to. The one exception is 0 itself between two numbers as near: the
// nearest odd number to it is 1, not -1, since what is counted is not negative.
type Rounding struct {
	Direction Direction
	Multiple  int // below 2: every whole number
	Plus      int // stitches or rows beside the multiples
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
	return r.Direction.String() + " " + gridWords(int64(r.Multiple), int64(r.Plus))
}

// gridWords says which numbers are a multiple of multiple, plus plus.
func gridWords(multiple, plus int64) string {
	switch {
	case multiple < 2:
		return "whole number"
	case multiple == 2 && plus&1 == 0:
		return "even number"
	case multiple == 2:
		return "odd number"
	case plus == 0:
		return fmt.Sprintf("multiple of %d", multiple)
	}
	return fmt.Sprintf("multiple of %d plus %d", multiple, plus)
}
