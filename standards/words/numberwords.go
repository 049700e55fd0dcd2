package words

import "strings"

// The words for numbers. English from 0 to 20 is numberWords.
var (
	englishTens  = strings.Fields("twenty thirty forty fifty sixty seventy eighty ninety")
	spanishSmall = strings.Fields("cero uno dos tres cuatro cinco seis siete ocho nueve diez " +
		"once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve veinte " +
		"veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve")
	spanishTens     = strings.Fields("treinta cuarenta cincuenta sesenta setenta ochenta noventa")
	spanishHundreds = strings.Fields("ciento doscientos trescientos cuatrocientos quinientos seiscientos setecientos ochocientos novecientos")
)

// MostNamed is the largest number with a name here.
const MostNamed = 1000

// NumberName is a number from 0 to 1000 in words, "three hundred forty-two" or
// "trescientos cuarenta y dos".
func NumberName(n int, lang string) string {
	if lang == "es" {
		return spanishName(n)
	}
	return englishName(n)
}

// RenameNumbers is a number name, or several one after the other as in "three four two", in
// the language; a text that is something else stays as it is.
func RenameNumbers(text, lang string) string {
	if n, ok := ReadNumber(text); ok {
		return NumberName(n, lang)
	}
	words := strings.Fields(text)
	for i, word := range words {
		n, ok := ReadNumber(word)
		if !ok {
			return text
		}
		words[i] = NumberName(n, lang)
	}
	return strings.Join(words, " ")
}

func englishName(n int) string {
	switch {
	case n == 1000:
		return "one thousand"
	case n >= 100:
		return strings.TrimSuffix(numberWords[n/100]+" hundred "+englishName(n%100), " zero")
	case n > 20:
		return strings.TrimSuffix(englishTens[n/10-2]+"-"+numberWords[n%10], "-zero")
	}
	return numberWords[n]
}

func spanishName(n int) string {
	switch {
	case n == 1000:
		return "mil"
	case n == 100:
		return "cien"
	case n > 100:
		return strings.TrimSuffix(spanishHundreds[n/100-1]+" "+spanishName(n%100), " cero")
	case n >= 30:
		return strings.TrimSuffix(spanishTens[n/10-3]+" y "+spanishName(n%10), " y cero")
	}
	return spanishSmall[n]
}

// namedNumbers finds a number by its name in either language, written with single
// spaces, without "and" and with no hyphen or accent.
var namedNumbers = func() map[string]int {
	names := make(map[string]int)
	for n := range MostNamed + 1 {
		names[plainName(englishName(n))] = n
		names[plainName(spanishName(n))] = n
	}
	names["una"] = 1
	names["a hundred"], names["hundred"], names["thousand"], names["a thousand"] = 100, 100, 1000, 1000
	return names
}()

var plainWords = strings.NewReplacer("-", " ", " and ", " ", "á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u")

func plainName(text string) string {
	return strings.Join(strings.Fields(plainWords.Replace(text)), " ")
}

// ReadNumber reads a number name in English or Spanish; "one hundred and
// five" as well as "one hundred five".
func ReadNumber(text string) (int, bool) {
	n, ok := namedNumbers[plainName(text)]
	return n, ok
}
