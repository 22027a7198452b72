package report

import (
	_ "embed"
	"io"
	"math"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/states"
	"ferrule/schema"
)

// StatesFormat is the name and version of the JSON listing's form.
const StatesFormat = "ferrule-states/1"

// StatesSchema is the JSON Schema, draft 2020-12, of the JSON listing.
//
//go:embed states.schema.json
var StatesSchema []byte

// The JSON listing. Keys are never left out, lists never null; a number that is not known is null.

type jsonListing struct {
	Format string         `json:"format"`
	Tool   jsonTool       `json:"tool"`
	Plan   *jsonStatePlan `json:"plan"`
	Errors []jsonError    `json:"errors"`
}

type jsonStatePlan struct {
	File      string            `json:"file"`
	System    string            `json:"system"`
	States    jsonStateCount    `json:"states"`
	Corners   []jsonCorner      `json:"corners"`
	Settable  []jsonSettable    `json:"settable"`
	Always    map[string]string `json:"always"`
	Listed    []jsonState       `json:"listed"`
	Questions []jsonAnswer      `json:"questions"`
}

type jsonStateCount struct {
	Total    string `json:"total"`
	Distinct string `json:"distinct"`
	Listed   int    `json:"listed"`
	Examined int    `json:"examined"`
	Limit    int    `json:"limit"`
	More     bool   `json:"more"`
	Complete bool   `json:"complete"`
	Transits bool   `json:"transits"`
}

type jsonCorner struct {
	Corner string `json:"corner"`
	Means  string `json:"means"`
}

type jsonSettable struct {
	Address   string   `json:"address"`
	Label     string   `json:"label"`
	Positions []string `json:"positions"`
	Transits  []string `json:"transits"`
	Follower  bool     `json:"follower"`
	Follows   []string `json:"follows"`
}

type jsonState struct {
	Number    int               `json:"number"`
	State     map[string]string `json:"state"`
	Followers map[string]string `json:"followers"`
	NoPoint   []jsonFold        `json:"no_operating_point"`
	Loads     []jsonLoad        `json:"loads"`
	Dark      []string          `json:"dark"`
	Buses     []jsonLive        `json:"buses"`
	Terminals []jsonTerminal    `json:"terminals"`
	Feeds     []jsonFeed        `json:"feeds"`
	Fullest   []jsonShare       `json:"fullest"`
	MayLive   []string          `json:"may_be_live"`
	Missing   []jsonMissing     `json:"missing"`
}

type jsonFold struct {
	Corner string   `json:"corner"`
	Share  *float64 `json:"share"` // null where none was found
}

type jsonRange struct {
	Least   *jsonValue    `json:"least"`
	Most    *jsonValue    `json:"most"`
	Dark    []string      `json:"no_power"`
	NoPoint []string      `json:"no_operating_point"`
	Missing []jsonMissing `json:"missing"`
}

type jsonValue struct {
	Value  float64 `json:"value"`
	Corner string  `json:"corner"`
}

type jsonLive struct {
	Address string    `json:"address"`
	Label   string    `json:"label"`
	Volts   jsonRange `json:"volts"`
}

type jsonLoad struct {
	jsonLive
	Amps jsonRange `json:"amps"`
}

type jsonTerminal struct {
	Terminal string    `json:"terminal"`
	Open     bool      `json:"open"`
	Volts    jsonRange `json:"volts"`
}

type jsonFeed struct {
	From    string    `json:"from"`
	Kind    string    `json:"kind"`
	Amps    jsonRange `json:"amps"`
	To      []string  `json:"to"`
	Charges []string  `json:"charges"`
}

type jsonShare struct {
	Conductor string    `json:"conductor"`
	Share     *float64  `json:"share"` // null where heat leaves no ampacity
	Amps      jsonValue `json:"amps"`
	Ampacity  float64   `json:"ampacity"`
}

type jsonMissing struct {
	Subject   string `json:"subject"`
	Attribute string `json:"attribute"`
}

type jsonAnswer struct {
	Quantity string            `json:"quantity"`
	Of       string            `json:"of"`
	Unit     string            `json:"unit"`
	Least    *jsonExtreme      `json:"least"`
	Most     *jsonExtreme      `json:"most"`
	Looked   int               `json:"looked_at"`
	Dead     int               `json:"not_live"`
	Unknown  int               `json:"unknown"`
	NoPoint  []jsonFoldedState `json:"no_operating_point"`
	Missing  []jsonMissing     `json:"missing"`
}

type jsonExtreme struct {
	jsonValue
	State map[string]string `json:"state"`
	Way   string            `json:"way"`
	Steps []jsonStep        `json:"steps"`
}

type jsonFoldedState struct {
	jsonFold
	State map[string]string `json:"state"`
}

