package gauge

import (
	"fmt"
	"math"
	"slices"
)

// refusal says why the parts cannot add up to the total, and which total they can.
func refusal(total int, parts []Part) error {
	for _, p := range parts {
		if err := p.checkChoice(); err != nil {
			return err
		}
	}
	s := search{parts: parts}
	s.prepare(farthest)
	why, kind := s.cause(int64(total))
	which := fmt.Sprintf("no total from %d to %d works", -mostTotal, mostTotal)
	if sum, ok := s.nearest(int64(total)); ok {
		which = fmt.Sprintf("%d is the nearest total that works", sum)
	}
	return &Error{Field: "total", Given: fmt.Sprint(total), Want: why + ": " + which, Err: kind}
}

// checkChoice refuses a part that has no choice at all, whatever the total.
func (p Part) checkChoice() error {
	if len(p.choices(farthest)) > 0 {
		return nil
	}
	if choices := p.anyLeast().choices(farthest); len(choices) > 0 {
		return p.fault(fmt.Sprintf("wanted %v, least %d", p.Want, p.Least),
			fmt.Sprintf("a least of at most %d, since no part moves further than %d", choices[len(choices)-1], farthest))
	}
	nearest := Rounding{Nearest, p.Grid.Multiple, p.Grid.Plus}
	return p.fault(fmt.Sprintf("wanted %v", p.Want),
		fmt.Sprintf("the %v is %d, and no part moves further than %d", nearest, p.Want.Round(nearest), farthest))
}

// anyLeast returns the part without its smallest number.
func (p Part) anyLeast() Part {
	p.Least = math.MinInt
	return p
}

// cause says what keeps the parts from a total that they do not reach.
func (s *search) cause(total int64) (why string, kind error) {
	if multiple, plus := grid(s.parts); (total-plus)%multiple != 0 {
		return "the parts always add up to some " + gridWords(multiple, plus), ErrParity
	}
	free := search{parts: slices.Clone(s.parts)}
	for i, p := range free.parts {
		free.parts[i] = p.anyLeast()
	}
	if free.reaches(total, farthest) {
		return "the least numbers of the parts do not allow it", ErrRange
	}
	return fmt.Sprintf("no part moves further than %d from what is wanted", farthest), ErrRange
}

// grid returns the numbers that the parts can add up to when nothing bounds them:
// all multiples of multiple, plus plus.
func grid(parts []Part) (multiple, plus int64) {
	for _, p := range parts {
		step := max(p.Grid.Multiple, 1)
		multiple = greatestDivisor(multiple, p.sum(step))
		plus += p.sum(p.Grid.Plus % step)
	}
	return multiple, (plus%multiple + multiple) % multiple
}

// greatestDivisor returns the greatest number that divides both a and b.
func greatestDivisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// nearest returns the total nearest to this one that the parts reach.
func (s *search) nearest(total int64) (sum int64, ok bool) {
	// Doubled, so that the sums followed are few when a good one is near.
	for slack := int64(1); slack <= 4*mostTotal; slack *= 2 {
		if sum, ok = s.near(total, slack); ok {
			return sum, true
		}
	}
	return 0, false
}
