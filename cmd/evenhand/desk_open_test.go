package main

import (
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"

	"evenhand/bank/store/remote"
)

// Started from a file manager, the program opens the desk on a bank in the documents folder; started once
// more it shows the desk that is open; from there the demo school is one click away and can be thrown away.
func TestOpenedFromAFileManager(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("file managers of other systems start programs in other ways")
	}
	home := t.TempDir()
	shown := browserStub(t, home)
	t.Setenv("DISPLAY", ":9")
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(home, "config"))
	must(t, os.Mkdir(filepath.Join(home, "config"), 0o700))
	must(t, os.WriteFile(filepath.Join(home, "config", "user-dirs.dirs"), []byte("XDG_DOCUMENTS_DIR=\"$HOME/Documentos\"\n"), 0o600))
	t.Chdir(home)

	ended := make(chan int, 1)
	go func() { ended <- run([]string{"evenhand"}, nil, io.Discard, io.Discard) }()
	link := shown()
	own := comeIn(t, link)
	if !strings.Contains(own.text("/"), "The bank is empty") {
		t.Error("the desk does not say how to begin")
	}
	folder := filepath.Join(home, "Documentos", "evenhand")
	if !exists(filepath.Join(folder, "evenhand.bank")) {
		t.Error("there is no bank in the documents folder")
	}
	if code := run([]string{"evenhand"}, nil, io.Discard, io.Discard); code != exitDone || shown() != link {
		t.Errorf("started twice, it ends with %d and shows another desk", code)
	}

	school := comeIn(t, regexp.MustCompile(`url=(\S+)"`).FindStringSubmatch(own.post("/demo"))[1])
	for _, path := range []string{"/", "/items", "/class", "/marks"} {
		if !strings.Contains(school.text(path), "every pupil and every paper here is invented") {
			t.Errorf("%s of the demo school does not say that it is one", path)
		}
	}
	if !strings.Contains(school.text("/class"), "P05") || strings.Contains(own.text("/class"), "P05") {
		t.Error("the demo's papers are not on its desk alone")
	}
	if sheets := school.post("/class/practice?lang=en"); !strings.Contains(sheets, "group-1.pdf") || !strings.Contains(sheets, "group-1-recheck.pdf") {
		t.Errorf("no practice for the demo's groups: %.80q", sheets)
	}
	must(t, os.WriteFile(filepath.Join(folder, "demo school", "mine.csv"), nil, 0o600))
	if !strings.Contains(school.post("/demo/away"), own.address+"/") {
		t.Error("no way back")
	}
	goesBack(t, own, filepath.Join(folder, "backups"))
	if !strings.Contains(own.post("/close"), "All is saved") {
		t.Error("the desk says nothing when it is closed")
	}
	if code := <-ended; code != exitDone {
		t.Errorf("the program ends with %d", code)
	}
	files, err := os.ReadDir(filepath.Join(folder, "demo school"))
	must(t, err)
	if len(files) != 1 || files[0].Name() != "mine.csv" {
		t.Errorf("thrown away, the demo school leaves %v", files)
	}
	if exists(remote.Beside(filepath.Join(folder, "evenhand.bank"))) {
		t.Error("a closed desk leaves its link")
	}
}

// goesBack makes a backup from the page, changes the bank, and goes back: the change is gone, the link stays,
// and what stood there is kept. A damaged backup changes nothing.
func goesBack(t *testing.T, own visitor, folder string) {
	t.Helper()
	if page := own.post("/team/copies"); !strings.Contains(page, "undamaged") {
		t.Fatalf("no backup was made: %s", page)
	}
	copies, err := filepath.Glob(filepath.Join(folder, "evenhand-????-??-??-??????.bank"))
	must(t, err)
	if len(copies) != 1 {
		t.Fatalf("%q are the backups", copies)
	}
	name := filepath.Base(copies[0])
	own.post("/generate?skill=make-ten&count=5")
	day := name[len("evenhand-"):][:len("2006-01-02")]
	if page := own.text("/team/copies/" + name); !strings.Contains(page, "5 items that were added since") || !strings.Contains(page, day) {
		t.Errorf("the page does not say what would be lost: %s", page)
	}
	own.post("/team/copies/" + name + "/restore?sure=" + day)
	page := ""
	for range 100 {
		if answer, err := own.browser.Get(own.address + "/team"); err == nil {
			if page = own.read(answer, err); strings.Contains(page, "is as it was in "+name) {
				break
			}
		}
		time.Sleep(100 * time.Millisecond)
	}
	if !strings.Contains(page, "is kept as") || !strings.Contains(own.text("/"), "The bank is empty") {
		t.Errorf("the bank did not go back: %s", page)
	}
	must(t, os.WriteFile(copies[0], []byte("damaged"), 0o600))
	if answer, err := own.browser.PostForm(own.address+"/team/copies/"+name+"/restore",
		url.Values{"sure": {day}}); err != nil || answer.StatusCode != http.StatusBadRequest {
		t.Errorf("a damaged backup is taken: %v %v", answer, err)
	}
	if page := own.text("/team"); !strings.Contains(page, "damaged:") {
		t.Errorf("the page does not say that it is damaged: %s", page)
	}
}

