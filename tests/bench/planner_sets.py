#!/usr/bin/env python3
"""Measures the planner over sets of problems, as a table.

    planner_sets.py SOLVE_PROBLEM FOLDER [FOLDER ...] --seconds S [--published DIR] [--every N]
        [--seed N] [--threads N] [--judge JUDGE_PROBLEM] [--peer "PROGRAM WORD …"] [--open]

SOLVE_PROBLEM is the program of that name from a release build. FOLDERs and --published: see
planner_runs.py. --every 3 takes each third problem. --judge has every schedule judged by the
checker's own program. --peer names another program, with words of its own, that is called in the
same way and whose row follows; there may be several. --open lists what was left open.

Closed: proven optimal or infeasible. Gap: of what was found, mean of (cost − bound) / cost. Planted:
of those with a planted schedule, how many cost no more. A contradiction with a published or planted
value, or a schedule that breaks something, is listed and makes the exit status 1.
"""
import argparse
import json
import pathlib
import shlex
import subprocess
import sys
import tempfile

import planner_runs as runs

COLUMNS = ["set", "planner", "problems", "closed", "optimal", "infeasible", "found", "mean gap",
           "first plan, median", "planted met", "mean time", "wrong"]


def parsed():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program", type=pathlib.Path)
    parser.add_argument("folders", type=pathlib.Path, nargs="+")
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--published", type=pathlib.Path)
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--threads", type=int, default=1)
    parser.add_argument("--judge", type=pathlib.Path)
    parser.add_argument("--peer", action="append", default=[])
    parser.add_argument("--open", action="store_true")
    return parser.parse_args()


def breach(judge, problem, run):
    """What the checker finds against a schedule; empty: nothing."""
    if judge is None or not run.found:
        return ""
    with tempfile.NamedTemporaryFile("w", suffix=".json") as file:
        json.dump(run.schedule, file)
        file.flush()
        done = subprocess.run([judge.resolve(), problem, file.name], capture_output=True, text=True)
    said = done.stdout.strip()
    return "" if said == f"cost {run.cost}" else said or done.stderr.strip()


def against_planted(run, planted):
    if "planted_conflict" in planted:
        if run.found:
            return "a schedule, though a conflict was planted"
        if run.status == "infeasible" and sorted(run.schedule["conflict"]) != sorted(
                planted["planted_conflict"]):
            return "another conflict than the one planted"
    elif planted and run.status == "infeasible":
        return "infeasible, though a schedule was planted"
    elif planted and run.found and run.bound > planted["cost"]:
        return f"bound {run.bound}, planted {planted['cost']}"
    return ""


def measure(arguments, program, words, folder):
    """The row of one set for one program, and what is wrong or open."""
    published = runs.published_of(folder, arguments.published)
    problems = runs.problems_of(folder, arguments.every)
    done, wrong, left, met, planted_costs = [], [], [], 0, 0
    for problem in problems:
        name = runs.name_of(problem)
        run = runs.planned(program, problem, arguments.seconds, arguments.seed, arguments.threads,
                           words)
        planted = runs.planted_of(problem)
        done.append(run)
        if run.found and "cost" in planted:
            planted_costs += 1
            met += run.cost <= planted["cost"]
        for fault in (runs.contradiction(run, published[name]) if name in published else "",
                      against_planted(run, planted), breach(arguments.judge, problem, run)):
            if fault:
                wrong.append(f"{name}: {fault}")
        if not run.closed:
            left.append(f"{name}: {run.status}, cost {run.cost}, bound {run.bound}")
    count = len(problems)
    found = [run for run in done if run.found]
    first = runs.middle([run.first for run in done])
    gap = runs.mean([run.gap for run in found])
    return [folder.name, " ".join([pathlib.Path(program).name, *words]), count,
            runs.share(sum(run.closed for run in done), count),
            sum(run.status == "optimal" for run in done),
            sum(run.status == "infeasible" for run in done), len(found),
            "–" if gap is None else f"{100 * gap:.1f} %",
            "–" if first is None else f"{first:.1f} ms",
            f"{met}/{planted_costs}" if planted_costs else "–",
            f"{runs.mean([run.seconds for run in done]):.2f} s", len(wrong)], wrong, left


def main():
    arguments = parsed()
    print(f"{arguments.seconds:g} s, threads {arguments.threads}, seed {arguments.seed}, "
          f"each {arguments.every}. problem\n" if arguments.every > 1 else
          f"{arguments.seconds:g} s, threads {arguments.threads}, seed {arguments.seed}\n")
    runs.heading(COLUMNS)
    faults = []
    opened = []
    for folder in arguments.folders:
        for program, *words in ([arguments.program], *map(shlex.split, arguments.peer)):
            cells, wrong, left = measure(arguments, program, words, folder)
            runs.row(cells)
            faults += [f"{folder.name}, {cells[1]}, {fault}" for fault in wrong]
            opened += [f"{folder.name}, {cells[1]}, {each}" for each in left]
    if arguments.open and opened:
        print("\nopen:\n" + "\n".join(opened))
    if faults:
        print("\nwrong:\n" + "\n".join(faults))
        sys.exit(1)


if __name__ == "__main__":
    main()
