"""Solve a model file in CPLEX LP format with scipy's milp.

Usage: milp.py MODEL.lp SECONDS. Prints "optimal VALUE", "impossible", "late" or "late BEST BOUND", with the
best value found in time and the least that is possible.
Reads only what the model writer uses: one objective, linear constraints,
"General" and "Binary" sections; variables are 0 or more.
"""
import re
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix

TERM = re.compile(r"([+-])\s*(?:(\d+)\s+)?([a-z]\w*)")
SENSE = re.compile(r"(<=|>=|=)\s*(-?\d+)\s*$")


def sections(path):
    parts, name = {}, None
    for line in open(path):
        line = line.split("\\")[0].strip()
        if line in ("Minimize", "Subject To", "General", "Binary", "End"):
            name = line
            parts[name] = []
        elif line:
            parts[name].append(line)
    return parts


def statements(lines):
    """Join continued lines: a statement starts with "name:"."""
    out = []
    for line in lines:
        if re.match(r"\w+:", line):
            out.append(line.split(":", 1)[1])
        else:
            out[-1] += " " + line
    return out


def main():
    parts = sections(sys.argv[1])
    names = {}

    def terms(text):
        for sign, number, name in TERM.findall(text):
            value = float(number) if number else 1.0
            yield names.setdefault(name, len(names)), -value if sign == "-" else value

    binary = set(" ".join(parts["Binary"]).split())
    objective = list(terms(statements(parts["Minimize"])[0]))
    rows, cols, vals, low, high = [], [], [], [], []
    for text in statements(parts["Subject To"]):
        sense, bound = SENSE.search(text).groups()
        for col, val in terms(text[: SENSE.search(text).start()]):
            rows.append(len(low))
            cols.append(col)
            vals.append(val)
        low.append(float(bound) if sense != "<=" else -np.inf)
        high.append(float(bound) if sense != ">=" else np.inf)
    for name in binary:
        names.setdefault(name, len(names))
    cost = np.zeros(len(names))
    for col, val in objective:
        cost[col] += val
    upper = np.array([1.0 if name in binary else np.inf for name in names])
    matrix = csr_matrix((vals, (rows, cols)), shape=(len(low), len(names)))
    options = {"time_limit": float(sys.argv[2]), "mip_rel_gap": 0.0}
    answer = milp(cost, constraints=LinearConstraint(matrix, low, high),
                  integrality=np.ones(len(names)), bounds=Bounds(0, upper), options=options)
    if answer.status == 0:
        print("optimal", repr(float(answer.fun)))
    elif answer.status == 2:
        print("impossible")
    elif answer.x is None:
        print("late")
    else:
        print("late", repr(float(answer.fun)), repr(float(answer.mip_dual_bound)))


main()
