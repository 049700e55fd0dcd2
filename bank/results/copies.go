package results

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"evenhand/bank"
	"evenhand/standards/words"
)

// Copies are the proved copies of a bank and its marks in a folder: one a day, and those made by hand.
type Copies struct {
	Dir  string
	Keep int // days of which a daily copy is kept; copies made by hand stay
}

// The names of copies, as package time writes them.
const (
	dailyName  = "evenhand-2006-01-02.bank"
	byHandName = "evenhand-2006-01-02-150405.bank"
)

// Copy is one of them.
type Copy struct {
	Name  string
	At    time.Time // when it was made
	Size  int64     // bytes, with its marks
	Marks bool      // the marks were copied, too
}

// Daily makes the copy of a day, unless it is there, and then removes the oldest daily ones beyond those to keep.
func (c Copies) Daily(b *bank.Bank, now time.Time) error {
	name := now.Format(dailyName)
	if _, err := os.Stat(filepath.Join(c.Dir, name)); err == nil {
		return nil
	}
	if err := c.make(b, name); err != nil {
		return err
	}
	return c.prune()
}

// Make makes a copy by hand and gives its name.
func (c Copies) Make(b *bank.Bank, now time.Time) (name string, err error) {
	name = c.byHand(now)
	return name, c.make(b, name)
}

// byHand is the name of a copy that is to be made by hand; one of the same second may have the first.
func (c Copies) byHand(now time.Time) (name string) {
	for ; ; now = now.Add(time.Second) {
		name = now.Format(byHandName)
		if missing(filepath.Join(c.Dir, name)) {
			return name
		}
	}
}

func (c Copies) make(b *bank.Bank, name string) error {
	path := filepath.Join(c.Dir, name)
	if err := os.MkdirAll(c.Dir, 0o700); err != nil {
		return err
	}
	// The marks first: where the bank's copy stands, the copy is whole.
	marks, err := Open(Path(b.Path()), bank.Options{ReadOnly: true})
	switch {
	case errors.Is(err, ErrNone):
	case err != nil:
		return err
	default:
		_ = os.Remove(Path(path)) // of a try that went no further
		_, err = marks.BackupFile(Path(path))
		if err = errors.Join(err, marks.Close()); err != nil {
			return err
		}
	}
	if _, err = b.BackupFile(path); err != nil {
		_ = os.Remove(Path(path)) // nobody would find it, and it would stay for ever
	}
	return err
}

// prune removes the oldest daily copies beyond the days to keep; other files of the folder stay.
func (c Copies) prune() error {
	files, err := os.ReadDir(c.Dir)
	if err != nil {
		return err
	}
	var days []string
	for _, file := range files {
		if _, err := time.Parse(dailyName, file.Name()); err == nil {
			days = append(days, file.Name())
		}
	}
	slices.Sort(days)
	for _, day := range days[:max(0, len(days)-c.Keep)] {
		path := filepath.Join(c.Dir, day)
		if err := os.Remove(path); err != nil {
			return words.Errorf("an old backup can't be removed: %w", err)
		}
		if err := os.Remove(Path(path)); err != nil && !errors.Is(err, os.ErrNotExist) {
			return words.Errorf("an old backup can't be removed: %w", err)
		}
	}
	return nil
}

// List is all copies, the latest first.
func (c Copies) List() (list []Copy, err error) {
	files, err := os.ReadDir(c.Dir)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	for _, file := range files {
		if !isCopy(file.Name()) {
			continue
		}
		info, err := file.Info()
		if err != nil {
			continue // it was removed meanwhile
		}
		one := Copy{Name: file.Name(), At: info.ModTime(), Size: info.Size()}
		if marks, err := os.Stat(Path(filepath.Join(c.Dir, file.Name()))); err == nil {
			one.Marks, one.Size = true, one.Size+marks.Size()
		}
		list = append(list, one)
	}
	slices.SortStableFunc(list, func(a, b Copy) int { return b.At.Compare(a.At) })
	return list, nil
}

func isCopy(name string) bool {
	for _, layout := range []string{dailyName, byHandName} {
		if _, err := time.Parse(layout, name); err == nil {
			return true
		}
	}
	return false
}

// CopyMade is when a copy was made, as its name tells: the day, and for one made by hand the time.
func CopyMade(name string) string {
	if at, err := time.Parse(byHandName, name); err == nil {
		return at.Format("2006-01-02 15:04")
	}
	at, _ := time.Parse(dailyName, name)
	return at.Format("2006-01-02")
}

// File is where a copy stands; the name of anything else is an error.
func (c Copies) File(name string) (string, error) {
	if !isCopy(name) || strings.ContainsAny(name, `/\`) {
		return "", words.Errorf("there is no copy %q", name)
	}
	path := filepath.Join(c.Dir, name)
	_, err := os.Stat(path)
	return path, err
}

// Prove reads a copy and its marks whole and says whether they are undamaged.
func (c Copies) Prove(name string) error {
	path, err := c.File(name)
	if err != nil {
		return err
	}
	if err := bank.ProveFile(path); err != nil {
		return err
	}
	if _, err := os.Stat(Path(path)); err != nil {
		return nil
	}
	return ProveFile(Path(path))
}
