package report

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/lint/explain"
	"ferrule/lint/suggest"
	"ferrule/lint/term"
)

// Format is the name and version of the JSON report's form.
const Format = "ferrule-report/1"

// Schema is the JSON Schema, draft 2020-12, of the JSON report.
//
//go:embed report.schema.json
var Schema []byte

// The JSON report. Keys are never left out, lists never null.

type jsonReport struct {
	Format string      `json:"format"`
	Tool   jsonTool    `json:"tool"`
	Plans  []jsonPlan  `json:"plans"`
	Errors []jsonError `json:"errors"`
}

type jsonTool struct {
	Version string `json:"version"`
}

type jsonPlan struct {
	File        string           `json:"file"`
	System      string           `json:"system"`
	Practice    []string         `json:"practice"`
	Summary     jsonSummary      `json:"summary"`
	Findings    []jsonFinding    `json:"findings"`
	Assumptions []jsonAssumption `json:"assumptions"`
	Cautions    []string         `json:"cautions"`
}

type jsonSummary struct {
	Danger    int        `json:"danger"`
	Warning   int        `json:"warning"`
	Caution   int        `json:"caution"`
	Notice    int        `json:"notice"`
	NotProven int        `json:"not_proven"`
	Waived    int        `json:"waived"`
	Checks    int        `json:"checks"`
	Holds     int        `json:"holds"`
	States    jsonStates `json:"states"`
}

type jsonStates struct {
	Total    string `json:"total"`
	Distinct string `json:"distinct"`
	Examined int    `json:"examined"`
	Complete bool   `json:"complete"`
}

type jsonFinding struct {
	Number       int               `json:"number"`
	Rule         string            `json:"rule"`
	Severity     string            `json:"severity"`
	RuleSeverity string            `json:"rule_severity"`
	Verdict      string            `json:"verdict"`
	Subject      string            `json:"subject"`
	Related      []string          `json:"related"`
	Location     jsonLocation      `json:"location"`
	State        map[string]string `json:"state"`
	Message      string            `json:"message"`
	Steps        []jsonStep        `json:"steps"`
	Path         []string          `json:"path"`
	Citations    []jsonCitation    `json:"citations"`
	Suggestion   string            `json:"suggestion"`
	Suggestions  []jsonSuggestion  `json:"suggestions"`
	Folded       []jsonFolded      `json:"folded"`
	Fingerprint  string            `json:"fingerprint"`
	Waived       *jsonWaiver       `json:"waived"`
}

type jsonSuggestion struct {
	Kind    string     `json:"kind"`
	Summary string     `json:"summary"`
	Reason  string     `json:"reason"`
	Edits   []jsonEdit `json:"edits"`
	Before  []string   `json:"before"`
	After   []string   `json:"after"`
}

type jsonEdit struct {
	Start int    `json:"start"` // bytes of the plan's text
	End   int    `json:"end"`
	Text  string `json:"text"`
}

