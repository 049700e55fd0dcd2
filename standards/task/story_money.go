package task

// moneyTellings tell of cents and dollars, each situation in three ways; money comes in no kinds.
var moneyTellings = map[StorySituation][]telling{
	AddToResult: {
		{"{A} has {1}. Then {he} {gets} {2} more. How many {things} does {he} have now?",
			"{A} tiene {1}. Luego {gets} {2} más. ¿Cuántos {things} tiene ahora?"},
		{"There is {1} in {A}'s jar. {He} puts in {2} more. How many {things} are in the jar now?",
			"En la alcancía de {A} hay {1}. {A} mete {2} más. ¿Cuántos {things} hay ahora?"},
		{"{A} saves {1} in May. In June {he} saves {2} more. How many {things} does {he} have then?",
			"En mayo {A} ahorra {1}. En junio ahorra {2} más. ¿Cuántos {things} tiene entonces?"},
	},
	AddToChange: {
		{"{A} has {1}. Then {he} {gets} some more. Now {he} has {3}. How many {things} did {he} {get}?",
			"{A} tiene {1}. Luego {gets} más. Ahora tiene {3}. ¿Cuántos {things} {get}?"},
		{"There is {1} in {A}'s jar. {He} puts in some more. Now the jar has {3}. How many {things} did {he} put in?",
			"En la alcancía de {A} hay {1}. {A} mete más. Ahora hay {3}. ¿Cuántos {things} metió?"},
		{"{A} saves {1} in May. {He} saves more in June. Then {he} has {3}. How many {things} did {he} save in June?",
			"En mayo {A} ahorra {1}. En junio ahorra más. Entonces tiene {3}. ¿Cuántos {things} ahorró en junio?"},
	},
	AddToStart: {
		{"{A} has some money. {He} {gets} {2} more. Now {he} has {3}. How many {things} did {he} have at first?",
			"{A} tiene algo de dinero. Luego {gets} {2} más. Ahora tiene {3}. ¿Cuántos {things} tenía al principio?"},
		{"There is some money in {A}'s jar. {He} puts in {2} more. Now the jar has {3}. How many {things} were there before?",
			"En la alcancía de {A} hay dinero. {A} mete {2} más. Ahora hay {3}. ¿Cuántos {things} había antes?"},
		{"{A} saves some money in May. {He} saves {2} more in June. Then {he} has {3}. How many {things} did {he} save in May?",
			"En mayo {A} ahorra dinero. En junio ahorra {2} más. Entonces tiene {3}. ¿Cuántos {things} ahorró en mayo?"},
	},
	TakeFromResult: {
		{"{A} has {1}. Then {he} {loses} {2}. How many {things} are left?",
			"{A} tiene {1}. Luego {loses} {2}. ¿Cuántos {things} le quedan?"},
		{"There is {1} in {A}'s jar. {He} takes out {2}. How many {things} are still in the jar?",
			"En la alcancía de {A} hay {1}. {A} saca {2}. ¿Cuántos {things} quedan?"},
		{"{A} takes {1} to the school fair. {He} spends {2} there. How many {things} does {he} take home?",
			"{A} lleva {1} a la feria de la escuela. Gasta {2}. ¿Cuántos {things} lleva a casa?"},
	},
	TakeFromChange: {
		{"{A} has {1}. Then {he} {loses} some of it. Now {he} has {3}. How many {things} did {he} {lose}?",
			"{A} tiene {1}. Luego {loses} una parte. Ahora tiene {3}. ¿Cuántos {things} {lose}?"},
		{"There is {1} in {A}'s jar. {He} takes some out. Now the jar has {3}. How many {things} did {he} take out?",
			"En la alcancía de {A} hay {1}. {A} saca una parte. Ahora hay {3}. ¿Cuántos {things} sacó?"},
		{"{A} takes {1} to the school fair. {He} takes {3} home. How many {things} did {he} spend?",
			"{A} lleva {1} a la feria de la escuela. Vuelve a casa con {3}. ¿Cuántos {things} gastó?"},
	},
	TakeFromStart: {
		{"{A} has some money. {He} {loses} {2}. Now {he} has {3}. How many {things} did {he} have at first?",
			"{A} tiene algo de dinero. Luego {loses} {2}. Ahora tiene {3}. ¿Cuántos {things} tenía al principio?"},
		{"There is some money in {A}'s jar. {He} takes out {2}. Now the jar has {3}. How many {things} were there before?",
			"En la alcancía de {A} hay dinero. {A} saca {2}. Ahora hay {3}. ¿Cuántos {things} había antes?"},
		{"{A} spends {2} at the school fair. {He} takes {3} home. How many {things} did {he} have before the fair?",
			"{A} gasta {2} en la feria de la escuela. Vuelve a casa con {3}. ¿Cuántos {things} tenía antes?"},
	},
	TogetherTotal: {
		{"{A} has {1} in one hand. {He} has {2} in the other. How many {things} does {he} have in all?",
			"{A} tiene {1} en una mano. Tiene {2} en la otra. ¿Cuántos {things} tiene en total?"},
		{"{A} has {1} in a jar. {He} has {2} in a bag. How many {things} is that in all?",
			"{A} tiene {1} en una alcancía. Tiene {2} en una bolsa. ¿Cuántos {things} son en total?"},
		{"A book costs {1}. A game costs {2}. How many {things} do the two cost in all?",
			"Un libro cuesta {1}. Un juego cuesta {2}. ¿Cuántos {things} cuestan en total?"},
	},
	TogetherAddend: {
		{"{A} has {3} in {his} two hands. {He} has {1} in one. How many {things} are in the other?",
			"{A} tiene {3} en las dos manos. Tiene {1} en una. ¿Cuántos {things} tiene en la otra?"},
		{"{A} has {3} in all. {He} has {1} in a jar. The rest is in a bag. How many {things} are in the bag?",
			"{A} tiene {3} en total. Tiene {1} en una alcancía. Lo demás está en una bolsa. ¿Cuántos {things} hay en la bolsa?"},
		{"A book and a game cost {3} in all. The book costs {1}. How many {things} does the game cost?",
			"Un libro y un juego cuestan {3} en total. El libro cuesta {1}. ¿Cuántos {things} cuesta el juego?"},
	},
	CompareDifference: {
		{"{A} has {1}. {B} has {2}. How many more {things} does {A} have?",
			"{A} tiene {1}. {B} tiene {2}. ¿Cuántos {things} más tiene {A}?"},
		{"{B} has {2}. {A} has {1}. How many more {things} does {A} have than {B}?",
			"{B} tiene {2}. {A} tiene {1}. ¿Cuántos {things} más tiene {A} que {B}?"},
		{"A game costs {1}. A book costs {2}. How many more {things} does the game cost?",
			"Un juego cuesta {1}. Un libro cuesta {2}. ¿Cuántos {things} más cuesta el juego?"},
	},
	CompareBigger: {
		{"{B} has {1}. {A} has {2} more than {B}. How many {things} does {A} have?",
			"{B} tiene {1}. {A} tiene {2} más que {B}. ¿Cuántos {things} tiene {A}?"},
		{"{A} has {2} more than {B}. {B} has {1}. How many {things} does {A} have?",
			"{A} tiene {2} más que {B}. {B} tiene {1}. ¿Cuántos {things} tiene {A}?"},
		{"A book costs {1}. A game costs {2} more. How many {things} does the game cost?",
			"Un libro cuesta {1}. Un juego cuesta {2} más. ¿Cuántos {things} cuesta el juego?"},
	},
	CompareBiggerLess: {
		{"{B} has {1}. {B} has {2} less than {A}. How many {things} does {A} have?",
			"{B} tiene {1}. {B} tiene {2} menos que {A}. ¿Cuántos {things} tiene {A}?"},
		{"{B} has {2} less than {A}. {B} has {1}. How many {things} does {A} have?",
			"{B} tiene {2} menos que {A}. {B} tiene {1}. ¿Cuántos {things} tiene {A}?"},
		{"A book costs {1}. That is {2} less than a game costs. How many {things} does the game cost?",
			"Un libro cuesta {1}. Cuesta {2} menos que un juego. ¿Cuántos {things} cuesta el juego?"},
	},
	CompareSmaller: {
		{"{A} has {1}. {B} has {2} less than {A}. How many {things} does {B} have?",
			"{A} tiene {1}. {B} tiene {2} menos que {A}. ¿Cuántos {things} tiene {B}?"},
		{"{B} has {2} less than {A}. {A} has {1}. How many {things} does {B} have?",
			"{B} tiene {2} menos que {A}. {A} tiene {1}. ¿Cuántos {things} tiene {B}?"},
		{"A game costs {1}. A book costs {2} less. How many {things} does the book cost?",
			"Un juego cuesta {1}. Un libro cuesta {2} menos. ¿Cuántos {things} cuesta el libro?"},
	},
	CompareSmallerMore: {
		{"{A} has {1}. {A} has {2} more than {B}. How many {things} does {B} have?",
			"{A} tiene {1}. {A} tiene {2} más que {B}. ¿Cuántos {things} tiene {B}?"},
		{"{A} has {2} more than {B}. {A} has {1}. How many {things} does {B} have?",
			"{A} tiene {2} más que {B}. {A} tiene {1}. ¿Cuántos {things} tiene {B}?"},
		{"A game costs {1}. That is {2} more than a book costs. How many {things} does the book cost?",
			"Un juego cuesta {1}. Cuesta {2} más que un libro. ¿Cuántos {things} cuesta el libro?"},
	},
}

