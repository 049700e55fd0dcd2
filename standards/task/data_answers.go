package task

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// named says that the answer is one of the sorts.
func (t Data) named() bool { return t.Ask == WhichMost || t.Ask == WhichFewest }

// answersEach says that the answer is a number for each sort.
func (t Data) answersEach() bool { return t.Ask == InOrder || t.Ask == DrawIt }

// number is the answer that is a number.
func (t Data) number() int {
	a, b := t.Counts[t.First], t.Counts[t.Second]
	switch t.Ask {
	case HowManyOf:
		return a
	case InAll:
		return sum(t.Counts[:])
	}
	return max(a, b) - min(a, b)
}

// each is the answer that is a number for each sort: how many there are, or the place in order.
func (t Data) each() []int {
	if t.Ask == DrawIt {
		return slices.Clone(t.Counts[:t.N])
	}
	order := slices.Sorted(slices.Values(t.Counts[:t.N]))
	list := make([]int, t.N)
	for i := range list {
		list[i] = slices.Index(order, t.Counts[i]) + 1
	}
	return list
}

// extreme is the place of the sort with the most, or the fewest.
func (t Data) extreme(most bool) int {
	best := 0
	for i, n := range t.Counts[:t.N] {
		if n != t.Counts[best] && n > t.Counts[best] == most {
			best = i
		}
	}
	return best
}

// Key is a number, a sort, or a number for each sort in their order.
func (t Data) Key() string {
	switch {
	case t.named():
		return t.Sorts[t.extreme(t.Ask == WhichMost)]
	case t.answersEach():
		return joinNumbers(t.each())
	}
	return strconv.Itoa(t.number())
}

func joinNumbers(list []int) string {
	parts := make([]string, len(list))
	for i, n := range list {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, ", ")
}

// Fills are the numbers of an order, one for each sort.
func (t Data) Fills() []string { return strings.Split(t.Key(), ", ") }

// Answers says whether the answer is drawn.
func (t Data) Answers() Answers {
	if t.Ask == DrawIt {
		return Drawn
	}
	return Numbers
}

// Offers are the sorts, where one of them is asked for.
func (t Data) Offers() []string {
	if !t.named() {
		return nil
	}
	return slices.Clone(t.Sorts[:t.N])
}

// AnswerIn is a sort in the language.
func (t Data) AnswerIn(answer, lang string) string {
	if s, _, ok := words.SortCalled(answer); ok {
		return s.In(lang)
	}
	return answer
}

// Judge accepts numbers in digits or words, also with what is counted; of sorts their names, or
// how many there are of them; of an order the places or the names.
func (t Data) Judge(answer string) bool {
	switch {
	case t.named():
		said, ok := t.sortSaid(answer)
		return ok && said == t.Key()
	case t.answersEach():
		said, ok := t.eachSaid(answer)
		return ok && slices.Equal(said, t.each())
	}
	r, ok := t.numberSaid(answer)
	switch {
	case !ok:
		return false
	case r.equation != nil:
		return r.equation.finds(t.number(), t.fact())
	}
	return r.number == t.number()
}

// Possible takes what Judge can read.
func (t Data) Possible(answer string) (ok bool) {
	switch {
	case t.named():
		_, ok = t.sortSaid(answer)
	case t.answersEach():
		_, ok = t.eachSaid(answer)
	default:
		_, ok = t.numberSaid(answer)
	}
	return ok
}

// fact is the numbers of the equation that gives the answer.
func (t Data) fact() []int {
	if t.Ask == InAll {
		return append(slices.Clone(t.Counts[:t.N]), t.number())
	}
	return []int{t.Counts[t.First], t.Counts[t.Second], t.number()}
}

func (t Data) numberSaid(answer string) (reply, bool) {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return r, ok && (r.equation == nil || t.Ask != HowManyOf)
}

// besideSorts are the words that may stand beside the name of a sort.
var besideSorts = wordSet("the there are is most fewest more fewer of has have it they los las el la hay de más menos son")

