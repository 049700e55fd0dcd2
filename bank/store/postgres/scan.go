package postgres

import (
	"bytes"
	"slices"

	"evenhand/bank/store"
)

// Pages begin small, as many a scan wants only a few entries, and grow as long as
// their bytes allow.
const (
	firstPage   = 128          // entries
	mostPage    = 8192         // entries
	pageBytes   = 2 << 20      // about so many
	manyEntries = 4 * mostPage // of many ranges together
	stopBytes   = 64 << 20     // a page that was asked too long, as values grew, ends here
)

// Many ranges are read together, of one without a limit a few entries at first.
const (
	together = 2048 // ranges
	each     = 64   // entries
)

// asOne is how many of the ranges, from the first on, are read with one question.
func asOne(ranges []store.Range) int {
	entries := 0
	for i, r := range ranges {
		entries += wanted(r)
		if i > 0 && (r.Backward || ranges[0].Backward || i == together || entries > manyEntries) {
			return i
		}
	}
	return len(ranges)
}

// scan hands the entries of ranges to a loop.
type scan struct {
	*reader
	bucket int16
	yield  func(store.Entry, error) bool
	over   bool // the loop wants no more, or there was an error
}

// give hands entries on.
func (s *scan) give(page []store.Entry) {
	for _, e := range page {
		if !s.over && !s.yield(e, nil) {
			s.over = true
		}
	}
}

func (s *scan) stop(err error) {
	s.fail(err)
	if !s.over {
		s.over = true
		s.yield(store.Entry{}, err)
	}
}

// one reads a range page by page. What a limit asks for is read at once.
func (s *scan) one(r store.Range) {
	for size := firstPage; !s.over; {
		want := size
		if r.Limit > 0 {
			want = min(r.Limit, mostPage)
		}
		page, whole, err := s.page(r, want)
		if err != nil {
			s.stop(err)
			return
		}
		s.give(page)
		if whole || r.Limit > 0 && len(page) == r.Limit {
			return
		}
		r = beyond(r, page)
		size = min(nextSize(page), 4*size)
	}
}

// nextSize is how many entries like those of a page make the next.
func nextSize(page []store.Entry) int {
	bytes := 1
	for _, e := range page {
		bytes += len(e.Key) + len(e.Value)
	}
	return max(1, min(len(page)*pageBytes/bytes, mostPage))
}

// beyond is what is left of a range behind a page.
func beyond(r store.Range, page []store.Entry) store.Range {
	if r.Limit > 0 {
		r.Limit -= len(page)
	}
	if len(page) == 0 {
		return r
	}
	if last := page[len(page)-1].Key; r.Backward {
		r.To = last
	} else {
		r.From = append(bytes.Clone(last), 0)
	}
	return r
}

// page reads the first entries of a range; whole says that there are no more.
func (s *scan) page(r store.Range, want int) (page []store.Entry, whole bool, err error) {
	sql := s.store.sql.forward
	if r.Backward {
		sql = s.store.sql.backward
	}
	lowest, above := bounds(r)
	rows, err := s.tx.Query(s.ctx, sql, s.store.number, s.bucket, lowest, above, want)
	if err != nil {
		return nil, false, err
	}
	defer rows.Close()
	page = make([]store.Entry, 0, want)
	for size := 0; rows.Next(); {
		var e store.Entry
		if err := rows.Scan(&e.Key, &e.Value); err != nil {
			return nil, false, err
		}
		page = append(page, e)
		if size += len(e.Value); size > stopBytes {
			return page, false, nil
		}
	}
	return page, len(page) < want, rows.Err()
}

// many reads several ranges, forward, with one question and one more for each that is long.
func (s *scan) many(ranges []store.Range) {
	pages, err := s.pages(ranges)
	if err != nil {
		s.stop(err)
		return
	}
	for i, r := range ranges {
		s.give(pages[i])
		if s.over {
			return
		}
		if want := wanted(r); len(pages[i]) == want && r.Limit != want {
			s.one(beyond(r, pages[i]))
		}
	}
}

// wanted is how many entries of a range are read at first.
func wanted(r store.Range) int {
	if r.Limit > 0 {
		return min(r.Limit, mostPage)
	}
	return each
}

// pages reads the first entries of each range. The statement asks for no order over all ranges, for
// which the server would sort what it has in order already.
func (s *scan) pages(ranges []store.Range) ([][]store.Entry, error) {
	lowest, above, most := make([][]byte, len(ranges)), make([][]byte, len(ranges)), make([]int32, len(ranges))
	for i, r := range ranges {
		lowest[i], above[i] = bounds(r)
		most[i] = int32(wanted(r))
	}
	rows, err := s.tx.Query(s.ctx, s.store.sql.many, s.store.number, s.bucket, lowest, above, most)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	pages := make([][]store.Entry, len(ranges))
	for rows.Next() {
		var n int64 // of the range, from 1
		var e store.Entry
		if err := rows.Scan(&n, &e.Key, &e.Value); err != nil {
			return nil, err
		}
		pages[n-1] = append(pages[n-1], e)
	}
	byKey := func(a, b store.Entry) int { return bytes.Compare(a.Key, b.Key) }
	for _, page := range pages {
		if !slices.IsSortedFunc(page, byKey) {
			slices.SortFunc(page, byKey)
		}
	}
	return pages, rows.Err()
}
