package sheet

import (
	"fmt"
	"slices"
	"strings"
)

// key writes the words that need a meaning, of short forms only those that the order
// of work uses.
func (s *writer) key(work []byte) {
	s.heading("Words")
	for _, k := range s.wordsOf(string(work)) {
		if k[0] == "" {
			s.para("  ", k[1])
		} else {
			s.para(fmt.Sprintf("  %-8s  ", k[0]), k[1])
		}
	}
}

// wordsOf returns the words that need a meaning in a text, each with it.
func (s *writer) wordsOf(text string) [][2]string {
	text = strings.ToLower(text)
	return slices.DeleteFunc(s.voice.words(), func(k [2]string) bool {
		used := mayBeUnused(k[0])
		return used != nil && !slices.ContainsFunc(used, func(word string) bool { return usesWord(text, word) })
	})
}

// mayBeUnused returns how a word stands in the order of work if it is explained only
// where it is used, in small letters.
func mayBeUnused(word string) (used []string) {
	switch word {
	case "k2tog", "k3tog", "p2tog", "p3tog", "ssk", "sssk", "ssp", "sssp", "w&t", "m1", "BO", "increase", "even", "hold", "wrap", "bind off":
		return []string{strings.ToLower(word)}
	case "back":
		return []string{"k back", "p back"}
	case "turn":
		return []string{"the turn"}
	}
	return nil
}

// usesWord reports whether the text, in small letters, has the word between others.
func usesWord(text, word string) bool {
	const partOfWord = "abcdefghijklmnopqrstuvwxyz&"
	for at := 0; ; {
		i := strings.Index(text[at:], word)
		if i < 0 {
			return false
		}
		before, after := text[:at+i], text[at+i+len(word):]
		if !strings.ContainsAny(before[max(len(before)-1, 0):], partOfWord) && !strings.ContainsAny(after[:min(len(after), 1)], partOfWord) {
			return true
		}
		at += i + len(word)
	}
}
