package sheet

import "evenhand/standards"

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
		return looks[standards.LookWords].direction
	case standards.Clock:
		if t.Verb == standards.Say {
			return sayTime
		}
	case standards.PlaceValue:
		if q.Look == standards.LookFrame && t.Compose {
			return makeNumber
		}
	case standards.Sentence:
		if q.Look == standards.LookFrame {
			return looks[standards.LookColumn].direction
		}
	case standards.Groups:
		if t.Fewer {
			return fewerDots
		}
	case standards.Expanded:
		if q.Look == standards.LookBond {
			return bothParts
		}
	}
	return looks[q.Look].direction
}
