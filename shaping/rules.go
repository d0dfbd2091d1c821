package shaping

import (
	"fmt"
	"math"
)

// Rules say at which rows stitches may go at an edge and how many at once. Rows
// count from 1 at the first row of the edge. The zero value allows any number at
// any row.
type Rules struct {
	Every int // steps stand only at rows Phase+1, Phase+1+Every, ...; 0 means 1
	Phase int // rows before the first allowed row
	Apart int // least distance in rows between two steps; 0 means 1
	Most  int // most stitches at once; 0 means any number
	Base  int // most stitches in the first allowed row, when larger than Most, or any number if Most is 0; 0 means that no base is named
	Plain int // rows at the end that are not shaped

	// Single are the rows for steps of one stitch where they differ, as when
	// several stitches are bound off and single ones decreased: then single
	// stitches go at these rows only, and two or more only at the rows above. The
	// zero value means the same rows for both.
	Single Beat
	// SeveralUntil is the last row for steps of two or more stitches; 0 means that they
	// go on as long as single ones.
	SeveralUntil int
	// Coming, if set, are the rules for stitches that come; nil means the same rules.
	Coming *Rules
}

// Beat is a regular choice of rows: Phase+1, Phase+1+Every, ... The zero value
// is not set.
type Beat struct {
	Every int // rows from one chosen row to the next; 0 means 1
	Phase int // rows before the first chosen one
}

// IsZero reports whether b is not set.
func (b Beat) IsZero() bool { return b == Beat{} }

// Allows reports whether row, counted from 1, is one of the chosen rows.
func (b Beat) Allows(row int) bool {
	return row > b.Phase && (row-1-b.Phase)%max(b.Every, 1) == 0
}

// largestRule bounds the numbers in Rules so that no arithmetic on rows overflows.
const largestRule = 1_000_000

// Validate returns an [*Error] if a number is negative or beyond a million, or
// if the rules for coming stitches have such rules of their own.
func (r Rules) Validate() error {
	for _, field := range [...]struct {
		name  string
		value int
	}{
		{"every", r.Every}, {"phase", r.Phase}, {"apart", r.Apart}, {"most", r.Most},
		{"base", r.Base}, {"plain", r.Plain}, {"severalUntil", r.SeveralUntil}, {"single.every", r.Single.Every}, {"single.phase", r.Single.Phase},
	} {
		if field.value < 0 || field.value > largestRule {
			return rangeError("rules: "+field.name, field.value, fmt.Sprintf("0 to %d", largestRule))
		}
	}
	if r.Coming != nil {
		if r.Coming.Coming != nil {
			return rangeError("rules: coming", 2, "rules for coming stitches have no such rules of their own")
		}
		return r.Coming.Validate()
	}
	return nil
}

// For returns the rules for a step of that many stitches: Coming, where it is
// set, for stitches that come (positive), and r itself otherwise.
func (r Rules) For(stitches int) Rules {
	if stitches > 0 && r.Coming != nil {
		return *r.Coming
	}
	return r
}

// BeatOf returns the rows for steps of that many stitches, whether they go or
// come; Every is at least 1. Only single stitches may have rows of their own.
func (r Rules) BeatOf(stitches int) Beat {
	beat := Beat{Every: r.Every, Phase: r.Phase}
	if (stitches == 1 || stitches == -1) && !r.Single.IsZero() {
		beat = r.Single
	}
	beat.Every = max(beat.Every, 1)
	return beat
}

// FirstRow returns the first row at which a step is allowed. A base of two or
// more stitches is the first step: nothing goes before its row.
func (r Rules) FirstRow() int {
	several, single := r.BeatOf(2).Phase+1, r.BeatOf(1).Phase+1
	switch {
	case r.Base > 1:
		return several
	case r.Most == 1 || (r.SeveralUntil > 0 && r.SeveralUntil < several):
		return single
	}
	return min(several, single)
}

