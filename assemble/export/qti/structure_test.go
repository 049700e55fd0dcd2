package qti_test

import (
	"encoding/xml"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// xmlElement is an element of a file with all that is in it.
type xmlElement struct {
	XMLName xml.Name
	Attrs   []xml.Attr   `xml:",any,attr"`
	Kids    []xmlElement `xml:",any"`
	Text    string       `xml:",chardata"`
}

func (e xmlElement) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// each visits the element and all elements inside.
func (e xmlElement) each(visit func(xmlElement)) {
	visit(e)
	for _, kid := range e.Kids {
		kid.each(visit)
	}
}

// named are the elements of a name, at any depth.
func (e xmlElement) named(name string) (list []xmlElement) {
	e.each(func(n xmlElement) {
		if n.XMLName.Local == name {
			list = append(list, n)
		}
	})
	return list
}

// content is what an element must hold: its elements in order, as an expression over their names
// with a space after each, and attributes with what their values look like.
type content struct {
	kids     string
	required map[string]string
	optional map[string]string
}

const (
	ncname  = `[A-Za-z_][A-Za-z0-9_.-]*` // Namespaces in XML 1.0, production 4, its ASCII part
	boolean = `true|false`
	anyText = `.+`
	rule    = `(qti-(and|not|match|equal|sum|gte|variable|correct|base-value) )`
)

// The rules for items are those of the Best Practices and Implementation Guide for QTI 3.0 (1EdTech, 1
// May 2022), sections 3.1 (item), 3.2 (interactions) and 3.4 (response processing), and of its
// published example items; those for tests of section 2 and the example test. The values
// of attributes, and which are required, are from memory of the information model.
var structure = map[string]content{
	"qti-assessment-item": {`(qti-response-declaration )+qti-outcome-declaration qti-item-body (qti-response-processing )?`,
		map[string]string{"identifier": ncname, "title": anyText, "time-dependent": boolean},
		map[string]string{"adaptive": boolean, "lang": `en|es`, "schemaLocation": anyText}},
	"qti-response-declaration": {`(qti-correct-response )?(qti-mapping )?`,
		map[string]string{"identifier": ncname, "cardinality": `single|multiple`, "base-type": `integer|string|identifier|directedPair|file`}, nil},
	"qti-correct-response": {`(qti-value )+`, nil, nil},
	"qti-value":            {``, nil, nil},
	"qti-mapping":          {`(qti-map-entry )+`, nil, map[string]string{"lower-bound": `0`, "upper-bound": `1`, "default-value": `0`}},
	"qti-map-entry":        {``, map[string]string{"map-key": anyText, "mapped-value": `1`}, map[string]string{"case-sensitive": boolean}},
	"qti-default-value":    {`(qti-value )+`, nil, nil},
	"qti-outcome-declaration": {`(qti-default-value )?`,
		map[string]string{"identifier": `SCORE`, "cardinality": `single`, "base-type": `float`},
		map[string]string{"normal-maximum": `1`, "normal-minimum": `0`, "external-scored": `human|externalMachine`}},
	"qti-item-body": {`((p|qti-choice-interaction|qti-match-interaction|qti-drawing-interaction|` +
		`qti-extended-text-interaction) )+(qti-rubric-block )?`, nil, nil},
	"p":                          {`((qti-text-entry-interaction|img) )*`, nil, nil},
	"img":                        {``, map[string]string{"src": `pictures/` + ncname + `\.svg`, "alt": anyText}, nil},
	"qti-text-entry-interaction": {``, map[string]string{"response-identifier": ncname}, map[string]string{"expected-length": `[0-9]+`}},
	"qti-choice-interaction": {`qti-prompt (qti-simple-choice ){2,}`,
		map[string]string{"response-identifier": ncname, "max-choices": `1`}, map[string]string{"shuffle": boolean}},
	"qti-simple-choice": {``, map[string]string{"identifier": ncname}, nil},
	"qti-match-interaction": {`qti-prompt (qti-simple-match-set ){2}`,
		map[string]string{"response-identifier": ncname, "max-associations": `[2-6]`}, map[string]string{"shuffle": boolean}},
	"qti-simple-match-set":          {`(qti-simple-associable-choice )+`, nil, nil},
	"qti-simple-associable-choice":  {`(img )?`, map[string]string{"identifier": ncname, "match-max": `[0-9]+`}, nil},
	"qti-drawing-interaction":       {`qti-prompt img `, map[string]string{"response-identifier": ncname}, nil},
	"qti-extended-text-interaction": {`qti-prompt `, map[string]string{"response-identifier": ncname}, nil},
	"qti-prompt":                    {``, nil, nil},
	"qti-rubric-block":              {`qti-content-body `, map[string]string{"view": `scorer`}, map[string]string{"use": `scoring`}},
	"qti-content-body":              {`(p )+`, nil, nil},
	"qti-response-processing": {`(qti-response-condition )?`, nil,
		map[string]string{"template": `https://purl\.imsglobal\.org/spec/qti/v3p0/rptemplates/(match_correct|map_response)\.xml`}},
	"qti-response-condition": {`qti-response-if `, nil, nil},
	"qti-response-if":        {rule + `qti-set-outcome-value `, nil, nil},
	"qti-set-outcome-value":  {`qti-(base-value|sum) `, map[string]string{"identifier": `SCORE`}, nil},
	"qti-and":                {rule + `+`, nil, nil},
	"qti-not":                {rule, nil, nil},
	"qti-match":              {rule + `{2}`, nil, nil},
	"qti-equal":              {rule + `{2}`, map[string]string{"tolerance-mode": `exact`}, nil},
	"qti-gte":                {rule + `{2}`, nil, nil},
	"qti-sum":                {`(` + rule + `|qti-test-variables )+`, nil, nil},
	"qti-variable":           {``, map[string]string{"identifier": ncname}, nil},
	"qti-correct":            {``, map[string]string{"identifier": ncname}, nil},
	"qti-base-value":         {``, map[string]string{"base-type": `integer|float`}, nil},

	"qti-assessment-test": {`qti-outcome-declaration qti-test-part qti-outcome-processing `,
		map[string]string{"identifier": ncname, "title": anyText}, map[string]string{"schemaLocation": anyText}},
	"qti-test-part": {`qti-assessment-section `,
		map[string]string{"identifier": ncname, "navigation-mode": `linear|nonlinear`, "submission-mode": `individual|simultaneous`}, nil},
	"qti-assessment-section":  {`(qti-assessment-item-ref )+`, map[string]string{"identifier": ncname, "title": anyText, "visible": boolean}, nil},
	"qti-assessment-item-ref": {``, map[string]string{"identifier": ncname, "href": `items/` + ncname + `\.xml`}, nil},
	"qti-outcome-processing":  {`qti-set-outcome-value `, nil, nil},
	"qti-test-variables":      {``, map[string]string{"variable-identifier": `SCORE`}, nil},

	// IMS Content Packaging 1.2 as the guide's example package uses it.
	"manifest":      {`metadata organizations resources `, map[string]string{"identifier": ncname}, map[string]string{"schemaLocation": anyText}},
	"metadata":      {`(schema schemaversion )?lom (qtiMetadata )?`, nil, nil},
	"schema":        {``, nil, nil},
	"schemaversion": {``, nil, nil},
	"organizations": {``, nil, nil},
	"resources":     {`(resource )+`, nil, nil},
	"resource":      {`(metadata )?(file )+(dependency )*`, map[string]string{"identifier": ncname, "type": `imsqti_(item|test)_xmlv3p0`, "href": anyText}, nil},
	"file":          {``, map[string]string{"href": anyText}, nil},
	"dependency":    {``, map[string]string{"identifierref": ncname}, nil},
	// QTI metadata, from memory.
	"qtiMetadata":     {`(interactionType )+`, nil, nil},
	"interactionType": {``, nil, nil},
	// IEEE 1484.12.1-2002: 1.1 identifier, 1.2 title, 1.3 language, 5.8 difficulty, 5.9 typical
	// learning time, 9.1 purpose, 9.2 taxon path.
	"lom":                 {`general (educational )?(classification )*`, nil, nil},
	"general":             {`(identifier )*title language `, nil, nil},
	"identifier":          {`catalog entry `, nil, nil},
	"catalog":             {``, nil, nil},
	"entry":               {``, nil, nil},
	"title":               {`(string )+`, nil, nil},
	"string":              {``, map[string]string{"language": `en|es`}, nil},
	"language":            {``, nil, nil},
	"educational":         {`difficulty typicalLearningTime `, nil, nil},
	"difficulty":          {`source value `, nil, nil},
	"typicalLearningTime": {`duration `, nil, nil},
	"duration":            {``, nil, nil},
	"classification":      {`purpose taxonPath `, nil, nil},
	"purpose":             {`source value `, nil, nil},
	"taxonPath":           {`source taxon `, nil, nil},
	"source":              {`(string )?`, nil, nil},
	"taxon":               {`id `, nil, nil},
	"id":                  {``, nil, nil},
	"value":               {``, nil, nil},
}

// breaks lists how an element and those inside break the rules.
func (e xmlElement) breaks() (list []string) {
	e.each(func(n xmlElement) {
		rule, ok := structure[n.XMLName.Local]
		if !ok {
			list = append(list, "no rule for "+n.XMLName.Local)
			return
		}
		kids := ""
		for _, kid := range n.Kids {
			kids += kid.XMLName.Local + " "
		}
		if !matches(rule.kids, kids) {
			list = append(list, fmt.Sprintf("%s holds %q", n.XMLName.Local, kids))
		}
		for name, pattern := range rule.required {
			if !matches(pattern, n.attr(name)) {
				list = append(list, fmt.Sprintf("%s has %s=%q", n.XMLName.Local, name, n.attr(name)))
			}
		}
		for _, a := range n.Attrs {
			pattern, ok := rule.optional[a.Name.Local]
			if rule.required[a.Name.Local] == "" && a.Name.Space != "xmlns" && a.Name.Local != "xmlns" && (!ok || !matches(pattern, a.Value)) {
				list = append(list, fmt.Sprintf("%s has %s=%q", n.XMLName.Local, a.Name.Local, a.Value))
			}
		}
	})
	return list
}

var patterns = make(map[string]*regexp.Regexp)

func matches(pattern, text string) bool {
	if patterns[pattern] == nil {
		patterns[pattern] = regexp.MustCompile(`^(?:` + pattern + `)$`)
	}
	return patterns[pattern].MatchString(text)
}

// parsed is the files of a package by their names.
func parsed(t *testing.T, data []byte) map[string]xmlElement {
	t.Helper()
	files := make(map[string]xmlElement)
	for _, f := range unpacked(t, data) {
		var root xmlElement
		if err := xml.Unmarshal(f.text, &root); err != nil {
			t.Fatalf("%s: %v", f.name, err)
		}
		if _, ok := files[f.name]; ok {
			t.Errorf("%s is in the package twice", f.name)
		}
		files[f.name] = root
	}
	return files
}

// Every file is well formed and follows the rules above, for all skills and looks.
func TestStructure(t *testing.T) {
	for _, lang := range []string{"en", "es"} {
		for name, root := range parsed(t, written(t, every(t, lang))) {
			if path.Ext(name) == ".svg" {
				if root.XMLName.Local != "svg" {
					t.Errorf("%s is %s", name, root.XMLName.Local)
				}
				continue
			}
			for _, broken := range root.breaks() {
				t.Errorf("%s: %s", name, broken)
			}
			if root.XMLName.Local == "qti-assessment-item" {
				for _, broken := range breaksOfItem(root) {
					t.Errorf("%s: %s", name, broken)
				}
			}
		}
	}
}

// The kinds of value that an interaction gives, from memory of the information model.
var valuesOf = map[string]string{
	"qti-text-entry-interaction": `integer single|string single`, "qti-choice-interaction": `identifier single`,
	"qti-match-interaction": `directedPair multiple`, "qti-drawing-interaction": `file single`, "qti-extended-text-interaction": `string single`,
}

// breaksOfItem lists what doesn't fit together in an item.
func breaksOfItem(item xmlElement) (list []string) {
	declared := make(map[string]xmlElement)
	for _, d := range item.named("qti-response-declaration") {
		if _, twice := declared[d.attr("identifier")]; twice {
			list = append(list, d.attr("identifier")+" is declared twice")
		}
		declared[d.attr("identifier")] = d
	}
	asked := 0
	item.each(func(n xmlElement) {
		if values, ok := valuesOf[n.XMLName.Local]; ok {
			asked++
			d := declared[n.attr("response-identifier")]
			if !matches(values, d.attr("base-type")+" "+d.attr("cardinality")) {
				list = append(list, fmt.Sprintf("%s gives a %s %s", n.XMLName.Local, d.attr("cardinality"), d.attr("base-type")))
			}
		}
	})
	if asked != len(declared) {
		list = append(list, fmt.Sprintf("%d responses are declared and %d asked for", len(declared), asked))
	}
	var ids []string
	for _, option := range append(item.named("qti-simple-choice"), item.named("qti-simple-associable-choice")...) {
		ids = append(ids, option.attr("identifier"))
	}
	unique := slices.Compact(slices.Sorted(slices.Values(ids)))
	if len(unique) != len(ids) {
		list = append(list, fmt.Sprintf("options %v stand twice", ids))
	}
	for _, d := range declared {
		for _, value := range d.named("qti-value") {
			for _, id := range strings.Fields(value.Text) {
				if len(ids) > 0 && !slices.Contains(ids, id) {
					list = append(list, id+" is right but no option")
				}
			}
		}
	}
	for _, processing := range item.named("qti-response-processing") {
		if _, ok := declared["RESPONSE"]; processing.attr("template") != "" && !ok {
			list = append(list, "a template needs RESPONSE")
		}
	}
	return list
}

// The manifest lists every file of the package once, the tests refer to items that it lists and
// depends on them, and pictures are where their items look for them.
func TestManifestListsEveryFile(t *testing.T) {
	files := parsed(t, written(t, every(t, "en")))
	listed := make(map[string]string) // file to resource
	ids := make(map[string]bool)
	for _, resource := range files["imsmanifest.xml"].named("resource") {
		id := resource.attr("identifier")
		if ids[id] {
			t.Errorf("%s stands twice", id)
		}
		ids[id] = true
		for _, file := range resource.named("file") {
			href := file.attr("href")
			if _, ok := files[href]; !ok || listed[href] != "" {
				t.Errorf("%s: %s is missing or listed twice", id, href)
			}
			listed[href] = id
		}
	}
	for name, root := range files {
		if name != "imsmanifest.xml" && listed[name] == "" {
			t.Errorf("%s is not listed", name)
		}
		for _, img := range root.named("img") {
			if picture := path.Join(path.Dir(name), img.attr("src")); listed[picture] != listed[name] {
				t.Errorf("%s shows %s, which is listed under %q", name, picture, listed[picture])
			}
		}
		for _, ref := range root.named("qti-assessment-item-ref") {
			if listed[ref.attr("href")] != ref.attr("identifier") || files[ref.attr("href")].attr("identifier") != ref.attr("identifier") {
				t.Errorf("%s refers to %s as %s", name, ref.attr("href"), ref.attr("identifier"))
			}
		}
	}
	for _, resource := range files["imsmanifest.xml"].named("resource") {
		for _, dependency := range resource.named("dependency") {
			if !ids[dependency.attr("identifierref")] {
				t.Errorf("%s depends on %s", resource.attr("identifier"), dependency.attr("identifierref"))
			}
		}
	}
}
