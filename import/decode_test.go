package intake_test

import (
	"strings"
	"testing"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/unicode"

	intake "evenhand/import"
	"evenhand/standards/words"
)

// The encodings that lists come in: UTF-8 with and without byte-order mark, UTF-16 both
// ways with and without, Windows-1252, which has no U+2212 minus but an en dash
// (RFC 3629, RFC 2781; WHATWG Encoding Standard for Windows-1252).
func TestEveryEncodingReadsTheSame(t *testing.T) {
	const text = "Problema;Clave\r\n83 – 47 = ?;36\r\n¿Cuánto es la mitad de 10 – “½”?;5\r\n"
	bom := func(order unicode.Endianness) encoding.Encoding { return unicode.UTF16(order, unicode.UseBOM) }
	bare := func(order unicode.Endianness) encoding.Encoding { return unicode.UTF16(order, unicode.IgnoreBOM) }
	for name, c := range map[string]struct {
		encoding encoding.Encoding
		want     string
	}{
		"UTF-8":                {unicode.UTF8, "UTF-8"},
		"UTF-8, marked":        {unicode.UTF8BOM, "UTF-8"},
		"UTF-16 little marked": {bom(unicode.LittleEndian), "UTF-16"},
		"UTF-16 big marked":    {bom(unicode.BigEndian), "UTF-16 (big-endian)"},
		"UTF-16 little":        {bare(unicode.LittleEndian), "UTF-16"},
		"UTF-16 big":           {bare(unicode.BigEndian), "UTF-16 (big-endian)"},
		"Windows-1252":         {charmap.Windows1252, "Windows-1252"},
	} {
		data, err := c.encoding.NewEncoder().Bytes([]byte(text))
		if err != nil {
			t.Fatal(name, err)
		}
		l, err := intake.Open("list.csv", data, intake.Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		b := newBank(t)
		r := mustImport(t, b, l, intake.ImportOptions{Skill: "facts-within-20"})
		if l.Encoding != c.want || r.Count(intake.Added) != 2 {
			t.Fatalf("%s: read as %s, %s, want %s and 2 added\n%s", name, l.Encoding, r.Summary(), c.want, problems(r))
		}
		got := items(t, b, r)
		if got[0].Task != "83 - 47 = ?" || got[1].Question("es") != "¿Cuánto es la mitad de 10 – “½”?" {
			t.Errorf("%s: read %q and %q", name, got[0].Task, got[1].Question("es"))
		}
	}
}

func TestOldMacLineEnds(t *testing.T) {
	_, r := importText(t, "question,answer\r47 + 36,83\r27 + 35,61\r")
	if want := "line 3, answer: 27 + 35 is 62, the list says 61"; problems(r) != want {
		t.Errorf("got %q, want %q", problems(r), want)
	}
}

// Encodings of bytes are told apart by the words that come out, and can be named. (Unicode
// Consortium's mapping tables, such as ROMAN.TXT, CP1250.TXT, 8859-2.TXT, CP1251.TXT and CP850.TXT, through
// golang.org/x/text.)
func TestBytesAreReadByTheirWords(t *testing.T) {
	for _, c := range []struct {
		encoding encoding.Encoding
		text     string
		want     string
	}{
		{charmap.Macintosh, "question,answer\rJosé has 5 pears and Zoë has 3. How many?,8\r¿Cuántas patas tiene el gato de Íñigo?,4\r", "Mac Roman"},
		{charmap.Windows1250, "pytanie;odpowiedź\r\nŁukasz ma 5 jabłek i 3 gruszki. Ile ma owoców?;8\r\n", "Windows-1250"},
		{charmap.ISO8859_2, "otázka;odpoveď\r\nKoľko je hodín? Štyri, alebo žltá?;štyri\r\n", "ISO-8859-2"},
		{charmap.Windows1251, "вопрос;ответ\r\nСколько ног у собаки и у кошки?;четыре\r\n", "Windows-1251"},
		{charmap.CodePage850, "pregunta;respuesta\r\n¿Cuántos niños son 5 y 3?;8 niños\r\n", "CP 850"},
		{charmap.CodePage437, "pregunta;respuesta\r\n¿Cuántos días hay en una semana?;7 días\r\n", "CP 850"}, // the two have the same Spanish letters
		{charmap.Windows1252, "pregunta;respuesta\r\n¿Qué mide más, 30 cm² o 20 cm²?;30 cm²\r\n¿MÁS O MENOS?;MÁS\r\n", "Windows-1252"},
		{charmap.Windows1252, "exercice;réponse\r\nZoé reçoit 5 pommes, et « 3 » à l’école. Combien ?;8\r\n" +
			"Mañana, ¿cuántos días?;4\r\n", "Windows-1252"},
		{charmap.Windows1252, "Aufgabe;Lösung\r\nJörg hat 5 Äpfel, Öl für 3 € – „wie viel“?;8\r\n", "Windows-1252"},
	} {
		data, err := c.encoding.NewEncoder().Bytes([]byte(c.text))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range []string{"", c.want} {
			b := newBank(t)
			l, err := intake.Open("list.csv", data, intake.Options{Encoding: name})
			if err != nil || l.Encoding != c.want {
				t.Fatalf("%q as %q: %v, %+v", c.text, name, err, l)
			}
			if guessed := len(l.Foreign) > 0; guessed != (name == "") {
				t.Errorf("%q as %q: words to look at: %v", c.text, name, l.Foreign)
			}
			r := mustImport(t, b, l, intake.ImportOptions{})
			for i, it := range items(t, b, r) {
				if got := it.Wording["en"] + it.Wording["es"]; !strings.Contains(c.text, got) || got == "" {
					t.Errorf("item %d of %q as %q: %q", i, c.text, name, got)
				}
			}
		}
	}
}

// Letters that no encoding known here makes words of are asked about (Shift JIS, from the
// JIS X 0208 table through golang.org/x/text).
func TestLettersThatLookWrongAreAskedAbout(t *testing.T) {
	data, err := japanese.ShiftJIS.NewEncoder().Bytes([]byte("問題,答え\n47 + 36,83\n犬の足は何本?,四\n"))
	if err != nil {
		t.Fatal(err)
	}
	l, err := intake.Open("list.csv", data, intake.Options{})
	if err != nil || !strings.Contains(words.Joined(l.Asked, "%s%s").String(), "some letters look wrong") {
		t.Errorf("%v, %+v", err, l)
	}
	if l, err = intake.Open("list.csv", data, intake.Options{Encoding: "shift_jis"}); err != nil ||
		strings.Contains(words.Joined(l.Asked, "%s%s").String(), "look wrong") {
		t.Errorf("%v, %+v", err, l)
	}
}
