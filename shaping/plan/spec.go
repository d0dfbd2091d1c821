package plan

import (
	"fmt"
	"io"
	"unicode/utf8"

	"example.com/walewise/shaping/garment"
)

// SpecFormat is the format of the specs that are read and written here.
const SpecFormat = "walewise-spec/1"

// specForm has the keys of a spec.
type specForm struct {
	Format string `json:"format"`
	garment.Spec
}

func (s *specForm) check(*node) error {
	if err := checkTitle(s.Title); err != nil {
		return err
	}
	return checkGauge(s.GaugeSpec())
}

// checkTitle refuses a title that is too long.
func checkTitle(title string) error {
	if length := utf8.RuneCountInString(title); length > MaxTitle {
		return fault("title", fmt.Sprintf("of %d characters", length), fmt.Sprintf("at most %d", MaxTitle), nil)
	}
	return checkText("title", title)
}

// checkText refuses what would be another text once it is written and read.
func checkText(path, text string) error {
	if !utf8.ValidString(text) {
		return fault(path, quoted(text), "not UTF-8", nil)
	}
	return nil
}

// ReadSpec reads a spec. It returns a [*garment.Error] that wraps
// [garment.ErrSpec] if the document is longer than [MaxBytes], is not a spec or
// has a key too few, too many or with a value that cannot be read. That the
// measurements fit together is not checked.
func ReadSpec(r io.Reader) (garment.Spec, error) {
	text, err := readBounded(r)
	if err != nil {
		return garment.Spec{}, sealed(err, garment.ErrSpec)
	}
	return ParseSpec(text)
}

// ParseSpec is [ReadSpec] for a document in memory.
func ParseSpec(text []byte) (garment.Spec, error) {
	root, err := open(text, SpecFormat)
	if err != nil {
		return garment.Spec{}, sealed(err, garment.ErrSpec)
	}
	var form specForm
	if err := decode(root, &form); err != nil {
		return garment.Spec{}, sealed(err, garment.ErrSpec)
	}
	return form.Spec, nil
}

// WriteSpec writes a spec, indented, with a line end after it. It writes nothing
// and returns the error of [ParseSpec] if the spec could not be read back.
func WriteSpec(w io.Writer, s garment.Spec) error {
	text, err := marshal(specForm{Format: SpecFormat, Spec: s})
	if err != nil {
		return sealed(err, garment.ErrSpec)
	}
	read, err := ParseSpec(text)
	if err != nil {
		return err
	}
	// A length of zero that was computed leaves an empty object behind; one that
	// was read does not.
	if text, err = marshal(specForm{Format: SpecFormat, Spec: read}); err != nil {
		return sealed(err, garment.ErrSpec)
	}
	return write(w, text)
}
