package main

import (
	"errors"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"

	"evenhand/bank"
	"evenhand/cmd/evenhand/desk"

	"github.com/urfave/cli/v2"
)

func deskCommand() *cli.Command {
	return &cli.Command{
		Name: "desk", Usage: "open the bank in your browser, on this computer alone",
		Description: "Every job of a week on web pages: items, lists, plans, quizzes, marks, the class. Only this computer's browser\n" +
			"gets in, by the link that is opened. Without --bank and $EVENHAND_BANK, and where this folder holds no\n" +
			"evenhand.bank, the bank is evenhand/evenhand.bank in your documents folder; it is made when there is none.\n\n" +
			"Example: evenhand desk",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "no-browser", Usage: "print the link and open nothing"},
			byFlag,
			&cli.IntFlag{Name: "port", Usage: "the `PORT` to listen on; else a free one"},
		},
		Action: runDesk,
	}
}

func runDesk(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	path, err := deskBank(c)
	if err != nil {
		return err
	}
	b, err := bank.Open(path, bank.Options{})
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", c.Int("port")))
	if err != nil {
		return errors.Join(fmt.Errorf("can't listen on this port: %w", err), b.Close())
	}
	host := listener.Addr().String()
	d, err := desk.New(b, desk.Options{Hosts: []string{host}, By: author(c)})
	if err != nil {
		return errors.Join(err, b.Close())
	}
	link := "http://" + host + d.Entrance()
	say(c, "The desk for %s is open in your browser. If it isn't, open this link:\n%s\nTo stop, press Ctrl-C or close this window.", path, link)
	if !c.Bool("no-browser") {
		if err := browse(link); err != nil {
			say(c, "no browser could be opened: %v", err)
		}
	}
	return errors.Join(serve(c.Context, listener, d.Handler()), b.Close())
}

// deskBank is the bank to open: one that is named, one in this folder, else that of the person's
// documents folder, made where there is none.
func deskBank(c *cli.Context) (string, error) {
	if c.IsSet(bankFlag.Name) || exists(bankFlag.Value) {
		return c.String(bankFlag.Name), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", fmt.Errorf("there is no home folder for a bank; name a bank with --bank: %w", err)
	}
	folder := filepath.Join(home, "Documents", "evenhand")
	path := filepath.Join(folder, bankFlag.Value)
	if exists(path) {
		return path, nil
	}
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return "", err
	}
	b, err := bank.Create(path)
	if err != nil {
		return "", err
	}
	return path, b.Close()
}

// browse opens a link in the person's browser.
func browse(link string) error {
	switch runtime.GOOS {
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", link).Start()
	case "darwin":
		return exec.Command("open", link).Start()
	}
	return exec.Command("xdg-open", link).Start()
}
