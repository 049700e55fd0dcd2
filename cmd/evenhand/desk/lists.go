package desk

import (
	"errors"
	"io"
	"net/http"
	"slices"
	"strconv"
	"time"

	"evenhand/bank"
	intake "evenhand/import"
)

// uploadTime is how long the sending of a list may take.
const uploadTime = 2 * time.Minute

// listsPage is what the page of lists shows.
type listsPage struct {
	Waiting, In []upload    // those on their way, and those that came in
	Others      []bank.List // those that came in by another way, the latest first
	Sheets      int         // how many lists the workbook held that was just sent
	Problem     string      // of the list that was just sent
	May         bool        // bring lists
}

// lists shows what came in, and what is on its way.
func lists(v *visit) error { return v.showLists("") }

func (v *visit) showLists(problem string) error {
	all, err := v.desk.uploads.all(v.Context())
	if err != nil {
		return err
	}
	page := listsPage{Problem: problem, May: v.who.Role.may(Writer)}
	if sheets, err := strconv.Atoi(v.FormValue("sheets")); err == nil && sheets > 1 && sheets <= len(all) {
		page.Sheets = sheets
	}
	for _, one := range all {
		if one.Accepted == nil {
			page.Waiting = append(page.Waiting, one)
		} else {
			page.In = append(page.In, one)
		}
	}
	kept, err := v.desk.bank.Lists()
	if err != nil {
		return err
	}
	for _, one := range slices.Backward(kept) {
		ofIn := func(u upload) bool { return u.Name == one.Name || intake.SetAsidePath(u.Name) == one.Name }
		if !slices.ContainsFunc(page.In, ofIn) {
			page.Others = append(page.Others, one)
		}
	}
	if problem != "" {
		v.w.WriteHeader(http.StatusBadRequest)
	}
	return v.show("lists", page)
}

// waiting is the list that was sent last of those that nobody has brought in yet; nil without any.
func (v *visit) waiting() (*upload, error) {
	all, err := v.desk.uploads.all(v.Context())
	for _, one := range all {
		if one.Accepted == nil {
			return &one, err
		}
	}
	return nil, err
}

// sendList takes a list that was dropped or chosen and keeps it on its way; nothing of it is in the
// bank yet.
func sendList(v *visit) error {
	// Where there is no connection to bound, as in tests, the server's own bound stands.
	_ = http.NewResponseController(v.w).SetReadDeadline(time.Now().Add(uploadTime))
	file, header, err := v.FormFile("list")
	if tooLarge(err) {
		return v.listTooLarge()
	}
	if err != nil {
		return v.showLists(v.said.say("lists.nofile"))
	}
	defer file.Close()
	data, err := io.ReadAll(file)
	if err != nil {
		return err
	}
	if len(data) > largestUpload {
		return v.listTooLarge()
	}
	release, err := v.desk.turn(v.Context())
	if err != nil {
		return err
	}
	list, err := newUploads(fileName(header.Filename), data, v.by(), v.now())
	release()
	if err != nil {
		return v.showLists(v.said.Tell(err))
	}
	if err := v.desk.uploads.add(v.Context(), data, list); errors.Is(err, errUploads) {
		return v.showLists(v.said.say("lists.toomany", mostUploads))
	} else if err != nil {
		return err
	}
	if len(list) > 1 {
		return v.to("/lists?sheets=" + strconv.Itoa(len(list)))
	}
	return v.to("/lists/" + list[0].ID)
}

func (v *visit) listTooLarge() error {
	return &fault{status: http.StatusRequestEntityTooLarge, text: v.said.say("lists.toolarge", largestUpload>>20)}
}

// tooLarge says that a request has more bytes than it may have.
func tooLarge(err error) bool { return errors.As(err, new(*http.MaxBytesError)) }

// uploadOf finds the list that the address names.
func (v *visit) uploadOf() (one upload, data []byte, err error) {
	one, data, err = v.desk.uploads.find(v.Context(), v.PathValue("id"))
	if errors.Is(err, errNoUpload) {
		err = v.missing("list.nothing")
	}
	return one, data, err
}

// dropList takes a list away that is on its way, or off the page when it came in; what came in stays.
func dropList(v *visit) error {
	if err := v.desk.uploads.drop(v.Context(), v.PathValue("id")); errors.Is(err, errNoUpload) {
		return v.missing("list.nothing")
	} else if err != nil {
		return err
	}
	return v.to("/lists")
}

// takeBackList takes all items of a list that came in out of use again.
func takeBackList(v *visit) error {
	one, _, err := v.uploadOf()
	if err != nil {
		return err
	}
	_, _, err = intake.Undo(v.desk.bank, one.Name, intake.ImportOptions{By: v.by(), At: v.now()})
	if used := (*intake.UsedError)(nil); errors.As(err, &used) {
		return v.wrong("list.used", len(used.Items), used.List)
	}
	if err != nil {
		return err
	}
	if one.Done { // its file is gone
		return dropList(v)
	}
	err = v.desk.uploads.change(v.Context(), one.ID, func(u *upload) { u.Accepted = nil })
	if err != nil {
		return err
	}
	return v.to("/lists/" + one.ID + "?said=back")
}

// readSheet puts a sheet of a workbook that was not read on its way as a list of its own.
func readSheet(v *visit) error {
	one, data, err := v.uploadOf()
	if err != nil {
		return err
	}
	sheet := v.FormValue("sheet")
	if one.Done || !slices.Contains(one.Unread, sheet) {
		return v.missing("list.nosheet")
	}
	other := upload{
		ID: secret(), Name: one.Name + " (" + fileName(sheet) + ")", File: one.File, Sheet: sheet, By: v.by(), At: v.now(),
		Columns: map[int]string{}, Mends: map[string]map[int]string{},
	}
	if err := v.desk.uploads.add(v.Context(), data, []upload{other}); errors.Is(err, errUploads) {
		return v.wrong("lists.toomany", mostUploads)
	} else if err != nil {
		return err
	}
	err = v.desk.uploads.change(v.Context(), one.ID, func(u *upload) {
		u.Unread = slices.DeleteFunc(u.Unread, func(name string) bool { return name == sheet })
	})
	if err != nil {
		return err
	}
	return v.to("/lists/" + other.ID)
}
