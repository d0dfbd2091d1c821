package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
)

// longestLine is how many bytes a request may have.
const longestLine = 1 << 20

// filter answers every line that is not blank. An answer goes out before the next line
// is read.
func filter(from io.Reader, to io.Writer, write func([]byte, answer) []byte) error {
	const ends = 2 // "\r\n"
	lines := bufio.NewReaderSize(from, longestLine+ends)
	var out []byte
	for number := 1; ; number++ {
		line, err := lines.ReadSlice('\n')
		tooLong := len(bytes.TrimRight(line, "\r\n")) > longestLine
		for errors.Is(err, bufio.ErrBufferFull) {
			tooLong = true
			_, err = lines.ReadSlice('\n')
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		if line = bytes.TrimSpace(line); len(line) > 0 || tooLong {
			a := answer{line: number}
			if tooLong {
				a.err = &fault{"request", "", fmt.Sprintf("a line has at most 1 MiB, %d bytes", longestLine)}
			} else {
				a.make(line)
			}
			out = append(write(out[:0], a), '\n')
			if _, err := to.Write(out); err != nil {
				return err
			}
		}
		if err != nil {
			return nil
		}
	}
}
