package bank_test

import (
	"bufio"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/standards/task"
)

// mustSay fails unless the error is one line that has the words in it.
func mustSay(t *testing.T, err error, words ...string) {
	t.Helper()
	if err == nil {
		t.Fatal("there is no error")
	}
	for _, want := range words {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q does not say %q", err, want)
		}
	}
	if strings.Contains(err.Error(), "\n") {
		t.Errorf("%q is more than one line", err)
	}
}

func TestCreateTouchesNoFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	must(t, os.WriteFile(path, []byte("something else"), 0o600))
	_, err := bank.Create(path)
	mustSay(t, err, path, "is there already", "another name")
	left, err := os.ReadFile(path)
	must(t, err)
	if string(left) != "something else" {
		t.Errorf("the file now holds %q", left)
	}
}

func TestABankIsItsOwnersOnly(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	must(t, b.Close())
	info, err := os.Stat(path)
	must(t, err)
	if info.Mode().Perm() != 0o600 {
		t.Errorf("the file's mode is %o, want 600", info.Mode().Perm())
	}
}

func TestWhatIsNoBankIsRefused(t *testing.T) {
	dir := t.TempDir()
	file := func(name, content string) string {
		path := filepath.Join(dir, name)
		must(t, os.WriteFile(path, []byte(content), 0o600))
		return path
	}
	otherStore := filepath.Join(dir, "other.db")
	db, err := bbolt.Open(otherStore, 0o600, &bbolt.Options{Timeout: time.Second})
	must(t, err)
	must(t, db.Update(func(tx *bbolt.Tx) error {
		_, err := tx.CreateBucket([]byte("pantry"))
		return err
	}))
	must(t, db.Close())
	for _, test := range []struct{ name, path, words string }{
		{"missing", filepath.Join(dir, "none.bank"), "there is no bank"},
		{"empty", file("empty.bank", ""), "is empty"},
		{"text", file("list.csv", strings.Repeat("47 + 36,83\n", 2000)), "is not a file that evenhand made"},
		{"short text", file("short.csv", "47 + 36,83\n"), "is not a file that evenhand made"},
		{"zeros", file("zeros", strings.Repeat("\x00", 40_000)), "is not a file that evenhand made"},
		{"a store of another program", otherStore, "holds no item bank"},
		{"a folder", dir, "is a folder"},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := bank.Open(test.path, bank.Options{})
			mustSay(t, err, test.path, test.words)
		})
	}
}

func TestOpeningMakesNoFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "none.bank")
	if _, err := bank.Open(path, bank.Options{}); err == nil {
		t.Error("a bank that isn't there was opened")
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("opening made a file")
	}
}

// noteAbout opens a bank whose bucket "about" was given a note by another program.
func noteAbout(t *testing.T, key, value string) (path string, err error) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	mustAdd(t, b, written("47 + 36 = ?"))
	must(t, b.Close())
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
	must(t, err)
	must(t, db.Update(func(tx *bbolt.Tx) error {
		return tx.Bucket([]byte("about")).Put([]byte(key), []byte(value))
	}))
	must(t, db.Close())
	b, err = bank.Open(path, bank.Options{})
	if err == nil {
		mustBeWhole(t, b)
		must(t, b.Close())
	}
	return path, err
}

func TestABankOfANewerProgram(t *testing.T) {
	path, err := noteAbout(t, "schema", "7")
	mustSay(t, err, path, "newer evenhand", "bank format 7", "bring this one up to date")
	path, err = noteAbout(t, "schema", "seven")
	mustSay(t, err, path, "is damaged")
}

// Traits are kept by their place in the list: a bank may know fewer, as an older
// program did, but no others.
func TestABankWithOtherTraits(t *testing.T) {
	path, err := noteAbout(t, "traits", "regroups colour")
	mustSay(t, err, path, "other traits")
	path, err = noteAbout(t, "traits", "regroups crosses_100")
	must(t, err)
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
	must(t, err)
	defer db.Close()
	must(t, db.View(func(tx *bbolt.Tx) error {
		names := string(tx.Bucket([]byte("about")).Get([]byte("traits")))
		if !strings.HasSuffix(names, task.AllTraits()[len(task.AllTraits())-1].String()) {
			t.Errorf("the bank now knows %q", names)
		}
		return nil
	}))
}

