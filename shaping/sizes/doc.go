// Package sizes plans one garment for several bodies: from a table of bodies, one line a
// size, it makes the spec of each size, has each planned and knitted, and lays the counts
// of all side by side as printed patterns do: "cast on 98 (106, 114, 124)".
//
//	bodies, err := sizes.ReadCSV(file)
//	if err != nil {
//		return err // names the line and the column
//	}
//	planned, err := sizes.Plan(sizes.Style{Spec: spec}, bodies)
//	if err != nil {
//		return err // names the size, the field and what would work
//	}
//	return sheet.WriteSizes(os.Stdout, planned)
//
// # Model
//
// A [Body] is what a tape measure says of a person. A [Style] is everything else: a spec
// of the garment in any one size, of which the figures of the body are replaced, and the
// ease. [Style.For] puts the two together.
//
// Each measurement moves what it measures and nothing else. The chest moves the width of
// the body, of which the shoulders hardly depend: among 4,082 men and 1,986 women the
// breadth of the shoulders correlates with the chest by 0.52 and 0.29, so that a grade that
// makes all widths larger as the chest grows is wrong (computed from the raw data of C. C.
// Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel, Natick TR-15/007,
// 2014). So the table must have
//
//   - chest, shoulders and backWaist, and for a chest below 21 in the head;
//   - for a garment with sleeves arm or innerArm, and arm where the armholes are straight.
//
// Everything else may be missing. What a rule fills in then is listed in [Size.Filled], and
// so is what is left unchecked. See [Style.For] for the rules.
//
// # Side by side
//
// [Range.Counts] gives each count of each piece for all sizes, and the steps of each edge,
// said once for all sizes where one wording fits them: line by line the same method, with
// stitches, distances and times of each size, of which the times may be 0. Where that would
// take many more lines than any size needs, it is said for as many neighbouring sizes at a
// time as have one wording. [Words.Steps] makes a size's own steps of them again, exactly.
//
// [ReadCSV] reads tables of bodies here, package plan those that are JSON documents.
//
// # Exactness
//
// Lengths stay exact decimals, but for the few that are divided by a number that does not
// go into them, which are rounded to a tenth of a millimetre. Whole numbers are chosen in
// package garment.
//
// # Errors
//
// An [*Error] names the line of a table or the size, the measurement or the field of the
// spec, what was given and what works. It wraps [ErrBodies], or the error of package garment.
// A missing measurement that a rule stands for is none. No table, body or style makes anything
// panic.
//
// # Complexity
//
// Each size takes the time of [garment.Pieces], two or three milliseconds for a jumper.
// [Range.Counts] grows with the square of the number of sizes: a hundredth of a second for
// twenty, less than half a second for [MaxBodies].
//
// # References
//
//   - C. C. Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel, Natick
//     TR-15/007, 2014: how widths go with the chest, [Men] and [Women].
//   - WHO Child Growth Standards, 2007: heads of children.
//
// The sources of single rules stand beside them, in [Style.For] and [Children].
//
// # What it does not do
//
// The sizes are planned one by one: each edge follows the steps that are best for its size,
// and no others are looked for that more sizes could share. A larger size is larger in what
// was measured larger: only the stitches at the underarm are sure to grow with the chest.
package sizes