// StatesJSON writes a listing as one object; l is nil where the plan could not be read.
func StatesJSON(w io.Writer, version string, l *states.Listing, errors []*hcl.Diagnostic) error {
	out := jsonListing{Format: StatesFormat, Tool: jsonTool{version}, Errors: []jsonError{}}
	for _, d := range errors {
		out.Errors = append(out.Errors, jsonError{location(*d.Subject), d.Summary, d.Detail})
	}
	if l != nil {
		out.Plan = statePlan(l)
	}
	return Encode(w, out)
}

func statePlan(l *states.Listing) *jsonStatePlan {
	looked := len(l.States)
	if len(l.Answers) > 0 {
		looked = l.Answers[0].Looked
	}
	out := &jsonStatePlan{
		File: l.File, System: l.System, Corners: []jsonCorner{}, Settable: []jsonSettable{}, Always: stateMap(l.Held), Listed: []jsonState{}, Questions: []jsonAnswer{},
		States: jsonStateCount{l.Total, l.Distinct, looked, l.Examined, l.Limit, l.More, l.Complete, l.Transits},
	}
	for _, c := range l.Corners {
		out.Corners = append(out.Corners, jsonCorner{c.Name, c.What})
	}
	for _, v := range l.Variables {
		h := v.Block.Header()
		out.Settable = append(out.Settable, jsonSettable{h.Addr, h.Label.Value, list(v.Positions), list(v.Throws), v.Follower, list(v.Follows)})
	}
	for _, x := range l.States {
		out.Listed = append(out.Listed, stateOf(x))
	}
	for _, a := range l.Answers {
		out.Questions = append(out.Questions, answerOf(a))
	}
	return out
}

func stateMap(at []lint.Position) map[string]string {
	out := map[string]string{}
	for _, p := range at {
		out[p.Addr] = p.Position
	}
	return out
}

func stateOf(x *states.State) jsonState {
	out := jsonState{Number: x.Number, State: stateMap(x.At), Followers: stateMap(x.Followers), NoPoint: []jsonFold{}, Loads: []jsonLoad{}, Dark: addresses(x.Dark),
		Buses: []jsonLive{}, Terminals: []jsonTerminal{}, Feeds: []jsonFeed{}, Fullest: []jsonShare{}, MayLive: addresses(x.MayLive), Missing: missingOf(x.Missing)}
	for _, n := range x.NoPoint {
		out.NoPoint = append(out.NoPoint, foldOf(n))
	}
	for _, s := range x.Loads {
		out.Loads = append(out.Loads, jsonLoad{live(s), rangeOf(s.Amps)})
	}
	for _, s := range x.Buses {
		out.Buses = append(out.Buses, live(s))
	}
	for _, s := range x.Terminals {
		out.Terminals = append(out.Terminals, jsonTerminal{s.Place, s.Open, rangeOf(s.Volts)})
	}
	for _, f := range x.Feeds {
		out.Feeds = append(out.Feeds, jsonFeed{f.From.Header().Addr, f.Kind, rangeOf(f.Amps), addresses(f.To), addresses(f.Charges)})
	}
	for _, h := range x.Fullest {
		out.Fullest = append(out.Fullest, jsonShare{h.Conductor.Addr, finite(h.Share), jsonValue(h.Amps), h.Ampacity.Value})
	}
	return out
}

func finite(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	return &v
}

func foldOf(n states.NoPoint) jsonFold {
	if n.Unsolved {
		return jsonFold{Corner: n.Corner}
	}
	return jsonFold{n.Corner, &n.Share}
}

func live(s states.Supplied) jsonLive {
	return jsonLive{s.Block.Header().Addr, s.Block.Header().Label.Value, rangeOf(s.Volts)}
}

func rangeOf(r states.Range) jsonRange {
	return jsonRange{(*jsonValue)(r.Least), (*jsonValue)(r.Most), list(r.Dark), list(r.NoPoint), missingOf(r.Missing)}
}

func addresses(bs []schema.Block) []string {
	out := []string{}
	for _, b := range bs {
		out = append(out, b.Header().Addr)
	}
	return out
}

func missingOf(ms []lint.Missing) []jsonMissing {
	out := []jsonMissing{}
	for _, m := range ms {
		out = append(out, jsonMissing(m))
	}
	return out
}

func answerOf(a *states.Answer) jsonAnswer {
	out := jsonAnswer{Quantity: a.What, Of: a.Of, Unit: a.Unit, Least: extremeOf(a.Least), Most: extremeOf(a.Most), Looked: a.Looked, Dead: a.Dead, Unknown: a.Unknown,
		NoPoint: []jsonFoldedState{}, Missing: missingOf(a.Missing)}
	for _, f := range a.NoPoint {
		out.NoPoint = append(out.NoPoint, jsonFoldedState{foldOf(f.NoPoint), stateMap(f.State)})
	}
	return out
}

func extremeOf(e *states.Extreme) *jsonExtreme {
	if e == nil {
		return nil
	}
	return &jsonExtreme{jsonValue{e.Value, e.Corner}, stateMap(e.State), e.Way, stepsOf([]derive.Number{e.Number})}
}
