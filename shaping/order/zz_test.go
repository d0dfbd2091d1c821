package order_test

import (
"fmt"
	"testing"

	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
	"pgregory.net/rapid"
)

func TestZZ(t *testing.T) {
	ok, bad, errs := 0, map[string]int{}, 0
	ex := map[string]string{}
	rapid.Check(t, func(t *rapid.T) {
		o := order.Outline{Name: "x", Place: shaping.Bed, Carriage: shaping.Right, Panels: gen.Tree().Draw(t, "tree")}
		if len(o.Panels) != 1 && !(len(o.Panels) == 3 && o.Panels[2].Parent == "body") { return }
		w, err := order.Plan(o)
		if err != nil {
			errs++
			return
		}
		if _, err := bed.Knit(w); err != nil {
			r := err.(*bed.Refusal)
			k := r.Reason; if len(o.Panels) == 1 { k = "1 " + k }
			if len(k) > 40 { k = k[:40] }
			bad[k]++
			if s := err.Error() + fmt.Sprint(o.Panels); ex[k] == "" || len(s) < len(ex[k]) { ex[k] = s }
			return
		}
		ok++
	})
	t.Log(ok, errs, bad)
	for k, v := range ex { t.Log(k, "=>", v) }
}
