package main

import (
	"encoding/csv"
	"encoding/json"
	"io"
)

// record is a compared example for other programs.
type record struct {
	example
	Gives  string `json:"gives"`
	Agrees bool   `json:"agrees"`
}

// writeJSON writes a line for each example.
func writeJSON(w io.Writer, list []compared) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	for _, c := range list {
		if err := out.Encode(record{c.example, c.gives, c.agrees}); err != nil {
			return err
		}
	}
	return nil
}

// writeCSV writes a line for each example, below one with the names of the columns.
func writeCSV(w io.Writer, list []compared) error {
	out := csv.NewWriter(w)
	if err := out.Write([]string{
		"id", "topic", "asks", "source", "year", "standing", "call", "published", "gives", "verdict", "why", "note",
	}); err != nil {
		return err
	}
	for _, c := range list {
		if err := out.Write([]string{
			c.ID, c.Topic, c.Asks, c.Source, c.Year, string(c.Standing), c.Call, c.Published, c.gives, c.verdict(), c.Differs, c.Note,
		}); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
