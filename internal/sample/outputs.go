package sample

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/internal/folder"
)

// outputAs returns the output of the given form.
func (p Program[T]) outputAs(form string) (Output[T], bool) {
	for _, o := range p.Outputs {
		if o.Form == form {
			return o, true
		}
	}
	return Output[T]{}, false
}

// writeFolder writes what is planned into a folder in every form and prints the paths.
func (p Program[T]) writeFolder(w io.Writer, planned T, dir string, replace bool) error {
	var files []folder.File
	for _, output := range p.Outputs {
		if output.File == "" {
			continue
		}
		files = append(files, folder.File{
			Name:  output.File,
			Write: func(w io.Writer) error { return output.Write(w, planned) },
		})
	}
	if p.Beside != nil {
		files = append(files, p.Beside(planned)...)
	}
	paths, err := folder.Write(dir, files, replace)
	for _, path := range paths {
		fmt.Fprintln(w, path)
	}
	return err
}

// formNames lists the forms for a message.
func (p Program[T]) formNames() string {
	return p.listed("or", func(o Output[T]) string { return o.Form })
}

// fileNames lists the files for a message.
func (p Program[T]) fileNames() string {
	names := p.listed("and", func(o Output[T]) string { return o.File })
	if p.BesideNames != "" {
		names += ", " + p.BesideNames
	}
	return names
}

// listed lists the outputs by one of their names: "a, b or c".
func (p Program[T]) listed(last string, name func(Output[T]) string) string {
	var names []string
	for _, o := range p.Outputs {
		if text := name(o); text != "" {
			names = append(names, text)
		}
	}
	n := len(names) - 1
	return fmt.Sprintf("%s %s %s", strings.Join(names[:n], ", "), last, names[n])
}
