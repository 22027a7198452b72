package schema
import ("testing";"fmt";"strings";"time")
func TestHostile(t *testing.T){
 big:=3<<20
 cases:=map[string]string{
  "parens":"let { a = "+strings.Repeat("(",big)+"1"+strings.Repeat(")",big/10)+" }",
  "bangs":"let { a = "+strings.Repeat("!",big)+"true }",
  "minus":"let { a = "+strings.Repeat("-",big)+"1 }",
  "plus":"let { a = "+strings.Repeat("1+",big/2)+"1 }",
  "brack":"let { a = "+strings.Repeat("[",big)+" }",
  "braces":strings.Repeat("a {\n",big/4),
  "cond":"let { a = "+strings.Repeat("true?1:",big/7)+"1 }",
  "interp":"let { a = "+strings.Repeat("\"${",big/3)+" }",
  "digits":"let { a = "+strings.Repeat("9",big)+" }",
  "index":"let { a = let.b"+strings.Repeat("[0]",big/3)+" }",
  "dots":"let { a = let.b"+strings.Repeat(".b",big/2)+" }",
  "splat":"let { a = let.b"+strings.Repeat("[*]",big/3)+" }",
  "tmplif":"let { a = \""+strings.Repeat("%{if true}",big/10)+"\" }",
  "quotes":strings.Repeat("\"",big),
  "heredocs":strings.Repeat("a = <<A\n",big/8),
  "badblocks":strings.Repeat("a{}\n",big/4),
  "badattrs":"fuse \"x\" {\n"+strings.Repeat("a = 1\n",big/6)+"}",
  "fuses":strings.Repeat("fuse \"x\" {}\n",big/12),
  "labels":"fuse "+strings.Repeat("\"a\" ",big/4)+"{}",
  "comments":strings.Repeat("/*",big/2),
  "list":"load \"x\" {\n needed_in = ["+strings.Repeat("mode.x,",big/7)+"]\n}",
  "listq":"system \"x\" {\n practice = ["+strings.Repeat("\"us-rvv\",",big/10)+"]\n}",
  "manylets":func()string{ var b strings.Builder; b.WriteString("let {\n"); for i:=0;b.Len()<big;i++{fmt.Fprintf(&b,"a%d = let.a%d\n",i,i+1)}; b.WriteString("}\n"); return b.String()}(),
  "manyrefs":func()string{ var b strings.Builder; for i:=0;b.Len()<big;i++{fmt.Fprintf(&b,"bus \"b%d\" {\n on = bus.c%d\n part_of = source.q%d\n}\n",i,i,i)}; return b.String()}(),
  "colons": "let { a = "+strings.Repeat("a::",big/3)+"() }",
  "newlines": strings.Repeat("\n",big),
  "crs": strings.Repeat("\r",big),
  "label long": "fuse \""+strings.Repeat("x",big)+"\" {}",
  "combining": "# e"+strings.Repeat("\u0301",big/2)+"\nfuse \"x\" {}",
  "exp": "let {\n a = [for i in [1,2,3,4,5,6,7,8,9,10] : \"1e99999999\"]\n b = \"${let.a[0] + 0}\"\n c = \"${1e9999999}\"\n d = 1/0\n e = [1][\"1e9999\"]\n f = \"1e99999999\" < 3\n}\n",
 }
 for name,src:=range cases { t0:=time.Now(); _,d:=Decode("x.wiring.hcl",[]byte(src),nil); dt:=time.Since(t0); flag:=""; if dt>time.Second {flag="SLOW"}; first:=""; if len(d)>0{first=d[0].Summary+": "+clip(d[0].Detail)+fmt.Sprint(d[0].Subject)}; fmt.Println(name,dt,len(d),first,flag)
   if name=="exp" {for _,x:=range d{fmt.Println("   ",x.Subject,x.Detail)}}
 }
 j:=map[string]string{
  "deep":strings.Repeat("[",big), "deepobj":strings.Repeat("{\"a\":",big/5),
  "strs":"{\"let\":{\"a\":\""+strings.Repeat("${",big/2)+"\"}}",
  "parens":"{\"let\":{\"a\":\"${"+strings.Repeat("(",big)+"}\"}}",
  "num":"{\"let\":{\"a\":"+strings.Repeat("9",big)+"}}",
  "exp":"{\"let\":{\"a\":1e999999999,\"b\":\"${let.a}\"}}",
  "many":"{\"fuse\":{"+strings.Repeat("\"a\":{\"b\":1},",big/12)+"\"z\":{}}}",
  "manyattrs":"{\"fuse\":{\"x\":{"+strings.Repeat("\"a\":1,",big/6)+"\"z\":{}}}}",
  "refs":"{\"load\":{\"x\":{\"needed_in\":["+strings.Repeat("\"mode.x\",",big/9)+"\"mode.y\"]}}}",
  "empty":"{}","null":"null","arr":"[]","str":"\"", "nul":"{\"system\":null}", "five":"{\"system\":5}","sys":"{\"system\":{\"a\":[1,2]}}",
 }
 for name,src:=range j { t0:=time.Now(); _,d:=Decode("x.wiring.json",[]byte(src),nil); dt:=time.Since(t0); flag:=""; if dt>time.Second {flag="SLOW"}; first:=""; if len(d)>0{first=d[0].Summary+": "+clip(d[0].Detail)+fmt.Sprint(d[0].Subject)}; fmt.Println("json",name,dt,len(d),first,flag)}
}
