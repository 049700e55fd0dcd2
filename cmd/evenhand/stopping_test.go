package main

import (
	"bufio"
	"fmt"
	"io"
	"net"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A desk that is told to stop ends the request in hand first.
func TestStoppedDeskEndsWhatIsInHand(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no signal of this kind there")
	}
	t.Chdir(t.TempDir())
	mustDo(t, "--bank team.bank init")
	c := program("--bank team.bank serve --listen 127.0.0.1:0")
	c.Stderr = nil
	said, err := c.StderrPipe()
	must(t, err)
	must(t, c.Start())
	defer func() { _ = c.Process.Kill() }()
	lines := bufio.NewReader(said)
	address := ""
	for address == "" {
		line, err := lines.ReadString('\n')
		must(t, err)
		if m := regexp.MustCompile(`is at http://(\S+)`).FindStringSubmatch(line); m != nil {
			address = m[1]
		}
	}
	go func() { _, _ = io.Copy(io.Discard, lines) }()
	conn, err := net.Dial("tcp", address)
	must(t, err)
	defer conn.Close()
	_, err = fmt.Fprintf(conn, "POST /language HTTP/1.1\r\nHost: %s\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 11\r\n\r\nlang", address)
	must(t, err)
	time.Sleep(300 * time.Millisecond) // it waits for the rest
	must(t, c.Process.Signal(syscall.SIGTERM))
	time.Sleep(300 * time.Millisecond)
	_, err = io.WriteString(conn, "uage=es")
	must(t, err)
	must(t, conn.SetReadDeadline(time.Now().Add(20*time.Second)))
	answer, err := bufio.NewReader(conn).ReadString('\n')
	if err != nil || !strings.Contains(answer, " 303 ") {
		t.Errorf("the request in hand got %q, %v", answer, err)
	}
	if err := c.Wait(); err != nil {
		t.Errorf("the desk ended with %v", err)
	}
}

// A desk that is told to stop with nothing in hand ends in order, too, each time: it says nothing of having been
// stopped in the middle, and nothing is left beside its bank.
func TestStoppedDeskEndsInOrder(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no signal of this kind there")
	}
	t.Chdir(t.TempDir())
	mustDo(t, "--bank team.bank init")
	for range 6 {
		link, desk := deskOpen(t, "--bank team.bank desk --no-browser", `(http://127\S+/enter/\S+)`)
		comeIn(t, link)
		must(t, desk.Process.Signal(syscall.SIGTERM))
		if err := desk.Wait(); err != nil {
			t.Errorf("the desk ended with %v", err)
		}
		if left, err := filepath.Glob("team.bank.*"); err != nil || len(left) > 0 {
			t.Errorf("beside the bank stand %v, %v", left, err)
		}
	}
}
