package schema

import "github.com/hashicorp/hcl/v2"

// The block vocabulary. Struct tags are the schema: `attr` is the attribute's name, `unit` the
// units' dimensions that fit (by symbol, alternatives split by |), `least` and `most` its bounds where
// they are closer than those of the dimension (split likewise), `zero` that zero fits too (figures
// are above zero otherwise, temperatures and coefficients apart), `oneof` the words that fit, `kinds`
// the kinds of the block that have the attribute, `only` the one place that has it, `block` a nested
// block, `ref` the block types that a reference may name, `keyword` a word without quotes, `unset` what
// a flag that is left out counts as (unknown otherwise: it protects), `doc` the sentence for the
// language reference. The decoder and the reference (README.md) read nothing else.

// Block is any block of a plan.
type Block interface{ Header() *Head }

// Head is what every block has.
type Head struct {
	Type   string    // "fuse"
	Name   string    // "main"
	Addr   string    // "fuse.main", "branch.lights.fuse", "use.rear.fuse.main"
	Range  hcl.Range // of the block's header
	Body   hcl.Range // of the whole block
	Label  Text      `attr:"label" doc:"The name on the part's label; messages use it."`
	Notes  Text      `attr:"notes" doc:"Free text. No rule reads it."`
	PartOf Ref       `attr:"part_of" ref:"source" doc:"The removable source this part lifts out with: present and absent together."`
}

// Header returns the block's head.
func (h *Head) Header() *Head { return h }

// Named is the label where there is one, else the block's name.
func (h *Head) Named() string {
	if h.Label.Set && h.Label.Value != "" {
		return h.Label.Value
	}
	return h.Name
}

// Place is where a part sits and whether it may spark there.
type Place struct {
	Compartment       Ref  `attr:"compartment" ref:"compartment" doc:"The space it sits in."`
	IgnitionProtected Flag `attr:"ignition_protected" doc:"Marked as ignition-protected."`
}

// System is the plan's one system block.
type System struct {
	Head
	Title    Text     `attr:"title" doc:"What the plan is of."`
	Practice Texts    `attr:"practice" oneof:"us-rv us-boat iso-boat vehicle cabin general" doc:"The bodies of practice the plan is graded against; the strictest decides. Left out: general."`
	Ambient  Quantity `attr:"ambient" unit:"C" least:"-60 C" most:"100 C" doc:"Hottest ambient temperature. Left out: 40 C is assumed."`
	Coldest  Quantity `attr:"coldest" unit:"C" least:"-100 C" most:"60 C" doc:"Coldest temperature of the site."`
	Revision Text     `attr:"revision" doc:"The plan's revision: any text, or a date."`
}

// Compartment is a space that parts sit in and wires pass through.
type Compartment struct {
	Head
	Ambient      Quantity `attr:"ambient" unit:"C" least:"-60 C" most:"150 C" doc:"Hottest ambient here; replaces the system's."`
	Ventilated   Flag     `attr:"ventilated" doc:"Has ventilation."`
	Occupied     Flag     `attr:"occupied" doc:"People stay or sleep here."`
	Engine       Flag     `attr:"engine" unset:"false" doc:"Engine space: 50 C is assumed where no ambient is written."`
	FuelVapor    Flag     `attr:"fuel_vapor" unset:"false" doc:"Gas bottles, a gasoline tank or a gasoline engine in this space."`
	GasAppliance Flag     `attr:"gas_appliance" unset:"false" doc:"Gas is burnt here."`
	Wet          Flag     `attr:"wet" unset:"false" doc:"Spray, rain or bilge water gets here."`
	Unheated     Flag     `attr:"unheated" unset:"false" doc:"Can fall below freezing."`
	Coldest      Quantity `attr:"coldest" unit:"C" least:"-100 C" most:"60 C" doc:"Coldest temperature here; replaces the system's."`
	VentedTo     Text     `attr:"vented_to" doc:"Where its vents lead."`
}

