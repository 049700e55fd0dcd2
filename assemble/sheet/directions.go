package sheet

import "evenhand/standards/task"

// Directions that depend on the task, not only on the look.
var (
	sayTime    = phrase{"Write in words the time that the clock shows.", "Escribe con palabras la hora que marca el reloj."}
	makeNumber = phrase{"Look at the places. Write the number.", "Mira los lugares. Escribe el número."}
	bothParts  = phrase{"The parts make the whole. Write the parts.", "Las partes forman el todo. Escribe las partes."}
	fewerDots  = phrase{"Mark the group with fewer dots, or the middle box if they are the same.", "Marca el grupo con menos puntos, o el cuadro del medio si son iguales."}
)

// directionOf is the short sentence that the teacher reads aloud before a group of
// items that share it.
func directionOf(q Question) phrase {
	switch t := q.Task.(type) {
	case nil:
		return looks[task.LookWords].direction
	case task.Clock:
		if t.Verb == task.Say {
			return sayTime
		}
	case task.PlaceValue:
		if q.Look == task.LookFrame && t.Compose {
			return makeNumber
		}
	case task.Sentence:
		if q.Look == task.LookFrame {
			return looks[task.LookColumn].direction
		}
	case task.Groups:
		if t.Fewer {
			return fewerDots
		}
	case task.Expanded:
		if q.Look == task.LookBond {
			return bothParts
		}
	}
	return looks[q.Look].direction
}
