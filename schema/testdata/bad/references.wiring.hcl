system "gull" {}
bus "panel" {}
bus "minus" { polarity = "negative" }
compartment "bow_box" {}
mode "parked" { state = {} }
source "pack" { kind = "battery" }
source "inlet" { kind = "shore" }
fuse "main" {}
fuse "mean" {}
switch "select" {
  terminals = ["pack", "both on"]
}
connector "tow" { contacts = ["brakes"] }
load "pump" {}
branch "lights" {
  from = bus.panel
  fuse {}
  conductor {}
  load "bench" {}
}
conductor "a" {
  from = fuse.maim.line
  to   = fuse.main
}
conductor "b" {
  from = fuse.main.lime
  to   = switch.select
}
conductor "c" {
  from = switch.select.house
  to   = switch.select.pack.plus
}
conductor "d" {
  from = source.pack.pos
  to   = bus.minus
}
conductor "e" {
  from = connector.tow.free.brakes
  to   = connector.tow.brakes
}
conductor "f" {
  from = connector.tow.fixed.breaks
  to   = source.inlet.pos
}
conductor "g" {
  from = bus.minus.pos
  to   = source.pack.line
}
conductor "h" {
  from = true ? fuse.main.line : fuse.main.load
  to   = "fuse.main.line"
}
conductor "i" {
  from = fuze.main.line
  to   = fuse
}
conductor "j" {
  from = compartment.bow_box
  to   = converter.boost.out
}
conductor "k" {
  from = branch.lights.fuse
  to   = branch.lights.load.bunch
}
conductor "l" {
  from = branch.lights
  to   = branch.lights.lamp.x
}
conductor "m" {
  from = branch.light.fuse.line
  to   = use.rear.fuse.main.line
}
conductor "n" {
  from = let.x
  to   = parameter.x
}
conductor "o" {
  from    = fuse.main.line.pos.neg
  to      = load.pump[0]
  through = [compartment.bow, fuse.main]
}
conductor "p" {
  from = fuse.main[*].line
  to   = 5
}
load "other" {
  compartment = fuse.main
  runs_in     = mode.parked.x
  control     = load.pump
  needed_in   = [mode.packed]
  part_of     = source.pack.pos
}
fuse "on" { on = fuse.main }
mode "x" {
  state = { fuse.main = "on", "source.pack" = "present", (source.pack) = "present", source.pack = absent }
}
waiver "w" {
  rule = "a/b"
  at   = conductor.zz
}
load "computed" { power = fuse.main }
load "word" { kind = "${source.pack}" }
