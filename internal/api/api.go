// Package api lists what the library packages export, a line for each symbol, so that a
// release can be compared with the one before. Its test holds the module to the lines in
// testdata/api: what stands there stays as it is, and what is new is listed.
package api

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// Lines returns the exported symbols of the packages below a tree, in the order of the
// alphabet: constants, variables, functions, types, their exported fields and methods, each
// with its type as it is written. What lies under internal, examples and testdata, commands
// and tests are not part of it.
func Lines(tree fs.FS) ([]string, error) {
	var lines []string
	err := fs.WalkDir(tree, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		switch base := path.Base(name); {
		case name != "." && (base[0] == '.' || base[0] == '_' || base == "testdata" || base == "internal" || base == "examples"):
			return fs.SkipDir
		}
		of, err := packageLines(tree, name)
		lines = append(lines, of...)
		return err
	})
	slices.Sort(lines)
	return slices.Compact(lines), err
}

// packageLines returns the lines of one package; none if the folder holds no Go files.
func packageLines(tree fs.FS, dir string) ([]string, error) {
	files, err := fs.Glob(tree, path.Join(dir, "*.go"))
	if err != nil {
		return nil, err
	}
	l := lister{pkg: dir, files: token.NewFileSet()}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := fs.ReadFile(tree, name)
		if err != nil {
			return nil, err
		}
		file, err := parser.ParseFile(l.files, name, src, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		if file.Name.Name == "main" {
			return nil, nil
		}
		for _, decl := range file.Decls {
			l.decl(decl)
		}
	}
	return l.lines, nil
}

type lister struct {
	pkg   string
	files *token.FileSet
	lines []string
}

func (l *lister) add(format string, args ...any) {
	l.lines = append(l.lines, "pkg "+l.pkg+", "+fmt.Sprintf(format, args...))
}

// text returns a node as it is written, in one line.
func (l *lister) text(node any) string {
	var b strings.Builder
	if err := printer.Fprint(&b, l.files, node); err != nil {
		return err.Error()
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

func (l *lister) decl(decl ast.Decl) {
	switch d := decl.(type) {
	case *ast.FuncDecl:
		l.function(d)
	case *ast.GenDecl:
		typed := "" // of a constant that goes on with iota
		for _, spec := range d.Specs {
			switch s := spec.(type) {
			case *ast.TypeSpec:
				l.typeSpec(s)
			case *ast.ValueSpec:
				if s.Type != nil {
					typed = " " + l.text(s.Type)
				} else if len(s.Values) > 0 {
					typed = ""
				}
				for _, name := range s.Names {
					if name.IsExported() {
						l.add("%s %s%s", d.Tok, name.Name, typed)
					}
				}
			}
		}
	}
}

func (l *lister) function(d *ast.FuncDecl) {
	if !d.Name.IsExported() {
		return
	}
	signature := strings.TrimPrefix(l.text(unnamed(d.Type)), "func")
	if d.Recv == nil {
		l.add("func %s%s", d.Name.Name, signature)
		return
	}
	receiver := l.text(d.Recv.List[0].Type)
	if name := strings.TrimPrefix(receiver, "*"); ast.IsExported(name) {
		l.add("method (%s) %s%s", receiver, d.Name.Name, signature)
	}
}

// unnamed returns a signature without the names of parameters and results, which may change.
func unnamed(f *ast.FuncType) *ast.FuncType {
	return &ast.FuncType{TypeParams: f.TypeParams, Params: types(f.Params), Results: types(f.Results)}
}

func types(list *ast.FieldList) *ast.FieldList {
	if list == nil {
		return nil
	}
	all := &ast.FieldList{}
	for _, field := range list.List {
		for range max(len(field.Names), 1) {
			all.List = append(all.List, &ast.Field{Type: field.Type})
		}
	}
	return all
}

func (l *lister) typeSpec(s *ast.TypeSpec) {
	if !s.Name.IsExported() {
		return
	}
	switch t := s.Type.(type) {
	case *ast.StructType:
		l.add("type %s struct", s.Name.Name)
		for _, field := range t.Fields.List {
			for _, name := range field.Names {
				if name.IsExported() {
					l.add("type %s struct, %s %s", s.Name.Name, name.Name, l.text(field.Type))
				}
			}
			if len(field.Names) == 0 {
				l.add("type %s struct, embedded %s", s.Name.Name, l.text(field.Type))
			}
		}
	case *ast.InterfaceType:
		l.add("type %s interface", s.Name.Name)
		for _, m := range t.Methods.List {
			text := l.text(m.Type)
			if f, ok := m.Type.(*ast.FuncType); ok && len(m.Names) > 0 {
				text = m.Names[0].Name + strings.TrimPrefix(l.text(unnamed(f)), "func")
			}
			l.add("type %s interface, %s", s.Name.Name, text)
		}
	default:
		equals := ""
		if s.Assign.IsValid() {
			equals = "= "
		}
		l.add("type %s %s%s", s.Name.Name, equals, l.text(s.Type))
	}
}

// Compare returns the lines that are gone or changed, and those that are new.
func Compare(before, after []string) (gone, added []string) {
	for _, line := range before {
		if !slices.Contains(after, line) {
			gone = append(gone, line)
		}
	}
	for _, line := range after {
		if !slices.Contains(before, line) {
			added = append(added, line)
		}
	}
	return gone, added
}
