package spicetest
import ("testing";"ferrule/lint/solve")
func BenchmarkZZ(b *testing.B) {
	for _, m := range []bool{false,true} { for _, n := range []int{30,300,3000} {
	b.Run("", func(b *testing.B) {
	net := grid(n, m)
	s, _ := solve.New(net)
	i := 0
	for b.Loop() { net.Elements[0].Volts = 12+float64(i%200)/200; i++; s.Solve() }
	}) } }
}
