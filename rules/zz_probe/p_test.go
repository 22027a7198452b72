package zz
import ("testing";"os";"time";"fmt";"path/filepath";"ferrule/schema";"ferrule/lint";"ferrule/lint/network";"ferrule/lint/explore";"ferrule/rules/conductor";"ferrule/rules/switching")
func TestProbe(t *testing.T){
 a,_:=filepath.Glob("../../examples/*.wiring.hcl"); b,_:=filepath.Glob("../../examples/flawed/*.wiring.hcl")
 for _,f:=range append(a,b...){
 src,_:=os.ReadFile(f)
 p,d:=schema.Decode(f,src,func(from, kit string) (string, []byte, error) { n:=filepath.Join(filepath.Dir(from),kit); s,e:=os.ReadFile(n); return n,s,e})
 if d.HasErrors(){fmt.Println(f,d);continue}
 n,_:=network.Build(p)
 ps:=lint.NewPass(n,explore.New(n,200000),lint.Guesses{},time.Now())
 fmt.Println("==",f)
 for _,r:=range append(append([]*lint.Rule{},conductor.Rules...),switching.Rules...){
  t0:=time.Now(); vs:=r.Run(ps); fmt.Println(r.ID,time.Since(t0),len(vs))
  if r.ID=="switching/off-but-live"{continue}
  for _,v:=range vs { if v.Outcome!=lint.Holds {fmt.Println("   ",v.Outcome,v.Word,v.Subject.Header().Addr,v.Message,v.State,v.Missing)}}
 }}
}
