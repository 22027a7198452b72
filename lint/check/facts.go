package check

import (
	"cmp"
	"maps"
	"reflect"
	"slices"
	"strings"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// addFacts says what the report rests on.
func (r *run) addFacts(out *Report) {
	for i := range r.net.Nodes {
		out.HasAC = out.HasAC || r.net.Nodes[i].AC
	}
	figures := r.assumed()
	out.Assumed = len(figures)
	out.Assumptions = slices.Concat(figures, r.transitions(), r.circumstances(), r.occupied())
	slices.SortStableFunc(out.Assumptions, func(a, b Assumption) int {
		return cmp.Or(strings.Compare(a.Subject, b.Subject), strings.Compare(a.Attribute, b.Attribute))
	})
}

// assumed lists the values that any answer leaned on, one line for each attribute left out.
func (r *run) assumed() []Assumption {
	type key struct{ subject, attribute string }
	found := map[key][]derive.Number{}
	for _, vs := range r.verdicts {
		for _, v := range vs {
			derive.Walk(v.Numbers, func(n derive.Number) {
				if n.Kind == derive.Assumption {
					k := key{n.Subject, n.Attribute}
					found[k] = append(found[k], n)
				}
			})
		}
	}
	var out []Assumption
	for k, ns := range found {
		slices.SortFunc(ns, func(a, b derive.Number) int {
			return cmp.Or(cmp.Compare(a.Value, b.Value), strings.Compare(a.Unit, b.Unit), strings.Compare(a.Source, b.Source))
		})
		out = append(out, Assumption{k.subject, k.attribute, words(ns, derive.Number.Text), words(ns, func(n derive.Number) string { return n.Source })})
	}
	return out
}

// words joins what is said of several figures, each once.
func words(ns []derive.Number, of func(derive.Number) string) string {
	var out []string
	for _, n := range ns {
		if s := of(n); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return strings.Join(out, "; ")
}

// transitions lists the switches of which both the overlap and the gap were examined.
func (r *run) transitions() []Assumption {
	var out []Assumption
	for _, v := range r.net.Vars {
		if slices.ContainsFunc(v.Throws, func(t network.Throw) bool { return t.Assumed }) {
			out = append(out, Assumption{v.Addr, "transition", "overlap and gap", "left out: both are examined"})
		}
	}
	return out
}

// occupied says where people were taken to be aboard.
func (r *run) occupied() []Assumption {
	if len(r.plan.Modes) == 0 {
		return []Assumption{{"plan", "mode", "none", "without modes people may be aboard in every state"}}
	}
	for _, m := range r.plan.Modes {
		if !m.Occupied.Set {
			return []Assumption{{"plan", "occupied", "true", "modes that do not say it are taken to be occupied"}}
		}
	}
	return nil
}

// circumstances is one line for all flags that describe a circumstance, are left out somewhere and
// count as false there.
func (r *run) circumstances() []Assumption {
	left := map[string]bool{}
	for _, b := range r.plan.Blocks() {
		leftOut(reflect.ValueOf(b).Elem(), b.Header(), left)
	}
	if len(left) == 0 {
		return nil
	}
	names := slices.Sorted(maps.Keys(left))
	return []Assumption{{"plan", strings.Join(names, ", "), "false", "circumstances that parts do not mention are taken not to be so"}}
}

// leftOut notes the flags of a block that the schema counts as false where they are left out.
func leftOut(v reflect.Value, h *schema.Head, left map[string]bool) {
	for i := range v.NumField() {
		field := v.Type().Field(i)
		if !field.IsExported() || field.Tag.Get("unset") != "false" {
			continue
		}
		if flag, ok := v.Field(i).Interface().(schema.Flag); ok && !flag.Set && fits(v, field.Tag, h) {
			left[field.Tag.Get("attr")] = true
		}
	}
}

// fits says whether the block could have had the attribute.
func fits(v reflect.Value, tag reflect.StructTag, h *schema.Head) bool {
	if only := tag.Get("only"); only != "" {
		return strings.Contains("."+h.Addr, "."+only+".")
	}
	kinds, field := tag.Get("kinds"), v.FieldByName("Kind")
	if kinds == "" || !field.IsValid() {
		return true
	}
	kind, ok := field.Interface().(schema.Text)
	return ok && slices.Contains(strings.Fields(kinds), kind.Value)
}
