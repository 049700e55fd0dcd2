package assemble

import "evenhand/standards"

// Saying is a rule or a way out in its parts, for who says it in another language.
type Saying struct {
	Sentence SayingKind
	Row      int    // of the plan, from 0
	Quota    Quota  // whom a quota or a number that is the same in all forms counts
	Count    int    // what the rule asks for, or the way from which it leads
	To       int    // what the number becomes
	Offer    int    // how many items the bank has for it
	Resting  int    // how many more were used too lately
	Forms    int    // of the quiz
	Place    string // of an item, such as A3
	Time     string // minutes and seconds
	Grade    string // for whose pupils the plan stays
}

// Quota is what a quota counts: a band, items of some traits, or items of a skill with one answer.
type Quota struct {
	Band  standards.Band
	Where standards.Where
	Skill standards.SkillID
	Key   string
}

// SayingKind is which sentence a saying is.
type SayingKind string

// The sentences: rules that can't be kept together, and ways out.
const (
	RuleRow     SayingKind = "rule.row"
	RuleLeast   SayingKind = "rule.least"
	RuleMost    SayingKind = "rule.most"
	RuleAnswers SayingKind = "rule.answers"
	RuleSame    SayingKind = "rule.same"
	RuleMinutes SayingKind = "rule.minutes"
	RuleClash   SayingKind = "rule.clash"
	RuleOnce    SayingKind = "rule.once"
	RuleShared  SayingKind = "rule.shared"
	RuleKept    SayingKind = "rule.kept"
	RuleRest    SayingKind = "rule.rest"

	WayOut     SayingKind = "way.out"
	WayOutFor  SayingKind = "way.outfor"
	WayRow     SayingKind = "way.row"
	WayLeast   SayingKind = "way.least"
	WayMost    SayingKind = "way.most"
	WayMinutes SayingKind = "way.minutes"
	WayOnce    SayingKind = "way.once"
	WaySame    SayingKind = "way.same"
	WayShared  SayingKind = "way.shared"
	WayKept    SayingKind = "way.kept"
	WayRest    SayingKind = "way.rest"
)

// SayingKinds lists all sentences.
func SayingKinds() []SayingKind {
	return []SayingKind{
		RuleRow, RuleLeast, RuleMost, RuleAnswers, RuleSame, RuleMinutes, RuleClash, RuleOnce, RuleShared, RuleKept, RuleRest,
		WayOut, WayOutFor, WayRow, WayLeast, WayMost, WayMinutes, WayOnce, WaySame, WayShared, WayKept, WayRest,
	}
}

// quota is what a quota of the model counts.
func (p *problem) quota(index int) Quota {
	bands, quotas := len(p.plan.Bands), len(p.plan.Quotas)
	switch {
	case index < bands:
		return Quota{Band: p.plan.Bands[index].Band}
	case index < bands+quotas:
		return Quota{Where: p.plan.Quotas[index-bands].Where}
	}
	a := p.answers[index-bands-quotas]
	return Quota{Skill: a.skill, Key: a.key}
}

// sameQuota is what a number counts that is the same in all forms.
func (p *problem) sameQuota(index int) Quota {
	return Quota{Where: standards.Where{p.plan.Same[index]}}
}
