package desk

import (
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
)

// Every address of both desks, asked by a stranger, from another site's page, with a huge form and with
// garbled names, is refused rightly: no way in, and never a fault of the desk's own.
func TestEveryRouteRefuses(t *testing.T) {
	team, b, _ := logged(t)
	alone, err := New(b, Options{By: "MK"})
	if err != nil {
		t.Fatal(err)
	}
	open := map[string]bool{"GET /healthz": true, "GET /metrics": true, "GET /signin": true, "POST /signin": true}
	part := regexp.MustCompile(`\{[^}]*\}`)
	tricks := []string{"x", "..%2f..%2fetc%2fpasswd", "%00", strings.Repeat("a", 5000), "01AAAAAAAAAAAAAAAAAAAAAAAA", "%ff%fe"}
	for name, d := range map[string]*Desk{"team": team, "alone": alone} {
		handler, list := d.Handler(), routes
		if name == "team" {
			list = append(list[:len(list):len(list)], teamRoutes...)
		}
		ask := func(method, path, origin, body string, in bool) int {
			r := httptest.NewRequest(method, path, strings.NewReader(body))
			r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			if origin != "" {
				r.Header.Set("Origin", origin)
			}
			if in {
				r.AddCookie(&http.Cookie{Name: "enter", Value: d.entrance})
			}
			answer := httptest.NewRecorder()
			handler.ServeHTTP(answer, r)
			return answer.Code
		}
		for _, route := range list {
			method, pattern, ok := strings.Cut(route.pattern, " ")
			if !ok {
				method, pattern = "GET", "/nothing"
			}
			for _, trick := range tricks {
				path := part.ReplaceAllString(strings.TrimSuffix(pattern, "{$}"), trick)
				if status := ask(method, path, "", "do=x", false); status >= 500 || status < 300 && !open[route.pattern] {
					t.Errorf("%s: a stranger gets %d from %s %.60s", name, status, method, path)
				}
				if method == "POST" {
					if status := ask(method, path, "http://elsewhere.example", "do=x", true); status != http.StatusForbidden {
						t.Errorf("%s: another site's form gets %d from %.60s", name, status, path)
					}
				}
				if name == "alone" { // who may do everything
					if status := ask(method, path, "", "do=x&name=%ff&at=-1", true); status >= 500 {
						t.Errorf("%s gives %d for %s %.60s", name, status, method, path)
					}
				}
			}
			if method == "POST" && name == "alone" && pattern != "/lists" {
				path := part.ReplaceAllString(pattern, "x")
				if status := ask(method, path, "", "a="+strings.Repeat("b", 2<<20), true); status != http.StatusRequestEntityTooLarge {
					t.Errorf("a form of 2 MB gets %d from %s", status, path)
				}
			}
		}
	}
}
