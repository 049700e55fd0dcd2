package standards

import "math"

// abilitySD is the spread of pupils of one grade on the scale of difficulties, in logits
// (common practice, no source).
const abilitySD = 1.2

// growth is how much pupils gain in mathematics in a year, in standard deviations of their
// grade, from the end of one grade to that of the next: K to 1, 1 to 2, 2 to 3 (Hill, Bloom,
// Black & Lipsey 2008, Empirical benchmarks for interpreting effect sizes in research, Child
// Development Perspectives 2(3), table 1; the figures from memory).
var growth = []float64{1.14, 1.03, 0.89}

// Level is the ability of a usual class of a grade, in thousandths of a logit on the one scale
// from kindergarten (grade 0, level 0) to beyond grade 2 (grade 3 and more). It is where a quiz
// for that grade is aimed.
func Level(grade int) Difficulty {
	sum := 0.0
	for _, g := range growth[:max(0, min(grade, len(growth)))] {
		sum += g * abilitySD
	}
	return Difficulty(math.Round(1000 * sum))
}

// GradeOf is the grade of a skill: 0 is kindergarten, 3 beyond grade 2. A skill that the
// catalogue doesn't have is taken for grade 2.
func GradeOf(id SkillID) int {
	if skill, ok := catalogue.Skill(id); ok {
		return skill.Grade
	}
	return 2
}

// OnScale is the difficulty, on the one scale of Level, of an item of the skill that has the
// difficulty d for pupils of its own grade.
func OnScale(skill SkillID, d Difficulty) Difficulty { return d + Level(GradeOf(skill)) }

// For is the difficulty for pupils of ability a, on the scale of Level, of an item of the skill
// that has the difficulty d for pupils of its own grade: last year's work is easier for
// them, and next year's harder.
func (d Difficulty) For(skill SkillID, a Difficulty) Difficulty { return OnScale(skill, d) - a }
