package files

import "os"

// running says whether a program with the number is running on this computer.
func running(number int) bool {
	process, err := os.FindProcess(number)
	if err != nil {
		return false
	}
	process.Release()
	return true
}

// cannotSync: Windows makes names safe by itself and has no way to ask for it.
func cannotSync(error) bool { return true }
