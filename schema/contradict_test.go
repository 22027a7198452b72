package schema

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

// contrary are attributes that cannot all be true, one a line below the block's first line. The
// message stands at line at, counted from the block's own, and names each of the lines beside.
var contrary = []struct {
	block, attributes string
	at                int
	says              string
	beside            []int
}{
	{"system", `ambient = "10 C"; coldest = "20 C"`, 2, "coldest, 20 C, is above ambient, 10 C", []int{1}},
	{"compartment", `ambient = "10 C"; coldest = "20 C"`, 2, "coldest, 20 C, is above ambient, 10 C", []int{1}},

	{"battery", `voltage = "12.8 V"; charge_voltage_max = "10 V"`, 2, "charge_voltage_max, 10 V, is below voltage, 12.8 V", []int{1}},
	{"battery", `voltage = "12.8 V"; charge_voltage_max = "58.4 V"`, 2, "is more than 1.6 times voltage, 12.8 V", []int{1}},
	{"battery", `voltage = "12.8 V dc"; charge_voltage_max = "14.6 V ac"`, 2, "is not of the same kind as voltage, 12.8 V dc", []int{1}},
	{"battery", `short_circuit = "50 A"; discharge_limit = "100 A"`, 1, "short_circuit, 50 A, is below discharge_limit, 100 A", []int{2}},
	{"battery", `capacity = "100 Ah"; discharge_limit = "50 kA"`, 2, "is more than 200 times capacity in one hour, 100 Ah", []int{1}},
	{"battery", `capacity = "100 Ah"; discharge_limit = "5 mA"`, 2, "is less than 0.001 times capacity in one hour, 100 Ah", []int{1}},
	{"battery", `capacity = "1.28 kWh"; discharge_limit = "50 kA"; voltage = "12.8 V"`, 2, "times capacity in one hour (1 280 Wh", []int{1, 3}},
	{"battery", `capacity = "100 Ah"; charge_limit = "50 kA"`, 2, "charge_limit, 50 kA, is more than 200 times", []int{1}},
	{"battery", `capacity = "100 Ah"; short_circuit = "90 A"`, 2, "short_circuit, 90 A, is below capacity in one hour, 100 Ah", []int{1}},
	// 6 ohm for 6 mohm makes every fault look harmless.
	{"battery", `voltage = "12.8 V"; capacity = "100 Ah"; resistance = "6 ohm"`, 1, "voltage (12.8 V) / resistance (6 ohm", []int{2, 3}},
	{"battery", `voltage = "12.8 V"; discharge_limit = "100 A"; resistance = "1 ohm"`, 1, "= 12.8 A, is below discharge_limit, 100 A", []int{2, 3}},
	{"battery", `voltage = "12.8 V"; short_circuit = "30 kA"; resistance = "6 mohm"`, 2, "short_circuit, 30 kA, is more than 10 times", []int{1, 3}},
	{"battery", `chemistry = "lifepo4"; voltage = "12.8 V"; cells = 8`, 2, "voltage (12.8 V) / cells (8", []int{1, 3}},
	{"battery", `chemistry = "agm"; voltage = "24 V"; cells = 6`, 2, "is more than 1.25 times a cell's 2 V, chemistry agm", []int{1, 3}},
	{"battery", `chemistry = "li-ion"; voltage = "36 V"; cells = 4`, 2, "a cell's 3.7 V, chemistry li-ion", []int{1, 3}},
	{"alternator", `voltage = "12 V"; regulated_voltage = "28.4 V"`, 2, "regulated_voltage, 28.4 V, is more than 1.6 times voltage, 12 V", []int{1}},
	{"supply", `voltage = "24 V"; regulated_voltage = "13.8 V"`, 2, "regulated_voltage, 13.8 V, is less than 0.8 times voltage, 24 V", []int{1}},

	{"solar", `imp = "6 A"; isc = "5 A"`, 1, "imp, 6 A, is more than 0.995 times isc, 5 A", []int{2}},
	{"solar", `imp = "1 A"; isc = "5 A"`, 1, "imp, 1 A, is less than 0.5 times isc, 5 A", []int{2}},
	{"solar", `voc = "18 V"; vmp = "22 V"`, 2, "vmp, 22 V, is more than 0.99 times voc, 18 V", []int{1}},
	{"solar", `vmp = "500 V"; imp = "60 A"`, 1, "= 30 kW, is above what a module may give, 20 kW", []int{2}},
	{"solar", `isc = "12 A"; max_series_fuse = "10 A"`, 2, "max_series_fuse, 10 A, is below isc, 12 A", []int{1}},

	{"switch", `cut_in = "12.8 V"; cut_out = "13.3 V"`, 2, "cut_out, 13.3 V, is above cut_in, 12.8 V", []int{1}},
	{"switch", `cut_in = "13.3 V"; cut_out = "1.28 V"`, 2, "cut_out, 1.28 V, is less than 0.5 times cut_in, 13.3 V", []int{1}},
	{"fuse", `rating = "100 A"; interrupting = "50 A"`, 1, "rating, 100 A, is above interrupting, 50 A", []int{2}},
	{"fuse", `rating = "30 A"; curve = [["20 A", "3600 s"], ["40 A", "5 s"]]`, 2, "curve, first current, 20 A, is below rating, 30 A", []int{1}},
	{"fuse", `rating = "1 A"; curve = [["30 A", "3600 s"], ["40 A", "5 s"]]`, 2, "curve, first current, 30 A, is more than 20 times rating, 1 A", []int{1}},
	{"fuse", "curve = [[\"20 A\", \"60 s\"],\n[\"40 A\", \"90 s\"]]", 2, "90 s at 40 A after 60 s at 20 A", []int{1}},

	{"converter", `idle = "300 W"; rated = "200 W"`, 1, "idle, 300 W, is above rated, 200 W", []int{2}},
	{"converter", `input {; voltage_min = "15 V"; voltage_max = "12 V"; }`, 2, "voltage_min, 15 V, is above voltage_max, 12 V", []int{3}},
	{"converter", `input {; voltage_min = "100 V ac"; voltage_max = "130 V dc"; }`, 2, "is not of the same kind as", []int{3}},
	{"converter", `output {; voltage = "14.4 V"; float = "27 V"; }`, 3, "float, 27 V, is more than 1.25 times output voltage, 14.4 V", []int{2}},
	{"converter", `output {; voltage = "14.4 V"; float = "6 V"; }`, 3, "float, 6 V, is less than 0.5 times output voltage, 14.4 V", []int{2}},
	{"converter", `output {; voltage = "14.4 V"; equalize = "13 V"; }`, 3, "equalize, 13 V, is below output voltage, 14.4 V", []int{2}},
	{"converter", `output {; float = "13.8 V"; equalize = "13 V"; }`, 3, "equalize, 13 V, is below float, 13.8 V", []int{2}},

	{"converter", `trigger = "24 V"; input {; voltage_max = "16 V"; }`, 1, "trigger, 24 V, is above input voltage_max, 16 V", []int{3}},
	{"converter", `rated = "20 W"; output {; voltage = "14.4 V"; current_max = "30 A"; }`, 3, "is more than 10 times rated, 20 W", []int{1, 4}},
	{"converter", `input {; voltage_max = "16 V"; current_max = "10 A"; }; output {; voltage = "14.4 V"; current_max = "30 A"; }`, 6, "= 432 W, is more than 1.5 times input voltage_max (16 V", []int{2, 3, 7}},
	{"converter", `idle = "50 A"; input {; current_max = "40 A"; }`, 1, "idle, 50 A, is above input current_max, 40 A", []int{3}},
	{"battery", `voltage = "12.8 V"; bms {; opens_above = "12 V"; }`, 3, "opens_above, 12 V, is below voltage, 12.8 V", []int{1}},
	{"battery", `surge_limit = "50 A"; discharge_limit = "100 A"`, 1, "surge_limit, 50 A, is below discharge_limit, 100 A", []int{2}},

	{"load", `voltage_min = "14 V"; voltage_max = "12 V"`, 1, "voltage_min, 14 V, is above voltage_max, 12 V", []int{2}},
	{"load", `rated_voltage = "12 V"; voltage_min = "14 V"`, 2, "voltage_min, 14 V, is above rated_voltage, 12 V", []int{1}},
	{"load", `rated_voltage = "12 V"; voltage_min = "10 mV"`, 2, "voltage_min, 10 mV, is less than 0.1 times rated_voltage, 12 V", []int{1}},
	{"load", `rated_voltage = "24 V"; voltage_max = "15 V"`, 1, "rated_voltage, 24 V, is above voltage_max, 15 V", []int{2}},
	{"load", `draw = "5 A"; surge = "3 A"`, 1, "draw, 5 A, is above surge, 3 A", []int{2}},
	{"load", `power = "120 W"; rated_voltage = "12 V"; surge = "3 A"`, 1, "power (120 W) / rated_voltage (12 V", []int{2, 3}},
	{"load", `draw = "25 A"; max_fuse = "10 A"`, 1, "draw, 25 A, is more than 2 times max_fuse, 10 A", []int{2}},
	{"load", `hold_up = "2 h"; own_battery = false`, 1, "hold_up, 2 h, is of its own battery, and own_battery is false", []int{2}},
	{"load", `draw = "5 A"; power = "60 W"`, 2, "this one says 5 A too", []int{1}},
}

