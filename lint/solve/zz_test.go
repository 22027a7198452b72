package solve
import ("testing";"os";"encoding/json";"fmt")
func TestZZ(t *testing.T) {
	b, err := os.ReadFile(os.Getenv("NET")); if err != nil { t.Skip() }
	var n Net
	json.Unmarshal(b, &n)
	s, _ := New(&n)
	s.budget = most
	s.prepare()
	fmt.Println(s.opening(), s.newton(0))
	copy(s.good, s.x)
	for _, sc := range []float64{.1,.2,.3,.4,.5,.6,.7,.7031,.7032, .71,.72,.75,.8,.9,1} {
		ok := s.newton(sc)
		fmt.Println(sc, ok, s.settled(), s.decompose(), s.f.negative, s.inRange(s.x), norm(s.left), s.n)
		for k := range n.Elements { e := &n.Elements[k]; u := s.x[s.elements[k].at[0]]-s.x[s.elements[k].at[1]]; i,sl := e.amps(u, sc, leakage); fmt.Print(" ", u, " ", i, " ", sl, ";") }
		fmt.Println()
		if !ok { break }
	}
}
