package gauge

import "math/big"

// search looks for the best whole numbers within a distance.
type search struct {
	parts   []Part
	choices [][]int
	least   []int64 // the smallest and largest sum of the parts from i on
	most    []int64
	costs   [][]*big.Int // of the choices
	known   map[state]answer
}

// state is a part and what it and the later ones must add up to.
type state struct {
	part int
	rest int64
}

// answer is the best choice for a part and the cost of it and all later parts;
// a nil cost means that there is none.
type answer struct {
	whole int
	cost  *big.Int
}

// prepare lists the choices within the distance; it reports whether every part has one.
func (s *search) prepare(distance int) bool {
	s.choices = make([][]int, len(s.parts))
	s.least, s.most = make([]int64, len(s.parts)+1), make([]int64, len(s.parts)+1)
	for i := len(s.parts) - 1; i >= 0; i-- {
		p := s.parts[i]
		c := p.choices(distance)
		if len(c) == 0 {
			return false
		}
		s.choices[i] = c
		s.least[i] = s.least[i+1] + p.sum(c[0])
		s.most[i] = s.most[i+1] + p.sum(c[len(c)-1])
	}
	return true
}

// choices returns the whole numbers allowed within the distance of what is wanted,
// from the smallest on.
func (p Part) choices(distance int) []int {
	var choices []int
	low := p.Want.Round(Rounding{Direction: Up}) - distance
	high := p.Want.Round(Rounding{Direction: Down}) + distance
	for n := max(low, p.Least); n <= high; n++ {
		if p.Grid.Allows(n) {
			choices = append(choices, n)
		}
	}
	return choices
}

func (p Part) times() int { return max(p.Times, 1) }

// sum returns what the copies of the part add up to when each is n.
func (p Part) sum(n int) int64 { return int64(p.times()) * int64(n) }

// reaches reports whether choices within the distance add up to the total.
func (s *search) reaches(total int64, distance int) bool {
	if !s.prepare(distance) {
		return false
	}
	_, ok := s.near(total, 0)
	return ok
}

// near returns the sum of choices that is nearest to the total, of two as near the
// smaller one, if there is one that is no further away than slack.
func (s *search) near(total, slack int64) (sum int64, ok bool) {
	if total < s.least[0]-slack || total > s.most[0]+slack {
		return 0, false
	}
	rests := map[int64]bool{total: true}
	for i, p := range s.parts {
		next := make(map[int64]bool)
		for rest := range rests {
			for _, n := range s.choices[i] {
				if r := rest - p.sum(n); r >= s.least[i+1]-slack && r <= s.most[i+1]+slack {
					next[r] = true
				}
			}
		}
		rests = next
	}
	for rest := range rests {
		// A total beyond the bound would be refused itself.
		made := total - rest
		if made < -mostTotal || made > mostTotal {
			continue
		}
		away, best := max(rest, -rest), max(total-sum, sum-total)
		if !ok || away < best || away == best && made < sum {
			sum, ok = made, true
		}
	}
	return sum, ok
}

// rounded returns the best of the choices that add up to the total, of which there
// must be some.
func (s *search) rounded(total int64) []Rounded {
	s.weigh()
	s.known = make(map[state]answer)
	rounded := make([]Rounded, len(s.parts))
	for i, p := range s.parts {
		n := s.best(i, total).whole
		rounded[i] = Rounded{Name: p.Name, Times: p.times(), Whole: n, Off: Whole(n).Sub(p.Want)}
		total -= p.sum(n)
	}
	return rounded
}

// weigh finds the costs of the choices: the relative differences from what is wanted,
// all copies, over one denominator, so that whole numbers are added and compared.
func (s *search) weigh() {
	// |n - a/b| / |a/b| is |n b - a| / |a|: the product of all |a| is a denominator.
	common := big.NewInt(1)
	for _, p := range s.parts {
		common.Mul(common, p.divisor())
	}
	s.costs = make([][]*big.Int, len(s.parts))
	for i, p := range s.parts {
		wanted := p.Want.rat()
		weight := new(big.Int).Quo(common, p.divisor())
		weight.Mul(weight, big.NewInt(int64(p.times())))
		for _, n := range s.choices[i] {
			cost := big.NewInt(int64(n))
			cost.Mul(cost, wanted.Denom()).Sub(cost, wanted.Num()).Abs(cost)
			s.costs[i] = append(s.costs[i], cost.Mul(cost, weight))
		}
	}
}

// divisor returns the numerator of what is wanted, by which its differences are
// divided, and 1 for a wanted 0.
func (p Part) divisor() *big.Int {
	if p.Want.Sign() == 0 {
		return big.NewInt(1)
	}
	return new(big.Int).Abs(p.Want.rat().Num())
}

// best chooses the parts from i on so that they add up to rest; of equal costs it
// takes the smaller number.
func (s *search) best(i int, rest int64) answer {
	if i == len(s.parts) {
		if rest != 0 {
			return answer{}
		}
		return answer{cost: new(big.Int)}
	}
	if rest < s.least[i] || rest > s.most[i] {
		return answer{}
	}
	at := state{i, rest}
	if a, ok := s.known[at]; ok {
		return a
	}
	var found answer
	for k, n := range s.choices[i] {
		later := s.best(i+1, rest-s.parts[i].sum(n))
		if later.cost == nil {
			continue
		}
		if cost := new(big.Int).Add(s.costs[i][k], later.cost); found.cost == nil || cost.Cmp(found.cost) < 0 {
			found = answer{n, cost}
		}
	}
	s.known[at] = found
	return found
}
