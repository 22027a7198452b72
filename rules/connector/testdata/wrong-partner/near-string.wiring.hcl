# Two blocks in series make 24 V; a third battery stands alone at 24 V. Both leads end in the same plug.

system "string" {
}

source "low" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "high" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "link" {
  from     = source.low.pos
  to       = source.high.neg
  polarity = "positive"
}

conductor "string_pos" {
  from     = source.high.pos
  to       = connector.winch.fixed.pos
  polarity = "positive"
}

conductor "string_neg" {
  from     = source.low.neg
  to       = connector.winch.fixed.neg
  polarity = "negative"
}

connector "winch" {
  style = "grey plug"
  key   = "grey"
}

conductor "winch" {
  from = connector.winch.free
  to   = load.winch
}

load "winch" {
  draw = "20 A"
}

source "spare" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "60 Ah"
}

conductor "spare" {
  from = source.spare
  to   = connector.lamp.fixed
}

connector "lamp" {
  style = "grey plug"
  key   = "grey"
}

conductor "lamp" {
  from = connector.lamp.free
  to   = load.lamp
}

load "lamp" {
  draw = "2 A"
}