// Source is anything that supplies: a battery, alternator, solar array, shore inlet, generator
// or regulated supply.
type Source struct {
	Head
	Place
	Kind    Text     `attr:"kind" oneof:"battery alternator solar shore generator supply" required:"true" doc:"What it is."`
	Voltage Quantity `attr:"voltage" unit:"V" least:"1 V" most:"1500 V" doc:"Nominal voltage; say ac for alternating current."`
	Always  Flag     `attr:"always" unset:"false" doc:"Never goes away. Sources other than batteries come and go unless this is true."`

	// battery
	Chemistry        Text     `attr:"chemistry" oneof:"lifepo4 li-ion flooded agm gel" kinds:"battery" doc:"Cell chemistry."`
	Capacity         Quantity `attr:"capacity" unit:"Ah|Wh" kinds:"battery" doc:"Capacity of one unit."`
	Resistance       Quantity `attr:"resistance" unit:"ohm" kinds:"battery" least:"0.01 mohm" most:"100 ohm" doc:"Internal resistance of one unit; replaces both defaults."`
	DischargeLimit   Quantity `attr:"discharge_limit" unit:"A" kinds:"battery" doc:"Largest continuous discharge current."`
	SurgeLimit       Quantity `attr:"surge_limit" unit:"A" kinds:"battery" doc:"Largest discharge current for a few seconds."`
	ChargeLimit      Quantity `attr:"charge_limit" unit:"A" kinds:"battery" doc:"Largest charge current it accepts."`
	ChargeVoltageMax Quantity `attr:"charge_voltage_max" unit:"V" kinds:"battery" doc:"Highest charge voltage it accepts."`
	ColdChargeCutoff Flag     `attr:"cold_charge_cutoff" kinds:"battery" doc:"Its own protection stops charging when the cells are below freezing."`
	Removable        Flag     `attr:"removable" unset:"false" doc:"Lifts out: absent is one of its states."`
	Usable           Quantity `attr:"usable" unit:"1" kinds:"battery" least:"5 %" doc:"Share of the capacity that is used."`
	Role             Text     `attr:"role" oneof:"house starting" kinds:"battery" doc:"What the battery is for."`
	Cells            Count    `attr:"cells" kinds:"battery" doc:"Cells in series in one unit; replaces the number that follows from the nominal voltage."`
	Series           Count    `attr:"series" kinds:"battery solar" doc:"Units in series."`
	Parallel         Count    `attr:"parallel" kinds:"battery solar" doc:"Strings in parallel."`
	ShortCircuit     Quantity `attr:"short_circuit" unit:"A" kinds:"battery shore generator" doc:"The maker's short-circuit current."`
	MaxSeries        Count    `attr:"max_series" kinds:"battery" doc:"How many units the maker allows in series."`
	BMS              *BMS     `block:"bms" kinds:"battery" doc:"The battery's own cut-off: a switch that nobody drew."`

	// alternator, supply, shore, generator
	Rated            Quantity `attr:"rated" unit:"A|W" kinds:"alternator supply shore generator" doc:"Rated output."`
	RegulatedVoltage Quantity `attr:"regulated_voltage" unit:"V" kinds:"alternator supply" doc:"The voltage its regulator holds."`
	NeutralBond      Text     `attr:"neutral_bond" oneof:"bonded floating switched" kinds:"shore generator supply" doc:"Whether neutral and ground are joined at this source; switched: only while it supplies."`
	ParallelCapable  Flag     `attr:"parallel_capable" kinds:"generator" doc:"Its maker lets it run in parallel with another of its kind."`

	// solar
	Voc            Quantity `attr:"voc" unit:"V" kinds:"solar" most:"1500 V" doc:"Open-circuit voltage of one module at 25 C."`
	Isc            Quantity `attr:"isc" unit:"A" kinds:"solar" doc:"Short-circuit current of one module."`
	Vmp            Quantity `attr:"vmp" unit:"V" kinds:"solar" doc:"Voltage of one module at most power."`
	Imp            Quantity `attr:"imp" unit:"A" kinds:"solar" doc:"Current of one module at most power."`
	VocCoefficient Quantity `attr:"voc_coefficient" unit:"1/C|V/C" kinds:"solar" least:"-1 %/C|-3 V/C" most:"-0.05 %/C|-1 mV/C" doc:"Change of the open-circuit voltage with temperature: below zero, since it falls as a module warms."`
	Coldest        Quantity `attr:"coldest" unit:"C" kinds:"solar" least:"-100 C" most:"60 C" doc:"Coldest morning the modules see; replaces the system's."`
	PeakSun        Quantity `attr:"peak_sun" zero:"true" unit:"s" kinds:"solar" most:"24 h" doc:"Hours of full sun in a day."`
	MaxSeriesFuse  Quantity `attr:"max_series_fuse" unit:"A" kinds:"solar" most:"1 kA" doc:"The module's largest series fuse."`
}

