package main

import (
	"html/template"
	"os"
)

// troublePage says in the browser why the desk did not open, to a person who has no terminal to read it
// in.
var troublePage = template.Must(template.New("trouble").Parse(`<!doctype html>
<html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>evenhand</title>
<style>body { font: 18px/1.5 system-ui, sans-serif; max-width: 38em; margin: 2em auto; padding: 0 1em; color-scheme: light dark }</style>
<h1>The desk did not open</h1><p>{{.}}</p><p>Nothing was changed.</p>
<h1 lang="es">El escritorio no se abrió</h1><p lang="es">El motivo está arriba, en inglés. No se cambió nada.</p>
</html>
`))

// showTrouble opens a page that says why the program ended.
func showTrouble(message string) error {
	file, err := os.CreateTemp("", "evenhand-*.html")
	if err != nil {
		return err
	}
	err = troublePage.Execute(file, message)
	if closed := file.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return err
	}
	return browse(file.Name())
}
