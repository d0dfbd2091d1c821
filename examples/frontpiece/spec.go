package main

import (
	_ "embed"
	"io"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

//go:embed demo.json
var demo []byte

// planned returns the piece of a spec.
func planned(file string, stdin io.Reader) (garment.Piece, error) {
	spec, err := readSpec(file, stdin)
	if err != nil {
		return garment.Piece{}, err
	}
	return garment.Front(spec)
}

// readSpec reads a spec, that of the demo if no file is named.
func readSpec(file string, stdin io.Reader) (garment.Spec, error) {
	if file == "" {
		return plan.ParseSpec(demo)
	}
	f, err := open(file, stdin)
	if err != nil {
		return garment.Spec{}, err
	}
	defer f.Close()
	return plan.ReadSpec(f)
}
