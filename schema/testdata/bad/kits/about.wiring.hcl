kit "about" {}
use "back" { kit = "./round.wiring.hcl" }
