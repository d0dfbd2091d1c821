package garment

import "slices"

// Clone returns a deep copy: what the copy's pointers hold is its own.
func (s Spec) Clone() Spec {
	s.Swatch, s.Swatches = copied(s.Swatch), slices.Clone(s.Swatches)
	s.Body.Waist = copied(s.Body.Waist)
	s.Neck.Stretch = copied(s.Neck.Stretch)
	s.Back, s.Opening, s.Band = copied(s.Back), copied(s.Opening), copied(s.Band)
	if s.Sleeve = copied(s.Sleeve); s.Sleeve != nil {
		s.Sleeve.Stretch = copied(s.Sleeve.Stretch)
	}
	if s.Yarn = copied(s.Yarn); s.Yarn != nil {
		s.Yarn.Margin, s.Yarn.Ball = copied(s.Yarn.Margin), copied(s.Yarn.Ball)
	}
	return s
}

// copied returns a pointer to a copy, nil for nil.
func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	return new(*p)
}
