package search_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"evenhand/assemble/search"
)

// verdict is what an outside solver says of a model file.
type verdict struct {
	objective  float64
	impossible bool
	late       bool // it ran out of time, or gave no verdict
	found      bool // it was late, but has the choice of this objective to show
	took       time.Duration
}

// solver is an outside program that reads the model in LP format.
type solver struct {
	name    string
	version string
	run     func(lp string, limit time.Duration) (verdict, error)
}

// solvers finds the outside programs of this machine, the usually fastest one first.
func solvers() []solver {
	var found []solver
	if v, ok := version(python(), "-c", "import scipy; print('scipy', scipy.__version__, 'milp')"); ok {
		found = append(found, solver{"scipy", v, scipyMilp})
	}
	if v, ok := version("glpsol", "--version"); ok {
		found = append(found, solver{"glpsol", v, glpsol})
	}
	if v, ok := version("cbc", "-quit"); ok {
		found = append(found, solver{"cbc", v, cbc})
	}
	return found
}

// python is the system's Python, which has Debian's scipy, or the first found.
func python() string {
	if _, err := os.Stat("/usr/bin/python3"); err == nil {
		return "/usr/bin/python3"
	}
	return "python3"
}

var versionWords = regexp.MustCompile(`(GLPSOL--GLPK LP/MIP Solver [\d.]+|Version: \S+|scipy \S+ milp)`)

func version(name string, args ...string) (string, bool) {
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		return "", false
	}
	return strings.TrimPrefix(versionWords.FindString(string(out)), "Version: "), true
}

// call runs a program for at most the limit and a little, and gives its output.
func call(limit time.Duration, name string, args ...string) (string, time.Duration, error) {
	ctx, cancel := context.WithTimeout(context.Background(), limit+5*time.Second)
	defer cancel()
	start := time.Now()
	out, err := exec.CommandContext(ctx, name, args...).CombinedOutput()
	if ctx.Err() != nil {
		err = nil // late, as the output will show
	}
	return string(out), time.Since(start), err
}

func glpsol(lp string, limit time.Duration) (verdict, error) {
	report := lp + ".glpsol"
	defer os.Remove(report)
	out, took, err := call(limit, "glpsol", "--lp", lp, "--cuts", "--tmlim", seconds(limit), "-o", report)
	if err != nil {
		return verdict{}, fmt.Errorf("%w: %s", err, out)
	}
	v := verdict{took: took}
	if strings.Contains(out, "NO PRIMAL FEASIBLE") || strings.Contains(out, "NO INTEGER FEASIBLE") || strings.Contains(out, "HAS NO FEASIBLE") {
		v.impossible = true
		return v, nil
	}
	text, _ := os.ReadFile(report)
	v.late = !bytes.Contains(text, []byte("INTEGER OPTIMAL"))
	return v, v.read(string(text), `Objective:\s+\S+ = (\S+)`)
}

func cbc(lp string, limit time.Duration) (verdict, error) {
	out, took, err := call(limit, "cbc", lp, "-sec", seconds(limit), "-ratio", "0", "-allow", "0", "-solve", "-quit")
	if err != nil {
		return verdict{}, fmt.Errorf("%w: %s", err, out)
	}
	v := verdict{took: took}
	if strings.Contains(out, "infeasible") && !strings.Contains(out, "Objective value:") {
		v.impossible = true
		return v, nil
	}
	v.late = !strings.Contains(out, "Optimal solution found")
	return v, v.read(out, `Objective value:\s+(\S+)`)
}

// milp reads the LP file with its own few lines and solves it with scipy.
func scipyMilp(lp string, limit time.Duration) (verdict, error) {
	out, took, err := call(limit, python(), filepath.Join("testdata", "milp.py"), lp, seconds(limit))
	if err != nil {
		return verdict{}, fmt.Errorf("%w: %s", err, out)
	}
	v := verdict{took: took, impossible: strings.Contains(out, "impossible"), late: !strings.Contains(out, "impossible") && !strings.Contains(out, "optimal")}
	if v.impossible {
		return v, nil
	}
	if v.late {
		_, err := fmt.Sscanf(out, "late %f", &v.objective)
		v.found = err == nil
		return v, nil
	}
	return v, v.read(out, `optimal (\S+)`)
}

func seconds(d time.Duration) string { return strconv.Itoa(int(d.Seconds())) }

// read finds the objective in a solver's words, unless it was late.
func (v *verdict) read(text, pattern string) error {
	if v.late {
		return nil
	}
	found := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if found == nil {
		return fmt.Errorf("no objective in %q", text)
	}
	var err error
	v.objective, err = strconv.ParseFloat(found[1], 64)
	return err
}

// writeModel puts the model where an outside program can read it.
func writeModel(t testing.TB, m *search.Model, dir string) string {
	path := filepath.Join(dir, "model.lp")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := search.WriteLP(f, m); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// agrees compares a verdict in time with an objective, -1 for impossible.
func (v verdict) agrees(objective int) bool {
	if v.impossible || objective < 0 {
		return v.impossible && objective < 0
	}
	return math.Abs(v.objective-float64(objective)) < 1e-6
}