// BMS is a battery's own cut-off.
type BMS struct {
	Range             hcl.Range
	OpensChargeBelow  Quantity `attr:"opens_charge_below" unit:"C" least:"-60 C" most:"40 C" doc:"Temperature below which it stops charging."`
	OpensAbove        Quantity `attr:"opens_above" unit:"V|A" doc:"Voltage or current above which it opens."`
	WarnsBeforeCutoff Flag     `attr:"warns_before_cutoff" doc:"Sounds or shows a warning before it opens."`
}

// Switch is a switch, relay, isolator, disconnect, transfer switch or breakaway switch.
type Switch struct {
	Head
	Place
	Kind           Text        `attr:"kind" oneof:"manual relay isolator disconnect transfer breakaway" doc:"What it is. Left out: manual."`
	Terminals      Texts       `attr:"terminals" required:"true" doc:"The owner's names of its terminals."`
	Positions      []*Position `block:"position" doc:"One block per position; an empty one is off. Without any it is an on-off switch: open, and closed, which joins all its terminals."`
	AnyOrder       Flag        `attr:"any_order" unset:"false" doc:"Thrown from any position to any other; else between neighbours."`
	Rating         Quantity    `attr:"rating" unit:"A" most:"6 kA" doc:"Continuous current of one contact."`
	VoltageRating  Quantities  `attr:"voltage_rating" unit:"V" least:"1 V" most:"5 kV" doc:"The voltage it can break; say dc or ac."`
	Transition     Text        `attr:"transition" oneof:"break-before-make make-before-break" doc:"What happens between two positions. Left out: both are examined."`
	Poles          Count       `attr:"poles" most:"2" doc:"1 breaks the positive only, 2 both. Left out: 1."`
	Follows        Refs        `attr:"follows" ref:"source connector" doc:"Closed exactly while all of these are present or mated."`
	Senses         Texts       `attr:"senses" doc:"The terminals whose voltage it senses."`
	ReachableWhile Refs        `attr:"reachable_while" ref:"mode" doc:"The modes in which somebody can throw it. Left out: every mode."`
	CutIn          Quantity    `attr:"cut_in" unit:"V" doc:"Voltage at which a sensing isolator closes."`
	CutOut         Quantity    `attr:"cut_out" unit:"V" doc:"Voltage at which a sensing isolator opens."`
	Momentary      Flag        `attr:"momentary" unset:"false" doc:"Springs back."`
	On             Ref         `attr:"on" ref:"source bus" doc:"Its first terminal sits directly there."`

	implied bool // by a branch, which names its terminals
}

// Position is one position of a switch.
type Position struct {
	Name  string
	Range hcl.Range
	Joins Joins `attr:"joins" doc:"Groups of terminals that this position connects."`
}

// Fuse is a fuse or circuit breaker.
type Fuse struct {
	Head
	Place
	Kind            Text       `attr:"kind" oneof:"blade glass anl terminal class-t cartridge breaker" doc:"What it is."`
	Rating          Quantity   `attr:"rating" unit:"A" most:"6 kA" doc:"Rated current."`
	VoltageRating   Quantities `attr:"voltage_rating" unit:"V" least:"1 V" most:"5 kV" doc:"Highest voltage it can open; say dc or ac."`
	Interrupting    Quantity   `attr:"interrupting" unit:"A" most:"300 kA" doc:"Largest fault current it can open."`
	Curve           Curve      `attr:"curve" doc:"Its own curve, as [current, time] points."`
	Reset           Text       `attr:"reset" oneof:"manual automatic" doc:"How a breaker is reset."`
	Polarized       Flag       `attr:"polarized" doc:"Marked for one direction of current."`
	Trip            Trip       `attr:"trip" most:"3 A" doc:"Residual current trip, as \"gfci 5 mA\"."`
	SeriesRatedWith Ref        `attr:"series_rated_with" ref:"fuse" doc:"The device upstream with which it is series rated."`
	On              Ref        `attr:"on" ref:"source bus" doc:"Its line terminal sits directly there."`
}

