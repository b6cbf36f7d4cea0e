#!/usr/bin/env python3
"""Measures the planner's first plan over folders of problems, as a table.

    quick_start.py SOLVE_PROBLEM FOLDER [FOLDER ...] [--seconds S] [--runs N] [--best S]

SOLVE_PROBLEM is the program of that name from a release build. Each FOLDER is a set: files
NAME.problem.json and, if known, NAME.planted.json with a schedule that holds, whose cost is
something to compare with, or with a proof that there is none.

For each set: how many first plans were found within --seconds; the median and the worst time to it,
reading the file not counted; its cost against the planted one's (median); with --best, the same for
the best plan after so many seconds. A set without feasible problems counts how many were proven so.
"""
import argparse
import json
import pathlib
import statistics
import subprocess
import sys


def parsed():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program", type=pathlib.Path)
    parser.add_argument("folders", type=pathlib.Path, nargs="+")
    parser.add_argument("--seconds", type=float, default=5, help="for the first plan (5)")
    parser.add_argument("--best", type=float, help="also plan on for so many seconds")
    parser.add_argument("--runs", type=int, default=1, help="the fastest of so many runs counts")
    return parser.parse_args()


def planned(program, problem, seconds, first):
    """The schedule, and the milliseconds until the first plan (none if there was none)."""
    words = [program, problem, "--seconds", str(seconds), "--seed", "1", "--trace"]
    done = subprocess.run(words + (["--first"] if first else []), capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{problem}: {done.stderr.strip()}")
    times = [float(line.split()[0]) for line in done.stderr.splitlines() if line[:1].isdigit()]
    return json.loads(done.stdout), times[0] if times else None


def first_plan(arguments, problem):
    """The schedule and the least time of several runs."""
    runs = [planned(arguments.program, problem, arguments.seconds, first=True)
            for _ in range(arguments.runs)]
    times = [time for _, time in runs if time is not None]
    return runs[0][0], min(times) if times else None


def ratio(cost, planted):
    return cost / planted if planted else None


def shown(value, form):
    return "–" if value is None else format(value, form)


def middle(values):
    values = [value for value in values if value is not None]
    return statistics.median(values) if values else None


def row(arguments, folder):
    problems = sorted(folder.glob("*.problem.json"))
    if not problems:
        sys.exit(f"{folder} holds no *.problem.json")
    tasks, times, ratios, best_ratios = [], [], [], []
    found = proven = 0
    for problem in problems:
        tasks.append(len(json.loads(problem.read_text()).get("tasks", [])))
        planted_file = problem.with_name(problem.name.replace(".problem.", ".planted."))
        planted = json.loads(planted_file.read_text()) if planted_file.exists() else {}
        schedule, time = first_plan(arguments, problem)
        proven += schedule["status"] == "infeasible"
        if time is None:
            continue
        found += 1
        times.append(time)
        ratios.append(ratio(schedule["cost"], planted.get("cost")))
        if arguments.best:
            schedule, _ = planned(arguments.program, problem, arguments.best, first=False)
            best_ratios.append(ratio(schedule["cost"], planted.get("cost")))
    return [folder.name, shown(middle(tasks), ".0f"), f"{found}/{len(problems)}",
            f"{proven}/{len(problems)}", shown(middle(times), ".1f"),
            shown(max(times, default=None), ".1f"), shown(middle(ratios), ".2f"),
            shown(middle(best_ratios), ".2f")]


def main():
    arguments = parsed()
    head = ["set", "tasks", "found", "proven none", "median ms", "worst ms", "first/planted",
            "best/planted"]
    print("| " + " | ".join(head) + " |")
    print("|" + "---|" * len(head))
    for folder in arguments.folders:
        print("| " + " | ".join(row(arguments, folder)) + " |", flush=True)


if __name__ == "__main__":
    main()
