package main

import (
	"fmt"
	"io"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"evenhand/testdata/outside"
)

// On a full disk the desk says so on a plain page, goes on showing what is there, and writes again as soon as there
// is room; nothing that it acknowledged is lost and nothing is damaged. On a read-only disk a bank is read, and who
// would write is told why not.
func TestFullDisk(t *testing.T) {
	const check = "a desk on a full disk"
	outside.Full(t, check, "mount", "umount")
	if os.Getuid() != 0 {
		outside.Note(check + ", which only root can make")
		t.Skip("only root can make a small disk")
	}
	dir := t.TempDir()
	small := filepath.Join(dir, "small")
	must(t, os.Mkdir(small, 0o700))
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", small).CombinedOutput(); err != nil {
		t.Fatalf("no small disk: %v: %s", err, out)
	}
	t.Cleanup(func() { _ = exec.Command("umount", small).Run() })
	t.Setenv("EVENHAND_BANK", filepath.Join(small, "team.bank"))
	mustDo(t, "init", "review --anyone on --by MK")
	link, desk := deskOpen(t, "desk --no-browser --by MK", `(http://127\S+)`)
	w := comeIn(t, link)
	write := func(n int) (status int, page string) {
		browser := *w.browser
		browser.CheckRedirect = func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }
		answer, err := browser.PostForm(w.address+"/items", url.Values{"task": {fmt.Sprintf("%d + 7000 = ?", 1000+n)}, "ready": {"yes"}})
		must(t, err)
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		must(t, err)
		return answer.StatusCode, string(text)
	}
	if status, page := write(0); status != http.StatusSeeOther {
		t.Fatalf("with room it gives %d: %s", status, page)
	}
	filler := filepath.Join(small, "filler")
	fill(t, filler)
	kept, refused := 1, 0
	for n := 1; n < 400 && refused < 5; n++ {
		switch status, page := write(n); status {
		case http.StatusSeeOther:
			kept++
		case http.StatusInsufficientStorage:
			refused++
			if !strings.Contains(page, "disk") || strings.Contains(page, "no space left") {
				t.Errorf("the page of a full disk says %s", page)
			}
		default:
			t.Fatalf("on a full disk item %d gives %d: %s", n, status, page)
		}
	}
	if refused < 5 {
		t.Fatalf("the disk never got full: %d items kept", kept)
	}
	if page := w.text("/items"); !strings.Contains(page, "/items/01") {
		t.Error("nothing is shown any more")
	}
	must(t, os.Remove(filler))
	if status, page := write(999); status != http.StatusSeeOther {
		t.Errorf("with room again it gives %d: %s", status, page)
	}
	must(t, desk.Process.Signal(syscall.SIGTERM))
	_ = desk.Wait()
	if said := mustDo(t, "check"); !strings.HasPrefix(said, fmt.Sprintf("%d items", kept+1)) {
		t.Errorf("%d items were taken, and the bank holds %s", kept+1, said)
	}
	if out, err := exec.Command("mount", "-o", "remount,ro", small).CombinedOutput(); err != nil {
		t.Fatalf("the disk can't be made read-only: %v: %s", err, out)
	}
	mustDo(t, "list", "check")
	for _, line := range []string{"desk --no-browser", "generate --skill add-two-digit --count 1"} {
		if code, out, said := evenhand(line); code != exitFailed || !strings.Contains(said, "read-only file system") || strings.Contains(out+said, "goroutine") {
			t.Errorf("%s on a read-only disk: exit %d: %s%s", line, code, out, said)
		}
	}
}

// fill writes until a disk is full.
func fill(t *testing.T, path string) {
	t.Helper()
	file, err := os.Create(path)
	must(t, err)
	for block := make([]byte, 4096); err == nil; {
		_, err = file.Write(block)
	}
	must(t, file.Close())
}
