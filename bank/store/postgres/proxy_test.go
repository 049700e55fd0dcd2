package postgres_test

import (
	"fmt"
	"io"
	"net"
	"sync"
	"testing"
)

// proxy stands between a store and its server and cuts all connections at the n-th piece
// that passes, in either direction.
type proxy struct {
	net.Listener
	to string

	mutex  sync.Mutex
	passed int
	cutAt  int  // 0: never
	before bool // the piece itself is lost, too
	refuse bool // after the cut nobody gets through any more
	done   bool // the cut was made
	open   map[net.Conn]bool
}

func newProxy(t *testing.T, port int) *proxy {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	p := &proxy{Listener: l, to: fmt.Sprintf("127.0.0.1:%d", port), open: map[net.Conn]bool{}}
	t.Cleanup(func() { l.Close(); p.cutAll() })
	go func() {
		for {
			c, err := l.Accept()
			if err != nil {
				return
			}
			go p.serve(c)
		}
	}()
	return p
}

// address is that of a bank behind the proxy.
func (p *proxy) address(bank string) string {
	return fmt.Sprintf("postgres://postgres@%s/postgres?bank=%s&sslmode=disable", p.Addr(), bank)
}

// plan says where the next cut is.
func (p *proxy) plan(cutAt int, before, refuse bool) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.passed, p.cutAt, p.before, p.refuse, p.done = 0, cutAt, before, refuse, false
}

func (p *proxy) wasCut() bool {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	return p.done
}

func (p *proxy) serve(client net.Conn) {
	p.mutex.Lock()
	refused := p.refuse && p.done
	p.open[client] = true
	p.mutex.Unlock()
	server, err := net.Dial("tcp", p.to)
	if err != nil || refused {
		client.Close()
		return
	}
	p.mutex.Lock()
	p.open[server] = true
	p.mutex.Unlock()
	go p.pass(client, server)
	p.pass(server, client)
}

func (p *proxy) pass(from, to net.Conn) {
	piece := make([]byte, 32<<10)
	for {
		n, err := from.Read(piece)
		if n > 0 && !p.let(to, piece[:n]) || err != nil {
			from.Close()
			to.Close()
			return
		}
	}
}

// let passes a piece on, unless it is the one at which the connections are cut.
func (p *proxy) let(to io.Writer, piece []byte) bool {
	p.mutex.Lock()
	p.passed++
	cut := p.passed == p.cutAt
	lose := cut && p.before
	p.done = p.done || cut
	p.mutex.Unlock()
	if lose {
		p.cutAll()
		return false
	}
	_, err := to.Write(piece)
	if cut {
		p.cutAll()
	}
	return err == nil && !cut
}

func (p *proxy) cutAll() {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	for c := range p.open {
		c.Close()
	}
	clear(p.open)
}
