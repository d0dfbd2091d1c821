package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// The page: a name, and beside it two columns of answers or one of words.
const (
	pageWidth   = 88
	nameWidth   = 22
	betweenWide = 2
	answerWidth = (pageWidth - nameWidth - betweenWide) / 2
	wordsWidth  = pageWidth - nameWidth
)

// writeText writes the examples by their topics, in the order in which topics first appear.
func writeText(w io.Writer, list []compared) error {
	var b strings.Builder
	words(&b, "", "Each has a name, what it asks, both answers, why they differ if they do, and the source. "+
		"A source is as it was seen, but for: computed, worked out here from what it says; its last line by its method, "+
		"where it leaves off before the answer; from memory, not confirmed.")
	b.WriteByte('\n')
	for _, topic := range topics(list) {
		beside(&b, strings.ToUpper(topic), "published", "the library gives")
		b.WriteByte('\n')
		for _, c := range list {
			if c.Topic == topic {
				c.writeShort(&b)
			}
		}
	}
	fmt.Fprintln(&b, counted(list))
	_, err := io.WriteString(w, b.String())
	return err
}

func topics(list []compared) []string {
	var all []string
	has := map[string]bool{}
	for _, c := range list {
		if !has[c.Topic] {
			has[c.Topic] = true
			all = append(all, c.Topic)
		}
	}
	return all
}

// counted says how many agree.
func counted(list []compared) string {
	agree := 0
	for _, c := range list {
		if c.agrees {
			agree++
		}
	}
	said := fmt.Sprintf("%d of %d agree", agree, len(list))
	switch differ := len(list) - agree; differ {
	case 0:
		return said + "."
	case 1:
		return said + "; 1 differs, with its reason."
	default:
		return fmt.Sprintf("%s; %d differ, each with its reason.", said, differ)
	}
}

func (c compared) writeShort(b *strings.Builder) {
	words(b, c.ID, c.Asks)
	beside(b, "  "+c.verdict(), c.Published, c.gives)
	c.writeWords(b)
	b.WriteByte('\n')
}

// writeWords writes what stands below the answers.
func (c compared) writeWords(b *strings.Builder) {
	if c.Differs != "" {
		words(b, "", "Why: "+c.Differs)
	}
	if c.Note != "" {
		words(b, "", "Note: "+c.Note)
	}
	words(b, "", "Source: "+c.from())
}

func (c compared) verdict() string {
	if c.agrees {
		return "agree"
	}
	return "differ"
}

// from says the source and what the answer rests on.
func (c compared) from() string {
	said := c.Source + ", " + c.Year
	switch c.Standing {
	case completed:
		said += "; its last line by its method"
	case computed:
		said += "; computed"
	case recalled:
		said += "; from memory"
	}
	return said
}

// writeOne writes one example with its inputs.
func writeOne(w io.Writer, list []compared) error {
	c := list[0]
	var inputs bytes.Buffer
	if err := json.Compact(&inputs, c.Inputs); err != nil {
		return err
	}
	var b strings.Builder
	words(&b, c.ID, c.Asks)
	b.WriteByte('\n')
	words(&b, "topic", c.Topic)
	words(&b, "call", c.Call)
	words(&b, "inputs", strings.NewReplacer(`,"`, `, "`, "},{", "}, {").Replace(inputs.String()))
	b.WriteByte('\n')
	words(&b, "published", c.Published)
	words(&b, "the library gives", c.gives)
	words(&b, "verdict", c.verdict())
	c.writeWords(&b)
	_, err := io.WriteString(w, b.String())
	return err
}

// words writes a name and words beside it.
func words(b *strings.Builder, name, says string) {
	columns(b, name, wrapped(says, wordsWidth), nil)
}

// beside writes a name and two answers beside it.
func beside(b *strings.Builder, name, first, second string) {
	columns(b, name, wrapped(first, answerWidth), wrapped(second, answerWidth))
}

// columns writes lines of one or two columns beside a name, which has a line of its own if it
// is too long.
func columns(b *strings.Builder, name string, first, second []string) {
	if utf8.RuneCountInString(name) >= nameWidth {
		b.WriteString(name + "\n")
		name = ""
	}
	at := func(lines []string, i int) string {
		if i < len(lines) {
			return lines[i]
		}
		return ""
	}
	for i := range max(len(first), len(second)) {
		line := padded(name, nameWidth) + padded(at(first, i), answerWidth+betweenWide) + at(second, i)
		b.WriteString(strings.TrimRight(line, " ") + "\n")
		name = ""
	}
}

func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(s)))
}

// wrapped breaks words into lines of a width; a word that is longer stands alone.
func wrapped(s string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
