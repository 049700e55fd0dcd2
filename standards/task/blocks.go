package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Blocks asks about a bar that is measured with equal blocks: how many long it is, "blocks 6: how long"; in which of
// three pictures it is measured right, "blocks 6 gaps, even, overlaps: which is right"; or how many short blocks make
// the same length as long ones, "blocks 4 long, 2 short in each: how many short".
type Blocks struct {
	Count int         // blocks end to end along the bar
	Ways  [3]BlockWay // how the blocks lie in the pictures A, B and C; empty where one picture is shown
	Parts int         // short blocks as long as a long one, 2 or 3; 0 where all are alike
}

// BlockWay is how blocks lie along a bar.
type BlockWay string

// The ways.
const (
	Even     BlockWay = "even" // end to end
	Gaps     BlockWay = "gaps" // one too few, apart
	Overlaps BlockWay = "overlaps"
)

// The looks of blocks.
const (
	LookBlocks      Look = "blocks-end-to-end"
	LookBlockWays   Look = "blocks-three-ways"
	LookShortBlocks Look = "short-and-long-blocks"
)

var (
	_ = ownLook(LookBlocks, "bar with equal blocks end to end", 0)
	_ = ownLook(LookBlockWays, "three pictures of blocks along a bar", 0)
	_ = ownLook(LookShortBlocks, "bar with long blocks and short ones", 0)
)

// The blocks that lie beside each other on a sheet.
const (
	fewestBlocks   = 2
	mostBlocks     = 10
	fewestToSpread = 4 // so that gaps and overlaps are seen
	mostToSpread   = 8
	mostLongBlocks = 6
)

const blocksExample = "blocks 6: how long"

var blocksPattern = regexp.MustCompile(`^(?:blocks|bloques) ([0-9]{1,2})` +
	`(?: (gaps|even|overlaps), (gaps|even|overlaps), (gaps|even|overlaps)` +
	`| long, ([0-9]) short in each| largos, ([0-9]) cortos en cada uno)?` +
	`: ?¿?(how long|which is right|how many short|cuánto mide|cuál está bien|cuántos cortos)$`)

func readBlocks(text string) (Task, error) {
	m := blocksPattern.FindStringSubmatch(trimQuestion(text))
	if m == nil {
		return nil, errOther
	}
	t := Blocks{Ways: [3]BlockWay{BlockWay(m[2]), BlockWay(m[3]), BlockWay(m[4])}}
	t.Count, _ = strconv.Atoi(m[1])
	t.Parts, _ = strconv.Atoi(m[5] + m[6])
	asks := map[string]Look{
		"how long": LookBlocks, "cuánto mide": LookBlocks, "which is right": LookBlockWays, "cuál está bien": LookBlockWays,
		"how many short": LookShortBlocks, "cuántos cortos": LookShortBlocks,
	}[m[7]]
	switch {
	case asks != t.Looks()[0]:
		return nil, words.Errorf("%q asks for what it doesn't show; write for example %s, "+
			"blocks 6 gaps, even, overlaps: which is right or blocks 4 long, 2 short in each: how many short",
			text, blocksExample)
	case t.Count < fewestBlocks || t.Count > mostBlocks:
		return nil, words.Errorf("%q has not %d to %d blocks; write for example %s", text, fewestBlocks, mostBlocks, blocksExample)
	case t.Pictures() && (!slices.Contains(t.Ways[:], Even) || !slices.Contains(t.Ways[:], Gaps) || !slices.Contains(t.Ways[:], Overlaps)):
		return nil, words.Errorf("%q needs each of gaps, even and overlaps once", text)
	case t.Pictures() && (t.Count < fewestToSpread || t.Count > mostToSpread):
		return nil, words.Errorf("%q needs %d to %d blocks, so that gaps and overlaps are seen", text, fewestToSpread, mostToSpread)
	case t.Parts != 0 && (t.Parts < 2 || t.Parts > 3 || t.Count > mostLongBlocks):
		return nil, words.Errorf("%q needs up to %d long blocks with 2 or 3 short ones in each", text, mostLongBlocks)
	}
	return t, nil
}

func (t Blocks) String() string {
	switch {
	case t.Pictures():
		return fmt.Sprintf("blocks %d %s, %s, %s: which is right", t.Count, t.Ways[0], t.Ways[1], t.Ways[2])
	case t.Parts > 0:
		return fmt.Sprintf("blocks %d long, %d short in each: how many short", t.Count, t.Parts)
	}
	return fmt.Sprintf("blocks %d: how long", t.Count)
}

// Pictures says that the right one of three pictures is asked for.
func (t Blocks) Pictures() bool { return t.Ways[0] != "" }

func (t Blocks) answer() int { return t.Count * max(1, t.Parts) }

// Key is the number of blocks, or the letter of the picture.
func (t Blocks) Key() string {
	if t.Pictures() {
		return t.pictureOf(Even)
	}
	return strconv.Itoa(t.answer())
}

func (t Blocks) pictureOf(way BlockWay) string {
	at := slices.Index(t.Ways[:], way)
	return "ABC"[at : at+1]
}

// Offers are the pictures.
func (t Blocks) Offers() []string {
	if t.Pictures() {
		return []string{"A", "B", "C"}
	}
	return nil
}