// How a desk says that it is open is true: in a browser where one was started, else by the link that follows.
func TestADeskSaysWhereItIsOpen(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("other systems start a browser in other ways")
	}
	home := t.TempDir()
	t.Chdir(home)
	mustDo(t, "--bank team.bank init")
	for line, want := range map[string]string{
		"desk --no-browser": "is open; open this link in your browser:",
		"desk":              "is open in your browser. If you don't see it, open this link:",
		"desk --port 0":     "is open, but no browser could be started",
	} {
		t.Setenv("PATH", home)
		if line == "desk" {
			browserStub(t, t.TempDir())
		}
		said, c := deskOpen(t, "--bank team.bank "+line, "(The desk for team.bank .*)")
		if !strings.Contains(said, want) {
			t.Errorf("%s says %q, want %q", line, said, want)
		}
		must(t, c.Process.Kill())
		_ = c.Wait()
	}
}

// browserStub puts a browser into PATH that keeps the address it is to show; shown waits for it.
func browserStub(t *testing.T, home string) (shown func() string) {
	t.Helper()
	bin, told := filepath.Join(home, "bin"), filepath.Join(home, "told")
	must(t, os.Mkdir(bin, 0o700))
	stub := "#!/bin/sh\necho \"$1\" > '" + told + ".new' && mv '" + told + ".new' '" + told + "'\n"
	must(t, os.WriteFile(filepath.Join(bin, "xdg-open"), []byte(stub), 0o700))
	t.Setenv("HOME", home)
	t.Setenv("PATH", bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	return func() string {
		t.Helper()
		for range 600 {
			if text, err := os.ReadFile(told); err == nil {
				must(t, os.Remove(told))
				return strings.TrimSpace(string(text))
			}
			time.Sleep(100 * time.Millisecond)
		}
		t.Fatal("no browser was opened")
		return ""
	}
}

// visitor is a browser at a desk.
type visitor struct {
	t       *testing.T
	browser *http.Client
	address string
}

// comeIn opens a desk's link.
// A desk that is started again is where it was, so that a window left open finds it: what was opened before doesn't
// let it in, and it is told what to open; the new link lets it in, as a browser keeps one cookie for both. Where
// another program has the port meanwhile, the desk takes another.
func TestADeskIsFoundAgain(t *testing.T) {
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BY", "MK")
	t.Setenv("EVENHAND_BANK", "team.bank")
	mustDo(t, "init")
	open := func() (link string, close func()) {
		link, c := deskOpen(t, "desk --no-browser", `^(http://127\S+)`)
		return link, func() { must(t, c.Process.Kill()); _ = c.Wait() }
	}
	link, closeIt := open()
	window := comeIn(t, link)
	if !strings.Contains(window.text("/"), "The bank is empty") {
		t.Error("the first link doesn't let in")
	}
	closeIt()
	again, closeIt := open()
	if at := "http://" + strings.Split(link, "/")[2]; at != "http://"+strings.Split(again, "/")[2] || again == link {
		t.Fatalf("at first %s, then %s", link, again)
	}
	answer, err := window.browser.Get(window.address + "/")
	must(t, err)
	must(t, answer.Body.Close())
	if answer.StatusCode != http.StatusUnauthorized {
		t.Errorf("what was opened before still lets in: %s", answer.Status)
	}
	window.read(window.browser.Get(again))
	if !strings.Contains(window.text("/"), "The bank is empty") {
		t.Error("with the new link the window isn't let in")
	}
	closeIt()
	taken, err := net.Listen("tcp", strings.Split(link, "/")[2])
	must(t, err)
	defer taken.Close()
	other, closeIt := open()
	defer closeIt()
	if strings.Split(other, "/")[2] == taken.Addr().String() {
		t.Errorf("the desk is at a port that another program has: %s", other)
	}
	comeIn(t, other)
}

func comeIn(t *testing.T, link string) visitor {
	t.Helper()
	jar, err := cookiejar.New(nil)
	must(t, err)
	at, err := url.Parse(link)
	must(t, err)
	v := visitor{t, &http.Client{Jar: jar, Timeout: time.Minute}, "http://" + at.Host}
	v.text(at.Path)
	return v
}

func (v visitor) text(path string) string {
	v.t.Helper()
	return v.read(v.browser.Get(v.address + path))
}

func (v visitor) post(path string) string {
	v.t.Helper()
	return v.read(v.browser.PostForm(v.address+path, nil))
}

func (v visitor) read(answer *http.Response, err error) string {
	v.t.Helper()
	must(v.t, err)
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	must(v.t, err)
	if answer.StatusCode != http.StatusOK {
		v.t.Fatalf("%s: %s\n%s", answer.Request.URL.Path, answer.Status, text)
	}
	return string(text)
}
