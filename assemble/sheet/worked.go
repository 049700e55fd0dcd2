package sheet

import (
	"fmt"
	"strconv"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Example is an item that is done already, drawn in the way that shows how: on top of a practice sheet.
// Its look may be any that can draw the task, also one that the task is never asked in.
type Example struct {
	Task task.Task
	Look task.Look
}

// Draws says whether the example can be drawn.
func (e Example) Draws() bool {
	s, err := Options{Font: BuiltInFont}.settle()
	if err != nil || e.Task == nil {
		return false
	}
	_, ok := s.drawn(e)
	return ok
}

// mostBlocks is the largest number drawn in sticks and dots beside a sum.
const mostBlocks = 199

var exampleTitle = phrase{"Look how it is done.", "Mira cómo se hace."}

// ways say how an example in a look is worked, to read aloud with the children.
var ways = map[task.Look]phrase{
	task.LookNumberLine: {
		"Start at the dot. Jump the tens, then the ones. The first jump already counts.",
		"Empieza en el punto. Salta las decenas y luego las unidades. El primer salto ya cuenta."},
	task.LookHundredsChart: {
		"One row down is ten more. One row up is ten less. Then count the ones.",
		"Una fila abajo son diez más. Una fila arriba son diez menos. Luego cuenta las unidades."},
	task.LookMakeTen: {
		"Fill up to the next ten first. Then add the rest.",
		"Primero completa hasta la decena siguiente. Luego suma lo que queda."},
	task.LookBreakApart: {
		"Add the tens. Add the ones. Put them together.",
		"Suma las decenas. Suma las unidades. Júntalas."},
	task.LookBond: {
		"The two parts make the whole. Check: part and part together.",
		"Las dos partes forman el todo. Comprueba: una parte y la otra juntas."},
	task.LookTensAndOnes: {
		"Count the sticks: those are the tens. Count the dots: those are the ones.",
		"Cuenta las barras: son las decenas. Cuenta los puntos: son las unidades."},
	task.LookFrame: {
		"Each digit has its place.",
		"Cada dígito tiene su lugar."},
	task.LookClockFace: {
		"The short hand tells the hour. The long hand tells the minutes: five from numeral to numeral.",
		"La manecilla corta dice la hora. La larga dice los minutos: cinco de un número al siguiente."},
	task.LookBlankFace: {
		"The long hand shows the minutes. The short hand moves on from hour to hour.",
		"La manecilla larga muestra los minutos. La corta avanza de una hora a la siguiente."},
	task.LookCompare: {
		"Compare the largest place first. The open side is by the larger number.",
		"Compara primero la posición mayor. El lado abierto mira al número mayor."},
	task.LookSequence: {
		"Say the numbers aloud. Each step is as long as the one before.",
		"Di los números en voz alta. Cada paso es igual al anterior."},
	task.LookStory: {
		"Draw the story. Then write what you found out.",
		"Dibuja el problema. Luego escribe lo que averiguaste."},
	task.LookCoins: {
		"Begin with the coins that are worth most. Say how much after each.",
		"Empieza con las monedas que más valen. Di cuánto llevas después de cada una."},
	task.LookArray: {
		"Each row has as many. Add row by row.",
		"Cada fila tiene la misma cantidad. Suma fila por fila."},
	task.LookBarGraph: {
		"Go from the end of the bar to its number on the scale.",
		"Ve desde el final de la barra hasta su número en la escala."},
	task.LookPictureGraph: {
		"Each picture stands for one. Count the pictures.",
		"Cada dibujo vale uno. Cuenta los dibujos."},
	task.LookTallyChart: {
		"A bundle is five. Count the bundles first, then the single marks.",
		"Un grupo son cinco. Cuenta primero los grupos y luego las rayas sueltas."},
	task.LookCentimeters: {
		"Where does it begin, where does it end? Count the steps between.",
		"¿Dónde empieza y dónde termina? Cuenta los pasos que hay entre los dos."},
	task.LookInches: {
		"Where does it begin, where does it end? Count the steps between.",
		"¿Dónde empieza y dónde termina? Cuenta los pasos que hay entre los dos."},
	task.LookTwin: {
		"Taking away asks: what goes with it to make the whole?",
		"Restar es preguntar: ¿qué falta para formar el total?"},
}

// Sums in columns are told by their numbers.
var (
	newTen     = phrase{"Ones: %d + %d = %d. Ten ones are a new ten.", "Unidades: %d + %d = %d. Diez unidades son una decena nueva."}
	plainOnes  = phrase{"Ones with ones: %d + %d = %d.", "Unidades con unidades: %d + %d = %d."}
	newHundred = phrase{"Tens: %s = %d. Ten tens are a new hundred.", "Decenas: %s = %d. Diez decenas son una centena nueva."}
	plainTens  = phrase{"Tens with tens: %s = %d.", "Decenas con decenas: %s = %d."}
	tenApart   = phrase{
		"There are not enough ones to take %d away. Take one ten apart: now there are %d ones. %d − %d = %d.",
		"No hay unidades suficientes para quitar %d. Separa una decena: ahora hay %d unidades. %d − %d = %d."}
	onesAway   = phrase{"Ones from ones: %d − %d = %d.", "Unidades menos unidades: %d − %d = %d."}
	tensAway   = phrase{"Tens: %d − %d = %d.", "Decenas: %d − %d = %d."}
	placeByOne = phrase{
		"Go one place at a time. Not enough? Take one of the next place apart: it makes ten.",
		"Ve lugar por lugar. ¿No alcanza? Separa una del lugar siguiente: son diez."}
	stepByStep = phrase{
		"Go one place at a time, from the ones on. Ten make one of the next place.",
		"Ve lugar por lugar, desde las unidades. Diez forman una del lugar siguiente."}
	lookThrough = phrase{"This one is done. Say why it is right.", "Este ya está hecho. Di por qué está bien."}
)

// example is the whole block: a frame with a heading, what is drawn, and how it is worked. Where that is too tall
// for a page, as a hundreds chart in large print may be, the item stands as it is usually asked; nothing stands
// there where that is too tall, too.
func (s settings) example(e Example) (d drawing, fits bool, err error) {
	room := s.pageHeight - s.topSpace - s.bottomSpace - s.heading(Paper{Title: "1"}).h - groupGap
	for _, look := range []task.Look{e.Look, e.Task.Looks()[0]} {
		if d, err = s.exampleIn(Example{e.Task, look}); err != nil || d.h <= room {
			return d, true, err
		}
	}
	return d, false, nil
}

func (s settings) exampleIn(e Example) (drawing, error) {
	const edge = 4.0
	inner := s
	inner.width -= 2 * edge
	picture, ok := inner.drawn(e)
	if !ok {
		return drawing{}, words.Errorf("%q can't be shown as %s on an example", e.Task, e.Look)
	}
	heading := s.inBoth(inner.kit, tagDirection, exampleTitle, lettering{size: .78 * s.size, bold: true})
	said := s.inBoth(inner.kit, tagText, workedAs(e), lettering{size: max(leastPrint, .7*s.size)})
	done := inner.kit
	done.key = true
	body := stack(3, heading, tagged(tagFigure, done.aloudDone(Question{Task: e.Task, Look: e.Look}), picture), said)
	return drawing{w: s.width, h: body.h + 2*edge, paint: func(c canvas, at point) {
		c.rect(at, s.width, body.h+2*edge, style{line: thin, dashed: true})
		body.paint(c, point{at.x + edge, at.y + edge})
	}, speaks: true}, nil
}

// aloudDone is an example in words.
func (k kit) aloudDone(q Question) string {
	if _, known := looks[q.Look]; !known || q.Look == task.LookFrame {
		return k.saidOn(k.questionAloud(q.Task), k.answerText(q))
	}
	return k.aloud(q)
}

// drawn is the item filled in, and for a sum in a frame the numbers in sticks and dots beside it.
func (s settings) drawn(e Example) (drawing, bool) {
	k := s.kit
	k.key = true
	l, ok := looks[e.Look]
	if !ok {
		return drawing{}, false
	}
	k.choices = Choices(Question{Task: e.Task, Look: e.Look})
	k.words = &ownWords{}
	done, ok := l.draw(k, e.Task)
	if !ok {
		return drawing{}, false
	}
	sum, blocky := inBlocks(e)
	if !blocky {
		return done, true
	}
	k.key = false
	beside := k.width - done.w - 2*columnGap
	if built := k.built(sum, beside); built.w <= beside {
		done.axis, built.axis = 0, 0
		return row(columnGap, built, done), true
	}
	return done, true
}

// inBlocks is the sum of an example that is drawn in sticks and dots.
func inBlocks(e Example) (task.Sentence, bool) {
	s, ok := e.Task.(task.Sentence)
	small := ok && s.N == 2 && s.Blank == 2 && s.Size() <= mostBlocks && s.Size() >= 10
	if small && !s.IsAddition() {
		small = s.Terms[0] < 100
	}
	return s, small && e.Look == task.LookFrame
}

// built is a sum in sticks and dots: what is added together, ten of a kind in a frame; or what there was, a ten
// taken apart where need be, and what is taken away crossed out.
func (k kit) built(s task.Sentence, room float64) drawing {
	k.width = room
	a, b := s.Terms[0], s.Terms[1]
	if s.IsAddition() {
		parts := flow(room, k.gap(), 3, k.pile(a/10, a%10, 0, 0), k.text("+"), k.pile(b/10, b%10, 0, 0))
		return stack(5, parts, flow(room, k.gap(), 3, k.text("="), k.pile(a/10+b/10, a%10+b%10, 0, 0)))
	}
	tens, ones := a/10, a%10
	if ones < b%10 {
		tens, ones = tens-1, ones+10
	}
	return k.pile(tens, ones, b/10, b%10)
}

// pile is sticks of ten and dots. Ten of a kind stand in a dashed frame; the last crossedTens and
// crossedOnes are crossed out.
func (k kit) pile(tens, ones, crossedTens, crossedOnes int) drawing {
	const step = unit + blockSpace
	const pitch = 2*dotRadius + 1.4
	columns := (ones + 4) / 5
	wide := step * float64(tens)
	w := wide + pitch*float64(columns)
	if tens > 0 && ones > 0 {
		w += blockSpace
		wide += blockSpace
	}
	return drawing{w: w, h: stick + 2, axis: (stick + 2) / 2, paint: func(c canvas, at point) {
		top := at.y + 1
		one := bundle(1)
		for i := range tens {
			x := at.x + step*float64(i)
			one.paint(c, point{x, top})
			if i >= tens-crossedTens {
				c.line(point{x - 1.2, top + stick - 3}, point{x + unit + 1.2, top + 3}, style{line: thick})
			}
		}
		if tens >= 10 {
			c.rect(point{at.x - 1, top - 1}, step*10-blockSpace+2, stick+2, style{line: thin, dashed: true})
		}
		for i := range ones {
			middle := point{at.x + wide + dotRadius + pitch*float64(i/5), top + stick - dotRadius - pitch*float64(i%5)}
			c.circle(middle, dotRadius, style{fill: black})
			if i >= ones-crossedOnes {
				c.line(point{middle.x - 2.2, middle.y + 2.2}, point{middle.x + 2.2, middle.y - 2.2}, style{line: plain})
			}
		}
		if ones >= 10 {
			h := 5*pitch - 1.4
			c.rect(point{at.x + wide - .7, top + stick - h - .7}, 2*pitch-1.4+1.4, h+1.4, style{line: thin, dashed: true})
		}
	}}
}

// workedAs says how the example is worked.
func workedAs(e Example) phrase {
	s, isSum := e.Task.(task.Sentence)
	columns := isSum && s.N == 2 && s.Blank == 2 && (e.Look == task.LookFrame || e.Look == task.LookColumn)
	switch way, told := ways[e.Look]; {
	case columns:
		return phrase{kit{lang: "en"}.columnsWorked(s), kit{lang: "es"}.columnsWorked(s)}
	case told && !(isSum && e.Look == task.LookFrame):
		return way
	}
	return lookThrough
}

// columnsWorked tells a sum in columns place by place.
func (k kit) columnsWorked(s task.Sentence) string {
	a, b := s.Terms[0], s.Terms[1]
	switch {
	case s.IsAddition() && s.Size() <= mostBlocks:
		ones, tens := a%10+b%10, a/10+b/10
		first, second := plainOnes, plainTens
		added := strconv.Itoa(a/10) + " + " + strconv.Itoa(b/10)
		if ones >= 10 {
			first, tens, added = newTen, tens+1, "1 + "+added
		}
		if tens >= 10 {
			second = newHundred
		}
		return fmt.Sprintf(k.say(first), a%10, b%10, ones) + " " + fmt.Sprintf(k.say(second), added, tens)
	case s.IsAddition():
		return k.say(stepByStep)
	case a >= 100:
		return k.say(placeByOne)
	case a%10 < b%10:
		ones := a%10 + 10
		return fmt.Sprintf(k.say(tenApart), b%10, ones, ones, b%10, ones-b%10) + " " + fmt.Sprintf(k.say(tensAway), a/10-1, b/10, a/10-1-b/10)
	}
	return fmt.Sprintf(k.say(onesAway), a%10, b%10, a%10-b%10) + " " + fmt.Sprintf(k.say(tensAway), a/10, b/10, a/10-b/10)
}
