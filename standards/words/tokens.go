package words

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Token is one piece of a written answer: a number, a word or a sign.
type Token struct {
	Text   string // as Plain gives it, words without accents; number words joined by single spaces
	Number int    // for a number
	Kind   TokenKind
}

// TokenKind says what a token is.
type TokenKind int

// The kinds of tokens.
const (
	Word    TokenKind = iota // letters
	Digits                   // a whole number in digits
	Spoken                   // a whole number in words
	Decimal                  // digits with a decimal part that is not zero, or a point in front
	Sign                     // any other character
)

// IsNumber says that the token is a whole number, in digits or in words.
func (t Token) IsNumber() bool { return t.Kind == Digits || t.Kind == Spoken }

// Tokens takes a written answer apart. In digits "1,000" and "1.000" are a thousand, as marks
// stand before three digits; "83.0" and "83,00" are 83; "8,3" and "8.3" are decimals, never
// 83. Number words of one number are one token, in English or Spanish.
func Tokens(answer string) []Token { return joinSpoken(split(Plain(answer), false)) }

// ListTokens is Tokens for an answer of several numbers, where a comma ends a number.
func ListTokens(answer string) []Token { return joinSpoken(split(Plain(answer), true)) }

// split cuts a plain text into digits, letters and signs.
func split(text string, list bool) []Token {
	var tokens []Token
	for at := 0; at < len(text); {
		r, width := utf8.DecodeRuneInString(text[at:])
		switch {
		case r == ' ':
			at += width
			continue
		case r >= '0' && r <= '9' || r == '.' && at+1 < len(text) && isDigit(text[at+1]) && (at == 0 || !isDigit(text[at-1])):
			width = numeralWidth(text[at:], list)
			tokens = append(tokens, numeral(text[at:at+width]))
		case unicode.IsLetter(r):
			width = strings.IndexFunc(text[at:], func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' })
			if width < 0 {
				width = len(text) - at
			}
			tokens = append(tokens, Token{Text: Unaccented(strings.TrimRight(text[at:at+width], "'"))})
		default:
			tokens = append(tokens, Token{Text: text[at : at+width], Kind: Sign})
		}
		at += width
	}
	return tokens
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// numeralWidth is how far a numeral reaches: digits, and marks that stand between digits.
func numeralWidth(text string, list bool) int {
	at := 0
	for at < len(text) {
		mark := text[at] == '.' || text[at] == ',' && !list
		if !isDigit(text[at]) && !(mark && at+1 < len(text) && isDigit(text[at+1])) {
			break
		}
		at++
	}
	return at
}

// numeral reads digits with marks: marks before groups of three digits are thousands, one mark
// before anything else is a decimal mark.
func numeral(text string) Token {
	whole, ok := text, true
	if parts := strings.FieldsFunc(text, func(r rune) bool { return r == '.' || r == ',' }); len(parts) > 1 || len(parts[0]) < len(text) {
		last := parts[len(parts)-1]
		grouped := len(parts) > 1 && len(parts[0]) <= 3 && !strings.HasPrefix(text, "0") && !strings.HasPrefix(text, ".")
		for _, part := range parts[1:] {
			grouped = grouped && len(part) == 3
		}
		switch {
		case grouped:
			whole = strings.Join(parts, "")
		case len(parts) == 2 && len(last) <= 2 && strings.Trim(last, "0") == "" && !strings.HasPrefix(text, "."):
			whole = parts[0]
		default:
			ok = false
		}
	}
	n, err := strconv.Atoi(whole)
	if !ok || err != nil || len(whole) > mostDigits {
		return Token{Text: text, Kind: Decimal}
	}
	return Token{Text: text, Number: n, Kind: Digits}
}

// mostDigits is the longest number that is read; a four-digit number written out part by
// part, 9000900909, has ten digits.
const mostDigits = 12

// joinSpoken makes number words that stand together one token. "And" and "y" belong to a
// number only inside it.
func joinSpoken(tokens []Token) []Token {
	out := tokens[:0:0]
	for i := 0; i < len(tokens); i++ {
		if tokens[i].Kind != Word || !numberWord[plainName(tokens[i].Text)] {
			out = append(out, tokens[i])
			continue
		}
		n, end, text := 0, 0, ""
		for j := i + 1; j <= len(tokens) && (j == i+1 || joins(tokens[j-1])); j++ {
			if said := spokenText(tokens[i:j]); said != "" {
				if value, ok := ReadNumber(said); ok {
					n, end, text = value, j, said
				}
			}
		}
		if end == 0 {
			out = append(out, tokens[i])
			continue
		}
		out = append(out, Token{Text: text, Number: n, Kind: Spoken})
		i = end - 1
	}
	return out
}

// joins says that a token may stand inside a number name.
func joins(t Token) bool {
	return t.Kind == Sign && t.Text == "-" || t.Kind == Word && (t.Text == "and" || t.Text == "y" || numberWord[plainName(t.Text)])
}

// spokenText is tokens joined by spaces, a hyphen left out; empty where the last is no number word.
func spokenText(tokens []Token) string {
	last := tokens[len(tokens)-1]
	if last.Kind != Word || !numberWord[plainName(last.Text)] {
		return ""
	}
	var parts []string
	for _, t := range tokens {
		if t.Kind == Word {
			parts = append(parts, t.Text)
		}
	}
	return strings.Join(parts, " ")
}

// numberWord holds every word of a number name, without accents. "A" begins "a hundred" alone,
// and is left out: it is far more often an article.
var numberWord = func() map[string]bool {
	set := make(map[string]bool)
	for name := range namedNumbers {
		for _, word := range strings.Fields(name) {
			set[word] = true
		}
	}
	for _, word := range []string{"a", "y", "and"} {
		delete(set, word)
	}
	return set
}()

// Cut drops tokens that a test finds.
func Cut(tokens []Token, drop func(Token) bool) []Token {
	return slices.DeleteFunc(slices.Clone(tokens), drop)
}

// NearNumbers says that a text could be number names, misspelt ones too: letters only, each
// word a number word or nearly one.
func NearNumbers(text string) bool {
	seen := false
	for _, t := range split(Plain(text), false) {
		if t.Kind == Sign && strings.Contains("-.,", t.Text) || t.Text == "and" || t.Text == "y" {
			continue
		}
		name := plainName(t.Text)
		_, near := Nearest(name, numberWordList)
		if t.Kind != Word || !numberWord[name] && (!near || len(name) < 4) {
			return false
		}
		seen = true
	}
	return seen
}

var numberWordList = slices.Sorted(maps.Keys(numberWord))
