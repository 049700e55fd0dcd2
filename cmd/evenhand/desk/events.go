package desk

import (
	"fmt"
	"net/http"
	"strings"
	"sync"
	"time"
)

// Pages hear what others do while it happens, by server-sent events
// (https://html.spec.whatwg.org/multipage/server-sent-events.html): one quiet line, no reload.

// happened is something that somebody did just now.
type happened struct {
	What   string // the ending of a sentence's key, such as quiz
	By     string // empty where nobody knows
	Before int    // above 0, for By alone: how many quizzes are made before theirs
}

// happenings says what a form that was taken did, by its route and, where one route does several things,
// by the name of its button.
var happenings = map[string]string{
	"POST /items": "item", "POST /items/{id}": "item", "POST /items/{id}/status": "item",
	"POST /plans keep": "plan", "POST /plans make": "quiz", "POST /plans fill": "quiz",
	"POST /quizzes/{id}/swap": "quiz", "POST /quizzes/{id}/makeup": "quiz", "POST /quizzes/{id}/back": "quizback",
	"POST /lists/{id} accept": "list", "POST /lists/{id}/back": "listback",
}

// heldAtOnce is how many pages listen at most: each holds a connection.
const heldAtOnce = 500

// news passes on what happens to all pages that listen.
type news struct {
	sync.Mutex
	listeners map[chan happened]bool
	over      bool
}

// tell never waits: who listens too slowly misses something.
func (n *news) tell(h happened) {
	n.Lock()
	defer n.Unlock()
	for listener := range n.listeners {
		select {
		case listener <- h:
		default:
		}
	}
}

// listen is false where too many do already, or the desk is closing.
func (n *news) listen() (heard chan happened, ok bool) {
	n.Lock()
	defer n.Unlock()
	if n.over || len(n.listeners) >= heldAtOnce {
		return nil, false
	}
	if n.listeners == nil {
		n.listeners = map[chan happened]bool{}
	}
	heard = make(chan happened, 8)
	n.listeners[heard] = true
	return heard, true
}

func (n *news) leave(heard chan happened) {
	n.Lock()
	defer n.Unlock()
	if n.listeners[heard] {
		delete(n.listeners, heard)
		close(heard)
	}
}

// end sends all listeners away.
func (n *news) end() {
	n.Lock()
	defer n.Unlock()
	n.over = true
	for heard := range n.listeners {
		delete(n.listeners, heard)
		close(heard)
	}
}

// Leave ends what lasts: pages that listen and programs that read. The server calls it before it waits for
// the requests in hand.
func (d *Desk) Leave() {
	d.close()
	d.news.end()
	d.remote.Close()
}

// tellOthers passes on what a form did that was taken.
func (v *visit) tellOthers(status int) {
	if status != http.StatusSeeOther || v.Method != http.MethodPost {
		return
	}
	what := happenings[v.Pattern]
	if what == "" {
		what = happenings[v.Pattern+" "+v.Form.Get("do")]
	}
	if what != "" {
		v.desk.news.tell(happened{What: what, By: v.by()})
	}
}

// stillThere is how often a listening page hears that the desk is there.
const stillThere = 25 * time.Second

// events tells a page what others do.
func events(v *visit) error {
	heard, ok := v.desk.news.listen()
	if !ok {
		return &fault{status: http.StatusServiceUnavailable, text: v.said.say("events.full")}
	}
	defer v.desk.news.leave(heard)
	v.desk.watching.Do(v.desk.hearElsewhere)
	v.w.Header().Set("Content-Type", "text/event-stream")
	flush := http.NewResponseController(v.w).Flush
	_, err := fmt.Fprint(v.w, "retry: 10000\n\n")
	for ticks := time.NewTicker(stillThere); err == nil; {
		if err = flush(); err != nil {
			break
		}
		select {
		case <-v.Context().Done():
			return nil
		case <-ticks.C:
			_, err = fmt.Fprint(v.w, ":\n\n")
		case h, more := <-heard:
			if !more {
				return nil
			}
			if news := v.hears(h); news != "" {
				_, err = fmt.Fprintf(v.w, "data: %s\n\n", oneLine(news))
			}
		}
	}
	return nil // the page is gone
}

// hears is what a person's page says of something that happened; empty for nothing.
func (v *visit) hears(h happened) string {
	own := strings.EqualFold(h.By, v.by())
	switch {
	case own && h.Before == 1:
		return v.said.say("events.line.one")
	case own && h.Before > 1:
		return v.said.say("events.line.many", h.Before)
	case own || h.Before > 0:
		return ""
	}
	if h.By == "" {
		return v.said.say("events." + h.What)
	}
	return v.said.say("events."+h.What, h.By)
}

// oneLine keeps a name from ending the event.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
