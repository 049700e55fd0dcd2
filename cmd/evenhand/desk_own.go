package main

import (
	"context"
	"path/filepath"
	"strings"

	"evenhand/bank"
	"evenhand/bank/files"
	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"

	"github.com/urfave/cli/v2"
)

// ownDesk is the desk of one person while the program runs, also when the bank goes back to a backup.
type ownDesk struct {
	c      *cli.Context
	path   string
	copies results.Copies
	school *school
}

// keptDays is of how many days the desk of one person keeps daily backups.
const keptDays = 14

// copiesBeside are the backups of a bank in a folder beside its file; a bank that is no file has none there.
func copiesBeside(path string) results.Copies {
	if !bank.IsFile(path) {
		return results.Copies{}
	}
	return results.Copies{Dir: filepath.Join(filepath.Dir(files.Real(path)), "backups"), Keep: keptDays}
}

// host opens the bank on a desk.
func (d ownDesk) host(port int, o desk.Options) (*host, error) {
	return openHost(d.c.Context, d.path, port, func(h *host) desk.Options {
		d.school.ctx, d.school.home = h.ctx, h.address()
		o.By, o.DemoSchool, o.Stop, o.Copies = author(d.c), d.school.enter, h.stop, d.copies
		if d.copies.Dir != "" {
			o.Restore = h.restore
		}
		return o
	})
}

// serve keeps the desk open. The bank in a person's documents folder, where nobody thinks of backups, gets
// one a day.
func (d ownDesk) serve(h *host) error {
	if own, err := ownFolder(); err == nil && files.Same(own, filepath.Dir(d.path)) {
		h.beside = beside(h.ctx, func(ctx context.Context) { nightly(ctx, h.bank, d.copies, h.desk.BackedUp) })
	}
	return h.serve()
}

// again opens the desk anew, with the same link, after a backup took the bank's place.
func (d ownDesk) again(before *host) (*host, error) {
	told := goBack(d.path, before.goBackTo, d.copies)
	return d.host(before.port(), desk.Options{Entrance: strings.TrimPrefix(before.desk.Entrance(), "/enter/"), Restored: told})
}
