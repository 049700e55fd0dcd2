package desk

import (
	"context"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"

	"github.com/gocarina/gocsv"
)

// tellers are the packages whose sentences pages show. In those that are whole every sentence is told so that it has
// its words in other languages; of the others only what is.
var tellers = []struct {
	folder string
	whole  bool
}{
	{"standards/words", true}, {"standards/task", true}, {"standards", true}, {"assemble/plan", true},
	{"import", true}, {"import/marks", true}, {"bank", false}, {"bank/generate", true}, {"bank/results", false}, {"bank/files", false},
	{"bank/store", false}, {"bank/store/bolt", false}, {"bank/store/postgres", false}, {"bank/store/remote", false},
	{"assemble", true}, {"assemble/followup", true}, {"assemble/sheet", false}, {"cmd/evenhand", false},
}

// Every sentence that another package tells has its own in said/told, none stands there for nothing, and what goes
// into the one goes into the other.
func TestToldSentences(t *testing.T) {
	told := map[string]string{} // where each is told
	for _, teller := range tellers {
		sentencesOf(t, teller.folder, teller.whole, told)
	}
	if len(told) < 200 {
		t.Fatalf("only %d sentences were found", len(told))
	}
	all, err := readSentences()
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range slices.Sorted(maps.Keys(told)) {
		if _, known := all["es"].text[key]; !known {
			t.Errorf("%s: not in said/told: %q", told[key], key)
		}
	}
	for key, term := range toldKeys(t) {
		if term {
			continue
		}
		if told[key] == "" {
			t.Errorf("%q stands in said/told and is told nowhere", key)
		}
		for _, lang := range languages {
			text := all[lang].text[key]
			if got := fmt.Sprintf(strings.ReplaceAll(text, "%w", "%v"), sampleArgs(key)...); strings.Contains(got, "%!") {
				t.Errorf("%q in %s: what goes into the sentence doesn't fit: %s", key, lang, got)
			}
			if !strings.Contains(text, "%[") && len(anyVerb.FindAllString(text, -1)) != len(sampleArgs(key)) {
				t.Errorf("%q in %s: something is left out", key, lang)
			}
		}
	}
}

var anyVerb = regexp.MustCompile(`%[^a-zA-Z%]*([a-zA-Z])`)

// The names of layouts and the topics of standards have their words in Spanish.
func TestTerms(t *testing.T) {
	all, err := readSentences()
	if err != nil {
		t.Fatal(err)
	}
	var terms []string
	for _, look := range task.AllLooks() {
		terms = append(terms, look.Title())
	}
	for _, code := range standards.AllCodes() {
		terms = append(terms, standards.Topic(code))
	}
	for _, term := range terms {
		if all["es"].text[term] == "" {
			t.Errorf("%q has no word in Spanish", term)
		}
	}
}

// What systems and networks say, here when a copy can't be written, is told in Spanish.
func TestSystemErrorsAreTold(t *testing.T) {
	all, err := readSentences()
	if err != nil {
		t.Fatal(err)
	}
	for _, cause := range []error{
		syscall.ENOSPC, syscall.EDQUOT, syscall.EROFS, syscall.EIO, syscall.EACCES, syscall.EPERM, syscall.ENOENT, syscall.EEXIST,
		syscall.ECONNREFUSED, syscall.ECONNRESET, syscall.EPIPE, syscall.ETIMEDOUT, syscall.EHOSTUNREACH, syscall.ENETUNREACH,
		syscall.EMFILE, syscall.EBUSY, syscall.EISDIR, syscall.ENOTDIR, syscall.ENAMETOOLONG,
		context.DeadlineExceeded, os.ErrDeadlineExceeded, io.ErrUnexpectedEOF,
	} {
		err := fmt.Errorf("write copies: %w", &fs.PathError{Op: "write", Path: "copies/x.bank", Err: cause})
		english, spanish := all["en"].Tell(err), all["es"].Tell(err)
		if english == spanish || strings.Contains(spanish, cause.Error()) {
			t.Errorf("%v is told in English: %s", cause, spanish)
		}
	}
}

// sampleArgs are things that could go into a sentence.
func sampleArgs(format string) (args []any) {
	for _, verb := range anyVerb.FindAllStringSubmatch(strings.ReplaceAll(format, "%%", ""), -1) {
		switch verb[1] {
		case "d":
			args = append(args, 7)
		case "c":
			args = append(args, 'A')
		default:
			args = append(args, "47 + 36")
		}
	}
	return args
}

