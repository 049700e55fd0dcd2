package intake_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank"
	intake "evenhand/import"
	"evenhand/standards/words"
)

// asItems shows items as "47 + 36 = ? → 83", one a line, drafts marked.
func asItems(all []bank.Item) string {
	var lines []string
	for _, it := range all {
		line := it.Question("en") + " → " + it.Key
		if it.Wording["es"] != "" && it.Wording["en"] == "" {
			line = it.Wording["es"] + " → " + it.Key
		}
		if it.Standing == bank.Draft {
			line += " (draft)"
		}
		lines = append(lines, strings.ReplaceAll(line, "\n", " | "))
	}
	return strings.Join(lines, "\n")
}

// Lists as colleagues send them, each with what must come of it. The lists are made up
// for these tests; which answer is right follows from their own numbers.
func TestListsOfManyKinds(t *testing.T) {
	for _, c := range []struct{ name, text, items, problems, asked string }{
		{
			name: "choices in columns, a letter for the key",
			text: "Question,A,B,C,D,Correct\n7 + 8,13,14,15,16,C\nWhich is bigger?,47,74,40,70,B\n5 + 4,8,9,10,11,A\n",
			items: "7 + 8 = ? → 15\n" +
				"Which is bigger? | A) 47 | B) 74 | C) 40 | D) 70 → B (draft)",
			problems: "line 4, answer: 5 + 4 is 9, the list says A, which is 8",
		},
		{
			name:     "choices in columns, a number for the key, even where it equals the result",
			text:     "Q,Choice 1,Choice 2,Choice 3,Key\n5 - 3,2,3,1,2\n6 - 3,2,3,1,2\n7 - 3,2,3,4,3\n9 - 3,6,3,4,1\n",
			items:    "6 - 3 = ? → 3\n7 - 3 = ? → 4\n9 - 3 = ? → 6",
			problems: "line 2, answer: 5 - 3 is 2, the list says 2, which is 3",
		},
		{
			name:     "a number that may be a choice or point to one",
			text:     "Question,A,B,C,Answer\nHow many corners has a triangle?,2,3,4,3\n",
			problems: "line 2, answer: 3 may be choice number 3, which is 4, or the answer 3 itself; write the choice's letter, C or B",
		},
		{
			name: "a key that is none of the choices",
			text: "Question,Choice 1,Choice 2,Choice 3,Correct\nWhich is round?,ball,box,book,cup\n" +
				"Which is flat?,ball,box,page,page\nWhich is red?,sky,grass,rose,C\n",
			items:    "Which is flat? | A) ball | B) box | C) page → page (draft)\nWhich is red? | A) sky | B) grass | C) rose → C (draft)",
			problems: "line 2, answer: cup is none of the choices, ball, box, book; write the letter of the right one",
		},
		{
			name:     "a story cut at its comma",
			text:     "Question,Answer\nMia has 3 shells, and finds 7 more. How many now?,10\n52 - 18,34,checked\n",
			items:    "52 - 18 = ? → 34",
			problems: "line 2: this row has 3 cells, the list has 2 columns; put quotation marks around a cell with commas in it",
		},
		{
			name:  "line ends of two systems in one file",
			text:  "Question,Answer\r\n47 + 36,83\n52 - 18,34\r12 + 5,17\n\"What is\r9 - 4?\",5\n",
			items: "47 + 36 = ? → 83\n52 - 18 = ? → 34\n12 + 5 = ? → 17\n9 - 4 = ? → 5",
		},
		{
			name:     "numbers as a spreadsheet shortens them",
			text:     "Question,Answer\n47 + 36,8.3E+01\n500 + 500,\"1,0E+03\"\n52 - 18,3.5E+01\n",
			items:    "47 + 36 = ? → 83\n500 + 500 = ? → 1000",
			problems: "line 4, answer: 52 - 18 is 34, the list says 3.5E+01",
		},
		{
			name:  "choices in one cell",
			text:  "Question,Answer choices,Correct choice\n7 + 4,A) 11 B) 12 C) 13,A\nWhich has 3 sides?,A) square B) triangle,B)\n",
			items: "7 + 4 = ? → 11\nWhich has 3 sides? | A) square | B) triangle → B (draft)",
		},
		{
			name:     "wrong answers and pupils' answers are no keys",
			text:     "Question,Common wrong answers,Student's answer\n5 + 7,11,10\nHow many legs has a dog?,3,5\n",
			items:    "5 + 7 = ? → 12",
			problems: `line 3, answer: there is no answer, and it can't be worked out from "How many legs has a dog?"; write one`,
		},
		{
			name: "a story in a column of its own",
			text: "Problem,Question,Answer\n" +
				"Mia has 5 shells and then finds 7 more.,How many shells does she have?,12\n" +
				"Ana has 4 shells and then finds 3 more.,How many shells does she have?,7.0\n",
			items: "Mia has 5 shells and then finds 7 more. How many shells does she have? → 12 (draft)\n" +
				"Ana has 4 shells and then finds 3 more. How many shells does she have? → 7 (draft)",
		},
		{
			name:     "several items a row",
			text:     "Question 1,Answer 1,Skill,Question 2,Answer 2\n47 + 36,83,x,5 + 3,8\n27 + 35,62,x,6 + 3,10\n1 + 1,2,x,,\n",
			items:    "47 + 36 = ? → 83\n5 + 3 = ? → 8\n27 + 35 = ? → 62\n1 + 1 = ? → 2",
			problems: "line 3, answer: 6 + 3 is 9, the list says 10",
		},
		{
			name:  "two tables side by side without headings, answers first",
			text:  "83,47 + 36,,8,5 + 3\n62,27 + 35,,9,6 + 3\n",
			items: "47 + 36 = ? → 83\n5 + 3 = ? → 8\n27 + 35 = ? → 62\n6 + 3 = ? → 9",
		},
		{
			name:  "a second column of questions without its answers is asked about",
			text:  "Question,Answer,Question\n47 + 36,83,5 + 3\n27 + 35,62,6 + 3\n",
			items: "47 + 36 = ? → 83\n27 + 35 = ? → 62",
			asked: `column C "Question" was left out, and it could hold questions`,
		},
		{
			name:  "long texts that nobody named are asked about",
			text:  "Question,Answer,For Friday\n47 + 36,83,Mia has 47 shells and finds 36 more on the beach\n27 + 35,62,Ben reads 27 pages and then he reads 35 more\n",
			items: "47 + 36 = ? → 83\n27 + 35 = ? → 62",
			asked: `column C "For Friday" was left out, and it could hold stories, choices or notes`,
		},
		{
			name:  "headings in Italian",
			text:  "Domanda;Risposta\nQuante gambe ha un cane?;4\n",
			items: "Quante gambe ha un cane? → 4 (draft)",
		},
		{
			name:  "headings in Norwegian with words for answers",
			text:  "Spørsmål;Svar\nHvilken form har tre hjørner?;trekant\n",
			items: "Hvilken form har tre hjørner? → trekant (draft)",
		},
		{
			name:  "headings in no language known here",
			text:  "Ceist,Freagra\nCé mhéad cos atá ar mhadra?,4\nCé mhéad cos atá ar éan?,2\n",
			items: "Cé mhéad cos atá ar mhadra? → 4 (draft)\nCé mhéad cos atá ar éan? → 2 (draft)",
		},
		{
			name:  "headings in sentences",
			text:  "What to ask,What they should say\n47 + 36,83\n27 + 35,62\n5 + 3,8\n",
			items: "47 + 36 = ? → 83\n27 + 35 = ? → 62\n5 + 3 = ? → 8",
			asked: "line 1 was taken for the headings",
		},
		{
			name:  "headings in sentences over one task",
			text:  "What they see,Should come out\n47 + 36,83\n",
			items: "47 + 36 = ? → 83",
			asked: "line 1 was taken for the headings",
		},
		{
			name:  "Spanish headings in sentences over two tasks",
			text:  "Lo que ven los niños,Lo que deben poner\n47 + 36,83\n27 + 35,62\n",
			items: "47 + 36 = ? → 83\n27 + 35 = ? → 62",
			asked: "line 1 was taken for the headings",
		},
		{
			name:  "a question in words over a task and another question",
			text:  "Name a shape with three sides,triangle\nName a shape with no corners,circle\n47 + 36,83\n",
			items: "Name a shape with three sides → triangle (draft)\nName a shape with no corners → circle (draft)\n47 + 36 = ? → 83",
		},
		{
			name:  "two lists, one under the other",
			text:  "Task,Answer,Skill\n47 + 36,83,adding\nQuestion,Key,Topic\n27 + 35,62,adding\n",
			items: "47 + 36 = ? → 83\n27 + 35 = ? → 62",
		},
		{
			name:  "two lists, the second with its columns the other way round",
			text:  "Question,Answer\n47 + 36,83\nAnswer,Question\n62,27 + 35\n",
			items: "47 + 36 = ? → 83",
			problems: "line 4: line 3 begins another list, with its columns in other places; save that part as " +
				"a list of its own, or put its cells in the order of the first",
		},
		{
			name:  "addresses are no questions",
			text:  "name,address,zip\nJo,12 Main St,02139\nAl,14 High Rd,02140\n",
			items: "12 Main St → 02139 (draft)\n14 High Rd → 02140 (draft)",
			asked: "taken for the questions only as its texts are the longest",
		},
		{
			name:  "one numbered item a line, some with their answers",
			text:  "1. 47 + 36 = ___\n2) 5 + 3 = ___\n3. What is 6 + 3? Answer: 9\n4. Mia has 3 red and 4 blue cups. How many cups? (Answer: 7)\n",
			items: "47 + 36 = ? → 83\n5 + 3 = ? → 8\n6 + 3 = ? → 9\nMia has 3 red and 4 blue cups. How many cups? → 7 (draft)",
		},
		{
			name:  "typographic quotation marks round the cells",
			text:  "“Question”,“Answer”\n“47 + 36”,“83”\n„Wie viele Beine hat ein Hund?”,4\n",
			items: "47 + 36 = ? → 83\nWie viele Beine hat ein Hund? → 4 (draft)",
		},
		{
			name: "dates that are answers, and dates that spreadsheets made",
			text: "Question,Answer\nWhich day comes after May 4?,May 5\nWhen do we have no school?,4 July\n" +
				"What is 10 more than 44990?,45000\nHow many?,45000\nHow many eighths?,3-Aug\n",
			items: "Which day comes after May 4? → May 5 (draft)\nWhen do we have no school? → 4 July (draft)\n" +
				"What is 10 more than 44990? → 45000 (draft)",
			problems: "line 5, answer: 45000 is the date 2023-03-15 as a spreadsheet keeps it, which a " +
				"spreadsheet may have made of 3-15, 15-3 or 3/15; write what was meant\n" +
				"line 6, answer: 3-Aug is a date that a spreadsheet has made; write what was meant",
		},
		{
			name:  "a total and a grade column in German",
			text:  "Aufgabe;Richtige Antwort;Klasse\n47 + 36;83;2\nSumme;1;\n",
			items: "47 + 36 = ? → 83",
		},
	} {
		b := newBank(t)
		l := mustOpen(t, c.text)
		r := mustImport(t, b, l, intake.ImportOptions{})
		checkLines(t, l, c.text)
		checkOutcomes(t, r)
		if got := asItems(items(t, b, r)); got != c.items {
			t.Errorf("%s: items\n%s\nwant\n%s", c.name, got, c.items)
		}
		if got := problems(r); got != c.problems {
			t.Errorf("%s: problems\n%s\nwant\n%s", c.name, got, c.problems)
		}
		if got := words.Joined(l.Asked, "%s\n%s").String(); c.asked == "" && got != "" || !strings.Contains(got, c.asked) {
			t.Errorf("%s: asked\n%s\nwant\n%s", c.name, got, c.asked)
		}
	}
}

