package bank_test

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/standards/words"
)

// Some tests need another program on the same file, or one that may die. It is
// this test program, started again with a job to do.
const jobVariable = "EVENHAND_BANK_TEST_JOB"

var jobs = map[string]func(path string){
	"open":  openJob,
	"hold":  holdJob,
	"write": writeJob,
	"merge": mergeJob,
}

func TestMain(m *testing.M) {
	if name := os.Getenv(jobVariable); name != "" {
		jobs[name](os.Args[1])
		return
	}
	flag.Set("rapid.steps", "20") // each step waits for the disk; the command line may ask for more
	os.Exit(m.Run())
}

// child is this test program, about to do a job on a file.
func child(job, path string) *exec.Cmd {
	c := exec.Command(os.Args[0], path)
	c.Env = append(os.Environ(), jobVariable+"="+job)
	return c
}

// openJob opens, one after the other, the files named on its standard input, reads
// what it can, and says for each what came of it.
func openJob(string) {
	names := bufio.NewScanner(os.Stdin)
	for names.Scan() {
		fmt.Println(names.Text(), outcome(names.Text()))
	}
}

func outcome(path string) string {
	b, err := bank.Open(path, bank.Options{})
	if err != nil {
		return "refused: " + err.Error()
	}
	defer b.Close()
	report, err := b.Check()
	if err != nil {
		return "broken: " + err.Error()
	}
	if !report.Whole() {
		return "broken: " + words.Joined(report.Problems, "%s; %s").String()
	}
	return "whole"
}

// holdJob keeps the bank open until its standard input ends.
func holdJob(path string) {
	b, err := bank.Open(path, bank.Options{})
	fmt.Println("open", err)
	io.Copy(io.Discard, os.Stdin)
	b.Close()
}

// writeJob adds and changes items until it is killed, and says after each step
// what is safe from then on.
func writeJob(path string) {
	b, err := bank.Open(path, bank.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	items := sums(20_000)
	for from := 0; from < len(items); from += 100 {
		added, err := b.Add(items[from:from+100], "Ms. Reyes", monday)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println("added", from+100)
		first := added[0].ID
		if _, err := b.Retire(first, "Ms. Reyes", "to have changes, too", monday); err == nil {
			fmt.Println("retired", first)
		}
		if err := b.RecordUse([]string{added[1].ID}, bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}); err == nil {
			fmt.Println("used", added[1].ID)
		}
	}
	time.Sleep(time.Minute) // a fast machine is done before it is killed
}

// mergeJob merges the bank beside it into a bank, telling of each batch.
func mergeJob(path string) {
	b, err := bank.Open(path, bank.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	other, err := bank.Open(path+".other", bank.Options{ReadOnly: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = b.Merge(other, bank.MergeOptions{Advance: func(done int) { fmt.Println("merged", done) }})
	fmt.Println("ended", err)
	time.Sleep(time.Minute)
}