// Converter moves energy from one pair of wires to another.
type Converter struct {
	Head
	Place
	Kind             Text     `attr:"kind" oneof:"dc-dc mppt charger inverter load-center diode" required:"true" doc:"What it is."`
	Input            *Port    `block:"input" doc:"Limits of the input."`
	Output           *Port    `block:"output" doc:"What the output gives."`
	Rated            Quantity `attr:"rated" unit:"W" doc:"Rated power."`
	Charges          Refs     `attr:"charges" ref:"source" doc:"The batteries it is there to charge."`
	Efficiency       Quantity `attr:"efficiency" unit:"1" least:"20 %" doc:"Output power over input power."`
	Isolated         Flag     `attr:"isolated" doc:"No connection between input and output, negatives included."`
	BlocksReverse    Flag     `attr:"blocks_reverse" doc:"No current can run from output to input."`
	LimitsCurrent    Flag     `attr:"limits_current" doc:"Holds its output at current_max even into a short."`
	Idle             Quantity `attr:"idle" zero:"true" unit:"A|W" doc:"What it draws with nothing on its output."`
	Inrush           Quantity `attr:"inrush" zero:"true" unit:"A" doc:"Peak current when it is connected."`
	Trigger          Trigger  `attr:"trigger" doc:"What starts it: an input voltage, or \"ignition\"."`
	NeedsBattery     Flag     `attr:"needs_battery" doc:"Must not run without a battery on its output."`
	ColdChargeCutoff Flag     `attr:"cold_charge_cutoff" doc:"It stops charging when the battery is below freezing."`
	NeutralBond      Text     `attr:"neutral_bond" oneof:"bonded floating switched" doc:"Whether it joins neutral and ground; switched: only while it inverts."`
	ParallelCapable  Flag     `attr:"parallel_capable" doc:"Its maker lets its output run in parallel with another of its kind."`
}

// Port is one side of a converter.
type Port struct {
	Range      hcl.Range
	VoltageMin Quantity `attr:"voltage_min" only:"input" unit:"V" doc:"Lowest voltage it works at."`
	VoltageMax Quantity `attr:"voltage_max" only:"input" unit:"V" most:"1500 V" doc:"Highest voltage it survives."`
	CurrentMax Quantity `attr:"current_max" unit:"A" most:"6 kA" doc:"Largest current."`
	Accepts    Texts    `attr:"accepts" only:"input" oneof:"solar dc" doc:"What may feed this input."`
	Voltage    Quantity `attr:"voltage" only:"output" unit:"V" doc:"Output voltage; say ac for alternating current."`
	Profile    Text     `attr:"profile" only:"output" oneof:"lifepo4 li-ion flooded agm gel" doc:"The chemistry its charge profile is for."`
	Float      Quantity `attr:"float" only:"output" unit:"V" doc:"Float voltage."`
	Equalize   Quantity `attr:"equalize" only:"output" unit:"V" doc:"Equalising voltage."`
}

// Bus is a bus bar, a panel or the chassis. It is its own terminal.
type Bus struct {
	Head
	Place
	Rating   Quantity `attr:"rating" unit:"A" most:"6 kA" doc:"Continuous current."`
	Studs    Count    `attr:"studs" doc:"How many studs it has."`
	Polarity Text     `attr:"polarity" oneof:"pair positive negative chassis ground" doc:"One node, or a pair. Left out: pair."`
}

