package curve

import (
	"fmt"
	"strings"
)

// pathScanner reads the numbers of path data. After the first error it stands still.
type pathScanner struct {
	data string
	at   int
	err  error
}

// fail keeps the first error, with what is written at a byte.
func (s *pathScanner) fail(kind error, at int, want string) {
	if s.err != nil {
		return
	}
	const longest = 20
	given := "at its end"
	if at < len(s.data) {
		given = fmt.Sprintf("%q at byte %d", s.data[at:min(at+longest, len(s.data))], at)
	}
	s.err = &Error{What: "path", Given: given, Want: want, Err: kind}
}

func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\f' || c == '\r' }
func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func (s *pathScanner) space() {
	for s.at < len(s.data) && isSpace(s.data[s.at]) {
		s.at++
	}
}

// separator reads spaces with at most one comma, and reports whether there was anything.
func (s *pathScanner) separator() bool {
	from := s.at
	s.space()
	if s.at < len(s.data) && s.data[s.at] == ',' {
		s.at++
		s.space()
	}
	return s.at > from
}

// another reads up to the next number, and reports whether there is one before the next
// command.
func (s *pathScanner) another() bool {
	s.space()
	from := s.at
	s.separator()
	if s.at < len(s.data) && (isDigit(s.data[s.at]) || strings.IndexByte("+-.", s.data[s.at]) >= 0) {
		return true
	}
	if s.at > from {
		s.fail(ErrSyntax, from, "a number follows a comma")
	}
	return false
}

// coordinate reads a number and adds it to the base.
func (s *pathScanner) coordinate(base int64) int64 {
	at := s.at
	n := base + s.number()
	s.inReach(at, n)
	return n
}

const (
	placesRead = 12
	farthest   = 1_000_000_000_000_000_000 // 1000 m
)

func (s *pathScanner) inReach(at int, n int64) {
	if n < -farthest || n > farthest {
		s.fail(ErrRange, at, "coordinates lie within 1000 m of zero")
	}
}

func (s *pathScanner) flag() bool {
	if s.err != nil {
		return false
	}
	if s.at == len(s.data) || s.data[s.at] != '0' && s.data[s.at] != '1' {
		s.fail(ErrSyntax, s.at, "the flags of an arc are 0 or 1")
		return false
	}
	s.at++
	return s.data[s.at-1] == '1'
}

// number reads a number in units of 1e-12. Places beyond them are left out, which never
// changes how a coordinate is rounded that stands for itself.
func (s *pathScanner) number() int64 {
	if s.err != nil {
		return 0
	}
	from := s.at
	negative := false
	if c := s.peek(); c == '-' || c == '+' {
		negative = c == '-'
		s.at++
	}
	var d digits
	whole := s.digits(&d, 1)
	if s.peek() == '.' {
		s.at++
		if s.digits(&d, 0) == 0 {
			s.fail(ErrSyntax, from, "a digit follows a decimal point")
			return 0
		}
	} else if whole == 0 {
		s.fail(ErrSyntax, from, "a number is wanted")
		return 0
	}
	d.exponent += s.exponent()
	units, ok := d.units()
	if !ok {
		s.fail(ErrRange, from, "coordinates lie within 1000 m of zero")
	}
	if negative {
		return -units
	}
	return units
}

// peek returns the next byte, or 0 at the end.
func (s *pathScanner) peek() byte {
	if s.at < len(s.data) {
		return s.data[s.at]
	}
	return 0
}

// digits reads digits, whole ones or those of a fraction, and returns how many.
func (s *pathScanner) digits(d *digits, whole int) int {
	from := s.at
	for ; isDigit(s.peek()); s.at++ {
		if d.value < 1e18 { // there is room for another
			d.value = 10*d.value + uint64(s.peek()-'0')
			d.exponent += whole - 1
		} else {
			// What is left out is less than can count in numbers within reach.
			d.exponent += whole
		}
	}
	return s.at - from
}

// exponent reads the power of ten after a number, if there is one.
func (s *pathScanner) exponent() int {
	from := s.at
	if c := s.peek(); c != 'e' && c != 'E' {
		return 0
	}
	s.at++
	sign := 1
	if c := s.peek(); c == '-' || c == '+' {
		if c == '-' {
			sign = -1
		}
		s.at++
	}
	if !isDigit(s.peek()) {
		s.at = from // the letter is a command, and an unknown one
		return 0
	}
	const enough = 10 * longestPath // no digits make up for more
	power := 0
	for ; isDigit(s.peek()); s.at++ {
		power = min(10*power+int(s.peek()-'0'), enough)
	}
	return sign * power
}

const mostDigits = 19

// digits is the number value times ten to the power exponent. The value has at most
// mostDigits digits.
type digits struct {
	value    uint64
	exponent int
}

// units returns the number in whole units of 1e-12 if it is within twice the reach, as
// distances are.
func (d digits) units() (n int64, ok bool) {
	const most = 2 * farthest
	shift := d.exponent + placesRead
	if d.value == 0 || shift < -mostDigits {
		return 0, true
	}
	value := d.value
	for ; shift > 0; shift-- {
		if value > most/10 {
			return 0, false
		}
		value *= 10
	}
	for ; shift < 0; shift++ {
		value /= 10
	}
	return int64(min(value, most)), value <= most
}
