package task_test

import (
	"testing"

	"evenhand/standards/task"
)

// Ways in which teachers ask for the next number or a missing one (from memory).
func TestSequencesInWords(t *testing.T) {
	for want, list := range map[string][]string{
		"97, 98, 99, ?": {
			"What comes next? 97, 98, 99, __", "What comes next: 97, 98, 99, __",
			"What number comes next? 97, 98, 99, ___", "97, 98, 99, __ What comes next?",
			"97, 98, 99, __. What number is next?", "Count on: 97, 98, 99, __",
			"Complete the sequence: 97, 98, 99, ___", "Complete the pattern: 97, 98, 99, ___",
			"What comes next? 97, 98, 99", "97, 98, 99, ... What comes next?", "What comes after 97, 98, 99?",
			"¿Qué número sigue? 97, 98, 99, __", "¿Qué sigue? 97, 98, 99, __", "Sigue la serie: 97, 98, 99, __",
			"What comes next? 97 98 99 __", "Write the next number: 97, 98, 99, ___",
			"What comes next ? 97, 98, 99, __", "What number comes next after 97, 98, 99?",
		},
		"10, 20, 30, ?": {
			"Which number comes next? 10, 20, 30, ?", "Count by tens: 10, 20, 30, __",
			"What is next? 10, 20, 30, __", "What's next? 10, 20, 30, __",
		},
		"5, 10, 15, ?": {
			"What comes next in the pattern? 5, 10, 15, __", "Continue the pattern: 5, 10, 15, __",
			"Count by 5s: 5, 10, 15, __", "Completa la serie: 5, 10, 15, __",
			"Completa la secuencia: 5, 10, 15, __", "¿Cuál es el número que sigue? 5, 10, 15, __",
			"Cuenta de 5 en 5: 5, 10, 15, __", "Which number comes next in the sequence 5, 10, 15, __?",
			"¿Qué número va después? 5, 10, 15, __", "What is 5, 10, 15, __",
		},
		"10, 20, ?, 40": {
			"What number is missing? 10, 20, __, 40", "¿Qué número falta? 10, 20, __, 40",
			"Escribe el número que falta: 10, 20, __, 40",
		},
		"98, 99, ?, 101": {
			"Find the missing number: 98, 99, __, 101",
		},
		"98, ?, 100, 101": {
			"Find the missing number. 98, __, 100, 101",
		},
		"2, 4, ?, 8": {
			"Write the missing number: 2, 4, __, 8", "Fill in the missing number: 2, 4, __, 8",
		},
		"97, 98, ?, 100": {
			"Fill in the blank: 97, 98, __, 100",
		},
		"30, 40, ?, 60": {
			"What is the missing number? 30, 40, __, 60",
		},
		"2, 4, 6, ?": {
			"Skip count: 2, 4, 6, __",
		},
		"5, 10, ?, 20": {
			"Which number is missing: 5, 10, __, 20?", "What goes in the blank? 5, 10, __, 20",
		},
		"?, 98, 99, 100": {
			"What number comes before? __, 98, 99, 100",
		},
		"12, 10, 8, ?": {
			"What comes next? 12, 10, 8, __",
		},
		"97, 98, ?, ?": {
			"Write the next two numbers: 97, 98, __, __",
		},
		"12, 11, 10, ?": {
			"Count back: 12, 11, 10, __", "Cuenta hacia atrás: 12, 11, 10, __",
		},
		"5, 6, 7, ?": {
			"Next number? 5, 6, 7, __",
		},
		"4, 5, ?, 7": {
			"Which number is left out? 4, 5, __, 7",
		},
		"10, ?, 30, ?, 50": {
			"What are the missing numbers? 10, __, 30, __, 50", "¿Qué números faltan? 10, __, 30, __, 50",
		},
		"5, 10, 15, ?, ?": {
			"¿Cuáles son los dos números que siguen? 5, 10, 15",
		},
		"100, 90, 80, ?": {
			"What comes next? 100, 90, 80, ___",
		},
		"47, 48, 49, ?": {
			"Write the number that comes next: 47, 48, 49, ____",
		},
		"47, 48, ?, 50": {
			"Write the number that is missing. 47, 48, ____, 50",
		},
		"3, 6, 9, 12, ?": {
			"Look at the pattern. What comes next? 3, 6, 9, 12, __",
		},
	} {
		for _, text := range list {
			if read, err := task.Parse(text); err != nil || read.String() != want {
				t.Errorf("%q is read as %v, want %s (%v)", text, read, want, err)
			}
		}
	}
}

// What is asked and the numbers don't agree, or something else is told of: such a row is kept as it is, and said.
func TestSequencesThatAreNone(t *testing.T) {
	for _, text := range []string{
		"What comes next? 1, 2, 4, __",
		"What comes next? red, blue, red, __",
		"What number comes after 99?",
		"What number comes before 100?",
		"What number comes between 98 and 100?",
		"Write the next three numbers: 97, 98, 99, __, __",
		"What comes next? 5, __, 15, 20",
		"What comes before? 97, 98, 99, __",
		"Count back: 9, 10, 11, __",
		"Mia counts 97, 98, 99. What comes next?",
		"There are 5, 10, 15 birds. What comes next?",
		"What odd number comes next? 3, 5, 7, __",
		"Put in order: 9, 5, 7",
		"Which number is missing? 5, 10, 20",
		"What is the missing number ? 98 99",
		"What comes before and what next? __, 98, 99, __",
		"Count up: 12, 11, 10, __",
		"What comes next? 4, 4, 4, __",
		"Write the next two numbers: 5, 10, 15, __",
	} {
		if read, err := task.Parse(text); err == nil {
			t.Errorf("%q is read as %s", text, read)
		}
	}
}
