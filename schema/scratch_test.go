package schema
import ("testing";"fmt";"os";"path/filepath";"encoding/json")
func TestScratch(t *testing.T){
 name:=os.Getenv("PLAN")
 src,err:=os.ReadFile(name); if err!=nil{t.Skip()}
 p,diags:=Decode(name,src,func(from,path string)(string,[]byte,error){ n:=filepath.Join(filepath.Dir(from),path); b,err:=os.ReadFile(n); return n,b,err})
 for _,d:=range diags{fmt.Printf("%s:%d:%d-%d:%d %s | %s\n",d.Subject.Filename,d.Subject.Start.Line,d.Subject.Start.Column,d.Subject.End.Line,d.Subject.End.Column,d.Summary,d.Detail)}
 for _,b:=range p.Blocks(){fmt.Println(b.Header().Addr,b.Header().Range)}
 for _,l:=range p.Links{fmt.Println(l.A.Text,l.A.Addr,l.A.Terminal,"--",l.B.Addr,l.B.Terminal)}
 for _,c:=range p.Conductors{fmt.Printf("%s %+v -> %+v %v %v\n",c.Addr,c.From,c.To,c.Size,c.Length)}
 if os.Getenv("DUMP")!=""{j,_:=json.MarshalIndent(p,""," ");fmt.Println(string(j))}
}
