// Package plural counts stitches and rows in words.
package plural

import "fmt"

// Stitches returns "1 stitch", "2 stitches", ...
func Stitches(n int) string { return counted(n, "stitch", "stitches") }

// Sts returns "1 st", "2 sts", ..., the short forms of patterns for two needles.
func Sts(n int) string { return counted(n, "st", "sts") }

// Rows returns "1 row", "2 rows", ...
func Rows(n int) string { return counted(n, "row", "rows") }

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// Ordinal returns "1st", "2nd", "3rd", "4th", "11th", ...
func Ordinal(n int) string {
	suffix := "th"
	if tens := n % 100; tens < 11 || tens > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, suffix)
}
