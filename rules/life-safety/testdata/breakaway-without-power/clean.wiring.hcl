# A small fixed battery of its own for the breakaway switch.

system "gull" {
  practice = ["vehicle"]
}

source "box" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "12 Ah"
  resistance = "20 mohm"
}

conductor "feed" {
  from   = source.box
  to     = switch.pin.a
  size   = "10 AWG"
  length = "1 m"
}

switch "pin" {
  kind      = "breakaway"
  terminals = ["a", "b"]
}

conductor "brakes" {
  from   = switch.pin.b
  to     = load.brakes
  size   = "10 AWG"
  length = "3 m"
}

connector "tow" {
  tow      = true
  contacts = ["brakes"]
}

conductor "controller" {
  from     = connector.tow.free.brakes
  to       = load.brakes.pos
  polarity = "positive"
  size     = "12 AWG"
  length   = "4 m"
}

conductor "ground" {
  from     = connector.tow.free.neg
  to       = load.brakes.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "4 m"
}

load "brakes" {
  kind      = "brake"
  draw      = "16 A"
  critical  = "life-safety"
  needed_in = [mode.towing]
}

mode "towing" {
  state = { connector.tow = "mated" }
}