// Judge accepts the number of blocks, or the picture by its letter or place.
func (t Blocks) Judge(answer string) bool {
	if t.Pictures() {
		said, ok := readPicture(answer, t.Offers()...)
		return ok && said == t.Key()
	}
	r, ok := t.reply(answer)
	return ok && (r.equation == nil && r.number == t.answer() || r.equation != nil && r.equation.says(slices.Repeat([]int{t.Parts}, t.Count), t.answer()))
}

// Possible takes a number of blocks, or a picture.
func (t Blocks) Possible(answer string) (ok bool) {
	if t.Pictures() {
		_, ok = readPicture(answer, t.Offers()...)
	} else {
		_, ok = t.reply(answer)
	}
	return ok
}

func (t Blocks) reply(answer string) (reply, bool) {
	r, ok := readReply(answer, vocabulary(t.Prompt, "long"))
	return r, ok && (r.equation == nil || t.Parts > 0)
}

// Prompt asks without saying how many blocks there are.
func (t Blocks) Prompt(lang string) string {
	asked := telling{"How many blocks long is the bar?", "¿Cuántos bloques mide la barra?"}
	switch {
	case t.Pictures():
		asked = telling{"Where are the blocks laid right to measure the bar?", "¿Dónde están bien puestos los bloques para medir la barra?"}
	case t.Parts > 0:
		asked = telling{"How many short blocks long is the bar?", "¿Cuántos bloques cortos mide la barra?"}
	}
	if lang == "es" {
		return asked.es
	}
	return asked.en
}

// Short tells how the blocks lie.
func (t Blocks) Short(lang string) string {
	picture, _, _ := strings.Cut(strings.TrimPrefix(t.String(), "blocks "), ":")
	if lang == "es" {
		picture = strings.NewReplacer("gaps", "con huecos", "even", "juntos", "overlaps", "encimados",
			" long", " largos", "short in each", "cortos en cada uno").Replace(picture)
	}
	return shown(t, lang, picture)
}

// Traits of blocks: what is asked and how many there are.
func (t Blocks) Traits() Traits {
	ts := numberTraits(t.answer())
	ts[Asks] = strings.ReplaceAll(string(t.Looks()[0]), "-", " ")
	if t.Parts > 0 {
		ts.setNumber(Step, t.Parts)
	}
	return ts
}

// Codes of blocks: equal units end to end, grade 1; two units of different lengths, grade 2.
func (t Blocks) Codes() []Code {
	if t.Parts > 0 {
		return []Code{"2.MD.A.2"}
	}
	return []Code{"1.MD.A.2"}
}

// The missteps with blocks.
var (
	gapsTaken = newMisstep("gaps not seen",
		"takes blocks with gaps between them for a measure",
		"toma por medida unos bloques con huecos entre ellos",
		"lay real blocks along a strip and push them together until nothing is left uncovered",
		"poner bloques de verdad a lo largo de una tira y juntarlos hasta que no quede nada sin cubrir",
		"Lehrer (2003), A Research Companion to Principles and Standards, from memory")
	overlapsTaken = newMisstep("overlaps not seen",
		"takes blocks that lie over each other for a measure",
		"toma por medida unos bloques puestos unos sobre otros",
		"lay real blocks along a strip, each beginning where the last one ends",
		"poner bloques de verdad a lo largo de una tira, cada uno donde termina el anterior",
		"Lehrer (2003), A Research Companion to Principles and Standards, from memory")
	unitsTurned = newMisstep("longer unit taken for more",
		"expects fewer of the shorter unit",
		"espera que se necesiten menos de la unidad más corta",
		"measure one desk with hands and then with paper clips: of which are there more",
		"medir un pupitre con manos y luego con clips: ¿de cuáles hay más?", "Carpenter & Lewis (1976), from memory")
	unitsAlike = newMisstep("units taken for alike",
		"gives the number of long blocks for the short ones",
		"da el número de bloques largos por el de los cortos",
		"cover one long block with short ones and count them",
		"cubrir un bloque largo con bloques cortos y contarlos", "Carpenter & Lewis (1976), from memory")
)

// Missteps of blocks.
func (t Blocks) Missteps() []Misstep {
	switch {
	case t.Pictures():
		return gather(t, []slip{{gapsTaken, t.pictureOf(Gaps)}, {overlapsTaken, t.pictureOf(Overlaps)}})
	case t.Parts > 0:
		fewer := ""
		if t.Count%t.Parts == 0 {
			fewer = strconv.Itoa(t.Count / t.Parts)
		}
		return gather(t, []slip{{unitsAlike, strconv.Itoa(t.Count)}, {unitsTurned, fewer}, {bothTogether, strconv.Itoa(t.Count + t.Parts)}})
	}
	return gather(t, []slip{{oneMissed, strconv.Itoa(t.Count - 1)}, {oneTwice, strconv.Itoa(t.Count + 1)}})
}

// Clashes of blocks: how many there are.
func (t Blocks) Clashes() []string { return []string{"blocks:" + strconv.Itoa(t.Count)} }

// Fingerprint of blocks is their text.
func (t Blocks) Fingerprint() string { return t.String() }

// Looks of blocks: that of what is asked.
func (t Blocks) Looks() []Look {
	switch {
	case t.Pictures():
		return []Look{LookBlockWays}
	case t.Parts > 0:
		return []Look{LookShortBlocks}
	}
	return []Look{LookBlocks}
}
