kit "self" {}
use "again" { kit = "./self.wiring.hcl" }
