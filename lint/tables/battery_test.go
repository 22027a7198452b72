package tables

import (
	"math"
	"testing"
)

// Common practice: label voltages of batteries and the cells behind them.
func TestCellsFor(t *testing.T) {
	for chemistry, cells := range map[string]map[float64]int{
		"flooded": {6: 3, 12: 6, 24: 12, 48: 24},
		"agm":     {12: 6, 36: 18, 12.6: 6, 13: 6, 13.8: 6, 16: 8, 25.6: 12}, "gel": {12: 6},
		"lifepo4": {3.2: 1, 6.4: 2, 12: 4, 12.8: 4, 24: 8, 25.6: 8, 36: 12, 38.4: 12, 48: 16, 51.2: 16, 16: 5, 13.2: 4, 14.4: 4, 28.8: 8, 57.6: 16, 72: 24, 192: 60},
		"li-ion":  {12: 3, 24: 6, 36: 10, 48: 13, 3.7: 1},
		"sodium":  {12: 0},
	} {
		for volts, want := range cells {
			if got := CellsFor(chemistry, volts); got != want {
				t.Errorf("%s %g V: %d cells, want %d", chemistry, volts, got, want)
			}
		}
	}
	for _, volts := range []float64{0, -12, math.NaN(), math.Inf(1), 1e300} {
		if got := CellsFor("agm", volts); got != 0 {
			t.Errorf("%g V: %d cells", volts, got)
		}
	}
}

// From memory, but for lifepo4 rested full (3.4 V) and end of charge (3.65 V) a cell, which battery
// makers' texts state.
func TestBatteryVolts(t *testing.T) {
	for _, c := range []struct {
		chemistry string
		cells     int
		want      [3]float64
		full      Status
	}{
		{"flooded", 6, [3]float64{11.8, 12.8, 14.8}, Memory}, {"agm", 12, [3]float64{23.6, 25.6, 29.6}, Memory},
		{"gel", 3, [3]float64{5.9, 6.4, 7.4}, Memory},
		{"lifepo4", 4, [3]float64{11, 13.6, 14.6}, Verified}, {"lifepo4", 16, [3]float64{44, 54.4, 58.4}, Verified},
		{"li-ion", 13, [3]float64{39, 53.3, 54.6}, Memory},
	} {
		empty, rested, end := BatteryVolts(c.chemistry, c.cells)
		for i, v := range []Value{empty, rested, end} {
			within(t, c.chemistry, v.V, c.want[i], 1e-9)
			if !v.Known() || i == 2 && v.Cite.Status != c.full {
				t.Errorf("%s %d: %+v", c.chemistry, i, v)
			}
		}
	}
	for _, cells := range []int{0, -4} {
		if empty, rested, end := BatteryVolts("lifepo4", cells); empty.Known() || rested.Known() || end.Known() {
			t.Errorf("%d cells have a voltage", cells)
		}
	}
	if empty, _, _ := BatteryVolts("sodium", 4); empty.Known() {
		t.Error("an unknown chemistry has a voltage")
	}
	if v := AlternatorLow(); v.V != 12.4 || v.Cite.Status != CommonPractice {
		t.Errorf("alternator: %+v", v)
	}
}

// Common practice, not calibrated: ohm Ah per 12 V block.
func TestBatteryResistance(t *testing.T) {
	for _, c := range []struct {
		chemistry         string
		capacity          float64
		cells             int
		lowMohm, highMohm float64
	}{
		{"lifepo4", 100, 4, 2, 10}, {"lifepo4", 100, 16, 8, 40}, {"li-ion", 50, 14, 14, 70},
		{"agm", 100, 6, 4, 20}, {"flooded", 200, 12, 4, 20}, {"gel", 100, 3, 2, 10},
	} {
		low, high := BatteryResistance(c.chemistry, c.capacity, Blocks(c.chemistry, c.cells))
		within(t, c.chemistry+" low", low.V*1000, c.lowMohm, 1e-9)
		within(t, c.chemistry+" high", high.V*1000, c.highMohm, 1e-9)
		if low.Cite.Status != CommonPractice {
			t.Errorf("%s: %+v", c.chemistry, low.Cite)
		}
	}
	for _, c := range []struct {
		chemistry        string
		capacity, blocks float64
	}{{"sodium", 100, 1}, {"agm", 0, 1}, {"agm", -1, 1}, {"agm", 100, 0}, {"agm", math.NaN(), 1}} {
		if low, high := BatteryResistance(c.chemistry, c.capacity, c.blocks); low.Known() || high.Known() {
			t.Errorf("%+v has a resistance: %+v", c, low)
		}
	}
}

func TestAcceptance(t *testing.T) {
	for _, chemistry := range []string{"flooded", "agm", "gel"} {
		if v := Acceptance(chemistry); v.V != 0.25 || v.Cite.Status != CommonPractice || !LeadAcid(chemistry) || Lithium(chemistry) {
			t.Errorf("%s: %+v", chemistry, v)
		}
	}
	for _, chemistry := range []string{"lifepo4", "li-ion"} {
		if Acceptance(chemistry).Known() || LeadAcid(chemistry) || !Lithium(chemistry) {
			t.Errorf("%s takes what it is given", chemistry)
		}
	}
}
