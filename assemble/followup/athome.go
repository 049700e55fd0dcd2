package followup

import (
	"slices"
	"strings"

	"evenhand/standards"
)

// family is skills that families hear of in the same words: what was practiced, and things to try at home with what
// is there. All words are our own; the Spanish is that of Mexico and the US.
type family struct {
	skills    []standards.SkillID
	practiced both
	tries     []both
}

// families are looked through in this order; of a skill that none of them names tells its standard (homeOf).
var families = []family{
	{[]standards.SkillID{"count-dots", "compare-groups"},
		both{"counting things, and telling which group has more", "contar cosas y decir qué grupo tiene más"},
		[]both{
			{"Count things you use anyway: spoons, socks, steps. Move or touch each one as you say its number.",
				"Cuenten cosas de todos los días: cucharas, calcetines, escalones. Muevan o toquen cada una al decir su número."},
			{"Make two small piles of beans. Which has more? Line them up in pairs to check.",
				"Hagan dos montoncitos de frijoles. ¿Cuál tiene más? Fórmenlos en parejas para comprobarlo."},
		}},
	{[]standards.SkillID{"write-to-20", "write-to-120", "write-to-1000", "number-names", "count-on"},
		both{"saying, reading and writing numbers", "decir, leer y escribir números"},
		[]both{
			{"Read aloud the numbers you meet: house numbers, prices, pages. Write one of them down together.",
				"Lean en voz alta los números que encuentren: casas, precios, páginas. Escriban uno juntos."},
			{"One of you says a number. The other says the one before it and the one after it.",
				"Una persona dice un número. La otra dice el que va antes y el que va después."},
		}},
	{[]standards.SkillID{"count-by-steps"},
		both{"counting by twos, fives, tens and hundreds", "contar de dos en dos, de cinco en cinco, de diez en diez y de cien en cien"},
		[]both{
			{"Count by twos, fives or tens while you walk or climb stairs.",
				"Cuenten de dos en dos, de cinco en cinco o de diez en diez mientras caminan o suben escaleras."},
			{"Start at a number such as 34 and count on by tens: 44, 54, 64. What changes, and what stays?",
				"Empiecen en un número como 34 y sigan de diez en diez: 44, 54, 64. ¿Qué cambia y qué queda igual?"},
		}},
	{[]standards.SkillID{"number-pairs", "make-ten"},
		both{"the two parts of a number, and what is missing to ten", "las dos partes de un número y lo que falta para diez"},
		[]both{
			{"Hide some of ten beans under a cup. How many are hidden? Take turns.",
				"Escondan algunos de diez frijoles debajo de una taza. ¿Cuántos están escondidos? Túrnense."},
			{"One of you says a number up to ten. The other says what is missing to ten.",
				"Una persona dice un número hasta diez. La otra dice lo que falta para llegar a diez."},
		}},
	{[]standards.SkillID{"facts-within-20", "three-addends", "related-facts", "turn-around", "missing-number"},
		both{"adding and taking away up to 20", "sumar y restar hasta 20"},
		[]both{
			{"Roll two or three dice and add them up. Ask: how did you find out?",
				"Tiren dos o tres dados y súmenlos. Pregunten: ¿cómo lo supiste?"},
			{"Say a sum such as 8 + 5. Go by way of ten: 8 and 2 is 10, and 3 more is 13.",
				"Digan una suma como 8 + 5. Pasen por el diez: 8 y 2 son 10, y 3 más son 13."},
		}},
	{[]standards.SkillID{"true-or-false", "balance", "balance-larger", "missing-number-larger"},
		both{"the equal sign: both sides are worth the same", "el signo igual: los dos lados valen lo mismo"},
		[]both{
			{"Write 3 + 4 = 5 + 2, or something that isn't so. Is it true? How can you tell?",
				"Escriban 3 + 4 = 5 + 2, o algo que no sea cierto. ¿Es verdad? ¿Cómo se sabe?"},
			{"Cover one number of a sum with a coin. What must be under it?",
				"Tapen con una moneda un número de una suma. ¿Cuál tiene que estar debajo?"},
		}},
	{[]standards.SkillID{"add-ones", "add-tens", "add-two-digit", "add-past-100", "add-several", "add-and-subtract"},
		both{"adding numbers with tens and ones", "sumar números con decenas y unidades"},
		[]both{
			{"Add two page numbers or prices: first the tens, then the ones, then put them together.",
				"Sumen dos números de página o dos precios: primero las decenas, luego las unidades, y al final todo junto."},
			{"Build two numbers with dimes and pennies and put them together. Ten pennies? Trade them for a dime.",
				"Formen dos números con monedas de diez y de un centavo y júntenlos. ¿Diez de un centavo? Cámbienlas por una de diez."},
		}},
	{[]standards.SkillID{"subtract-tens", "subtract-two-digit", "subtract-regrouping"},
		both{"taking away with tens and ones", "restar con decenas y unidades"},
		[]both{
			{"Start with some dimes and pennies and give some away. Not enough pennies? Trade a dime for ten.",
				"Empiecen con monedas de diez y de un centavo y regalen algunas. ¿No alcanzan las de un centavo? Cambien una de diez."},
			{"Ask how far apart two numbers are: ages in the family, or the pages left in a book.",
				"Pregunten qué tan lejos están dos números: las edades de la familia o las páginas que faltan de un libro."},
		}},
	{[]standards.SkillID{"add-within-1000", "subtract-within-1000", "add-larger", "subtract-larger"},
		both{"adding and taking away larger numbers, one place at a time", "sumar y restar números mayores, lugar por lugar"},
		[]both{
			{"Take two numbers with three digits from around the house. Add them one place at a time.",
				"Tomen dos números de tres dígitos que haya en casa. Súmenlos lugar por lugar."},
			{"Before you work something out, guess: about how much will it be? Then compare.",
				"Antes de hacer una cuenta, calculen a ojo: ¿más o menos cuánto será? Luego comparen."},
		}},
	{[]standards.SkillID{"tens-and-ones", "hundreds-tens-ones", "expanded-form", "ten-more-less", "hundred-more-less"},
		both{"what each digit of a number is worth", "cuánto vale cada dígito de un número"},
		[]both{
			{"Bundle straws or noodles by tens. How many bundles are there, and how many single ones?",
				"Junten popotes o fideos de diez en diez. ¿Cuántos manojos hay y cuántos sueltos?"},
			{"One of you says a number. The other says ten more and ten less.",
				"Una persona dice un número. La otra dice diez más y diez menos."},
		}},
	{[]standards.SkillID{"compare-within-10", "compare-two-digit", "compare-three-digit"},
		both{"telling which of two numbers is larger", "decir cuál de dos números es mayor"},
		[]both{
			{"Compare two prices or two house numbers. Look at the largest place first. How do you know?",
				"Comparen dos precios o dos números de casa. Miren primero la posición mayor. ¿Cómo lo saben?"},
			{"Each of you draws cards and makes a number of them. Whose is larger?",
				"Cada quien saca cartas y forma un número. ¿Cuál es mayor?"},
		}},
	{[]standards.SkillID{"stories-within-10", "stories-within-20", "stories-within-100", "two-step-stories", "length-stories", "money-stories"},
		both{"solving word problems", "resolver problemas"},
		[]both{
			{"Tell a little number story from your day. Let your child draw it and find the answer.",
				"Cuenten una pequeña historia con números de su día. Su hija o hijo la dibuja y encuentra la respuesta."},
			{"Read a problem together. Ask first: what happens, and what do we want to know?",
				"Lean juntos un problema. Pregunten primero: ¿qué pasa y qué queremos saber?"},
		}},
	{[]standards.SkillID{"count-coins"},
		both{"counting coins", "contar monedas"},
		[]both{
			{"Sort some coins. Count on from those that are worth most.",
				"Separen unas monedas. Cuenten empezando por las que más valen."},
			{"Play store with small prices. In how many ways can you pay 25 cents?",
				"Jueguen a la tienda con precios pequeños. ¿De cuántas maneras se pueden pagar 25 centavos?"},
		}},
	{[]standards.SkillID{"match-clocks", "clock-hour", "clock-half-hour", "clock-quarter-hour", "clock-five-minutes", "clock-minute"},
		both{"telling time on a clock with hands", "leer la hora en un reloj de manecillas"},
		[]both{
			{"Look at a clock with hands at dinner and at bedtime. What does the short hand say, and what the long one?",
				"Miren un reloj de manecillas a la hora de la cena y de dormir. ¿Qué dice la manecilla corta y qué dice la larga?"},
			{"Draw a clock on paper. Say a time and show it with two pencils, a short one and a long one.",
				"Dibujen un reloj en papel. Digan una hora y muéstrenla con dos lápices, uno corto y uno largo."},
		}},
	{[]standards.SkillID{"odd-or-even", "small-arrays"},
		both{"pairs and equal rows", "parejas y filas iguales"},
		[]both{
			{"Put socks, shoes or beans in pairs. Is one left over?",
				"Pongan calcetines, zapatos o frijoles en parejas. ¿Sobra uno?"},
			{"Look for equal rows: eggs in a carton, panes of a window. Say the sum: 4 + 4 + 4.",
				"Busquen filas iguales: los huevos de un cartón, los vidrios de una ventana. Digan la suma: 4 + 4 + 4."},
		}},
	{[]standards.SkillID{"read-number-line"},
		both{"numbers on a line", "los números en una recta"},
		[]both{
			{"Find scales at home: a ruler, a measuring cup, a thermometer. What is one step worth?",
				"Busquen escalas en casa: una regla, una taza de medir, un termómetro. ¿Cuánto vale un paso?"},
			{"Draw a line from 0 to 100. Where would 50 be? And 25, and 90?",
				"Dibujen una recta del 0 al 100. ¿Dónde estaría el 50? ¿Y el 25, y el 90?"},
		}},
}