// SizesAt returns the least and the most stitches that a step may move at row of
// an edge that is rows rows high; every number between them is allowed too. Both
// are 0 if no step may stand there, and most is [math.MaxInt] if any number may go.
func (r Rules) SizesAt(row, rows int) (least, most int) {
	first := r.FirstRow()
	if row < first || row > rows-r.Plain {
		return 0, 0
	}
	if r.BeatOf(2).Allows(row) && (r.SeveralUntil == 0 || row <= r.SeveralUntil) {
		least, most = 2, r.Most
		if most == 0 {
			most = math.MaxInt
		}
		if row == first {
			most = max(most, r.Base)
		}
	}
	if r.BeatOf(1).Allows(row) {
		least, most = 1, max(most, 1)
	}
	if most < least {
		return 0, 0
	}
	return least, most
}

// Check returns nil if the steps of an edge that is rows rows high obey the
// rules, and an [*Error] that names the first row that does not and the rule; it
// returns the error of [Rules.Validate] or [Schedule.Validate] if one is not sound.
func (r Rules) Check(s Schedule, rows int) error {
	if err := r.Validate(); err != nil {
		return err
	}
	if err := s.Validate(); err != nil {
		return err
	}
	before := 0
	for _, step := range s {
		rules := r.For(step.Stitches)
		if before > 0 && step.Row-before < rules.Apart {
			return notAt(step.Row, fmt.Sprintf("steps stand at least %d rows apart", rules.Apart))
		}
		before = step.Row
		if err := rules.allowsStep(step.Row, min(step.Stitches, -step.Stitches), rows); err != nil {
			return err
		}
	}
	return nil
}

// allowsStep takes a step by what it would move if it went: less than 0, so that
// even the least integer has one.
func (r Rules) allowsStep(row, stitches, rows int) error {
	if last := rows - r.Plain; row > last {
		return notAt(row, fmt.Sprintf("the last row that may be shaped is %d", last))
	}
	if first := r.FirstRow(); row < first {
		return notAt(row, fmt.Sprintf("the first row that may be shaped is %d", first))
	}
	if beat := r.BeatOf(stitches); !beat.Allows(row) {
		kind := "two stitches or more"
		if stitches == -1 {
			kind = "single stitches"
		}
		return notAt(row, fmt.Sprintf("%s may go at rows %d, %d, ...", kind, beat.Phase+1, beat.Phase+1+beat.Every))
	}
	if _, most := r.SizesAt(row, rows); stitches < -most {
		return notAt(row, fmt.Sprintf("%d stitches at once, at most %d may go", uint(-stitches), max(most, 1)))
	}
	return nil
}

// notAt is the error for a step that may not stand at row.
func notAt(row int, want string) error { return infeasible("step at row", fmt.Sprint(row), want) }

// RulesFor returns what a method allows at one edge of a panel whose first row
// starts at the side start:
//
//   - holding works where a row ends, so at rows that start at the other side;
//   - binding off and casting on work where a row starts;
//   - fashioned shaping works at any row, here one stitch at a time and not in
//     two neighbouring rows, which is common practice; in the hand on right-side
//     rows only, which are the odd rows. Panels in the hand must therefore start
//     at an odd row of the piece for these rules to hold as they are.
//
// The plain rows at the end and a base are the caller's to add. Where one of the four is not
// a method, side or place, as the zero value is not, the rules are not valid, and whoever is
// to follow them refuses them.
func RulesFor(m Method, edge, start Side, place Place) Rules {
	if !m.IsValid() || !edge.IsValid() || !start.IsValid() || !place.IsValid() {
		return Rules{Every: -1}
	}
	far := start != edge // the first row ends at this edge
	switch m {
	case Hold:
		return Rules{Every: 2, Phase: phase(far), Apart: 2}
	case BindOff, CastOn:
		return Rules{Every: 2, Phase: phase(!far), Apart: 2}
	}
	// Fashioned.
	if place == Hand {
		return Rules{Every: 2, Apart: 2, Most: 1}
	}
	return Rules{Every: 1, Apart: 2, Most: 1}
}

func phase(first bool) int {
	if first {
		return 0
	}
	return 1
}
