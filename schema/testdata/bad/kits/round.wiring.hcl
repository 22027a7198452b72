kit "round" {}
use "about" { kit = "./about.wiring.hcl" }
