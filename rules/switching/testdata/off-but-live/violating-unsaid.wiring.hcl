# Whether the converter blocks is not written.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "far" {
  label     = "Far"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "100 Ah"
}

switch "main" { # want not-proven warning "if current can come back through \"Step\""
  label     = "Main"
  terminals = ["battery", "house"]
  kind      = "disconnect"

  position "off" {
  }

  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.main.battery
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = switch.main.house
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "1 A"
}

converter "step" {
  label          = "Step"
  kind           = "dc-dc"
  limits_current = true

  output {
    voltage     = "28 V"
    current_max = "5 A"
  }
}

conductor "e" {
  from   = load.lamp
  to     = converter.step["in"]
  size   = "8 AWG"
  length = "1 m"
}

conductor "f" {
  from   = converter.step["out"]
  to     = source.far
  size   = "8 AWG"
  length = "1 m"
}
