package sampletest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Readme returns the block of text that follows a mark in README, for the test of a sample
// program that lies two folders below it.
func Readme(t *testing.T, mark string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(strings.ReplaceAll(string(text), "\r\n", "\n"), "<!-- "+mark+" -->\n```text\n")
	shown, _, closed := strings.Cut(rest, "```")
	if !ok || !closed {
		t.Fatalf("README has no block %q", mark)
	}
	return shown
}
