// Package remote keeps a store at a running desk: its client is the third maker of a
// store, next to a file and a database, and its server is what the desk answers it with.
//
// A View asks the desk questions. The first begins a moment there, a View of the desk's
// own that is held open while the client reads on, for some seconds at most. An Update reads
// such a moment, too, and gathers what it writes. At the end it sends both: every question
// with a sum of its answer, and what is to be written. The desk asks the questions again in
// an Update of its own; if an answer has become another it refuses, and the client begins
// anew. So Updates build on one another as if they took turns, and nobody waits for a
// network while the store is locked.
//
// Each write carries a number of its own that is kept with what it wrote: a client that lost
// its connection asks again, and the desk knows what it has kept already, also after a crash.
//
// The desk says who may read and write, which buckets a client sees, and proves what it is
// sent before it keeps it (Access).
package remote