// planOf writes a plan of one block with attributes on the lines after its first, which is line 2.
func planOf(block, attributes string) string {
	head, tail := fmt.Sprintf("system \"gull\" {}\n%s \"a\" {\n", block), ""
	switch block {
	case "system":
		head = "\nsystem \"gull\" {\n"
	case "battery", "alternator", "supply", "solar", "shore":
		head, tail = "system \"gull\" {}\nsource \"a\" {\n", fmt.Sprintf("kind = %q", block)
	case "switch":
		tail = `terminals = ["x", "y"]`
	case "converter":
		tail = `kind = "dc-dc"`
	case "conductor":
		tail = "from = bus.b\nto = bus.c"
	}
	return head + strings.ReplaceAll(attributes, "; ", "\n") + "\n" + tail + "\n}\nbus \"b\" {}\nbus \"c\" {}\n"
}

func TestContradictions(t *testing.T) {
	for _, test := range contrary {
		_, diags := Decode("plan.wiring.hcl", []byte(planOf(test.block, test.attributes)), nil)
		if len(diags) != 1 {
			t.Errorf("%s: %s: %d errors: %v", test.block, test.attributes, len(diags), diags)
			continue
		}
		d := diags[0]
		if d.Subject.Start.Line != test.at+2 || !strings.Contains(d.Detail, test.says) {
			t.Errorf("%s: %s: line %d: %s\nwant line %d: %s", test.block, test.attributes, d.Subject.Start.Line, d.Detail, test.at+2, test.says)
		}
		for _, line := range test.beside {
			if !regexp.MustCompile(fmt.Sprintf(`plan\.wiring\.hcl:%d\b`, line+2)).MatchString(d.Detail) {
				t.Errorf("%s: %s: %s\nnames no line %d", test.block, test.attributes, d.Detail, line+2)
			}
		}
	}
}

