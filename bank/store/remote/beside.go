package remote

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"net"
	"net/url"
	"os"
	"runtime"
	"time"

	"evenhand/bank/files"
	"evenhand/bank/store"
)

// A desk that has a bank's file open says so in a file beside it, private as the bank is, so that
// commands for that bank work through the desk.

// beside is what stands in it.
type beside struct {
	Address string `json:"address"` // of this computer
	Token   string `json:"token"`   // lets in who can read the file, and with it the bank
}

// Beside is the name of the file that says which desk has a bank's file open.
func Beside(bankPath string) string { return files.Real(bankPath) + ".desk" }

// Announce says beside a bank's file that the desk at the address has it open; end takes that back.
func Announce(bankPath, address, token string) (end func() error, err error) {
	path := Beside(bankPath)
	text, err := json.Marshal(beside{address, token})
	if err != nil {
		return nil, err
	}
	err = files.Write(path, files.Private, func(w io.Writer) error { _, err := w.Write(text); return err })
	return func() error { return os.Remove(path) }, err
}

// Found is the address of the desk that has a bank's file open and answers; empty where none does.
// What a desk left behind that was killed is recognised.
func Found(ctx context.Context, bankPath string) (address, token string) {
	text, err := os.ReadFile(Beside(bankPath))
	if err != nil {
		return "", ""
	}
	info, err := os.Stat(Beside(bankPath))
	var told beside
	if err != nil || json.Unmarshal(text, &told) != nil || !onThisComputer(told.Address) ||
		runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		return "", ""
	}
	ctx, end := context.WithTimeout(ctx, 5*time.Second)
	defer end()
	if _, err := OpenWith(ctx, told.Address, told.Token, store.Options{}); err != nil {
		return "", ""
	}
	return told.Address, told.Token
}

func onThisComputer(address string) bool {
	parsed, err := url.Parse(address)
	if err != nil {
		return false
	}
	ip := net.ParseIP(parsed.Hostname())
	return ip != nil && ip.IsLoopback()
}

// OpenBeside opens a bank's file through the desk that has it open; nil where none has.
func OpenBeside(ctx context.Context, bankPath string, o store.Options) (store.Store, error) {
	address, token := Found(ctx, bankPath)
	if address == "" {
		return nil, nil
	}
	s, err := at(address, token, o)
	if err != nil {
		return nil, err
	}
	s.name = bankPath
	return s, nil
}

// Forget removes what a killed desk left beside a file, by who has the file open now.
func Forget(bankPath string) error {
	if err := os.Remove(Beside(bankPath)); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
