package schema

import (
	"strings"
	"testing"

	"github.com/zclconf/go-cty/cty"
)

func TestExpressions(t *testing.T) {
	for text, want := range map[string]string{
		`"10 A"`:                               "10 A",
		`"${2 * 3} A"`:                         "6 A",
		`"${10 / 4} A"`:                        "2.5 A",
		`"${10 / 3} A"`:                        "3.33 A",
		`times("10 A", 1.25)`:                  "12.5 A",
		`sum("3 A", "400 mA")`:                 "3.4 A",
		`sum(["3 A", "400 mA"])`:               "3.4 A",
		`sum([for x in [1, 2, 3] : "${x} A"])`: "6 A",
		`let.big ? "20 A" : "10 A"`:            "20 A",
		`let.list[1]`:                          "7 A",
		`let.object.rating`:                    "9 A",
		`[for k, v in let.object : v][0]`:      "9 A",
		`"%{if let.big}5%{else}6%{endif} A"`:   "5 A",
		`"5 mA" < "1 A" ? "1 A" : "2 A"`:       "1 A",
		`"10 AWG" > "6 mm2" ? "1 A" : "2 A"`:   "2 A",
		`3 > 2 && !false ? "1 A" : "2 A"`:      "1 A",
		`let.later`:                            "4 A",
		`(("8 A"))`:                            "8 A",
		`sum(let.objects[*].amps)`:             "11 A",
		`"${let.nested["a"]["b"]} A"`:          "12 A",
	} {
		p := decode(t, `
fuse "main" { rating = `+text+` }
let {
  big     = true
  list    = ["6 A", "7 A"]
  object  = { rating = "9 A" }
  objects = [{ amps = "11 A" }]
  nested  = { a = { b = 12 } }
  later   = let.first
}
let { first = "4 A" }
`)
		if got := p.Fuses[0].Rating; got.String() != want || !got.Set {
			t.Errorf("%s is %s, want %s", text, got, want)
		}
	}
}

func TestSizesOfExpressions(t *testing.T) {
	for text, want := range map[string]string{`awg(10)`: "10 AWG", `awg("2/0")`: "2/0 AWG", `awg("8 AWG")`: "8 AWG", `awg(0)`: "1/0 AWG", `"${4 + 2} mm2"`: "6 mm2"} {
		p := decode(t, "bus \"a\" {}\nbus \"b\" {}\nconductor \"c\" {\n from = bus.a\n to = bus.b\n size = "+text+"\n}\n")
		if got := p.Conductors[0].Size.Name; got != want {
			t.Errorf("%s is %s, want %s", text, got, want)
		}
	}
}

func TestHouseRuleExpressions(t *testing.T) {
	p := decode(t, `
let { most = 3 }
house_rule "r" {
  for     = conductor
  where   = length > "2 m"
  require = size >= "16 AWG" && studs < let.most && label != null
}
`)
	r := p.HouseRules[0]
	vars := map[string]cty.Value{
		"length": cty.StringVal("7 ft"), "size": cty.StringVal("10 AWG"), "studs": cty.NumberIntVal(2), "label": cty.StringVal("x"),
	}
	for name, x := range map[string]Expr{"where": r.Where, "require": r.Require} {
		v, diags := x.Evaluate(vars)
		if diags.HasErrors() || v.Type() != cty.Bool || v.False() {
			t.Errorf("%s gives %#v, %v", name, v, diags)
		}
	}
	vars["studs"] = cty.UnknownVal(cty.Number)
	if v, diags := r.Require.Evaluate(vars); diags.HasErrors() || v.IsKnown() {
		t.Errorf("an unknown input gives %#v, %v", v, diags)
	}
	delete(vars, "studs")
	if _, diags := r.Require.Evaluate(vars); !diags.HasErrors() {
		t.Error("a variable that is not there gives no error")
	}
	vars["size"] = cty.StringVal(strings.Repeat("x", mostBytes))
	if _, diags := r.Require.Evaluate(vars); !diags.HasErrors() {
		t.Error("an expression over a huge value is not refused")
	}
	if v, diags := (Expr{}).Evaluate(nil); diags.HasErrors() || v.IsKnown() {
		t.Errorf("an expression that is left out gives %#v, %v", v, diags)
	}
}

// The static bound is never below what evaluation gives: values are measured against it.
func TestBoundHolds(t *testing.T) {
	for _, text := range []string{
		`"abc"`, `[1, 2, 3]`, `{ a = 1, b = [1, 2] }`, `[for x in [1, 2, 3] : "${x}${x}"]`, `{ for k, v in { a = 1, b = 2 } : k => [v, v] }`,
		`[for x in [[1, 2], [3]] : [for y in x : [y, y, y]]]`, `"%{for x in ["a", "b"]}${x}-${x}%{endfor}"`, `[{ a = "xyz" }, { a = "x" }][*].a`,
		`true ? ["aaaa", "b"] : ["c"]`, `{ for x in ["a", "a", "b"] : x => x... }`, `"${1 / 3}"`, `sum("1 A", "2 A")`, `-1`, `["a", ["bbb"]][1]`,
	} {
		d := newDecoder("plan.wiring.hcl", nil)
		blocks, _ := d.parse("plan.wiring.hcl", []byte("let {\n  a = "+text+"\n}\n"))
		e := blocks[0].body(nil).attributes[0].expr
		v, b, ok := d.evalBound(&scope{}, e)
		if !ok {
			t.Errorf("%s: %v", text, d.problems.list)
			continue
		}
		if m := measure(v); m.bytes > b.bytes || m.elems > b.elems || b.steps < 1 {
			t.Errorf("%s: measured %+v, bound %+v", text, m, b)
		}
	}
}
