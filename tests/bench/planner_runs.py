"""Runs solve_problem on files and reads what it says; shared by the planner's benchmarks.

A set is a folder of NAME.problem.json. Beside a problem may stand NAME.planted.json, a schedule that
holds, or the conflict that was put in. A set's published values are a table best.csv with the
columns instance, status (optimal, feasible, infeasible, unknown), best, lower_bound.
"""
import csv
import dataclasses
import json
import pathlib
import statistics
import subprocess
import sys
import time


@dataclasses.dataclass
class Run:
    schedule: dict
    seconds: float           # of the whole process
    first: float | None      # milliseconds until the first plan, reading the file not counted
    reached: list            # (milliseconds, cost) of each better plan
    proven: list             # (milliseconds, bound) of each better bound

    @property
    def status(self):
        return self.schedule["status"]

    @property
    def found(self):
        return self.status in ("optimal", "feasible")

    @property
    def closed(self):
        return self.status in ("optimal", "infeasible")

    @property
    def cost(self):
        return self.schedule.get("cost")

    @property
    def bound(self):
        return self.schedule.get("bound", 0)

    def reaches(self, most):
        """Milliseconds until the first plan that costs no more; absent: none does."""
        return next((time for time, cost in self.reached if cost <= most), None)

    def closes_to(self, share):
        """Milliseconds until cost and bound are no further apart than this share of the cost."""
        cost, bound = None, 0
        steps = [(time, 0, value) for time, value in self.reached]
        steps += [(time, 1, value) for time, value in self.proven]
        if self.status == "optimal":
            steps.append((1000 * self.seconds, 1, self.cost))
        for time, kind, value in sorted(steps):
            cost, bound = (value, bound) if kind == 0 else (cost, max(bound, value))
            if cost is not None and cost - bound <= share * cost:
                return time
        return None

    @property
    def gap(self):
        """How far the cost may be from the least, as a share of the cost."""
        return (self.cost - self.bound) / self.cost if self.cost else 0.0


def planned(program, problem, seconds, seed=1, threads=1, words=()):
    """One run; ends the benchmark if the program fails."""
    command = [str(pathlib.Path(program).resolve()), str(problem), "--seconds", str(seconds), "--seed", str(seed),
               "--threads", str(threads), "--trace", *words]
    begun = time.monotonic()
    done = subprocess.run(command, capture_output=True, text=True)
    passed = time.monotonic() - begun
    if done.returncode != 0:
        sys.exit(f"{problem}: exit status {done.returncode}: {done.stderr.strip()[-300:]}")
    reached, proven = [], []
    for line in done.stderr.splitlines():
        parts = line.split()
        if parts and parts[0].replace(".", "", 1).isdigit():
            reached.append((float(parts[0]), int(parts[1])))
        elif parts and parts[0] == "bound":
            proven.append((float(parts[1]), int(parts[2])))
    return Run(json.loads(done.stdout), passed, reached[0][0] if reached else None, reached, proven)


def problems_of(folder, every=1):
    """The problems of a set, or each n-th of them."""
    problems = sorted(pathlib.Path(folder).glob("*.problem.json"))
    if not problems:
        sys.exit(f"{folder} holds no *.problem.json")
    return problems[::every]


def name_of(problem):
    return problem.name.removesuffix(".problem.json")


def planted_of(problem):
    """The schedule or conflict that was planted, if there is one."""
    file = problem.with_name(name_of(problem) + ".planted.json")
    return json.loads(file.read_text()) if file.exists() else {}


def published_of(folder, where):
    """Published values by name: those in WHERE/SET/best.csv, if there are."""
    file = pathlib.Path(where) / pathlib.Path(folder).name / "best.csv" if where else None
    if file is None or not file.exists():
        return {}
    with open(file, newline="") as table:
        return {row["instance"]: row for row in csv.DictReader(table)}


def contradiction(run, row):
    """What a run claims against a published value; empty: nothing."""
    best = int(row["best"]) if row["best"] else None
    least = int(row["lower_bound"]) if row["lower_bound"] else None
    known = row["status"]
    if run.status == "infeasible" and best is not None:
        return f"infeasible, published {best}"
    if run.found and known == "infeasible":
        return f"{run.cost}, published as infeasible"
    if run.found and least is not None and run.cost < least:
        return f"{run.cost}, published bound {least}"
    if best is not None and run.bound > best:
        return f"bound {run.bound}, published {best}"
    if run.status == "optimal" and known == "optimal" and run.cost != best:
        return f"optimal {run.cost}, published {best}"
    return ""


def middle(values):
    values = [value for value in values if value is not None]
    return statistics.median(values) if values else None


def mean(values):
    return sum(values) / len(values) if values else None


def shown(value, form):
    return "–" if value is None else format(value, form)


def share(part, whole):
    return f"{100 * part / whole:.1f} %" if whole else "–"


def heading(columns):
    print("| " + " | ".join(columns) + " |")
    print("|" + " --- |" * len(columns), flush=True)


def row(cells):
    print("| " + " | ".join(str(cell) for cell in cells) + " |", flush=True)
