package sizes

import (
	"bytes"
	_ "embed" // for the tables
)

//go:embed data/men.csv
var men []byte

//go:embed data/women.csv
var women []byte

//go:embed data/children.csv
var children []byte

// Men returns five bodies of men: the least, the 5th percentile, the median, the 95th
// percentile and the greatest of each measurement of the 2012 Anthropometric Survey of U.S.
// Army Personnel (C. C. Gordon et al., Natick TR-15/007, 2014; computed from its raw data,
// 4,082 soldiers). None of them is one person: whoever has the median chest seldom has the
// median arm. They show the range that a garment has to cover.
func Men() []Body { return builtIn(men) }

// Women returns five bodies of women, as [Men] does, of 1,986 soldiers.
func Women() []Body { return builtIn(women) }

// Children returns bodies of children of 2, 4, 6, 8 and 10 years. Chest: Caron leaflet
// CAK0329-008169M (2021). Shoulders, lengths and upper arm: Measurements for Designers:
// Children (crochetkitten.com). Heads of 2 and 4 years: WHO Child Growth Standards, boys,
// whose heads are the larger ones. What these do not print is missing, and filled in by the
// rules of [Style.For].
func Children() []Body { return builtIn(children) }

// builtIn reads a table of this package, which a test reads too.
func builtIn(text []byte) []Body {
	bodies, err := ReadCSV(bytes.NewReader(text))
	if err != nil {
		panic("sizes: " + err.Error())
	}
	return bodies
}
