package schema

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
	"github.com/zclconf/go-cty/cty/function"

	"ferrule/schema/quantity"
)

// functions are what an expression may call.
var functions = map[string]function.Function{"awg": awg, "sum": sum, "times": times}

var functionNames = []string{"awg", "sum", "times"}

// awg(10) and awg("2/0") are the sizes "10 AWG" and "2/0 AWG".
var awg = function.New(&function.Spec{
	Params: []function.Parameter{{Name: "gauge", Type: cty.DynamicPseudoType}},
	Type:   function.StaticReturnType(cty.String),
	Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		text := ""
		switch v := args[0]; v.Type() {
		case cty.Number:
			f, _ := v.AsBigFloat().Float64()
			text = strconv.FormatFloat(f, 'g', 6, 64)
		case cty.String:
			text = strings.TrimSuffix(v.AsString(), " AWG")
		default:
			return cty.NilVal, function.NewArgErrorf(0, "a gauge is a number or a text such as \"2/0\"")
		}
		size, err := quantity.ParseSize(text + " AWG")
		if err != nil {
			return cty.NilVal, function.NewArgError(0, err)
		}
		return cty.StringVal(size.Name), nil
	},
})

// sum("3 A", "400 mA") is a quantity; the quantities may also come in one list.
var sum = function.New(&function.Spec{
	VarParam: &function.Parameter{Name: "quantities", Type: cty.DynamicPseudoType},
	Type:     function.StaticReturnType(cty.String),
	Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		if len(args) == 1 && args[0].CanIterateElements() && !args[0].Type().IsObjectType() {
			args = args[0].AsValueSlice()
		}
		if len(args) == 0 {
			return cty.NilVal, fmt.Errorf("there is nothing to add up")
		}
		total, err := argument(0, args[0])
		for i := 1; i < len(args) && err == nil; i++ {
			var q quantity.Quantity
			if q, err = argument(i, args[i]); err == nil && (q.Dim != total.Dim || q.Kind != total.Kind) {
				err = function.NewArgErrorf(i, "%s cannot be added to %s", q, total)
			}
			total.Value += q.Value
		}
		return spell(total, err)
	},
})

// times("10 A", 1.25) is a quantity times a number.
var times = function.New(&function.Spec{
	Params: []function.Parameter{{Name: "quantity", Type: cty.DynamicPseudoType}, {Name: "number", Type: cty.DynamicPseudoType}},
	Type:   function.StaticReturnType(cty.String),
	Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		q, err := argument(0, args[0])
		if err == nil && args[1].Type() != cty.Number {
			err = function.NewArgErrorf(1, "a bare number is wanted")
		}
		if err != nil {
			return cty.NilVal, err
		}
		f, _ := args[1].AsBigFloat().Float64()
		q.Value *= f
		return spell(q, nil)
	},
})

// argument reads a function's argument as a quantity. Temperatures are points on a scale: they
// cannot be added or multiplied.
func argument(i int, v cty.Value) (quantity.Quantity, error) {
	switch {
	case v.IsNull() || !v.IsKnown() || v.Type() != cty.String:
		return quantity.Quantity{}, function.NewArgErrorf(i, "a quantity is wanted, such as \"10 A\"")
	}
	q, err := quantity.Parse(v.AsString())
	if err == nil && q.Dim == quantity.Temperature {
		err = fmt.Errorf("%q is a temperature, which cannot be reckoned with", clip(v.AsString()))
	}
	if err != nil {
		return q, function.NewArgError(i, err)
	}
	return q, nil
}

// spell writes a quantity so that nothing of its value is lost when it is read again.
func spell(q quantity.Quantity, err error) (cty.Value, error) {
	if err != nil {
		return cty.NilVal, err
	}
	if math.IsNaN(q.Value) || math.Abs(q.Value) > largestNumber {
		return cty.NilVal, fmt.Errorf("the result is out of range")
	}
	s := strconv.FormatFloat(q.Value, 'f', -1, 64)
	if q.Dim != quantity.Ratio {
		s += " " + q.Dim.Symbol()
	}
	if q.Kind != quantity.Unmarked {
		s += " " + q.Kind.String()
	}
	return cty.StringVal(s), nil
}

