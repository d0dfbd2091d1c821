package plan

import (
	"errors"
	"fmt"
	"io"

	"example.com/walewise/shaping/sizes"
)

// SizesFormat is the format of the tables of bodies that are read and written here.
const SizesFormat = "walewise-sizes/1"

// bodiesForm has the keys of a table of bodies.
type bodiesForm struct {
	Format string       `json:"format"`
	Bodies []sizes.Body `json:"bodies"`
}

func (f *bodiesForm) check(n *node) error {
	err := sizes.Check(f.Bodies)
	e, ok := errors.AsType[*sizes.Error](err)
	if !ok {
		return err
	}
	// Say where the size stands whose value it is.
	for i, b := range f.Bodies {
		if b.Name == e.Size || e.Size == fmt.Sprintf("number %d", i+1) {
			return fault(joined(fmt.Sprintf("bodies[%d]", i), e.Key), e.Given, e.Want, err)
		}
	}
	return fault("bodies", e.Given, e.Want, err)
}

// ReadBodies reads a table of bodies, one object a size with the keys of [sizes.Body]. It
// returns a [*garment.Error] that wraps [sizes.ErrBodies] if the document is longer than
// [MaxBytes], is no table of bodies or has a key too few, too many or with a value that
// cannot be read, and in the cases of [sizes.Check]. That a garment can be made for them is
// not checked.
func ReadBodies(r io.Reader) ([]sizes.Body, error) {
	text, err := readBounded(r)
	if err != nil {
		return nil, sealed(err, sizes.ErrBodies)
	}
	return ParseBodies(text)
}

// ParseBodies is [ReadBodies] for a document in memory.
func ParseBodies(text []byte) ([]sizes.Body, error) {
	root, err := open(text, SizesFormat)
	if err != nil {
		return nil, sealed(err, sizes.ErrBodies)
	}
	var form bodiesForm
	if err := decode(root, &form); err != nil {
		return nil, sealed(err, sizes.ErrBodies)
	}
	return form.Bodies, nil
}

// WriteBodies writes a table of bodies, indented, with a line end after it. It writes
// nothing and returns the error of [ParseBodies] if the table could not be read back.
func WriteBodies(w io.Writer, bodies []sizes.Body) error {
	if err := sizes.Check(bodies); err != nil {
		return sealed(err, sizes.ErrBodies)
	}
	text, err := marshal(bodiesForm{SizesFormat, bodies})
	if err != nil {
		return sealed(err, sizes.ErrBodies)
	}
	if _, err := ParseBodies(text); err != nil {
		return err
	}
	return write(w, text)
}
