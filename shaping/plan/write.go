package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// marshal returns a value as JSON, indented by one space, with a line end after it.
func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	if err := encoder.Encode(v); err != nil {
		// Which method of which type was called is of no use to a reader.
		for e, ok := errors.AsType[*json.MarshalerError](err); ok; e, ok = errors.AsType[*json.MarshalerError](err) {
			err = e.Err
		}
		return nil, fault("document", "", err.Error(), err)
	}
	return b.Bytes(), nil
}

func write(w io.Writer, text []byte) error {
	if _, err := w.Write(text); err != nil {
		return fmt.Errorf("plan: writing the document: %w", err)
	}
	return nil
}
