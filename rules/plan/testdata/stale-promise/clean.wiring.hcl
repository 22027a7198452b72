# Names that say what they join; a waiver that runs on.

system "curlew" {
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "select" {
  terminals = ["1", "2", "house"]
  position "off" {
  }
  position "1" {
    joins = [["1", "house"]]
  }
  position "both" {
    joins = [["1", "2", "house"]]
  }
  position "2" {
    joins = [["2", "house"]]
  }
}

conductor "one" {
  from   = source.battery
  to     = switch.select["1"]
  size   = "10 AWG"
  length = "1 m"
}
