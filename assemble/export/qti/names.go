package qti

// Names and addresses of the standard, version 3.0 of 1 May 2022.
const (
	itemSpace     = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"
	manifestSpace = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
	metadataSpace = "http://www.imsglobal.org/xsd/imsqti_metadata_v3p0"
	lomSpace      = "http://ltsc.ieee.org/xsd/LOM"
	schemaSpace   = "http://www.w3.org/2001/XMLSchema-instance"

	itemSchema     = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"
	manifestSchema = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd"
	templates      = "https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/"

	itemType     = "imsqti_item_xmlv3p0"
	testType     = "imsqti_test_xmlv3p0"
	manifestName = "imsmanifest.xml"
)

// forms are the standard's names for a kind of response: the element, what its values are and how
// many, and the name in metadata.
var forms = map[Kind]struct{ element, base, cardinality, metadata string }{
	Number:  {"qti-text-entry-interaction", "integer", "single", "textEntryInteraction"},
	Words:   {"qti-text-entry-interaction", "string", "single", "textEntryInteraction"},
	Choice:  {"qti-choice-interaction", "identifier", "single", "choiceInteraction"},
	Match:   {"qti-match-interaction", "directedPair", "multiple", "matchInteraction"},
	Drawing: {"qti-drawing-interaction", "file", "single", "drawingInteraction"},
	Text:    {"qti-extended-text-interaction", "string", "single", "extendedTextInteraction"},
}

// typedIn says that a response is typed within a paragraph; others are blocks.
func (k Kind) typedIn() bool { return k == Number || k == Words }

// root is the outermost element of a file, with its namespace and schema.
func root(name, space, schema string, attributes ...string) node {
	return element(name, append([]string{
		"xmlns", space, "xmlns:xsi", schemaSpace, "xsi:schemaLocation", space + " " + schema,
	}, attributes...)...)
}
