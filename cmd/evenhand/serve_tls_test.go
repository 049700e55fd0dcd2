package main

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"io"
	"math/big"
	"net"
	"net/http"
	"net/url"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"
)

// certified writes a certificate for this computer that signs itself, with its key, as NAME.cert and NAME.key.
func certified(t *testing.T, name string, from, to time.Time) []byte {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	must(t, err)
	is := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: name}, NotBefore: from, NotAfter: to,
		IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)}, IsCA: true, BasicConstraintsValid: true,
	}
	der, err := x509.CreateCertificate(rand.Reader, is, is, &key.PublicKey, key)
	must(t, err)
	private, err := x509.MarshalPKCS8PrivateKey(key)
	must(t, err)
	cert := pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der})
	must(t, os.WriteFile(name+".cert", cert, 0o600))
	must(t, os.WriteFile(name+".key", pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: private}), 0o600))
	return cert
}

// A desk with a certificate speaks HTTP/2, hands out cookies for TLS alone, and invites to its secure address. A pair
// that doesn't belong together or can't be read is refused; of one that has ended, or soon will, it is told.
func TestServeWithACertificate(t *testing.T) {
	t.Chdir(t.TempDir())
	day, today := 24*time.Hour, time.Now()
	mustDo(t, "--bank team.bank init")
	cert := certified(t, "good", today.Add(-day), today.Add(90*day))
	certified(t, "other", today.Add(-day), today.Add(90*day))
	certified(t, "over", today.Add(-30*day), today.Add(-day))
	certified(t, "soon", today.Add(-30*day), today.Add(5*day))
	certified(t, "later", today.Add(day), today.Add(30*day))
	must(t, os.WriteFile("broken.key", []byte("no key"), 0o600))
	const serve = "--bank team.bank serve --listen 127.0.0.1:0 "
	for _, key := range []string{"other.key", "broken.key", "good.cert", "missing.key"} {
		if code, _, said := evenhand(serve + "--tls-cert good.cert --tls-key " + key); code != 1 || !strings.Contains(said, "certificate can't be used") {
			t.Errorf("with %s: exit %d, %s", key, code, said)
		}
	}
	for name, want := range map[string]string{"over": `(ended on)`, "soon": `(ends on)`, "later": `(begins on)`} {
		_, desk := deskOpen(t, serve+"--tls-cert "+name+".cert --tls-key "+name+".key", want)
		must(t, desk.Process.Signal(syscall.SIGTERM))
		_ = desk.Wait()
	}
	link, _ := deskOpen(t, serve+"--tls-cert good.cert --tls-key good.key", `(https://127\S+/invited/\S+)`)
	roots := x509.NewCertPool()
	roots.AppendCertsFromPEM(cert)
	browser := &http.Client{Transport: &http.Transport{ForceAttemptHTTP2: true, TLSClientConfig: &tls.Config{RootCAs: roots}},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	answer, err := browser.PostForm(link, url.Values{"name": {"MK"}, "password": {"chalk and slate"}})
	must(t, err)
	must(t, answer.Body.Close())
	if answer.ProtoMajor != 2 || len(answer.Cookies()) != 1 || !answer.Cookies()[0].Secure || !answer.Cookies()[0].HttpOnly {
		t.Fatalf("it answers by %s with %v", answer.Proto, answer.Cookies())
	}
	at, err := url.Parse(link)
	must(t, err)
	r, err := http.NewRequest("POST", "https://"+at.Host+"/team/invite", strings.NewReader("role=writer"))
	must(t, err)
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.AddCookie(answer.Cookies()[0])
	answer, err = browser.Do(r)
	must(t, err)
	page, err := io.ReadAll(answer.Body)
	must(t, err)
	must(t, answer.Body.Close())
	if !strings.Contains(string(page), "https://"+at.Host+"/invited/") {
		t.Errorf("the invitation is not for the secure address: %.300s", page)
	}
	answer, err = http.Get(strings.Replace(link, "https", "http", 1))
	must(t, err)
	must(t, answer.Body.Close())
	if answer.StatusCode != http.StatusBadRequest {
		t.Errorf("in the clear it answers %d", answer.StatusCode)
	}
}