// toldKeys are the keys of the tables in said/told, and whether each is a term that goes into sentences, or a
// reason that stands in histories.
func toldKeys(t *testing.T) map[string]bool {
	t.Helper()
	keys := map[string]bool{}
	files, err := fs.Glob(saidFiles, "said/told/*.csv")
	if err != nil || len(files) == 0 {
		t.Fatal("no tables of what is told", err)
	}
	for _, file := range files {
		text, err := saidFiles.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var rows []sentence
		if err := gocsv.UnmarshalBytes(text, &rows); err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			keys[row.Key] = strings.HasSuffix(file, "/terms.csv") || strings.HasSuffix(file, "/reasons.csv")
		}
	}
	return keys
}

// saying are functions of package words by the places of the formats among what they take.
var saying = map[string][]int{"Sayf": {0}, "Errorf": {0}, "SayCount": {1, 2}, "Joined": {1}, "Term": {0}}

// sentencesOf adds the formats that a package tells.
func sentencesOf(t *testing.T, folder string, whole bool, told map[string]string) {
	t.Helper()
	set := token.NewFileSet()
	paths, err := filepath.Glob("../../../" + folder + "/*.go")
	if err != nil || len(paths) == 0 {
		t.Fatal(folder, err)
	}
	var files []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	texts, own := map[string]string{}, map[string][]int{}
	each := func(visit func(ast.Node) bool) {
		for _, file := range files {
			ast.Inspect(file, visit)
		}
	}
	each(func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok {
			for i, name := range v.Names {
				if i < len(v.Values) {
					if text, ok := textOf(v.Values[i], texts); ok {
						texts[name.Name] = text
					}
				}
			}
		}
		return true
	})
	formatsOf := func(call *ast.CallExpr) []int {
		switch f := call.Fun.(type) {
		case *ast.SelectorExpr:
			if x, ok := f.X.(*ast.Ident); ok && x.Name == "words" {
				return saying[f.Sel.Name]
			}
			return own[f.Sel.Name]
		case *ast.Ident:
			if folder == "standards/words" && saying[f.Name] != nil {
				return saying[f.Name]
			}
			return own[f.Name]
		}
		return nil
	}
	// Functions that hand a format on, until none is found any more.
	for found := -1; found != len(own); {
		found = len(own)
		note := func(name string, f *ast.FuncType, body ast.Node) {
			at := 0
			for _, field := range f.Params.List {
				for _, param := range field.Names {
					ast.Inspect(body, func(n ast.Node) bool {
						if call, ok := n.(*ast.CallExpr); ok {
							for _, i := range formatsOf(call) {
								if arg, ok := call.Args[min(i, len(call.Args)-1)].(*ast.Ident); ok && arg.Name == param.Name {
									own[name] = []int{at}
								}
							}
						}
						return true
					})
					at++
				}
			}
		}
		each(func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				if n.Body != nil && folder != "standards/words" {
					note(n.Name.Name, n.Type, n.Body)
				}
			case *ast.AssignStmt:
				if f, ok := n.Rhs[0].(*ast.FuncLit); ok {
					note(fmt.Sprint(n.Lhs[0]), f.Type, f.Body)
				}
			}
			return true
		})
	}
	each(func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		where := set.Position(call.Pos()).String()
		for _, i := range formatsOf(call) {
			if text, ok := textOf(call.Args[i], texts); ok && words.SaysWords(text) {
				told[text] = where
			}
		}
		f, ok := call.Fun.(*ast.SelectorExpr)
		if ok && whole && slices.Contains([]string{"fmt Errorf", "errors New"}, fmt.Sprint(f.X, f.Sel)) {
			if text, _ := textOf(call.Args[0], texts); words.SaysWords(text) && !sentinel(files, call) {
				t.Errorf("%s: %q is told in English only; say it with words.Errorf", where, text)
			}
		}
		return true
	})
}

// sentinel says that an error stands in a variable of the package, for the program to know it by.
func sentinel(files []*ast.File, call *ast.CallExpr) bool {
	for _, file := range files {
		for _, decl := range file.Decls {
			if d, ok := decl.(*ast.GenDecl); ok && d.Pos() <= call.Pos() && call.End() <= d.End() {
				return true
			}
		}
	}
	return false
}

// textOf is a text that the source has written out.
func textOf(e ast.Expr, named map[string]string) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		left, one := textOf(e.X, named)
		right, other := textOf(e.Y, named)
		return left + right, one && other
	case *ast.Ident:
		text, ok := named[e.Name]
		return text, ok
	}
	return "", false
}
