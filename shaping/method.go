package shaping

// Method is how stitches go or come at an edge: Hold, BindOff, Fashioned or CastOn. The zero
// value is no method.
type Method uint8

// The methods.
const (
	// Hold leaves stitches out of the rows while they stay live: short rows,
	// partial knitting. It works at the end where a row ends.
	Hold Method = iota + 1
	// BindOff finishes stitches at the end where a row starts.
	BindOff
	// Fashioned moves up to three edge stitches by one needle, inwards for a
	// decrease and outwards for an increase, at either end of any row.
	Fashioned
	// CastOn adds stitches beside the edge at the end where a row starts.
	CastOn
)

var methodWords = words{"", "hold", "bindOff", "fashioned", "castOn"}

// IsValid reports whether m is one of the methods.
func (m Method) IsValid() bool { return m >= Hold && m <= CastOn }

// String returns the method's word in documents: "hold", "bindOff",
// "fashioned" or "castOn".
func (m Method) String() string { return methodWords.name("Method", uint8(m)) }

// AppendText appends the text of [Method.String]; it returns an error if m is not valid.
func (m Method) AppendText(b []byte) ([]byte, error) {
	return methodWords.append("method", b, uint8(m))
}

// MarshalText returns the text of [Method.String]; it returns an error if m is not valid.
func (m Method) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText reads the text of [Method.String] and leaves m as it was on an error.
func (m *Method) UnmarshalText(text []byte) error {
	v, err := methodWords.parse("method", text)
	if err == nil {
		*m = Method(v)
	}
	return err
}