// sortSaid is the sort that an answer names, empty for a number that none has.
func (t Data) sortSaid(answer string) (said string, ok bool) {
	for _, token := range trimmed(words.Tokens(answer)) {
		sort, _, known := words.SortCalled(token.Text)
		switch at := slices.Index(t.Counts[:t.N], token.Number); {
		case known && slices.Contains(t.Sorts[:t.N], sort.Name) && (said == "" || said == sort.Name):
			said, ok = sort.Name, true
		case token.IsNumber() && at < 0 && !ok:
			ok = true
		case token.IsNumber() && at >= 0 && !ok:
			said, ok = t.Sorts[at], true
		case token.IsNumber() && at >= 0 && said == t.Sorts[at]:
		case besideSorts[token.Text]:
		default:
			return "", false
		}
	}
	return said, ok
}

// eachSaid is the numbers that an answer gives to the sorts; names that stand beside numbers stand in
// the order of the sorts, and names alone are an order.
func (t Data) eachSaid(answer string) (list []int, ok bool) {
	var names []string
	for _, token := range trimmed(words.ListTokens(answer)) {
		sort, _, known := words.SortCalled(token.Text)
		switch {
		case known && slices.Contains(t.Sorts[:t.N], sort.Name) && !slices.Contains(names, sort.Name):
			names = append(names, sort.Name)
		case token.IsNumber():
			list = append(list, token.Number)
		case token.Kind == words.Sign && strings.Contains(",;:=", token.Text), token.Text == "and", token.Text == "y":
		default:
			return nil, false
		}
	}
	if len(names) == t.N && len(list) == 0 && t.Ask == InOrder {
		list = make([]int, t.N)
		for i, name := range names {
			list[slices.Index(t.Sorts[:t.N], name)] = i + 1
		}
	}
	return list, len(list) > 0 && (len(names) == 0 || len(names) == t.N && t.Ask == InOrder || slices.Equal(names, t.Sorts[:t.N]))
}

// Traits of data: what is asked, its largest number, and what makes the comparing hard.
func (t Data) Traits() Traits {
	largest := slices.Max(t.Counts[:t.N])
	if t.Ask == InAll {
		largest = t.number()
	}
	ts := numberTraits(largest)
	ts[Asks] = string(t.Ask)
	switch t.Ask {
	case HowManyMore, HowManyLess:
		ts.setNumber(CountSteps, countSteps(t.number(), min(t.Counts[t.First], t.Counts[t.Second])))
	case WhichMost, WhichFewest:
		best := t.Counts[t.extreme(t.Ask == WhichMost)]
		near := mostSteps
		for _, n := range t.Counts[:t.N] {
			if n != best {
				near = min(near, gap(n, best))
			}
		}
		ts.setNumber(Apart, near)
	case InAll:
		ts.setNumber(Addends, t.N)
	case DrawIt:
		ts[Asks] = "draw the " + strings.Fields(string(t.Form))[1]
	}
	return ts
}

// Codes of data, by the form and how many sorts it has.
func (t Data) Codes() (codes []Code) {
	if t.Form == Things {
		return []Code{"K.MD.B.3"}
	}
	if t.N <= 3 {
		codes = append(codes, "1.MD.C.4")
	}
	if t.Form == BarGraph || t.Form == PictureGraph {
		codes = append(codes, "2.MD.D.10")
	}
	return codes
}

