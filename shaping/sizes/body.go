package sizes

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/walewise/gauge"
)

// Body is what is measured of a person. A length of zero was not measured. The keys of
// tables are those of the tags.
type Body struct {
	Name string `json:"name"` // of the size, such as "M" or "6 years"

	Chest    gauge.Length `json:"chest,omitzero"`    // girth, at its fullest
	Waist    gauge.Length `json:"waist,omitzero"`    // girth
	Hips     gauge.Length `json:"hips,omitzero"`     // girth
	Neck     gauge.Length `json:"neck,omitzero"`     // girth at its base, where a neckband lies
	Head     gauge.Length `json:"head,omitzero"`     // girth
	UpperArm gauge.Length `json:"upperArm,omitzero"` // girth
	Wrist    gauge.Length `json:"wrist,omitzero"`    // girth
	Hand     gauge.Length `json:"hand,omitzero"`     // girth over the knuckles

	Shoulders gauge.Length `json:"shoulders,omitzero"` // across the back, from shoulder point to shoulder point
	BackWaist gauge.Length `json:"backWaist,omitzero"` // from the nape down to the waist
	Fall      gauge.Length `json:"fall,omitzero"`      // by how much the shoulder points lie below the nape
	Armpit    gauge.Length `json:"armpit,omitzero"`    // by how much the fold of the armpit lies below the nape
	Armhole   gauge.Length `json:"armhole,omitzero"`   // depth as tables for knitters print it, from the shoulder point down to the underarm
	Arm       gauge.Length `json:"arm,omitzero"`       // from the shoulder point to the wrist
	InnerArm  gauge.Length `json:"innerArm,omitzero"`  // from the underarm to the wrist
}

// The bounds of tables.
const (
	MaxBodies = 100
	MaxBytes  = 1 << 20 // of a table
	MaxName   = 24      // characters of a name
)

// longest is longer than any measurement of a body.
const longest = "300 cm"

// column is one measurement of a body and its key.
type column struct {
	key string
	of  func(*Body) *gauge.Length
}

// columns returns the measurements in the order in which tables are best written.
func columns() []column {
	return []column{
		{"chest", func(b *Body) *gauge.Length { return &b.Chest }},
		{"waist", func(b *Body) *gauge.Length { return &b.Waist }},
		{"hips", func(b *Body) *gauge.Length { return &b.Hips }},
		{"neck", func(b *Body) *gauge.Length { return &b.Neck }},
		{"head", func(b *Body) *gauge.Length { return &b.Head }},
		{"shoulders", func(b *Body) *gauge.Length { return &b.Shoulders }},
		{"backWaist", func(b *Body) *gauge.Length { return &b.BackWaist }},
		{"fall", func(b *Body) *gauge.Length { return &b.Fall }},
		{"armpit", func(b *Body) *gauge.Length { return &b.Armpit }},
		{"armhole", func(b *Body) *gauge.Length { return &b.Armhole }},
		{"arm", func(b *Body) *gauge.Length { return &b.Arm }},
		{"innerArm", func(b *Body) *gauge.Length { return &b.InnerArm }},
		{"upperArm", func(b *Body) *gauge.Length { return &b.UpperArm }},
		{"wrist", func(b *Body) *gauge.Length { return &b.Wrist }},
		{"hand", func(b *Body) *gauge.Length { return &b.Hand }},
	}
}

// Keys returns the keys of all measurements, in the order in which tables are best written.
func Keys() []string {
	var keys []string
	for _, c := range columns() {
		keys = append(keys, c.key)
	}
	return keys
}

// Measurement returns the measurement of a key; ok is false if there is no such key.
func (b Body) Measurement(key string) (l gauge.Length, ok bool) {
	for _, c := range columns() {
		if c.key == key {
			return *c.of(&b), true
		}
	}
	return gauge.Length{}, false
}

// Check returns an [*Error] if there are no bodies or too many, if a name is missing, stands
// twice or cannot name a folder, or if a measurement is below 0 or longer than 3 m.
func Check(bodies []Body) error {
	if len(bodies) == 0 {
		return &Error{Want: "no bodies: give one at least", Err: ErrBodies}
	}
	if len(bodies) > MaxBodies {
		return &Error{Given: fmt.Sprintf("%d bodies", len(bodies)), Want: fmt.Sprintf("at most %d", MaxBodies), Err: ErrBodies}
	}
	var names []string
	for i, b := range bodies {
		if err := checkBody(b); err != nil {
			if err.Size == "" {
				err.Size = fmt.Sprintf("number %d", i+1)
			}
			return err
		}
		name := strings.ToLower(b.Name)
		if slices.Contains(names, name) {
			return &Error{Size: b.Name, Key: "name", Want: "stands twice (capitals do not count): give each size a name of its own", Err: ErrBodies}
		}
		names = append(names, name)
	}
	return nil
}

func checkBody(b Body) *Error {
	if err := checkName(b.Name); err != nil {
		return err
	}
	for _, c := range columns() {
		if err := checkLength(*c.of(&b)); err != nil {
			err.Size, err.Key = b.Name, c.key
			return err
		}
	}
	return nil
}

// checkLength refuses what no measurement of a body is. It leaves the place to the caller.
func checkLength(l gauge.Length) *Error {
	if l.Sign() >= 0 && l.Cmp(gauge.MustParseLength(longest)) <= 0 {
		return nil
	}
	return &Error{Given: l.String(), Want: "a length from 0, which means not measured, to " + longest, Err: ErrBodies}
}

// checkName refuses a name that could not be printed in a row of others or be that of a
// folder.
func checkName(name string) *Error {
	const want = "letters, digits, spaces and + - . _ between them, at most 24 characters, with a letter or digit first and no space or dot last"
	switch {
	case name == "":
		return &Error{Key: "name", Want: "missing: " + want, Err: ErrBodies}
	case !utf8.ValidString(name) || utf8.RuneCountInString(name) > MaxName || !plainName(name):
		return &Error{Key: "name", Given: quoted(name), Want: want, Err: ErrBodies}
	}
	return nil
}

func plainName(name string) bool {
	first, _ := utf8.DecodeRuneInString(name)
	last, _ := utf8.DecodeLastRuneInString(name)
	if !alphanumeric(first) || last == ' ' || last == '.' {
		return false
	}
	return !strings.ContainsFunc(name, func(r rune) bool { return !alphanumeric(r) && !strings.ContainsRune(" +-._", r) })
}

func alphanumeric(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
