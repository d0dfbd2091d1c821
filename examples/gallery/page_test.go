package main

import (
	"encoding/xml"
	"errors"
	"html"
	"io"
	"regexp"
	"strings"
	"testing"
)

var (
	ids     = regexp.MustCompile(` id="([^"]*)"`)
	refs    = regexp.MustCompile(` (?:href="#|aria-labelledby=")([^"]*)"`)
	labels  = regexp.MustCompile(` role="region" tabindex="0" aria-label="([^"]*)"`)
	svgs    = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	heads   = regexp.MustCompile(`<h([1-6])`)
	outside = regexp.MustCompile(`<script|<link|<img| src=| on[a-z]+=|url\(|@import|https?:`)
)

// firsts returns the first group of every match.
func firsts(r *regexp.Regexp, text string) []string {
	var found []string
	for _, m := range r.FindAllStringSubmatch(text, -1) {
		found = append(found, m[1])
	}
	return found
}

// Names are found by what refers to them, each once.
func TestNamesOnPage(t *testing.T) {
	page := printed(t)
	is := map[string]bool{}
	for _, id := range firsts(ids, page) {
		if is[id] {
			t.Errorf("id %q stands twice", id)
		}
		is[id] = true
	}
	for _, list := range firsts(refs, page) {
		for ref := range strings.FieldsSeq(list) {
			if !is[ref] {
				t.Errorf("nothing is called %q", ref)
			}
		}
	}
	said := map[string]bool{}
	for _, label := range firsts(labels, page) {
		if said[label] {
			t.Errorf("two regions are called %q", label)
		}
		said[label] = true
	}
	const regions = 4 // of an example
	if want := regions * len(all()); len(said) != want {
		t.Errorf("%d regions, want %d", len(said), want)
	}
}

func TestHeadingsInOrder(t *testing.T) {
	page := printed(t)
	if n := strings.Count(page, "<h1"); n != 1 {
		t.Errorf("%d first headings", n)
	}
	last := 0
	for _, level := range firsts(heads, page) {
		at := int(level[0] - '0')
		if at > last+1 {
			t.Errorf("h%d after h%d", at, last)
		}
		last = at
	}
}

// The page needs nothing from elsewhere. The name space of SVG is no address.
func TestPageIsAlone(t *testing.T) {
	page := strings.ReplaceAll(printed(t), `xmlns="http://www.w3.org/2000/svg"`, "")
	if found := outside.FindString(page); found != "" {
		t.Errorf("the page has %q", found)
	}
}

func TestChartsAreWellFormed(t *testing.T) {
	inPage := svgs.FindAllString(printed(t), -1)
	if len(inPage) != len(all()) {
		t.Errorf("%d charts on the page, want %d", len(inPage), len(all()))
	}
	for _, e := range all() {
		inPage = append(inPage, printed(t, "-only", e.name, "-as", "svg"))
	}
	for _, svg := range inPage {
		d := xml.NewDecoder(strings.NewReader(svg))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("%v in %.200s", err, svg)
			}
		}
	}
}

// Whatever the tests of numbers look at stands on the page.
func TestPageHasAllNumbers(t *testing.T) {
	page := html.UnescapeString(printed(t))
	for _, s := range shownAll(t) {
		_, article, _ := strings.Cut(page, `<article aria-labelledby="`+s.Name+`"`)
		article, _, _ = strings.Cut(article, "</article>")
		has := func(texts ...string) {
			t.Helper()
			for _, text := range texts {
				if text != "" && !strings.Contains(article, ">"+text+"<") {
					t.Errorf("%s: %q is not on the page", s.Name, text)
				}
			}
		}
		has(s.Title, s.Asks, s.Look, strings.TrimSpace(s.Ways.Begins+" "+s.Ways.Allowed), s.Ways.Chosen)
		for _, sum := range s.Sums {
			has(sum.What, sum.By, sum.Exactly, sum.Chosen, sum.Is, sum.Why)
		}
		for _, w := range s.Ways.List {
			has(w.Words, w.Shorthand, w.Area, w.Deviation)
		}
		for _, f := range s.Figures {
			has(f.What, f.Is, f.Beside)
		}
	}
}