func TestABankInUse(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	must(t, b.Close())
	c := child("hold", path)
	in, err := c.StdinPipe()
	must(t, err)
	out, err := c.StdoutPipe()
	must(t, err)
	must(t, c.Start())
	if line, err := bufio.NewReader(out).ReadString('\n'); line != "open <nil>\n" {
		t.Fatalf("the child says %q (%v)", line, err)
	}
	_, err = bank.Open(path, bank.Options{Timeout: 60 * time.Millisecond})
	mustSay(t, err, path, "in use by another evenhand", "try again")
	must(t, in.Close())
	must(t, c.Wait())
	b, err = bank.Open(path, bank.Options{})
	must(t, err)
	must(t, b.Close())
}

func TestReadersShareABank(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	must(t, b.Close())
	for range 2 {
		b, err := bank.Open(path, bank.Options{ReadOnly: true, Timeout: time.Second})
		must(t, err)
		defer b.Close()
		mustBeWhole(t, b)
		_, err = b.Add([]bank.Item{written("8 + 6 = ?")}, "Ms. Reyes", monday)
		mustSay(t, err, path, "opened only to read")
		_, err = b.Retire(id, "Ms. Reyes", "worn out", monday)
		mustSay(t, err, path, "opened only to read")
	}
}

func TestASeededEntropyMakesTheSameIDs(t *testing.T) {
	seeded := func() (ids []string) {
		path := filepath.Join(t.TempDir(), "team.bank")
		b, err := bank.Create(path)
		must(t, err)
		must(t, b.Close())
		for _, asked := range []string{"8 + 5 = ?", "8 + 6 = ?"} { // opened twice: the second time the seed gives the first ID again
			b, err := bank.Open(path, bank.Options{Entropy: strings.NewReader(strings.Repeat("all the same to us, ", 99))})
			must(t, err)
			ids = append(ids, mustAdd(t, b, written(asked))...)
			must(t, b.Close())
		}
		return ids
	}
	first, second := seeded(), seeded()
	mustEqual(t, second, first)
	if first[0] == first[1] {
		t.Errorf("two items have the ID %s", first[0])
	}
}

func TestWhatCannotBeAdded(t *testing.T) {
	b := tempBank(t)
	for _, test := range []struct {
		name  string
		spoil func(*bank.Item)
		words string
	}{
		{"standing", func(it *bank.Item) { it.Standing = "loose" }, `standing is "loose"`},
		{"look", func(it *bank.Item) { it.Look = task.LookClockFace }, "47 + 36 = ? can't be shown as"},
		{"task", func(it *bank.Item) { it.Task = "47 + 36 = 90" }, "83"},
		{"no question", func(it *bank.Item) { it.Task = "" }, "there is no question"},
		{"no key", func(it *bank.Item) {
			it.Task, it.Wording, it.Key = "", map[string]string{"en": "Which is heavier?"}, " "
		}, "has no key"},
		{"skill", func(it *bank.Item) {
			it.Task, it.Wording, it.Skill = "", map[string]string{"en": "Which is heavier?"}, "add-two-digits"
		}, `did you mean "add-two-digit"?`},
	} {
		t.Run(test.name, func(t *testing.T) {
			it := written("47 + 36 = ?")
			test.spoil(&it)
			added, err := b.Add([]bank.Item{written("8 + 5 = ?"), it}, "Ms. Reyes", monday)
			mustSay(t, err, "item 2 of the list", test.words)
			if len(added) != 0 {
				t.Errorf("%d items were added", len(added))
			}
		})
	}
	if found := tasksFound(t, b, bank.Query{}); len(found) != 0 {
		t.Errorf("the bank holds %q", found)
	}
}

func TestAnErrorKeepsTheBatchesBefore(t *testing.T) {
	b := tempBank(t)
	items := sums(10_001)
	items[10_000].Standing = "loose"
	added, err := b.Add(items, "Ms. Reyes", monday)
	mustSay(t, err, "item 10001 of the list")
	count, err := b.Count()
	must(t, err)
	if len(added) != 10_000 || count[bank.Ready] != 10_000 {
		t.Errorf("%d answers for %d items in the bank, want 10,000", len(added), count[bank.Ready])
	}
}
