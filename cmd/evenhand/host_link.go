package main

import (
	"io"
	"net/http"
	"net/url"
	"os"
	"strings"
	"time"

	"evenhand/bank"
	"evenhand/bank/files"
)

// A desk for one person keeps its link beside the bank, private as the bank is, so that who opens the desk
// a second time comes to the one that is open.

func linkPath(bankPath string) string { return files.Real(bankPath) + ".link" }

// keepLink keeps the link until the desk is closed.
func keepLink(bankPath, link string) (forget func(), err error) {
	if bank.InDatabase(bankPath) {
		return func() {}, nil
	}
	path := linkPath(bankPath)
	_ = os.Remove(path) // of a desk that was killed
	err = files.Write(path, files.Private, func(w io.Writer) error { _, err := io.WriteString(w, link+"\n"); return err })
	return func() { _ = os.Remove(path) }, err
}

// openLink is the link of the desk that has the bank open and answers; empty where none does.
func openLink(bankPath string) string {
	text, err := os.ReadFile(linkPath(bankPath))
	if err != nil {
		return ""
	}
	link := strings.TrimSpace(string(text))
	parsed, err := url.Parse(link)
	if err != nil || parsed.Scheme != "http" || !onlyHere(parsed.Host) {
		return ""
	}
	browser := http.Client{Timeout: 5 * time.Second}
	answer, err := browser.Get("http://" + parsed.Host + "/healthz")
	if err != nil {
		return ""
	}
	_ = answer.Body.Close()
	if answer.StatusCode != http.StatusOK {
		return ""
	}
	return link
}
