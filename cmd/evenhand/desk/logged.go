package desk

import (
	"errors"
	"fmt"
	"log"
	"log/slog"
	"net/http"
	"regexp"
	"runtime/debug"
)

// What goes to the log tells operators what went wrong and never what was sent: no pupil, no answer, no name of a
// roster, no password and no token.

// private is what an error may tell of what was sent: what it quotes, and words that hold a digit, as codes of
// pupils and secrets do.
var private = regexp.MustCompile("\"(?:[^\"\\\\]|\\\\.)*\"|'[^']*'|`[^`]*`" +
	`|[^\s/:;,]*\pL[^\s/:;,]*\d[^\s/:;,]*|[^\s/:;,]*\d[^\s/:;,]*\pL[^\s/:;,]*`)

// forLog is an error as it may be logged.
func forLog(err error) string { return private.ReplaceAllString(err.Error(), "…") }

// ErrorLog is where the server tells of connections that went wrong.
func (d *Desk) ErrorLog() *log.Logger { return slog.NewLogLogger(d.o.Log.Handler(), slog.LevelWarn) }

// failed logs that an answer failed for a reason of the desk's own.
func (v *visit) failed(err error) {
	to := v.desk.o.Log.With("pattern", v.Pattern)
	var p *panicked
	if errors.As(err, &p) {
		to.Error("panicked", "type", fmt.Sprintf("%T", p.value), "stack", string(p.stack))
		return
	}
	to.Error("failed", "error", forLog(err))
}

// panicked is a panic of a handler. Its value may hold what was sent, so only its type and place are told.
type panicked struct {
	value any
	stack []byte
}

func (p *panicked) Error() string { return "a handler panicked" }

// handled lets a handler answer; a panic of it becomes an error, but for the one that asks the server to cut the
// connection.
func (v *visit) handled(handle handler) (err error) {
	defer func() {
		switch value := recover(); value {
		case nil:
		case http.ErrAbortHandler:
			panic(value)
		default:
			err = &panicked{value, debug.Stack()}
		}
	}()
	return handle(v)
}
