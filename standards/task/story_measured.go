package task

// measuredTellings tell of lengths, each situation in three ways.
var measuredTellings = map[StorySituation][]telling{
	AddToResult: {
		{"{A} has a {whole} that is {1} long. {He} {gets} {2} more. How long is the {whole} now?",
			"{A} tiene {una} {whole} que mide {1}. Luego le {gets} {2} más. ¿{Cuántas u} {unit} mide ahora?"},
		{"A {whole} is {1} long. {A} {gets} a piece of {2}. How long is it now?",
			"{Una} {whole} mide {1}. {A} le {gets} un pedazo de {2}. ¿{Cuántas u} {unit} mide ahora?"},
		{"{A}'s {whole} is {1} long. That is too short. {He} {gets} {2} more. How long is it then?",
			"{La} {whole} de {A} mide {1}. Hace falta más. {A} le {gets} {2}. ¿{Cuántas u} {unit} mide entonces?"},
	},
	AddToChange: {
		{"{A} has a {whole} that is {1} long. {He} {gets} some more. Now it is {3} long. How many {unit} did {he} {get}?",
			"{A} tiene {una} {whole} que mide {1}. Luego le {gets} un pedazo. Ahora mide {3}. ¿{Cuántas u} {unit} le {get}?"},
		{"A {whole} is {1} long. {A} {gets} one more piece. Now it is {3} long. How long is the piece?",
			"{Una} {whole} mide {1}. {A} le {gets} un pedazo. Ahora mide {3}. ¿{Cuántas u} {unit} mide el pedazo?"},
		{"{A}'s {whole} is {1} long. {He} needs {3}. So {he} {gets} more. How many {unit} does {he} need to {get}?",
			"{La} {whole} de {A} mide {1}. Tiene que medir {3}. {A} le {gets} lo que falta. ¿{Cuántas u} {unit} le {gets}?"},
	},
	AddToStart: {
		{"{A} has a {whole}. {He} {gets} {2} more. Now it is {3} long. How long was it at first?",
			"{A} tiene {una} {whole}. Luego le {gets} {2} más. Ahora mide {3}. ¿{Cuántas u} {unit} medía al principio?"},
		{"A {whole} is too short. {A} {gets} {2} more. Now it is {3} long. How long was it before?",
			"{A} tiene {una} {whole} y le {gets} un pedazo de {2}. Ahora mide {3}. ¿{Cuántas u} {unit} medía antes?"},
		{"{A} {gets} {2} more. Now {his} {whole} is {3} long. How long was it before?",
			"{A} le {gets} {2} más a su {whole}. Ahora mide {3}. ¿{Cuántas u} {unit} medía al principio?"},
	},
	TakeFromResult: {
		{"{A} has a {whole} that is {1} long. {He} {loses} {2}. How long is the {whole} now?",
			"{A} tiene {una} {whole} que mide {1}. Luego le {loses} {2}. ¿{Cuántas u} {unit} mide ahora?"},
		{"A {whole} is {1} long. {A} {loses} a piece of {2}. How long is the rest?",
			"{Una} {whole} mide {1}. {A} le {loses} un pedazo de {2}. ¿{Cuántas u} {unit} mide el resto?"},
		{"{A}'s {whole} is {1} long. That is too long. {He} {loses} {2}. How long is it then?",
			"{La} {whole} de {A} mide {1}. Le sobra un pedazo. {A} le {loses} {2}. ¿{Cuántas u} {unit} mide entonces?"},
	},
	TakeFromChange: {
		{"{A} has a {whole} that is {1} long. {He} {loses} some. Now it is {3} long. How many {unit} did {he} {lose}?",
			"{A} tiene {una} {whole} que mide {1}. Luego le {loses} un pedazo. Ahora mide {3}. ¿{Cuántas u} {unit} le {lose}?"},
		{"A {whole} is {1} long. {A} {loses} a piece. The rest is {3} long. How long is the piece?",
			"{Una} {whole} mide {1}. {A} le {loses} un pedazo. El resto mide {3}. ¿{Cuántas u} {unit} mide el pedazo?"},
		{"{A}'s {whole} is {1} long. {He} needs just {3}. So {he} {loses} some. How many {unit} does {he} need to {lose}?",
			"{La} {whole} de {A} mide {1}. Tiene que medir {3}. {A} le {loses} lo que sobra. ¿{Cuántas u} {unit} le {loses}?"},
	},
	TakeFromStart: {
		{"{A} has a {whole}. {He} {loses} {2}. Now it is {3} long. How long was it at first?",
			"{A} tiene {una} {whole}. Luego le {loses} {2}. Ahora mide {3}. ¿{Cuántas u} {unit} medía al principio?"},
		{"{A} {loses} {2} of a {whole}. The rest is {3} long. How long was it before?",
			"{A} le {loses} {2} a {una} {whole}. El resto mide {3}. ¿{Cuántas u} {unit} medía antes?"},
		{"{A}'s {whole} is now {3} long. {He} {lose} {2} of it. How long was it before?",
			"{La} {whole} de {A} mide ahora {3}. Antes {A} le {lose} {2}. ¿{Cuántas u} {unit} medía al principio?"},
	},
	TogetherTotal: {
		{"{A} has a {whole} that is {1} long. {He} has one more of {2}. How long are the two in all?",
			"{A} tiene {una} {whole} de {1}. También tiene {otra} de {2}. ¿{Cuántas u} {unit} miden en total?"},
		{"One piece of {whole} is {1} long. One more is {2} long. How long are the two pieces in all?",
			"Un pedazo de {whole} mide {1}. Otro mide {2}. ¿{Cuántas u} {unit} miden en total?"},
		{"{A} uses {1} of {whole} on Monday. On Tuesday {he} uses {2}. How many {unit} is that in all?",
			"{A} usa {1} de {whole} el lunes. El martes usa {2}. ¿{Cuántas u} {unit} usa en total?"},
	},
	TogetherAddend: {
		{"{A} has {3} of {whole} in two pieces. One is {1} long. How long is the other?",
			"Dos pedazos de {whole} miden {3} en total. Uno mide {1}. ¿{Cuántas u} {unit} mide el otro?"},
		{"{A} cuts {3} of {whole} in two. One piece is {1} long. How long is the other?",
			"{A} corta {3} de {whole} en dos pedazos. Uno mide {1}. ¿{Cuántas u} {unit} mide el otro?"},
		{"{A} has {3} of {whole} for two gifts. One takes {1}. How much does the other take?",
			"{A} usa {3} de {whole} en dos regalos. Uno lleva {1}. ¿{Cuántas u} {unit} lleva el otro?"},
	},
	CompareDifference: {
		{"{A}'s {whole} is {1} long. {B}'s is {2} long. How much longer is {A}'s?",
			"{La} {whole} de {A} mide {1}. {La} {whole} de {B} mide {2}. ¿{Cuántas u} {unit} más mide {la} de {A}?"},
		{"{B}'s {whole} is {2} long. {A}'s is {1} long. How much longer is {A}'s?",
			"{La} {whole} de {B} mide {2}. {La} de {A} mide {1}. ¿{Cuántas u} {unit} más mide {la} de {A}?"},
		{"{A} and {B} each have a {whole}. {A}'s is {1} long. {B}'s is {2} long. How much longer is {A}'s?",
			"{A} y {B} tienen cada quien {una} {whole}. {La} de {A} mide {1}. {La} de {B} mide {2}. ¿{Cuántas u} {unit} más mide {la} de {A}?"},
	},
	CompareBigger: {
		{"{B}'s {whole} is {1} long. {A}'s is {2} longer. How long is {A}'s?",
			"{La} {whole} de {B} mide {1}. {La} de {A} mide {2} más. ¿{Cuántas u} {unit} mide {la} de {A}?"},
		{"{A}'s {whole} is {2} longer than {B}'s. {B}'s is {1} long. How long is {A}'s?",
			"{La} {whole} de {A} mide {2} más que {la} de {B}. {La} de {B} mide {1}. ¿{Cuántas u} {unit} mide {la} de {A}?"},
		{"{A} and {B} each have a {whole}. {B}'s is {1} long. {A}'s is {2} longer. How long is {A}'s?",
			"{A} y {B} tienen cada quien {una} {whole}. {La} de {B} mide {1}. {La} de {A} mide {2} más. ¿{Cuántas u} {unit} mide {la} de {A}?"},
	},
	CompareBiggerLess: {
		{"{B}'s {whole} is {1} long. It is {2} shorter than {A}'s. How long is {A}'s?",
			"{La} {whole} de {B} mide {1}. Mide {2} menos que {la} de {A}. ¿{Cuántas u} {unit} mide {la} de {A}?"},
		{"{B}'s {whole} is {2} shorter than {A}'s. {B}'s is {1} long. How long is {A}'s?",
			"{La} {whole} de {B} mide {2} menos que {la} de {A}. {La} de {B} mide {1}. ¿{Cuántas u} {unit} mide {la} de {A}?"},
		{"{A} and {B} each have a {whole}. {B}'s is {1} long. It is {2} shorter than {A}'s. How long is {A}'s?",
			"{A} y {B} tienen cada quien {una} {whole}. {La} de {B} mide {1}. Mide {2} menos que {la} de {A}. ¿{Cuántas u} {unit} mide {la} de {A}?"},
	},
	CompareSmaller: {
		{"{A}'s {whole} is {1} long. {B}'s is {2} shorter. How long is {B}'s?",
			"{La} {whole} de {A} mide {1}. {La} de {B} mide {2} menos. ¿{Cuántas u} {unit} mide {la} de {B}?"},
		{"{B}'s {whole} is {2} shorter than {A}'s. {A}'s is {1} long. How long is {B}'s?",
			"{La} {whole} de {B} mide {2} menos que {la} de {A}. {La} de {A} mide {1}. ¿{Cuántas u} {unit} mide {la} de {B}?"},
		{"{A} and {B} each have a {whole}. {A}'s is {1} long. {B}'s is {2} shorter. How long is {B}'s?",
			"{A} y {B} tienen cada quien {una} {whole}. {La} de {A} mide {1}. {La} de {B} mide {2} menos. ¿{Cuántas u} {unit} mide {la} de {B}?"},
	},
	CompareSmallerMore: {
		{"{A}'s {whole} is {1} long. It is {2} longer than {B}'s. How long is {B}'s?",
			"{La} {whole} de {A} mide {1}. Mide {2} más que {la} de {B}. ¿{Cuántas u} {unit} mide {la} de {B}?"},
		{"{A}'s {whole} is {2} longer than {B}'s. {A}'s is {1} long. How long is {B}'s?",
			"{La} {whole} de {A} mide {2} más que {la} de {B}. {La} de {A} mide {1}. ¿{Cuántas u} {unit} mide {la} de {B}?"},
		{"{A} and {B} each have a {whole}. {A}'s is {1} long. It is {2} longer than {B}'s. How long is {B}'s?",
			"{A} y {B} tienen cada quien {una} {whole}. {La} de {A} mide {1}. Mide {2} más que {la} de {B}. ¿{Cuántas u} {unit} mide {la} de {B}?"},
	},
}

