package desk

import (
	"cmp"
	"context"
	"html/template"
	"log/slog"
	"net/http"
	"slices"
	"sync"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
	"evenhand/bank/store/remote"
	"evenhand/standards/words"

	"github.com/alexedwards/scs/v2"
)

// Options say whom a desk serves.
type Options struct {
	Store  store.Store      // where the team's people are kept; nil for one person alone, let in by the link of Entrance
	By     string           // who works alone here, such as MK
	Hosts  []string         // the names under which browsers may ask, with their port; empty for any
	Secure bool             // browsers come by TLS
	Proxy  bool             // they come by a proxy, which says in X-Forwarded-Host for which name they asked
	Log    *slog.Logger     // nil is silent; pupils, answers and passwords never go there
	Now    func() time.Time // nil means the clock

	Copies   results.Copies    // of the bank; without a folder none are shown
	Restore  func(path string) // puts a copy in the bank's place once this desk has answered; nil where that is for a command
	Restored *words.Told       // what a restore just did, in words
	Entrance string            // the secret of the link for one person alone; empty makes one

	// Of a desk for one person alone:
	DemoSchool func() (link string, err error) // opens the demo school beside this bank; nil offers none
	Home       string                          // on the demo school's desk: where the person's own desk is
	ThrowAway  func()                          // on the demo school's desk: closes and removes it once it has answered
	Stop       func()                          // closes the desk once it has answered; nil offers it nowhere
}

// Desk is a bank on web pages.
type Desk struct {
	bank  *bank.Bank
	o     Options
	pages *pages

	uploads uploads
	judging chan struct{} // holds a place for each list that is being judged
	tally   tally
	safety  safety

	entrance string // the secret of the link that lets in who works alone
	local    string // the token of this computer's programs
	remote   *remote.Server
	news     news
	lately   lately
	drawings remembered[drawn, template.HTML]
	line     line
	open     context.Context // until Leave
	close    context.CancelFunc
	watching sync.Once

	people   people // of a team
	sessions *scs.SessionManager
	patience patience
}

// New puts a bank on a desk. The bank and the store stay the caller's to close, after the server has
// stopped.
func New(b *bank.Bank, o Options) (*Desk, error) {
	pages, err := loadPages()
	if err != nil {
		return nil, err
	}
	o.Log = cmp.Or(o.Log, slog.New(slog.DiscardHandler))
	if o.Now == nil {
		o.Now = time.Now
	}
	d := &Desk{
		bank: b, o: o, pages: pages, uploads: uploads{b.Store()}, judging: make(chan struct{}, 2),
		entrance: cmp.Or(o.Entrance, secret()), local: "evenhand-" + secret(), remote: remote.NewServer(),
		drawings: remembered[drawn, template.HTML]{most: mostDrawings},
	}
	d.open, d.close = context.WithCancel(context.Background())
	if o.Store != nil {
		d.people, d.sessions = people{o.Store}, newSessions(o.Store, o)
		d.sessions.ErrorFunc = d.sessionFailed
	}
	return d, nil
}

// alone says that one person works here without signing in.
func (d *Desk) alone() bool { return d.o.Store == nil }

// Entrance is the path of the link that lets this computer's browser in, where one person works
// alone.
func (d *Desk) Entrance() string { return "/enter/" + d.entrance }

// route is an address with who may ask it.
type route struct {
	pattern string
	right   right
	handle  handler
}

