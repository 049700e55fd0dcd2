package results

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"time"

	"evenhand/bank"
	"evenhand/bank/files"
	"evenhand/bank/store"
)

// Restored is what Restore did.
type Restored struct {
	Marks bool     // the backup held marks, which are in their place again
	Kept  []string // where what stood there before is kept
}

// Restore puts a backup of a bank, and of the marks beside it, in their places. The
// backup is copied and the copy proved undamaged before anything is touched; what stood
// there, damaged or not, is kept under a name with the time in it. Without marks in the
// backup those of the bank stay.
func Restore(bankPath, backup string, at time.Time) (done Restored, err error) {
	if bank.InDatabase(bankPath) {
		return done, errors.New("a bank in a database goes back to a backup from the page Team of its desk; or bring the " +
			"backup into a new bank with evenhand copy BACKUP 'postgres://HOST/DATABASE?bank=NEW-NAME'")
	}
	if bank.AtDesk(bankPath) {
		return done, errors.New("a desk's bank is not overwritten from elsewhere; stop the desk, and restore where its bank stands")
	}
	path := files.Real(bankPath)
	if files.Same(path, backup) {
		return done, fmt.Errorf("%s is the bank itself; name a backup of it", backup)
	}
	release, err := holdStill(path)
	if err != nil {
		return done, err
	}
	defer func() { err = errors.Join(err, release()) }()
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

// holdStill keeps others out of the bank, if it is one that can be opened.
func holdStill(path string) (release func() error, err error) {
	file, err := bank.OpenStore(path, bank.Options{})
	switch {
	case err == nil:
		return file.Close, nil
	case errors.Is(err, store.ErrInUse), errors.Is(err, fs.ErrPermission):
		return nil, err
	}
	return func() error { return nil }, nil // missing or damaged: that is what a backup is for
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
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no backup %s", p.from)
	}
	if info, _ := os.Stat(p.from); info != nil && info.IsDir() {
		return fmt.Errorf("%s is a folder; name the file of the backup in it", p.from)
	}
	if err != nil {
		return err
	}
	p.temp = temp
	err = p.prove(temp)
	if found := (store.Damaged{}); errors.As(err, &found) {
		return fmt.Errorf("the backup %s is damaged (%s); nothing was changed, try an older one", p.from, found.What)
	}
	if err != nil {
		said, _, _ := strings.Cut(strings.ReplaceAll(err.Error(), temp, "it"), "; name another")
		return fmt.Errorf("%s is no backup: %s", p.from, said)
	}
	return nil
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
