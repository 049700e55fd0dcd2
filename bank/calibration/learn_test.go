package calibration_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/results"
	"evenhand/standards"
)

// subtractions is what 294 pupils, mostly of 8 and 9 years, did: de Chiusole & Stefanutti
// (2013), right answers of 294.
var subtractions = []struct {
	task  string
	right int
}{
	{"73 - 58", 265}, {"317 - 94", 244}, {"784 - 693", 242}, {"156 - 68", 242},
	{"2245 - 418", 234}, {"253 - 178", 223}, {"3642 - 753", 225}, {"507 - 49", 167},
}

// papersOf are 294 papers with the published counts. Who got what is not published, so it
// is drawn by lot here.
func papersOf(quiz results.Quiz) (papers []results.Paper) {
	var order [][]int
	for i := range subtractions {
		order = append(order, rand.New(rand.NewPCG(1, uint64(i))).Perm(294))
	}
	for p := range 294 {
		paper := results.Paper{Quiz: quiz.ID, Pupil: fmt.Sprintf("P%03d", p+1), Form: "A"}
		for i, s := range subtractions {
			state := results.Wrong
			if order[i][p] < s.right {
				state = results.Right
			}
			paper.Answers = append(paper.Answers, results.Answer{State: state})
		}
		papers = append(papers, paper)
	}
	return papers
}

func TestLearnOrdersItemsAsPupilsDid(t *testing.T) {
	var tasks []string
	for _, s := range subtractions {
		tasks = append(tasks, s.task+" = ?")
	}
	quiz := quizOf("2026-W48", tasks, []string{"81 - 38 = ?"})
	learnt, err := calibration.Learn([]results.Quiz{quiz}, papersOf(quiz), nil)
	if err != nil {
		t.Fatal(err)
	}
	if learnt.Papers != 294 || learnt.Answers != 8*294 || len(learnt.Items) != 8 {
		t.Fatalf("%d papers, %d answers, %d items", learnt.Papers, learnt.Answers, len(learnt.Items))
	}
	for i, a := range subtractions {
		for j, b := range subtractions {
			// A gap of two right answers is within what the model rounds off by traits.
			if a.right > b.right+2 && onScale(learnt.Items[i]) >= onScale(learnt.Items[j]) {
				t.Errorf("%s (%d right) measures %s, %s (%d right) %s", a.task, a.right, onScale(learnt.Items[i]), b.task, b.right, onScale(learnt.Items[j]))
			}
		}
	}
	for _, item := range learnt.Items[:8] {
		if item.Answers != 294 || item.StandardError <= 0 || item.StandardError > 600 {
			t.Errorf("%s: %d answers, standard error %s", item.Asks, item.Answers, item.StandardError)
		}
	}
	at := slices.IndexFunc(learnt.Weights, func(w calibration.Weight) bool { return w.Name == "zero_crossed" })
	if at < 0 || learnt.Weights[at].Learnt.Value <= 0 {
		t.Errorf("crossing a zero should make it harder: %+v", learnt.Weights)
	}
}

// With few papers a difficulty stays near what its traits say; the same papers give the
// same numbers; absent and not reached count for nothing.
func TestLearnFromLittle(t *testing.T) {
	quiz := two()
	paper := results.Paper{Quiz: quiz.ID, Pupil: "P01", Form: "A", Answers: []results.Answer{{State: results.Wrong}, {State: results.Absent}}}
	nothing := results.Paper{Quiz: quiz.ID, Pupil: "P02", Form: "A", Answers: []results.Answer{{State: results.NotReached}, {State: results.Absent}}}
	learnt, err := calibration.Learn([]results.Quiz{quiz}, []results.Paper{paper, nothing}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if learnt.Papers != 1 || learnt.Answers != 1 || len(learnt.Items) != 1 || learnt.Items[0].Answers != 1 {
		t.Errorf("one answer counts, but got %+v", learnt)
	}
	item := quiz.Forms[0].Items[0]
	if d := learnt.Items[0].Difficulty - item.Difficulty; d <= 0 || d > 500 {
		t.Errorf("one wrong answer moves %s by %s", item.Asks, d)
	}
	if _, err := calibration.Learn([]results.Quiz{quiz}, []results.Paper{nothing}, nil); err != results.ErrNone {
		t.Errorf("without an answer: %v", err)
	}
}

func onScale(it calibration.Item) standards.Difficulty {
	return standards.OnScale(it.Skill, it.Difficulty)
}

// Items by hand that are as difficult as the table supposes teach it nothing new: neither the level of
// their skill nor a trait, as those count with what is usual for the skill.
func TestItemsByHandTeachTheLevelOfTheirSkill(t *testing.T) {
	const skill, pupils = standards.SkillID("stories-within-100"), 200
	usual := standards.Predict(skill, standards.Usual(skill))
	form := results.Form{Name: "A"}
	for k := range 10 {
		form.Items = append(form.Items, results.Item{
			ID: fmt.Sprint(k), Skill: skill, Asks: fmt.Sprintf("Solve story %c", 'A'+k), Key: "41", Difficulty: usual,
		})
	}
	quiz := results.NewQuiz("Friday check", "2026-W48", []results.Form{form})
	rng := rand.New(rand.NewPCG(48, 2))
	var papers []results.Paper
	for p := range pupils {
		paper := results.Paper{Quiz: quiz.ID, Class: "2A", Pupil: fmt.Sprintf("P%03d", p+1), Form: "A"}
		ability := 1.2 * rng.NormFloat64()
		for range form.Items {
			state := results.Wrong
			if rng.Float64() < 1/(1+math.Exp(usual.Logits()-ability)) {
				state = results.Right
			}
			paper.Answers = append(paper.Answers, results.Answer{State: state})
		}
		papers = append(papers, paper)
	}
	learnt, err := calibration.Learn([]results.Quiz{quiz}, papers, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range append(learnt.Levels, learnt.Weights...) {
		if math.Abs(w.Learnt.Value-w.Default) > 0.15 {
			t.Errorf("%s is learnt as %.3f, supposed %.3f", w.Name, w.Learnt.Value, w.Default)
		}
	}
	hand := bank.NewHandItem("Solve story Z", "41", skill, "en", bank.Origin{})
	if now := learnt.Table(bank.Table{}, "MK", friday).PredictItem(hand); math.Abs((now - usual).Logits()) > 0.3 {
		t.Errorf("another one is predicted %v, want about %v", now, usual)
	}
	stands := learnt.Classes[0]
	if math.Abs(stands.Level.Value-stands.Usual) > 0.3 {
		t.Errorf("a usual class is found at %.3f, usual is %.3f", stands.Level.Value, stands.Usual)
	}
}
