package charging

import (
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// directKinds charge what they are joined to, with nothing in them that could cut off.
var directKinds = map[string]bool{"alternator": true, "solar": true, "supply": true}

// charger is something that can charge a battery of a zone.
type charger struct {
	block     schema.Block
	source    int          // its index where it is a source, else -1
	converter int          // its index where it is a converter, else -1
	at        network.Port // the side that is across the battery
	behind    network.Port // the side that must have power; the same where it needs none
	reverse   bool         // a converter's input, through which current can come back
}

// chargersOf lists what could charge a battery of a zone: sources other than batteries, outputs of
// converters other than inverters, and inputs that are said not to block.
func chargersOf(n *network.Network, z *network.Zone) []*charger {
	var out []*charger
	for _, i := range z.Sources {
		if s := &n.Sources[i]; directKinds[s.Kind.Value] {
			out = append(out, &charger{block: s.Source, source: i, converter: -1, at: s.Port, behind: s.Port})
		}
	}
	for _, i := range z.Outputs {
		c := &n.Converters[i]
		behind := c.In
		if len(n.At(c.In.Hot)) == 0 { // nothing is drawn there: it is taken to have power
			behind = c.Out
		}
		if c.Kind.Value != "inverter" {
			out = append(out, &charger{block: c.Converter, source: -1, converter: i, at: c.Out, behind: behind})
		}
	}
	for _, i := range z.Inputs {
		if c := &n.Converters[i]; c.BlocksReverse.False() {
			out = append(out, &charger{block: c.Converter, source: -1, converter: i, at: c.In, behind: c.Out, reverse: true})
		}
	}
	return out
}

func (c *charger) there(v *explore.View) bool {
	return (c.source < 0 || v.HasSource(c.source)) && (c.converter < 0 || v.HasConverter(c.converter))
}

// charges says whether it is there, has power and is across the battery's row in the view.
func (c *charger) charges(v *explore.View, row explore.Series) bool {
	return c.there(v) && row.Across(c.at) && (c.behind == c.at || v.Live(nil, nil).Feeds(c.behind))
}
