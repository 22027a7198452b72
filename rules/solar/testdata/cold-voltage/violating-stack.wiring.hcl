# A hard one: two arrays drawn as blocks of their own, one standing on the other through a selector.
# Each alone is fine, the stack is not; the coefficient is in millivolts; the fuse on the
# way is for less than the controller.

system "stint" {
}

source "fore" {
  label           = "Fore array"
  kind            = "solar"
  voc             = "30 V"
  isc             = "8 A"
  voc_coefficient = "-90 mV/C"
  coldest         = "-15 C"
}

source "aft" {
  kind    = "solar"
  voc     = "30 V"
  isc     = "8 A"
  coldest = "-15 C"
}

switch "stack" {
  label     = "Series or parallel"
  terminals = ["fore_minus", "aft_plus", "minus", "plus"]
  position "parallel" {
    joins = [["fore_minus", "minus"], ["aft_plus", "plus"]]
  }
  position "series" {
    joins = [["fore_minus", "aft_plus"]]
  }
}

conductor "fore_plus" {
  from     = source.fore.pos
  to       = fuse.string.line.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "3 m"
}

conductor "plus" {
  from     = switch.stack.plus.pos
  to       = fuse.string.line.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "fore_minus" {
  from     = source.fore.neg
  to       = switch.stack.fore_minus.pos
  polarity = "negative"
  size     = "10 AWG"
  length   = "3 m"
}

conductor "aft_plus" {
  from     = source.aft.pos
  to       = switch.stack.aft_plus.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "3 m"
}

conductor "minus" {
  from     = switch.stack.minus.pos
  to       = converter.tracker.in.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "aft_minus" {
  from     = source.aft.neg
  to       = converter.tracker.in.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "3 m"
}

fuse "string" { # want warning "\"Fore array\" reaches 68.4 V .*\"String fuse\" takes 58 V"
  label          = "String fuse"
  kind           = "terminal"
  rating         = "15 A"
  voltage_rating = ["58 V dc", "125 V ac"]
}

conductor "string" {
  from   = fuse.string.load
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "1 m"
}

converter "tracker" { # want warning "\"Fore array\" reaches 68.4 V .*\"Tracker\" takes 60 V"
  label = "Tracker"
  kind  = "mppt"
  input {
    voltage_max = "60 V"
  }
}
