package desk

import (
	"cmp"
	"log/slog"
	"net/http"
	"time"

	"evenhand/bank"
)

// Options say whom a desk serves.
type Options struct {
	By     string           // who works alone here, such as MK
	Alone  bool             // one person, this computer's browser: no sign-in, the link of Entrance lets in
	Hosts  []string         // the names under which browsers may ask, with their port; empty for any
	Secure bool             // browsers come by TLS
	Log    *slog.Logger     // nil is silent; pupils, answers and passwords never go there
	Now    func() time.Time // nil means the clock
}

// Desk is a bank on web pages.
type Desk struct {
	bank     *bank.Bank
	o        Options
	entrance string // the secret of the link that lets in
	pages    *pages
}

// New puts a bank on a desk. The bank stays the caller's to close, after the server has stopped.
func New(b *bank.Bank, o Options) (*Desk, error) {
	pages, err := loadPages()
	if err != nil {
		return nil, err
	}
	o.Log = cmp.Or(o.Log, slog.New(slog.DiscardHandler))
	if o.Now == nil {
		o.Now = time.Now
	}
	return &Desk{bank: b, o: o, entrance: secret(), pages: pages}, nil
}

// Entrance is the path that lets this computer's browser in, to be opened once the desk is served.
func (d *Desk) Entrance() string { return "/enter/" + d.entrance }

// Handler answers all requests.
func (d *Desk) Handler() http.Handler {
	routes := http.NewServeMux()
	for pattern, handle := range map[string]handler{
		"GET /{$}":                week,
		"GET /items":              items,
		"POST /items":             addItem,
		"GET /items/new":          newItem,
		"GET /items/{id}":         item,
		"POST /items/{id}":        reviseItem,
		"GET /items/{id}/edit":    editItem,
		"POST /items/{id}/status": setStanding,

		"POST /language": chooseLanguage,
	} {
		routes.Handle(pattern, d.only(handle))
	}
	routes.Handle("GET /enter/{secret}", d.open(enter))
	routes.Handle("GET /look/", d.look())
	routes.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte("ok\n")) })
	routes.Handle("/", d.open(nothingHere))
	return d.guard(routes)
}
