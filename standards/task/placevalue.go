package task

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// PlaceValue asks for the hundreds, tens and ones of a number ("142 = ? hundreds
// ? tens ? ones", "47 = ? tens ? ones"), or, with Compose, for the number
// they make ("4 tens 7 ones = ?").
type PlaceValue struct {
	Number  int
	Places  int // 2 or 3
	Compose bool
}

var (
	decomposePattern = regexp.MustCompile(`^([0-9]+) ?(?:=|has|is|tiene|es) ?(?:(\?) ?hundreds?,? ?(?:and |y |\+ ?)?)?\? ?tens?,? ?(?:and |y |\+ ?)?\? ?ones?\.?$`)
	turnedPattern    = regexp.MustCompile(`^(\?.*\bones?) ?= ?([0-9]+)$`)
	composePattern   = regexp.MustCompile(`^(?:([0-9]) hundreds?,? ?(?:and |y )?\+? ?)?([0-9]) tens?,? ?(?:and |y )?\+? ?([0-9]) ones?\.? ?(?:= ?\??)?$`)
)

func readPlaceValue(text string) (Task, error) {
	if m := turnedPattern.FindStringSubmatch(text); m != nil {
		text = m[2] + " = " + m[1]
	}
	if m := decomposePattern.FindStringSubmatch(text); m != nil {
		p := PlaceValue{Places: 2}
		if m[2] != "" {
			p.Places = 3
		}
		p.Number, _ = strconv.Atoi(m[1])
		return p.checked()
	}
	if m := composePattern.FindStringSubmatch(text); m != nil {
		p := PlaceValue{Places: 2, Compose: true}
		if m[1] != "" {
			p.Places = 3
		}
		p.Number, _ = strconv.Atoi(m[1] + m[2] + m[3])
		return p.checked()
	}
	if strings.Contains(text, " tens") && strings.Contains(text, " ones") && strings.Contains(text, "=") {
		return nil, words.Errorf("%q does not read as place value; write 142 = ? hundreds ? tens ? ones or 4 tens 7 ones = ?", text)
	}
	return nil, errOther
}

func (p PlaceValue) checked() (Task, error) {
	least, most := 10, 99
	if p.Places == 3 {
		least, most = 100, 999
	}
	if p.Number < least || p.Number > most {
		return nil, words.Errorf("%d does not have %d digits, one for each place asked for", p.Number, p.Places)
	}
	return p, nil
}

// digits are the hundreds (with three places), tens and ones.
func (p PlaceValue) digits() []int {
	list := []int{p.Number / 100, p.Number / 10 % 10, p.Number % 10}
	return list[3-p.Places:]
}

func (p PlaceValue) String() string {
	names := []string{"hundreds", "tens", "ones"}[3-p.Places:]
	parts := make([]string, p.Places)
	for i, digit := range p.digits() {
		if p.Compose {
			parts[i] = strconv.Itoa(digit) + " " + names[i]
		} else {
			parts[i] = "? " + names[i]
		}
	}
	if p.Compose {
		return strings.Join(parts, " ") + " = ?"
	}
	return strconv.Itoa(p.Number) + " = " + strings.Join(parts, " ")
}

// Key is the number, or its digits from the left with spaces between, "1 4 2".
func (p PlaceValue) Key() string {
	if p.Compose {
		return strconv.Itoa(p.Number)
	}
	return joinInts(p.digits(), " ")
}

// Judge accepts "1 4 2", "1, 4, 2" and, in any order, "1 hundred 4 tens 2 ones"; for Compose
// the number.
func (p PlaceValue) Judge(answer string) bool {
	if p.Compose {
		r, ok := p.composed(answer)
		return ok && r == p.Number
	}
	digits, ok := p.reply(answer)
	return ok && slices.Equal(digits, p.digits())
}

// Possible takes numbers, each with its place or none; for Compose a number.
func (p PlaceValue) Possible(answer string) bool {
	if p.Compose {
		_, ok := p.composed(answer)
		return ok
	}
	_, ok := p.reply(answer)
	return ok
}

