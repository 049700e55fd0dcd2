package sheet

import "evenhand/standards/task"

// looks has a row for each look; each is drawn in the file of its name.
var looks = map[task.Look]look{
	task.LookSentence: {
		name:      phrase{"number sentence", "igualdad numérica"},
		direction: phrase{"Write the missing number in each box.", "Escribe en cada cuadro el número que falta."},
		draw:      sentence,
	},
	task.LookColumn: {
		name:      phrase{"numbers one under the other", "números uno debajo del otro"},
		direction: inColumns,
		draw:      column,
	},
	task.LookBond: {
		name:      phrase{"number bond", "descomposición de un número"},
		direction: phrase{"The parts make the whole. Write the missing number.", "Las partes forman el todo. Escribe el número que falta."},
		draw:      bond, aloud: bondAloud, directionFor: bondDirection,
	},
	task.LookExpanded: {
		name:      phrase{"number as a sum of its parts", "número como suma de sus partes"},
		direction: phrase{"Write what each digit is worth.", "Escribe cuánto vale cada dígito."},
		draw:      sentence,
	},
	task.LookTensAndOnes: {
		name:      phrase{"sticks of ten and single dots", "barras de diez y puntos sueltos"},
		direction: phrase{"Count the tens and the ones. Write the numbers in the boxes.", "Cuenta las decenas y las unidades. Escribe los números en los cuadros."},
		draw:      tensAndOnes, aloud: blocksAloud, directionFor: blocksDirection,
	},
	task.LookFrame: {
		name:      phrase{"place-value frame", "tabla de valor posicional"},
		direction: phrase{"Write each digit in its place.", "Escribe cada dígito en su lugar."},
		draw:      frame, directionFor: frameDirection,
	},
	task.LookCompare: {
		name:      phrase{"two numbers with a circle between", "dos números con un círculo en medio"},
		direction: phrase{"Write <, > or = in the circle.", "Escribe <, > o = en el círculo."},
		draw:      compare,
	},
	task.LookSequence: {
		name:      phrase{"numbers in a row", "números en fila"},
		direction: phrase{"Count along. Write each missing number.", "Sigue contando. Escribe cada número que falta."},
		draw:      sequence,
	},
	task.LookClockFace: {
		name:      phrase{"clock face", "reloj de manecillas"},
		direction: readTime,
		draw:      clockFace, aloud: clockAloud, directionFor: clockDirection,
	},
	task.LookBlankFace: {
		name:      phrase{"clock face without hands", "reloj sin manecillas"},
		direction: phrase{"Draw the two hands of the clock.", "Dibuja las dos manecillas del reloj."},
		draw:      blankFace, aloud: blankFaceAloud,
	},
	task.LookSaidFace: {
		name:      phrase{"clock face without hands", "reloj sin manecillas"},
		direction: phrase{"Read the time. Draw the two hands of the clock.", "Lee la hora. Dibuja las dos manecillas del reloj."},
		draw:      saidFace, aloud: saidFaceAloud,
	},
	task.LookSaidTime: {
		name:      phrase{"time in words", "hora con palabras"},
		direction: writeSaid,
		draw:      saidTime, aloud: saidTimeAloud, directionFor: saidTimeDirection,
	},
	task.LookMatch: {
		name:      phrase{"clock faces and times", "relojes y horas"},
		direction: phrase{"Draw a line from each clock to its time.", "Une cada reloj con su hora."},
		draw:      match, aloud: matchAloud,
	},
	task.LookWords: {
		name:      phrase{"question in words", "pregunta con palabras"},
		direction: phrase{"Listen and read. Write the answer on the line.", "Escucha y lee. Escribe la respuesta en la línea."},
		draw:      inWords,
	},
	task.LookNumberLine: {
		name: phrase{"number line", "recta numérica"},
		direction: phrase{
			"Start at the dot and jump along the line. Write the missing number.",
			"Empieza en el punto y salta por la recta. Escribe el número que falta."},
		draw: numberLine, aloud: lineAloud, directionFor: lineDirection,
	},
	task.LookHundredsChart: {
		name: phrase{"hundreds chart", "tabla de números hasta 120"},
		direction: phrase{
			"Start at the number in the frame and jump. Write the missing number.",
			"Empieza en el número enmarcado y salta. Escribe el número que falta."},
		draw: hundredsChart, aloud: chartAloud, directionFor: chartDirection,
	},
	task.LookMakeTen: {
		name:      phrase{"sum with one number split in two", "suma con un número separado en dos"},
		direction: phrase{"Make the next ten. Write the numbers in the boxes.", "Forma la decena siguiente. Escribe los números en los cuadros."},
		draw:      makeTen,
	},
	task.LookBreakApart: {
		name:      phrase{"sum with both numbers split in two", "suma con los dos números separados"},
		direction: phrase{"Break the numbers into tens and ones. Add.", "Separa los números en decenas y unidades. Suma."},
		draw:      breakApart,
	},
	task.LookStory: {
		name:      phrase{"word problem", "problema"},
		direction: phrase{"Listen to the story. Draw it. Write the answer.", "Escucha el problema. Dibújalo. Escribe la respuesta."},
		draw:      story, directionFor: storyDirection,
	},
	task.LookChoice: {
		name:      phrase{"three answers to choose from", "tres respuestas para elegir"},
		direction: markRight,
		draw:      choice, directionFor: choiceDirection,
	},
	task.LookTick: {
		name:      phrase{"two boxes to mark", "dos cuadros para marcar"},
		direction: phrase{"Mark the right box.", "Marca el cuadro correcto."},
		draw:      tick,
	},
	task.LookDots: {
		name:      phrase{"dots to count", "puntos para contar"},
		direction: phrase{"Count the dots. Write how many.", "Cuenta los puntos. Escribe cuántos hay."},
		draw:      dots, aloud: dotsAloud,
	},
	task.LookGroups: {
		name: phrase{"two groups of dots", "dos grupos de puntos"},
		direction: phrase{
			"Mark the group with more dots, or the middle box if they are the same.",
			"Marca el grupo con más puntos, o el cuadro del medio si son iguales."},
		draw: dotGroups, aloud: groupsAloud, directionFor: groupsDirection,
	},
	task.LookArray: {
		name:      phrase{"dots in equal rows", "puntos en filas iguales"},
		direction: addRows,
		draw:      array, aloud: arrayAloud,
	},
	task.LookCoins: {
		name:      phrase{"coins", "monedas"},
		direction: countMoney,
		draw:      coins, aloud: coinsAloud,
	},
	task.LookPairs: {
		name:      phrase{"two sums to complete", "dos sumas para completar"},
		direction: phrase{"Write two different pairs that make the number.", "Escribe dos pares distintos que hagan el número."},
		draw:      pairs,
	},
	task.LookTwin: {
		name:      phrase{"two number sentences", "dos igualdades numéricas"},
		direction: phrase{"The same number goes in both boxes. Write it.", "El mismo número va en los dos cuadros. Escríbelo."},
		draw:      twin,
	},
	task.LookMarkedLine: {
		name:      phrase{"number line with a mark", "recta numérica con una marca"},
		direction: phrase{"Count along the line. Write the number at the mark.", "Cuenta por la recta. Escribe el número de la marca."},
		draw:      markedLine, aloud: markedLineAloud,
	},
	task.LookCentimeters: {
		name:      phrase{"ruler with centimeters", "regla con centímetros"},
		direction: useRuler,
		draw:      measure, aloud: measureAloud, directionFor: measureDirection,
	},
	task.LookInches: {
		name:      phrase{"ruler with inches", "regla con pulgadas"},
		direction: useRuler,
		draw:      measure, aloud: measureAloud, directionFor: measureDirection,
	},
	task.LookBlocks: {
		name:      phrase{"bar and blocks", "barra y bloques"},
		direction: phrase{"Write how many blocks long the bar is.", "Escribe cuántos bloques mide la barra."},
		draw:      blocksAlong, aloud: blocksAlongAloud,
	},
	task.LookBlockWays: {
		name: phrase{"three pictures of a bar and blocks", "tres dibujos de una barra y bloques"},
		direction: phrase{
			"Mark the picture where the blocks are laid right to measure the bar.",
			"Marca el dibujo donde los bloques están bien puestos para medir la barra."},
		draw: blockPictures, aloud: blockPicturesAloud,
	},
	task.LookShortBlocks: {
		name: phrase{"bar with long and short blocks", "barra con bloques largos y cortos"},
		direction: phrase{
			"The bar is measured with long blocks. Write how many short blocks long it is.",
			"La barra se mide con bloques largos. Escribe cuántos bloques cortos mide."},
		draw: shortAndLong, aloud: shortAndLongAloud,
	},
	task.LookTwoBars: {
		name:      phrase{"two bars", "dos barras"},
		direction: longerBar,
		draw:      twoBars, aloud: barsAloud, directionFor: barsDirection,
	},
	task.LookThreeBars: {
		name: phrase{"three bars", "tres barras"},
		direction: phrase{
			"Write 1 for the shortest bar, 2 for the next and 3 for the longest.",
			"Escribe 1 en la barra más corta, 2 en la siguiente y 3 en la más larga."},
		draw: threeBars, aloud: barsAloud,
	},
	task.LookBarPairs: {
		name:      phrase{"two pairs of bars", "dos pares de barras"},
		direction: longerOf2,
		draw:      barPairs, aloud: barPairsAloud, directionFor: barsDirection,
	},
	task.LookEstimate: {
		name:      phrase{"three answers to choose from", "tres respuestas para elegir"},
		direction: lengthFits,
		draw:      estimate, aloud: estimateAloud, directionFor: estimateDirection,
	},
	task.LookLinePlot: {
		name: plotName,
		direction: phrase{
			"Read the line plot. Each x is one thing that was measured. Write the number.",
			"Lee el diagrama de puntos. Cada x es una cosa que se midió. Escribe el número."},
		draw: linePlot, aloud: linePlotAloud, directionFor: linePlotDirection,
	},
	task.LookThings: {
		name:      thingsName,
		direction: phrase{"Look at the shapes. Count each kind. Write your answer.", "Mira las figuras. Cuenta las de cada clase. Escribe tu respuesta."},
		draw:      dataIn(task.Things, thingsToSort), aloud: thingsAloud,
		directionFor: dataDirection(phrase{
			"Look at the shapes. Count each kind. Mark the right box.",
			"Mira las figuras. Cuenta las de cada clase. Marca el cuadro correcto."}, phrase{}),
	},
	task.LookTallyChart: {
		name:      tallyName,
		direction: phrase{"Read the tally chart. Write the number.", "Lee la tabla de conteo. Escribe el número."},
		draw:      dataIn(task.TallyChart, tallyChart), aloud: tallyAloud,
		directionFor: dataDirection(phrase{"Read the tally chart. Mark the right box.", "Lee la tabla de conteo. Marca el cuadro correcto."}, drawTallies),
	},
	task.LookTable: {
		name:      phrase{"table", "tabla"},
		direction: phrase{"Read the table. Write the number.", "Lee la tabla. Escribe el número."},
		draw:      dataIn(task.Table, kit.countsTable), aloud: readTableAloud,
		directionFor: dataDirection(phrase{"Read the table. Mark the right box.", "Lee la tabla. Marca el cuadro correcto."}, phrase{}),
	},
	task.LookPictureGraph: {
		name:      pictureGraphName,
		direction: phrase{"Read the picture graph. Write the number.", "Lee el pictograma. Escribe el número."},
		draw:      dataIn(task.PictureGraph, pictureGraph), aloud: dataAloud(pictureGraphName, circlesHeard),
		directionFor: dataDirection(phrase{"Read the picture graph. Mark the right box.", "Lee el pictograma. Marca el cuadro correcto."}, drawPictures),
	},
	task.LookBarGraph: {
		name:      barGraphName,
		direction: phrase{"Read the bar graph. Write the number.", "Lee la gráfica de barras. Escribe el número."},
		draw:      dataIn(task.BarGraph, barGraph), aloud: dataAloud(barGraphName, squaresHeard),
		directionFor: dataDirection(phrase{"Read the bar graph. Mark the right box.", "Lee la gráfica de barras. Marca el cuadro correcto."}, drawBars),
	},
	task.LookShape: {
		name:      phrase{"shape with names to choose from", "figura con nombres para elegir"},
		direction: phrase{"Mark the name of the shape.", "Marca el nombre de la figura."},
		draw:      shape, aloud: shapeAloud,
	},
	task.LookShapeParts: {
		name:      phrase{"shape with a box for a number", "figura con un cuadro para un número"},
		direction: phrase{"Write how many.", "Escribe cuántos hay."},
		draw:      shapeParts, aloud: shapePartsAloud, directionFor: promptOf[task.ShapeParts],
	},
	task.LookFindShapes: {
		name:      phrase{"shapes with letters, a box to mark under each", "figuras con letras, cada una con un cuadro para marcar"},
		direction: phrase{"Mark the box of each shape that is asked for.", "Marca el cuadro de cada figura que se pide."},
		draw:      findShapes, aloud: findShapesAloud, directionFor: promptOf[task.FindShapes],
	},
	task.LookFlatSolid: {
		name:      phrase{"shape with two words to choose from", "figura con dos palabras para elegir"},
		direction: phrase{"Is the shape flat or solid? Mark the word.", "¿Es una figura plana o sólida? Marca la palabra."},
		draw:      flatSolid, aloud: flatSolidAloud,
	},
	task.LookDrawShape: {
		name:      phrase{"field of dots to draw on", "campo de puntos para dibujar"},
		direction: phrase{"Join dots to draw the shape.", "Une puntos para dibujar la figura."},
		draw:      drawShape, aloud: drawShapeAloud, directionFor: promptOf[task.DrawShape],
	},
	task.LookMakeShape: {
		name:      phrase{"small shape and large shape", "figura pequeña y figura grande"},
		direction: phrase{"Think how the small shape fills the large one. Write how many.", "Piensa cómo la figura pequeña llena la grande. Escribe cuántas."},
		draw:      makeShape, aloud: makeShapeAloud, directionFor: promptOf[task.MakeShape],
	},
	task.LookShares: {
		name:      phrase{"shape cut into shares", "figura cortada en partes"},
		direction: markShares,
		draw:      shares, aloud: sharesAloud, directionFor: sharesDirection,
	},
	task.LookFindCuts: {
		name:      phrase{"shapes cut into shares, a box to mark under each", "figuras cortadas en partes, cada una con un cuadro para marcar"},
		direction: phrase{"Mark each shape that is cut so.", "Marca cada figura cortada así."},
		draw:      findCuts, aloud: findCutsAloud, directionFor: promptOf[task.FindCuts],
	},
	task.LookLargerShare: {
		name: phrase{"two shapes, one share of each gray", "dos figuras, una parte de cada una gris"},
		direction: phrase{
			"Both shapes are the same. Mark the larger gray share, or the middle box if they are the same size.",
			"Las dos figuras son iguales. Marca la parte gris más grande, o el cuadro del medio si son iguales."},
		draw: largerShare, aloud: largerShareAloud,
	},
	task.LookCutShape: {
		name:      phrase{"shape to cut into shares", "figura para cortar en partes"},
		direction: phrase{"Draw lines to cut the shape into equal shares.", "Dibuja líneas para cortar la figura en partes iguales."},
		draw:      cutShape, directionFor: promptOf[task.CutShape],
	},
	task.LookSquares: {
		name:      phrase{"rectangle of squares", "rectángulo de cuadrados"},
		direction: phrase{"Count the squares. Write how many.", "Cuenta los cuadrados. Escribe cuántos hay."},
		draw:      squares, aloud: squaresAloud, directionFor: promptOf[task.Squares],
	},
	task.LookWhere: {
		name:      phrase{"two shapes with places to choose from", "dos figuras con lugares para elegir"},
		direction: phrase{"Where is the shape? Mark the place.", "¿Dónde está la figura? Marca el lugar."},
		draw:      where, aloud: whereAloud, directionFor: whereDirection,
	},
	task.LookCountOut: {
		name:      phrase{"dots to color", "puntos para colorear"},
		direction: phrase{"Color so many dots.", "Colorea tantos puntos."},
		draw:      countOut, aloud: countOutAloud, directionFor: promptOf[task.CountOut],
	},
	task.LookOneByOne: {
		name: phrase{"dots to count one by one", "puntos para contar uno por uno"},
		direction: phrase{
			"Write 1, 2, 3 and so on, one number in each dot. Then write how many dots.",
			"Escribe 1, 2, 3 y así hasta el final, un número en cada punto. Luego escribe cuántos puntos hay."},
		draw: oneByOne, aloud: oneByOneAloud, directionFor: oneByOneDirection,
	},
	task.LookPictureSum: {
		name:      phrase{"dots and a number sentence to write", "puntos y una igualdad para escribir"},
		direction: phrase{"The dots are put together. Write the number sentence.", "Los puntos se juntan. Escribe la suma."},
		draw:      pictureSum, aloud: pictureSumAloud, directionFor: promptOf[task.PictureSum],
	},
	task.LookDrawSum: {
		name:      phrase{"room to draw a number sentence", "espacio para dibujar una igualdad"},
		direction: phrase{"Draw dots to show the number sentence. Write the number.", "Dibuja puntos que muestren la operación. Escribe el número."},
		draw:      drawSum,
	},
	task.LookCountOn: {
		name:      phrase{"numbers to count on and a sum", "números para seguir contando y una suma"},
		direction: countOnSaid[false],
		draw:      countOn, aloud: countOnAloud, directionFor: countOnDirection,
	},
	task.LookReason: {
		name:      phrase{"reason with numbers to write", "explicación con números para escribir"},
		direction: phrase{"Say why it comes out so. Write the missing numbers.", "Di por qué sale así. Escribe los números que faltan."},
		draw:      reason, aloud: reasonAloud,
	},
	task.LookParityDots: {
		name:      phrase{"dots with two words to choose from", "puntos con dos palabras para elegir"},
		direction: phrase{"Put the dots in pairs. Mark odd or even.", "Forma pares de puntos. Marca impar o par."},
		draw:      parityDots, aloud: parityDotsAloud,
	},
	task.LookEqualAddends: {
		name:      phrase{"dots and a sum to write", "puntos y una suma para escribir"},
		direction: equalSaid[false],
		draw:      equalAddends, aloud: equalAddendsAloud, directionFor: equalDirection,
	},
	task.LookBills: {
		name:      phrase{"bills and coins", "billetes y monedas"},
		direction: countBills,
		draw:      bills, aloud: billsAloud,
	},
	task.LookLineMark: {
		name:      phrase{"number line to mark", "recta numérica para marcar"},
		direction: phrase{"Draw an arrow to the number on the line.", "Marca el número en la recta con una flecha."},
		draw:      lineMark, aloud: lineMarkAloud, directionFor: promptOf[task.LineMark],
	},
	task.LookJoinShapes: {
		name:      phrase{"pieces to join and three shapes", "piezas para juntar y tres figuras"},
		direction: phrase{"Mark the shape that the pieces make when full sides are joined.", "Marca la figura que forman las piezas juntadas por lados enteros."},
		draw:      joinShapes, aloud: joinShapesAloud,
	},
}
