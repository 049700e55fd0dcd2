package bank_test

import (
	"fmt"
	"log"
	"os"
	"path/filepath"
	"time"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// A bank is made, two items are added, one is found by its traits and retired.
func Example() {
	dir, err := os.MkdirTemp("", "bank")
	if err != nil {
		log.Fatal(err)
	}
	defer os.RemoveAll(dir)
	b, err := bank.Create(filepath.Join(dir, "team.bank"))
	if err != nil {
		log.Fatal(err)
	}
	defer b.Close()

	at := time.Date(2026, 11, 23, 8, 0, 0, 0, time.UTC)
	origin := bank.Origin{Kind: "written", By: "Ms. Reyes"}
	_, err = b.Add([]bank.Item{
		bank.NewItem(task.MustParse("47 + 36 = ?"), "", origin),
		bank.NewItem(task.MustParse("32 + 36 = ?"), task.LookColumn, origin),
	}, "Ms. Reyes", at)
	if err != nil {
		log.Fatal(err)
	}

	regroups, err := standards.ParseWhere([]string{"regroups >= 1"})
	if err != nil {
		log.Fatal(err)
	}
	for item, err := range b.Find(bank.Query{Where: regroups}) {
		if err != nil {
			log.Fatal(err)
		}
		item, err = b.Retire(item.ID, "Mr. Okafor", "everyone knows it by now", at)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(item.Task, item.Key, item.Standing, item.Revision)
	}
	// Output: 47 + 36 = ? 83 retired 2
}
