package garment

import "example.com/walewise/curve"

// Edges drawn by a person are SVG path data in millimetres. Each is stretched to its box
// of whole stitches and rows: its form counts, not its size.

// paths are the edges that the spec draws, each the zero Edge where it draws none.
type paths struct{ neck, armhole, shoulder curve.Edge }

// readPaths reads what is drawn.
func (f *trunk) readPaths() error {
	for _, p := range []struct {
		field, data, from, to string
		edge                  *curve.Edge
	}{
		{"neck.path", f.spec.Neck.Path, "the end of the flat middle", "the neck point", &f.paths.neck},
		{"armhole.path", f.spec.Armhole.Path, "the underarm", "where the armhole is upright", &f.paths.armhole},
		{"shoulder.path", f.spec.Shoulder.Path, "the tip", "the neck point", &f.paths.shoulder},
	} {
		if p.data == "" {
			continue
		}
		edge, err := curve.ParsePath(p.data)
		var fault string
		switch {
		case err != nil:
			fault = err.Error()
		case edge.Turns():
			fault = "turns back"
		case edge.Width().Sign() <= 0:
			fault = "leads to the wrong side or straight up"
		}
		if fault != "" {
			return &Error{Field: p.field, Given: quoted(p.data), Err: ErrSpec, Want: fault + "; draw in mm from " + p.from + " up to " + p.to +
				`, x growing all the way, such as "M 0 60 C 30 60 50 30 50 0"`}
		}
		*p.edge = edge
	}
	return nil
}

// boxed returns the edge stretched to whole stitches and rows.
func (j job) boxed(e curve.Edge, stitches, rows int) (curve.Edge, error) {
	return e.Scaled(j.gauge.Width(stitches), j.gauge.Height(rows))
}

// checkPaths refuses paths where there is nothing to draw, and a neck that lacks its own.
func checkPaths(s Spec) error {
	refuse := func(field, path, want string) error {
		given := ""
		if path != "" {
			given = quoted(path)
		}
		return &Error{Field: field, Given: given, Want: want, Err: ErrSpec}
	}
	switch {
	case s.Neck.Shape == PathNeck && s.Neck.Path == "":
		return refuse("neck.path", "", `missing: the shape path needs one, SVG path data such as "M 0 60 C 30 60 50 30 50 0"`)
	case s.Neck.Shape != PathNeck && s.Neck.Path != "":
		return refuse("neck.path", s.Neck.Path, "belongs to the shape path: leave it out, or give neck.shape path")
	case s.Armhole.Path != "" && s.Armhole.Inset.IsZero():
		return refuse("armhole.path", s.Armhole.Path, "without an inset the armhole is straight: leave it out, or give armhole.inset")
	case s.Shoulder.Path != "" && s.Shoulder.Drop.IsZero():
		return refuse("shoulder.path", s.Shoulder.Path, "without a drop the shoulder is level: leave it out, or give shoulder.drop")
	}
	return nil
}
