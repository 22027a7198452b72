# A hard one: nine selectors in a row lead round the disconnect, in more states than are listed.

system "dunlin" {}
source "b" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}

fuse "f" {
  rating = "60 A"
  on = source.b
}

bus "m" {}
bus "o" {}
conductor "w0" {
  from = fuse.f.load
  to = bus.m
  size = "2 AWG"
  length = "1 m"
}

switch "d" { # want warning `With "d" off, a way round it joins its two sides: what is behind it stays live from "b"\.`
  terminals = ["a","b"]
  kind = "disconnect"
  position "off" {}
  position "on" {
    joins = [["a","b"]]
  }
}

conductor "a1" {
  from = bus.m
  to = switch.d.a
  size = "2 AWG"
  length = "1 m"
}

conductor "a2" {
  from = switch.d.b
  to = bus.o
  size = "2 AWG"
  length = "1 m"
}

load "x" {
  draw = "5 A"
}

conductor "o1" {
  from = bus.o
  to = load.x
  size = "2 AWG"
  length = "1 m"
}

switch "s0" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww0" {
  from = bus.m
  to = switch.s0.x
  size = "2 AWG"
  length = "1 m"
}

load "l0" {
  draw = "1 A"
}

conductor "l0" {
  from = switch.s0.z
  to = load.l0
  size = "2 AWG"
  length = "1 m"
}

switch "s1" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww1" {
  from = switch.s0.y
  to = switch.s1.x
  size = "2 AWG"
  length = "1 m"
}

load "l1" {
  draw = "1 A"
}

conductor "l1" {
  from = switch.s1.z
  to = load.l1
  size = "2 AWG"
  length = "1 m"
}

switch "s2" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww2" {
  from = switch.s1.y
  to = switch.s2.x
  size = "2 AWG"
  length = "1 m"
}

load "l2" {
  draw = "1 A"
}

conductor "l2" {
  from = switch.s2.z
  to = load.l2
  size = "2 AWG"
  length = "1 m"
}

switch "s3" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww3" {
  from = switch.s2.y
  to = switch.s3.x
  size = "2 AWG"
  length = "1 m"
}

load "l3" {
  draw = "1 A"
}

conductor "l3" {
  from = switch.s3.z
  to = load.l3
  size = "2 AWG"
  length = "1 m"
}

switch "s4" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww4" {
  from = switch.s3.y
  to = switch.s4.x
  size = "2 AWG"
  length = "1 m"
}

load "l4" {
  draw = "1 A"
}

conductor "l4" {
  from = switch.s4.z
  to = load.l4
  size = "2 AWG"
  length = "1 m"
}

switch "s5" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww5" {
  from = switch.s4.y
  to = switch.s5.x
  size = "2 AWG"
  length = "1 m"
}

load "l5" {
  draw = "1 A"
}

conductor "l5" {
  from = switch.s5.z
  to = load.l5
  size = "2 AWG"
  length = "1 m"
}

switch "s6" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww6" {
  from = switch.s5.y
  to = switch.s6.x
  size = "2 AWG"
  length = "1 m"
}

load "l6" {
  draw = "1 A"
}

conductor "l6" {
  from = switch.s6.z
  to = load.l6
  size = "2 AWG"
  length = "1 m"
}

switch "s7" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww7" {
  from = switch.s6.y
  to = switch.s7.x
  size = "2 AWG"
  length = "1 m"
}

load "l7" {
  draw = "1 A"
}

conductor "l7" {
  from = switch.s7.z
  to = load.l7
  size = "2 AWG"
  length = "1 m"
}

switch "s8" {
  terminals = ["x","y","z"]
  position "off" {}
  position "a" {
    joins = [["x","z"]]
  }
  position "b" {
    joins = [["x","y"]]
  }
}

conductor "ww8" {
  from = switch.s7.y
  to = switch.s8.x
  size = "2 AWG"
  length = "1 m"
}

load "l8" {
  draw = "1 A"
}

conductor "l8" {
  from = switch.s8.z
  to = load.l8
  size = "2 AWG"
  length = "1 m"
}

conductor "last" {
  from = switch.s8.y
  to = bus.o
  size = "2 AWG"
  length = "1 m"
}
