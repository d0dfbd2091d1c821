package shaping

import "fmt"

// Do is what an [Action] does. The zero value does nothing and is refused.
type Do uint8

// The actions. Which fields of an [Action] each of them uses is said there.
const (
	DoCastOn     Do = iota + 1 // new loops on all Needles; once, before row 1
	DoHold                     // Needles left unworked, their loops stay on them: on hold
	DoReturn                   // held Needles back into work
	DoWaste                    // Needles onto waste yarn: off, but live
	DoBindOff                  // Needles bound off
	DoCastOnEdge               // new loops on empty Needles beside the edge
	DoWrap                     // the yarn laid round the held needle Needles.First
	DoShift                    // up to three edge Needles moved by one, Toward a side
	DoFill                     // new loops on empty Needles inside the edge
	DoCarriage                 // the carriage put at Side without knitting, the yarn broken
	DoCounter                  // the row counter set to Counter
)

var doWords = words{
	"", "castOn", "hold", "return", "waste", "bindOff", "castOnEdge",
	"wrap", "shift", "fill", "carriage", "counter",
}

// IsValid reports whether d is one of the actions.
func (d Do) IsValid() bool { return d >= DoCastOn && d <= DoCounter }

// String returns the action's word in documents, such as "castOnEdge".
func (d Do) String() string { return doWords.name("Do", uint8(d)) }

// AppendText appends the text of [Do.String]; it returns an error if d is not valid.
func (d Do) AppendText(b []byte) ([]byte, error) { return doWords.append("action", b, uint8(d)) }

// MarshalText returns the text of [Do.String]; it returns an error if d is not valid.
func (d Do) MarshalText() ([]byte, error) { return d.AppendText(nil) }

// UnmarshalText reads the text of [Do.String] and leaves d as it was on an error.
func (d *Do) UnmarshalText(text []byte) error {
	v, err := doWords.parse("action", text)
	if err == nil {
		*d = Do(v)
	}
	return err
}

// Action is something done between rows. Which fields count depends on Do; the
// others are zero. Actions are comparable with ==.
type Action struct {
	Do       Do
	Needles  Span // all but DoCarriage and DoCounter; DoWrap has one needle
	Toward   Side // DoShift: the side the stitches move to
	Separate bool // DoBindOff: with a length of yarn of its own, anywhere
	Side     Side // DoCarriage
	Counter  int  // DoCounter: the reading that it is set to
}

// String returns the action in short, such as "hold R12-R14".
func (a Action) String() string {
	switch a.Do {
	case DoCarriage:
		return fmt.Sprintf("carriage %v", a.Side)
	case DoCounter:
		return fmt.Sprintf("counter %d", a.Counter)
	case DoShift:
		return fmt.Sprintf("shift %v toward %v", a.Needles, a.Toward)
	}
	text := fmt.Sprintf("%v %v", a.Do, a.Needles)
	if a.Separate {
		text += " with separate yarn"
	}
	return text
}
