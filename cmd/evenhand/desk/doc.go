// Package desk puts the bank on web pages: the same jobs as the commands, through the same
// packages, for one teacher on this computer or for a team at one address.
//
// desk.go opens what the pages need and lists every route. Each page is a file named after it
// with its handlers, and a template of the same name in page/. A handler reads the request, calls
// the package that knows the trade and gives the page its data; it returns an error, and visit.go
// turns that into a status and a page. guard.go stands before all of them.
//
// What pages say stands in said/, one table of sentences a page, in English and Spanish; sizes
// and colours stand by name at the top of look/desk.css. look/desk.js makes parts of a page
// follow what is typed; every page works without it.
package desk
