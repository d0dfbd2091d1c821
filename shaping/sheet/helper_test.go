package sheet_test

import "github.com/shopspring/decimal"

func decimalOf(n int) decimal.Decimal { return decimal.NewFromInt(int64(n)) }
