package report

import (
	"slices"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Standard is how a published standard stands with the pupils, over all quizzes of the
// report.
type Standard struct {
	Code task.Code
	Part
	MostlyRight int   // pupils with at least leastSeen answers, three in four or more right
	NotYet      []Who // pupils with as many answers, fewer right
	TooEarly    int   // pupils with fewer answers
}

// Topic is what the standard is about, in a few words.
func (s Standard) Topic() string { return standards.Topic(s.Code) }

// leastSeen is how many answers it takes before anything is said of a pupil and a
// standard, and mostly the share right from which it is called mostly right: common
// practice, without a published source, and no certificate.
const (
	leastSeen = 4
	mostly    = 0.75
)

// Enough says that there are enough answers to say anything of a pupil.
func (p Part) Enough() bool { return p.Of >= leastSeen }

// MostlyRight says that the answers are enough to say so, and three in four or more of them right.
func (p Part) MostlyRight() bool {
	return p.Enough() && float64(p.Right) >= mostly*float64(p.Of)
}

func (b *book) standards() (list []Standard) {
	parts := map[task.Code]map[Who]*Part{}
	for _, p := range b.papers {
		for i, a := range p.Answers {
			if !a.Counts() {
				continue
			}
			for _, code := range p.form.Items[i].Codes {
				if parts[code] == nil {
					parts[code] = map[Who]*Part{}
				}
				if parts[code][p.who] == nil {
					parts[code][p.who] = &Part{}
				}
				parts[code][p.who].add(a.State == right)
			}
		}
	}
	for _, code := range standards.AllCodes() {
		if parts[code] != nil {
			list = append(list, standardOf(code, parts[code]))
		}
	}
	return list
}

func standardOf(code task.Code, pupils map[Who]*Part) Standard {
	s := Standard{Code: code}
	for who, p := range pupils {
		s.Right, s.Of = s.Right+p.Right, s.Of+p.Of
		switch {
		case !p.Enough():
			s.TooEarly++
		case p.MostlyRight():
			s.MostlyRight++
		default:
			s.NotYet = append(s.NotYet, who)
		}
	}
	slices.SortFunc(s.NotYet, Who.compare)
	return s
}
