package sheet

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/walewise/shaping"
)

// WriteTable writes the rows of works, such as the pieces of a garment, as one table for
// spreadsheets: values separated by commas, a line with the names of the columns, then
// work after work one record a row in the order in which they are knitted. The columns
// are the same for every work:
//
//   - piece: the name of the work
//   - row: its number in the piece, from 1; both halves have every number
//   - counter before, counter after: what the row counter shows; in the hand,
//     where no counter is set, what one would show
//   - panel
//   - starts at: left or right, as seen on the work's facing
//   - fabric side: in the hand RS or WS, the right or wrong side that faces the
//     knitter; empty on the bed, where the same side does at every row
//   - actions before, actions after: as [shaping.Action.String] says them, with
//     "; " between them
//   - needles knitted, stitches in work: the needles and their number
//
// A name of a piece or panel that begins with neither a letter nor a digit has an
// apostrophe put before it, lest a spreadsheet take it for a formula.
//
// It does not judge the works, and returns the first error of w.
func WriteTable(w io.Writer, works ...shaping.Work) error {
	table := csv.NewWriter(w)
	// Errors are kept by the table until the end.
	table.Write([]string{
		"piece", "row", "counter before", "counter after", "panel", "starts at", "fabric side",
		"actions before", "needles knitted", "stitches in work", "actions after",
	})
	for _, work := range works {
		for _, row := range work.Rows {
			table.Write(record(work, row))
		}
	}
	table.Flush()
	return table.Error()
}

func record(work shaping.Work, row shaping.Row) []string {
	return []string{
		harmless(work.Name),
		strconv.Itoa(row.Row),
		strconv.Itoa(row.CounterBefore()),
		strconv.Itoa(row.CounterAfter()),
		harmless(row.Panel),
		row.From.String(),
		fabricSide(row.Row, work.Place),
		actionList(row.Before),
		row.Knit.String(),
		strconv.Itoa(row.Knit.Len()),
		actionList(row.After),
	}
}

// fabricSide returns RS for the odd rows in the hand and WS for the others.
func fabricSide(row int, place shaping.Place) string {
	if place != shaping.Hand {
		return ""
	}
	return sideOfRow(row)
}

func actionList(actions []shaping.Action) string {
	var texts []string
	for _, a := range actions {
		texts = append(texts, a.String())
	}
	return strings.Join(texts, "; ")
}

// harmless returns a text from elsewhere so that no spreadsheet takes it for a
// formula. The other cells are numbers and fixed words.
func harmless(text string) string {
	first, _ := utf8.DecodeRuneInString(text)
	if text == "" || unicode.IsLetter(first) || unicode.IsDigit(first) {
		return text
	}
	return "'" + text
}
