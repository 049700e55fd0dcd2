package search

import "math"

// dice are random numbers for chains, which throw some at every step: splitmix64 (Steele, Lea and Flood, OOPSLA
// 2014, from memory), as a throw of math/rand/v2 takes as long as the rest of a step.
type dice uint64

func (d *dice) throw() uint64 {
	*d += 0x9e3779b97f4a7c15
	x := uint64(*d)
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// below is a whole number from 0 on that is below n.
func (d *dice) below(n int) int { return int(d.throw() >> 32 * uint64(n) >> 32) }

// patience is a number above 0, exponentially distributed with the mean 1: a rise of the price is accepted if it is
// less than so many times the heat.
func (d *dice) patience() float64 { return patiences[d.throw()>>54] }

var patiences = func() (list [1 << 10]float64) {
	for k := range list {
		list[k] = -math.Log((float64(k) + 0.5) / float64(len(list)))
	}
	return list
}()
