package explain

import "fmt"

// Caution is one of the sentences that every report ends with.
type Caution struct{ Short, Long string }

// About says what of a report decides which cautions it carries.
type About struct {
	AC           bool // the plan has alternating current
	PracticeLeft bool // the plan names no practice
	Assumed      int  // values that were assumed
}

// Cautions lists them, the one that defers to those who decide first.
func Cautions(a About) []Caution {
	out := []Caution{deference, unmeasured(a.Assumed), battery, cutOff}
	if a.AC {
		out = append(out, mains)
	}
	out = append(out, danger)
	if a.PracticeLeft {
		out = append(out, general)
	}
	return out
}

var deference = Caution{
	"This is a check of the plan as written and approves nothing: the code in force, the makers' instructions and a licensed electrician or a certified marine or RV technician decide.",
	"This is a check of the plan as it is written, by rules, over the states that the report counts. It is no approval of an installation. " +
		"The code in force where you are, the instructions of the makers, and a licensed electrician or a certified marine or RV technician decide.",
}

func unmeasured(assumed int) Caution {
	values := fmt.Sprintf("%d values were", assumed)
	switch assumed {
	case 0:
		values = "no value was"
	case 1:
		values = "1 value was"
	}
	return Caution{
		"Nothing was measured: lengths, sizes and ratings are your words, and " + values + " assumed.",
		"Nothing was measured. Lengths, sizes and ratings are what the plan says; " + values + " assumed, and the report lists each with its source. " +
			"A reading that differs from the plan makes the plan wrong, and with it what was concluded from it.",
	}
}

var battery = Caution{
	"A battery cannot be switched off: rings and watch off, insulated tools, the negative first off and last on.",
	"A battery cannot be switched off. Take rings and watch off, insulate the tools, work with one hand, protect your eyes; take the negative off first and put it on last.",
}

var cutOff = Caution{
	"The cut-off inside a lithium battery does not protect your wiring.",
	"The cut-off inside a lithium battery protects the cells. It is not an overcurrent device for your wiring: nobody has promised you that it opens a fault out there in time, or at all.",
}

var mains = Caution{
	"Alternating current, shore cords, generators and anything over 60 V DC: stop here and call an electrician.",
	"Alternating current, shore cords, generators and anything over 60 V DC: stop here and call an electrician. A meter that reads nothing is believed only if " +
		"it was tried on something live before and after.",
}

var danger = Caution{
	"Gas smell, tingling skin, a swollen or hot battery, hissing: get out, let air in, shut the bottle, touch no switch.",
	"A smell of gas, skin that tingles, a battery that is swollen, hot or hissing: get everybody out, let air in, shut the gas bottle, and touch no switch on the way.",
}

var general = Caution{
	"Graded against general practice, since the plan names none: us-rv, us-boat, iso-boat, vehicle and cabin have limits of their own.",
	"The plan names no practice, so it was graded against general practice. Name us-rv, us-boat, iso-boat, vehicle or cabin in its system block, or with --practice, to get their own limits.",
}
