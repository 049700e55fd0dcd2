package task

// plainSentence reads the commonest text, "47 + 36 = ?" or without its end, in one
// pass; ok is false for anything else, which Parse then reads in full. It gives what
// the full reading gives, a hundred times sooner: lists are thousands of such lines.
func plainSentence(text string) (s Sentence, ok bool) {
	at := 0
	skip := func() {
		for at < len(text) && text[at] == ' ' {
			at++
		}
	}
	minus := false
	for skip(); ; skip() {
		from := at
		for at < len(text) && at-from < 4 && text[at] >= '0' && text[at] <= '9' {
			s.Terms[s.N] = 10*s.Terms[s.N] + int(text[at]-'0')
			at++
		}
		if at == from {
			return s, false
		}
		s.Minus[s.N] = minus
		s.N++
		skip()
		if s.N == 4 || at == len(text) || text[at] != '+' && text[at] != '-' {
			break
		}
		minus = text[at] == '-'
		at++
	}
	for _, mark := range []byte("=?") {
		if at < len(text) && text[at] == mark {
			at++
			skip()
		}
	}
	s.Blank = s.N
	return s, s.N > 1 && at == len(text) && s.check() == nil
}
