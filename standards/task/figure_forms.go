package task

import "math"

// Form is how a shape is drawn: a thin triangle is a triangle.
type Form string

// ShapeName is what a shape is called.
type ShapeName string

// The names of shapes.
const (
	Circle        ShapeName = "circle"
	Triangle      ShapeName = "triangle"
	Square        ShapeName = "square"
	Rectangle     ShapeName = "rectangle"
	Hexagon       ShapeName = "hexagon"
	Pentagon      ShapeName = "pentagon"
	Quadrilateral ShapeName = "quadrilateral"
	Rhombus       ShapeName = "rhombus"
	Trapezoid     ShapeName = "trapezoid"
	Cube          ShapeName = "cube"
	Prism         ShapeName = "rectangular prism"
	Cone          ShapeName = "cone"
	Cylinder      ShapeName = "cylinder"
	Sphere        ShapeName = "sphere"
)

// spanishNames are the names in Spanish.
var spanishNames = map[string]string{
	"circle": "círculo", "triangle": "triángulo", "square": "cuadrado", "rectangle": "rectángulo", "hexagon": "hexágono",
	"pentagon": "pentágono", "quadrilateral": "cuadrilátero", "rhombus": "rombo", "trapezoid": "trapecio",
	"cube": "cubo", "rectangular prism": "prisma rectangular",
	"cone": "cono", "cylinder": "cilindro", "sphere": "esfera",
}

// formRow is what is known of a form.
type formRow struct {
	name    []string    // in English and in Spanish
	is      []ShapeName // what it may be called, the usual name first; nothing for what only looks like a shape
	plain   bool        // as most pictures show such a shape
	fold    int         // turned by the full circle divided by this it looks the same; 0 where it always does
	corners []Place     // of straight sides, within the circle of radius 1
	flaw    string      // "open": the last side is missing a piece; "bent": it is curved
	faces   int         // of a solid
	solid   func() []Stroke
	told    [2]string
}

var triangles, rectangles = []ShapeName{Triangle}, []ShapeName{Rectangle, Quadrilateral}

