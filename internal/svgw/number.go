package svgw

import "strconv"

// Number is a number in thousandths, such as 1/1000 mm: coordinates are whole numbers, so
// that no drawing depends on how a machine rounds.
type Number int64

// Whole returns the number n.
func Whole(n int) Number { return Number(n) * 1000 }

// String returns the number as SVG reads it: "12.5", never "-0" and never with an exponent.
func (n Number) String() string { return string(n.append(nil)) }

func (n Number) append(b []byte) []byte {
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendInt(b, int64(n/1000), 10)
	if part := n % 1000; part > 0 {
		b = append(b, '.', byte('0'+part/100), byte('0'+part/10%10), byte('0'+part%10))
		for b[len(b)-1] == '0' {
			b = b[:len(b)-1]
		}
	}
	return b
}
