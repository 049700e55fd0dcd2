package main

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
)

// strangeRequests are what no browser sends; each is a whole request, PATH and HOST and COOKIE stand for what they say.
var strangeRequests = []string{
	"GET PATH HTTP/1.0\r\n\r\n",
	"GET PATH HTTP/1.1\r\n\r\n",                                  // without a host
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nHost: elsewhere\r\n\r\n", // two of them
	"GET PATH HTTP/9.9\r\nHost: HOST\r\n\r\n",
	"GET PATH?" + strings.Repeat("words=9&", 100_000) + " HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"GET PATH?skill=%00&words=%00&at=%00&class=%00&part=%00 HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"GET PATH?a=%zz;b=%ff HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nRange: bytes=0-1,5-9999999999999999999,-7\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nIf-None-Match: \"x\", W/\"\r\nIf-Match: *\r\nIf-Modified-Since: never\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n" +
		"Sec-WebSocket-Key: eA==\r\nSec-WebSocket-Version: 13\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nPart: \x7f../found\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE; COOKIE; desk=; language=xx; =\r\nAccept-Language: " + strings.Repeat("q;q=0,", 2000) + "\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nAuthorization: Bearer " + strings.Repeat("A", 60_000) + "\r\n\r\n",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Length: 5\r\nContent-Length: 7\r\n\r\nabcdefg",
	"GET PATH HTTP/1.1\r\nHost: HOST\r\n folded: yes\r\n\r\n",
	"GET PATH\x00 HTTP/1.1\r\nHost: HOST\r\n\r\n",
	"GET http://elsewhere.example/PATH HTTP/1.1\r\nHost: elsewhere.example\r\n\r\n",
	"HEAD PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"BREW PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"TRACE PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"CONNECT PATH HTTP/1.1\r\nHost: HOST\r\n\r\n",
	"OPTIONS * HTTP/1.1\r\nHost: HOST\r\n\r\n",
	"PUT PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Length: 2\r\n\r\n{}",
	"DELETE PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\n\r\n",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 9\r\n\r\na=%00&b=%",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Type: application/json; charset=utf-7\r\n" +
		"Content-Length: 60000\r\n\r\n" + strings.Repeat("[", 60_000),
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Type: multipart/form-data\r\nContent-Length: 3\r\n\r\n--x",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Type: multipart/form-data; boundary=" +
		strings.Repeat("b", 200) + "\r\nContent-Length: 3\r\n\r\n--x",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Type: ;;;\r\nContent-Encoding: gzip\r\nContent-Length: 3\r\n\r\nabc",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nTransfer-Encoding: chunked\r\nContent-Length: 3\r\n\r\nffffffffffffffff1\r\nabc",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nTransfer-Encoding: chunked\r\n\r\nZ\r\nabc\r\n0\r\n\r\n",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nTransfer-Encoding: gzip, chunked\r\n\r\n0\r\n\r\n",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nContent-Length: -1\r\n\r\n",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nOrigin: null\r\nSec-Fetch-Site: cross-site\r\nContent-Length: 0\r\n\r\n",
	"POST PATH HTTP/1.1\r\nHost: HOST\r\nCookie: COOKIE\r\nExpect: 999-maybe\r\nContent-Length: 0\r\n\r\n",
	"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03PATH\r\n\r\n", // TLS, where there is none
}

// strangeAt are the addresses that get them.
var strangeAt = []string{
	"/", "/items", "/items/new", "/items/01AAAAAAAAAAAAAAAAAAAAAAAA", "/items/%00", "/items/x/edit", "/items/x/status", "/generate", "/plans", "/plans/new",
	"/plans/typed", "/plans/%2e%2e%2f", "/terms/new", "/terms", "/quizzes", "/quizzes/x", "/quizzes/x/form-A.pdf", "/quizzes/x/set", "/quizzes/x/swap",
	"/marks", "/marks/x", "/marks/x/class", "/marks/x/paste", "/class", "/class/practice", "/lists", "/lists/x", "/lists/kept/9/x", "/activity", "/team",
	"/team/copies", "/team/copies/x", "/team/copies/x/restore", "/team/invite", "/team/people/x", "/passes", "/passes/drop", "/signin", "/invited/x",
	"/healthz", "/metrics", "/language", "/look/x/desk.css", "/api/", "/api/me", "/api/activity", "/api/openapi.json", "/api/bank", "/api/bank/read",
	"/api/bank/leave", "/api/bank/write", "/api/marks", "/api/marks/read", "/api/marks/make", "//", "/../../etc/passwd", "/nothing",
}

