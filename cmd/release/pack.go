package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"io"
	"os"
	"path/filepath"
	"time"
)

// packed is the time that every file of an archive bears, so that archives of one commit are alike.
var packed = time.Date(2026, time.January, 1, 0, 0, 0, 0, time.UTC)

// pack writes a system's archive, a .zip where double-clicking one is usual, else a .tar.gz, and
// gives its path.
func pack(out, system, machine string, files []file) (path string, err error) {
	folder := "evenhand-" + system + "-" + machine
	write, ending := packZip, ".zip"
	if system == "linux" {
		write, ending = packTar, ".tar.gz"
	}
	path = filepath.Join(out, folder+ending)
	target, err := os.Create(path)
	if err != nil {
		return "", err
	}
	err = write(target, folder, files)
	return path, errors.Join(err, target.Close())
}

func mode(f file) os.FileMode {
	if f.runs {
		return 0o755
	}
	return 0o644
}

func packZip(w io.Writer, folder string, files []file) error {
	archive := zip.NewWriter(w)
	for _, f := range files {
		header := &zip.FileHeader{Name: folder + "/" + f.name, Method: zip.Deflate, Modified: packed}
		header.SetMode(mode(f))
		entry, err := archive.CreateHeader(header)
		if err != nil {
			return err
		}
		if _, err := entry.Write(f.text); err != nil {
			return err
		}
	}
	return archive.Close()
}

func packTar(w io.Writer, folder string, files []file) error {
	squeezed := gzip.NewWriter(w)
	archive := tar.NewWriter(squeezed)
	for _, f := range files {
		header := &tar.Header{Name: folder + "/" + f.name, Mode: int64(mode(f)), Size: int64(len(f.text)), ModTime: packed}
		if err := archive.WriteHeader(header); err != nil {
			return err
		}
		if _, err := archive.Write(f.text); err != nil {
			return err
		}
	}
	return errors.Join(archive.Close(), squeezed.Close())
}