// Connector is a plug and socket, or any contact that comes apart.
type Connector struct {
	Head
	Place
	Style             Text       `attr:"style" doc:"The mating family, in the owner's word: two connectors of one style can be mated to each other."`
	Rating            Quantity   `attr:"rating" unit:"A" most:"6 kA" doc:"Continuous current of one contact."`
	VoltageRating     Quantities `attr:"voltage_rating" unit:"V" least:"1 V" most:"5 kV" doc:"Highest voltage; say dc or ac."`
	Key               Text       `attr:"key" doc:"Colour or keying; \"none\" means that it can be turned round."`
	Contacts          Texts      `attr:"contacts" doc:"Names of contacts beside the pair."`
	Follows           Refs       `attr:"follows" ref:"source connector" doc:"Mated exactly while all of these are present or mated."`
	Tow               Flag       `attr:"tow" unset:"false" doc:"The tow plug: it parts in a breakaway."`
	ApartFrom         Refs       `attr:"apart_from" ref:"connector" doc:"Connectors that can never be brought to this one."`
	Mated             Text       `attr:"mated" oneof:"always" doc:"Never taken apart. Left out: it comes and goes."`
	Exposed           Text       `attr:"exposed" oneof:"free fixed none" doc:"Which side has contacts that can be touched when unmated."`
	LoadBreak         Flag       `attr:"load_break" doc:"Rated to be pulled under load."`
	ContactResistance Quantity   `attr:"contact_resistance" zero:"true" unit:"ohm" most:"1 ohm" doc:"Resistance of one contact."`
	On                Ref        `attr:"on" ref:"source bus" doc:"Its fixed side sits directly there."`
}

// Load is anything that uses power.
type Load struct {
	Head
	Place
	Kind         Text     `attr:"kind" oneof:"alarm bilge-pump brake light electronics motor heater other" doc:"What it is."`
	Draw         Quantity `attr:"draw" zero:"true" unit:"A" doc:"Current at its rated voltage."`
	Power        Quantity `attr:"power" zero:"true" unit:"W" doc:"Power at its rated voltage."`
	Resistance   Quantity `attr:"resistance" unit:"ohm" least:"1 mohm" doc:"Resistance."`
	Behavior     Text     `attr:"behavior" oneof:"constant-current constant-power resistive" doc:"How its current follows the voltage."`
	VoltageMin   Quantity `attr:"voltage_min" unit:"V" doc:"Lowest voltage it works at."`
	VoltageMax   Quantity `attr:"voltage_max" unit:"V" most:"1500 V" doc:"Highest voltage it survives."`
	RatedVoltage Quantity `attr:"rated_voltage" unit:"V" doc:"Voltage at which draw and power are stated."`
	HoursPerDay  Quantity `attr:"hours_per_day" zero:"true" unit:"s" most:"24 h" doc:"How long it runs in a day."`
	RunsIn       Refs     `attr:"runs_in" ref:"mode" doc:"The modes in which it may run. Left out: all."`
	Control      Ref      `attr:"control" ref:"switch" doc:"A hand or float switch whose open is a choice."`
	Receptacle   Flag     `attr:"receptacle" unset:"false" doc:"A socket that anything may be plugged into."`
	Surge        Quantity `attr:"surge" zero:"true" unit:"A" doc:"Starting current."`
	SurgeTime    Quantity `attr:"surge_time" zero:"true" unit:"s" most:"1 h" doc:"How long the starting current lasts."`
	Critical     Text     `attr:"critical" oneof:"life-safety navigation none" doc:"What depends on it."`
	NeededIn     Refs     `attr:"needed_in" ref:"mode" doc:"The modes in which it must have power. Left out: all."`
	OwnBattery   Flag     `attr:"own_battery" doc:"It has a battery of its own."`
	HoldUp       Quantity `attr:"hold_up" zero:"true" unit:"s" doc:"How long its own battery lasts."`
	MaxFuse      Quantity `attr:"max_fuse" unit:"A" most:"6 kA" doc:"The maker's largest fuse."`
	Spark        Flag     `attr:"spark" unset:"false" doc:"Makes or breaks a contact in use."`
	Switched     Flag     `attr:"switched" unset:"false" only:"branch" doc:"In a branch: a hand switch stands before it."`
}

