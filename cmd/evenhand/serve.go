package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store/remote"
	"evenhand/cmd/evenhand/desk"
	"evenhand/standards"
	"evenhand/standards/words"

	"github.com/urfave/cli/v2"
)

func serveCommand() *cli.Command {
	return &cli.Command{
		Name: "serve", Usage: "put the bank on web pages for the team, at one address",
		Description: "The first start prints a link that makes the desk's owner; the owner invites the others. By itself it listens on this\n" +
			"computer only. Other computers reach it by --listen, with a certificate or behind a proxy that has one: names and\n" +
			"passwords never go over a network in the clear.\n" +
			"Commands on this bank's file work through the desk while it is open. Those of other computers do with --bank ADDRESS\n" +
			"and a pass, made on the page Passes for programs: its token stands in $EVENHAND_TOKEN, or in the file that\n" +
			"$EVENHAND_TOKEN_FILE names, and never on the command line.\n\n" +
			"Example: evenhand serve --listen 127.0.0.1:8080",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "listen", Usage: "the `ADDRESS` and port", Value: "127.0.0.1:8080"},
			&cli.StringFlag{Name: "tls-cert", Usage: "the certificate's `FILE` (PEM)"},
			&cli.StringFlag{Name: "tls-key", Usage: "the certificate's key `FILE` (PEM)"},
			&cli.BoolFlag{Name: "behind-proxy", Usage: "a proxy in front of it speaks TLS; its X-Forwarded-Host is believed"},
			&cli.StringFlag{Name: "backups", Usage: "keep a checked copy of each day, with the marks, in `DIR`"},
			&cli.IntFlag{Name: "keep", Usage: "with --backups: how many `DAYS` to keep", Value: 14},
			&cli.BoolFlag{Name: "refresh", Usage: "first bring a bank of an earlier evenhand along, as evenhand refresh does"},
			byFlag,
			&cli.StringSliceFlag{Name: "host", Usage: "the `NAME` (with its port, if it is no usual one) by which browsers ask; may be given again; else any"},
		},
		Before: together(
			only([]string{"tls-key"}, "a certificate needs both", "tls-cert"),
			only([]string{"tls-cert"}, "a certificate needs both", "tls-key"),
			only([]string{"backups"}, "other copies are yours to keep", "keep"),
		),
		Action: runServe,
	}
}

func runServe(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	cert, proxy := c.String("tls-cert"), c.Bool("behind-proxy")
	address := c.String("listen")
	_, _, err := net.SplitHostPort(address)
	switch {
	case err != nil:
		return usagef("--listen is %q; it is an address with its port, such as 127.0.0.1:8080", address)
	case c.Int("keep") < 1:
		return usagef("--keep %d: keep one day at least", c.Int("keep"))
	case cert == "" && !proxy && !onlyHere(address):
		return usagef("%s can be reached from other computers, and passwords would go there in the clear; give "+
			"--tls-cert and --tls-key, or --behind-proxy where a proxy speaks TLS", address)
	}
	if link := openLink(c.Context, c.String("bank")); link != "" {
		return fmt.Errorf("a desk has %s open already; close that one first, or go on there:\n%s", c.String("bank"), link)
	}
	sweepBeside(c, c.String("bank"))
	team := teamDesk{c: c, listenAt: c.String("listen"), copies: results.Copies{Dir: c.String("backups"), Keep: c.Int("keep")}}
	for {
		if err := openedBank(c, patient(c, bank.Options{Direct: true}), team.serve); err != nil || team.goBackTo == "" {
			return err
		}
		team.told, team.goBackTo = goBack(c.String("bank"), team.goBackTo, team.copies), ""
		say(c, "%s", team.told)
	}
}

// teamDesk is the desk of a team while the program runs, also when the bank goes back to a backup.
type teamDesk struct {
	c        *cli.Context
	listenAt string
	copies   results.Copies
	goBackTo string      // the backup that is to take the bank's place once the desk has closed
	told     *words.Told // what going back came to
}

