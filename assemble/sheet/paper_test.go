package sheet_test

import (
	"bytes"
	"fmt"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"evenhand/assemble/sheet"
	"evenhand/standards/task"

	"evenhand/testdata/outside"
)

// paper is a form with the tasks, each in the look after the bar or its usual one:
// "47 + 36 = ?|column".
func paper(tasks ...string) sheet.Paper {
	p := sheet.Paper{Title: "Friday check, week 48", Form: "A", Week: "2026-W48"}
	for i, text := range tasks {
		text, look, found := strings.Cut(text, "|")
		asked := task.MustParse(text)
		q := sheet.Question{Number: i + 1, Task: asked, Look: asked.Looks()[0], Missteps: asked.Missteps()}
		if found {
			q.Look = task.Look(look)
		}
		p.Questions = append(p.Questions, q)
	}
	return p
}

func pdf(t testing.TB, p sheet.Paper, o sheet.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.WritePDF(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// printedText is what another program reads in a PDF, in reading order.
func printedText(t *testing.T, file []byte) string {
	t.Helper()
	outside.Installed(t, "reading the text of the PDF back", "pdftotext")
	cmd := exec.Command("pdftotext", "-raw", "-", "-")
	cmd.Stdin = bytes.NewReader(file)
	text, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(text)), " ")
}

func TestSameInputSameBytes(t *testing.T) {
	for _, o := range []sheet.Options{{}, {Key: true}, {PaperSize: "a4", Large: true, Lang: "es"}} {
		p := paper("47 + 36 = ?", "read 4:30", "match 4:00, 7:00, 11:00", "98, 99, ?, 101")
		if !bytes.Equal(pdf(t, p, o), pdf(t, p, o)) {
			t.Errorf("%+v: two printings differ", o)
		}
	}
}

func TestSeveralAtOnce(t *testing.T) {
	p := paper("47 + 36 = ?", "read 4:30")
	want := pdf(t, p, sheet.Options{Key: true})
	got := make([][]byte, 8)
	var all sync.WaitGroup
	for i := range got {
		all.Go(func() {
			var b bytes.Buffer
			if err := sheet.WritePDF(&b, p, sheet.Options{Key: true}); err == nil {
				got[i] = b.Bytes()
			}
		})
	}
	all.Wait()
	for i := range got {
		if !bytes.Equal(got[i], want) {
			t.Errorf("printing %d of eight at once differs", i)
		}
	}
}

func TestSheetReadsInOrder(t *testing.T) {
	got := printedText(t, pdf(t, paper("47 + 36 = ?", "83 - 47 = ?", "47 ? 74"), sheet.Options{Font: sheet.BuiltInFont}))
	want := "Name Date Friday check, week 48 Write the missing number in each box. " +
		"1 47 + 36 = 2 83 − 47 = Write <, > or = in the circle. 3 47 74 A 2026-W48 page 1 of 1"
	if got != want {
		t.Errorf("the sheet reads\n%s\nwant\n%s", got, want)
	}
}

// Source of 44 and 46: smaller from larger, and ten taken but not paid back, as in Brown
// & Burton (1978) for 81-38; here for 83-47.
func TestKeySaysWhatWrongAnswersSuggest(t *testing.T) {
	p := paper("83 - 47 = ?")
	got := printedText(t, pdf(t, p, sheet.Options{Key: true, Font: sheet.BuiltInFont}))
	wants := []string{"Friday check, week 48, form A - Answer key", "83 − 47 = 36", "1 36 What wrong answers suggest", "not a diagnosis or a placement"}
	for _, m := range p.Questions[0].Missteps {
		wants = append(wants, m.Answer+" "+m.Kinds[0].Tells)
	}
	wants = append(wants, "44 ", "46 ")
	for _, want := range wants {
		if !strings.Contains(got, want) {
			t.Errorf("the key lacks %q; it reads\n%s", want, got)
		}
	}
}

func TestSpanishSheet(t *testing.T) {
	got := printedText(t, pdf(t, paper("83 - 47 = ?", "142 = ? hundreds ? tens ? ones|sentence"), sheet.Options{Lang: "es", Font: sheet.BuiltInFont}))
	for _, want := range []string{"Nombre", "Fecha", "Escribe en cada cuadro el número que falta.", "centenas", "página 1 de 1"} {
		if !strings.Contains(got, want) {
			t.Errorf("the sheet lacks %q; it reads\n%s", want, got)
		}
	}
}

// keyTasks are of every kind that a key puts in words of its own.
var keyTasks = []string{
	"7 hundreds 3 tens 3 ones = ?", "83 - 47 = ?", "say 2:30", "read 3:30 pm", "draw 5:00", "match 12:15, 3:00", "count 13", "more: 5 or 8 dots",
	"write 34 in words", "odd or even: 14", "8 + ? = 11, 11 - 8 = ?", "story put-together both-unknown: 7 = ? + ?, apples, Lin",
}

