package bank_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"evenhand/bank"
)

// A copy made while another goroutine adds is a whole bank of some moment: as many
// items as the adder had finished before, or a few more.
func TestBackupWhileInUse(t *testing.T) {
	b := tempBank(t)
	items := sums(2000)
	mustAdd(t, b, items[:500]...)
	done := make(chan error)
	go func() {
		for from := 500; from < len(items); from += 100 {
			if _, err := b.Add(items[from:from+100], "Mr. Okafor", monday); err != nil {
				done <- err
				return
			}
		}
		done <- nil
	}()
	for range 10 {
		path := filepath.Join(t.TempDir(), "copy.bank")
		size, err := b.BackupFile(path)
		must(t, err)
		info, err := os.Stat(path)
		must(t, err)
		if info.Size() != size || info.Mode().Perm() != 0o600 {
			t.Errorf("the copy has %d bytes and mode %o, want %d and 600", info.Size(), info.Mode().Perm(), size)
		}
		backup, err := bank.Open(path, bank.Options{ReadOnly: true})
		must(t, err)
		if report := mustBeWhole(t, backup); report.Items < 500 || report.Items%100 != 0 {
			t.Errorf("the copy holds %d items", report.Items)
		}
		must(t, backup.Close())
	}
	must(t, <-done)
}

func TestABackupReplacesNothing(t *testing.T) {
	b := tempBank(t)
	path := filepath.Join(t.TempDir(), "copy.bank")
	must(t, os.WriteFile(path, []byte("last year's"), 0o600))
	_, err := b.BackupFile(path)
	mustSay(t, err, path, "is there already")
	left, err := os.ReadFile(path)
	must(t, err)
	if string(left) != "last year's" {
		t.Errorf("the file now holds %q", left)
	}
}

func TestAFailedBackupLeavesNoFile(t *testing.T) {
	b := tempBank(t)
	dir := filepath.Join(t.TempDir(), "not there")
	_, err := b.BackupFile(filepath.Join(dir, "copy.bank"))
	mustSay(t, err, dir)
	full := &fullDisk{}
	if _, err := b.Backup(full); err == nil {
		t.Error("a backup to a full disk is said to be fine")
	}
}

// fullDisk takes one page.
type fullDisk struct{ bytes.Buffer }

func (d *fullDisk) Write(p []byte) (int, error) {
	if d.Len() > 0 {
		return 0, os.ErrPermission
	}
	return d.Buffer.Write(p)
}
