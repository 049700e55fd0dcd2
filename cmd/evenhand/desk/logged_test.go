package desk

import (
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"
)

// A handler that panics, or fails for a reason of its own, is answered with a page that says so and told in the log
// with its place, and with nothing of what the panic or the error holds of what was sent.
func TestFailuresAreLoggedWithoutWhatWasSent(t *testing.T) {
	d, _, log := logged(t)
	failing := func(handle handler) {
		answer := httptest.NewRecorder()
		d.answer(toAnyone, handle).ServeHTTP(answer, httptest.NewRequest("GET", "/", nil).WithContext(loaded(t, d)))
		if answer.Code != http.StatusInternalServerError || !strings.Contains(answer.Body.String(), "Something went wrong here") {
			t.Errorf("a failure is %d: %.200s", answer.Code, answer.Body)
		}
	}
	for _, value := range []any{"Zaida of P73", errors.New("quokkalot"), 41573, url.Values{"P73": {"Zaida"}}} {
		failing(func(*visit) error { panic(value) })
	}
	for _, err := range []error{
		fmt.Errorf("the paper of P73 is of form %q", "quokkalot"), errors.New("P73: 'Zaida Quill' wrote `quokkalot`"),
		fmt.Errorf("read 7R9Q.bank, P73a: %w", os.ErrPermission),
	} {
		failing(func(*visit) error { return err })
	}
	told := log.String()
	for _, word := range []string{"P73", "Zaida", "quokkalot", "41573", "7R9Q"} {
		if strings.Contains(told, word) {
			t.Errorf("the log holds %q: %s", word, told)
		}
	}
	for _, want := range []string{`"msg":"panicked"`, `"type":"url.Values"`, "logged_test.go", `"status":500`, "permission denied"} {
		if !strings.Contains(told, want) {
			t.Errorf("the log lacks %s: %s", want, told)
		}
	}
}
