package curve

import "example.com/walewise/shaping"

// ties is the graph of all schedules whose area is least within the slack: there may
// be exponentially many of them, but the graph is small. A node is where a step
// lands, a block and the level that it leads to; an arc leads to the next step. A
// path from node 0, which stands for the lower end of the edge, to a node at the
// highest level is a schedule.
type ties struct {
	p     *program
	nodes []node
	arcs  []arc // those that leave one node stand together, by block and then by level
	order []int // the nodes by their blocks; their arcs stand in the same order
	slack int64
}

type node struct {
	block, level int
	given        int64 // least area given away on the way from node 0
	first, end   int   // its arcs
	sibling      int   // another node of the same block, or 0
}

type arc struct {
	to        int // node
	rows      int // from the step before to this one
	stitches  int
	given     int64 // area given away by taking this arc
	deviation int64 // greatest one in the rows before this step, and after it if it is the last
}

// newTies gathers the graph from below. An arc gives away what the least area grows
// by when it is taken; what a path gives away is the sum over its arcs.
func newTies(p *program) *ties {
	g := &ties{p: p, slack: p.d.slack()}
	g.nodes = append(make([]node, 0, 64), node{})
	heads := make([]int, p.last()) // one node of each block, or 0
	g.visit(0, heads)
	for block := range heads {
		// All arcs to this block are known by now, and with them what is given away.
		for n := heads[block]; n > 0; n = g.nodes[n].sibling {
			g.visit(n, heads)
		}
	}
	return g
}

// visit adds the arcs that leave a node.
func (g *ties) visit(from int, heads []int) {
	p, n := g.p, g.nodes[from]
	block, wait, least := n.block, p.blocks[n.block].next, int64(0)
	if from == 0 {
		wait, least = 0, p.togoAt(0, 0)
	} else {
		least = p.landed(block, n.level)
	}
	g.order = append(g.order, from)
	g.nodes[from].first = len(g.arcs)
	for i := wait; i < p.last() && n.level < p.d.stitches; i++ {
		given := p.stay(block, i, n.level) - least
		if n.given+given+p.togoAt(i, n.level) > g.slack {
			break // waiting longer gives away no less
		}
		b := p.blocks[i]
		for level := n.level + b.least; level <= min(n.level+b.most, p.d.stitches); level++ {
			given := given + p.landed(i, level)
			if n.given+given > g.slack {
				continue
			}
			to := g.nodeAt(i, level, heads)
			g.nodes[to].given = min(g.nodes[to].given, n.given+given)
			g.arcs = append(g.arcs, arc{
				to: to, rows: b.start - p.blocks[block].start, stitches: level - n.level,
				given: given, deviation: g.deviation(from, to),
			})
		}
	}
	g.nodes[from].end = len(g.arcs)
}

// nodeAt returns the node of a block and level, a new one if there is none.
func (g *ties) nodeAt(block, level int, heads []int) int {
	for n := heads[block]; n > 0; n = g.nodes[n].sibling {
		if g.nodes[n].level == level {
			return n
		}
	}
	g.nodes = append(g.nodes, node{block: block, level: level, given: g.slack, sibling: heads[block]})
	heads[block] = len(g.nodes) - 1
	return heads[block]
}

// deviation returns the greatest one from the landing at one node to the landing at
// another, or to the upper end if that is the last.
func (g *ties) deviation(from, to int) int64 {
	start := 0
	if from > 0 {
		start = g.startOf(from)
	}
	deviation := g.p.d.deviation(start, g.startOf(to), g.nodes[from].level)
	if g.isLast(to) {
		deviation = max(deviation, g.p.d.deviation(g.startOf(to), g.p.d.rows, g.nodes[to].level))
	}
	return deviation
}

func (g *ties) startOf(node int) int { return g.p.blocks[g.nodes[node].block].start }

// isLast reports whether nothing follows the step that lands at the node.
func (g *ties) isLast(node int) bool { return g.nodes[node].level == g.p.d.stitches }

// arcsFrom returns the arcs that leave a node.
func (g *ties) arcsFrom(node int) []arc { return g.arcs[g.nodes[node].first:g.nodes[node].end] }

// unbranched reports whether the graph holds one schedule only; its arcs are that
// schedule then.
func (g *ties) unbranched() bool {
	for n := range g.nodes {
		if len(g.arcsFrom(n)) > 1 {
			return false
		}
	}
	return true
}

// best returns the schedule that the rules for ties choose.
func (g *ties) best(rules shaping.Rules, toward int) shaping.Schedule {
	chosen := g.arcs
	if !g.unbranched() {
		chosen = g.bestArcs(rules)
	}
	schedule := make(shaping.Schedule, len(chosen))
	for i, a := range chosen {
		schedule[i] = shaping.Step{Row: g.startOf(a.to) + 1, Stitches: -toward * a.stitches}
	}
	return schedule
}
