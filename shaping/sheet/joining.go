package sheet

import (
	"slices"

	"example.com/walewise/shaping/garment"
)

// In which order the pieces are joined, and the bands picked up between the seams. Common
// practice, no source.

// joint is a seam, or a band that is picked up when the seams before it are joined.
type joint struct {
	text string        // as it is printed; of a band it says where that stands
	full string        // on the page, where that says more, else empty
	band *garment.Band // none of a seam
}

// joints lists what is joined, for the pieces that there are.
func (s *setWriter) joints() []joint {
	front, both := s.piece(false)
	if both {
		_, both = s.piece(true)
	}
	var list []joint
	switch {
	case both && len(s.bands) > 0:
		list = s.bandJoints(front)
	case both && front.opened():
		list = seams(
			front.bothShouldersStep(),
			"The neckband, from one front edge by the back to the other: what it takes up stands at the end of each piece.",
			"The bands along the front edges, over the ends of the neckband.")
	case both && front.inTheRound():
		list = seams(
			"Both shoulders: the right half of the front to the left half of the back, and the left half of the front to the right half of the back, as their instructions call them.",
			"The neckband, in the round along front and back: what it takes up stands at the end of each of them.")
	case both:
		list = seams(
			"One shoulder: the right half of the front to the left half of the back, as their instructions call them.",
			"The neckband, from the open shoulder along front and back to the open shoulder: what it takes up stands at the end of each of them.",
			"The other shoulder: the left half of the front to the right half of the back, and with it the ends of the neckband.")
	default:
		for i := range s.bands {
			list = append(list, joint{band: &s.bands[i]})
		}
	}
	sleeve := slices.IndexFunc(s.pieces, (*writer).isSleeve)
	if sleeve >= 0 {
		full := "Each sleeve, while the sides are open: " + s.pieces[sleeve].setIn() + " Either sleeve fits either side."
		if !both {
			full += " " + sleeveSeam
		}
		list = append(list, joint{
			text: "The sleeves, while the sides are open: the middle of the top to the shoulder seam, then to both underarms. Either sleeve fits either side.",
			full: full,
		})
	}
	switch {
	case both && sleeve >= 0:
		list = append(list, seams("The sides: on each side one seam, from the cuff by the underarm to the hem.")...)
	case both:
		list = append(list, seams("The sides: on each side one seam up to the underarm.")...)
	}
	return list
}

// seams makes a seam of each text.
func seams(texts ...string) []joint {
	var list []joint
	for _, text := range texts {
		list = append(list, joint{text: text})
	}
	return list
}

// joiningHeading stands above what is joined.
const joiningHeading = "Joining, when all pieces are washed and blocked"

// joining says in which order the pieces are joined, and where the bands stand.
func (s *setWriter) joining() []line {
	var said []line
	for _, j := range s.joints() {
		if j.text != "" {
			said = append(said, step(j.text))
		}
	}
	if len(said) == 0 {
		return nil
	}
	return append([]line{heading(joiningHeading)}, said...)
}
