package solar

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

var coldVoltage = &lint.Rule{
	ID:      "solar/cold-voltage",
	Claim:   "On a cold clear morning the array's voltage exceeds what its circuit withstands.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Subject: "converter input, load, device or conductor that an array reaches",
	When: "In some state an array is joined to a part whose rated voltage is below the array's open-circuit voltage at the coldest temperature, " +
		"and no battery is across the array to hold it down. Arrays drawn in series with it count with theirs.",
	Why: "A punctured controller can put the array's voltage straight onto the battery and everything on its bus; hence warning. Danger where the array also " +
		"stands at more than 60 V on contacts that can be touched.",
	Numbers: "Series modules x open-circuit voltage x (1 + coefficient x (coldest - 25 C)), and never below the voltage at 25 C. Without a " +
		"coefficient the code's table for crystalline silicon is used, as an assumption, since most of its rows were not read. The coldest " +
		"temperature is the array's own, else its compartment's, else the system's. Touchable means: at a contact that a plug's `exposed` says can be touched, " +
		"reached while that plug is apart. A device or wire without a voltage rating is left to the rules about those ratings.",
	Not: "A controller stored where it is warm while the array is outside, or an array that is always unplugged in the cold: an interlock says so. A battery that " +
		"cuts itself off and lets the voltage rise. Modules in parallel do not add voltage.",
	Offer: "One module fewer in series and one more string; a controller for a higher voltage.",
	Meter: "Open-circuit voltage of the array at sunrise on a cold clear day, at the controller's unplugged lead.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 690.7(A)(1)", Standing: lint.Read, Note: "highest voltage at the lowest expected temperature, by the module's coefficient; the method was read in trade articles; good practice from it outside buildings"},
		{Ref: "NFPA 70 Table 690.7(A)", Standing: lint.FromMemory, Note: "factors for crystalline silicon; the first row was read, the others recalled"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.FewerInSeries, remedy.HigherInput},
	Folds:  []string{"overcurrent/voltage-rating", "conductor/insulation-voltage"},
	Since:  "0.1",
	Run:    coldArrays,
}

// touchLimit is the direct voltage above which a touched contact is a danger (common practice).
const touchLimit = 60

func coldArrays(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	own := coldest(p)
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "solar" {
			out = append(out, coldArray(p, i, own)...)
		}
	}
	return out
}

// limit is a part of an array's circuit with the most volts that it takes.
type limit struct {
	block   schema.Block
	nodes   []network.NodeID
	most    schema.Quantity
	missing string // the attribute, where the plan must say most and does not
}

// reached is the first state of most volts in which an array's open voltage is on a part; states come
// with fewest parts moved first.
type reached struct {
	stack *stack
	state []lint.Position
	path  []string
}

func coldArray(p *lint.Pass, array int, own map[int]float64) []lint.Verdict {
	a := p.Net.Sources[array]
	views, complete := p.Space.Views(p.Net.Series(array), p.Space.Closed(explore.All()))
	limits := limitsNear(p.Net, a.Hot)
	best := make([]*reached, len(limits))
	touchable := false
	for _, v := range views {
		if !open(p.Net, v, array) || clamped(p.Net, v, array) {
			continue
		}
		touchable = touchable || touchableAt(p.Net, v, a.Hot)
		stack := (&stacks{p, v, own, map[int]*stack{}}).of(array)
		for i, l := range limits {
			if n := joinedTo(v, a.Hot, l.nodes); n != network.None && (best[i] == nil || stack.volts > best[i].stack.volts) {
				best[i] = reachedAt(p.Net, v, stack, n)
			}
		}
	}
	var out []lint.Verdict
	for i, l := range limits {
		switch {
		case best[i] != nil:
			v := judge(p, a.Source, l, best[i], touchable)
			if v.Outcome == lint.Holds && !complete {
				v = lint.Unfinished(l.block, lint.Danger)
			}
			out = append(out, v)
		case !complete:
			out = append(out, lint.Unfinished(l.block, lint.Danger))
		}
	}
	return out
}

