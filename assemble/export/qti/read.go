package qti

import (
	"archive/zip"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"
)

// The largest packages that are read, of some 30,000 items. A file that claims more, or grows to
// more when it is unpacked, is refused.
const (
	maxFiles   = 200_000
	maxFile    = 64 << 20 // bytes of one file; the manifest takes 2,100 an item
	maxItems   = 100_000
	maxParts   = 3_000_000 // elements, attributes and texts of the manifest, which has 68 an item
	maxInItem  = 50_000    // the same of any other file
	maxPackage = 512 << 20 // bytes of all files together
	maxRatio   = 200       // of a file's bytes to those it takes packed, from a megabyte on
)

// openPackage looks over the names in a package. Nothing of it is ever written to a disk; a name that
// would lead out of a folder is refused all the same, as no honest program writes one.
func openPackage(r io.ReaderAt, size int64) (*reader, error) {
	z, err := zip.NewReader(r, size)
	if err != nil {
		return nil, fmt.Errorf("this is not a zip file: %w; give one that evenhand export --as qti wrote", err)
	}
	if len(z.File) > maxFiles {
		return nil, fmt.Errorf("there are %d files in it; at most %d are read", len(z.File), maxFiles)
	}
	in := &reader{files: make(map[string]*zip.File), left: maxPackage}
	folder, packed := folderOf(z), uint64(0)
	for _, f := range z.File {
		name := strings.TrimPrefix(f.Name, folder)
		packed += min(f.CompressedSize64, uint64(size)+1)
		switch {
		case packed > uint64(size):
			return nil, fmt.Errorf("the files in it, packed, are larger than it is itself: they overlap, as no honest program packs them")
		case in.files[name] != nil:
			return nil, fmt.Errorf("%s is in it twice", f.Name)
		case !fs.ValidPath(strings.TrimSuffix(f.Name, "/")) || strings.Contains(f.Name, `\`):
			return nil, fmt.Errorf("the name %q in it leads out of its folder", f.Name)
		}
		in.files[name] = f
	}
	return in, nil
}

// folderOf is where the manifest stands: in the package itself, or in the one folder of it that
// somebody packed again.
func folderOf(z *zip.Reader) (folder string) {
	for _, f := range z.File {
		if f.Name == manifestName {
			return ""
		}
		if in, ok := strings.CutSuffix(f.Name, "/"+manifestName); ok && !strings.Contains(in, "/") {
			folder = in + "/"
		}
	}
	return folder
}

// reader is a package being read.
type reader struct {
	files map[string]*zip.File
	left  int64 // bytes that may still be unpacked
}

// file unpacks a file.
func (in *reader) file(name string) ([]byte, error) {
	f := in.files[name]
	if f == nil {
		return nil, fmt.Errorf("there is no %s in it", name)
	}
	open, err := f.Open()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	defer open.Close()
	most := min(maxFile, in.left, max(1<<20, maxRatio*int64(f.CompressedSize64)))
	data, err := io.ReadAll(io.LimitReader(open, most+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	in.left -= min(in.left, int64(len(data))) // what was unpacked in vain costs as much
	if int64(len(data)) > most {
		return nil, fmt.Errorf("%s is too large: at most %d MB are read, %d times what they take packed, and %d MB of a whole package",
			name, maxFile>>20, maxRatio, maxPackage>>20)
	}
	return data, nil
}

// any reads an XML file.
func (in *reader) any(name string) (node, error) {
	data, err := in.file(name)
	if err != nil {
		return node{}, err
	}
	most := maxInItem
	if name == manifestName {
		most = maxParts
	}
	n, err := parse(data, most)
	if err != nil {
		return node{}, fmt.Errorf("%s: %w", name, err)
	}
	return n, nil
}

// tree reads an XML file whose outermost element is the one named.
func (in *reader) tree(name, root, space string) (node, error) {
	n, err := in.any(name)
	if err != nil {
		return node{}, err
	}
	if n.name != root || n.space != space {
		return node{}, fmt.Errorf("%s holds %s of %q, not %s of %q", name, n.name, n.space, root, space)
	}
	return n, nil
}

// picture reads the drawing that an image refers to.
func (in *reader) picture(img node, folder string) (*Picture, error) {
	src := img.attr("src")
	if src == "" || strings.Contains(src, ":") {
		return nil, fmt.Errorf("an image of %q is not in the package", src)
	}
	svg, err := in.file(path.Join(folder, src))
	if err != nil {
		return nil, err
	}
	return &Picture{Alt: img.attr("alt"), SVG: string(svg)}, nil
}
