package gauge

import (
	"fmt"
	"math/big"
)

// Part is one of several counts that must add up when they are whole.
type Part struct {
	Name  string
	Want  Count
	Times int      // how many equal parts of this kind there are; below 1 means 1
	Grid  Rounding // the whole numbers allowed; its direction does not count
	Least int      // the smallest allowed
}

// Rounded is a part made whole.
type Rounded struct {
	Name  string
	Times int
	Whole int
	Off   Count // Whole less what was wanted
}

const (
	mostParts = 16
	mostTotal = 1_000_000
)

// RoundTogether makes the parts whole so that they add up to total, each counted
// Times times. No part moves by more than one from what was wanted if that can be,
// else by no more than two, and so on; among the choices left it takes the one with
// the least sum of relative differences |whole - wanted| / wanted over all parts,
// copies counted (the plain difference for a wanted 0), and among equals the one
// whose first part is smaller. The answers are in the order of the parts.
//
// It returns an [*Error] that wraps [ErrParity] if no whole numbers near enough add
// up, and [ErrRange] for more than 16 parts or a total beyond a million. Time grows
// with the choices within the distance, a handful for each part.
func RoundTogether(total int, parts []Part) ([]Rounded, error) {
	if len(parts) == 0 || len(parts) > mostParts {
		return nil, &Error{Field: "parts", Given: fmt.Sprint(len(parts)), Want: fmt.Sprintf("1 to %d", mostParts), Err: ErrRange}
	}
	if total < -mostTotal || total > mostTotal {
		return nil, &Error{Field: "total", Given: fmt.Sprint(total), Want: fmt.Sprintf("at most %d", mostTotal), Err: ErrRange}
	}
	// Far enough for one part to make up for what the others cannot.
	const farthest = 64
	for distance := 1; distance <= farthest; distance *= 2 {
		for d := distance; d < 2*distance; d++ {
			s := search{parts: parts, whole: make([]int, len(parts))}
			if s.prepare(d); s.try(0, total, new(big.Rat)) {
				return s.rounded(), nil
			}
		}
	}
	return nil, &Error{
		Field: "total", Given: fmt.Sprint(total),
		Want: "no whole numbers near the parts wanted add up to it: check odd and even", Err: ErrParity,
	}
}

// search looks for the best whole numbers within a distance.
type search struct {
	parts   []Part
	choices [][]choice
	least   []int // the smallest and largest sum of the parts from i on
	most    []int
	whole   []int
	best    []int
	cost    *big.Rat
}

type choice struct {
	whole int
	cost  *big.Rat
}

func (s *search) prepare(distance int) {
	s.choices = make([][]choice, len(s.parts))
	s.least, s.most = make([]int, len(s.parts)+1), make([]int, len(s.parts)+1)
	for i := len(s.parts) - 1; i >= 0; i-- {
		p := s.parts[i]
		low := p.Want.Sub(Whole(distance)).Round(Rounding{Direction: Up})
		high := p.Want.Add(Whole(distance)).Round(Rounding{Direction: Down})
		for n := max(low, p.Least); n <= high; n++ {
			if p.Grid.Allows(n) {
				s.choices[i] = append(s.choices[i], choice{n, p.cost(n)})
			}
		}
		if c := s.choices[i]; len(c) > 0 {
			s.least[i] = s.least[i+1] + p.times()*c[0].whole
			s.most[i] = s.most[i+1] + p.times()*c[len(c)-1].whole
		}
	}
}

func (p Part) times() int { return max(p.Times, 1) }

// cost returns the relative difference of n from what is wanted, all copies.
func (p Part) cost(n int) *big.Rat {
	cost := Whole(n).Sub(p.Want).Abs().rat()
	if p.Want.Sign() != 0 {
		cost = new(big.Rat).Quo(cost, p.Want.Abs().rat())
	}
	return new(big.Rat).Mul(cost, new(big.Rat).SetInt64(int64(p.times())))
}

// try chooses the parts from i on so that they add up to rest; it reports
// whether anything was found.
func (s *search) try(i, rest int, cost *big.Rat) bool {
	if s.cost != nil && cost.Cmp(s.cost) >= 0 {
		return false
	}
	if i == len(s.parts) {
		if rest != 0 {
			return false
		}
		s.best, s.cost = append(s.best[:0], s.whole...), cost
		return true
	}
	if rest < s.least[i] || rest > s.most[i] {
		return false
	}
	found := false
	for _, c := range s.choices[i] {
		s.whole[i] = c.whole
		if s.try(i+1, rest-s.parts[i].times()*c.whole, new(big.Rat).Add(cost, c.cost)) {
			found = true
		}
	}
	return found
}

func (s *search) rounded() []Rounded {
	rounded := make([]Rounded, len(s.parts))
	for i, p := range s.parts {
		rounded[i] = Rounded{Name: p.Name, Times: p.times(), Whole: s.best[i], Off: Whole(s.best[i]).Sub(p.Want)}
	}
	return rounded
}
