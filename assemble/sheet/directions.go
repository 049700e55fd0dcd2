package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// Directions that depend on the task, not only on the look.
var (
	sayTime    = phrase{"Write in words the time that the clock shows.", "Escribe con palabras la hora que marca el reloj."}
	makeNumber = phrase{"Look at the places. Write the number.", "Mira los lugares. Escribe el número."}
	fewerDots  = phrase{"Mark the group with fewer dots, or the middle box if they are the same.", "Marca el grupo con menos puntos, o el cuadro del medio si son iguales."}
	toTheRing  = phrase{"Start at the number in the frame. Jump to the number in the ring. Write the missing number.", "Empieza en el número enmarcado. Salta hasta el número del óvalo. Escribe el número que falta."}
	dotToRing  = phrase{"Jump along the line from the dot to the ring. Write the missing number.", "Salta por la recta desde el punto hasta el círculo. Escribe el número que falta."}
	twoAnswers = phrase{"Listen to the story. Draw it. Write a number in each box.", "Escucha el problema. Dibújalo. Escribe un número en cada cuadro."}
	hundreds   = phrase{"Count the hundreds, the tens and the ones. Write the numbers in the boxes.", "Cuenta las centenas, las decenas y las unidades. Escribe los números en los cuadros."}
	circleHalf = phrase{" Circle a.m. or p.m.", " Encierra a.m. o p.m."}
	andSign    = phrase{" and ", " y "}
)

// directionOf is the short sentence that the teacher reads aloud before a group of
// items that share it.
func directionOf(q Question) phrase {
	said := looks[q.Look].direction
	switch t := q.Task.(type) {
	case nil:
		return looks[task.LookWords].direction
	case task.Clock:
		return clockDirection(t, said)
	case task.PlaceValue:
		switch {
		case q.Look == task.LookFrame && t.Compose:
			return makeNumber
		case q.Look == task.LookTensAndOnes && t.Number >= 100:
			return hundreds
		}
	case task.Sentence:
		return sentenceDirection(t, q.Look)
	case task.Groups:
		if t.Fewer {
			return fewerDots
		}
	case task.Story:
		if t.Situation == task.TogetherBoth && q.Look == task.LookStory {
			return twoAnswers
		}
	case task.Expanded:
		if q.Look == task.LookBond {
			return partsOf(t)
		}
	}
	return said
}

func sentenceDirection(t task.Sentence, l task.Look) phrase {
	endGiven := t.N == 2 && t.Blank == 1
	switch {
	case l == task.LookFrame:
		return looks[task.LookColumn].direction
	case l == task.LookHundredsChart && endGiven:
		return toTheRing
	case l == task.LookNumberLine && endGiven:
		return dotToRing
	}
	return looks[l].direction
}

// clockDirection asks for a.m. or p.m. where the sheet has the two to choose from.
func clockDirection(t task.Clock, said phrase) phrase {
	switch {
	case t.Verb == task.Say:
		return sayTime
	case t.Verb == task.Read && t.Time.Half != "":
		return phrase{said.en + circleHalf.en, said.es + circleHalf.es}
	}
	return said
}

// partsOf names the places that a number falls into: "Break the number into tens and ones."
func partsOf(t task.Expanded) phrase {
	var en, es []string
	parts := strings.Split(t.Key(), " + ")
	for i, part := range parts {
		name := placeNames[len(part)-1]
		if en, es = append(en, name.en), append(es, name.es); i == len(parts)-2 {
			en[i] += andSign.en + placeNames[len(parts[i+1])-1].en
			es[i] += andSign.es + placeNames[len(parts[i+1])-1].es
			break
		}
	}
	return phrase{
		"Break the number into " + strings.Join(en, ", ") + ". Write how much each part is worth.",
		"Separa el número en " + strings.Join(es, ", ") + ". Escribe cuánto vale cada parte.",
	}
}
