package plan

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

type kind uint8

const (
	object kind = iota + 1
	list
	letters
	number
	boolean
)

// node is one value of a document and where it stands.
type node struct {
	parent *node
	key    string // in an object
	index  int    // in a list
	kind   kind
	text   string  // of a text, number or boolean
	items  []*node // of an object or list, in the order of the document
}

// at returns the value of a key of an object, nil if it has none.
func (n *node) at(key string) *node {
	for _, item := range n.items {
		if item.key == key {
			return item
		}
	}
	return nil
}

var plainKey = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]{0,39}$`)

// path names the place of the value, such as "pieces[0].rows[3].knit".
func (n *node) path() string {
	if n.parent == nil {
		return ""
	}
	before := n.parent.path()
	if n.parent.kind == list {
		return fmt.Sprintf("%s[%d]", before, n.index)
	}
	return joined(before, n.key)
}

// joined names a key of the object at path.
func joined(path, key string) string {
	if !plainKey.MatchString(key) {
		key = quoted(key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// given says the value in a message.
func (n *node) given() string {
	switch n.kind {
	case object:
		return "{...}"
	case list:
		return "[...]"
	case letters:
		return quoted(n.text)
	}
	return short(n.text)
}

// fault returns an error about the value; cause may be nil.
func (n *node) fault(want string, cause error) error {
	return fault(n.place(), n.given(), want, cause)
}

// parse reads JSON that is well formed into a tree. It refuses repeated keys,
// null, and values nested too deeply.
func parse(text []byte) (*node, error) {
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	p := parser{decoder}
	root := &node{}
	return root, p.value(root, 0)
}

type parser struct{ decoder *json.Decoder }

// value reads the next value into n.
func (p parser) value(n *node, depth int) error {
	token, err := p.decoder.Token()
	if err != nil {
		return n.fault("cannot be read", err)
	}
	switch token := token.(type) {
	case json.Delim:
		if depth == maxDepth {
			return fault(shortened(n.path()), "", fmt.Sprintf("nested deeper than %d levels", maxDepth), nil)
		}
		if token == '{' {
			n.kind = object
			return p.object(n, depth+1)
		}
		n.kind = list
		return p.list(n, depth+1)
	case string:
		n.kind, n.text = letters, token
	case json.Number:
		n.kind, n.text = number, token.String()
	case bool:
		n.kind, n.text = boolean, fmt.Sprint(token)
	default:
		return fault(n.place(), "null", "null is no value: leave the key out", nil)
	}
	return nil
}

func (p parser) object(n *node, depth int) error {
	seen := map[string]bool{}
	for p.decoder.More() {
		token, err := p.decoder.Token()
		if err != nil {
			return n.fault("cannot be read", err)
		}
		key, _ := token.(string)
		if seen[key] {
			return fault(joined(n.path(), key), "", "the key stands twice", nil)
		}
		seen[key] = true
		item := &node{parent: n, key: key}
		if err := p.value(item, depth); err != nil {
			return err
		}
		n.items = append(n.items, item)
	}
	_, err := p.decoder.Token()
	return err
}

func (p parser) list(n *node, depth int) error {
	for p.decoder.More() {
		item := &node{parent: n, index: len(n.items)}
		if err := p.value(item, depth); err != nil {
			return err
		}
		n.items = append(n.items, item)
	}
	_, err := p.decoder.Token()
	return err
}

// place returns the path for a message.
func (n *node) place() string {
	if path := n.path(); path != "" {
		return path
	}
	return "document"
}

// shortened cuts a path that is too long for a message.
func shortened(path string) string {
	const longest = 120
	if len(path) > longest {
		return strings.ToValidUTF8(path[:longest], "") + "..."
	}
	return path
}

// allow refuses keys of an object that are not among the known ones.
func (n *node) allow(known []string) error {
	for _, item := range n.items {
		if slices.Contains(known, item.key) {
			continue
		}
		if near := nearest(item.key, known); near != "" {
			return fault(item.path(), "", fmt.Sprintf("unknown key, did you mean %q?", near), nil)
		}
		return fault(item.path(), "", "unknown key, the keys here are "+strings.Join(known, ", "), nil)
	}
	return nil
}