// What a compartment or an array leaves out is the system's.
func TestClimateOfThePlan(t *testing.T) {
	for blocks, want := range map[string]string{
		"compartment \"a\" { ambient = \"-10 C\" }":                        "coldest, 0 C, is above ambient, -10 C at plan.wiring.hcl:5",
		"compartment \"a\" { coldest = \"45 C\" }":                         "coldest, 45 C, is above ambient, 30 C at plan.wiring.hcl:3",
		"compartment \"a\" {\nengine = true\ncoldest = \"45 C\"\n}":        "",
		"source \"a\" {\nkind = \"solar\"\ncoldest = \"35 C\"\n}":          "coldest, 35 C, is above ambient, 30 C at plan.wiring.hcl:3",
		"compartment \"a\" {\nambient = \"-10 C\"\ncoldest = \"-20 C\"\n}": "",
	} {
		_, diags := Decode("plan.wiring.hcl", []byte("system \"gull\" {\ncoldest = \"0 C\"\nambient = \"30 C\"\n}\n"+blocks), nil)
		if want == "" && len(diags) > 0 || want != "" && (len(diags) != 1 || !strings.Contains(diags[0].Detail, want)) {
			t.Errorf("%s: %v, want %q", blocks, diags, want)
		}
	}
}

// Figures as makers print them go together, odd ones too: no relation is so narrow that it meets one.
func TestTrueFiguresGoTogether(t *testing.T) {
	for _, test := range []struct{ block, attributes string }{
		{"battery", `chemistry = "agm"; voltage = "12 V"; cells = 6; capacity = "60 Ah"; discharge_limit = "800 A"; charge_voltage_max = "16 V"; resistance = "3 mohm"; short_circuit = "3 kA"`},
		{"battery", `chemistry = "lifepo4"; voltage = "12 V"; cells = 4; capacity = "300 Ah"; discharge_limit = "200 A"; charge_limit = "20 A"; charge_voltage_max = "14.6 V"; resistance = "2 mohm"`},
		{"battery", `chemistry = "lifepo4"; voltage = "3.2 V"; cells = 1; capacity = "280 Ah"; charge_voltage_max = "3.65 V"; resistance = "0.2 mohm"; bms {; opens_above = "3.75 V"; opens_charge_below = "-20 C"; }`},
		{"battery", `chemistry = "li-ion"; voltage = "12 V"; cells = 5; charge_voltage_max = "14 V"; capacity = "40 Ah"; discharge_limit = "400 A"`},
		{"battery", `chemistry = "flooded"; voltage = "2 V"; cells = 1; capacity = "3000 Ah"; discharge_limit = "30 A"; resistance = "0.15 mohm"`},
		{"alternator", `voltage = "12 V"; regulated_voltage = "15.2 V"; rated = "150 A"`},
		{"solar", `isc = "0.026 A"; imp = "25 mA"`},
		{"supply", `voltage = "12 V"; regulated_voltage = "13.8 V"`},
		{"solar", `voc = "24.9 V"; vmp = "20.4 V"; isc = "10.6 A"; imp = "9.8 A"; max_series_fuse = "15 A"; voc_coefficient = "-66 mV/C"`},
		{"solar", `voc = "140 V"; vmp = "88 V"; isc = "1.4 A"; imp = "1 A"; voc_coefficient = "-0.25 %/C"`},
		{"converter", `rated = "1740 W"; input {; voltage_max = "100 V"; current_max = "35 A"; }; output {; voltage = "12 V"; float = "13.8 V"; equalize = "16 V"; current_max = "30 A"; }`},
		{"converter", `rated = "2000 W"; idle = "1.2 A"; efficiency = "88 %"; input {; voltage_min = "10.5 V"; voltage_max = "17 V"; current_max = "200 A"; }; output {; voltage = "120 V ac"; current_max = "33 A"; }`},
		{"converter", `trigger = "13.3 V"; input {; voltage_min = "9 V"; voltage_max = "16 V"; current_max = "40 A"; }; output {; voltage = "14.4 V"; current_max = "30 A"; }`},
		{"load", `draw = "80 A"; max_fuse = "70 A"; voltage_min = "10 V"; rated_voltage = "12 V"; voltage_max = "15 V"; surge = "240 A"; surge_time = "400 ms"`},
		{"load", `draw = "0 A"; surge = "0 A"; hold_up = "0 s"; own_battery = false`},
		{"fuse", `rating = "100 A"; interrupting = "20 kA"; curve = [["110 A", "14400 s"], ["200 A", "5 s"], ["600 A", "0.3 s"]]; trip = "rcd 30 mA"`},
		{"switch", `cut_in = "13.3 V"; cut_out = "12.8 V"; poles = 2`},
		{"conductor", `size = "40 AWG"; length = "1 mm"; insulation = "105 C"`},
	} {
		if _, diags := Decode("plan.wiring.hcl", []byte(planOf(test.block, test.attributes)), nil); len(diags) > 0 {
			t.Errorf("%s: %s: %v", test.block, test.attributes, diags)
		}
	}
}