// serve puts the bank on a desk until the program is asked to stop, or an owner goes back to a backup.
func (t *teamDesk) serve(b *bank.Bank) error {
	c, cert, key := t.c, t.c.String("tls-cert"), t.c.String("tls-key")
	if err := broughtAlong(c, b); err != nil {
		return err
	}
	ctx, stop := context.WithCancel(c.Context)
	defer stop()
	o := desk.Options{
		Copies: t.copies, Restored: t.told,
		Store: b.Store(), Hosts: c.StringSlice("host"), Secure: cert != "" || c.Bool("behind-proxy"),
		Proxy: c.Bool("behind-proxy"), Log: slog.New(slog.NewJSONHandler(c.App.ErrWriter, nil)),
	}
	if t.copies.Dir != "" {
		o.Restore = func(backup string) { t.goBackTo = backup; stop() }
	}
	d, err := desk.New(b, o)
	if err != nil {
		return err
	}
	listener, warning, err := listen(t.listenAt, cert, key, now())
	if err != nil {
		return err
	}
	if warning != "" {
		say(c, "%s", warning)
	}
	t.listenAt = listener.Addr().String() // the same one after going back
	address := map[bool]string{true: "https://", false: "http://"}[cert != ""] + t.listenAt
	first, err := d.FirstOwner(c.Context)
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	say(c, "the desk for %s is at %s", b.Path(), address)
	if first != "" {
		say(c, "open this link once to become its owner:\n%s%s", address, first)
	}
	if t.copies.Dir != "" {
		defer beside(ctx, func(ctx context.Context) { nightly(ctx, b, t.copies, d.BackedUp) })()
	}
	return serve(ctx, listener, d, b.Path(), address)
}

// broughtAlong says that an earlier evenhand worked out a part of the bank, or with --refresh works it out anew.
func broughtAlong(c *cli.Context, b *bank.Bank) error {
	older, err := olderItems(b)
	if err != nil || older == 0 {
		return errors.Join(err, sayRests(c, b))
	}
	if !c.Bool("refresh") {
		say(c, "an earlier evenhand worked out a part of this bank; start again with --refresh to bring %s along", count(older, "item"))
		return nil
	}
	revised, err := b.Refresh(author(c), now(), nil)
	if err == nil && revised > 0 {
		say(c, "%s brought along to catalogue %d", count(revised, "item"), standards.CatalogueNumber)
	}
	return errors.Join(err, sayRests(c, b))
}

// announced lets commands of this computer find the desk beside the bank's file while it is open. Where that can't
// be noted they wait, as for any program that has the file.
func announced(path, address string, d *desk.Desk) (end func()) {
	if !bank.IsFile(path) || !strings.HasPrefix(address, "http://127.") && !strings.HasPrefix(address, "http://[::1]") {
		return func() {}
	}
	over, err := remote.Announce(path, address, d.LocalToken())
	if err != nil {
		return func() {}
	}
	return func() { _ = over() } // what is left is recognised
}

// beside runs something beside the desk; end stops it and waits for its end.
func beside(ctx context.Context, run func(context.Context)) (end func()) {
	ctx, stop := context.WithCancel(ctx)
	ended := make(chan struct{})
	go func() { defer close(ended); run(ctx) }()
	return func() { stop(); <-ended }
}

// serve answers requests until the program is asked to stop; requests in hand are ended first. Meanwhile
// commands on the bank find the desk.
func serve(ctx context.Context, listener net.Listener, d *desk.Desk, bankPath, address string) error {
	defer announced(bankPath, address, d)()
	stopped, done := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer done()
	ending.Store(&done)
	serving.Add(1)
	defer func() {
		if ctx.Err() != nil { // it was closed from its pages; a signal that ends it is its own to the end
			serving.Add(-1)
		}
	}()
	server := &http.Server{
		Handler:           d.Handler(),
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       time.Minute,
		IdleTimeout:       2 * time.Minute,
		ErrorLog:          d.ErrorLog(),
	}
	server.RegisterOnShutdown(d.Leave)
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-stopped.Done():
	}
	grace, cancel := context.WithTimeout(context.Background(), inHand)
	defer cancel()
	err := server.Shutdown(grace)
	if errors.Is(err, context.DeadlineExceeded) {
		server.ErrorLog.Printf("what was still being sent after %v was cut off; all that was acknowledged is kept", inHand)
		err = server.Close()
	}
	return err
}

// inHand is how long requests in hand may take to end when the program is asked to stop; process managers kill what
// takes longer than some 30 seconds.
const inHand = 15 * time.Second
