package desk

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank"
	intake "evenhand/import"
	"evenhand/standards/words"
)

// keptListPage is a list that came in, with what became of its rows.
type keptListPage struct {
	bank.List
	Outcomes     []keptRow
	First        int // the first row shown, from 0
	Before, Next string
}

// keptRow is a row of it with the item that it is now.
type keptRow struct {
	bank.ListRow
	Question string
}

// Why is the reason of the row, as it was kept.
func (r keptRow) Why() *words.Told {
	if r.Told == nil && r.Reason != "" {
		return words.Sayf("%s", r.Reason)
	}
	return r.Told
}

// HowWritten says how the list was written.
func (p keptListPage) HowWritten() *words.Told {
	if len(p.Told) == 0 {
		return words.Sayf("%s", p.Written)
	}
	return p.Told[0]
}

// WhatAsked is what a person was asked about the list.
func (p keptListPage) WhatAsked() (asked []*words.Told) {
	if len(p.Told) > 0 {
		return p.Told[1:]
	}
	for _, text := range p.Asked {
		asked = append(asked, words.Sayf("%s", text))
	}
	return asked
}

// keptList shows a list as it came in, whoever brought it and by which way.
func keptList(v *visit) error {
	all, err := v.desk.bank.Lists()
	if err != nil {
		return err
	}
	number, _ := strconv.Atoi(v.PathValue("number"))
	at := slices.IndexFunc(all, func(l bank.List) bool { return l.Name == v.PathValue("name") && l.Number == number })
	if at < 0 {
		return v.missing("list.nothing")
	}
	page := keptListPage{List: all[at]}
	rows, err := v.desk.bank.ListRows(all[at])
	if err != nil {
		return err
	}
	first, _ := strconv.Atoi(v.FormValue("at"))
	page.First = max(0, min(first, len(rows)-1))
	for _, row := range rows[page.First:min(page.First+fatesShown, len(rows))] {
		one := keptRow{ListRow: row}
		if it, err := v.desk.bank.Get(row.ID); row.ID != "" && err == nil {
			one.Question = it.Question(v.said.Lang)
		}
		page.Outcomes = append(page.Outcomes, one)
	}
	if page.First > 0 {
		page.Before = "?at=" + strconv.Itoa(max(0, page.First-fatesShown))
	}
	if page.First+fatesShown < len(rows) {
		page.Next = "?at=" + strconv.Itoa(page.First+fatesShown)
	}
	return v.show("kept_list", page)
}

// keptAs is the list of a name as the bank keeps it since it last came in; nil where it keeps none.
func (v *visit) keptAs(name string) (*bank.List, error) {
	all, err := v.desk.bank.Lists()
	for _, one := range slices.Backward(all) {
		if one.Name == name {
			return &one, err
		}
	}
	return nil, err
}

// KeptPath is the address of a list that the bank keeps.
func (s sentences) KeptPath(l bank.List) string {
	return fmt.Sprintf("/lists/kept/%d/%s", l.Number, url.PathEscape(l.Name))
}

// ListName is a list's name as it is shown: rows that were mended are those of their list.
func (s sentences) ListName(name string) string {
	if of, mended := strings.CutSuffix(name, intake.SetAsidePath("")); mended {
		return s.say("lists.mendedof", of)
	}
	return name
}
