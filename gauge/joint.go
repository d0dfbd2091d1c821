package gauge

import (
	"fmt"
	"math/big"
	"sort"
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
// It returns an [*Error] that wraps [ErrParity] if no whole numbers within 128 of the
// parts wanted add up, and [ErrRange] for more than 16 parts or a total, a wanted
// number or a Times beyond a million. Time grows with the number of different sums
// that the parts can make within the distance.
func RoundTogether(total int, parts []Part) ([]Rounded, error) {
	if len(parts) == 0 || len(parts) > mostParts {
		return nil, &Error{Field: "parts", Given: fmt.Sprint(len(parts)), Want: fmt.Sprintf("1 to %d", mostParts), Err: ErrRange}
	}
	if total < -mostTotal || total > mostTotal {
		return nil, &Error{Field: "total", Given: fmt.Sprint(total), Want: fmt.Sprintf("at most %d", mostTotal), Err: ErrRange}
	}
	for _, p := range parts {
		if p.Want.Abs().Cmp(Whole(mostTotal)) > 0 {
			return nil, &Error{Field: "part " + quoted(p.Name), Given: fmt.Sprint(p.Want.Round(Rounding{})), Want: fmt.Sprintf("at most %d", mostTotal), Err: ErrRange}
		}
		if p.Times > mostTotal {
			return nil, &Error{Field: "part " + quoted(p.Name), Given: fmt.Sprintf("%d times", p.Times), Want: fmt.Sprintf("at most %d times", mostTotal), Err: ErrRange}
		}
	}
	// Far enough for one part to make up for what the others cannot.
	const farthest = 128
	s := search{parts: parts}
	if !s.reaches(int64(total), 1) {
		if !s.reaches(int64(total), farthest) {
			return nil, &Error{
				Field: "total", Given: fmt.Sprint(total),
				Want: "no whole numbers near the parts wanted add up to it: check odd and even", Err: ErrParity,
			}
		}
		// What can be reached within a distance can be reached within a larger one.
		distance := 2 + sort.Search(farthest-2, func(i int) bool { return s.reaches(int64(total), 2+i) })
		s.prepare(distance) // the search may have ended on another
	}
	s.known = make([]map[int64]answer, len(parts))
	s.costs = make([][]*big.Rat, len(parts))
	for i, p := range parts {
		for _, n := range s.choices[i] {
			s.costs[i] = append(s.costs[i], p.cost(n))
		}
	}
	return s.rounded(int64(total)), nil
}

// search looks for the best whole numbers within a distance.
type search struct {
	parts   []Part
	choices [][]int
	least   []int64 // the smallest and largest sum of the parts from i on
	most    []int64
	costs   [][]*big.Rat
	known   []map[int64]answer // for part i and what it and the later ones must add up to
}

// answer is the best choice for a part and the cost of it and all later parts;
// a nil cost means that there is none.
type answer struct {
	whole int
	cost  *big.Rat
}

// prepare lists the choices within the distance; it reports whether every part has one.
func (s *search) prepare(distance int) bool {
	s.choices = make([][]int, len(s.parts))
	s.least, s.most = make([]int64, len(s.parts)+1), make([]int64, len(s.parts)+1)
	for i := len(s.parts) - 1; i >= 0; i-- {
		p := s.parts[i]
		low := p.Want.Sub(Whole(distance)).Round(Rounding{Direction: Up})
		high := p.Want.Add(Whole(distance)).Round(Rounding{Direction: Down})
		for n := max(low, p.Least); n <= high; n++ {
			if p.Grid.Allows(n) {
				s.choices[i] = append(s.choices[i], n)
			}
		}
		c := s.choices[i]
		if len(c) == 0 {
			return false
		}
		s.least[i] = s.least[i+1] + p.sum(c[0])
		s.most[i] = s.most[i+1] + p.sum(c[len(c)-1])
	}
	return true
}

// reaches reports whether choices within the distance add up to the total.
func (s *search) reaches(total int64, distance int) bool {
	if !s.prepare(distance) || total < s.least[0] || total > s.most[0] {
		return false
	}
	rests := map[int64]bool{total: true}
	for i, p := range s.parts {
		next := make(map[int64]bool)
		for rest := range rests {
			for _, n := range s.choices[i] {
				if r := rest - p.sum(n); r >= s.least[i+1] && r <= s.most[i+1] {
					next[r] = true
				}
			}
		}
		rests = next
	}
	return rests[0]
}

func (p Part) times() int { return max(p.Times, 1) }

// sum returns what the copies of the part add up to when each is n.
func (p Part) sum(n int) int64 { return int64(p.times()) * int64(n) }

// cost returns the relative difference of n from what is wanted, all copies.
func (p Part) cost(n int) *big.Rat {
	cost := Whole(n).Sub(p.Want).Abs().rat()
	if p.Want.Sign() != 0 {
		cost = new(big.Rat).Quo(cost, p.Want.Abs().rat())
	}
	return new(big.Rat).Mul(cost, new(big.Rat).SetInt64(int64(p.times())))
}

// best chooses the parts from i on so that they add up to rest; of equal costs it
// takes the smaller number.
func (s *search) best(i int, rest int64) answer {
	if i == len(s.parts) {
		if rest != 0 {
			return answer{}
		}
		return answer{cost: new(big.Rat)}
	}
	if rest < s.least[i] || rest > s.most[i] {
		return answer{}
	}
	if a, ok := s.known[i][rest]; ok {
		return a
	}
	var found answer
	for k, n := range s.choices[i] {
		later := s.best(i+1, rest-s.parts[i].sum(n))
		if later.cost == nil {
			continue
		}
		if cost := new(big.Rat).Add(s.costs[i][k], later.cost); found.cost == nil || cost.Cmp(found.cost) < 0 {
			found = answer{n, cost}
		}
	}
	if s.known[i] == nil {
		s.known[i] = make(map[int64]answer)
	}
	s.known[i][rest] = found
	return found
}

func (s *search) rounded(rest int64) []Rounded {
	rounded := make([]Rounded, len(s.parts))
	for i, p := range s.parts {
		n := s.best(i, rest).whole
		rounded[i] = Rounded{Name: p.Name, Times: p.times(), Whole: n, Off: Whole(n).Sub(p.Want)}
		rest -= p.sum(n)
	}
	return rounded
}
