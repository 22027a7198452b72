# The alarm is grounded to the frame, and so is the battery. A socket on the frame may carry anything.

system "gull" {
  practice = ["us-rv"]
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

bus "frame" { # want caution "\"Gas alarm\", on which somebody's safety hangs, has its return through \"Frame\""
  label    = "Frame"
  polarity = "chassis"
}

conductor "battery_ground" {
  from     = source.house.neg
  to       = bus.frame
  polarity = "negative"
  size     = "6 AWG"
  length   = "0.4 m"
}

conductor "alarm_plus" {
  from     = source.house.pos
  to       = load.alarm.pos
  polarity = "positive"
  size     = "16 AWG"
  length   = "3 m"
}

conductor "alarm_ground" {
  from     = load.alarm.neg
  to       = bus.frame
  polarity = "negative"
  size     = "16 AWG"
  length   = "0.3 m"
}

load "alarm" {
  label = "Gas alarm"
  kind  = "alarm"
  draw  = "0.1 A"
}

source "second" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

bus "drawbar" { # want not-proven notice "How much comes home through \"drawbar\" is not known: .draw. of load.socket is missing"
  polarity = "chassis"
}

conductor "second_ground" {
  from     = source.second.neg
  to       = bus.drawbar
  polarity = "negative"
  size     = "6 AWG"
  length   = "0.4 m"
}

conductor "socket_plus" {
  from     = source.second.pos
  to       = load.socket.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "3 m"
}

conductor "socket_ground" {
  from     = load.socket.neg
  to       = bus.drawbar
  polarity = "negative"
  size     = "10 AWG"
  length   = "0.3 m"
}

load "socket" {
  receptacle = true
}
