"""The best quiz by the definition, with one variable for each item and form, solved by scipy's milp.

Reads a bank and a plan as JSON from stdin (see itemmodel_test.go); each skill has one row, so an item's
row follows from its skill. Prints the smallest objective, "impossible" or "late". It shares nothing
with the program: families, shares right and conditions are worked out here.
"""
import json
import math
import re
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix

given = json.load(sys.stdin)
plan, level, forms = given["plan"], given["level"], given["plan"]["forms"]
size = sum(row["count"] for row in plan["rows"])


def met(condition, traits):
    name, sign, value = condition
    if name not in traits:
        return sign == "!="
    a, b = traits[name], value
    if sign in ("=", "!="):
        return (a == b) == (sign == "=")
    return {"<": float(a) < float(b), "<=": float(a) <= float(b), ">": float(a) > float(b), ">=": float(a) >= float(b)}[sign]


def family(task):
    """The three numbers of a completed sum or difference, or the two of a comparison."""
    if pair := re.fullmatch(r"(\d+) \? (\d+)", task):
        return "two", *sorted(map(int, pair.groups()))
    a, sign, b = re.match(r"(\d+) ([+-]) (\d+) = \?$", task).groups()
    a, b = int(a), int(b)
    return "three", *sorted((a, b, a + b if sign == "+" else a - b))


rows = {row["skill"]: row for row in plan["rows"]}
items = [i for i in given["items"] if i["skill"] in rows and all(met(c, i["traits"]) for c in rows[i["skill"]]["where"])
         and not (plan["rest"] and i["last"] and i["last"] >= given["week"] - plan["rest"])]
n = len(items)
points = [[math.floor(1000 / (1 + math.exp((i["difficulty"] - level - t) / 1000)) + 0.5) for i in items] for t in (-1000, 0, 1000)]

# Variables: item k in form f, then what each form is off, then for each pupil low, high and uneven.
width = n * forms + forms + 9
matrix, low, high = [], [], []


def rule(entries, least, most):
    matrix.append(entries)
    low.append(least)
    high.append(most)


def those(form, weight):
    return {k * forms + form: w for k, item in enumerate(items) if (w := weight(k, item))}


for f in range(forms):
    for skill, row in rows.items():
        rule(those(f, lambda k, i: i["skill"] == skill), row["count"], row["count"])
    for quota in plan["quotas"]:
        rule(those(f, lambda k, i: all(met(c, i["traits"]) for c in quota["where"])), *quota["count"])
    if plan["minutes"]:
        rule(those(f, lambda k, i: i["seconds"]), 0, 60 * plan["minutes"])
    alone = {}
    for item in items:
        alone.setdefault(family(item["task"]), set()).add(item["id"])
        if not item["task"].count(" ? "):
            alone.setdefault((item["skill"], item["key"]), set()).add(item["id"])
        else:
            most = -(-2 * rows[item["skill"]]["count"] // 3)
            rule(those(f, lambda k, i: (i["skill"], i["key"]) == (item["skill"], item["key"])), 0, most)
    for ids in alone.values():
        rule(those(f, lambda k, i: i["id"] in ids), 0, 1)
    mark = 10 * plan["share_right"] * size
    score = those(f, lambda k, i: points[1][k])
    rule(score | {n * forms + f: -10}, -np.inf, mark + 10 * size)
    rule(score | {n * forms + f: 10}, mark - 10 * size, np.inf)
    for t in range(3):
        score = those(f, lambda k, i: points[t][k])
        rule(score | {n * forms + forms + 3 * t: -1}, 0, np.inf)
        rule(score | {n * forms + forms + 3 * t + 1: -1}, -np.inf, 0)
    for condition in plan["same"]:
        first = those(0, lambda k, i: met(condition, i["traits"]))
        here = those(f, lambda k, i: met(condition, i["traits"]))
        if f:
            rule(here | {k: -1 for k in first}, 0, 0)
for t in range(3):
    at = n * forms + forms + 3 * t
    rule({at + 1: 1, at: -1, at + 2: -10}, -np.inf, 5 * size)
for k in range(n):
    rule({k * forms + f: 1 for f in range(forms)}, 0, 1)

cost, upper = np.zeros(width), np.ones(width)
for k, item in enumerate(items):
    cost[k * forms:(k + 1) * forms] = item["uses"]
cost[n * forms:n * forms + forms] = 1000
cost[n * forms + forms + 2::3] = 1000 * forms
upper[n * forms:] = np.inf
table = lil_matrix((len(matrix), width))
for r, entries in enumerate(matrix):
    for k, v in entries.items():
        table[r, k] = v
got = milp(cost, constraints=LinearConstraint(table.tocsr(), low, high), integrality=np.ones(width),
           bounds=Bounds(0, upper), options={"time_limit": 20, "mip_rel_gap": 0})
print(round(got.fun) if got.status == 0 else "impossible" if got.status == 2 else "late")
