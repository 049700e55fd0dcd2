package sheet

import (
	"fmt"
	"strings"

	"evenhand/standards/task"
)

// look is how one kind of item stands on the sheet.
type look struct {
	name      phrase // what a screen reader calls the picture; it never tells the answer
	direction phrase // one short sentence that the teacher reads aloud
	// draw lays the item out; false when the task has no such look.
	draw func(k kit, posed task.Task) (drawing, bool)
}

// looks has a row for each look; each is drawn in the file of its name.
var looks = map[task.Look]look{
	task.LookSentence: {
		phrase{"number sentence", "igualdad numérica"},
		phrase{"Write the missing number in each box.", "Escribe en cada cuadro el número que falta."}, sentence},
	task.LookColumn: {
		phrase{"numbers one under the other", "números uno debajo del otro"},
		phrase{"Look at the sign. Write one digit in each box.", "Mira el signo. Escribe un dígito en cada cuadro."}, column},
	task.LookBond: {
		phrase{"number bond", "descomposición de un número"},
		phrase{"The parts make the whole. Write the missing number.", "Las partes forman el todo. Escribe el número que falta."}, bond},
	task.LookExpanded: {
		phrase{"number as a sum of its parts", "número como suma de sus partes"},
		phrase{"Write what each digit is worth.", "Escribe cuánto vale cada dígito."}, sentence},
	task.LookTensAndOnes: {
		phrase{"sticks of ten and single dots", "barras de diez y puntos sueltos"},
		phrase{"Count the tens and the ones. Write the numbers in the boxes.", "Cuenta las decenas y las unidades. Escribe los números en los cuadros."}, tensAndOnes},
	task.LookFrame: {
		phrase{"place-value frame", "tabla de valor posicional"},
		phrase{"Write each digit in its place.", "Escribe cada dígito en su lugar."}, frame},
	task.LookCompare: {
		phrase{"two numbers with a circle between", "dos números con un círculo en medio"},
		phrase{"Write <, > or = in the circle.", "Escribe <, > o = en el círculo."}, compare},
	task.LookSequence: {
		phrase{"numbers in a row", "números en fila"},
		phrase{"Count along. Write each missing number.", "Sigue contando. Escribe cada número que falta."}, sequence},
	task.LookClockFace: {
		phrase{"clock face", "reloj de manecillas"},
		phrase{"Write the time that the clock shows.", "Escribe la hora que marca el reloj."}, clockFace},
	task.LookBlankFace: {
		phrase{"clock face without hands", "reloj sin manecillas"},
		phrase{"Draw the two hands of the clock.", "Dibuja las dos manecillas del reloj."}, blankFace},
	task.LookSaidFace: {
		phrase{"clock face without hands", "reloj sin manecillas"},
		phrase{"Read the time. Draw the two hands of the clock.", "Lee la hora. Dibuja las dos manecillas del reloj."}, saidFace},
	task.LookSaidTime: {
		phrase{"time in words", "hora con palabras"},
		phrase{"Read the time. Write it in digits.", "Lee la hora. Escríbela con números."}, saidTime},
	task.LookMatch: {
		phrase{"clock faces and times", "relojes y horas"},
		phrase{"Draw a line from each clock to its time.", "Une cada reloj con su hora."}, match},
	task.LookWords: {
		phrase{"question in words", "pregunta con palabras"},
		phrase{"Listen and read. Write the answer on the line.", "Escucha y lee. Escribe la respuesta en la línea."}, inWords},
	task.LookNumberLine: {
		phrase{"number line", "recta numérica"},
		phrase{"Start at the dot and jump along the line. Write the missing number.", "Empieza en el punto y salta por la recta. Escribe el número que falta."}, numberLine},
	task.LookHundredsChart: {
		phrase{"hundreds chart", "tabla de números hasta 120"},
		phrase{"Start at the number in the frame and jump. Write the missing number.", "Empieza en el número enmarcado y salta. Escribe el número que falta."}, hundredsChart},
	task.LookMakeTen: {
		phrase{"sum with one number split in two", "suma con un número separado en dos"},
		phrase{"Make the next ten. Write the numbers in the boxes.", "Forma la decena siguiente. Escribe los números en los cuadros."}, makeTen},
	task.LookBreakApart: {
		phrase{"sum with both numbers split in two", "suma con los dos números separados"},
		phrase{"Break the numbers into tens and ones. Add.", "Separa los números en decenas y unidades. Suma."}, breakApart},
	task.LookStory: {
		phrase{"word problem", "problema"},
		phrase{"Listen to the story. Draw it. Write the answer.", "Escucha el problema. Dibújalo. Escribe la respuesta."}, story},
	task.LookChoice: {
		phrase{"three answers to choose from", "tres respuestas para elegir"},
		phrase{"Mark the box of the right answer.", "Marca el cuadro de la respuesta correcta."}, choice},
	task.LookTick: {
		phrase{"two boxes to mark", "dos cuadros para marcar"},
		phrase{"Mark the right box.", "Marca el cuadro correcto."}, tick},
	task.LookDots: {
		phrase{"dots to count", "puntos para contar"},
		phrase{"Count the dots. Write how many.", "Cuenta los puntos. Escribe cuántos hay."}, dots},
	task.LookGroups: {
		phrase{"two groups of dots", "dos grupos de puntos"},
		phrase{"Mark the group with more dots, or the middle box if they are the same.", "Marca el grupo con más puntos, o el cuadro del medio si son iguales."}, dotGroups},
	task.LookArray: {
		phrase{"dots in equal rows", "puntos en filas iguales"},
		phrase{"Add the rows. Write how many dots in all.", "Suma las filas. Escribe cuántos puntos hay en total."}, array},
	task.LookCoins: {
		phrase{"coins", "monedas"},
		phrase{"Count the money. Write how many cents.", "Cuenta el dinero. Escribe cuántos centavos hay."}, coins},
	task.LookPairs: {
		phrase{"two sums to complete", "dos sumas para completar"},
		phrase{"Write two different pairs that make the number.", "Escribe dos pares distintos que hagan el número."}, pairs},
	task.LookTwin: {
		phrase{"two number sentences", "dos igualdades numéricas"},
		phrase{"The same number goes in both boxes. Write it.", "El mismo número va en los dos cuadros. Escríbelo."}, twin},
}

// draw lays out a question in its look.
func (k kit) draw(q Question) (drawing, error) {
	if q.Task == nil {
		return k.asked(q.Text, q.Key), nil
	}
	l, ok := looks[q.Look]
	if !ok {
		return drawing{}, fmt.Errorf("item %d: no look %q; %q can be shown as %s", q.Number, q.Look, q.Task, lookNames(q.Task))
	}
	k.choices, k.words = Choices(q), &ownWords{text: q.Text}
	d, ok := l.draw(k, q.Task)
	if !ok {
		return drawing{}, fmt.Errorf("item %d: %q can't be shown as %s; it can be shown as %s", q.Number, q.Task, q.Look, lookNames(q.Task))
	}
	if q.Text != "" && !k.words.printed {
		d = stack(3, tagged(tagText, "", k.paragraph(q.Text, lettering{size: k.size})), tagged(tagFigure, k.aloud(q), d))
		d.speaks = true
	}
	return d, nil
}

func lookNames(posed task.Task) string {
	var names []string
	for _, l := range posed.Looks() {
		names = append(names, string(l))
	}
	return strings.Join(names, ", ")
}
