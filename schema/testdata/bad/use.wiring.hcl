system "gull" {}
bus "panel" {}
use "none" {}
use "missing" { kit = "./kits/nowhere.wiring.hcl" }
use "params" {
  kit   = "./kits/wrong.wiring.hcl"
  sizes = "10 AWG"
  on    = bus.panel
}
use "plan" { kit = "./kits/plan.wiring.hcl" }
use "self" { kit = "./kits/self.wiring.hcl" }
use "round" { kit = "./kits/round.wiring.hcl" }
conductor "a" {
  from = use.params.fuse.mian.load
  to   = use.params.fuse.main.load
}
conductor "b" {
  from = use.missing.fuse.main.load
  to   = use.parms.fuse.main.line
}
