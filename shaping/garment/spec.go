package garment

import (
	"bytes"
	"encoding/json"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// Spec is what a person measured, chose and drew. Widths are finished, of the
// piece lying flat, with ease and without seam stitches. A zero field that is not
// required takes the default named beside it; where a length of zero would be a choice of
// its own the field is an [Optional].
//
// A document is read into a Spec by plan.ReadSpec and by nothing else: package encoding/json
// follows the tags but is not strict, and lets keys pass that are misspelt, unknown or written
// in other capitals.
type Spec struct {
	Title string     `json:"title,omitzero"`
	Units gauge.Unit `json:"units,omitzero"` // for printing; default centimetres

	// One of the swatch, several swatches of the same fabric, and the gauge is required,
	// never two.
	Swatch   *gauge.Swatch  `json:"swatch,omitzero"`
	Swatches []gauge.Swatch `json:"swatches,omitzero"`
	Gauge    gauge.Gauge    `json:"gauge,omitzero"`

	Start    Start       `json:"start,omitzero"`
	Seam     Seam        `json:"seam,omitzero"`
	Body     Body        `json:"body"`
	Armhole  Armhole     `json:"armhole"`
	Neck     Neck        `json:"neck"`
	Back     *BackSpec   `json:"back,omitzero"`
	Opening  *Opening    `json:"opening,omitzero"` // down the middle of the front, as of a cardigan; default none
	Shoulder Shoulder    `json:"shoulder"`
	Sleeve   *SleeveSpec `json:"sleeve,omitzero"`
	Band     *BandSpec   `json:"band,omitzero"`

	Head gauge.Length `json:"head,omitzero"` // girth; not checked when absent, nor where the front opens
	Hand gauge.Length `json:"hand,omitzero"` // girth over the knuckles; not checked when absent
	Yarn *YarnSpec    `json:"yarn,omitzero"`

	Methods Methods `json:"methods,omitzero"`
	Checks  Checks  `json:"checks,omitzero"`
	Setup   Setup   `json:"work,omitzero"`
}

// Start is how a piece begins.
type Start struct {
	Edge StartEdge    `json:"edge,omitzero"` // default WasteEdge
	Band gauge.Length `json:"band,omitzero"` // height of the band knitted first, part of the body's length
}

// StartEdge is the lower edge of a piece: WasteEdge or ClosedEdge.
type StartEdge uint8

// The lower edges.
const (
	WasteEdge  StartEdge = iota // open stitches on waste yarn, for a hem or a band added later
	ClosedEdge                  // a cast on that stays
)

var startEdgeWords = [...]string{WasteEdge: "waste", ClosedEdge: "closed"}

// IsValid reports whether e is one of the lower edges.
func (e StartEdge) IsValid() bool { return int(e) < len(startEdgeWords) }

// String returns "waste" or "closed".
func (e StartEdge) String() string {
	if int(e) < len(startEdgeWords) {
		return startEdgeWords[e]
	}
	return "no edge"
}

// MarshalText returns "waste" or "closed".
func (e StartEdge) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText reads "waste" or "closed" and leaves e as it was on an error.
func (e *StartEdge) UnmarshalText(text []byte) error {
	for v, word := range startEdgeWords {
		if word == string(text) {
			*e = StartEdge(v)
			return nil
		}
	}
	return &Error{Given: quoted(string(text)), Want: "waste or closed", Err: ErrSpec}
}

// Seam says what seams take.
type Seam struct {
	Stitches int `json:"stitches"` // stitches lost at each seamed edge
}

// Body is the trunk, from the cast-on edge to the underarm.
type Body struct {
	Width  gauge.Length `json:"width"`          // of front or back at the underarm: half of what is round the body
	Length gauge.Length `json:"length"`         // cast-on edge to underarm, the band included
	Hem    gauge.Length `json:"hem,omitzero"`   // width above the band; default the body's
	Waist  *Waist       `json:"waist,omitzero"` // default none: straight from the hem to the underarm
}

// Waist is a place between hem and underarm where the sides turn, narrower or wider than they.
type Waist struct {
	Width  gauge.Length `json:"width"`
	Height gauge.Length `json:"height"` // above the cast-on edge
}

// Armhole runs from the underarm to the tip of the shoulder.
type Armhole struct {
	Depth   gauge.Length `json:"depth"`
	Inset   gauge.Length `json:"inset,omitzero"`   // taken off at each side; default none
	BindOff Optional     `json:"bindOff,omitzero"` // of the inset, taken off at once; default 2.5 cm, at most the inset
	Curve   Optional     `json:"curve,omitzero"`   // height over which the rest goes; default two fifths of the depth
	// Path is the edge along which the rest goes, SVG path data in millimetres from the
	// underarm upwards, x growing as stitches go; default a quarter of an ellipse. It is
	// stretched to whole stitches and rows.
	Path string `json:"path,omitzero"`
}

// NeckShape is the form of the neck edge: RoundNeck, VeeNeck, SquareNeck or PathNeck. The
// zero value is no shape.
type NeckShape uint8

// The neck shapes.
const (
	RoundNeck NeckShape = iota + 1
	VeeNeck
	SquareNeck
	PathNeck
)

var neckShapeWords = [...]string{"", "round", "vee", "square", "path"}

// IsValid reports whether s is one of the shapes.
func (s NeckShape) IsValid() bool { return s >= RoundNeck && s <= PathNeck }

// String returns "round", "vee", "square" or "path".
func (s NeckShape) String() string {
	if s >= 1 && int(s) < len(neckShapeWords) {
		return neckShapeWords[s]
	}
	return "no shape"
}

// MarshalText returns the text of [NeckShape.String].
func (s NeckShape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the text of [NeckShape.String] and leaves s as it was on an error.
func (s *NeckShape) UnmarshalText(text []byte) error {
	for v, word := range neckShapeWords {
		if v > 0 && word == string(text) {
			*s = NeckShape(v)
			return nil
		}
	}
	return &Error{Given: quoted(string(text)), Want: "round, vee, square or path", Err: ErrSpec}
}

// Neck is the knitted opening, before any band.
type Neck struct {
	Shape NeckShape    `json:"shape"`
	Width gauge.Length `json:"width"`
	Depth gauge.Length `json:"depth"`         // below the neck point
	Flat  Optional     `json:"flat,omitzero"` // straight part in the middle; default a third of the width when round, the width when square, else no or one stitch
	// Path belongs to the shape path: the right half edge as SVG path data in millimetres,
	// from the end of the flat part up to the neck point, x growing as stitches go. It is
	// stretched to whole stitches and rows.
	Path string `json:"path,omitzero"`
	// Stretch is by how much of its length the finished edge gives when pulled, in percent:
	// default 25.
	Stretch *decimal.Decimal `json:"stretch,omitzero"`
}

// BackSpec is where the back differs from the front.
type BackSpec struct {
	Neck BackNeck `json:"neck"`
}

// BackNeck is the neck of the back; its width is that of the front.
type BackNeck struct {
	Depth gauge.Length `json:"depth"`
	Flat  Optional     `json:"flat,omitzero"`
}

// Shoulder slopes from the neck point to the tip.
type Shoulder struct {
	Drop gauge.Length `json:"drop"`
	// Path is a shoulder that does not slope evenly: SVG path data in millimetres from the
	// tip up to the neck point, x growing inwards. It is stretched to whole stitches and rows.
	// Left out, groups of stitches as equal as can be go one after the other.
	Path string `json:"path,omitzero"`
}

// SleeveSpec is a sleeve from cuff to cap. Widths are all round, the sleeve lying open.
type SleeveSpec struct {
	Length gauge.Length `json:"length"`         // cuff to underarm, the cuff's band included
	Band   Optional     `json:"band,omitzero"`  // height of the cuff's band; default that of the body
	Cuff   gauge.Length `json:"cuff"`           // width at the lower edge
	Top    gauge.Length `json:"top"`            // width at the underarm
	Cap    Cap          `json:"cap,omitzero"`   // default a straight top
	Ease   gauge.Length `json:"ease,omitzero"`  // of the sleeve's top, along its edge, over the armhole
	Flat   Optional     `json:"flat,omitzero"`  // straight part at the top of a cap; default a quarter of the width
	Plain  gauge.Length `json:"plain,omitzero"` // without increases, above the band and below the underarm
	// Stretch is that of the cuff's edge, as of the neck's.
	Stretch *decimal.Decimal `json:"stretch,omitzero"`
}

// BandSpec is the band along neck and opening.
type BandSpec struct {
	Height gauge.Length `json:"height"`          // finished
	Repeat int          `json:"repeat,omitzero"` // of the rib, in stitches; default 1
	Plus   int          `json:"plus,omitzero"`   // stitches beside whole repeats
	Gauge  gauge.Gauge  `json:"gauge,omitzero"`  // of the band; default that of the piece
	Folded bool         `json:"folded,omitzero"` // knitted at twice the height, turned in and sewn down
}

// Opening parts the front into two, which meet in the middle.
type Opening struct {
	// Overlap is the width of the bands that lie one on the other in the middle, and by
	// which both fronts together are narrower than the back. Default the height of the
	// band, without one none: the edges then meet.
	Overlap Optional `json:"overlap,omitzero"`
	Buttons int      `json:"buttons,omitzero"` // how many along the front; default none
}

// YarnSpec is what the yarn comes in. What it weighs, and how long it is, stands with the
// swatches: see [Set.Yarn].
type YarnSpec struct {
	Margin *decimal.Decimal `json:"margin,omitzero"` // on what the loops take, in percent, 0 to 100; default 10
	Ball   *Ball            `json:"ball,omitzero"`
}

// Ball is one put-up of yarn.
type Ball struct {
	Grams  decimal.Decimal `json:"grams,omitzero"`  // 1 to 10,000; 0 if not known
	Metres decimal.Decimal `json:"metres,omitzero"` // 1 to 100,000; 0 if not known
}

// Methods say how stitches go at each edge. Where the neck is worked by decreases only, the
// larger steps of the back's round neck are held. The cap of a sleeve takes several stitches off
// as the armhole does, or binds them off where the armhole is worked by decreases only, and
// single ones by decreases; where an armhole is held, the top of its sleeve stays live.
type Methods struct {
	Neck     Pair `json:"neck,omitzero"`     // default hold
	Shoulder Pair `json:"shoulder,omitzero"` // default hold
	Armhole  Pair `json:"armhole,omitzero"`  // default bind off, then fashioned
}

// Pair is a method for steps of two or more stitches and one for single
// stitches. In a document it is one word, see [By], or a list of two. With
// Fashioned for both, two stitches may be decreased at once.
type Pair struct {
	Several, Single shaping.Method
}

// By returns what the one word means: one method for all steps. Fashioned steps
// are then single ones only, so that Several is left open.
func By(m shaping.Method) Pair {
	if m == shaping.Fashioned {
		return Pair{Single: m}
	}
	return Pair{m, m}
}

// IsZero reports whether no method is set.
func (p Pair) IsZero() bool { return p == Pair{} }

// Or returns p, and def if no method is set.
func (p Pair) Or(def Pair) Pair {
	if p.IsZero() {
		return def
	}
	return p
}

// String returns "hold", or "bindOff and fashioned".
func (p Pair) String() string {
	if p == By(p.Single) {
		return p.Single.String()
	}
	return p.Several.String() + " and " + p.Single.String()
}

// MarshalJSON returns a word or a list of two words; it returns an error if a method is
// not valid, as of the zero value, which a document leaves out.
func (p Pair) MarshalJSON() ([]byte, error) {
	if p == By(p.Single) {
		return json.Marshal(p.Single)
	}
	return json.Marshal([]shaping.Method{p.Several, p.Single})
}

// UnmarshalJSON reads a word or a list of two words; it leaves p as it was on an error.
func (p *Pair) UnmarshalJSON(text []byte) error {
	if bytes.HasPrefix(text, []byte("[")) {
		var two []shaping.Method
		if err := json.Unmarshal(text, &two); err != nil {
			return err
		}
		if len(two) != 2 {
			return &Error{Given: string(text), Want: "a method, or a list of two: for several stitches and for single ones", Err: ErrSpec}
		}
		*p = Pair{two[0], two[1]}
		return nil
	}
	var one shaping.Method
	if err := json.Unmarshal(text, &one); err != nil {
		return err
	}
	*p = By(one)
	return nil
}

// DefaultNeedles is the number of needles of a bed that the spec does not describe.
const DefaultNeedles = 200

// Setup is where and with what the piece is knitted.
type Setup struct {
	On       shaping.Place `json:"on,omitzero"`       // default the bed
	Needles  int           `json:"needles,omitzero"`  // of the bed; default 200
	Carriage shaping.Side  `json:"carriage,omitzero"` // at row 1, but of two fronts, see [Fronts]; default right, and in the hand always
}

// place returns where the piece is knitted, the bed if left open.
func (p Setup) place() shaping.Place {
	if p.On == 0 {
		return shaping.Bed
	}
	return p.On
}

// carriage returns where row 1 starts.
func (p Setup) carriage() shaping.Side {
	if p.place() == shaping.Bed && p.Carriage == shaping.Left {
		return shaping.Left
	}
	return shaping.Right
}

// BedNeedles returns the number of needles of the bed: [DefaultNeedles] if left open.
func (p Setup) BedNeedles() int {
	if p.Needles == 0 {
		return DefaultNeedles
	}
	return p.Needles
}
