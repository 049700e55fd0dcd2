package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// PictureSum asks for a number sentence to a picture of adding or taking away, "picture of 5 + 3", or for the picture
// to one, "draw dots for 5 + 3".
type PictureSum struct {
	First, Second int // the numbers on both sides of the sign, each 1 or more, none past 10
	Minus         bool
	Draw          bool // the picture is asked for, and what comes out
}

// Looks of pictures of adding and taking away.
const (
	LookPictureSum Look = "picture-of-a-sum"
	LookDrawSum    Look = "room-to-draw-a-sum"
)

var (
	_ = ownLook(LookPictureSum, "dots put together or crossed out, and a number sentence to write", 10)
	_ = ownLook(LookDrawSum, "number sentence with room to draw it", 15)
)

var pictureSumPattern = regexp.MustCompile(`^(picture (?:of|for)|draw (?:dots|a picture) (?:for|of)|dibuja puntos para|draw dots para|dibujo de) ` +
	`([0-9]{1,3}) ?([-+]) ?([0-9]{1,3})(?: ?= ?\??)?$`)

func readPictureSum(text string) (Task, error) {
	m := pictureSumPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := PictureSum{Minus: m[3] == "-", Draw: m[1][0] == 'd' && m[1] != "dibujo de"}
	t.First, _ = strconv.Atoi(m[2])
	t.Second, _ = strconv.Atoi(m[4])
	if min(t.First, t.Second, t.result()) < 1 || max(t.First, t.result()) > 10 {
		return nil, words.Errorf("%q: pictures are of numbers from 1 to 10, what comes out among them, as in picture of 5 + 3", text)
	}
	return t, nil
}

func (t PictureSum) sentence() Sentence {
	return Sentence{Terms: [4]int{t.First, t.Second}, Minus: [4]bool{1: t.Minus}, N: 2, Blank: 2}
}

func (t PictureSum) result() int { return t.sentence().Result() }

// Sign is + or -.
func (t PictureSum) Sign() string {
	if t.Minus {
		return "-"
	}
	return "+"
}

func (t PictureSum) String() string {
	sides := fmt.Sprintf("%d %s %d", t.First, t.Sign(), t.Second)
	if t.Draw {
		return "draw dots for " + sides
	}
	return "picture of " + sides
}

// Key is the whole sentence, or what comes out where the picture is drawn.
func (t PictureSum) Key() string {
	if t.Draw {
		return strconv.Itoa(t.result())
	}
	return fmt.Sprintf("%d %s %d = %d", t.First, t.Sign(), t.Second, t.result())
}

// Judge accepts the sentence, a sum in either order, with numbers and signs in digits or words; for a drawing what
// comes out, too.
func (t PictureSum) Judge(answer string) bool {
	r, ok := t.reply(answer)
	switch {
	case !ok:
		return false
	case r.equation != nil:
		s := t.sentence()
		return r.equation.says(s.signed(), t.result())
	}
	return r.number == t.result()
}

// Possible takes number sentences; for a drawing a number, too.
func (t PictureSum) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

func (t PictureSum) reply(answer string) (reply, bool) {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return r, ok && (t.Draw || r.equation != nil)
}

// Accepted are the sentence and, of a sum, the same turned around.
func (t PictureSum) Accepted(string) []string {
	if t.Draw || t.Minus {
		return []string{t.Key()}
	}
	return []string{t.Key(), fmt.Sprintf("%d + %d = %d", t.Second, t.First, t.result())}
}

// Prompt asks for the sentence or the picture.
func (t PictureSum) Prompt(lang string) string {
	switch {
	case t.Draw && lang == "es":
		return "Dibuja puntos y escribe el número: " + t.sentence().String()
	case t.Draw:
		return "Draw dots and write the number: " + t.sentence().String()
	case t.Minus && lang == "es":
		return "Se tachan algunos puntos. Escribe la resta que muestra el dibujo."
	case t.Minus:
		return "Some dots are crossed out. Write the number sentence that the picture shows."
	case lang == "es":
		return "Los puntos se juntan. Escribe la suma que muestra el dibujo."
	}
	return "The dots are put together. Write the number sentence that the picture shows."
}