// forms are all forms. Nothing but straight sides that close makes a polygon.
var forms = map[Form]formRow{
	"circle": {name: []string{"circle", "círculo"}, is: []ShapeName{Circle}, plain: true,
		told: [2]string{"a closed curve, everywhere as far from its middle",
			"una curva cerrada, en todas partes a la misma distancia del centro"}},
	"oval": {name: []string{"oval", "óvalo"}, fold: 2,
		told: [2]string{"a closed curve, longer than it is wide", "una curva cerrada, más larga que ancha"}},
	"triangle": {name: []string{"triangle", "triángulo"}, fold: 3, is: triangles, plain: true, corners: regular(3),
		told: [2]string{"closed, 3 straight sides of the same length", "cerrada, con 3 lados rectos del mismo largo"}},
	"right triangle": {name: []string{"right triangle", "triángulo rectángulo"}, fold: 1, is: triangles,
		corners: []Place{{-.8, -.6}, {.8, .6}, {-.8, .6}},
		told:    [2]string{"closed, 3 straight sides, one square corner", "cerrada, con 3 lados rectos y una esquina recta"}},
	"thin triangle": {name: []string{"thin triangle", "triángulo delgado"}, fold: 1, is: triangles,
		corners: []Place{{0, -1}, {.25, .97}, {-.25, .97}},
		told: [2]string{"closed, 3 straight sides, two long and one short",
			"cerrada, con 3 lados rectos, dos largos y uno corto"}},
	"slanted triangle": {name: []string{"slanted triangle", "triángulo inclinado"}, fold: 1, is: triangles,
		corners: []Place{{.9, -.43}, {.2, .45}, {-.9, .43}},
		told: [2]string{"closed, 3 straight sides of three lengths, one wide corner",
			"cerrada, con 3 lados rectos de tres largos y una esquina muy abierta"}},
	"square": {name: []string{"square", "cuadrado"}, fold: 4, is: []ShapeName{Square, Rectangle, Rhombus, Quadrilateral}, plain: true,
		corners: box(1, 1),
		told: [2]string{"closed, 4 straight sides of the same length, 4 square corners",
			"cerrada, con 4 lados rectos del mismo largo y 4 esquinas rectas"}},
	"rectangle": {name: []string{"rectangle", "rectángulo"}, fold: 2, is: rectangles, plain: true, corners: box(1.7, 1),
		told: [2]string{"closed, 4 straight sides, two longer than the others, 4 square corners",
			"cerrada, con 4 lados rectos, dos más largos que los otros, y 4 esquinas rectas"}},
	"thin rectangle": {name: []string{"thin rectangle", "rectángulo delgado"}, fold: 2, is: rectangles,
		corners: box(4.5, 1),
		told: [2]string{"closed, 4 straight sides, two much longer than the others, 4 square corners",
			"cerrada, con 4 lados rectos, dos mucho más largos que los otros, y 4 esquinas rectas"}},
	"rhombus": {name: []string{"rhombus", "rombo"}, fold: 2, is: []ShapeName{Rhombus, Quadrilateral}, plain: true,
		corners: []Place{{0, -1}, {.58, 0}, {0, 1}, {-.58, 0}},
		told: [2]string{"closed, 4 straight sides of the same length, no square corner",
			"cerrada, con 4 lados rectos del mismo largo y ninguna esquina recta"}},
	"trapezoid": {name: []string{"trapezoid", "trapecio"}, fold: 1, is: []ShapeName{Trapezoid, Quadrilateral}, plain: true,
		corners: []Place{{-.5, -.43}, {.5, -.43}, {1, .43}, {-1, .43}},
		told: [2]string{"closed, 4 straight sides, one longer than the one across from it",
			"cerrada, con 4 lados rectos, uno más largo que el de enfrente"}},
	"parallelogram": {name: []string{"parallelogram", "paralelogramo"}, fold: 2, is: []ShapeName{Quadrilateral},
		corners: []Place{{-.4, -.42}, {.9, -.42}, {.4, .42}, {-.9, .42}},
		told: [2]string{"closed, 4 straight sides, the ones across from each other alike, no square corner",
			"cerrada, con 4 lados rectos, iguales los de enfrente, y ninguna esquina recta"}},
	"uneven quadrilateral": {name: []string{"uneven quadrilateral", "cuadrilátero irregular"}, fold: 1, is: []ShapeName{Quadrilateral},
		corners: []Place{{-.4, -.85}, {.75, -.3}, {.5, .8}, {-.85, .45}},
		told:    [2]string{"closed, 4 straight sides of four lengths", "cerrada, con 4 lados rectos de cuatro largos"}},
	"pentagon": {name: []string{"pentagon", "pentágono"}, fold: 5, is: []ShapeName{Pentagon}, plain: true,
		corners: regular(5),
		told:    [2]string{"closed, 5 straight sides of the same length", "cerrada, con 5 lados rectos del mismo largo"}},
	"uneven pentagon": {name: []string{"uneven pentagon", "pentágono irregular"}, fold: 1, is: []ShapeName{Pentagon},
		corners: []Place{{0, -.95}, {.7, -.3}, {.7, .7}, {-.7, .7}, {-.7, -.3}},
		told: [2]string{"closed, 5 straight sides, some longer than others",
			"cerrada, con 5 lados rectos, unos más largos que otros"}},
	"hexagon": {name: []string{"hexagon", "hexágono"}, fold: 6, is: []ShapeName{Hexagon}, plain: true,
		corners: regular(6),
		told:    [2]string{"closed, 6 straight sides of the same length", "cerrada, con 6 lados rectos del mismo largo"}},
	"uneven hexagon": {name: []string{"uneven hexagon", "hexágono irregular"}, fold: 1, is: []ShapeName{Hexagon},
		corners: []Place{{-.3, -.75}, {.6, -.7}, {.95, .1}, {.4, .75}, {-.55, .7}, {-.95, -.1}},
		told: [2]string{"closed, 6 straight sides, some longer than others",
			"cerrada, con 6 lados rectos, unos más largos que otros"}},

	"open triangle": {name: []string{"open triangle", "triángulo abierto"}, fold: 1, corners: regular(3), flaw: "open",
		told: [2]string{"3 straight sides, but with a gap in one of them",
			"3 lados rectos, pero uno de ellos tiene un hueco"}},
	"bent triangle": {name: []string{"bent triangle", "triángulo curvado"}, fold: 1, corners: regular(3), flaw: "bent",
		told: [2]string{"closed, 2 straight sides and one that is curved", "cerrada, con 2 lados rectos y uno curvo"}},
	"open square": {name: []string{"open square", "cuadrado abierto"}, fold: 1, corners: box(1, 1), flaw: "open",
		told: [2]string{"4 straight sides of the same length, but with a gap in one of them",
			"4 lados rectos del mismo largo, pero uno de ellos tiene un hueco"}},
	"bent square": {name: []string{"bent square", "cuadrado curvado"}, fold: 1, corners: box(1, 1), flaw: "bent",
		told: [2]string{"closed, 3 straight sides and one that is curved, two square corners",
			"cerrada, con 3 lados rectos y uno curvo, y dos esquinas rectas"}},
	"open rectangle": {name: []string{"open rectangle", "rectángulo abierto"}, fold: 1,
		corners: box(1.7, 1), flaw: "open",
		told: [2]string{"4 straight sides, two longer than the others, but with a gap in one of them",
			"4 lados rectos, dos más largos que los otros, pero uno de ellos tiene un hueco"}},

	"cube": {name: []string{"cube", "cubo"}, fold: 1, is: []ShapeName{Cube, Prism}, plain: true,
		faces: 6, solid: func() []Stroke { return block(1, 1) },
		told: [2]string{"a solid with flat faces, all of them squares of the same size",
			"un cuerpo de caras planas, todas cuadrados del mismo tamaño"}},
	"rectangular prism": {name: []string{"rectangular prism", "prisma rectangular"}, fold: 1, is: []ShapeName{Prism}, plain: true,
		faces: 6, solid: func() []Stroke { return block(1.7, .8) },
		told: [2]string{"a solid with flat faces like a box, some longer than others",
			"un cuerpo de caras planas como una caja, unas más largas que otras"}},
	"cone": {name: []string{"cone", "cono"}, fold: 1, is: []ShapeName{Cone}, plain: true, faces: 2, solid: cone,
		told: [2]string{"a solid with one round flat face that runs to a point",
			"un cuerpo con una cara plana redonda que termina en punta"}},
	"cylinder": {name: []string{"cylinder", "cilindro"}, fold: 1, is: []ShapeName{Cylinder}, plain: true,
		faces: 3, solid: cylinder,
		told: [2]string{"a solid with two round flat faces of the same size and a curved side",
			"un cuerpo con dos caras planas redondas del mismo tamaño y un lado curvo"}},
	"sphere": {name: []string{"sphere", "esfera"}, is: []ShapeName{Sphere}, plain: true, faces: 1, solid: sphere,
		told: [2]string{"a solid that is round on all sides", "un cuerpo redondo por todos lados"}},
}

// in is the text in the language; any other than "es" reads English.
func in(lang string, texts [2]string) string {
	if lang == "es" {
		return texts[1]
	}
	return texts[0]
}

// regular is a shape of n equal sides that stands on one of them.
func regular(n int) []Place {
	list := make([]Place, n)
	for i := range list {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(n) - math.Pi/2 + math.Pi*float64((n+1)%2)/float64(n))
		list[i] = Place{cos, sin}
	}
	return list
}

// box is a rectangle with sides in the proportion.
func box(w, h float64) []Place {
	half := math.Hypot(w, h)
	w, h = w/half, h/half
	return []Place{{-w, -h}, {w, -h}, {w, h}, {-w, h}}
}
