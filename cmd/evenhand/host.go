package main

import (
	"context"
	"errors"
	"fmt"
	"hash/fnv"
	"net"

	"evenhand/bank"
	"evenhand/bank/files"
	"evenhand/bank/store/remote"
	"evenhand/cmd/evenhand/desk"
)

// host is a bank on a desk that this computer's browser alone reaches.
type host struct {
	bank     *bank.Bank
	desk     *desk.Desk
	listener net.Listener
	stop     context.CancelFunc // ends serve
	ctx      context.Context
	ended    chan struct{} // closed when the bank is
	beside   func()        // ends what runs beside the desk, before the bank is closed; nil for nothing
	goBackTo string        // the backup that is to take the bank's place once the desk has closed
}

// openHost opens a bank and a port of this computer for it, 0 being a usual one.
func openHost(ctx context.Context, path string, port int, options func(h *host) desk.Options) (*host, error) {
	b, err := bank.Open(path, bank.Options{Direct: true})
	if err != nil {
		return nil, err
	}
	ports := []int{port}
	if port == 0 {
		ports = usualPorts(path)
	}
	var listener net.Listener
	for _, port := range ports {
		if listener, err = net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port)); err == nil {
			break
		}
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("can't listen on this port: %w", err), b.Close())
	}
	h := &host{bank: b, listener: listener, ended: make(chan struct{})}
	h.ctx, h.stop = context.WithCancel(ctx)
	o := options(h)
	o.Hosts = []string{listener.Addr().String()}
	if h.desk, err = desk.New(b, o); err != nil {
		return nil, errors.Join(err, listener.Close(), b.Close())
	}
	return h, nil
}

// usualPorts are the ports to try for a bank's desk, the same ones each time, so that a window that stayed open finds
// the desk again when it is started anew; the last is any that is free. Systems give none from 20000 to 29999 to
// programs that ask for any: Linux begins at 32768, others at 49152 (RFC 6335).
func usualPorts(path string) []int {
	if bank.IsFile(path) {
		path = files.Real(path)
	}
	sum := fnv.New32a()
	_, _ = sum.Write([]byte(path))
	first := 20000 + int(sum.Sum32()%9998)
	return []int{first, first + 1, first + 2, 0}
}

// address is where the desk is.
func (h *host) address() string { return "http://" + h.listener.Addr().String() }

// port is the one that it listens on.
func (h *host) port() int { return h.listener.Addr().(*net.TCPAddr).Port }

// link lets a browser in.
func (h *host) link() string { return h.address() + h.desk.Entrance() }

// serve answers until the program is asked to stop or the desk is closed, and closes the bank.
func (h *host) serve() error {
	defer close(h.ended)
	err := serve(h.ctx, h.listener, h.desk, h.bank.Path(), h.address())
	if h.beside != nil {
		h.beside()
	}
	return errors.Join(err, h.bank.Close())
}

// restore closes the desk once it has answered; then the backup takes the bank's place.
func (h *host) restore(backup string) {
	h.goBackTo = backup
	h.stop()
}

// openLink is the link of the desk that has the bank open and answers; empty where none does. At a team's desk people
// sign in, so that there it is the address.
func openLink(ctx context.Context, bankPath string) string {
	address, token := remote.Found(ctx, bankPath)
	if address == "" {
		return ""
	}
	me, err := remote.Ask(ctx, address, token)
	if err != nil {
		return ""
	}
	return address + me.Enter
}