// Of other skills the domain of their first standard tells.
var domains = map[string]family{
	"MD": {nil,
		both{"measuring, sorting and reading graphs", "medir, clasificar y leer gráficas"},
		[]both{
			{"Measure something with a ruler, or with paper clips end to end, without gaps.",
				"Midan algo con una regla, o con clips uno tras otro, sin dejar espacios."},
			{"Make a tally: cars that pass, colors of socks. What is there most of, and how many more?",
				"Hagan una tabla con rayitas: autos que pasan, colores de calcetines. ¿De qué hay más y cuántos más?"},
		}},
	"G": {nil,
		both{"shapes and equal parts", "figuras y partes iguales"},
		[]both{
			{"Look for shapes on a walk. How many sides and corners has each?",
				"Busquen figuras en un paseo. ¿Cuántos lados y cuántas esquinas tiene cada una?"},
			{"Cut a tortilla or a sandwich into two or four equal parts. Are the parts really the same size?",
				"Corten una tortilla o un sándwich en dos o en cuatro partes iguales. ¿De verdad son del mismo tamaño?"},
		}},
	"CC": families[0],
	"OA": families[4],
	"NB": families[9],
}

// homeOf is what families hear of a skill; false for one that is in no catalogue.
func homeOf(id standards.SkillID) (family, bool) {
	for _, f := range families {
		if slices.Contains(f.skills, id) {
			return f, true
		}
	}
	skill, ok := standards.Catalogue().Skill(id)
	if !ok || len(skill.Codes) == 0 {
		return family{}, false
	}
	_, domain, _ := strings.Cut(string(skill.Codes[0]), ".")
	domain, _, _ = strings.Cut(domain, ".")
	f, ok := domains[strings.TrimSuffix(domain, "T")]
	return f, ok
}
