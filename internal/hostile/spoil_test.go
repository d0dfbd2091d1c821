//go:build linux

package hostile_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"iter"
	"math/rand/v2"
	"regexp"
	"strings"
	"unicode/utf16"
)

const mebi = 1 << 20 // bytes that a document may have

// spoiled is what became of a valid document.
type spoiled struct {
	how     string
	text    []byte
	useless bool // whatever reads documents of this kind must refuse it
}

// spoil yields what is no document, what hides one, and a number of copies of a valid one
// with a fault that chance puts in.
func spoil(valid []byte, random *rand.Rand, copies int) iter.Seq[spoiled] {
	return func(yield func(spoiled) bool) {
		for how, text := range nonsense(random) {
			if !yield(spoiled{how, text, true}) {
				return
			}
		}
		for how, text := range disguised(valid) {
			if !yield(spoiled{how, text, false}) {
				return
			}
		}
		for i := range copies {
			f := faults[i%len(faults)]
			if !yield(spoiled{fmt.Sprintf("%s, number %d", f.how, i/len(faults)+1), f.put(bytes.Clone(valid), random), false}) {
				return
			}
		}
	}
}

// nonsense yields what is no document of any kind.
func nonsense(random *rand.Rand) iter.Seq2[string, []byte] {
	type made struct {
		how  string
		make func() []byte
	}
	repeated := func(s string, bytes int) func() []byte {
		return func() []byte { return []byte(strings.Repeat(s, bytes/len(s))) }
	}
	list := []made{
		{"nothing", repeated(" ", 0)},
		{"blanks", repeated(" \r\n\t", 400)},
		{"a byte order mark", repeated("\ufeff", 3)},
		{"null", repeated("null", 4)},
		{"a list", repeated("[]", 2)},
		{"an object", repeated("{}", 2)},
		{"a text", repeated(`""`, 2)},
		{"a number", repeated("1e400", 5)},
		{"a quote", repeated(`"`, 1)},
		{"no bytes but zeros", repeated("\x00", 1000)},
		{"lists within lists", repeated("[", mebi)},
		{"lists within lists, closed", func() []byte {
			return append(repeated("[", mebi/2)(), repeated("]", mebi/2)()...)
		}},
		{"objects within objects", repeated(`{"a":`, mebi)},
		{"objects within lists", repeated(`[{"format":`, mebi)},
		{"a long list", func() []byte { return fmt.Appendf(nil, "[%s0]", repeated("0,", mebi-8)()) }},
		{"an object of one key", func() []byte { return fmt.Appendf(nil, `{%s"a":0}`, repeated(`"a":0,`, mebi-16)()) }},
		{"an object of many keys", func() []byte {
			text := []byte("{")
			for i := 0; len(text) < mebi-32; i++ {
				text = fmt.Appendf(text, `"k%d":0,`, i)
			}
			return append(text, `"a":0}`...)
		}},
		{"a long key", func() []byte { return fmt.Appendf(nil, `{"%s":0}`, repeated("A", mebi-16)()) }},
		{"a long text", func() []byte { return fmt.Appendf(nil, `"%s"`, repeated("A", mebi-16)()) }},
		{"a long number", repeated("9", mebi-16)},
		{"quotes", repeated(`"`, mebi-16)},
		{"commas", repeated(",", mebi-16)},
		{"lines", repeated("\n", mebi-16)},
		{"an endless text", repeated("A", 3*mebi)},
		{"endless zeros", repeated("\x00", 3*mebi)},
		{"endless blanks", repeated(" ", 3*mebi)},
	}
	for _, size := range []int{1, 3, 16, 200, 4000, 60_000} {
		list = append(list, made{fmt.Sprintf("%d bytes by chance", size), func() []byte {
			text := make([]byte, size)
			for i := range text {
				text[i] = byte(random.Uint32())
			}
			return text
		}})
	}
	return func(yield func(string, []byte) bool) {
		for _, m := range list {
			if !yield(m.how, m.make()) {
				return
			}
		}
	}
}

// disguised yields a valid document that something has been done to as a whole; some of what
// comes of it may still be valid.
func disguised(valid []byte) iter.Seq2[string, []byte] {
	join := func(parts ...string) []byte { return []byte(strings.Join(parts, "")) }
	text := string(valid)
	half := len(text) / 2
	return func(yield func(string, []byte) bool) {
		_ = yield("marked with a byte order", join("\ufeff", text)) &&
			yield("marked twice", join("\ufeff\ufeff", text)) &&
			yield("marked in the middle", join(text[:half], "\ufeff", text[half:])) &&
			yield("UTF-16, little end first", wide(binary.LittleEndian, text)) &&
			yield("UTF-16, big end first", wide(binary.BigEndian, text)) &&
			yield("twice", join(text, text)) &&
			yield("twice, the first cut", join(text[:half], text)) &&
			yield("of 1 MiB", join(text, strings.Repeat(" ", max(0, mebi-len(text))))) &&
			yield("of 1 MiB and a byte", join(text, strings.Repeat(" ", max(0, mebi-len(text))), " ")) &&
			yield("a zero after it", join(text, "\x00")) &&
			yield("a zero in the middle", join(text[:half], "\x00", text[half:])) &&
			yield("a byte that is no UTF-8", join(text[:half], "\xff", text[half:])) &&
			yield("half of a pair", join(text[:half], `\ud800`, text[half:])) &&
			yield("a remark after it", join(text, "// remark")) &&
			yield("lines that end in two", []byte(strings.ReplaceAll(text, "\n", "\r\n"))) &&
			yield("other quotes", []byte(strings.ReplaceAll(text, `"`, "'")))
	}
}

