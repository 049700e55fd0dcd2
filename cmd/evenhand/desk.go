package main

import (
	"errors"
	"fmt"
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
			&cli.IntFlag{Name: "port", Usage: "the `PORT` to listen on; else the same free one each time"},
		},
		Action: runDesk,
	}
}

func runDesk(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	if port := c.Int("port"); port < 0 || port > 65535 {
		return usagef("--port is %d; a port is a number from 1 to 65535", port)
	}
	path, err := deskBank(c)
	if err != nil {
		return err
	}
	if link := openLink(c.Context, path); link != "" {
		say(c, "The desk for %s is open already%s", path, showDesk(c, link))
		return nil
	}
	open := ownDesk{c: c, path: path, copies: copiesBeside(path), school: &school{by: author(c)}}
	defer open.school.wait()
	h, err := open.host(c.Int("port"), desk.Options{})
	if err != nil {
		return err
	}
	say(c, "The desk for %s is open%s\nTo stop, press Ctrl-C or close this window.", path, showDesk(c, h.link()))
	for {
		if err := open.serve(h); err != nil || h.goBackTo == "" {
			return err
		}
		if h, err = open.again(h); err != nil {
			return err
		}
	}
}

// showDesk opens the desk in the browser, unless that is not wished, and says how to get there.
func showDesk(c *cli.Context, link string) string {
	if c.Bool("no-browser") {
		return "; open this link in your browser:\n" + link
	}
	if err := browse(link); err != nil {
		return fmt.Sprintf(", but no browser could be started (%v); open this link in one:\n%s", err, link)
	}
	return " in your browser. If you don't see it, open this link:\n" + link
}

// deskBank is the bank to open: one that is named, one in this folder, else that of the person's
// documents folder, made where there is none.
func deskBank(c *cli.Context) (string, error) {
	if c.IsSet(bankFlag.Name) || exists(bankFlag.Value) {
		return c.String(bankFlag.Name), nil
	}
	folder, err := ownFolder()
	if err == nil {
		err = os.MkdirAll(folder, 0o700)
	}
	if err != nil {
		return "", fmt.Errorf("there is no documents folder for a bank; name a bank with --bank: %w", err)
	}
	path := filepath.Join(folder, bankFlag.Value)
	if exists(path) {
		return path, nil
	}
	b, err := bank.Create(path)
	if err != nil {
		return "", err
	}
	// Who works alone has no colleague to read drafts; the page of rules says so and changes it.
	return path, errors.Join(b.SetReview(bank.Review{Anyone: true, By: author(c), At: now()}), b.Close())
}

// ownFolder is this program's folder among the person's documents, where there may be none yet.
func ownFolder() (string, error) {
	folder, err := documents()
	return filepath.Join(folder, "evenhand"), err
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