// placeOf is what people write for the places, with how many places stand to the right.
var placeOf = map[string]int{
	"hundreds": 2, "hundred": 2, "h": 2, "centenas": 2, "centena": 2, "c": 2,
	"tens": 1, "ten": 1, "t": 1, "decenas": 1, "decena": 1, "d": 1,
	"ones": 0, "one": 0, "o": 0, "units": 0, "unit": 0, "u": 0, "unidades": 0, "unidad": 0,
}

// composed is the number that an answer gives, alone or after the places ("4 tens 7 ones = 47").
func (p PlaceValue) composed(answer string) (int, bool) {
	if places, number, ok := strings.Cut(words.Plain(answer), "="); ok && strings.TrimSpace(places) != "" {
		asked := PlaceValue{Number: p.Number, Places: p.Places}
		if digits, ok := asked.reply(places); !ok || !slices.Equal(digits, p.digits()) {
			return p.expandedSum(answer)
		}
		answer = number
	}
	r, ok := readReply(answer, noWords)
	return r.number, ok && r.equation == nil
}

// expandedSum reads "40 + 7 = 47".
func (p PlaceValue) expandedSum(answer string) (int, bool) {
	r, ok := readReply(answer, noWords)
	if !ok || r.equation == nil || !r.equation.says(expandedParts(p.Number), p.Number) {
		return 0, ok
	}
	return p.Number, true
}

// reply is how many of each place an answer says, the largest place first. Places left out
// have none, if others are named.
func (p PlaceValue) reply(answer string) (digits []int, ok bool) {
	clean := words.Plain(answer)
	if number, parts, both := strings.Cut(clean, "="); both {
		if n := strings.TrimSpace(number); n != "" && n != strconv.Itoa(p.Number) {
			return nil, false
		}
		clean = parts
	}
	tokens := numbersFirst(trimmed(words.ListTokens(clean)))
	named := make(map[int]int)
	for i := 0; i < len(tokens); i++ {
		switch token := tokens[i]; {
		case token.IsNumber():
			if place, isName := placeAfter(tokens, i); isName && place < p.Places {
				if _, twice := named[place]; twice || len(digits) > 0 {
					return nil, false
				}
				named[place] = token.Number
				i++
				continue
			}
			digits = append(digits, token.Number)
		case strings.Contains(",;+", token.Text), token.Text == "and", token.Text == "y":
		default:
			return nil, false
		}
	}
	switch {
	case len(named) > 0 && len(digits) > 0:
		return nil, false
	case len(named) == 0:
		return digits, len(digits) > 0 && len(digits) <= p.Places
	}
	for place := p.Places - 1; place >= 0 && len(digits) < p.Places; place-- {
		digits = append(digits, named[place])
	}
	return digits, len(digits) == p.Places
}

// numbersFirst puts each number in front of its place where every place stands in front of its number, as in
// "tens 4, ones 7".
func numbersFirst(tokens []words.Token) []words.Token {
	turned := words.Cut(tokens, func(t words.Token) bool { return strings.Contains(",;:", t.Text) || t.Text == "and" || t.Text == "y" })
	for i := 0; i < len(turned); i += 2 {
		if _, isName := placeOf[turned[i].Text]; !isName || turned[i].IsNumber() || i+1 == len(turned) || !turned[i+1].IsNumber() {
			return tokens
		}
		turned[i], turned[i+1] = turned[i+1], turned[i]
	}
	return turned
}

// placeAfter is the place named behind the number at i.
func placeAfter(tokens []words.Token, i int) (place int, ok bool) {
	if i+1 == len(tokens) {
		return 0, false
	}
	place, ok = placeOf[tokens[i+1].Text]
	return place, ok
}

// Prompt asks for the parts or the number.
func (p PlaceValue) Prompt(lang string) string {
	switch {
	case p.Compose && lang == "es":
		return "Escribe el número: " + spanishPlaces(p.String())
	case p.Compose:
		return "Write the number: " + p.String()
	case lang == "es":
		return "Escribe cuántas hay: " + spanishPlaces(p.String())
	}
	return "Write how many of each: " + p.String()
}

func spanishPlaces(s string) string {
	return strings.NewReplacer("hundreds", "centenas", "tens", "decenas", "ones", "unidades").Replace(s)
}

// Traits of place value.
func (p PlaceValue) Traits() Traits {
	var ts Traits
	ts.setNumber(Digits, p.Places)
	ts.setNumber(Largest, p.Number)
	ts[Asks] = "parts"
	if p.Compose {
		ts[Asks] = "number"
	}
	return ts
}

