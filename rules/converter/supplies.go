package converter

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// pushed is what a supply can do to an input.
type pushed struct {
	block schema.Block
	volts derive.Number
	amps  derive.Number // Kind 0 where nothing limits it
	lacks []lint.Missing
}

func pushes(p *lint.Pass, v *explore.View, s explore.Supply, port network.Port) pushed {
	if s.Source < 0 {
		x := p.Net.Converters[s.Converter].Converter
		volts, lacks := p.Circuit.HighOutput(x)
		amps, behind, more := p.Circuit.OutputFault(x)
		if behind {
			amps = derive.Number{}
		}
		return pushed{x, volts, amps, append(slices.Clone(lacks), more...)}
	}
	x := p.Net.Sources[s.Source].Source
	amps, stiff, lacks := p.Circuit.SourceFault(x)
	if stiff {
		amps = derive.Number{}
	}
	out := pushed{block: x, amps: amps, lacks: slices.Clone(lacks)}
	switch {
	case v.Series(s.Source).Stacked():
		if top, ok := p.Circuit.Top(v).Across(port); ok {
			out.volts = derive.Compute("highest volts of the string at "+lint.Quote(x), "V", top, "V", "with nothing drawn")
		} else {
			out.lacks = append(out.lacks, lint.Missing{Subject: x.Addr, Attribute: "voltage"})
		}
	case x.Kind.Value == "battery":
		b, more := p.Circuit.BatteryVolts(x)
		out.volts, out.lacks = b.Full, append(out.lacks, more...)
	case x.Kind.Value == "solar":
		cold, more := p.Circuit.ColdVoc(x)
		out.volts, out.lacks = cold, append(out.lacks, more...)
	case x.RegulatedVoltage.Set:
		out.volts = derive.Read("voltage that "+lint.Quote(x)+" holds", "V", x.RegulatedVoltage.Value, "V", x.Addr, "regulated_voltage", x.RegulatedVoltage.Range)
	case x.Voltage.Set:
		out.volts = derive.Read("voltage of "+lint.Quote(x), "V", x.Voltage.Value, "V", x.Addr, "voltage", x.Voltage.Range)
	default:
		out.lacks = append(out.lacks, lint.Missing{Subject: x.Addr, Attribute: "regulated_voltage"})
	}
	return out
}
