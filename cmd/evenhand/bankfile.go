package main

import (
	"errors"
	"fmt"
	"os"
	"os/user"
	"path/filepath"
	"time"

	"evenhand/bank"
	"evenhand/bank/store/remote"

	"github.com/urfave/cli/v2"
)

// bankFlag says where the bank is; it may stand anywhere on the line.
var bankFlag = &cli.StringFlag{Name: "bank", Usage: "the bank: a `FILE`, a desk such as " +
	"https://bank.alderhill.example, or postgres://HOST/DATABASE?bank=NAME", EnvVars: []string{"EVENHAND_BANK"},
	Value: "evenhand.bank"}

// byFlag says who does it.
var byFlag = &cli.StringFlag{Name: "by", Usage: "`WHO` does this, such as your initials; else $EVENHAND_BY, " +
	"else this computer's user name", EnvVars: []string{"EVENHAND_BY"}}

func author(c *cli.Context) string {
	if by := c.String("by"); by != "" {
		return by
	}
	if address := c.String(bankFlag.Name); bank.AtDesk(address) {
		if me, err := remote.Ask(c.Context, address, ""); err == nil {
			return me.Name // whose token it is
		}
	}
	if u, err := user.Current(); err == nil {
		return u.Username
	}
	return "unknown"
}

// now is the time of a change, in whole seconds.
func now() time.Time { return time.Now().UTC().Truncate(time.Second) }

// withBank opens the bank to change it, calls do and closes it.
func withBank(c *cli.Context, do func(*bank.Bank) error) error {
	sweepBeside(c, c.String("bank"))
	return openedBank(c, patient(c, bank.Options{}), do)
}

// sweepBeside takes away what killed runs left beside a bank's file.
func sweepBeside(c *cli.Context, address string) {
	if bank.IsFile(address) {
		saySwept(c, filepath.Dir(address))
	}
}

// readingBank opens the bank only to read it. What do prints is held back until the bank is
// closed: who reads it slowly, page by page, keeps nobody from changing the bank.
func readingBank(c *cli.Context, do func(*bank.Bank) error) error {
	held := hold(c)
	err := openedBank(c, patient(c, bank.Options{ReadOnly: true}), do)
	return errors.Join(err, held.release())
}

// patient adds that a command waits for its turn, and says so.
func patient(c *cli.Context, o bank.Options) bank.Options {
	o.Context = c.Context
	o.Timeout = 2 * time.Minute
	o.Waiting = func(on string) {
		say(c, "waiting for %s, which is in use or can't be reached at the moment; Ctrl-C ends the waiting", on)
	}
	return o
}

// bankThere says whether there is a bank, as far as can be seen without opening it.
func bankThere(c *cli.Context) bool {
	return !bank.IsFile(c.String(bankFlag.Name)) || exists(c.String(bankFlag.Name))
}

// isThere says that there is no bank of a name, where it is another one than that of --bank.
func isThere(address string) error {
	if bank.IsFile(address) && !exists(address) {
		return fmt.Errorf("there is no bank %s to read; look at how its file is called", address)
	}
	return nil
}

func openedBank(c *cli.Context, options bank.Options, do func(*bank.Bank) error) error {
	b, err := bank.Open(c.String("bank"), options)
	if err != nil {
		return err
	}
	err = do(b)
	if closeErr := b.Close(); err == nil {
		err = closeErr
	}
	return err
}

// exists says whether there is a file of this name.
func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
