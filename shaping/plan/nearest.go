package plan

import "strings"

// nearest returns the known key whose spelling is close to key, "" if none is.
func nearest(key string, known []string) string {
	const longest = 40
	if len(key) > longest {
		return ""
	}
	best, least := "", 3
	for _, k := range known {
		d := distance(strings.ToLower(key), strings.ToLower(k))
		// In a short key two wrong letters leave nothing to go by.
		if d < least && (d < 2 || len(k) > 4) && d < len(k) {
			best, least = k, d
		}
	}
	return best
}

// distance counts the letters to insert, remove, replace or swap with their
// neighbour to make a into b.
func distance(a, b string) int {
	d := make([][]int, len(a)+1)
	for i := range d {
		d[i] = make([]int, len(b)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			replaced := d[i-1][j-1]
			if a[i-1] != b[j-1] {
				replaced++
			}
			d[i][j] = min(replaced, d[i-1][j]+1, d[i][j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(a)][len(b)]
}
