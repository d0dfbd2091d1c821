package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
)

func TestMain(m *testing.M) { sampletest.Main(m, main) }

func requests(t testing.TB) string {
	t.Helper()
	text, err := os.ReadFile("testdata/requests.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestForms(t *testing.T) {
	for _, form := range []string{"json", "text"} {
		t.Run(form, func(t *testing.T) {
			out, _, err := runEdges(requests(t), "-as", form)
			if err != nil {
				t.Fatal(err)
			}
			golden.Check(t, "testdata/answers."+form+".golden", []byte(out))
		})
	}
	plain, _, _ := runEdges(requests(t))
	if out, _, _ := runEdges(requests(t), "-as", "json"); out != plain {
		t.Error("json is not what is printed without -as")
	}
}

func TestHelp(t *testing.T) {
	sampletest.Command(run).Help(t)
	if a := ask(t, sample); a.Error != "" || string(a.ID) != `"n1"` {
		t.Errorf("the sample request is answered with %+v", a)
	}
}

func TestUsage(t *testing.T) {
	for _, c := range []struct{ args, says string }{
		{"-as poem", `-as "poem": json or text`},
		{"-nonsense", "-nonsense"},
		{"requests.jsonl", `unexpected "requests.jsonl"`},
		{"-as", "-as"},
	} {
		out, messages, err := runEdges(sample, strings.Fields(c.args)...)
		if !errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(messages, c.says) {
			t.Errorf("%s: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
}

// Blank lines are skipped, the last line needs no end, and answers keep the order.
func TestLines(t *testing.T) {
	for _, c := range []struct{ name, in, ids string }{
		{"nothing", "", ""},
		{"blank", "\n \t\r\n\n", ""},
		{"order", "\n{\"id\":3}\r\n\n{\"id\":1}\n{\"id\":2}", "3 1 2"},
		{"longest", `{"id":"long","x":"` + strings.Repeat("x", longestLine-20) + `"}` + "\r\n" + `{"id":2}`, `"long" 2`},
		{"too long", `{"id":1,"x":"` + strings.Repeat("x", longestLine) + `"}` + "\n" + `{"id":2}`, " 2"},
		{"far too long", strings.Repeat("x", 5*longestLine) + "\n\n" + `{"id":2}` + "\n", " 2"},
		{"too long at the end", `{"id":2}` + "\n" + strings.Repeat(" ", 3*longestLine), "2 "},
	} {
		out, _, err := runEdges(c.in)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		var ids []string
		for line := range strings.Lines(out) {
			ids = append(ids, string(ask(t, strings.TrimSuffix(echo(line), "\n")).ID))
		}
		if got := strings.Join(ids, " "); got != c.ids {
			t.Errorf("%s: answers to %q, want %q", c.name, got, c.ids)
		}
	}
}

// echo returns a request with the id of an answer.
func echo(answer string) string {
	_, rest, ok := strings.Cut(answer, `{"id":`)
	if !ok {
		return "{}"
	}
	id, _, _ := strings.Cut(rest, `,"`)
	return `{"id":` + id + `}`
}

// A script can wait for an answer before it asks again.
func TestConverses(t *testing.T) {
	in, asks := io.Pipe()
	answers, out := io.Pipe()
	done := make(chan error)
	go func() { done <- run(nil, in, out, io.Discard) }()
	for range 3 {
		if _, err := io.WriteString(asks, sample+"\n"); err != nil {
			t.Fatal(err)
		}
		buffer := make([]byte, 1<<16)
		n, err := answers.Read(buffer)
		if err != nil || !bytes.HasPrefix(buffer[:n], []byte(`{"id":"n1","stitches":12,`)) || buffer[n-1] != '\n' {
			t.Fatalf("%v: %q", err, buffer[:n])
		}
	}
	asks.Close()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

var errBroken = errors.New("broken")

type broken struct{}

func (broken) Read([]byte) (int, error)  { return 0, errBroken }
func (broken) Write([]byte) (int, error) { return 0, errBroken }

func TestBrokenEnds(t *testing.T) {
	if err := run(nil, broken{}, io.Discard, io.Discard); !errors.Is(err, errBroken) {
		t.Errorf("standard input broken: %v", err)
	}
	if err := run(nil, strings.NewReader(sample), broken{}, io.Discard); !errors.Is(err, errBroken) {
		t.Errorf("standard output broken: %v", err)
	}
}

func TestExitStatus(t *testing.T) {
	folder, err := os.Open(".")
	if err != nil {
		t.Fatal(err)
	}
	defer folder.Close()
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "", Stdin: strings.NewReader(sample), Status: 0, Says: ""},
		{Args: "", Stdin: strings.NewReader("nonsense\n"), Status: 0, Says: ""},
		{Args: "-as text", Stdin: strings.NewReader(sample), Status: 0, Says: ""},
		{Args: "-h", Stdin: strings.NewReader(""), Status: 0, Says: "edges reads"},
		{Args: "", Stdin: folder, Status: 1, Says: "edges: "},
		{Args: "-as poem", Stdin: strings.NewReader(sample), Status: 2, Says: "edges: -as"},
		{Args: "file", Stdin: strings.NewReader(sample), Status: 2, Says: "edges: unexpected"},
	})
}
