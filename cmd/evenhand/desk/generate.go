package desk

import (
	"net/url"
	"strconv"
	"strings"

	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
)

// How many items the page makes at most at once, and how many of them it shows before.
const (
	mostMade    = 500
	samplesMade = 6
)

// generatePage asks which items are to be made, and shows some of them.
type generatePage struct {
	Skill, Traits string
	Count         int
	Seed          uint64
	Problem       string
	Samples       []shown
	Made          int  // so many of Count would be made
	Less          bool // there are no more like that
}

// Others is the seed of other items.
func (p generatePage) Others() uint64 { return p.Seed + 1 }

// generating reads the form.
func (v *visit) generating() (page generatePage, request generate.Request, err error) {
	wished := v.desk.pages.conditionsTyped(v.FormValue("traits"))
	page = generatePage{Skill: v.FormValue("skill"), Traits: v.said.InWords(wished), Count: 20, Seed: 1}
	if text := strings.TrimSpace(v.FormValue("count")); text != "" {
		if page.Count, err = strconv.Atoi(text); err != nil || page.Count < 1 || page.Count > mostMade {
			return page, request, v.wrong("generate.count", mostMade)
		}
	}
	if seed, err := strconv.ParseUint(v.FormValue("seed"), 10, 32); err == nil {
		page.Seed = seed
	}
	if page.Skill == "" {
		return page, request, nil
	}
	request = generate.Request{Count: page.Count, Seed: page.Seed, Spread: true}
	if request.Skill, err = standards.ParseSkill(page.Skill); err != nil {
		return page, request, err
	}
	request.Where, err = standards.ParseWhere(wished)
	return page, request, err
}

// showGenerate shows what would be made.
func showGenerate(v *visit) error {
	page, request, err := v.generating()
	if err == nil && request.Skill != "" {
		var result generate.Result
		if result, err = generate.For(v.desk.bank, request); err == nil {
			page.Made, page.Less = len(result.Tasks), result.Less
			for _, asked := range result.Tasks[:min(samplesMade, len(result.Tasks))] {
				page.Samples = append(page.Samples, v.draw(bank.NewItem(asked, "", bank.Origin{})))
			}
			if page.Made == 0 {
				page.Problem = v.said.say("generate.allhere", result.Possible)
			}
		}
	}
	if err != nil {
		page.Problem = v.said.Tell(err)
	}
	return v.show("generate", page)
}

// makeItems makes them and shows the bank's items of the skill.
func makeItems(v *visit) error {
	_, request, err := v.generating()
	if err != nil {
		return asTyped(err)
	}
	if request.Skill == "" {
		return v.wrong("generate.noskill")
	}
	if _, err := generate.Into(v.desk.bank, request, bank.Ready, v.by(), v.now()); err != nil {
		return asTyped(err)
	}
	return v.to("/items?skill=" + url.QueryEscape(string(request.Skill)))
}