type jsonLocation struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"end_line"`
	EndColumn int    `json:"end_column"`
}

type jsonStep struct {
	Quantity string   `json:"quantity"`
	Symbol   string   `json:"symbol"`
	Value    *float64 `json:"value"` // null where it is unlimited or unknown
	Unit     string   `json:"unit"`
	Source   string   `json:"source"`
}

type jsonCitation struct {
	Ref  string `json:"ref"`
	Note string `json:"note"`
}

type jsonFolded struct {
	Rule    string `json:"rule"`
	Subject string `json:"subject"`
	Message string `json:"message"`
}

type jsonWaiver struct {
	Reason string `json:"reason"`
	By     string `json:"by"`
	Until  string `json:"until"`
}

type jsonAssumption struct {
	Subject   string `json:"subject"`
	Attribute string `json:"attribute"`
	Value     string `json:"value"`
	Source    string `json:"source"`
}

type jsonError struct {
	jsonLocation
	Summary string `json:"summary"`
	Detail  string `json:"detail"`
}

// JSON writes the report of a run as one object. What the tool itself failed at stands in errors,
// beside the plans that could not be read.
func JSON(w io.Writer, run *Run) error {
	out := jsonReport{Format: Format, Tool: jsonTool{run.Version}, Plans: []jsonPlan{}, Errors: []jsonError{}}
	for _, p := range run.Plans {
		out.Plans = append(out.Plans, planOf(p, run.Suggestions))
	}
	for _, d := range run.Errors {
		out.Errors = append(out.Errors, jsonError{location(*d.Subject), d.Summary, d.Detail})
	}
	for _, p := range run.Plans {
		start := hcl.Range{Filename: p.File, Start: hcl.InitialPos, End: hcl.InitialPos}
		if run.Cut(p) {
			out.Errors = append(out.Errors, jsonError{location(start), "Suggestions not finished", unlooked})
		}
		for _, f := range p.Failures {
			what := "The tool failed"
			if strings.Contains(f, check.Stopped) {
				what = "Not finished in time"
			}
			out.Errors = append(out.Errors, jsonError{location(start), what, f})
		}
	}
	return Encode(w, out)
}

// Encode writes a value as indented JSON that a terminal can show: what could steer one is escaped.
func Encode(w io.Writer, v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(shown7(b.Bytes()))
	return err
}

// shown7 writes every rune that may not be shown as a JSON escape; between strings there is none.
func shown7(src []byte) []byte {
	out := make([]byte, 0, len(src))
	for len(src) > 0 {
		r, size := utf8.DecodeRune(src)
		switch {
		case r == '\n' || term.Shown(r):
			out = append(out, src[:size]...)
		case r > 0xFFFF:
			a, b := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, a, b)
		default:
			out = fmt.Appendf(out, `\u%04x`, r)
		}
		src = src[size:]
	}
	return out
}

func planOf(r *check.Report, ways map[*check.Finding]suggest.Ways) jsonPlan {
	s := r.Summary
	out := jsonPlan{
		File: r.File, System: r.System, Practice: list(r.Practices), Findings: []jsonFinding{}, Assumptions: []jsonAssumption{}, Cautions: []string{},
		Summary: jsonSummary{s.Danger, s.Warning, s.Caution, s.Notice, s.NotProven, s.Waived, s.Checks, s.Holds,
			jsonStates{s.States.Total, s.States.Distinct, s.States.Examined, s.States.Complete}},
	}
	for _, f := range r.Findings {
		x := findingOf(r, f)
		for _, w := range ways[f].List {
			x.Suggestions = append(x.Suggestions, suggestionOf(w))
		}
		if ways != nil && !ways[f].Cut && !ways[f].Left { // they were asked for: the best that there is, or none
			x.Suggestion = "none"
		}
		if len(x.Suggestions) > 0 && (ways[f].Good() || !ways[f].Cut) {
			x.Suggestion = x.Suggestions[0].Kind
		}
		out.Findings = append(out.Findings, x)
	}
	for _, a := range r.Assumptions {
		out.Assumptions = append(out.Assumptions, jsonAssumption(a))
	}
	for _, c := range explain.Cautions(explain.AboutOf(r)) {
		out.Cautions = append(out.Cautions, c.Short)
	}
	return out
}

func findingOf(r *check.Report, f *check.Finding) jsonFinding {
	v := f.Verdict
	out := jsonFinding{
		Number: f.Number, Rule: f.Rule.ID, Severity: f.Severity.String(), RuleSeverity: f.RuleSeverity.String(), Verdict: v.Outcome.String(),
		Subject: v.Subject.Header().Addr, Related: list(v.Related), Location: location(lint.Where(v.Subject)), State: map[string]string{},
		Message: f.Message(), Steps: stepsOf(v.Numbers), Path: list(v.Path), Citations: []jsonCitation{}, Suggestion: "none",
		Suggestions: []jsonSuggestion{}, Folded: []jsonFolded{}, Fingerprint: f.Fingerprint, Waived: waiverOf(f),
	}
	if f.Rule.Remedy {
		out.Suggestion = "possible"
	}
	for _, p := range v.State {
		out.State[p.Addr] = p.Position
	}
	for _, c := range r.Citations(f.Rule) {
		out.Citations = append(out.Citations, jsonCitation{c.Ref, explain.Standing(c)})
	}
	for _, x := range f.Folded {
		out.Folded = append(out.Folded, jsonFolded{x.Rule, x.Subject, x.Message})
	}
	return out
}

func suggestionOf(w suggest.Suggestion) jsonSuggestion {
	out := jsonSuggestion{Kind: w.Kind.String(), Summary: strings.Join(slices.Concat(w.Steps, w.Needs), " "), Reason: w.Reason, Edits: []jsonEdit{}, Before: []string{}, After: []string{}}
	for _, e := range w.Edits {
		out.Edits = append(out.Edits, jsonEdit{e.Start, e.End, e.Text})
	}
	for _, n := range w.Numbers {
		s := n.Quantity + " " + derive.Text(n.Value, n.Unit)
		if n.When == "before" {
			out.Before = append(out.Before, s)
		} else {
			out.After = append(out.After, s)
		}
	}
	return out
}

func stepsOf(ns []derive.Number) []jsonStep {
	out := []jsonStep{}
	for _, s := range derive.Steps(ns...) {
		step := jsonStep{Quantity: s.Quantity, Symbol: s.Symbol, Unit: s.Unit, Source: explain.Origin(s)}
		if v := s.Value; !math.IsNaN(v) && !math.IsInf(v, 0) {
			step.Value = &v
		}
		out = append(out, step)
	}
	return out
}

func waiverOf(f *check.Finding) *jsonWaiver {
	w := f.Waived
	if w == nil {
		return nil
	}
	out := &jsonWaiver{Reason: w.Reason.Value, By: w.By.Value}
	if w.Until.Set {
		out.Until = w.Until.Value.Format("2006-01-02")
	}
	return out
}

func location(r hcl.Range) jsonLocation {
	return jsonLocation{r.Filename, max(r.Start.Line, 1), max(r.Start.Column, 1), max(r.End.Line, 1), max(r.End.Column, 1)}
}

// list is never nil, so that it is written as [].
func list(s []string) []string { return append([]string{}, s...) }
