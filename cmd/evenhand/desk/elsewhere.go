package desk

import "evenhand/bank/store"

// hearElsewhere passes on what others than this desk write to its bank, where the store tells: another desk on the
// same database, or a command. On a file there is nobody else, as commands work through the desk.
func (d *Desk) hearElsewhere() {
	place, ok := d.bank.Store().(store.Watcher)
	if !ok {
		return
	}
	go place.Watch(d.open, func(changed map[string][]byte) {
		what, by, err := d.bank.Told(changed)
		switch {
		case err != nil:
			d.o.Log.Error("what was written elsewhere can't be read", "error", forLog(err))
		case what != "" && by == "":
			d.news.tell(happened{What: "elsewhere"})
		case what != "":
			d.news.tell(happened{What: what, By: by})
		}
	})
}
