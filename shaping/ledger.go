package shaping

import "fmt"

// Ledger accounts for stitches: those that came equal those that went and those
// that are still there. The zero value accounts for no stitch.
type Ledger struct {
	CastOn    int `json:"castOn"`    // cast on at the start and at edges
	Increased int `json:"increased"` // new by fashioned increases
	Decreased int `json:"decreased"` // knitted together with a neighbour
	BoundOff  int `json:"boundOff"`  // finished
	Live      int `json:"live"`      // still open: on needles, on hold or on waste yarn
}

// Balance returns what came less what went and is left: 0 if every stitch is
// accounted for.
func (l Ledger) Balance() int {
	return l.CastOn + l.Increased - l.Decreased - l.BoundOff - l.Live
}

// Balances reports whether every stitch is accounted for.
func (l Ledger) Balances() bool { return l.Balance() == 0 }

// Add returns the sums of both ledgers, entry by entry.
func (l Ledger) Add(m Ledger) Ledger {
	return Ledger{
		CastOn:    l.CastOn + m.CastOn,
		Increased: l.Increased + m.Increased,
		Decreased: l.Decreased + m.Decreased,
		BoundOff:  l.BoundOff + m.BoundOff,
		Live:      l.Live + m.Live,
	}
}

// String returns the ledger as an equation, leaving out what is 0 beside the
// first and the last entry: "110 cast on = 12 decreased + 98 live".
func (l Ledger) String() string {
	s := fmt.Sprintf("%d cast on", l.CastOn)
	if l.Increased != 0 {
		s += fmt.Sprintf(" + %d increased", l.Increased)
	}
	s += " = "
	if l.Decreased != 0 {
		s += fmt.Sprintf("%d decreased + ", l.Decreased)
	}
	if l.BoundOff != 0 {
		s += fmt.Sprintf("%d bound off + ", l.BoundOff)
	}
	return s + fmt.Sprintf("%d live", l.Live)
}
