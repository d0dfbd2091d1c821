package plan_test
import ("testing";"bytes";"example.com/walewise/shaping/plan";"github.com/google/go-cmp/cmp")
func TestSmoke(t *testing.T){
 for _, s := range []string{least, full} {
 sp, err := plan.ParseSpec([]byte(s)); if err!=nil{t.Fatal(err)}
 var b bytes.Buffer
 if err:=plan.WriteSpec(&b, sp);err!=nil{t.Fatal(err)}
 t.Log(b.String())
 sp2, err := plan.ParseSpec(b.Bytes()); if err!=nil{t.Fatal(err)}
 if d:=cmp.Diff(sp,sp2,same);d!=""{t.Error(d)}
 }
 p, err := plan.Parse(tiny(t)); if err!=nil{t.Fatal(err)}
 var b bytes.Buffer
 if err:=plan.Write(&b, p);err!=nil{t.Fatal(err)}
 if d:=cmp.Diff(string(tiny(t))+"\n", b.String());d!=""{t.Error(d)}
}