// wide returns a text as UTF-16, with a byte order mark.
func wide(order binary.AppendByteOrder, text string) []byte {
	var wide []byte
	for _, unit := range utf16.Encode([]rune("\ufeff" + text)) {
		wide = order.AppendUint16(wide, unit)
	}
	return wide
}

// A fault is one that chance puts into a document.
type fault struct {
	how string
	put func(text []byte, random *rand.Rand) []byte
}

var faults = []fault{
	{"cut", func(text []byte, random *rand.Rand) []byte { return text[:random.IntN(len(text))] }},
	{"bits turned", func(text []byte, random *rand.Rand) []byte {
		for range 1 + random.IntN(4) {
			text[random.IntN(len(text))] ^= 1 << random.IntN(8)
		}
		return text
	}},
	{"other value", func(text []byte, random *rand.Rand) []byte { return replaced(text, value, wrong, random) }},
	{"bytes missing", func(text []byte, random *rand.Rand) []byte {
		at := random.IntN(len(text))
		return append(text[:at:at], text[min(len(text), at+1+random.IntN(40)):]...)
	}},
	{"other value for a number", func(text []byte, random *rand.Rand) []byte { return replaced(text, number, wrong, random) }},
	{"other digits", func(text []byte, random *rand.Rand) []byte {
		for range 1 + random.IntN(3) {
			text = replaced(text, digits, odd, random)
		}
		return text
	}},
	{"key twice", func(text []byte, random *rand.Rand) []byte {
		found := member.FindAllIndex(text, -1)
		if len(found) == 0 {
			return append(text, text...)
		}
		at := found[random.IntN(len(found))]
		return bytes.Join([][]byte{text[:at[1]], text[at[0]:at[1]], text[at[1]:]}, nil)
	}},
}

var (
	value  = regexp.MustCompile(`"(?:[^"\\]|\\.)*"|[^\s",:{}\[\]]+`) // or a key, or a cell of a table
	number = regexp.MustCompile(`[0-9]+|"[^"]*[0-9][^"]*"`)          // or a text with one
	digits = regexp.MustCompile(`[0-9]+`)
	member = regexp.MustCompile(`"\w+": *(?:"[^"]*"|[0-9.]+|\{[^{}]*\}), *`)
)

// replaced puts something else in the place of one of the matches.
func replaced(text []byte, pattern *regexp.Regexp, others []string, random *rand.Rand) []byte {
	found := pattern.FindAllIndex(text, -1)
	if len(found) == 0 {
		return append(text, "\x00"...)
	}
	at, by := found[random.IntN(len(found))], others[random.IntN(len(others))]
	return bytes.Join([][]byte{text[:at[0]], []byte(by), text[at[1]:]}, nil)
}

// odd are numbers that many places take, for which they are not meant.
var odd = []string{"0", "1", "2", "3", "7", "13", "50", "99", "100", "199", "1000", "5000", "999999", "2147483647"}

// wrong are values that few places take.
var wrong = []string{
	"0", "-0", "-1", "1", "1.5", "5000", "5001", "1000000", "999999999", "2147483648", "1099511627776", "9007199254740993",
	"99999999999999999999", "-99999999999999999999", "1e9", "1e400", "-1e400", "1e-400", strings.Repeat("9", 100_000),
	"NaN", "Infinity", "0x10", "1_000", "+1", "01", ".5",
	`null`, `true`, `[]`, `{}`, `[null]`, `{"a": {}}`, strings.Repeat("[", 40) + strings.Repeat("]", 40),
	`""`, `" "`, `"0"`, `"-1"`, `"1e400"`, `"99999999999999999999"`, `"0.00000000000000000001"`, `"22,5"`,
	`"0 cm"`, `"-1 cm"`, `"0.01 mm"`, `"1e9 cm"`, `"99999999999999999999 cm"`, `"1/0 in"`, `"9 1/99999999999999999999 in"`, `"1 ell"`, `"10 cm\u0000"`,
	`"\u0000"`, `"\ud800"`, `"\u202e\u001b[31m"`, "\"\xff\xfe\"", "\"a\nb\"", `"` + strings.Repeat("A", 100_000) + `"`, `"` + strings.Repeat(`\u0001`, 10_000) + `"`,
	`"M 0 0 L 1e308 1e308"`, `"M 0 0 L 1e-308 1"`, `"M 0 0` + strings.Repeat(" L 1 1", 10_000) + `"`, `"M 0 0 C 1 1 1 1 1 1 ` + strings.Repeat("9", 1000) + `"`,
	`"hold"`, `"R0"`, `"L99999999999"`, `"../../up"`, `"/"`, `"con"`,
}