// What a person says of a column ends the question about it.
func TestUnusedColumnsAreNotAskedAbout(t *testing.T) {
	text := []byte("Question,Answer,Question\n47 + 36,83,5 + 3\n27 + 35,62,6 + 3\n")
	l, err := intake.Open("list.csv", text, intake.Options{Unused: []string{"C"}})
	if err != nil || len(l.Asked) != 0 {
		t.Errorf("asked %v, %v", l.Asked, err)
	}
	if _, err := intake.Open("list.csv", text, intake.Options{Unused: []string{"Z"}}); err == nil {
		t.Error("a column Z was found")
	}
}

// Whole sentences: the answer says which number is asked for, else the person does.
func TestWholeSentences(t *testing.T) {
	const text = "question,answer\n47 + 36 = 83,\n83 = 47 + 36,\n12 - 5 = 7,5\n5 + 3 = 9,\n"
	for _, c := range []struct {
		leaveOut intake.LeaveOut
		items    string
		whole    int
	}{
		{"", "12 - ? = 7 → 5", 2},
		{intake.LeaveOutResult, "47 + 36 = ? → 83\n47 + 36 = ? → 83\n12 - ? = 7 → 5", 0},
		{intake.LeaveOutFirst, "? + 36 = 83 → 47\n? + 36 = 83 → 47\n12 - ? = 7 → 5", 0},
		{intake.LeaveOutSecond, "47 + ? = 83 → 36\n47 + ? = 83 → 36\n12 - ? = 7 → 5", 0},
	} {
		b := newBank(t)
		r := mustImport(t, b, mustOpen(t, text), intake.ImportOptions{LeaveOut: c.leaveOut})
		if got := asItems(items(t, b, r)); got != c.items || r.Whole() != c.whole {
			t.Errorf("%q: %d whole sentences left, items\n%s\nwant %d\n%s", c.leaveOut, r.Whole(), got, c.whole, c.items)
		}
	}
}

