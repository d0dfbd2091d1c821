// Package plan reads and writes the documents of a knitted garment: the spec, which says
// what a person measured and chose, and the plan, which says how its pieces are knitted, row
// by row; beside them a gauge by itself, for a spec that is planned anew, and a table of
// bodies, for a garment in several sizes.
//
//	spec, err := plan.ReadSpec(file)
//	if err != nil {
//		return err // one line that names the key
//	}
//	front, err := garment.Front(spec)
//	if err != nil {
//		return err
//	}
//	return plan.Write(os.Stdout, plan.From(front))
//
// # Model
//
// A document is one JSON object whose key "format" names its form and version:
// [SpecFormat], [PlanFormat], [GaugeFormat] or [SizesFormat]. A spec is read into a
// [garment.Spec], a plan into a [Plan], whose pieces hold a [shaping.Work] each. A gauge by
// itself, such as measured anew for a spec, is read into a [garment.GaugeSpec], a table of
// bodies into a list of [sizes.Body]. Schemas of all lie in testdata/schema. What these types
// give to encoding/json is no document: it has no format and is not checked.
//
// # Strictness
//
// Reading refuses what it does not know: keys that are unknown, repeated or written
// in other capitals, null, values of another type than the key has, and anything
// after the end of the document. Reading is bounded: documents of at most
// [MaxBytes], titles of at most [MaxTitle] characters, pieces of at most [shaping.MaxRows]
// rows, needles to [shaping.MaxNeedle]. Writing refuses what could not be read back.
//
// # Exactness
//
// Lengths, counts and areas stay the decimals that were written; lengths are written
// in centimetres, deviations in millimetres, and mean the same when they are read
// again. Equal values give equal bytes.
//
// # Errors
//
// A document that cannot be used gives a [*garment.Error] in one line that names the
// key by its path, such as "neck.width" or "pieces[0].rows[3].knit"; lists count from
// 0. It wraps [garment.ErrSpec], [ErrPlan] or [sizes.ErrBodies], and the error of the value
// where there is one, such as [gauge.ErrUnit]. Errors of readers and writers are wrapped.
// No document makes it panic.
//
// # Complexity
//
// Linear in the length of the document, which is held in memory as a whole. The plan of a
// jumper has about 170 kB: it is written in two or three milliseconds and read in eight; a
// spec is read in less than a tenth of one.
//
// # What it does not do
//
// It does not check that a spec gives a garment (package garment does) or that a plan
// can be knitted and is true: knit its works with package bed.
package plan