// Times as they are said: Real Academia Española, Ortografía (2010), from memory. "las 6 y
// 10" is the hands of 2:30 swapped, "tres cuatro" the digits of 34 named.
func TestSpanishKeyIsInSpanish(t *testing.T) {
	got := printedText(t, pdf(t, paper(keyTasks...), sheet.Options{Key: true, Lang: "es", Font: sheet.BuiltInFont}))
	_, got, _ = strings.Cut(got, "Qué sugieren las respuestas equivocadas")
	for _, want := range []string{
		"7 centenas 3 decenas 3 unidades = ?", "83 − 47 = ?", "Escribe la hora con palabras. (2:30)", "las 6 y 10", "¿Qué hora es? Es de tarde. (3:30 p.m.)",
		"Dibuja las manecillas: 5:00", "Une cada reloj con su hora. (12:15, 3:00)", "¿Cuántos puntos hay? (13)", "(5, 8)", "izquierda",
		"Escribe con palabras: 34", "tres cuatro", "cuarenta y tres", "¿Es 14 par o impar?", "impar", "8 + ? = 11, 11 − 8 = ?", "Problema: 7 = ? + ?, manzanas",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the key lacks %q; it reads\n%s", want, got)
		}
	}
	englishWords := regexp.MustCompile(`(?i)\b(the|takes|writes|says|adds|past|half|o'clock|left|odd|` +
		`hundreds|tens|ones|draw|read|count|story)\b`)
	for _, english := range englishWords.FindAllString(got, -1) {
		t.Errorf("the key says %q in English; it reads\n%s", english, got)
	}
}

func TestFileTellsMachinesWhatItIs(t *testing.T) {
	file := string(pdf(t, paper("83 - 47 = ?"), sheet.Options{Lang: "es"}))
	for _, want := range []string{"/Lang (es)", "/Outlines", "/Title", "/MediaBox [0 0 612.00 792.00]"} {
		if !strings.Contains(file, want) {
			t.Errorf("the file lacks %s", want)
		}
	}
	// ISO 216: A4 is 210 by 297 mm, which is 595.28 by 841.89 points of 1/72 inch.
	if file := string(pdf(t, paper("83 - 47 = ?"), sheet.Options{PaperSize: "a4"})); !strings.Contains(file, "/MediaBox [0 0 595.28 841.89]") {
		t.Error("the A4 sheet is not 595.28 by 841.89 points")
	}
}

func TestStripsRepeatTheQuiz(t *testing.T) {
	got := printedText(t, pdf(t, paper("47 + 36 = ?", "83 - 47 = ?"), sheet.Options{Layout: sheet.Strips, Font: sheet.BuiltInFont}))
	if names, items := strings.Count(got, "Name"), strings.Count(got, "47 + 36 ="); names != 6 || items != 6 {
		t.Errorf("%d name lines and %d times the first item, want 6 strips; it reads\n%s", names, items, got)
	}
}

func TestItemsByHand(t *testing.T) {
	p := sheet.Paper{Title: "Stories", Questions: []sheet.Question{{Number: 1, Text: "Mara has 12 pens. She gives 5 away. How many has she now?", Key: "7 pens"}}}
	got := printedText(t, pdf(t, p, sheet.Options{Key: true, Font: sheet.BuiltInFont}))
	for _, want := range []string{"Listen and read. Write the answer on the line.", "1 Mara has 12 pens. She gives 5 away. How many has she now?", "7 pens"} {
		if !strings.Contains(got, want) {
			t.Errorf("the key lacks %q; it reads\n%s", want, got)
		}
	}
}

func TestWrongOptionsAreExplained(t *testing.T) {
	good := paper("47 + 36 = ?")
	long := sheet.Paper{Questions: []sheet.Question{{Number: 1, Text: strings.Repeat("word ", 2000)}}}
	tall := paper("match 4:00, 7:00, 11:00, 2:30, 5:00, 9:00")
	for want, try := range map[string]struct {
		p sheet.Paper
		o sheet.Options
	}{
		`no paper size "a5"; the sizes are letter and a4`:                          {good, sheet.Options{PaperSize: "a5"}},
		`no language "fr" for sheets; the languages are en and es`:                 {good, sheet.Options{Lang: "fr"}},
		`no layout "cards"; the layouts are pages and strips`:                      {good, sheet.Options{Layout: "cards"}},
		"3 columns don't fit on a sheet; write 1 or 2":                             {good, sheet.Options{Columns: 3}},
		"a paper without items can't be printed; choose at least one":              {sheet.Paper{Title: "Empty"}, sheet.Options{}},
		"item 1 is too tall for one page":                                          {long, sheet.Options{}},
		"1 items are too tall for two strips on a page; choose fewer items":        {tall, sheet.Options{Layout: sheet.Strips}},
		`item 1: no look "poster"; "47 + 36 = ?" can be shown as sentence, column`: {paper("47 + 36 = ?|poster"), sheet.Options{}},
	} {
		var b bytes.Buffer
		err := sheet.WritePDF(&b, try.p, try.o)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes were written all the same", want, b.Len())
		}
	}
}

// Any text that a colleague's list may bring is printed, or refused in words.
func TestAnyTextIsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := sheet.Paper{Title: rapid.String().Draw(t, "title"), Form: rapid.String().Draw(t, "form"), Questions: []sheet.Question{
			{Number: rapid.Int().Draw(t, "number"), Text: rapid.String().Draw(t, "text"), Key: rapid.String().Draw(t, "key")},
		}}
		var b bytes.Buffer
		o := sheet.Options{Key: rapid.Bool().Draw(t, "key page"), Font: sheet.BuiltInFont}
		if err := sheet.WritePDF(&b, p, o); err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(b.Bytes(), []byte("%PDF-")) {
			t.Fatal("no PDF was written")
		}
	})
}

func TestUnprintable(t *testing.T) {
	p := sheet.Paper{Title: "Frogs", Questions: []sheet.Question{{Number: 1, Text: "How many \U0001F438? □", Key: "3"}}}
	got, err := sheet.Unprintable(p, sheet.Options{Font: sheet.BuiltInFont})
	if err != nil || fmt.Sprintf("%U", got) != "[U+1F438]" {
		t.Errorf("got %U, %v; want the frog alone", got, err)
	}
}
