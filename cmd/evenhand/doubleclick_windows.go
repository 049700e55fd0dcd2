package main

import (
	"unsafe"

	"golang.org/x/sys/windows"
)

// doubleClicked says that the program was started from a file manager: its console was opened for it
// alone, and no shell waits in it (GetConsoleProcessList, Microsoft's console documentation).
func doubleClicked() bool {
	var ids [2]uint32
	list := windows.NewLazySystemDLL("kernel32.dll").NewProc("GetConsoleProcessList")
	if list.Find() != nil {
		return false
	}
	count, _, _ := list.Call(uintptr(unsafe.Pointer(&ids[0])), uintptr(len(ids)))
	return count == 1
}

// documents is the person's documents folder, wherever Windows keeps it.
func documents() (string, error) { return windows.KnownFolderPath(windows.FOLDERID_Documents, 0) }
