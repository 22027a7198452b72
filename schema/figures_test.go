package schema

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/schema/quantity"
)

// A figure out of its bounds is an error at its own place.
func TestFiguresOutOfBounds(t *testing.T) {
	for _, test := range []struct{ block, attribute, says string }{
		{"system", `ambient = "101 C"`, "101 C is more than can be: 100 C at most"},
		{"system", `coldest = "-274 C"`, "below absolute zero"},
		{"compartment", `ambient = "1e3 C"`, "150 C at most"},
		{"battery", `capacity = "1e9 Ah"`, "100 000 Ah at most"},
		{"battery", `capacity = "0 Ah"`, "a figure above zero is wanted"},
		{"battery", `capacity = "1e-9 Ah"`, "1 mAh at least"},
		{"battery", `capacity = "NaN Ah"`, "does not begin with a number"},
		{"battery", `capacity = "Inf Ah"`, "does not begin with a number"},
		{"battery", `capacity = "1e999 Ah"`, "not a number that can be used"},
		{"battery", `capacity = "1e-999 Ah"`, "a figure above zero is wanted"},
		{"battery", `capacity = times("1 Ah", 1e29)`, "out of any range"},
		{"battery", `voltage = "-12 V"`, "-12 V is negative"},
		{"battery", `voltage = "2 kV"`, "1 500 V at most"},
		{"battery", `resistance = "1 kohm"`, "100 ohm at most"},
		{"battery", `usable = 1.01`, "more than the whole"},
		{"battery", `usable = 0`, "a figure above zero is wanted"},
		{"battery", `usable = 1e99`, "more than the whole"},
		{"battery", `series = 0`, "a whole number from 1 to 1000"},
		{"battery", `parallel = 1e9`, "the bare number 1e+09: a whole number from 1 to 1000"},
		{"battery", `cells = -4`, "a whole number from 1 to 1000"},
		{"battery", `bms { opens_charge_below = "-200 C" }`, "-60 C at least"},
		{"solar", `voc_coefficient = "0.29 %/C"`, "-0.05 %/C at most"},
		{"solar", `voc_coefficient = "-29 %/C"`, "-1 %/C at least"},
		{"solar", `voc_coefficient = "-120 V/C"`, "-3 V/C at least"},
		{"solar", `peak_sun = "25 h"`, "24 h at most"},
		{"switch", `poles = 3`, "a whole number from 1 to 2"},
		{"switch", `voltage_rating = ["58 V dc", "240 kV ac"]`, "5 000 V at most"},
		{"fuse", `interrupting = "1000 kA"`, "300 kA at most"},
		{"bus", `rating = "1e5 A"`, "6 000 A at most"},
		{"load", `voltage_max = "16 kV"`, "1 500 V at most"},
		{"fuse", `trip = "gfci 5 A"`, "3 A at most"},
		{"fuse", `trip = "gfci 0 mA"`, "a figure above zero is wanted"},
		{"fuse", `curve = [["20 A", "60 s"], ["1e7 A", "1 s"]]`, "1 000 kA at most"},
		{"converter", `efficiency = 1.2`, "more than the whole"},
		{"converter", `efficiency = 0`, "a figure above zero is wanted"},
		{"converter", `efficiency = "0.9 %"`, "20 % at least"},
		{"converter", `input { current_max = "0 A" }`, "a figure above zero is wanted"},
		{"converter", `trigger = "1e6 V"`, "100 kV at most"},
		{"bus", `studs = 1e9`, "a whole number from 1 to 1000"},
		{"connector", `contact_resistance = "5 ohm"`, "1 ohm at most"},
		{"load", `hours_per_day = "25 h"`, "24 h at most"},
		{"load", `resistance = "0.1 mohm"`, "1 mohm at least"},
		{"conductor", `length = "0 m"`, "a figure above zero is wanted"},
		{"conductor", `length = "-2 m"`, "-2 m is negative"},
		{"conductor", `length = "1e12 m"`, "10 000 m at most"},
		{"conductor", `size = "99 AWG"`, "the thinnest is 40 AWG"},
		{"conductor", `size = "0 mm2"`, "not a conductor size"},
		{"conductor", `insulation = "4000 C"`, "600 C at most"},
	} {
		_, diags := Decode("plan.wiring.hcl", []byte(planOf(test.block, test.attribute)), nil)
		if len(diags) != 1 || diags[0].Subject.Start.Line != 3 || !strings.Contains(diags[0].Detail, test.says) {
			t.Errorf("%s: %s: %v, want %q", test.block, test.attribute, diags, test.says)
		}
	}
}