// The missteps with data.
var (
	otherSortRead = newMisstep("next sort read",
		"reads the number of the sort beside the one asked for",
		"lee el número de la clase que está al lado de la que se pide",
		"slide a finger from the name to its bar or row before counting",
		"pasar el dedo del nombre a su barra o fila antes de contar", "common practice")
	lineOff = newMisstep("one line off",
		"reads the line above or below the end of the bar",
		"lee la línea de arriba o de abajo del final de la barra",
		"lay a pencil along the top of the bar and follow it to the number",
		"poner un lápiz a la altura de la barra y seguirlo hasta el número", "common practice")
	bundleOfFour = newMisstep("bundle counted as four",
		"counts only the upright marks of a bundle of five",
		"cuenta solo las marcas derechas de un grupo de cinco",
		"make tally marks for things as they are put away, and say five at each cross mark",
		"hacer rayitas al guardar cosas y decir «cinco» en cada raya cruzada", "common practice")
	bundleOfOne = newMisstep("bundle counted as one",
		"counts a bundle of five as one mark",
		"cuenta un grupo de cinco como una sola marca",
		"count a row of tally marks by fives and then by ones",
		"contar una fila de rayitas de cinco en cinco y luego de uno en uno", "common practice")
	largerGiven = newMisstep("larger number given",
		"gives how many there are of the larger sort where the difference is asked",
		"da el número de la clase más grande cuando se pide la diferencia",
		"pair the two sorts off one to one: how many have no partner",
		"hacer parejas de una clase con la otra: ¿cuántas quedan sin pareja?",
		"Hudson (1983), Child Development 54, from memory")
	bothTogether = newMisstep("both put together",
		"adds the two numbers where their difference is asked",
		"suma los dos números cuando se pide la diferencia",
		"act out more than: put one row under the other",
		"representar «más que»: poner una fila debajo de la otra", "common practice")
	sortLeftOut = newMisstep("a sort left out",
		"leaves one sort out of the sum",
		"deja una clase fuera de la suma",
		"tick each bar or row as its number is added",
		"palomear cada barra o fila al sumar su número", "common practice")
	otherEndFirst = newMisstep("ordered from the other end",
		"begins with the most where the fewest comes first",
		"empieza por lo que hay más cuando primero va lo que hay menos",
		"say fewest and most while lining up three towers of cubes",
		"decir «menos» y «más» al ordenar tres torres de cubos", "common practice")
	barsExchanged = newMisstep("two sorts exchanged",
		"draws the number of one sort at the name of another",
		"dibuja el número de una clase en el nombre de otra",
		"read the name, then its number, then point to where it goes",
		"leer el nombre, luego su número, y señalar dónde va", "common practice")
)

// Missteps of data.
func (t Data) Missteps() []Misstep {
	n, answer := t.Counts[t.First], t.number()
	switch t.Ask {
	case WhichMost, WhichFewest:
		return gather(t, []slip{{moreFewerMixed, t.Sorts[t.extreme(t.Ask == WhichFewest)]}})
	case InOrder:
		turned := t.each()
		for i := range turned {
			turned[i] = t.N + 1 - turned[i]
		}
		return gather(t, []slip{{otherEndFirst, joinNumbers(turned)}})
	case DrawIt:
		mixed := t.each()
		mixed[0], mixed[1] = mixed[1], mixed[0]
		return gather(t, []slip{{barsExchanged, joinNumbers(mixed)}})
	case InAll:
		return gather(t, []slip{{sortLeftOut, strconv.Itoa(answer - t.Counts[t.N-1])}, {sortLeftOut, strconv.Itoa(answer - t.Counts[0])}})
	case HowManyMore, HowManyLess:
		a, b := n, t.Counts[t.Second]
		return gather(t, []slip{{largerGiven, strconv.Itoa(max(a, b))}, {bothTogether, strconv.Itoa(a + b)}})
	}
	slips := []slip{{otherSortRead, strconv.Itoa(t.Counts[(t.First+1)%t.N])}}
	switch t.Form {
	case TallyChart:
		slips = append(slips, slip{bundleOfFour, strconv.Itoa(n/5*4 + n%5)}, slip{bundleOfOne, strconv.Itoa(n/5 + n%5)})
	case BarGraph:
		slips = append(slips, slip{lineOff, strconv.Itoa(n - 1)}, slip{lineOff, strconv.Itoa(n + 1)})
	case Things, PictureGraph:
		slips = append(slips, slip{oneMissed, strconv.Itoa(n - 1)}, slip{oneTwice, strconv.Itoa(n + 1)})
	}
	return gather(t, slips)
}