// measuredSteps are two-step stories of lengths, as countedSteps.
var measuredSteps = []steps{
	{
		open: telling{"{A} has a {whole} that is {1} long.", "{A} tiene {una} {whole} que mide {1}."},
		first: [2]telling{
			{"{He} {gets} {2} more.", "Luego le {gets} {2} más."}, {"{He} {loses} {2}.", "Luego le {loses} {2}."}},
		second: [2]telling{
			{"Then {he} {gets} {3} more.", "Después le {gets} {3} más."}, {"Then {he} {loses} {3}.", "Después le {loses} {3}."}},
		ask: telling{"How long is the {whole} now?", "¿{Cuántas u} {unit} mide ahora?"},
	},
	{
		open: telling{"A {whole} is {1} long.", "{Una} {whole} mide {1}."},
		first: [2]telling{
			{"{A} {gets} a piece of {2}.", "{A} le {gets} un pedazo de {2}."}, {"{A} {loses} a piece of {2}.", "{A} le {loses} un pedazo de {2}."}},
		second: [2]telling{
			{"Then {he} {gets} {3} more.", "Después le {gets} {3} más."}, {"Then {he} {loses} {3}.", "Después le {loses} {3}."}},
		ask: telling{"How long is it now?", "¿{Cuántas u} {unit} mide ahora?"},
	},
	{
		open: telling{"On Monday {A}'s {whole} is {1} long.", "El lunes {la} {whole} de {A} mide {1}."},
		first: [2]telling{
			{"On Tuesday {he} {gets} {2} more.", "El martes le {gets} {2} más."}, {"On Tuesday {he} {loses} {2}.", "El martes le {loses} {2}."}},
		second: [2]telling{
			{"On Friday {he} {gets} {3} more.", "El viernes le {gets} {3} más."}, {"On Friday {he} {loses} {3}.", "El viernes le {loses} {3}."}},
		ask: telling{"How long is it then?", "¿{Cuántas u} {unit} mide entonces?"},
	},
}
