# A hard one: the 48 V pack feeds the brakes through a converter for 10 A, which an interlock keeps
# aboard while the truck is hitched; the pin is fixed by the mode, and still it gets pulled.

system "petrel" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "20 Ah"
  removable = true
}

connector "tow" {
  tow = true
}

interlock "aboard" {
  never = [{ source.pack = "absent", switch.hitch = "hitched" }]
  by    = "hardware"
}

switch "hitch" {
  terminals       = ["a", "b"]
  reachable_while = [mode.parked]
  position "free" {
  }
  position "hitched" {
    joins = [["a", "b"]]
  }
}

mode "parked" {
  state = { switch.hitch = "free" }
}

mode "towing" {
  state = { switch.hitch = "hitched", switch.pin = "open" }
}

converter "down" {
  kind = "dc-dc"
  output {
    voltage     = "12.5 V"
    current_max = "10 A"
  }
}

conductor "pack" {
  from   = source.pack
  to     = converter.down.in
  size   = "10 AWG"
  length = "1 m"
}

conductor "down" {
  from   = converter.down.out
  to     = switch.pin.a
  size   = "10 AWG"
  length = "1 m"
}

switch "pin" {
  kind            = "breakaway"
  terminals       = ["a", "b"]
  reachable_while = [mode.parked]
}

conductor "brakes" {
  from   = switch.pin.b
  to     = load.brakes
  size   = "10 AWG"
  length = "3 m"
}

load "brakes" { # want danger "\"brakes\" gets .* from a full \"pack\""
  kind      = "brake"
  draw      = "16 A"
  needed_in = [mode.towing]
}