// moneySteps are two-step stories of money, as countedSteps.
var moneySteps = []steps{
	{
		open: telling{"{A} has {1}.", "{A} tiene {1}."},
		first: [2]telling{
			{"{He} {gets} {2} more.", "Luego {gets} {2} más."}, {"{He} {loses} {2}.", "Luego {loses} {2}."}},
		second: [2]telling{
			{"Then {he} {gets} {3} more.", "Después {gets} {3} más."}, {"Then {he} {loses} {3}.", "Después {loses} {3}."}},
		ask: telling{"How many {things} does {he} have now?", "¿Cuántos {things} tiene ahora?"},
	},
	{
		open: telling{"There is {1} in {A}'s jar.", "En la alcancía de {A} hay {1}."},
		first: [2]telling{
			{"{He} puts in {2} more.", "{A} mete {2} más."}, {"{He} takes out {2}.", "{A} saca {2}."}},
		second: [2]telling{
			{"Then {he} puts in {3} more.", "Después mete {3} más."}, {"Then {he} takes out {3}.", "Después saca {3}."}},
		ask: telling{"How many {things} are in the jar now?", "¿Cuántos {things} hay ahora?"},
	},
	{
		open: telling{"On Monday {A} has {1}.", "El lunes {A} tiene {1}."},
		first: [2]telling{
			{"On Tuesday {he} {gets} {2} more.", "El martes {gets} {2} más."}, {"On Tuesday {he} {loses} {2}.", "El martes {loses} {2}."}},
		second: [2]telling{
			{"On Friday {he} {gets} {3} more.", "El viernes {gets} {3} más."}, {"On Friday {he} {loses} {3}.", "El viernes {loses} {3}."}},
		ask: telling{"How many {things} does {he} have then?", "¿Cuántos {things} tiene entonces?"},
	},
}