// Whatever a plan writes, what is read of it is finite and within its bounds; and a block that is read
// without an error does not contradict itself.
func TestFiguresOfAnyPlan(t *testing.T) {
	blocks := []string{"compartment", "battery", "alternator", "solar", "shore", "fuse", "converter", "load", "conductor"}
	rapid.Check(t, func(rt *rapid.T) {
		for range 50 {
			block := rapid.SampledFrom(blocks).Draw(rt, "block")
			typ := block
			if slices.Contains([]string{"battery", "alternator", "solar", "shore"}, block) {
				typ = "source"
			}
			contents := words().byName[typ].contents
			lines := figuresOf(rt, contents, block)
			for _, n := range contents.blocks {
				if len(n.kinds) == 0 || slices.Contains(n.kinds, block) {
					lines = append(lines, n.name+" {\n"+strings.Join(figuresOf(rt, n.contents, n.name), "\n")+"\n}")
				}
			}
			src := planOf(block, strings.Join(lines, "\n"))
			p, diags := Decode("plan.wiring.hcl", []byte(src), nil)
			b := p.Block(typ + ".a")
			checkFigures(rt, contents, reflect.ValueOf(b).Elem())
			if len(diags) == 0 {
				consistent(rt, b, src)
			}
		}
	})
}

// figuresOf writes some of the figures that fit in a place, with numbers of any size.
func figuresOf(rt *rapid.T, s *spec, place string) []string {
	var out []string
	for _, f := range s.fields {
		numbers := f.typ == reflect.TypeFor[Quantity]() || f.typ == reflect.TypeFor[Count]()
		if !numbers || f.only != "" && f.only != place || len(f.kinds) > 0 && !slices.Contains(f.kinds, place) || rapid.IntRange(0, 9).Draw(rt, "left out") > 3 {
			continue
		}
		number := fmt.Sprintf("%.3g", rapid.Float64Range(1, 30).Draw(rt, "number"))
		if f.typ == reflect.TypeFor[Count]() || slices.Contains(f.dims, quantity.Ratio) {
			number = rapid.SampledFrom([]string{"1", "2", "4"}).Draw(rt, "count")
		}
		if slices.Contains(f.dims, quantity.Coefficient) {
			number = "-0.3"
		}
		if rapid.IntRange(0, 19).Draw(rt, "odd") == 0 {
			number = rapid.SampledFrom([]string{"0", "-3", "-12.5", "4e-4", "2e4", "7e7", "1e999", "-1e999", "1e-999", "1e12", "NaN", "Inf"}).Draw(rt, "odd number")
		}
		if f.typ == reflect.TypeFor[Quantity]() {
			unit := f.dims[0].Units()
			number = fmt.Sprintf("%q", number+" "+unit[max(0, rapid.IntRange(-20, len(unit)-1).Draw(rt, "unit"))])
		}
		out = append(out, f.name+" = "+number)
	}
	return out
}

func checkFigures(rt *rapid.T, s *spec, v reflect.Value) {
	for _, f := range s.fields {
		switch x := v.FieldByIndex(f.index).Interface().(type) {
		case Quantity:
			if b := f.span(x.Dim); x.Set && !(x.Value >= b.least && x.Value <= b.most || x.Value == 0 && f.zero) {
				rt.Fatalf("%s is read as %v", f.name, x.Value)
			} else if !x.Set && x.Quantity != (quantity.Quantity{}) {
				rt.Fatalf("%s is unknown, and has the figure %v", f.name, x.Value)
			}
		case Count:
			if x.Set && (x.Value < 1 || x.Value > f.mostCount()) {
				rt.Fatalf("%s is read as %d", f.name, x.Value)
			}
		}
	}
	for _, n := range s.blocks {
		if x := v.FieldByIndex(n.index); !n.many && !x.IsNil() {
			checkFigures(rt, n.contents, x.Elem())
		}
	}
}

// consistent asks of an accepted block what physics asks.
func consistent(rt *rapid.T, b Block, src string) {
	ordered := func(low, high Quantity) {
		if low.Set && high.Set && low.Dim == high.Dim && low.Value > high.Value {
			rt.Fatalf("%s is accepted with %s above %s:\n%s", b.Header().Addr, low.Quantity, high.Quantity, src)
		}
	}
	switch x := b.(type) {
	case *Source:
		ordered(x.Imp, x.Isc)
		ordered(x.Vmp, x.Voc)
		ordered(x.Voltage, x.ChargeVoltageMax)
		ordered(x.DischargeLimit, x.ShortCircuit)
		if x.Voltage.Set && x.Resistance.Set && x.DischargeLimit.Set && x.Voltage.Value < x.Resistance.Value*x.DischargeLimit.Value {
			rt.Fatalf("a battery gives more than a short would:\n%s", src)
		}
	case *Fuse:
		ordered(x.Rating, x.Interrupting)
	case *Load:
		ordered(x.VoltageMin, x.RatedVoltage)
		ordered(x.RatedVoltage, x.VoltageMax)
		ordered(x.Draw, x.Surge)
	case *Converter:
		if x.Input != nil {
			ordered(x.Input.VoltageMin, x.Input.VoltageMax)
		}
		if x.Input != nil && x.Output != nil && x.Output.Voltage.Set && x.Output.CurrentMax.Set && x.Input.VoltageMax.Set && x.Input.CurrentMax.Set &&
			x.Output.Voltage.Value*x.Output.CurrentMax.Value > 2*x.Input.VoltageMax.Value*x.Input.CurrentMax.Value {
			rt.Fatalf("a converter gives more than it takes:\n%s", src)
		}
	}
}
