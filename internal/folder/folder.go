// Package folder writes the files of a sample program into a folder, all of them
// or none. Its messages speak of -force, which every sample program has.
package folder

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// File is a file to be written.
type File struct {
	Name  string // within the folder, or, with slashes, within folders in it, which are made
	Write func(io.Writer) error
}

// Write writes the files into the folder dir and returns their paths in the order
// of the files. It makes the folder if there is none, but not the one that it lies
// in. Other files in it are left alone.
//
// A file that is there already is an [*Error] that wraps [ErrTaken], unless replace
// is set. A folder that cannot be written is one that wraps the error of the
// operating system. The error of a [File] is returned as it is. After any error
// everything is as it was before, or the error says where the old file lies.
//
// Until all files are written they lie in a temporary folder of a name beginning
// with ".unfinished-", which only an interruption leaves behind.
func Write(dir string, files []File, replace bool) (paths []string, err error) {
	contents, err := makeAll(files)
	if err != nil {
		return nil, err
	}
	if dir == "" {
		return nil, &Error{Path: `""`, Problem: "is no folder", Want: `name one, such as "front"`, Err: fs.ErrInvalid}
	}
	dir = filepath.Clean(dir)
	there, err := check(dir, files, replace)
	if err != nil {
		return nil, err
	}
	// Moving is renaming, which needs the temporary folder on the same file system:
	// inside a folder that is there, beside one that is not.
	place := dir
	if !there {
		place = filepath.Dir(dir)
	}
	s, err := newStage(place)
	if err != nil {
		return nil, failed(dir, err)
	}
	defer s.remove()
	for i, f := range files {
		path := f.in(dir)
		if err := writeFile(f.in(s.fresh), contents[i]); err != nil {
			return nil, failed(path, err)
		}
		paths = append(paths, path)
	}
	if !there {
		err = s.become(dir)
	} else {
		err = s.moveInto(dir, files)
	}
	if err != nil {
		return nil, err
	}
	return paths, nil
}

// in returns the path of the file in a folder.
func (f File) in(dir string) string { return filepath.Join(dir, filepath.FromSlash(f.Name)) }

// writeFile writes a file and makes the folders that it lies in.
func writeFile(path string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		return err
	}
	return os.WriteFile(path, content, 0o666)
}

// makeAll makes the contents of all files, so that a file that cannot be made
// leaves the disk untouched.
func makeAll(files []File) ([][]byte, error) {
	var contents [][]byte
	for _, f := range files {
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			return nil, err
		}
		contents = append(contents, b.Bytes())
	}
	return contents, nil
}

// check reports whether the folder is there, and refuses what cannot be written
// or must not be replaced.
func check(dir string, files []File, replace bool) (there bool, err error) {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, checkPlace(dir)
	case err != nil:
		return false, failed(dir, err)
	case !info.IsDir():
		return false, &Error{Path: dir, Problem: "is no folder", Want: "name one, which need not exist yet", Err: fs.ErrExist}
	}
	for _, f := range files {
		path := f.in(dir)
		info, err := os.Lstat(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			return false, failed(path, err)
		case info.IsDir():
			return false, &Error{Path: path, Problem: "is a folder", Want: "move it away or name another folder to write into", Err: ErrTaken}
		case !replace:
			return false, &Error{Path: path, Problem: "is there already", Want: "name another folder, or replace the files with -force", Err: ErrTaken}
		}
	}
	return true, nil
}

// checkPlace refuses a new folder that would lie in none.
func checkPlace(dir string) error {
	place := filepath.Dir(dir)
	_, err := os.Stat(place)
	if errors.Is(err, fs.ErrNotExist) {
		return &Error{Path: dir, Problem: "there is no folder to make it in", Want: "make " + place + " first", Err: err}
	}
	return nil
}
