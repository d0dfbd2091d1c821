package svgw

import "bytes"

// Path is path data in the making: subpaths start at absolute places and go on in relative
// steps, which is short. The zero value is an empty path.
type Path struct {
	text []byte
	x, y Number
}

// Move starts a subpath.
func (p *Path) Move(x, y Number) *Path {
	p.x, p.y = x, y
	return p.command('M', x, y)
}

// Line draws a line to a point.
func (p *Path) Line(x, y Number) *Path {
	dx, dy := x-p.x, y-p.y
	p.x, p.y = x, y
	switch {
	case dx == 0 && dy == 0:
		return p
	case dx == 0:
		return p.command('v', dy)
	case dy == 0:
		return p.command('h', dx)
	}
	return p.command('l', dx, dy)
}

// Right draws a level line by so much, to the left if it is less than 0.
func (p *Path) Right(by Number) *Path { return p.Line(p.x+by, p.y) }

// Down draws an upright line by so much, up if it is less than 0.
func (p *Path) Down(by Number) *Path { return p.Line(p.x, p.y+by) }

// Close closes the subpath. The next one starts with Move.
func (p *Path) Close() *Path { return p.command('z') }

// Box draws a rectangle.
func (p *Path) Box(x, y, width, height Number) *Path {
	return p.Move(x, y).Right(width).Down(height).Right(-width).Close()
}

// IsEmpty reports whether nothing is drawn.
func (p *Path) IsEmpty() bool { return len(p.text) == 0 }

// String returns the path data.
func (p *Path) String() string { return string(p.text) }

func (p *Path) command(letter byte, numbers ...Number) *Path {
	p.text = append(p.text, letter)
	for i, n := range numbers {
		if i > 0 && n >= 0 {
			p.text = append(p.text, ' ')
		}
		p.text = n.appendShort(p.text)
	}
	return p
}

// appendShort appends the number without a 0 before its point.
func (n Number) appendShort(b []byte) []byte {
	from := len(b)
	b = n.append(b)
	if n > -1000 && n < 1000 && n != 0 {
		if i := bytes.IndexByte(b[from:], '0'); i >= 0 && i <= 1 {
			b = append(b[:from+i], b[from+i+1:]...)
		}
	}
	return b
}
