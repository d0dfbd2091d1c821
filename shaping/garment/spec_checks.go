package garment

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// Checks say what becomes of a check between pieces that fails.
type Checks struct {
	Shoulders Severity `json:"shoulders,omitzero"` // default an error
	Sides     Severity `json:"sides,omitzero"`     // default an error
	Fronts    Severity `json:"fronts,omitzero"`    // two against each other and the back; default an error
	Armholes  Severity `json:"armholes,omitzero"`  // against the sleeves; default a warning
	Neck      Severity `json:"neck,omitzero"`      // against the head; default a warning
	Cuff      Severity `json:"cuff,omitzero"`      // against the hand; default a warning
	Bed       Severity `json:"bed,omitzero"`       // against the pieces; default an error
}

// Severity is what a failed check is. The zero value leaves it open.
type Severity uint8

// The severities.
const (
	AsWarning Severity = iota + 1 // told, and planned all the same
	AsError                       // refused
)

var severityWords = [...]string{"", "warning", "error"}

// IsValid reports whether s is one of the severities.
func (s Severity) IsValid() bool { return s == AsWarning || s == AsError }

// Or returns s, and def if it is left open.
func (s Severity) Or(def Severity) Severity {
	if s == 0 {
		return def
	}
	return s
}

// String returns "warning" or "error".
func (s Severity) String() string {
	if s.IsValid() {
		return severityWords[s]
	}
	return "no severity"
}

// MarshalText returns "warning" or "error".
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "warning" or "error" and leaves s as it was on an error.
func (s *Severity) UnmarshalText(text []byte) error {
	for v, word := range severityWords {
		if v > 0 && word == string(text) {
			*s = Severity(v)
			return nil
		}
	}
	return &Error{Given: quoted(string(text)), Want: "warning or error", Err: ErrSpec}
}

// checkChecks refuses severities that are none, and edges that stretch too far.
func (s Spec) checkChecks() error {
	c := s.Checks
	for _, check := range []struct {
		field string
		Severity
	}{
		{"checks.shoulders", c.Shoulders}, {"checks.sides", c.Sides}, {"checks.fronts", c.Fronts}, {"checks.armholes", c.Armholes},
		{"checks.neck", c.Neck}, {"checks.cuff", c.Cuff}, {"checks.bed", c.Bed},
	} {
		if check.Severity != 0 && !check.IsValid() {
			return &Error{Field: check.field, Given: check.String(), Want: "warning or error", Err: ErrSpec}
		}
	}
	if err := checkStretch("neck.stretch", s.Neck.Stretch); err != nil || s.Sleeve == nil {
		return err
	}
	return checkStretch("sleeve.stretch", s.Sleeve.Stretch)
}

// mostStretch is the greatest stretch of an edge, in percent.
const mostStretch = 200

func checkStretch(field string, percent *decimal.Decimal) error {
	if percent != nil && (percent.Exponent() < -farthest || percent.Exponent() > farthest) {
		return &Error{Field: field, Want: "too many digits", Err: ErrSpec}
	}
	if percent == nil || (percent.Sign() >= 0 && percent.Cmp(decimal.NewFromInt(mostStretch)) <= 0) {
		return nil
	}
	return &Error{Field: field, Given: short(percent.String()), Want: fmt.Sprintf("percent, 0 to %d", mostStretch), Err: ErrSpec}
}
