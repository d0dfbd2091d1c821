package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// What the margin on yarn is for.
const marginCovers = "the cast on, seams, tails and what is ravelled"

// yarn writes how much yarn the pieces take, if the swatches say what they took.
func (s *setWriter) yarn(set garment.Set) {
	y := s.yarnTable(set)
	if y.Note == "" {
		return
	}
	s.heading("Yarn")
	s.para("  ", y.Note)
	if len(y.Rows) == 0 {
		return
	}
	name := 0
	for _, row := range y.Rows {
		name = max(name, len(row[0]))
	}
	s.blank()
	for _, row := range append([][]string{y.Heads}, y.Rows...) {
		text := fmt.Sprintf("  %-*s %8s", name, row[0], row[1])
		for _, amount := range row[2:] {
			text += fmt.Sprintf(" %9s", amount)
		}
		s.line("%s", text)
	}
	if y.Balls != "" {
		s.blank()
		s.para("  ", y.Balls)
	}
}

// yarnTable is how much yarn the pieces take: nothing where nothing is known of it, a note
// alone where it cannot be said.
type yarnTable struct {
	Note  string
	Heads []string
	Rows  [][]string // what it is for, loops, amounts
	Balls string
}

func (s *setWriter) yarnTable(set garment.Set) yarnTable {
	first := s.pieces[0]
	y, ok := set.Yarn()
	switch {
	case !ok && first.piece.Spec.Yarn != nil:
		return yarnTable{Note: "How much is needed is not known: weigh the swatch, or measure the yarn in it, and give its grams or metres."}
	case !ok:
		return yarnTable{}
	}
	bands := "Bands knitted on later are not counted"
	if len(set.Bands) > 0 {
		bands = "Bands are counted as if they were knitted like the pieces"
	}
	table := yarnTable{
		Note:  "By the loops of the cloth and what those of the swatch took. " + oneline.Capital(marginCovers) + " are no loops: the margin is for them. " + bands + ", waste yarn is not.",
		Heads: []string{"", "loops"},
		Balls: first.balls(y),
	}
	columns := first.columns(y.Total)
	for _, c := range columns {
		table.Heads = append(table.Heads, c.head)
	}
	add := func(of, loops string, use garment.YarnUse) {
		row := []string{of, loops}
		for _, c := range columns {
			row = append(row, c.cell(use))
		}
		table.Rows = append(table.Rows, row)
	}
	for _, use := range y.Uses {
		add(use.Of, fmt.Sprint(use.Loops), use)
	}
	add("in all", fmt.Sprint(y.Total.Loops), y.Total)
	add("and "+percent(y.Margin)+" more", "", y.WithMargin)
	return table
}

// balls says how many balls are needed, if the spec says what a ball is.
func (s *writer) balls(y garment.Yarn) string {
	switch ball := s.ball(y.Ball); {
	case ball == "":
		return ""
	case y.Balls == 0:
		return fmt.Sprintf("How many balls of %s that is cannot be said: give grams of both ball and swatch, or metres of both.", ball)
	case y.Balls == 1:
		return fmt.Sprintf("With the margin that is %s.", s.ballCount(y))
	}
	return fmt.Sprintf("With the margin that is %s; take them of one dye lot.", s.ballCount(y))
}

// ballCount says how many balls of what size are needed.
func (s *writer) ballCount(y garment.Yarn) string {
	if y.Balls == 1 {
		return "1 ball of " + s.ball(y.Ball)
	}
	return fmt.Sprintf("%d balls of %s", y.Balls, s.ball(y.Ball))
}

// ball says what one ball has, nothing if that is not known.
func (s *writer) ball(b garment.Ball) string {
	one := garment.YarnUse{Grams: b.Grams, Metres: b.Metres}
	return s.amounts(one, " and ", func(c column) string { return plainNumber(c.of(one)) })
}

// amount says how much yarn that is.
func (s *writer) amount(use garment.YarnUse) string {
	return s.amounts(use, " or ", func(c column) string { return c.cell(use) })
}

// amounts says an amount in each way in which it is known.
func (s *writer) amounts(use garment.YarnUse, between string, number func(column) string) string {
	var parts []string
	for _, c := range s.columns(use) {
		parts = append(parts, number(c)+" "+c.short)
	}
	return strings.Join(parts, between)
}

// yarnText says how much yarn the piece takes, nothing if the swatches do not say it.
func (s *writer) yarnText() string {
	y, ok := s.piece.Yarn()
	if !ok {
		return ""
	}
	return fmt.Sprintf("Yarn: %s for the %d loops of the piece; %s with %s more for %s.",
		s.amount(y.Total), y.Total.Loops, s.amount(y.WithMargin), percent(y.Margin), marginCovers)
}

// column is one of the ways to measure yarn.
type column struct {
	head, short string
	places      int32
	of          func(garment.YarnUse) decimal.Decimal
}

func (c column) cell(use garment.YarnUse) string { return c.of(use).StringFixed(c.places) }

// columns returns the ways in which an amount of yarn is known: weighed to a tenth of a
// gram, measured to a metre, or to a yard where lengths are in inches.
func (s *writer) columns(known garment.YarnUse) []column {
	var list []column
	if known.Grams.Sign() > 0 {
		list = append(list, column{"grams", "g", 1, func(u garment.YarnUse) decimal.Decimal { return u.Grams }})
	}
	if known.Metres.Sign() > 0 {
		metres := column{"metres", "m", 0, func(u garment.YarnUse) decimal.Decimal { return u.Metres }}
		if s.piece.Spec.Units == gauge.Inch {
			metres = column{"yards", "yd", 0, func(u garment.YarnUse) decimal.Decimal { return yards(u.Metres) }}
		}
		list = append(list, metres)
	}
	return list
}

// yards returns metres in whole yards of 0.9144 m (international yard, 1959).
func yards(metres decimal.Decimal) decimal.Decimal {
	return metres.DivRound(decimal.New(9144, -4), 0)
}

func percent(d decimal.Decimal) string { return plainNumber(d) + " %" }

// plainNumber returns a number without zeros at its end.
func plainNumber(d decimal.Decimal) string {
	text := d.StringFixed(max(-d.Exponent(), 0))
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}