// Conductor is a pair of wires, or one wire where polarity says so.
type Conductor struct {
	Head
	From          Ref        `attr:"from" ref:"terminal" required:"true" doc:"Where it starts."`
	To            Ref        `attr:"to" ref:"terminal" required:"true" doc:"Where it ends."`
	Size          Size       `attr:"size" unit:"size" doc:"Conductor size: AWG, kcmil or mm2."`
	Length        Quantity   `attr:"length" unit:"m" doc:"One way, as laid."`
	Polarity      Text       `attr:"polarity" oneof:"pair positive negative grounding" doc:"Left out: pair."`
	Insulation    Quantity   `attr:"insulation" unit:"C" least:"40 C" most:"600 C" doc:"Temperature rating of the insulation. Left out: 60 C is assumed."`
	VoltageRating Quantities `attr:"voltage_rating" unit:"V" least:"1 V" most:"40 kV" doc:"Voltage rating of the insulation."`
	Material      Text       `attr:"material" oneof:"copper tinned-copper aluminum" doc:"Left out: copper."`
	Stranding     Text       `attr:"stranding" oneof:"stranded solid" doc:"Left out: stranded."`
	Bundle        Count      `attr:"bundle" doc:"Current-carrying conductors that run touching, this pair's included."`
	Through       Refs       `attr:"through" ref:"compartment" doc:"The spaces it passes."`
	Sheathed      Flag       `attr:"sheathed" doc:"In a sheath, conduit or loom all the way."`
	Color         Text       `attr:"color" doc:"Jacket colour."`
	Grounding     Size       `attr:"grounding" unit:"size" doc:"Size of the equipment grounding conductor in the same cable."`
	Parallel      Count      `attr:"parallel" doc:"Equal conductors in parallel."`
	Cranking      Flag       `attr:"cranking" unset:"false" doc:"Feeds an engine's starter."`
}

// Branch is a fused circuit in one block: it expands to a fuse, a conductor and loads.
type Branch struct {
	Head
	From  Ref      `attr:"from" ref:"terminal" required:"true" doc:"Where its fuse sits: a bus, or a terminal."`
	Parts []string // addresses of the blocks it expanded to, in order
}

// Mode is a set of states that the plan's user really uses.
type Mode struct {
	Head
	State    Pins `attr:"state" ref:"switch connector source" doc:"The positions that make the mode. A switch that somebody can throw in it (see reachable_while) may have any position all the same, whatever holds the pin."`
	Occupied Flag `attr:"occupied" unset:"true" doc:"People are aboard. Left out: true."`
	By       Text `attr:"by" oneof:"hardware habit" doc:"What holds the pins."`
}

// Interlock rules out combinations of positions.
type Interlock struct {
	Head
	Never Combinations `attr:"never" ref:"switch connector source" doc:"Each object is one combination that cannot occur."`
	By    Text         `attr:"by" oneof:"hardware habit" doc:"What does it: hardware, or somebody's habit."`
}

// Waiver accepts one finding for a reason and a time.
type Waiver struct {
	Head
	Rule   Text `attr:"rule" required:"true" doc:"The rule's id."`
	At     Ref  `attr:"at" ref:"block" required:"true" doc:"The part the finding is about."`
	Reason Text `attr:"reason" doc:"Why it is accepted."`
	By     Text `attr:"by" doc:"Who accepted it."`
	Until  Date `attr:"until" doc:"The last day it holds."`
}

// HouseRule is an owner's or club's own rule.
type HouseRule struct {
	Head
	For      Text `attr:"for" keyword:"true" oneof:"source switch fuse converter bus connector load conductor compartment" required:"true" doc:"The block type it is about."`
	Where    Expr `attr:"where" doc:"Which blocks it is about. Left out: all of the type."`
	Require  Expr `attr:"require" required:"true" doc:"What must be true of them."`
	Severity Text `attr:"severity" oneof:"danger warning caution notice" doc:"Left out: caution."`
	Message  Text `attr:"message" doc:"What to say when it is not."`
	Cite     Text `attr:"cite" doc:"Where the rule comes from."`
}

// Kit is the header of a kit file: a shared sub-assembly.
type Kit struct {
	Head
	Title Text `attr:"title" doc:"What the kit is."`
}

// Parameter is one parameter of a kit.
type Parameter struct {
	Head
	Default Expr `attr:"default" doc:"Value where the use block gives none."`
}

// Use instantiates a kit. Its other attributes are the kit's parameters.
type Use struct {
	Head
	Kit   Text     `attr:"kit" required:"true" doc:"The kit file, from the plan's own folder."`
	Parts []string // addresses of the blocks it expanded to, in order
}
