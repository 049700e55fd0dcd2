package postgres

import (
	"crypto/tls"
	"errors"
	"evenhand/standards/words"
	"fmt"
	"net"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5/pgconn"
)

// explain says in a person's words, on one line, what is wrong.
func (s *Store) explain(err error) error {
	said := pgError(err)
	switch {
	case hasCode(err, lockNotAvailable):
		return words.Errorf("%s is being changed by another evenhand; try again when that is done (waited %s)",
			s.Name(), s.options.Patience())
	case hasCode(err, noPrivilege):
		return words.Errorf("%s: this database user may not do that (%s); ask who keeps the database", s.Name(), said.Message)
	case hasCode(err, noSuchDatabase):
		return words.Errorf("%s: there is no such database on the server; ask who keeps it to create it", s.Name())
	case hasCode(err, badPassword, badAuthorization):
		return words.Errorf("%s: the server doesn't let this user in (%s); see to the user's name in the address "+
			"and to the password in ~/.pgpass or PGPASSWORD", s.Name(), said.Message)
	case hasCode(err, noSuchSetting):
		return words.Errorf("%s: the server doesn't know a setting of the address (%s); leave it out", s.Name(), said.Message)
	case refusesTLS(err):
		return words.Errorf("%s: no safe connection is had (%s); see to sslmode and its certificates in the address, "+
			"or ask who keeps the database", s.Name(), causes(err))
	case passing(err), isLost(err):
		return briefly{err, words.Sayf("%s can't be reached: %s; see to the network, or ask who keeps the database",
			s.Name(), causes(err))}
	}
	return err
}

// briefly is an error in other words.
type briefly struct {
	error
	words *words.Told
}

func (b briefly) Error() string     { return b.words.String() }
func (b briefly) Told() *words.Told { return b.words }
func (b briefly) Unwrap() error     { return b.error }

// tlsRefused is how the driver says that the server speaks no TLS.
const tlsRefused = "server refused TLS connection"

// refusesTLS says that it was TLS alone that failed: the server speaks none, or its certificate isn't
// trusted. Where the address prefers TLS and doesn't insist, the driver then tries without.
func refusesTLS(err error) bool {
	tries := attempts(err)
	return len(tries) > 0 && !slices.ContainsFunc(tries, func(try error) bool {
		var untrusted *tls.CertificateVerificationError
		return !strings.Contains(try.Error(), tlsRefused) && !errors.As(try, &untrusted)
	})
}

// attempts are the errors of a connection that could not be made, one for each host that was tried.
func attempts(err error) []error {
	var failed *pgconn.ConnectError
	if !errors.As(err, &failed) {
		return nil
	}
	if all, ok := failed.Unwrap().(interface{ Unwrap() []error }); ok {
		return all.Unwrap()
	}
	return []error{failed.Unwrap()}
}

// causes tells each reason for which a connection was lost or could not be made once.
func causes(err error) string {
	tries := attempts(err)
	if len(tries) == 0 {
		return strings.Join(strings.Fields(err.Error()), " ")
	}
	var list []string
	for _, try := range tries {
		if text := cause(try); !slices.Contains(list, text) && (text != tlsRefused || refusesTLS(err)) {
			list = append(list, text)
		}
	}
	return strings.Join(list, ", and ")
}

func cause(try error) string {
	var lookup *net.DNSError
	var dial *net.OpError
	switch {
	case errors.As(try, &lookup) && lookup.IsNotFound:
		return fmt.Sprintf("no host %q is known", lookup.Name)
	case pgError(try) != nil:
		return pgError(try).Message
	case strings.Contains(try.Error(), tlsRefused):
		return tlsRefused
	case errors.As(try, &dial) && dial.Op == "dial" && dial.Addr != nil:
		return fmt.Sprintf("nothing answers at %s (%s)", dial.Addr, dial.Err)
	}
	return strings.Join(strings.Fields(try.Error()), " ")
}
