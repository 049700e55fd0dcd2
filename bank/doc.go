// Package bank keeps a team's items and their history safely in one file, or in a
// database (package store says what either must do). Everything an item has ever been is in it: changing
// an item keeps the old revision beside the new one, with who changed it, when
// and why; retiring one only stops it from being chosen. Nothing is ever deleted.
//
//	b, err := bank.Create("team.bank")
//	task := standards.MustParse("47 + 36 = ?")
//	added, err := b.Add([]bank.Item{bank.NewItem(task, "", bank.Origin{Kind: "written", By: "Ms. Reyes"})}, "Ms. Reyes", time.Now())
//	for item, err := range b.Find(bank.Query{Skills: []standards.SkillID{"add-two-digit"}}) { ... }
//
// # What is in the file
//
// Keys begin with an item's ID, a ULID of 16 bytes, unless said otherwise.
//
//	about           what the file is, the numbers of its format and of the catalogue that
//	                computed its items (refresh.go), the traits by their names, and what was learnt from papers (JSON and its sum; table.go)
//	items           ID: the item as it stands
//	revisions       ID, revision (4 bytes): each earlier revision
//	joined          other ID that an item was known by before banks were merged: the item's ID
//	places          ID, revision: the place of a revision of merged histories (joined.go)
//	uses            ID, week (8 characters), quiz: when it was recorded
//	taken back      the same: a use that was taken back
//	plans           name, revision: each text of a plan (JSON and its sum)
//	quizzes         quiz ID: the quiz as it was given (JSON and its sum)
//	fingerprints    half a SHA-256 of what the item asks: its ID, so that an item given twice is known
//	doubles         the same and ID: nothing, for an item that asks the same as another (doubles.go)
//	groups          all that the assembler sees of an item: the group's number and size (4 bytes each)
//	group members   group's number, hash (8 bytes), ID: the item's task and key
//	origins         kind, file, author: the set's number and size
//	origin members  set's number, ID: nothing
//
// Within keys and values, texts stand after their length, and lengths and numbers
// are varints (record.go). Items, revisions and uses, of which there is no second
// copy, end with a sum that shows any changed byte (seal.go).
//
// Groups are how a plan can be met from a million items without reading them:
// there are only as many groups as there are kinds of items, and items of one
// group are interchangeable.
//
// # What can go wrong with a file
//
// A file that is cut short, empty, of another program, in use, or of a newer
// evenhand gives one sentence when it is opened. Pages that were lost or changed
// give an error where they are met; Check looks for all of them.
//
// # Many at once
//
// One bank file can be open in one program at a time for writing, and others wait for
// their turn; a bank in a database in many, which take turns change by change. Within a
// program a Bank may be used by several goroutines. Sequences (Find, Groups) read
// some hundreds of entries at a time, and no transaction is open while the body of
// the loop runs, so it may change the bank.
package bank
