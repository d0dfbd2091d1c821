package main

import (
	"bytes"
	_ "embed"
	"html/template"
	"io"

	"example.com/walewise/shaping/draw"
)

//go:embed page.gohtml
var pageText string

//go:embed page.css
var pageStyle string

var pageTemplate = template.Must(template.New("page").Funcs(template.FuncMap{
	"style":   func() template.CSS { return template.CSS(pageStyle) },
	"phrases": inPhrases,
}).Parse(pageText))

// writePage writes the examples as a page that needs no other file.
func writePage(w io.Writer, groups []shownGroup) error {
	return pageTemplate.Execute(w, groups)
}

// Chart returns the chart as a part of the page.
func (s shown) Chart() (template.HTML, error) {
	var svg bytes.Buffer
	err := draw.Chart(&svg, draw.Look{Inline: true, Folded: true, ID: s.Name + "-chart"}, s.piece)
	return template.HTML(svg.String()), err
}
