package main

import (
	"os"
	"os/user"
	"path/filepath"
	"time"

	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

// bankFlag says where the bank is; it may stand anywhere on the line.
var bankFlag = &cli.StringFlag{Name: "bank", Usage: "the bank `FILE`", EnvVars: []string{"EVENHAND_BANK"}, Value: "evenhand.bank"}

// byFlag says who does it.
var byFlag = &cli.StringFlag{Name: "by", Usage: "`WHO` does this, such as your initials; else $EVENHAND_BY, else this computer's user name", EnvVars: []string{"EVENHAND_BY"}}

func author(c *cli.Context) string {
	if by := c.String("by"); by != "" {
		return by
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
	saySwept(c, filepath.Dir(c.String("bank")))
	return openedBank(c, bank.Options{}, do)
}

// readingBank opens the bank only to read it.
func readingBank(c *cli.Context, do func(*bank.Bank) error) error {
	return openedBank(c, bank.Options{ReadOnly: true}, do)
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
