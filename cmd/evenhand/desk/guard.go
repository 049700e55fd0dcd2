package desk

import (
	"crypto/rand"
	"crypto/subtle"
	"net"
	"net/http"
	"slices"
	"strings"
	"time"

	"evenhand/bank/store/remote"
)

// longestForm is how many bytes a form without a file may have; one with a list has room for what is
// around it.
const (
	longestForm = 1 << 20
	longestList = largestUpload + 64<<10
)

// policy lets pages load nothing but what the desk itself serves, and no inline script or style;
// pictures of items may stand in the page.
const policy = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guard stands before every page: it refuses other hosts' names, forms sent from other sites' pages and
// requests too large, and keeps pages from loading anything from elsewhere.
func (d *Desk) guard(next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	checked := origin.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		header := w.Header()
		header.Set("Content-Security-Policy", policy)
		header.Set("X-Content-Type-Options", "nosniff")
		header.Set("Referrer-Policy", "same-origin")
		header.Set("Cache-Control", "no-store")
		if host, _, _ := strings.Cut(r.Header.Get("X-Forwarded-Host"), ","); d.o.Proxy && host != "" {
			r.Host = strings.TrimSpace(host) // the first is what the browser asked the outermost proxy for
		}
		if len(d.o.Hosts) > 0 && !slices.Contains(d.o.Hosts, r.Host) {
			http.Error(w, "this desk has another address", http.StatusMisdirectedRequest)
			return
		}
		longest := int64(longestForm)
		switch {
		case r.Method != http.MethodPost:
		case r.URL.Path == "/lists":
			longest = longestList
		case strings.HasPrefix(r.URL.Path, "/api/"):
			longest = remote.LongestWrite
		}
		r.Body = http.MaxBytesReader(w, r.Body, longest)
		checked.ServeHTTP(w, r)
	})
}

// secret is a word of 130 random bits.
func secret() string { return rand.Text() }

// enterCookie names what holds the entrance's secret in the browser, which keeps the same cookies for all
// ports of a computer.
func enterCookie(r *http.Request) string {
	_, port, _ := net.SplitHostPort(r.Host)
	return "enter" + port
}

// enter lets a browser in that comes by the link, and takes the secret out of the address.
func enter(v *visit) error {
	if !same(v.PathValue("secret"), v.desk.entrance) {
		return v.closed()
	}
	http.SetCookie(v.w, v.desk.cookie(enterCookie(v.Request), v.desk.entrance, 0))
	return v.to("/")
}

// same compares secrets in a time that tells nothing.
func same(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }

// cookie is one that scripts can't read and other sites can't send; seconds 0 lasts until the
// browser closes.
func (d *Desk) cookie(name, value string, seconds int) *http.Cookie {
	c := &http.Cookie{
		Name: name, Value: value, Path: "/",
		HttpOnly: true, SameSite: http.SameSiteStrictMode, Secure: d.o.Secure,
	}
	if seconds > 0 {
		c.MaxAge = seconds
		c.Expires = d.o.Now().Add(time.Duration(seconds) * time.Second)
	}
	return c
}
