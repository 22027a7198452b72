package schema

import "testing"

func TestWrites(t *testing.T) {
	plan, diags := Decode("tern.wiring.hcl", []byte(`system "tern" {}
converter "step" {
  kind = "dc-dc"
  rated = null
  input { voltage_max = "16 V" }
}
`), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	for attr, want := range map[string]bool{
		"kind": true, "rated": false, "efficiency": false, "input voltage_max": true, "input voltage_min": false, "output voltage": false, "nothing": false, "input": false,
	} {
		if got := Writes(plan.Block("converter.step"), attr); got != want {
			t.Errorf("%s: %v", attr, got)
		}
	}
	if Writes(nil, "kind") || Writes((*Load)(nil), "draw") {
		t.Error("no block writes something")
	}
}

// TestOrdered has a plan in its own order and in another: both are the same, and the plan itself stays as it is.
func TestOrdered(t *testing.T) {
	for _, text := range []string{"bus \"b\" {}\nload \"a\" {}\nbus \"a\" {}\n", "bus \"a\" {}\nbus \"b\" {}\nload \"a\" {}\n"} {
		plan, diags := Decode("tern.wiring.hcl", []byte("system \"tern\" {}\n"+text), nil)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		first := plan.Buses[0].Addr
		got := ""
		for _, b := range plan.Ordered().Blocks() {
			got += b.Header().Addr + " "
		}
		if got != "bus.a bus.b load.a system.tern " || plan.Ordered().Buses[0].Addr != "bus.a" || plan.Buses[0].Addr != first {
			t.Errorf("%q: %q", text, got)
		}
	}
}