// routes are all addresses of the desk.
var routes = []route{
	{"GET /{$}", toRead, week},
	{"GET /items", toRead, items},
	{"POST /items", toWrite, addItem},
	{"GET /items/new", toWrite, newItem},
	{"GET /items/{id}", toRead, item},
	{"POST /items/{id}", toWrite, reviseItem},
	{"GET /items/{id}/edit", toWrite, editItem},
	{"POST /items/{id}/status", toWrite, setStanding},
	{"GET /generate", toWrite, showGenerate},
	{"POST /generate", toWrite, makeItems},
	{"GET /plans", toRead, plans},
	{"POST /plans", toWrite, sentPlan},
	{"GET /plans/new", toWrite, newPlan},
	{"GET /plans/typed", toRead, typedPlan},
	{"GET /plans/{name}", toRead, keptPlan},
	{"GET /terms/new", toWrite, newTerm},
	{"POST /terms", toWrite, keepTerm},
	{"GET /terms/{name}", toRead, term},
	{"GET /quizzes", toRead, quizzes},
	{"GET /quizzes/{id}", toRead, quiz},
	{"GET /quizzes/{id}/{what}", toRead, printQuiz},
	{"POST /quizzes/{id}/set", toMark, printSet},
	{"POST /quizzes/{id}/swap", toWrite, changeQuiz},
	{"POST /quizzes/{id}/back", toWrite, takeBackQuiz},
	{"POST /quizzes/{id}/makeup", toWrite, makeMakeUp},
	{"GET /marks", toMark, marksList},
	{"GET /marks/{id}", toMark, marksPage},
	{"POST /marks/{id}", toMark, saveMarks},
	{"POST /marks/{id}/class", toMark, enrolPupils},
	{"POST /marks/{id}/paste", toMark, pasteMarks},
	{"GET /class", toMark, class},
	{"POST /class/practice", toMark, makePractice},
	{"GET /lists", toRead, lists},
	{"POST /lists", toWrite, sendList},
	{"GET /lists/{id}", toRead, list},
	{"GET /lists/kept/{number}/{name}", toRead, keptList},
	{"POST /lists/{id}", toWrite, changeList},
	{"POST /lists/{id}/drop", toWrite, dropList},
	{"POST /lists/{id}/sheet", toWrite, readSheet},
	{"POST /lists/{id}/back", toWrite, takeBackList},
	{"GET /activity", toRead, activityPage},
	{"GET /events", toRead, events},
	{"GET /team", toRead, team},
	{"POST /team/copies", toOwn, makeCopy},
	{"GET /team/copies/{name}", toOwn, showCopy},
	{"POST /team/copies/{name}/prove", toOwn, proveCopy},
	{"POST /team/copies/{name}/restore", toOwn, restoreCopy},
	{"POST /team/check", toWrite, checkBank},
	{"POST /team/review", toOwn, setReview},
	{"GET /healthz", toAnyone, health},
	{"GET /metrics", toAnyone, metrics},
	{"POST /language", toAnyone, chooseLanguage},
	{"/", toAnyone, nothingHere},
}

// aloneRoutes are the addresses that only the desk of one person alone has.
var aloneRoutes = []route{
	{"GET /enter/{secret}", toAnyone, enter},
	{"POST /demo", toOwn, enterDemo},
	{"POST /demo/away", toOwn, throwDemoAway},
	{"POST /close", toOwn, closeDesk},
}

// teamRoutes are the addresses that only a desk of several people has.
var teamRoutes = []route{
	{"GET /signin", toAnyone, showSignIn},
	{"POST /signin", toAnyone, signIn},
	{"POST /signout", toAnyone, signOut},
	{"GET /invited/{secret}", toAnyone, showInvited},
	{"POST /invited/{secret}", toAnyone, acceptInvitation},
	{"POST /team/invite", toOwn, invitePerson},
	{"POST /team/people/{name}", toOwn, changePerson},
	{"POST /team/people/{name}/remove", toOwn, removePerson},
	{"GET /passes", toRead, passesPage},
	{"POST /passes", toRead, makePass},
	{"POST /passes/drop", toRead, dropPass},
}

// served are the addresses that this desk has; what stands in none of these lists is not answered.
func (d *Desk) served() []route {
	if d.alone() {
		return slices.Concat(routes, apiRoutes, aloneRoutes)
	}
	return slices.Concat(routes, apiRoutes, teamRoutes)
}

// Handler answers all requests.
func (d *Desk) Handler() http.Handler {
	mux := http.NewServeMux()
	for _, r := range d.served() {
		mux.Handle(r.pattern, d.answer(r.right, r.handle))
	}
	mux.Handle("GET /look/", d.look())
	if d.alone() {
		return d.guard(mux)
	}
	return d.guard(d.sessions.LoadAndSave(mux))
}
