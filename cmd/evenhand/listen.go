package main

import (
	"crypto/tls"
	"crypto/x509"
	"fmt"
	"net"
	"time"
)

// onlyHere says that an address can be reached from this computer only.
func onlyHere(address string) bool {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return false
	}
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// listen listens on an address, with a certificate by TLS. The warning says what browsers will say of it; empty for
// nothing.
func listen(address, cert, key string, now time.Time) (l net.Listener, warning string, err error) {
	if cert == "" {
		l, err = net.Listen("tcp", address)
		return l, "", err
	}
	pair, err := tls.LoadX509KeyPair(cert, key)
	if err != nil {
		return nil, "", fmt.Errorf("the certificate can't be used: %w", err)
	}
	l, err = tls.Listen("tcp", address, &tls.Config{
		Certificates: []tls.Certificate{pair}, MinVersion: tls.VersionTLS12, NextProtos: []string{"h2", "http/1.1"},
	})
	return l, warningOf(pair.Leaf, cert, now), err
}

// endsSoon is how long before its end a certificate is spoken of.
const endsSoon = 14 * 24 * time.Hour

func warningOf(leaf *x509.Certificate, file string, now time.Time) string {
	day := func(t time.Time) string { return t.UTC().Format("2 January 2006, 15:04 UTC") }
	switch {
	case now.After(leaf.NotAfter):
		return fmt.Sprintf("the certificate in %s ended on %s: browsers warn of the desk, and programs refuse it; put a new one there and start again",
			file, day(leaf.NotAfter))
	case now.Before(leaf.NotBefore):
		return fmt.Sprintf("the certificate in %s begins on %s; until then browsers warn of the desk (is this computer's clock right?)",
			file, day(leaf.NotBefore))
	case leaf.NotAfter.Sub(now) < endsSoon:
		return fmt.Sprintf("the certificate in %s ends on %s; put a new one there before, and start again", file, day(leaf.NotAfter))
	}
	return ""
}
