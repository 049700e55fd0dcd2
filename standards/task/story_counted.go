package task

// countedTellings tell of things to count, each situation in three ways.
var countedTellings = map[StorySituation][]telling{
	AddToResult: {
		{"{A} has {1}. Then {he} {gets} {#2} more. How many {things} does {A} have now?",
			"{A} tiene {1}. Luego {gets} {#2} más. ¿{Cuántas} tiene ahora?"},
		{"There are {1} in {A}'s box. {He} {gets} {#2} more and puts them in. How many {things} are in the box now?",
			"En la caja de {A} hay {1}. {A} {gets} {#2} más y {las} guarda ahí. ¿{Cuántas} hay ahora en la caja?"},
		{"On Monday {A} has {1}. On Tuesday {he} {gets} {#2} more. How many {things} does {he} have then?",
			"El lunes {A} tiene {1}. El martes {gets} {#2} más. ¿{Cuántas} tiene entonces?"},
	},
	AddToChange: {
		{"{A} has {1}. Then {he} {gets} some more. Now {he} has {3}. How many {things} did {he} {get}?",
			"{A} tiene {1}. Luego {gets} más. Ahora tiene {#3}. ¿{Cuántas} {get}?"},
		{"There are {1} in {A}'s box. {He} {gets} more and puts them in. Now the box has {3}. How many {things} did {he} {get}?",
			"En la caja de {A} hay {1}. {A} {gets} más y {las} guarda ahí. Ahora la caja tiene {#3}. ¿{Cuántas} {get}?"},
		{"{A} has {1}. A friend brings {him} some more. Now {he} has {3}. How many {things} did the friend bring?",
			"{A} tiene {1}. Una amiga le trae más. Ahora tiene {#3}. ¿{Cuántas} le trajo su amiga?"},
	},
	AddToStart: {
		{"{A} has some {things}. Then {he} {gets} {#2} more. Now {he} has {3}. How many {things} did {he} have at first?",
			"{A} tiene {algunas} {things}. Luego {gets} {#2} más. Ahora tiene {#3}. ¿{Cuántas} tenía al principio?"},
		{"There are some {things} in {A}'s box. {He} puts in {#2} more. Now the box has {3}. How many {things} were there before?",
			"En la caja de {A} hay {algunas} {things}. {A} mete {#2} más. Ahora la caja tiene {#3}. ¿{Cuántas} había antes?"},
		{"{A} has some {things}. A friend brings {him} {#2} more. Now {he} has {3}. How many {things} did {he} have before?",
			"{A} tiene {algunas} {things}. Una amiga le trae {#2} más. Ahora tiene {#3}. ¿{Cuántas} tenía antes?"},
	},
	TakeFromResult: {
		{"{A} has {1}. Then {he} {loses} {#2}. How many {things} are left?",
			"{A} tiene {1}. Luego {loses} {#2}. ¿{Cuántas} le quedan?"},
		{"There are {1} in {A}'s box. {He} takes out {#2}. How many {things} are still in the box?",
			"En la caja de {A} hay {1}. {A} saca {#2}. ¿{Cuántas} quedan en la caja?"},
		{"On Monday {A} has {1}. On Tuesday {he} {loses} {#2}. How many {things} does {he} have then?",
			"El lunes {A} tiene {1}. El martes {loses} {#2}. ¿{Cuántas} tiene entonces?"},
	},
	TakeFromChange: {
		{"{A} has {1}. Then {he} {loses} some. Now {he} has {3}. How many {things} did {he} {lose}?",
			"{A} tiene {1}. Luego {loses} {algunas}. Ahora tiene {#3}. ¿{Cuántas} {lose}?"},
		{"There are {1} in {A}'s box. {He} takes some out. Now the box has {3}. How many {things} did {he} take out?",
			"En la caja de {A} hay {1}. {A} saca {algunas}. Ahora la caja tiene {#3}. ¿{Cuántas} sacó?"},
		{"On Monday {A} has {1}. On Tuesday {he} {loses} some. Then {he} has {3}. How many {things} did {he} {lose}?",
			"El lunes {A} tiene {1}. El martes {loses} {algunas}. Entonces tiene {#3}. ¿{Cuántas} {lose}?"},
	},
	TakeFromStart: {
		{"{A} has some {things}. Then {he} {loses} {#2}. Now {he} has {3}. How many {things} did {he} have at first?",
			"{A} tiene {algunas} {things}. Luego {loses} {#2}. Ahora tiene {#3}. ¿{Cuántas} tenía al principio?"},
		{"There are some {things} in {A}'s box. {He} takes out {#2}. Now the box has {3}. How many {things} were there before?",
			"En la caja de {A} hay {algunas} {things}. {A} saca {#2}. Ahora la caja tiene {#3}. ¿{Cuántas} había antes?"},
		{"On Monday {A} has some {things}. On Tuesday {he} {loses} {#2}. Then {he} has {3}. How many {things} did {he} have on Monday?",
			"El lunes {A} tiene {algunas} {things}. El martes {loses} {#2}. Entonces tiene {#3}. ¿{Cuántas} tenía el lunes?"},
	},
	TogetherTotal: {
		{"{A} sees {#1} {kind} {things}. {He} sees {#2} {kind2} {things}. How many {things} does {he} see in all?",
			"{A} ve {#1} {things} {kind}. Ve {#2} {things} {kind2}. ¿{Cuántas} ve en total?"},
		{"A box has {#1} {kind} {things}. It also has {#2} {kind2} ones. How many {things} does the box have in all?",
			"En una caja hay {#1} {things} {kind}. También hay {#2} {kind2}. ¿{Cuántas} hay en total?"},
		{"{A} counts {#1} {kind} {things}. Then {he} counts {#2} {kind2} {things}. How many {things} is that in all?",
			"{A} cuenta {#1} {things} {kind}. Luego cuenta {#2} {things} {kind2}. ¿{Cuántas} son en total?"},
	},
	TogetherAddend: {
		{"{A} sees {3}. There are {#1} {kind} ones. The rest are {kind2}. How many are {kind2}?",
			"{A} ve {3}. Hay {#1} {kind}. {Las} demás son {kind2}. ¿{Cuántas} son {kind2}?"},
		{"There are {3} on the table. Just {#1} are {kind}. The rest are {kind2}. How many are {kind2}?",
			"En la mesa hay {3}. Solo {#1} son {kind}. {Las} demás son {kind2}. ¿{Cuántas} son {kind2}?"},
		{"{A} has {3}. Some are {kind2}, and {#1} are {kind}. How many are {kind2}?",
			"{A} tiene {3}. {Algunas} son {kind2} y {#1} son {kind}. ¿{Cuántas} son {kind2}?"},
	},
	TogetherBoth: {
		{"{A} has {3}. Some are {kind} and some are {kind2}. How many of each can there be?",
			"{A} tiene {3}. {Algunas} son {kind} y {otras} son {kind2}. ¿{Cuántas} puede haber de cada tipo?"},
		{"There are {3} on the table. Some are {kind}. The rest are {kind2}. How many of each can there be?",
			"En la mesa hay {3}. {Algunas} son {kind}. {Las} demás son {kind2}. ¿{Cuántas} puede haber de cada tipo?"},
		{"{A} puts {3} in two bags. No bag is empty. How many can there be in each bag?",
			"{A} pone {3} en dos bolsas. Ninguna queda vacía. ¿{Cuántas} puede haber en cada bolsa?"},
	},
	ThreeAddends: {
		{"On Monday {A} {gets} {1}. On Tuesday {he} {gets} {#2}. On Friday {he} {gets} {#3}. How many {things} did {he} {get} in all?",
			"El lunes {A} {gets} {1}. El martes {gets} {#2}. El viernes {gets} {#3}. ¿{Cuántas} {get} en total?"},
		{"The red box has {1}. The blue box has {#2}. The green box has {#3}. How many {things} do they have in all?",
			"En la caja roja hay {1}. En la azul hay {#2}. En la verde hay {#3}. ¿{Cuántas} hay en total?"},
		{"{A} sees {1} on the table. {He} sees {#2} on the shelf. {He} sees {#3} on the floor. How many {things} does {he} see in all?",
			"{A} ve {1} en la mesa. Ve {#2} en el estante. Ve {#3} en el piso. ¿{Cuántas} ve en total?"},
	},
	CompareDifference: {
		{"{A} has {1}. {B} has {#2}. How many more does {A} have?",
			"{A} tiene {1}. {B} tiene {#2}. ¿{Cuántas} más tiene {A}?"},
		{"{B} has {2}. {A} has {#1}. How many more does {A} have than {B}?",
			"{B} tiene {2}. {A} tiene {#1}. ¿{Cuántas} más tiene {A} que {B}?"},
		{"{A} and {B} count their {things}. {A} has {#1} and {B} has {#2}. How many more does {A} have?",
			"{A} y {B} cuentan sus {things}. {A} tiene {#1} y {B} tiene {#2}. ¿{Cuántas} más tiene {A}?"},
	},
	CompareBigger: {
		{"{B} has {1}. {A} has {#2} more than {B}. How many does {A} have?",
			"{B} tiene {1}. {A} tiene {#2} más que {B}. ¿{Cuántas} tiene {A}?"},
		{"{A} has {#2} more {things} than {B}. {B} has {1}. How many does {A} have?",
			"{A} tiene {#2} {things} más que {B}. {B} tiene {1}. ¿{Cuántas} tiene {A}?"},
		{"{A} and {B} count their {things}. {B} has {#1}. {A} has {#2} more. How many does {A} have?",
			"{A} y {B} cuentan sus {things}. {B} tiene {#1}. {A} tiene {#2} más. ¿{Cuántas} tiene {A}?"},
	},
	CompareBiggerLess: {
		{"{B} has {1}. {B} has {#2} fewer than {A}. How many does {A} have?",
			"{B} tiene {1}. {B} tiene {#2} menos que {A}. ¿{Cuántas} tiene {A}?"},
		{"{B} has {#2} fewer {things} than {A}. {B} has {1}. How many does {A} have?",
			"{B} tiene {#2} {things} menos que {A}. {B} tiene {1}. ¿{Cuántas} tiene {A}?"},
		{"{A} and {B} count their {things}. {B} has {#1}. That is {#2} fewer than {A} has. How many does {A} have?",
			"{A} y {B} cuentan sus {things}. {B} tiene {#1}. Son {#2} menos que {A}. ¿{Cuántas} tiene {A}?"},
	},
	CompareSmaller: {
		{"{A} has {1}. {B} has {#2} fewer than {A}. How many does {B} have?",
			"{A} tiene {1}. {B} tiene {#2} menos que {A}. ¿{Cuántas} tiene {B}?"},
		{"{B} has {#2} fewer {things} than {A}. {A} has {1}. How many does {B} have?",
			"{B} tiene {#2} {things} menos que {A}. {A} tiene {1}. ¿{Cuántas} tiene {B}?"},
		{"{A} and {B} count their {things}. {A} has {#1}. {B} has {#2} fewer. How many does {B} have?",
			"{A} y {B} cuentan sus {things}. {A} tiene {#1}. {B} tiene {#2} menos. ¿{Cuántas} tiene {B}?"},
	},
	CompareSmallerMore: {
		{"{A} has {1}. {A} has {#2} more than {B}. How many does {B} have?",
			"{A} tiene {1}. {A} tiene {#2} más que {B}. ¿{Cuántas} tiene {B}?"},
		{"{A} has {#2} more {things} than {B}. {A} has {1}. How many does {B} have?",
			"{A} tiene {#2} {things} más que {B}. {A} tiene {1}. ¿{Cuántas} tiene {B}?"},
		{"{A} and {B} count their {things}. {A} has {#1}. That is {#2} more than {B} has. How many does {B} have?",
			"{A} y {B} cuentan sus {things}. {A} tiene {#1}. Son {#2} más que {B}. ¿{Cuántas} tiene {B}?"},
	},
}

