package shaping

import (
	"fmt"
	"strconv"
)

// MaxNeedle is the highest number a needle may have on either side of the middle.
const MaxNeedle = 1000

// Needle names one needle of the bed, or one stitch in the hand: L1, L2, ... to
// the left of the middle, R1, R2, ... to the right. Ln has the value -n and Rn
// the value n; the zero value is no needle. Do not compute with the values: there
// is no needle between L1 and R1. Use [Needle.Index] and [NeedleAt].
type Needle int

// L returns needle Ln, for n from 1. The number is not checked: L(0) is no needle, and
// L(-3), a mistake, is R3.
func L(n int) Needle { return Needle(-n) }

// R returns needle Rn, for n from 1. The number is not checked: R(0) is no needle, and
// R(-3), a mistake, is L3.
func R(n int) Needle { return Needle(n) }

// NeedleAt returns the needle with the given [Needle.Index].
func NeedleAt(index int) Needle {
	if index < 0 {
		return Needle(index)
	}
	return Needle(index + 1)
}

// Index numbers the needles without a gap from left to right: ... L2 = -2,
// L1 = -1, R1 = 0, R2 = 1 ... It is what to use to count or to compare positions.
// That of no needle is 0 too.
func (n Needle) Index() int {
	if n > 0 {
		return int(n) - 1
	}
	return int(n)
}

// IsValid reports whether n is a needle: not the zero value, and not numbered
// higher than [MaxNeedle].
func (n Needle) IsValid() bool { return n != 0 && n >= -MaxNeedle && n <= MaxNeedle }

// Toward returns the needle by positions further on that side; from no needle
// there is none. Beyond the outermost needles the result is not valid, and so it is where
// the sum of a valid needle's position and by leaves the range of int and wraps around.
func (n Needle) Toward(s Side, by int) Needle {
	if n == 0 {
		return 0
	}
	if s == Left {
		by = -by
	}
	return NeedleAt(n.Index() + by)
}

// String returns "L12" or "R12", and "no needle" for the zero value.
func (n Needle) String() string {
	switch {
	case n < 0:
		return "L" + strconv.Itoa(-int(n))
	case n > 0:
		return "R" + strconv.Itoa(int(n))
	}
	return "no needle"
}

// GoString returns a Go expression for n.
func (n Needle) GoString() string {
	if n < 0 {
		return fmt.Sprintf("shaping.L(%d)", -int(n))
	}
	return fmt.Sprintf("shaping.R(%d)", int(n))
}

// ParseNeedle reads "L12" or "R12": a capital L or R and a number from 1 to
// [MaxNeedle] without a sign or leading zeros. It returns an error that wraps
// [ErrSyntax] or [ErrRange].
func ParseNeedle(s string) (Needle, error) {
	const want = "a needle such as L12 or R1"
	if len(s) < 2 || len(s) > 5 || (s[0] != 'L' && s[0] != 'R') || s[1] < '0' || s[1] > '9' {
		return 0, syntaxError("needle", s, want)
	}
	number, err := strconv.Atoi(s[1:])
	if err != nil || (s[1] == '0' && len(s) > 2) {
		return 0, syntaxError("needle", s, want)
	}
	if number < 1 || number > MaxNeedle {
		return 0, rangeError("needle", s, fmt.Sprintf("needles are numbered 1 to %d on each side; there is no needle 0", MaxNeedle))
	}
	if s[0] == 'L' {
		return L(number), nil
	}
	return R(number), nil
}

// MustParseNeedle is [ParseNeedle] for literals; it panics on an error.
func MustParseNeedle(s string) Needle {
	n, err := ParseNeedle(s)
	if err != nil {
		panic(err)
	}
	return n
}

// AppendText appends the text of [Needle.String]; it returns an error if n is not valid.
func (n Needle) AppendText(b []byte) ([]byte, error) {
	if !n.IsValid() {
		return b, rangeError("needle", int(n), fmt.Sprintf("L1 to L%d or R1 to R%d", MaxNeedle, MaxNeedle))
	}
	return append(b, n.String()...), nil
}

// MarshalText returns the text of [Needle.String]; it returns an error if n is not valid.
func (n Needle) MarshalText() ([]byte, error) { return n.AppendText(nil) }

// UnmarshalText is [ParseNeedle]; it leaves n as it was on an error.
func (n *Needle) UnmarshalText(text []byte) error {
	v, err := ParseNeedle(string(text))
	if err == nil {
		*n = v
	}
	return err
}