// Two thousand strange requests and more, in a reader's session, in none, and in one that was signed out: none is a
// fault of the desk's, none hangs, and its memory stays bounded. Bodies that never end are cut off without holding
// others up. A token of a person who was removed lets nobody in.
func TestStrangeRequests(t *testing.T) {
	t.Chdir(t.TempDir())
	mustDo(t, "--bank team.bank init")
	link, desk := deskOpen(t, "--bank team.bank serve --listen 127.0.0.1:0", `(http://127\S+/invited/\S+)`)
	owner := comeIn(t, link)
	owner.read(owner.browser.PostForm(link, url.Values{"name": {"MK"}, "password": {"chalk and slate"}}))
	at, err := url.Parse(owner.address)
	must(t, err)
	invited := regexp.MustCompile(`http://127[^<]+/invited/\w+`).FindString(owner.post("/team/invite?role=reader"))
	reader := comeIn(t, invited)
	reader.read(reader.browser.PostForm(invited, url.Values{"name": {"SV"}, "password": {"chalk and slate"}}))
	cookieOf := func(v visitor) string { return v.browser.Jar.Cookies(at)[0].String() }
	token := regexp.MustCompile(`<code>(evenhand-\w+)`).FindStringSubmatch(reader.post("/passes?name=laptop"))[1]
	signedOut := cookieOf(owner)
	before := owner.text("/team")
	owner.post("/signout")
	for _, begin := range []string{
		"Transfer-Encoding: chunked\r\n\r\n5\r\nabcde\r\n", "Content-Length: 900000\r\n\r\na=",
		"Content-Type: application/json\r\n",
	} {
		for range 30 {
			conn, err := net.Dial("tcp", at.Host)
			must(t, err)
			defer conn.Close() // open and silent until the end
			_, err = fmt.Fprintf(conn, "POST /language HTTP/1.1\r\nHost: %s\r\n%s", at.Host, begin)
			must(t, err)
		}
	}
	asked := 0
	for _, cookie := range []string{cookieOf(reader), signedOut} {
		for _, path := range strangeAt {
			for _, request := range strangeRequests {
				raw := strings.NewReplacer("PATH", path, "HOST", at.Host, "COOKIE", cookie).Replace(request)
				if status := sendRaw(t, at.Host, raw); status >= 500 && status != http.StatusNotImplemented && status != http.StatusHTTPVersionNotSupported {
					t.Errorf("%d from %.200q", status, raw)
				}
				asked++
			}
		}
	}
	t.Logf("%d strange requests", asked)
	again := "GET /team HTTP/1.1\r\nHost: " + at.Host + "\r\nCookie: " + signedOut + "\r\nConnection: close\r\n\r\n"
	if status := sendRaw(t, at.Host, again); status != http.StatusSeeOther {
		t.Errorf("a session that was signed out gets %d", status)
	}
	owner.read(owner.browser.PostForm(owner.address+"/signin", url.Values{"name": {"MK"}, "password": {"chalk and slate"}}))
	if after := owner.text("/team"); after != before {
		t.Errorf("something has changed: %s", after)
	}
	owner.post("/team/people/SV/remove")
	ask := "GET /api/me HTTP/1.1\r\nHost: " + at.Host + "\r\nConnection: close\r\nAuthorization: Bearer " + token + "\r\n\r\n"
	if status := sendRaw(t, at.Host, ask); status != http.StatusUnauthorized {
		t.Errorf("the token of a person who was removed gets %d", status)
	}
	if text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", desk.Process.Pid)); err == nil {
		peak := regexp.MustCompile(`VmHWM:\s*(\d+) kB`).FindSubmatch(text)
		if kb, _ := strconv.Atoi(string(peak[1])); kb > 400<<10 {
			t.Errorf("the desk took %d MB", kb>>10)
		}
	}
}

// sendRaw sends bytes and reads the status of the answer; 0 where the desk only closes the connection.
func sendRaw(t *testing.T, host, raw string) (status int) {
	t.Helper()
	conn, err := net.Dial("tcp", host)
	must(t, err)
	defer conn.Close()
	must(t, conn.SetDeadline(time.Now().Add(30*time.Second)))
	go func() { _, _ = io.WriteString(conn, raw) }() // the desk may have enough before the end
	var first [12]byte
	if _, err := io.ReadFull(conn, first[:]); err != nil {
		if e, ok := err.(net.Error); ok && e.Timeout() {
			t.Errorf("no answer to %.200q", raw)
		}
		return 0
	}
	status, _ = strconv.Atoi(string(first[9:]))
	return status
}
