system "gull" {}

rating = "10 A"

fuse "unquoted" {
  rating = 10 A
}

fuse "comma" {
  kind   = "blade",
  rating = "10 A"
}

fuse "twice" {
  rating = "10 A"
  rating = "20 A"
}

fuse "quotes" {
  label = "not closed
}

fuse "quoted" {
  "rating" = "10 A"
}

fuse "colon" {
  rating: "10 A"
}

fuse "nothing" {
  rating =
}

fuse "open" {
  rating = "10 A"

fuse "after_open" {
  raiting = "10 A"
}

fuse "list" {
  voltage_rating = ["58 V dc" "125 V ac"]
}

fuse
{
}

fuse "single" { kind = 'blade' }

bus "brackets" {
  studs = (4
}

bus "last" { stud = 4 }