// largestNumber bounds the numbers of expressions: the library writes out every digit of 1e999999.
const largestNumber = 1e30

// bounded tells numbers that an expression may have.
func bounded(v cty.Value) bool {
	if v.IsNull() || !v.IsKnown() || v.Type() != cty.Number {
		return true
	}
	exponent := v.AsBigFloat().MantExp(nil)
	return !v.AsBigFloat().IsInf() && exponent < 100 && exponent > -100
}

// guardedOps gives each of the library's operations on numbers a twin that takes bare numbers only,
// where the library also takes texts that look like numbers, and whose result is bounded.
// Comparisons also compare two quantities of one dimension: "2 m" < "7 ft".
var guardedOps = map[*hclsyntax.Operation]*hclsyntax.Operation{
	hclsyntax.OpAdd:                guarded(hclsyntax.OpAdd, "left", "right"),
	hclsyntax.OpSubtract:           guarded(hclsyntax.OpSubtract, "left", "right"),
	hclsyntax.OpMultiply:           guarded(hclsyntax.OpMultiply, "left", "right"),
	hclsyntax.OpDivide:             guarded(hclsyntax.OpDivide, "left", "right"),
	hclsyntax.OpModulo:             guarded(hclsyntax.OpModulo, "left", "right"),
	hclsyntax.OpNegate:             guarded(hclsyntax.OpNegate, "operand"),
	hclsyntax.OpLessThan:           guarded(hclsyntax.OpLessThan, "left", "right"),
	hclsyntax.OpLessThanOrEqual:    guarded(hclsyntax.OpLessThanOrEqual, "left", "right"),
	hclsyntax.OpGreaterThan:        guarded(hclsyntax.OpGreaterThan, "left", "right"),
	hclsyntax.OpGreaterThanOrEqual: guarded(hclsyntax.OpGreaterThanOrEqual, "left", "right"),
}

func guarded(op *hclsyntax.Operation, operands ...string) *hclsyntax.Operation {
	spec := &function.Spec{Type: function.StaticReturnType(op.Type)}
	for _, name := range operands {
		spec.Params = append(spec.Params, function.Parameter{Name: name, Type: cty.DynamicPseudoType})
	}
	spec.Impl = func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		if op.Type == cty.Bool && args[0].Type() == cty.String && args[1].Type() == cty.String {
			var err error
			if args, err = comparable(args[0].AsString(), args[1].AsString()); err != nil {
				return cty.NilVal, err
			}
		}
		for _, a := range args {
			if a.Type() != cty.Number {
				return cty.NilVal, fmt.Errorf("numbers are wanted; quantities are added with sum() and multiplied with times()")
			}
		}
		v, err := op.Impl.Call(args)
		if err == nil && !bounded(v) {
			err = fmt.Errorf("the result is out of range")
		}
		return v, err
	}
	return &hclsyntax.Operation{Impl: function.New(spec), Type: op.Type}
}

// comparable gives the numbers by which two quantities or two conductor sizes compare.
func comparable(a, b string) ([]cty.Value, error) {
	x, err := quantity.Parse(a)
	y, err2 := quantity.Parse(b)
	if err == nil && err2 == nil && x.Dim == y.Dim {
		return []cty.Value{cty.NumberFloatVal(x.Value), cty.NumberFloatVal(y.Value)}, nil
	}
	s, err := quantity.ParseSize(a)
	t, err2 := quantity.ParseSize(b)
	if err == nil && err2 == nil {
		return []cty.Value{cty.NumberFloatVal(s.Area), cty.NumberFloatVal(t.Area)}, nil
	}
	return nil, fmt.Errorf("%q and %q cannot be compared: two quantities of one kind, two sizes or two bare numbers can", clip(a), clip(b))
}