func reachedAt(n *network.Network, v *explore.View, s *stack, at network.NodeID) *reached {
	from := n.Sources[s.arrays[0]].Hot
	way := v.Between(from, at)
	edges := way.Edges()
	for i := 1; i < len(s.arrays); i++ { // and what puts one array on the other
		edges = append(edges, v.Between(n.Sources[s.arrays[i-1]].Ret, n.Sources[s.arrays[i]].Hot).Edges()...)
	}
	return &reached{s, v.Witness(edges, s.arrays...), v.Places(from, way)}
}

func judge(p *lint.Pass, a *schema.Source, l limit, r *reached, touchable bool) lint.Verdict {
	volts, missing := stackVolts(p, r.stack.arrays)
	addr := l.block.Header().Addr
	v := lint.Verdict{
		Subject: l.block, Word: lint.Warning, State: r.state, Path: r.path,
		Related: []string{a.Addr}, Cause: a.Addr, Group: a.Addr, Numbers: lint.Known(missing, volts),
	}
	if touchable && (len(missing) > 0 || volts.Value > touchLimit) {
		v.Word = lint.Danger
	}
	if l.most.Set {
		v.Numbers = append(v.Numbers, derive.Read("most volts that "+lint.Quote(l.block)+" takes", "Vmax", l.most.Value, "V", addr, "voltage rating", l.most.Range))
	} else {
		missing = append(missing, lint.Missing{Subject: addr, Attribute: l.missing})
	}
	switch {
	case l.most.Set && volts.Value > l.most.Value:
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s reaches %s on a cold clear morning, and %s takes %s.", lint.Quote(a), volts.Text(), lint.Quote(l.block), derive.Text(l.most.Value, "V"))
		if v.Word == lint.Danger {
			v.Message += " Contacts on this circuit can be touched."
		}
	case len(missing) > 0:
		v.Outcome, v.Missing = lint.NotProven, missing
		v.Message = fmt.Sprintf("How high %s goes on a cold clear morning, against what %s takes, cannot be told.", lint.Quote(a), lint.Quote(l.block))
	default:
		v.Outcome = lint.Holds
	}
	return v
}

// limitsNear lists the parts on an array's circuit that have, or must have, a most of volts:
// controllers and loads must; devices and wires are asked where they state one.
func limitsNear(n *network.Network, hot network.NodeID) []limit {
	z := n.ZoneOf(hot)
	if z == nil {
		return nil
	}
	var out []limit
	for _, i := range z.Inputs {
		c := &n.Converters[i]
		l := limit{block: c.Converter, nodes: []network.NodeID{c.In.Hot}, missing: "input voltage_max"}
		if c.Input != nil {
			l.most = c.Input.VoltageMax
		}
		out = append(out, l)
	}
	for _, i := range z.Loads {
		l := &n.Loads[i]
		out = append(out, limit{l.Load, []network.NodeID{l.Hot}, l.VoltageMax, "voltage_max"})
	}
	seen := map[string]bool{}
	for _, i := range z.Edges {
		e := &n.Edges[i]
		b := n.Plan.Block(e.Addr)
		if most := rated(b); most.Set && !seen[e.Addr] {
			seen[e.Addr] = true
			out = append(out, limit{block: b, nodes: []network.NodeID{e.A, e.B}, most: most})
		}
	}
	return out
}

// rated is the largest direct voltage that a device or wire states; an unmarked one is taken as such.
func rated(b schema.Block) schema.Quantity {
	var list schema.Quantities
	switch x := b.(type) {
	case *schema.Fuse:
		list = x.VoltageRating
	case *schema.Switch:
		list = x.VoltageRating
	case *schema.Connector:
		list = x.VoltageRating
	case *schema.Conductor:
		list = x.VoltageRating
	}
	var most schema.Quantity
	for _, q := range list.List {
		if q.Kind != quantity.AC && (!most.Set || q.Value > most.Value) {
			most = q
		}
	}
	return most
}

func joinedTo(v *explore.View, from network.NodeID, nodes []network.NodeID) network.NodeID {
	for _, n := range nodes {
		if v.Joined(from, n) {
			return n
		}
	}
	return network.None
}