// For any sum: its result is right however its thousands and its needless decimals are
// written, and never right with a mark where no thousands begin.
func TestNumbersAsPeopleWriteThem(t *testing.T) {
	l := func(question, answer string) *intake.List {
		return mustOpen(t, fmt.Sprintf("question;answer\n%s;%s\n1 + 1;2\n", question, answer))
	}
	b := newBank(t)
	rapid.Check(t, func(rt *rapid.T) {
		x, y := rapid.IntRange(0, 999).Draw(rt, "x"), rapid.IntRange(0, 999).Draw(rt, "y")
		question, sum := fmt.Sprintf("%d + %d", x, y), fmt.Sprint(x+y)
		mark := rapid.SampledFrom([]string{",", ".", " ", "'", "\u00a0"}).Draw(rt, "mark")
		right := rapid.SampledFrom([]string{"%s", "%s.0", "%s,00", "=%s", "%s "}).Draw(rt, "right")
		if len(sum) > 3 {
			sum = sum[:1] + mark + sum[1:]
		}
		if r := mustImport(t, b, l(question, fmt.Sprintf(right, sum)), intake.ImportOptions{DryRun: true}); r.Count(intake.SetAside) != 0 {
			rt.Fatal(problems(r))
		}
		if x+y < 10 {
			return
		}
		whole := fmt.Sprint(x + y)
		at := rapid.IntRange(1, len(whole)-1).Draw(rt, "at")
		if at == len(whole)-3 || strings.Trim(whole[at:], "0") == "" {
			return // that is where thousands begin, or 8,0 for 80
		}
		wrong := whole[:at] + rapid.SampledFrom([]string{",", "."}).Draw(rt, "wrong mark") + whole[at:]
		if r := mustImport(t, b, l(question, wrong), intake.ImportOptions{DryRun: true}); r.Count(intake.SetAside) != 1 {
			rt.Fatalf("%s = %s was taken", question, wrong)
		}
	})
}

