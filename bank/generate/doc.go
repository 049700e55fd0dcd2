// Package generate makes items of a skill, with the traits that are wished for.
//
// Every skill has a space: all its possible tasks in one fixed order, so that they
// can be counted exactly and drawn by number, like raffle tickets. Make shuffles
// the tickets with a seed and takes them one by one; a task that has the wished
// traits and is not in the bank is kept, until there are enough. So each
// possible item is as likely as any other, the same seed gives the same items, and
// when the tickets run out it is known for certain how many items exist.
//
// Two tasks that ask the same thing, 47 + 36 and 36 + 47, are one possible item
// shown in two ways. The spaces hold each item once; the way it is shown is drawn
// when it is made. The longer number stands first (47 + 5, not 5 + 47), as it does
// in column sums.
//
// A new skill is one function that describes its space, in the file of its family,
// and one row in the table in skills.go.
package generate
