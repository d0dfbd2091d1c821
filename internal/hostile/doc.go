// Package hostile has no code: its tests build the sample programs and start them on what
// nobody means to give them, to see that they refuse it in one line, soon, with little memory
// and without leaving anything behind. They run on Linux where WALEWISE_NEED_HOSTILE is set:
//
//	WALEWISE_NEED_HOSTILE=1 go test -count=1 -v ./internal/hostile
package hostile
