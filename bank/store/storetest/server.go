package storetest

import (
	"bytes"
	"context"
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"evenhand/testdata/outside"
)

// Server is a PostgreSQL server in a temporary folder, on a port of its own.
type Server struct {
	Port   int
	folder string // of the data
	c      *exec.Cmd
	log    bytes.Buffer
	ended  chan struct{}
}

// needsDatabase skips a test but in the full check, and fails it there if the programs
// of PostgreSQL are missing.
func needsDatabase(t testing.TB) {
	t.Helper()
	outside.Full(t, "the laws of a store in PostgreSQL")
	if programs() == "" {
		t.Fatal("PostgreSQL is not installed, and the full check asks for it (Debian's postgresql)")
	}
}

// programs is the folder of the newest server's programs, which Debian keeps out of PATH.
var programs = sync.OnceValue(func() string {
	newest, folder := 0, ""
	found, _ := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	for _, path := range found {
		bin := filepath.Dir(path)
		if version, err := strconv.Atoi(filepath.Base(filepath.Dir(bin))); err == nil && version > newest {
			newest, folder = version, bin
		}
	}
	if path, err := exec.LookPath("postgres"); folder == "" && err == nil {
		if path, err = filepath.EvalSymlinks(path); err == nil {
			folder = filepath.Dir(path)
		}
	}
	return folder
})

// owner is who a server runs as; it refuses root.
const owner = "postgres"

// asOwner is a command of PostgreSQL's, run by a user that isn't root.
func asOwner(name string, args ...string) *exec.Cmd {
	name = filepath.Join(programs(), name)
	if os.Geteuid() != 0 {
		return exec.Command(name, args...)
	}
	return exec.Command("setpriv", append([]string{"--reuid=" + owner, "--regid=" + owner, "--init-groups", name}, args...)...)
}

func runAsOwner(t testing.TB, name string, args ...string) {
	t.Helper()
	c := asOwner(name, args...)
	c.Env = append(os.Environ(), "LC_ALL=C")
	if out, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
}

// newFolder is an empty folder that the owner may write to.
func newFolder(t testing.TB) string {
	t.Helper()
	folder, err := os.MkdirTemp("", "evenhand-postgres-")
	must(t, err)
	if os.Geteuid() == 0 {
		u, err := user.Lookup(owner)
		must(t, err)
		uid, _ := strconv.Atoi(u.Uid)
		gid, _ := strconv.Atoi(u.Gid)
		must(t, os.Chown(folder, uid, gid))
	}
	return folder
}

// NewServer makes a server and starts it with some settings; it is gone when the test ends.
// Its only user has no password.
func NewServer(t testing.TB, settings ...string) *Server {
	t.Helper()
	needsDatabase(t)
	s := &Server{folder: newFolder(t)}
	t.Cleanup(s.remove)
	runAsOwner(t, "initdb", "-D", s.data(), "-U", owner, "-A", "trust", "-E", "UTF8", "--no-locale", "--no-sync")
	s.start(t, settings...)
	return s
}

// NewStandby makes a server that follows another one, under a name that the other may wait for.
func NewStandby(t testing.TB, first *Server, name string) *Server {
	t.Helper()
	s := &Server{folder: newFolder(t)}
	t.Cleanup(s.remove)
	from := fmt.Sprintf("host=127.0.0.1 port=%d user=%s application_name=%s", first.Port, owner, name)
	runAsOwner(t, "pg_basebackup", "-d", from, "-D", s.data(), "-R", "-X", "stream", "--checkpoint=fast", "--no-sync")
	s.start(t)
	return s
}

func (s *Server) data() string { return filepath.Join(s.folder, "data") }

// start starts the server and waits until it answers.
func (s *Server) start(t testing.TB, settings ...string) {
	t.Helper()
	if s.Port == 0 {
		s.Port = freePort(t)
	}
	args := []string{"-D", s.data(), "-c", "listen_addresses=127.0.0.1", "-c", "port=" + strconv.Itoa(s.Port),
		"-c", "unix_socket_directories="}
	for _, setting := range settings {
		args = append(args, "-c", setting)
	}
	s.c = asOwner("postgres", args...)
	s.c.Stdout, s.c.Stderr = &s.log, &s.log
	must(t, s.c.Start())
	s.ended = make(chan struct{})
	go func(c *exec.Cmd, ended chan struct{}) { c.Wait(); close(ended) }(s.c, s.ended)
	for range 300 {
		c, err := pgx.Connect(context.Background(), s.URL("postgres"))
		if err == nil {
			c.Close(context.Background())
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatalf("the server on port %d gives no answer:\n%s", s.Port, s.log.Bytes())
}

func freePort(t testing.TB) int {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// URL is the address of a database of the server, with no bank in it.
func (s *Server) URL(database string) string {
	return fmt.Sprintf("postgres://%s@127.0.0.1:%d/%s", owner, s.Port, database)
}

// Address is that of a bank in the server's database.
func (s *Server) Address(bank string) string { return s.URL("postgres") + "?bank=" + bank }

// Exec has the server do something, in the database postgres.
func (s *Server) Exec(t testing.TB, statement string) {
	t.Helper()
	c, err := pgx.Connect(context.Background(), s.URL("postgres"))
	must(t, err)
	defer c.Close(context.Background())
	_, err = c.Exec(context.Background(), statement)
	must(t, err)
}

// Kill ends all of the server at once, as a machine that loses its power does.
func (s *Server) Kill() {
	children, _ := os.ReadFile(fmt.Sprintf("/proc/%d/task/%[1]d/children", s.c.Process.Pid))
	s.c.Process.Kill()
	for _, child := range strings.Fields(string(children)) {
		if pid, err := strconv.Atoi(child); err == nil {
			if p, err := os.FindProcess(pid); err == nil {
				p.Kill()
			}
		}
	}
	<-s.ended
}

// Restart starts a server again that was killed.
func (s *Server) Restart(t testing.TB, settings ...string) { s.start(t, settings...) }

// Promote makes a standby the server that is written to.
func (s *Server) Promote(t testing.TB) {
	t.Helper()
	runAsOwner(t, "pg_ctl", "promote", "-D", s.data(), "-w")
}

func (s *Server) remove() {
	if s.c != nil {
		s.c.Process.Signal(os.Interrupt) // the server's fast way down
		<-s.ended
	}
	os.RemoveAll(s.folder)
}

var shared struct {
	sync.Mutex
	*Server
}

// SharedServer is one server for all tests of a package; each uses banks of its own.
func SharedServer(t testing.TB) *Server {
	t.Helper()
	needsDatabase(t)
	shared.Lock()
	defer shared.Unlock()
	if shared.Server == nil {
		shared.Server = NewServer(lasting{t})
	}
	return shared.Server
}

// lasting is a test whose end takes nothing away.
type lasting struct{ testing.TB }

func (lasting) Cleanup(func()) {}

func stopShared() {
	if shared.Server != nil {
		shared.Server.remove()
	}
}