// Short tells what the picture shows.
func (t PictureSum) Short(lang string) string {
	if t.Draw {
		return t.Prompt(lang)
	}
	return shown(t, lang, fmt.Sprintf("%d %s %d", t.First, t.Sign(), t.Second))
}

// Traits of a picture are those of its sentence.
func (t PictureSum) Traits() Traits {
	ts := t.sentence().Traits()
	ts[Asks] = "a sentence to a picture"
	if t.Draw {
		ts[Asks] = "a picture to a sentence"
	}
	return ts
}

// Codes of a picture: adding and taking away shown by drawings and number sentences, kindergarten.
func (t PictureSum) Codes() []Code { return []Code{"K.OA.A.1"} }

// The missteps with pictures of adding and taking away.
var (
	crossedAdded = newMisstep("crossed out but added",
		"adds the dots that are crossed out",
		"suma los puntos tachados",
		"cover the crossed dots with a hand and say what is left",
		"tapar con la mano los puntos tachados y decir cuántos quedan", "common practice")
	joinedTaken = newMisstep("put together but taken away",
		"takes one group from the other, where both are put together",
		"resta un grupo del otro cuando los dos se juntan",
		"push the groups together and count them all",
		"juntar los grupos y contarlos todos", "common practice")
	crossedTwice = newMisstep("crossed out taken from what is left",
		"starts with the dots that are left and not with all of them",
		"empieza con los puntos que quedan y no con todos",
		"count all the dots first, then cross out and say what is left",
		"contar primero todos los puntos, luego tachar y decir cuántos quedan", "common practice")
	groupAsResult = newMisstep("group written as the result",
		"writes one of the groups as what comes out",
		"escribe uno de los grupos como resultado",
		"push the groups together and count them all, one by one",
		"juntar los grupos y contarlos todos, uno por uno", "common practice")
)

// Missteps of a picture: the other sign, and another number for the whole; of a drawing, the
// other sign and counting that goes wrong by one.
func (t PictureSum) Missteps() []Misstep {
	result, other := t.result(), PictureSum{First: t.First, Second: t.Second, Minus: !t.Minus}
	if !t.Minus { // the smaller group from the larger
		other.First, other.Second = max(t.First, t.Second), min(t.First, t.Second)
	}
	switch {
	case t.Draw && t.Minus:
		return gather(t, t.drawnSlips(addedInstead, other.result()))
	case t.Draw:
		return gather(t, t.drawnSlips(subtractedInstead, other.result()))
	case t.Minus:
		slips := []slip{{crossedAdded, other.Key()}}
		if result >= t.Second {
			slips = append(slips, slip{crossedTwice, PictureSum{First: result, Second: t.Second, Minus: true}.Key()})
		}
		return gather(t, slips)
	}
	return gather(t, []slip{{joinedTaken, other.Key()}, {groupAsResult, fmt.Sprintf("%d + %d = %d", t.First, t.Second, t.Second)}})
}

func (t PictureSum) drawnSlips(sign *MisstepKind, other int) []slip {
	return []slip{{sign, strconv.Itoa(other)}, {oneMissed, strconv.Itoa(t.result() - 1)}, {oneTwice, strconv.Itoa(t.result() + 1)}}
}

// Clashes of a picture: the fact family.
func (t PictureSum) Clashes() []string { return t.sentence().Clashes() }

// Fingerprint of a picture is its text.
func (t PictureSum) Fingerprint() string { return t.String() }

// Looks of a picture.
func (t PictureSum) Looks() []Look {
	if t.Draw {
		return []Look{LookDrawSum}
	}
	return []Look{LookPictureSum}
}
