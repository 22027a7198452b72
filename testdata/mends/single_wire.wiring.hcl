# Plus and minus in wires of their own. 6 A ask for 7.5 A.
# mend overcurrent/unprotected-run conductor.feed: Put a device of 7.5 A right on "house", ahead of "feed".
system "dunlin" { title = "Van" }

source "house" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "100 Ah"
  resistance = "8 mohm"
}

conductor "feed" {
  from     = source.house.pos
  to       = load.pump.pos
  size     = "12 AWG"
  length   = "2 m"
  polarity = "positive"
}

conductor "home" {
  from     = load.pump.neg
  to       = source.house.neg
  size     = "12 AWG"
  length   = "2 m"
  polarity = "negative"
}

load "pump" {
  draw     = "6 A"
  kind     = "motor"
  behavior = "constant-current"
}
