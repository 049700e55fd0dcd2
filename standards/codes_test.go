package standards_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

func TestThe69Standards(t *testing.T) {
	// Common Core State Standards for Mathematics (2010): 22, 21 and 26 standards in
	// kindergarten, grade 1 and grade 2, by cluster.
	clusters := "K.CC.A 1-3 K.CC.B 4-5 K.CC.C 6-7 K.OA.A 1-5 K.NBT.A 1-1 K.MD.A 1-2 K.MD.B 3-3 K.G.A 1-3 K.G.B 4-6 " +
		"1.OA.A 1-2 1.OA.B 3-4 1.OA.C 5-6 1.OA.D 7-8 1.NBT.A 1-1 1.NBT.B 2-3 1.NBT.C 4-6 1.MD.A 1-2 1.MD.B 3-3 1.MD.C 4-4 1.G.A 1-3 " +
		"2.OA.A 1-1 2.OA.B 2-2 2.OA.C 3-4 2.NBT.A 1-4 2.NBT.B 5-9 2.MD.A 1-4 2.MD.B 5-6 2.MD.C 7-8 2.MD.D 9-10 2.G.A 1-3"
	fields := strings.Fields(clusters)
	var want []task.Code
	for i := 0; i < len(fields); i += 2 {
		var low, high int
		if _, err := fmt.Sscanf(fields[i+1], "%d-%d", &low, &high); err != nil {
			t.Fatal(err)
		}
		for n := low; n <= high; n++ {
			want = append(want, task.Code(fmt.Sprintf("%s.%d", fields[i], n)))
		}
	}
	if got := standards.AllCodes(); !slices.Equal(got, want) {
		t.Errorf("codes are %v, want %v", got, want)
	}
	grades := map[string]int{}
	for _, c := range standards.AllCodes() {
		grades[string(c)[:1]]++
		if standards.Topic(c) == "" {
			t.Errorf("%s has no topic", c)
		}
		// The identifiers of the standards' own site begin so.
		for _, text := range []string{
			string(c), c.Short(), strings.ToLower(c.Short()),
			"CCSS.MATH.CONTENT." + string(c), "CCSS.Math.Content." + string(c), "CCSS." + c.Short(),
		} {
			if got, err := standards.ParseCode(text); err != nil || got != c {
				t.Errorf("ParseCode(%q) = %v, %v", text, got, err)
			}
		}
	}
	if grades["K"] != 22 || grades["1"] != 21 || grades["2"] != 26 {
		t.Errorf("by grade %v, want 22, 21, 26", grades)
	}
	if _, err := standards.ParseCode("2.NBT.11"); err == nil {
		t.Error("2.NBT.11 was accepted")
	}
}

func TestClassifier(t *testing.T) {
	// The limits in Common Core State Standards for Mathematics (2010); the codes in short.
	for text, want := range map[string]string{
		"7 + 8": "1.OA.6", "27 + 30": "1.NBT.4", "27 + 5": "1.NBT.4", "27 + 35": "2.NBT.5", "80 - 30": "1.NBT.6", "81 - 38": "2.NBT.5",
		"95 + 5": "1.NBT.4", "95 + 6": "2.NBT.7", "20 + 15 + 36 + 12": "2.NBT.6", "read 4:00": "1.MD.3", "read 4:30": "1.MD.3", "read 4:35": "2.MD.7",
		"3 + 2": "K.OA.5", "6 + 3": "K.OA.2", "6 + ? = 10": "K.OA.4", "10 + 4": "K.NBT.1", "4 + 9 + 6": "1.OA.3", "8 + ? = 11": "1.OA.8", "5 = ? - 3": "1.OA.8",
		"63 + 45": "2.NBT.7", "402 - 178": "2.NBT.7", "117, 118, ?, 120": "1.NBT.1", "47 = ? tens ? ones": "1.NBT.2", "47 ? 74": "1.NBT.3", "4 ? 7": "K.CC.7",
		"10 more than 47": "1.NBT.5", "100 more than 340": "2.NBT.8", "142 = ? hundreds ? tens ? ones": "2.NBT.1",
		"35, 40, ?, 50": "2.NBT.2", "142 = ? + ? + ?": "2.NBT.3", "347 ? 374": "2.NBT.4",
	} {
		codes := task.MustParse(text).Codes()
		if len(codes) == 0 || codes[0].Short() != want {
			t.Errorf("%s: %v, want %s first", text, codes, want)
		}
	}
	for _, text := range []string{"read 4:37", "742 + 638", "2000 - 475"} {
		if codes := task.MustParse(text).Codes(); len(codes) != 0 {
			t.Errorf("%s: %v, want none in K-2", text, codes)
		}
	}
}

func TestCatalogue(t *testing.T) {
	list := standards.Catalogue()
	if len(list) < 16 {
		t.Errorf("%d skills, want at least 16", len(list))
	}
	for _, skill := range list {
		asked, err := task.Parse(skill.Example)
		if err != nil {
			t.Errorf("%s: %v", skill.ID, err)
			continue
		}
		if got := standards.SkillOf(asked); got != skill.ID {
			t.Errorf("%s: its example %s is of skill %s", skill.ID, asked, got)
		}
		if asked.String() != skill.Example {
			t.Errorf("%s: its example is written %s", skill.ID, asked)
		}
		for _, code := range asked.Codes() {
			if skill.Grade < 3 && len(skill.Codes) == 0 || standards.Topic(code) == "" {
				t.Errorf("%s: code %s", skill.ID, code)
			}
		}
		for _, look := range asked.Looks() {
			if !slices.Contains(skill.Looks, look) {
				t.Errorf("%s: its example takes look %s, which the skill does not list", skill.ID, look)
			}
		}
	}
}

// K.NBT.A.1 (Common Core State Standards, 2010): "compose and decompose numbers from 11 to 19
// into ten ones and some further ones". So 10 + 10 is none of it.
func TestTeensAreTenAndSomeFurtherOnes(t *testing.T) {
	for a := range 21 {
		for b := range 21 - a {
			asked, err := task.Parse(fmt.Sprintf("%d + %d = ?", a, b))
			if err != nil {
				continue
			}
			teen := (a == 10 || b == 10) && a+b >= 11 && a+b <= 19
			if got := slices.Contains(asked.Codes(), "K.NBT.A.1"); got != teen {
				t.Errorf("%s: K.NBT.A.1 is %v, want %v", asked, got, teen)
			}
		}
	}
}
