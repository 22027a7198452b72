package explore

import (
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/network"
	"ferrule/schema"
)

// TestOutdoesAtAllVolts draws loads in two bulks on a circuit of 12 V. One that is said to outdo the other draws no
// less at any volts at which things work there: their currents by the laws of what they are, worked out here.
func TestOutdoesAtAllVolts(t *testing.T) {
	said := 0
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBulk(t, 0), drawBulk(t, 10)
		if !a.bulk.outdoes(b.bulk) {
			return
		}
		said++
		for volts := 8.0; volts <= 18; volts += 0.5 {
			if x, y := a.amps(volts), b.amps(volts); x < y*(1-1e-9) {
				t.Fatalf("at %g V %g A is said to outdo %g A: %v and %v", volts, x, y, a.loads, b.loads)
			}
		}
	})
	if said == 0 {
		t.Error("none outdoes another")
	}
}

type drawnBulk struct {
	bulk  *bulk
	loads []*schema.Load
}

func drawBulk(t *rapid.T, from int) drawnBulk {
	out := drawnBulk{bulk: newBulk()}
	for i := range rapid.IntRange(1, 3).Draw(t, "loads") {
		l := &schema.Load{}
		l.Draw.Value, l.Draw.Set = float64(rapid.IntRange(1, 40).Draw(t, "draw"))/4, true
		l.Behavior.Value = rapid.SampledFrom([]string{"constant-current", "constant-power", "resistive"}).Draw(t, "behavior")
		l.Behavior.Set = true
		if rapid.IntRange(0, 3).Draw(t, "rated") == 0 {
			l.RatedVoltage.Value, l.RatedVoltage.Set = rapid.SampledFrom([]float64{6, 13.8, 24}).Draw(t, "volts"), true
		}
		out.loads = append(out.loads, l)
		out.bulk.add(&network.Load{Load: l}, from+i, false)
	}
	return out
}

// amps is what the loads draw at some volts, in A.
func (b drawnBulk) amps(volts float64) float64 {
	sum := 0.0
	for _, l := range b.loads {
		rated := 12.0
		if l.RatedVoltage.Set {
			rated = l.RatedVoltage.Value
		}
		switch l.Behavior.Value {
		case "constant-current":
			sum += l.Draw.Value
		case "constant-power":
			sum += l.Draw.Value * rated / volts
		default:
			sum += l.Draw.Value * volts / rated
		}
	}
	return sum
}
