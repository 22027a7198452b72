system "gull" {}

let {
  a     = let.b
  b     = let.a
  c     = let.nowhere
  d     = foo(1)
  e     = 1 + "x"
  f     = "${1e999999999}"
  g     = 1 / 0
  h     = [for x in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : [for y in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : [for z in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : [for w in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : [for v in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : v]]]]]
  i     = awg(99)
  j     = awg(true)
  k     = sum("1 A", "2 V")
  l     = sum()
  m     = sum("40 C")
  n     = times("10 A", "2")
  o     = times("10", 2, 3)
  p     = amg(10)
  q     = [1, 2][5]
  r     = { a = 1 }.b
  s     = word
  t     = source.pack
  u     = let
  v     = "10 A" < "10 V"
  w     = 1 < "2"
  x     = -"5"
  y     = sum([])
  z     = true ? 1 : [for x in 5 : x]
  ok    = times("10 A", 1.25)
}

fuse "main" { rating = let.ok }

fuse "sum" { rating = sum(let.ok, "1 V") }

fuse "after" { rating = "${let.ok}" }

fuse "wrong" { rating = "${let.ok} A" }

load "pump" {
  draw  = true ? "5 A" : fuse.main
  label = let.ok + 1
}

house_rule "r" {
  for     = fuse
  require = rating < let.nowhere
}
