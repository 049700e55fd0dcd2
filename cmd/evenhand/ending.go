package main

import (
	"path/filepath"
	"slices"
	"strings"
)

// kindOfFile is a kind of file that a command writes, with the endings that its name may have.
type kindOfFile struct {
	what    string
	endings []string
}

// The kinds of files that commands write by a name that a person gives.
var (
	csvFile = kindOfFile{"CSV", []string{".csv", ".txt"}}
	pdfFile = kindOfFile{"a PDF", []string{".pdf"}}
	webPage = kindOfFile{"a page for a browser", []string{".html", ".htm"}}
	picture = kindOfFile{"a picture in SVG", []string{".svg"}}
	zipFile = kindOfFile{"a zip file", []string{".zip"}}
	lpModel = kindOfFile{"a program in LP format", []string{".lp", ".txt"}}
	folder  = kindOfFile{"a folder of several files", nil}
)

// otherEndings say that a file is of a kind that none of these is.
var otherEndings = []string{
	".doc", ".docx", ".odt", ".rtf", ".xls", ".xlsx", ".ods", ".ppt", ".pptx", ".json", ".toml", ".png", ".jpg", ".jpeg", ".gif", ".bank",
}

// named refuses a name whose ending says another kind of file: what opens files by their endings would take it for
// damaged. Other endings, such as that of a date, are the person's own.
func (k kindOfFile) named(path string) error {
	ending := strings.ToLower(filepath.Ext(path))
	if slices.Contains(k.endings, ending) {
		return nil
	}
	says := slices.Contains(otherEndings, ending)
	for _, other := range []kindOfFile{csvFile, pdfFile, webPage, picture, zipFile, lpModel} {
		says = says || slices.Contains(other.endings, ending)
	}
	switch {
	case !says:
		return nil
	case len(k.endings) == 0:
		return usagef("%s is written, and %s says that it is one file; name it such as %s", k.what, path, strings.TrimSuffix(path, filepath.Ext(path)))
	}
	return usagef("%s is written, and %s says that it is something else; give it the ending %s", k.what, path, k.endings[0])
}
