package curve

import "strconv"

// segment is what one command of a path draws.
type segment interface {
	// pieces appends the pieces, and reports whether y falls nowhere.
	pieces(to []piece) ([]piece, bool)
	// length returns the length along the segment.
	length() float64
	// stretched returns the segment in another frame.
	stretched(f frame) segment
	// addTo writes the command that leads from the start of the segment to its end.
	addTo(p *pathText)
}

// frame stretches and then moves.
type frame struct{ xScale, yScale, xMove, yMove float64 }

func (f frame) x(x float64) float64 { return f.xMove + float64(f.xScale*x) }
func (f frame) y(y float64) float64 { return f.yMove + float64(f.yScale*y) }

// pathText is path data as it is written: coordinates in thousandths of a millimetre,
// written in millimetres and downwards from the height.
type pathText struct {
	text   []byte
	height float64
}

func (p *pathText) command(letter byte) {
	if len(p.text) > 0 {
		p.text = append(p.text, ' ')
	}
	p.text = append(p.text, letter)
}

func (p *pathText) point(x, y float64) {
	p.number(round(x))
	p.number(round(p.height - y))
}

// number writes thousandths.
func (p *pathText) number(n int64) {
	p.text = append(p.text, ' ')
	if n < 0 {
		p.text = append(p.text, '-')
		n = -n
	}
	p.text = strconv.AppendInt(p.text, n/1000, 10)
	if n %= 1000; n > 0 {
		p.text = append(p.text, '.', byte('0'+n/100), byte('0'+n/10%10), byte('0'+n%10))
		for p.text[len(p.text)-1] == '0' {
			p.text = p.text[:len(p.text)-1]
		}
	}
}

func (p *pathText) flag(set bool) {
	if set {
		p.text = append(p.text, " 1"...)
	} else {
		p.text = append(p.text, " 0"...)
	}
}
