package qti

import (
	"fmt"
	"slices"

	"evenhand/standards"
	"evenhand/standards/task"
)

// The catalogues that identifiers in metadata are of.
const (
	bankCatalog  = "evenhand item"
	taskCatalog  = "evenhand task"
	codeSource   = "Common Core State Standards for Mathematics (2010)"
	skillSource  = "evenhand skills"
	lomSource    = "LOMv1.0"
	codePurpose  = "educational objective"
	skillPurpose = "competency"
)

// lomDifficulty is a band in the words of IEEE 1484.12.1-2002, 5.8.
var lomDifficulty = map[standards.Band]string{standards.WarmUp: "easy", standards.Core: "medium", standards.Stretch: "difficult"}

// metadata tells of an item in its place in the manifest: identifiers, language,
// difficulty, working time, standards and skill in LOM, and the kinds of interaction in the
// standard's own metadata.
func (it Item) metadata() node {
	general := element("general").with(identifier(bankCatalog, it.BankID))
	if it.Task != "" {
		general = general.with(identifier(taskCatalog, it.Task))
	}
	general = general.with(element("title").with(phrase(it.Title, it.Lang)), element("language").saying(it.Lang))
	educational := element("educational").with(
		vocabulary("difficulty", lomDifficulty[it.Band]),
		element("typicalLearningTime").with(element("duration").saying(fmt.Sprintf("PT%dS", it.Seconds))))
	lom := element("lom", "xmlns", lomSpace).with(general, educational)
	for _, code := range it.Codes {
		lom = lom.with(classification(codePurpose, codeSource, string(code)))
	}
	if it.Skill != "" {
		lom = lom.with(classification(skillPurpose, skillSource, string(it.Skill)))
	}
	return element("metadata").with(lom, it.interactions())
}

// interactions are the kinds of interaction, each once.
func (it Item) interactions() node {
	n := element("qtiMetadata", "xmlns", metadataSpace)
	var seen []string
	for _, r := range it.Responses {
		if name := forms[r.Kind].metadata; !slices.Contains(seen, name) {
			seen = append(seen, name)
			n = n.with(element("interactionType").saying(name))
		}
	}
	return n
}

func identifier(catalog, entry string) node {
	return element("identifier").with(element("catalog").saying(catalog), element("entry").saying(entry))
}

func phrase(text, lang string) node { return element("string", "language", lang).saying(text) }

func vocabulary(name, value string) node {
	return element(name).with(element("source").saying(lomSource), element("value").saying(value))
}

func classification(purpose, source, id string) node {
	path := element("taxonPath").with(element("source").with(phrase(source, "en")), element("taxon").with(element("id").saying(id)))
	return element("classification").with(vocabulary("purpose", purpose), path)
}

// about reads what metadata told of an item.
func (it *Item) about(metadata node) error {
	lom := metadata.first("lom")
	for _, n := range lom.first("general").all("identifier") {
		switch entry := n.first("entry").string(); n.first("catalog").string() {
		case bankCatalog:
			it.BankID = entry
		case taskCatalog:
			it.Task = entry
		}
	}
	for _, n := range lom.all("classification") {
		id := n.first("taxonPath", "taxon", "id").string()
		switch n.first("purpose", "value").string() {
		case codePurpose:
			it.Codes = append(it.Codes, task.Code(id))
		case skillPurpose:
			it.Skill = standards.SkillID(id)
		}
	}
	educational := lom.first("educational")
	for band, word := range lomDifficulty {
		if word == educational.first("difficulty", "value").string() {
			it.Band = band
		}
	}
	duration := educational.first("typicalLearningTime", "duration").string()
	if _, err := fmt.Sscanf(duration, "PT%dS", &it.Seconds); err != nil {
		return fmt.Errorf("working time %q is not like PT30S", duration)
	}
	return nil
}