// Codes: teen numbers in kindergarten, tens and ones in grade 1, hundreds in grade 2.
func (p PlaceValue) Codes() []Code {
	switch {
	case p.Places == 3:
		return []Code{"2.NBT.A.1"}
	case p.Number >= 11 && p.Number <= 19:
		return []Code{"K.NBT.A.1", "1.NBT.B.2"}
	}
	return []Code{"1.NBT.B.2"}
}

const writingSource = "Byrge, Smith & Mix (2014)"

// The missteps in place value.
var (
	writtenOut = newMisstep("each part written out",
		"writes each part as it is said, one after the other",
		"escribe cada parte como se dice, una tras otra",
		"lay the parts on top of each other: 142 is 100 under 40 under 2",
		"poner una parte sobre la otra: 142 es 100 debajo de 40 debajo de 2", writingSource)
	hundredKept = newMisstep("hundred written out",
		"writes the digit and then 100 before the rest",
		"escribe el dígito y luego 100 antes del resto",
		"lay the parts on top of each other: 142 is 100 under 40 under 2",
		"poner una parte sobre la otra: 142 es 100 debajo de 40 debajo de 2", writingSource)
	turnedAround = newMisstep("digits turned around",
		"puts the digits in the opposite order",
		"pone los dígitos en el orden contrario",
		"which digit is worth tens: build the number with sticks and dots",
		"qué dígito vale decenas: formar el número con barras y puntos", "common practice")
	valueWritten = newMisstep("value for digit",
		"writes what a digit is worth where how many is asked",
		"escribe cuánto vale un dígito donde se pregunta cuántas hay",
		"four tens are worth 40, but there are four of them",
		"cuatro decenas valen 40, pero son cuatro", "common practice")
	partsAdded = newMisstep("digits added",
		"adds the digits as if all were ones",
		"suma los dígitos como si todos fueran unidades",
		"what the digit in the tens place is worth",
		"cuánto vale el dígito de las decenas", additionSource)
)

// writtenOutSlips are the ways of writing the parts of n one after the other.
func writtenOutSlips(n int, parts []int) []slip {
	var all strings.Builder
	for _, part := range parts {
		all.WriteString(strconv.Itoa(part))
	}
	slips := []slip{{writtenOut, all.String()}}
	if n >= 100 && n%100 > 0 {
		slips = append(slips, slip{hundredKept, strconv.Itoa(n/100) + "100" + strconv.Itoa(n%100)})
	}
	return slips
}

// Missteps of place value.
func (p PlaceValue) Missteps() []Misstep {
	digits := p.digits()
	turned := make([]int, 0, 3)
	for i := range digits {
		turned = append(turned, digits[len(digits)-1-i])
	}
	if p.Compose {
		slips := append(writtenOutSlips(p.Number, expandedParts(p.Number)),
			slip{turnedAround, joinInts(turned, "")}, slip{partsAdded, strconv.Itoa(DigitSum(p.Number))})
		return gather(p, slips)
	}
	worth := make([]int, 0, 3)
	place := map[int]int{2: 10, 3: 100}[p.Places]
	for _, digit := range digits {
		worth = append(worth, digit*place)
		place /= 10
	}
	return gather(p, []slip{{turnedAround, joinInts(turned, " ")}, {valueWritten, joinInts(worth, " ")}})
}

// Clashes of place value: the number itself, whichever way round.
func (p PlaceValue) Clashes() []string { return []string{"parts:" + strconv.Itoa(p.Number)} }

// Fingerprint of place value is its text.
func (p PlaceValue) Fingerprint() string { return p.String() }

// Looks of place value.
func (p PlaceValue) Looks() []Look {
	if p.Compose {
		return withChoice(p, LookFrame, LookTensAndOnes, LookSentence)
	}
	return []Look{LookFrame, LookTensAndOnes, LookSentence}
}

// Short is the question alone.
func (p PlaceValue) Short(lang string) string { return alone(p, lang) }

// Fills are the digits; for Compose the number.
func (p PlaceValue) Fills() []string { return strings.Fields(p.Key()) }

// Written is the text itself.
func (p PlaceValue) Written() string { return p.String() }
