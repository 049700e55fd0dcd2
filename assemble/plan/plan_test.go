package plan_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"evenhand/assemble/plan"
	"evenhand/standards"
)

func TestExamplePlan(t *testing.T) {
	plan, err := plan.Parse([]byte(plan.Example()), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	if plan.Size() != 10 || plan.Forms != 2 || plan.Rest != 4 || plan.Minutes != 15 || plan.ShareRight != 75 {
		t.Errorf("the example reads as %+v", plan)
	}
	if len(plan.Rows) != 4 || len(plan.Bands) != 2 || len(plan.Quotas) != 1 {
		t.Errorf("%d rows, %d bands, %d quotas instead of 4, 2, 1", len(plan.Rows), len(plan.Bands), len(plan.Quotas))
	}
	if got, want := plan.Rows[0].Name(), "add-two-digit where regroups >= 1, shown as column"; got != want {
		t.Errorf("row 1 is called %q, not %q", got, want)
	}
}

// However long a plan is, it is refused at once and in few words when it has more rules than anybody can look over.
func TestPlanWithTooManyRules(t *testing.T) {
	const row = "[[row]]\nskill = \"add-two-digit\"\ncount = 1\n"
	const quota = "[[quota]]\nwhere = [\"regroups = 1\"]\ncount = [0, 10]\n"
	for text, want := range map[string]string{
		strings.Repeat(row, 61):            "there are 61 [[row]] here; 60 are the most",
		row + strings.Repeat(quota, 60000): "there are 60000 [[quota]] here; 60 are the most",
	} {
		if _, err := plan.Parse([]byte(text), "plan.toml"); err == nil || !strings.Contains(err.Error(), want) || len(err.Error()) > 1000 {
			t.Errorf("got %v, want %q", err, want)
		}
	}
	if _, err := plan.Parse([]byte(row+strings.Repeat(quota, 60)), "plan.toml"); err != nil {
		t.Error(err)
	}
	term := "title = \"Term\"\nitems = 4\n" + strings.Repeat("[[new]]\nweek = 1\nskill = \"add-two-digit\"\n", 61)
	if _, err := plan.ParsePacing([]byte(term), "term.toml"); err == nil || !strings.Contains(err.Error(), "there are 61 [[new]] here; 60 are the most") {
		t.Error(err)
	}
}

func TestPlanDefaults(t *testing.T) {
	plan := mustPlan(t, "\ufeff[row]\r\nskill = 'clock-hour'\r\ncount = 3\r\n[[quota]]\nwhere='past_noon = true'\ncount = 1\n")
	if plan.Forms != 1 || plan.ShareRight != 75 || plan.Rest != 0 || plan.Minutes != 0 || plan.Shared != 0 {
		t.Errorf("a plan of one row reads as %+v", plan)
	}
	if q := plan.Quotas[0]; q.AtLeast != 1 || q.AtMost != 1 {
		t.Errorf("count = 1 reads as %d to %d", q.AtLeast, q.AtMost)
	}
}

// The sample message of the house style, to the letter.
func TestMistakeIsShownWhereItStands(t *testing.T) {
	text := strings.Repeat("\n", 12) + "[[row]]\nskill = \"add-two-digits\"\ncount = 1\n"
	want := `plan.toml:14:9: no skill "add-two-digits"; did you mean "add-two-digit"?
    skill = "add-two-digits"
            ~~~~~~~~~~~~~~~~
evenhand skills lists them all.`
	if _, err := plan.Parse([]byte(text), "plan.toml"); err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

func TestPlanMistakes(t *testing.T) {
	const row = "[[row]]\nskill = \"add-two-digit\"\ncount = 2\n"
	for _, c := range []struct{ text, want string }{
		{"", "1:1: the plan has no row"},
		{"items = ", "1:1: items has no value"},
		{"title = \"a\"\ntitle = \"b\"", "2:1: title stands here a second time"},
		{"row = 5", `1:7: "row" can't be written like this`},
		{"itms = 2\n" + row, `1:1: no key "itms"; did you mean "items"?`},
		{row + "kount = 2", `4:1: no key "kount" in row; did you mean "count"?`},
		{row + "colour = \"red\"", "The keys here are skill, count, where, layouts, looks, vary."},
		{"[rows]\n" + row, `1:2: no key "rows"; did you mean "row"?`},
		{"items = 3\n" + row, "1:9: items says 3, the counts of the rows add up to 2"},
		{"items = \"two\"\n" + row, `1:9: items is a whole number from 1 to 100, not "two"`},
		{"items = 2.5\n" + row, "1:9: items is a whole number from 1 to 100, not 2.5"},
		{"forms = 7\n" + row, "1:9: forms is a whole number from 1 to 6, not 7"},
		{"forms = 0\n" + row, "1:9: forms is a whole number from 1 to 6, not 0"},
		{"share_right = 100\n" + row, "1:15: share_right is a whole number from 1 to 99, not 100"},
		{"rest = -1\n" + row, "1:8: rest is a whole number from 0 to 520, not -1"},
		{"minutes = 0\n" + row, "1:11: minutes is a whole number from 1 to 600, not 0"},
		{"shared = 3\n" + row, "1:10: shared is a whole number from 0 to 2, not 3"},
		{"title = 5\n" + row, "1:9: title is a text in quotes, not 5"},
		{"[[row]]\ncount = 2", "1:3: the row has no skill"},
		{"[[row]]\nskill = \"\"\ncount = 2", "2:9: the skill is empty"},
		{"[[row]]\nskill = \"add-two-digit\"", "1:3: the row has no count"},
		{"[[row]]\nskill = \"add-two-digit\"\ncount = 2\nlooks = [\"bond\"]\nvary = true", "5:8: vary takes the layouts of the row by turns"},
		{"[[row]]\nskill = \"add-two-digit\"\ncount = 2\nvary = 1", "4:8: vary is true or false, not 1"},
		{"[[row]]\nskill = \"add-two-digit\"\ncount = 0", "3:9: count is a whole number from 1 to 100, not 0"},
		{"[[row]]\nskill = \"add-two-digit\"\ncount = 60\n" + "[[row]]\nskill = \"add-ones\"\ncount = 60", "the rows ask for 120 items in a form; 100 are the most"},
		{row + "where = [\"regroups >= 1\", \"regrups = 2\"]", `4:27: no trait "regrups"; did you mean "regroups"?`},
		{row + "where = [\"regroups >= many\"]", "4:10: regroups is a whole number"},
		{row + "where = [\"regroups ~ 1\"]", "is not a condition"},
		{row + "where = [\"clock_step = houre\"]", `did you mean "hour"?`},
		{row + "where = [5]", "4:10: where is a text in quotes, not 5"},
		{row + "where = 5", "4:9: where is a list of texts in brackets, not 5"},
		{row + "looks = [\"colum\"]", `4:10: no layout "colum"; did you mean "column"?`},
		{"[[row]]\nskill = \"clock\"\ncount = 2", `2:9: no skill "clock"; did you mean "clock-hour"?`},
		{row + "layouts = [\"colum\"]", `4:12: no layout "colum"; did you mean "column"?`},
		{row + "layouts = [\"bond\"]\nlooks = [\"bond\"]", "5:1: layouts and looks are the same"},
		{row + "looks = [\"clock-face\"]", "4:10: add-two-digit items aren't shown as clock-face"},
		{row + "[bands]\nwarmup = [0, 1]", `5:1: no band "warmup"; did you mean "warm-up"?`},
		{row + "[bands]\ncore = [2, 1]", "5:8: at least 2 can't be more than at most 1"},
		{row + "[bands]\ncore = [3, 3]", "5:9: core is a whole number from 0 to 2, not 3"},
		{row + "[bands]\ncore = [0, 1, 2]", "5:8: core needs two numbers"},
		{row + "[[quota]]\ncount = 1", "4:3: the quota has no where"},
		{row + "[[quota]]\nwhere = [\"doubles = true\"]", "4:3: count is missing"},
		{row + "[[quota]]\nwhere = [\"doubles = yes\"]\ncount = 1", "5:10: doubles is true or false"},
	} {
		_, err := plan.Parse([]byte(c.text), "p.toml")
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got\n%v\nwant something with\n%s", c.text, err, c.want)
		}
	}
}

func TestAllMistakesAreToldTogether(t *testing.T) {
	text := "forms = 9\n[[row]]\nskill = \"clock-our\"\ncount = 0\nlook = 1\n[bands]\nwarm = 1\n"
	_, err := plan.Parse([]byte(text), "p.toml")
	var all *plan.MistakesError
	if !errors.As(err, &all) {
		t.Fatal(err)
	}
	var lines []int
	for _, m := range all.Mistakes {
		lines = append(lines, m.Line)
	}
	want := []int{1, 3, 4, 5, 7}
	if len(lines) != len(want) {
		t.Fatalf("mistakes in lines %v, want %v:\n%v", lines, want, err)
	}
	for i := range want {
		if lines[i] != want[i] {
			t.Fatalf("mistakes in lines %v, want %v:\n%v", lines, want, err)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(plan.Example()))
	f.Add([]byte("row = [{skill = 'clock-hour', count = 1}]"))
	f.Add([]byte("bands.core = [1,\n 2]\r\n[row.x]\ny.z=1"))
	f.Add([]byte("[[row]]\nskil = 1\nwhere = [[\"a\"], {b = 2}]\n[[quota]]\n[[quota.x]]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		p, err := plan.Parse(text, "p.toml")
		var mistakes *plan.MistakesError
		switch {
		case errors.As(err, &mistakes):
			for _, m := range mistakes.Mistakes {
				if m.Line < 1 || m.Line > bytes.Count(text, []byte("\n"))+1 || m.Column < 1 || m.Message == nil {
					t.Fatalf("mistake %+v", m)
				}
			}
		case err != nil:
			t.Fatalf("an error without a place: %v", err)
		case p.Size() < 1 || p.Size() > 100 || p.Forms < 1 || p.Forms > 6 || p.Shared > p.Size():
			t.Fatalf("accepted %+v", p)
		default:
			for _, r := range p.Rows {
				if _, ok := standards.Catalogue().Skill(r.Skill); !ok || r.Count < 1 {
					t.Fatalf("accepted row %+v", r)
				}
			}
		}
	})
}

func mustPlan(t *testing.T, text string) plan.Plan {
	t.Helper()
	plan, err := plan.Parse([]byte(text), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	return plan
}
