package results

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"strings"
	"time"

	"evenhand/bank"
	"evenhand/bank/files"
	"evenhand/bank/store"
	"evenhand/bank/store/remote"
	"evenhand/standards/words"
)

// Restored is what Restore did.
type Restored struct {
	Marks bool     // the backup held marks, which are in their place again
	Kept  []string // where what stood there before is kept
}

// Restore puts a backup of a bank, and of the marks beside it, in their places. The
// backup is copied and the copy proved undamaged before anything is touched; what stood
// there, damaged or not, is kept under a name with the time in it. Without marks in the
// backup those of the bank stay, as do the buckets to keep of a bank that can be read, if
// anything stands in one.
func Restore(bankPath, backup string, at time.Time, o bank.Options, keep ...string) (done Restored, err error) {
	if bank.AtDesk(bankPath) {
		return done, words.Errorf("a desk's bank is not overwritten from elsewhere; stop the desk, and restore where its bank stands")
	}
	path := files.Real(bankPath)
	if files.Same(path, backup) {
		return done, words.Errorf("%s is the bank itself; name a backup of it", backup)
	}
	if err := there(backup); err != nil {
		return done, err
	}
	standing, err := holdStill(path, o)
	if err != nil {
		return done, err
	}
	if standing != nil {
		defer func() { err = errors.Join(err, standing.Close()) }()
	}
	kept := path + ".before-" + at.Format("2006-01-02-150405")
	parts := []*part{{from: backup, to: path, kept: kept, prove: bank.ProveFile}}
	if !missing(Path(backup)) {
		parts = append(parts, &part{from: Path(backup), to: path + ending, kept: kept + ending, prove: ProveFile})
		done.Marks = true
	}
	for _, p := range parts {
		defer p.clean()
		if err := p.stage(); err != nil {
			return done, err
		}
	}
	if standing != nil {
		if err := parts[0].take(standing, keep); err != nil {
			return done, err
		}
	}
	for _, p := range parts {
		replaced, err := p.place()
		if replaced {
			done.Kept = append(done.Kept, p.kept)
		}
		if err != nil {
			return done, err
		}
	}
	return done, nil
}

// holdStill keeps others out of the bank's file, if it is one that can be opened.
func holdStill(path string, o bank.Options) (store.Store, error) {
	ctx := o.Context
	if ctx == nil {
		ctx = context.Background()
	}
	if address, _ := remote.Found(ctx, path); address != "" {
		return nil, words.Errorf("the desk at %s has %s open; go back to the backup from its page Team, or close it first", address, path)
	}
	file, err := bank.OpenStore(path, bank.Options{Direct: true, Context: ctx})
	switch {
	case err == nil:
		return file, nil
	case errors.Is(err, store.ErrInUse), errors.Is(err, fs.ErrPermission):
		return nil, err
	}
	return nil, nil // missing or damaged: that is what a backup is for
}

// part is one file of a backup on its way into its place.
type part struct {
	from, to, kept string
	prove          func(path string) error
	temp           string
}

// stage copies the file beside its place and proves the copy.
func (p *part) stage() error {
	temp := files.TempName(p.to)
	err := files.New(temp, files.Private, func(to io.Writer) error {
		from, err := os.Open(p.from)
		if err != nil {
			return err
		}
		defer from.Close()
		_, err = io.Copy(to, from)
		return err
	})
	if err != nil {
		return err
	}
	p.temp = temp
	return proved(temp, p.from, p.prove)
}

// there says whether there is a file of this name, to be a backup.
func there(backup string) error {
	info, err := os.Stat(backup)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return words.Errorf("there is no backup %s", backup)
	case err == nil && info.IsDir():
		return words.Errorf("%s is a folder; name the file of the backup in it", backup)
	}
	return err
}

// proved says whether a file, a backup or a copy of one, is an undamaged one.
func proved(file, backup string, prove func(path string) error) error {
	err := prove(file)
	if found := (store.Damaged{}); errors.As(err, &found) {
		return words.Errorf("the backup %s is damaged (%s); nothing was changed, try an older one", backup, found.What)
	}
	if err != nil {
		said, _, _ := strings.Cut(strings.ReplaceAll(err.Error(), file, "it"), "; name another")
		return words.Errorf("%s is no backup: %s", backup, said)
	}
	return nil
}

// take makes some buckets of a staged bank those of the one that stands, if anything stands there in one of them. Of a
// damaged one nothing is taken.
func (p *part) take(standing store.Store, buckets []string) (err error) {
	ctx := context.Background()
	file, err := bank.OpenStore(p.temp, bank.Options{Direct: true})
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	err = standing.View(ctx, func(r store.Reader) error {
		filled, err := store.Filled(r, buckets)
		if err != nil || filled == nil {
			return err
		}
		return file.Update(ctx, func(w store.Writer) error { return store.Take(w, r, filled...) })
	})
	if found := (store.Damaged{}); errors.As(err, &found) {
		return nil
	}
	return err
}

// place keeps what stands in the place and puts the copy there.
func (p *part) place() (replaced bool, err error) {
	if !missing(p.to) {
		if err := os.Link(p.to, p.kept); err != nil {
			if err := os.Rename(p.to, p.kept); err != nil { // a file system without links
				return false, err
			}
		}
		replaced = true
	}
	temp := p.temp
	p.temp = ""
	return replaced, files.Swap(temp, p.to)
}

func (p *part) clean() {
	if p.temp != "" {
		os.Remove(p.temp)
	}
}