// A number is never taken for a smaller one: 1,000 and 1.000 are a thousand, not one.
func TestThousandsAreNotOnes(t *testing.T) {
	_, r := importText(t, "question;answer\n10 - 9;1,000\n2 - 1;1.000\n999 + 1;1,000\n")
	want := "line 2, answer: 10 - 9 is 1, the list says 1,000\nline 3, answer: 2 - 1 is 1, the list says 1.000"
	if problems(r) != want {
		t.Errorf("got\n%s\nwant\n%s", problems(r), want)
	}
}

// A question that compares two numbers or rounds one isn't asked whether it adds them.
func TestOtherQuestionsAboutTwoNumbers(t *testing.T) {
	_, r := importText(t, "question,answer\nWhich number is bigger: 45 or 54?,54\nWhat number is between 45 and 47?,46\n"+
		"Round the number 47 to the nearest 10,50\n¿Qué número está entre 8 y 10?,9\n")
	if len(r.Notes) > 0 || r.Count(intake.Added) != 4 {
		t.Errorf("%s, notes %v", r.Summary(), r.Notes)
	}
}

// A story whose two numbers give its answer gets a skill by its largest number and waits
// as a draft; the colleague's own word for a skill stays with the item.
func TestStoriesGetASkillProposed(t *testing.T) {
	b, r := importText(t, "question,answer,skill\n"+
		"Seven red apples and two green apples are in a bowl. How many apples?,9,TVQ-Final\n"+
		"Ben has 15 pears and eats 6 of them. How many are left?,9,\n"+
		"A hall has 40 chairs and we bring in 25 more. How many chairs now?,65,\n"+
		"A dog has 4 legs. How many legs do 3 dogs have in all?,12,\n"+
		"Which shape has three corners and three sides?,triangle,\n"+
		"Ana has 5 cards and gets 2 more cards. How many cards?,7,stories-within-20\n"+
		"Write three hundred and five in numbers,305,\n")
	var got []string
	for _, it := range items(t, b, r) {
		got = append(got, fmt.Sprintf("%s %s %q", it.Skill, it.Standing, it.Notes))
	}
	want := []string{
		`stories-within-10 draft "skill proposed from its numbers; skill: TVQ-Final"`,
		`stories-within-20 draft "skill proposed from its numbers"`,
		`stories-within-100 draft "skill proposed from its numbers"`,
		` draft ""`, ` draft ""`,
		`stories-within-20 ready ""`, ` draft ""`,
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	note := "line 5, answer: 12 is neither the sum nor the difference of 4 and 3; is it right?"
	if !strings.Contains(fmt.Sprint(r.Notes), note) || strings.Contains(fmt.Sprint(r.Notes), "305") || r.Proposed() != 3 {
		t.Errorf("%d proposed, notes %v", r.Proposed(), r.Notes)
	}
}
