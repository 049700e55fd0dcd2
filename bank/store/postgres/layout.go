package postgres

import "strings"

// layoutFormat is the number of the tables' format, kept with each bank.
const layoutFormat = 1

// layout makes the tables of a schema. The bank's number comes first in the key of
// the entries, so that a database that spreads its tables by key spreads banks.
//
//	banks    the number that stands for a bank's name
//	buckets  the number that stands for a bucket's name within a bank, and where its sequence stands
//	entries  all that the banks hold
//	writers  which write of a program was the last that was kept; see settle
const layout = `
create schema if not exists $schema;
create table $schema.banks (
	number bigint generated always as identity primary key,
	name   text not null unique,
	format int not null,
	made   timestamptz not null default now());
create table $schema.buckets (
	bank     bigint not null references $schema.banks,
	number   smallint not null,
	name     text not null,
	sequence bigint not null,
	primary key (bank, number),
	unique (bank, name));
create table $schema.entries (
	bank   bigint not null,
	bucket smallint not null,
	key    bytea not null,
	value  bytea not null,
	primary key (bank, bucket, key));
create table $schema.writers (
	bank   bigint not null references $schema.banks,
	writer bytea not null,
	write  bigint not null,
	at     timestamptz not null default now(),
	primary key (bank, writer));
`

// in writes the schema's name into a statement, where it says $schema.
func (p place) in(statement string) string {
	return strings.ReplaceAll(statement, "$schema", p.schema)
}

// statements are those that are sent again and again.
type statements struct {
	buckets, lock, getAll, forward, backward, many                string
	put, erase, newBucket, moved, wrote, told, settled, forgotten string
}

func (p place) statements() statements {
	return statements{
		buckets: p.in(`select number, name, sequence from $schema.buckets where bank = $1 order by number`),
		lock:    p.in(`select number from $schema.banks where number = $1 for update`),
		getAll:  p.in(`select key, value from $schema.entries where bank = $1 and bucket = $2 and key = any($3)`),
		forward: p.in(`select key, value from $schema.entries
			where bank = $1 and bucket = $2 and key >= $3 and key < $4 order by key limit $5`),
		backward: p.in(`select key, value from $schema.entries
			where bank = $1 and bucket = $2 and key >= $3 and key < $4 order by key desc limit $5`),
		many: p.in(`select r.n, e.key, e.value
			from unnest($3::bytea[], $4::bytea[], $5::int[]) with ordinality r(lowest, above, most, n)
			cross join lateral (select key, value from $schema.entries
				where bank = $1 and bucket = $2 and key >= r.lowest and key < r.above order by key limit r.most) e`),
		put: p.in(`insert into $schema.entries (bank, bucket, key, value)
			select $1, b, k, v from unnest($2::smallint[], $3::bytea[], $4::bytea[]) e(b, k, v)
			on conflict (bank, bucket, key) do update set value = excluded.value`),
		erase: p.in(`delete from $schema.entries e using unnest($2::smallint[], $3::bytea[]) gone(b, k)
			where e.bank = $1 and e.bucket = gone.b and e.key = gone.k`),
		newBucket: p.in(`insert into $schema.buckets (bank, number, name, sequence) values ($1, $2, $3, $4)`),
		moved:     p.in(`update $schema.buckets set sequence = $3 where bank = $1 and number = $2`),
		wrote: p.in(`insert into $schema.writers (bank, writer, write) values ($1, $2, $3)
			on conflict (bank, writer) do update set write = excluded.write, at = now()`),
		told:    `select pg_notify($1, $2)`,
		settled: p.in(`select write from $schema.writers where bank = $1 and writer = $2`),
		forgotten: p.in(`delete from $schema.writers
			where bank = $1 and (writer = $2 or at < now() - interval '7 days')`),
	}
}

// Every statement looks entries up by their primary key or a range of it. Without
// statistics, as after a large import, the server may choose to read a whole table and
// sort it; these settings forbid that.
const byKey = `select set_config('enable_seqscan', 'off', true), set_config('enable_bitmapscan', 'off', true), ` +
	`set_config('jit', 'off', true)`
