package postgres

import (
	"errors"
	"fmt"
	"net/url"
	"strings"
)

// place is where a store is: a database and the bank's name in it.
type place struct {
	address  string // as it was given
	database string // the same for the driver, which knows nothing of banks
	bank     string
	schema   string // of the tables
}

const mainSchema = "evenhand"

// marksPart is the part of a bank that has a schema of its own, so that a role can
// be kept out of it.
const marksPart = "marks"

// IsAddress says whether a bank's address is one of a database.
func IsAddress(text string) bool {
	return strings.HasPrefix(text, "postgres://") || strings.HasPrefix(text, "postgresql://")
}

// MarksOf is the address of the marks of a bank.
func MarksOf(address string) string { return address + "&part=" + marksPart }

// BankOf is the bank's name in an address.
func BankOf(address string) string {
	p, err := parse(address)
	if err != nil {
		return address
	}
	return p.bank
}

// parse reads an address. What stands in it besides bank and part is for the driver:
// https://www.postgresql.org/docs/15/libpq-connect.html#LIBPQ-CONNSTRING.
func parse(address string) (p place, err error) {
	server, query, _ := strings.Cut(address, "?")
	settings, err := url.ParseQuery(query)
	if err != nil {
		return p, errors.New("what follows the ? in the address of a database can't be read; write ?bank=NAME, and other settings behind a &")
	}
	if hasPassword(server, settings) {
		return p, errors.New("an address must hold no password, as others may see it: put it into the file " +
			"that PGPASSFILE names, usually ~/.pgpass, or into PGPASSWORD, and leave it out here")
	}
	p = place{address: address, bank: settings.Get("bank"), schema: mainSchema}
	if strings.TrimSpace(p.bank) == "" {
		return p, fmt.Errorf("%s doesn't say which bank; end it with ?bank=NAME, such as ?bank=alder-hill-2", server)
	}
	switch part := settings.Get("part"); part {
	case "":
	case marksPart:
		p.schema += "_" + marksPart
	default:
		return p, fmt.Errorf("%s: a bank has no part %q; leave it out", server, part)
	}
	settings.Del("bank")
	settings.Del("part")
	p.database = server + "?" + settings.Encode()
	return p, nil
}

func hasPassword(server string, settings url.Values) bool {
	user, _, found := strings.Cut(server[strings.Index(server, "://")+3:], "@")
	return found && strings.Contains(user, ":") || settings.Has("password") || settings.Has("sslpassword")
}
