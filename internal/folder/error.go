package folder

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// ErrTaken: something of the name of a file is there already.
var ErrTaken = errors.New("already there")

// Error says why nothing was written, in one line.
type Error struct {
	Path    string // of the folder, or of a file in it
	Problem string
	Want    string // what would work
	Err     error
}

func (e *Error) Error() string { return fmt.Sprintf("%s: %s: %s", e.Path, e.Problem, e.Want) }

// Unwrap returns ErrTaken or the error of the operating system.
func (e *Error) Unwrap() error { return e.Err }

// failed returns the error of the operating system about a path that the user
// knows, without the names of temporary files.
func failed(path string, err error) error {
	return &Error{
		Path: path, Problem: because("cannot be written", err),
		Want: "name a folder that you may write to and that has room", Err: err,
	}
}

// because returns a problem with the cause that lies within an error of package os.
func because(problem string, err error) string {
	if e, ok := errors.AsType[*fs.PathError](err); ok {
		err = e.Err
	}
	if e, ok := errors.AsType[*os.LinkError](err); ok {
		err = e.Err
	}
	return fmt.Sprintf("%s (%v)", problem, err)
}