// countedSteps are two-step stories in three ways: the opening, each of the two steps as
// something got and as something lost, and the question.
var countedSteps = []steps{
	{
		open: telling{"{A} has {1}.", "{A} tiene {1}."},
		first: [2]telling{
			{"{He} {gets} {#2} more.", "Luego {gets} {#2} más."}, {"{He} {loses} {#2}.", "Luego {loses} {#2}."}},
		second: [2]telling{
			{"Then {he} {gets} {#3} more.", "Después {gets} {#3} más."}, {"Then {he} {loses} {#3}.", "Después {loses} {#3}."}},
		ask: telling{"How many {things} does {he} have now?", "¿{Cuántas} tiene ahora?"},
	},
	{
		open: telling{"There are {1} in {A}'s box.", "En la caja de {A} hay {1}."},
		first: [2]telling{
			{"{He} puts in {#2} more.", "{A} mete {#2} más."}, {"{He} takes out {#2}.", "{A} saca {#2}."}},
		second: [2]telling{
			{"Then {he} puts in {#3} more.", "Después mete {#3} más."}, {"Then {he} takes out {#3}.", "Después saca {#3}."}},
		ask: telling{"How many {things} are in the box now?", "¿{Cuántas} hay ahora en la caja?"},
	},
	{
		open: telling{"On Monday {A} has {1}.", "El lunes {A} tiene {1}."},
		first: [2]telling{
			{"On Tuesday {he} {gets} {#2} more.", "El martes {gets} {#2} más."}, {"On Tuesday {he} {loses} {#2}.", "El martes {loses} {#2}."}},
		second: [2]telling{
			{"On Friday {he} {gets} {#3} more.", "El viernes {gets} {#3} más."}, {"On Friday {he} {loses} {#3}.", "El viernes {loses} {#3}."}},
		ask: telling{"How many {things} does {he} have then?", "¿{Cuántas} tiene entonces?"},
	},
}
