package shaping_test

import (
	"fmt"
	"reflect"
	"testing"

	"example.com/walewise/shaping"
)

// The zero value of every exported type can be asked everything without a panic:
// all methods are called, with zero arguments and with a few others.
func TestZeroValuesDoNotPanic(t *testing.T) {
	for _, zero := range []any{
		new(shaping.Side), new(shaping.Facing), new(shaping.Place), new(shaping.Method), new(shaping.Do),
		new(shaping.Needle), new(shaping.Span), new(shaping.Step), new(shaping.Schedule), new(shaping.Phrase),
		new(shaping.Ends), new(shaping.SpacingRequest), new(shaping.Spacing), new(shaping.Distance),
		new(shaping.Rules), new(shaping.Beat), new(shaping.Panel), new(shaping.Tree), new(shaping.Ledger),
		new(shaping.Action), new(shaping.Row), new(shaping.Work), new(shaping.Error),
	} {
		value := reflect.ValueOf(zero)
		t.Run(value.Elem().Type().Name(), func(t *testing.T) {
			if text := fmt.Sprintf("%v %+v %#v", value.Elem(), value.Elem(), value.Elem()); text == "" {
				t.Error("no text")
			}
			for i := range value.NumMethod() {
				method := value.Method(i)
				for _, number := range []int{0, 1, -1, 5} {
					results := method.Call(arguments(method.Type(), number))
					if len(results) > 0 && results[0].Kind() == reflect.Func {
						for range results[0].Seq() {
							t.Error("an empty value yields something")
						}
					}
				}
			}
		})
	}
}

// arguments are zero values for a function, but for numbers, which are number.
func arguments(function reflect.Type, number int) []reflect.Value {
	var list []reflect.Value
	for in := range function.Ins() {
		argument := reflect.New(in).Elem()
		if argument.CanInt() {
			argument.SetInt(int64(number))
		}
		list = append(list, argument)
	}
	return list
}

func TestZeroValuesMeanNothing(t *testing.T) {
	if spacing, err := shaping.EvenSpacing(shaping.SpacingRequest{}); err != nil || len(spacing.Rows()) != 0 || spacing.Plain != 0 {
		t.Errorf("the zero request gives %v, %v", spacing, err)
	}
	if (shaping.Panel{}).Validate() == nil || (shaping.Tree{}).Validate() == nil {
		t.Error("a panel and a tree of nothing are sound")
	}
	if err := (shaping.Schedule{}).Validate(); err != nil {
		t.Error(err)
	}
}

func TestEndsString(t *testing.T) {
	for e, want := range map[shaping.Ends]string{
		shaping.PlainAfter:         "plain rows after the last shaping",
		shaping.LastShaped:         "last row shaped",
		shaping.FirstAndLastShaped: "first and last row shaped",
		9:                          "Ends(9)",
	} {
		if got := e.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
