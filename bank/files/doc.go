// Package files writes files and folders so that nothing is lost: each appears under
// its name whole or not at all, wherever the program or the power stops, and what is
// there already is only replaced by who asks for it.
//
//	err := files.New("copy.bank", files.Private, write)      // never replaces
//	err := files.Write("all.csv", files.Shared, write)       // replaces
//	err := files.Folder("friday", fill)                      // a set of files as one
//
// What is not finished yet has a name such as .evenhand-4f1c-2031-8a77c3 beside its
// place. A program that was killed leaves it there; Sweep takes it away.
package files
