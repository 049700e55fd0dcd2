package desk_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// The page of rules says whether the bank is whole and who lets drafts in, and changes that.
func TestCheckAndReviewFromThePage(t *testing.T) {
	browser, address, _ := openedWithBank(t)
	if _, text := get(t, browser, address+"/team"); !strings.Contains(text, "keeps no backups") ||
		!strings.Contains(text, "Nobody has looked") || !strings.Contains(text, "who did not write it") {
		t.Errorf("before: %s", text)
	}
	if _, text, _ := post(t, browser, address+"/team/check", nil); !strings.Contains(text, "4 items, 0 papers. All is as it was written") {
		t.Errorf("checked: %s", text)
	}
	if _, text, _ := post(t, browser, address+"/team/review", url.Values{"anyone": {"yes"}}); !strings.Contains(text, "My own drafts may be used") {
		t.Errorf("own drafts: %s", text)
	}
	if _, text, _ := post(t, browser, address+"/team/review", url.Values{"anyone": {"no"}}); !strings.Contains(text, "who did not write it") {
		t.Errorf("others' reading: %s", text)
	}
	for _, path := range []string{"/team/copies", "/team/copies/evenhand-2026-11-25.bank/prove", "/team/copies/x/restore"} {
		if status, _, _ := post(t, browser, address+path, url.Values{"sure": {"yes"}}); status != http.StatusNotFound {
			t.Errorf("%s without backups: %d", path, status)
		}
	}
}
