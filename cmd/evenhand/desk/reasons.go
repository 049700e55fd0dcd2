package desk

import (
	"evenhand/assemble"
	"evenhand/assemble/plan"
)

// Rule is a rule of a plan that can't be kept with others, in templates.
func (s sentences) Rule(p plan.Plan, r assemble.Rule) string {
	says := r.Says
	key, each := string(says.Sentence), s.each(says.Count, says.Forms)
	switch says.Sentence {
	case assemble.RuleRow:
		text := s.say(key, s.row(p, says.Row), each, says.Offer)
		if says.Resting > 0 {
			text = s.say("why.resting", text, says.Resting)
		}
		return text
	case assemble.RuleLeast, assemble.RuleMost:
		return s.say(key, s.quota(says.Quota), each, says.Offer)
	case assemble.RuleAnswers:
		return s.say(key, s.quota(says.Quota), each)
	case assemble.RuleSame:
		return s.say(key, s.quota(says.Quota))
	case assemble.RuleMinutes:
		return s.say(key, s.count("why.minutes", says.Count), says.Time)
	case assemble.RuleOnce:
		return s.say(key, says.Forms)
	case assemble.RuleShared:
		return s.say(key, s.count("why.items", says.Count), says.Forms)
	case assemble.RuleKept:
		return s.say(key, says.Place)
	case assemble.RuleRest:
		return s.say(key, s.count("why.weeks", says.Count))
	}
	return s.say(key)
}

// WayOut is a change of a plan that lets its rules be kept, in templates.
func (s sentences) WayOut(w assemble.Way) string {
	says := w.Says
	key := string(says.Sentence)
	switch says.Sentence {
	case assemble.WayOut:
		return s.say(key, says.Row+1)
	case assemble.WayOutFor:
		return s.say(key, says.Row+1, says.Grade, says.Grade)
	case assemble.WayRow:
		return s.say(key, s.count("why.items", says.To), says.Count, says.Row+1)
	case assemble.WayLeast, assemble.WayMost:
		return s.say(key, s.quota(says.Quota), says.To, says.Count)
	case assemble.WayMinutes:
		return s.say(key, s.count("why.minutes", says.To), says.Count)
	case assemble.WayOnce:
		return s.say(key, says.To, says.Count)
	case assemble.WaySame:
		return s.say(key, s.quota(says.Quota))
	case assemble.WayShared:
		return s.say(key, s.count("why.items", says.To), says.Count)
	case assemble.WayRest:
		return s.say(key, s.count("why.weeks", says.To), says.Count)
	}
	return s.say(key, says.Place)
}

// Lacking is items to make that let rules be kept, in templates.
func (s sentences) Lacking(g assemble.Generate) string {
	return s.say("why.lacking", s.count("why.items", g.Count), s.rowName(plan.Row{Skill: g.Skill, Where: g.Where}))
}

// Better is how good a quiz is that is not known to be the best, in templates.
func (s sentences) Better(q assemble.Quiz) string {
	in, by := q.Better()
	much := any(by)
	if in != assemble.BetterUses {
		much = points(10 * by)
	}
	return s.say("better."+string(in), much) + " " + s.say("better.ranout")
}

// each is so many items in each of the forms.
func (s sentences) each(n, forms int) string {
	text := s.count("why.items", n)
	if forms > 1 {
		text = s.say("why.each", text, forms)
	}
	return text
}

// row is a row of a plan by its number and what it asks.
func (s sentences) row(p plan.Plan, i int) string {
	name := ""
	if i < len(p.Rows) {
		name = s.rowName(p.Rows[i])
	}
	return s.say("why.row", i+1, name)
}

// rowName is what a row of a plan asks, in words.
func (s sentences) rowName(row plan.Row) string {
	name := s.Skill(row.Skill)
	if len(row.Where) > 0 {
		name += ", " + s.where(row.Where)
	}
	return name
}

// quota is what a quota counts.
func (s sentences) quota(q assemble.Quota) string {
	switch {
	case q.Band != "":
		return s.say("quota.band", s.say("band."+string(q.Band)))
	case len(q.Where) > 0:
		return s.say("quota.where", s.where(q.Where))
	}
	return s.say("quota.answer", s.Skill(q.Skill), q.Key)
}
