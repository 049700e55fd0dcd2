package task

// TellsIn is what such an answer suggests, in the language ("en" or "es"; any other
// reads as "en").
func (k *MisstepKind) TellsIn(lang string) string {
	if text, ok := spanishTells[k]; ok && lang == "es" {
		return text
	}
	return k.Tells
}

// spanishTells is Tells in Spanish as it is written in Latin America. None begins with the
// sound of o, because several are joined by "; o ".
var spanishTells = map[*MisstepKind]string{
	// Taking away and adding.
	smallerFromLarger: "resta en cada columna el dígito menor del mayor, sin importar cuál está arriba",
	tenNotPaid:        "toma una decena para las unidades, pero deja las decenas como estaban",
	borrowFromZero:    "al pedir prestado cambia un cero por nueve y no sigue a la posición siguiente",
	borrowAcrossZero:  "pide prestado a la posición que está más allá del cero y deja el cero como estaba",
	misaligned:        "pone las unidades del número más corto debajo de las decenas del más largo",
	zeroDropped:       "deja fuera el cero y suma las decenas como si fueran unidades",
	zeroInstead:       "escribe 0 donde el dígito de arriba es demasiado pequeño",
	addedInstead:      "suma aunque el signo indica restar",
	carryDropped:      "forma una decena nueva y se olvida de sumarla",
	bothDigits:        "escribe uno al lado del otro los dos dígitos de la suma de una columna",
	tenWritten:        "escribe el dígito de las decenas y lleva el de las unidades",
	allDigits:         "suma todos los dígitos como si fueran unidades",
	subtractedInstead: "resta aunque el signo indica sumar",
	countedFirst:      "cuenta el número de partida como primer paso",
	addendLeftOut:     "deja fuera uno de los números",

	// The equal sign.
	operatedSeen: "suma o resta los dos números que ve, según el signo, aunque uno de ellos es el total",
	copiedSeen:   "escribe un número que ya está en la igualdad",
	answerFirst:  "toma por falsa una igualdad cuando la operación no está sola a la izquierda",
	answerNext:   "toma por resultado el número que sigue al signo igual y no lee lo demás",

	// Stories.
	wordFollowed:  "suma porque el problema dice más, o resta porque dice menos",
	otherSign:     "suma cuando en el problema se quita, o resta cuando se agrega",
	numberCopied:  "escribe como respuesta un número del problema",
	firstStepOnly: "se detiene después del primer paso",

	// Tens and ones.
	digitsAsParts: "separa el número en sus dígitos y no en lo que vale cada uno",
	writtenOut:    "escribe cada parte como se dice, una tras otra",
	hundredKept:   "escribe el dígito y luego 100 antes del resto",
	turnedAround:  "pone los dígitos en el orden contrario",
	valueWritten:  "escribe cuánto vale un dígito donde se pregunta cuántas hay",
	partsAdded:    "suma los dígitos como si todos fueran unidades",

	// Comparing.
	signTurned:   "sabe cuál es mayor, pero pone el signo al revés o se guía por las palabras",
	onesCompared: "mira las unidades antes que las decenas",
	digitsSummed: "se guía por lo grandes que son los dígitos y no por su posición",

	// Counting on and back.
	changedOnes:  "cuenta uno más o uno menos, y no diez",
	otherWay:     "sube cuando se pide menos, o baja cuando se pide más",
	wrongHundred: "cambia en uno las decenas cuando se piden centenas, o al revés",
	countedOnes:  "sigue de uno en uno aunque el paso es mayor",
	countedBack:  "cuenta hacia adelante cuando la serie baja, o hacia atrás cuando sube",
	oneTooFar:    "se salta un número",
	writtenHeard: "escribe la centena y luego el resto, como 1001 en lugar de 101",

	// Writing numbers.
	teenReversed: "pone delante el dígito que se oye primero, 31 en lugar de trece",
	teenTy:       "confunde trece con treinta, u otros números que suenan parecido",
	zeroLeftOut:  "deja fuera el cero que guarda una posición vacía",
	digitsNamed:  "nombra los dígitos uno por uno",

	// Things, dots and coins.
	oneMissed:      "dice los números en orden, pero deja una cosa sin contar",
	oneTwice:       "dice los números en orden, pero cuenta una cosa dos veces",
	moreFewerMixed: "elige el grupo con menos cuando se pide el que tiene más, o al revés",
	roomCompared:   "se guía por el espacio que ocupan los puntos y no por cuántos hay",
	pairTurned:     "da vuelta al primer par y lo toma por otro distinto",
	wholeAsPart:    "escribe el número mismo como una parte y le suma otra",
	parityMixed:    "confunde las palabras par e impar",
	firstDigit:     "se guía por el primer dígito y no por las unidades",
	edgesAdded:     "suma el número de filas y el número de columnas",
	rowLeftOut:     "suma una fila de menos",
	rowTooMany:     "suma una fila de más",
	coinsCounted:   "cuenta las monedas y no lo que valen",
	sizeForWorth:   "por el tamaño, toma la moneda de 5 centavos por diez y la de 10 por cinco",
	stepKept:       "cuenta todas las monedas con el paso de la primera",

	// Clocks.
	handsSwapped:    "toma la manecilla larga por la de la hora y la corta por la de los minutos",
	nextHour:        "dice la hora hacia la que va la manecilla corta",
	numeralMinutes:  "lee como minutos el número que señala la manecilla larga",
	minuteIgnored:   "lee la hora y no los minutos",
	hourFromMinutes: "toma la hora de la manecilla larga",
}
