package main

import (
	"archive/zip"
	"fmt"
	"os"
	"strings"
	"testing"
)

// Rows set aside of several sheets go to a file each, so one name for all of them is refused before anything comes in.
func TestSetAsideOfSeveralSheets(t *testing.T) {
	t.Chdir(t.TempDir())
	writeWorkbook(t, "sums.xlsx", "Mon", "Tue")
	mustDo(t, "--bank team.bank init")
	code, _, told := evenhand("--bank team.bank import sums.xlsx --set-aside mend.csv")
	if want := "--set-aside names one file, but sums.xlsx has 2 sheets"; code != exitUsage || !strings.Contains(told, want) {
		t.Errorf("exit code %d, want 2 and %q; said %s", code, want, told)
	}
	if _, _, told := evenhand("--bank team.bank list"); !strings.Contains(told, "0 items") {
		t.Errorf("the refused list came in: %s", told)
	}
	if code, _, told := evenhand("--bank team.bank import sums.xlsx --sheet Tue --set-aside mend.csv"); code != exitInPart {
		t.Errorf("exit code %d, want 3; said %s", code, told)
	}
	if _, err := os.Stat("mend.csv"); err != nil {
		t.Error(err)
	}
}

// writeWorkbook writes a workbook (ECMA-376) whose sheets have one wrong sum each.
func writeWorkbook(t *testing.T, path string, sheets ...string) {
	t.Helper()
	const main = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ` +
		`xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"`
	parts, list, relations := map[string]string{}, "", ""
	for i, name := range sheets {
		list += fmt.Sprintf(`<sheet name="%s" sheetId="%d" r:id="r%d"/>`, name, i+1, i)
		relations += fmt.Sprintf(`<Relationship Id="r%d" Target="worksheets/s%d.xml"/>`, i, i)
		rows := ""
		for row, cells := range [][2]string{{"Question", "Answer"}, {fmt.Sprintf("47 + 3%d", i), "5"}} {
			rows += fmt.Sprintf(`<row r="%d">`, row+1)
			for column, text := range cells {
				rows += fmt.Sprintf(`<c r="%c%d" t="inlineStr"><is><t>%s</t></is></c>`, 'A'+column, row+1, text)
			}
			rows += `</row>`
		}
		parts[fmt.Sprintf("xl/worksheets/s%d.xml", i)] = `<worksheet ` + main + `><sheetData>` + rows + `</sheetData></worksheet>`
	}
	parts["xl/workbook.xml"] = `<workbook ` + main + `><sheets>` + list + `</sheets></workbook>`
	parts["xl/_rels/workbook.xml.rels"] = `<Relationships>` + relations + `</Relationships>`
	file, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	z := zip.NewWriter(file)
	for name, content := range parts {
		part, err := z.Create(name)
		if err == nil {
			_, err = part.Write([]byte(content))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
}
