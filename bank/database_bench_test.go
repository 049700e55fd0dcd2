package bank_test

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/jackc/pgx/v5"

	"evenhand/bank"
	"evenhand/bank/store/storetest"
	"evenhand/standards"
)

// The same for a bank in a database, beside the server's own COPY and SELECT of the same
// entries in the same run.
//
//	EVENHAND_REFERENCES=1 go test ./bank -run '^$' -bench Database -benchtime 3x

func connected(b *testing.B, server *storetest.Server) *pgx.Conn {
	b.Helper()
	c, err := pgx.Connect(context.Background(), server.URL("postgres"))
	must(b, err)
	b.Cleanup(func() { c.Close(context.Background()) })
	return c
}

// newBankIn makes a bank in a database and gives its number there.
func newBankIn(b *testing.B, server *storetest.Server, c *pgx.Conn, name string) (made *bank.Bank, number int64) {
	b.Helper()
	made, err := bank.Create(server.Address(name))
	must(b, err)
	b.Cleanup(func() { made.Close() })
	must(b, c.QueryRow(context.Background(), `select number from evenhand.banks where name = $1`, name).Scan(&number))
	return made, number
}

// BenchmarkDatabaseImport adds 100,000 items. The bare COPY brings the same entries into a
// table like that of the entries.
func BenchmarkDatabaseImport(b *testing.B) {
	server := storetest.NewServer(b)
	c := connected(b, server)
	ctx := context.Background()
	items := sums(many)
	first, number := newBankIn(b, server, c, "first")
	mustAdd(b, first, items...)
	rows, err := c.Query(ctx, `select bank, bucket, key, value from evenhand.entries where bank = $1`, number)
	must(b, err)
	entries, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) ([]any, error) { return row.Values() })
	must(b, err)
	var size int64
	must(b, c.QueryRow(ctx, `select pg_total_relation_size('evenhand.entries')`).Scan(&size))
	_, err = c.Exec(ctx, `create table bare (like evenhand.entries including all)`)
	must(b, err)
	run := 0
	compare(b, func() {
		run++
		own, _ := newBankIn(b, server, c, fmt.Sprint("import-", run))
		_, err := own.Add(items, "Ms. Reyes", monday)
		must(b, err)
	}, func() {
		_, err := c.Exec(ctx, `truncate bare`)
		must(b, err)
		_, err = c.CopyFrom(ctx, pgx.Identifier{"bare"}, []string{"bank", "bucket", "key", "value"}, pgx.CopyFromRows(entries))
		must(b, err)
	})
	b.ReportMetric(float64(len(entries)), "entries")
	b.ReportMetric(float64(size)/1e6, "MB")
}

// BenchmarkDatabaseList lists, from 100,000 items, those that a condition on the traits leaves.
// The bare SELECT reads the same records by their known keys.
func BenchmarkDatabaseList(b *testing.B) {
	server := storetest.NewServer(b)
	c := connected(b, server)
	file, number := newBankIn(b, server, c, "list")
	mustAdd(b, file, sums(many)...)
	_, err := c.Exec(context.Background(), `analyze evenhand.entries`)
	must(b, err)
	for _, text := range []string{"regroups = 0", "regroups = 2", "doubles = true"} {
		where, err := standards.ParseWhere([]string{text})
		must(b, err)
		b.Run(text, func(b *testing.B) {
			var ids [][]byte
			for it, err := range file.Find(bank.Query{Where: where}) {
				must(b, err)
				ids = append(ids, rawID(b, it.ID))
			}
			compare(b, func() {
				n := 0
				for _, err := range file.Find(bank.Query{Where: where}) {
					must(b, err)
					n++
				}
				if n != len(ids) {
					b.Fatalf("%d items, want %d", n, len(ids))
				}
			}, func() {
				rows, err := c.Query(context.Background(), `select key, value from evenhand.entries e
					join evenhand.buckets b on b.bank = e.bank and b.number = e.bucket and b.name = 'items'
					where e.bank = $1 and key = any($2) order by key`, number, ids)
				must(b, err)
				n := 0
				for rows.Next() {
					var key, value []byte
					must(b, rows.Scan(&key, &value))
					n++
				}
				if must(b, rows.Err()); n != len(ids) {
					b.Fatalf("%d rows, want %d", n, len(ids))
				}
			})
			b.ReportMetric(float64(len(ids)), "items")
		})
	}
}

// BenchmarkDatabaseGroups reads what the assembler needs for a quiz of two skills from a
// million items: the groups of these skills, and 24 members of each.
func BenchmarkDatabaseGroups(b *testing.B) {
	server := storetest.NewServer(b)
	file, _ := newBankIn(b, server, connected(b, server), "million")
	mustAdd(b, file, sums(1_000_000)...)
	groups, members := 0, 0
	for b.Loop() {
		groups, members = 0, 0
		var all []bank.Group
		for g, err := range file.Groups("add-two-digit", "add-ones") {
			must(b, err)
			all = append(all, g)
		}
		for some := range slices.Chunk(all, 256) {
			lists, err := file.MembersOf(some, 1, slices.Repeat([]int{24}, len(some)))
			must(b, err)
			for _, list := range lists {
				groups, members = groups+1, members+len(list)
			}
		}
	}
	b.ReportMetric(float64(groups), "groups")
	b.ReportMetric(float64(members), "members")
}
