package evidence

// ItemStats are an item's classical statistics.
type ItemStats struct {
	Answers, Right int
	Facility       Share // of the answers that were right
	// ItemRest is the corrected item-rest correlation: of being right on this item with how
	// the pupil did on the others. NaN when all did the same on either side.
	ItemRest float64
}

// Stats works out each item's statistics from the rows, which all have one mark for each item.
func Stats(rows []Row) []ItemStats {
	stats := counts(rows)
	for i := range stats {
		s := &stats[i]
		s.Facility = ShareOf(s.Right, s.Answers)
	}
	for i := range stats {
		stats[i].ItemRest = itemRest(rows, stats, i)
	}
	return stats
}

func counts(rows []Row) (stats []ItemStats) {
	for _, row := range rows {
		for i, mark := range row.Marks {
			if i == len(stats) {
				stats = append(stats, ItemStats{})
			}
			if mark != Missing {
				stats[i].Answers += row.Pupils
			}
			if mark == Right {
				stats[i].Right += row.Pupils
			}
		}
	}
	return stats
}

// itemRest correlates item i with the standing on the rest, over pupils who answered both.
func itemRest(rows []Row, stats []ItemStats, i int) float64 {
	var c moments
	for _, row := range rows {
		if rest, ok := standing(row.Marks, stats, i); ok && row.Marks[i] != Missing {
			c.add(row.Marks[i].point(), rest, float64(row.Pupils))
		}
	}
	return c.correlation()
}

// standing is by how much, per item answered, a pupil did better than those who answered the
// same items; item but is left out. With nothing missing it orders pupils as their number
// right does, and with some missing it does not hold harder items against a pupil.
func standing(marks []Mark, stats []ItemStats, but int) (mean float64, ok bool) {
	n := 0
	for i, mark := range marks {
		if i != but && mark != Missing {
			mean += mark.point() - stats[i].Facility.Value
			n++
		}
	}
	return mean / float64(n), n > 0
}
