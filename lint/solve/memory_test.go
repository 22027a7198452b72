package solve

import (
	"reflect"
	"testing"
)

// TestMemoryTellsApart changes one figure of a network after another: each makes it another network, and the first is
// still remembered. Fields that are added to a network are looked at too.
func TestMemoryTellsApart(t *testing.T) {
	cell, _ := NewCell(22, 6, 18, 5, 1, 1, 1)
	n := &Net{Nodes: 4, References: []int{0}, Branches: []Branch{{1, 2, 0.1}},
		Elements:   []Element{{Kind: Battery, P: 1, N: 0, Volts: 12, Ohms: 0.01}, {Kind: Array, P: 3, N: 0, Cell: cell}},
		Converters: []Converter{{InP: 3, OutP: 2, Volts: 14, Ohms: 0.01, Amps: 1, Efficiency: 0.9}}}
	m := &Memory{}
	first, _ := m.Solve(n)
	seen := map[key]bool{n.key(0, 0): true, n.key(1, 0): true, n.key(0, 1): true}
	if len(seen) != 3 {
		t.Error("two nodes are not told apart")
	}
	for _, part := range []any{n, &n.References[0], &n.Branches[0], &n.Elements[1], cell, &n.Converters[0]} {
		change(reflect.ValueOf(part).Elem(), func(field string) {
			if k := n.key(0, 0); seen[k] {
				t.Errorf("%T.%s is not told apart", part, field)
			} else {
				seen[k] = true
			}
		})
	}
	if again, _ := m.Solve(n); again != first || !first.Found {
		t.Error("the first network was forgotten, or has no point")
	}
	if other, _ := new(Memory).Solve(n); !reflect.DeepEqual(other, first) {
		t.Error("what is remembered is not what is solved")
	}
}

// change adds to each number of a struct in turn, and turns each flag, calls f and puts it back.
func change(v reflect.Value, f func(field string)) {
	if v.Kind() == reflect.Int {
		v.SetInt(v.Int() + 1)
		f("")
		v.SetInt(v.Int() - 1)
		return
	}
	for i := range v.NumField() {
		x := reflect.NewAt(v.Field(i).Type(), v.Field(i).Addr().UnsafePointer()).Elem() // unexported ones too
		old := reflect.ValueOf(x.Interface())
		switch {
		case x.CanInt():
			x.SetInt(x.Int() + 1)
		case x.CanUint():
			x.SetUint(x.Uint() + 1)
		case x.CanFloat():
			x.SetFloat(x.Float() + 1)
		case x.Kind() == reflect.Bool:
			x.SetBool(!x.Bool())
		case x.Kind() == reflect.Pointer || x.Kind() == reflect.Slice:
			x.SetZero()
		}
		f(v.Type().Field(i).Name)
		x.Set(old)
	}
}
