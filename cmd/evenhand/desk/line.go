package desk

import (
	"context"
	"errors"
	"net/http"
	"runtime"
	"slices"
	"sync"

	"evenhand/assemble/search"
)

// line is where quizzes wait until they are searched for: each search takes a core for itself, and one core is left
// for the pages that others look at.
type line struct {
	sync.Mutex
	busy    int
	waiting []chan int // who waits, the first one first; each is told how many come before, 0 for its turn
}

// atOnce is how many quizzes are searched for at a time, and longestLine how many may wait.
var atOnce = max(1, runtime.GOMAXPROCS(0)-1)

const longestLine = 40

var errLine = errors.New("too many quizzes are being made")

// take waits for a turn and tells how many come before, at the beginning and whenever that changes.
func (l *line) take(ctx context.Context, told func(before int)) (leave func(), err error) {
	l.Lock()
	switch {
	case l.busy < atOnce:
		l.busy++
		l.Unlock()
		return l.leave, nil
	case len(l.waiting) >= longestLine:
		l.Unlock()
		return nil, errLine
	}
	mine := make(chan int, 1)
	l.waiting = append(l.waiting, mine)
	before := len(l.waiting)
	l.Unlock()
	for before > 0 {
		told(before)
		select {
		case before = <-mine:
		case <-ctx.Done():
			l.giveUp(mine)
			return nil, errLine
		}
	}
	return l.leave, nil
}

// leave hands the turn to the first who waits.
func (l *line) leave() {
	l.Lock()
	defer l.Unlock()
	if len(l.waiting) == 0 {
		l.busy--
		return
	}
	tell(l.waiting[0], 0)
	l.waiting = l.waiting[1:]
	l.number()
}

// giveUp leaves the line; a turn that was given meanwhile goes to the next.
func (l *line) giveUp(mine chan int) {
	l.Lock()
	at := slices.Index(l.waiting, mine)
	if at >= 0 {
		l.waiting = slices.Delete(l.waiting, at, at+1)
		l.number()
	}
	l.Unlock()
	if at < 0 {
		l.leave()
	}
}

func (l *line) number() {
	for i, one := range l.waiting {
		tell(one, i+1)
	}
}

// tell puts a number in the place of one that nobody has read.
func tell(one chan int, before int) {
	select {
	case <-one:
	default:
	}
	one <- before
}

// inTurn does work that searches for a quiz when it is its turn. Meanwhile the person's pages say how many come before.
func (v *visit) inTurn(work func(ctx context.Context) error) error {
	ctx, done := context.WithTimeout(v.Context(), 6*searchFor)
	defer done()
	leave, err := v.desk.line.take(ctx, func(before int) {
		v.desk.news.tell(happened{What: "line", By: v.by(), Before: before})
	})
	if err != nil {
		v.w.Header().Set("Retry-After", "30")
		return &fault{status: http.StatusServiceUnavailable, text: v.said.say("quiz.line"), err: err}
	}
	defer leave()
	if !v.desk.alone() { // others' pages need the rest
		ctx = search.OneCore(ctx)
	}
	return work(ctx)
}
