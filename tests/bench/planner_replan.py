#!/usr/bin/env python3
"""Measures planning anew after a task was moved by hand, as a table.

    planner_replan.py SOLVE_PROBLEM FOLDER [FOLDER ...] [--moves 12] [--seconds 5] [--plan 2]
        [--seed N] [--threads N] [--every N]

For each problem of a set a plan is made in --plan seconds. Then, --moves times, one task is drawn,
and a minute within its window not further than an hour from where it is; its window is narrowed to
that minute (a pin), and the problem planned anew with all starts of the plan as `before`:
 near:  rate 1, moved 0: keep close to the plan, all other costs as they are;
 least: rate 0, moved 1,000,000: above all move as few tasks as can be;
 alone: rate 1, moved 1,000, and nothing else costs anything.
Finished: proven, be it optimal or infeasible, before the limit. As good in 0.3 s: what a limit of
0.3 s gives is proven, or costs no more than what --seconds give. Least proven: of the moves that can
be, those whose plan is proven to move as few tasks as any: optimal, or the bound rules out one less.
"""
import argparse
import json
import pathlib
import random
import tempfile

import planner_runs as runs

NEAR = {"rate": 1}
LEAST = {"rate": 0, "moved": 1_000_000}
ALONE = {"rate": 1, "moved": 1_000}
FURTHEST = 60  # minutes
COLUMNS = ["set", "mode", "moves", "median", "95 %", "finished in 0.3 s", "as good in 0.3 s",
           "finished", "feasible", "fewest moved proven"]
SOON = 0.3  # seconds


def parsed():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program", type=pathlib.Path)
    parser.add_argument("folders", type=pathlib.Path, nargs="+")
    parser.add_argument("--moves", type=int, default=12)
    parser.add_argument("--seconds", type=float, default=5)
    parser.add_argument("--plan", type=float, default=2)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--threads", type=int, default=1)
    parser.add_argument("--every", type=int, default=1)
    return parser.parse_args()


def moved(problem, starts, dice):
    """The problem with a task pinned elsewhere; absent: no task of it can move."""
    movable = []
    for task in problem["tasks"]:
        if task["id"] in starts:
            low, high = task.get("window", [0, problem["horizon"]])
            at = starts[task["id"]]
            low, high = max(low, at - FURTHEST), min(high - task["duration"], at + FURTHEST)
            if high > low:
                movable.append((task["id"], low, high))
    if not movable:
        return None
    drawn, low, high = dice.choice(movable)
    minute = dice.choice([m for m in range(low, high + 1) if m != starts[drawn]])
    tasks = [dict(task, window=[minute, minute + task["duration"]])
             if task["id"] == drawn else task for task in problem["tasks"]]
    return dict(problem, tasks=tasks)


def close_to(problem, starts, how):
    costs = {} if how is ALONE else problem.get("costs", {})
    return dict(problem, costs=dict(costs, before={"starts": starts, **how}))


def few_proven(run):
    """Whether no plan moves fewer tasks."""
    return run.status == "optimal" or run.bound // LEAST["moved"] >= run.cost // LEAST["moved"]


def as_good(pair):
    """Whether the plan that is there soon is what more time gives."""
    soon, run = pair
    return soon.closed or (soon.found and run.found and soon.cost <= run.cost)


def replans(arguments, folder):
    """The runs of one set by mode, each after one of the same problem that had to end soon."""
    done = {"near": [], "least": [], "alone": []}
    for file in runs.problems_of(folder, arguments.every):
        first = runs.planned(arguments.program, file, arguments.plan, arguments.seed)
        if not first.found:
            continue
        problem = json.loads(file.read_text())
        starts = first.schedule["starts"]
        dice = random.Random(f"{runs.name_of(file)} {arguments.seed}")
        for _ in range(arguments.moves):
            change = moved(problem, starts, dice)
            if change is None:
                break
            for mode, how in (("near", NEAR), ("least", LEAST), ("alone", ALONE)):
                with tempfile.NamedTemporaryFile("w", suffix=".problem.json") as again:
                    json.dump(close_to(change, starts, how), again)
                    again.flush()
                    done[mode].append([runs.planned(arguments.program, again.name, seconds,
                                                    arguments.seed, arguments.threads)
                                       for seconds in (SOON, arguments.seconds)])
    return done


def main():
    arguments = parsed()
    print(f"{arguments.moves} moves a problem, limit {arguments.seconds:g} s, threads "
          f"{arguments.threads}, seed {arguments.seed}\n")
    runs.heading(COLUMNS)
    for folder in arguments.folders:
        for mode, pairs in replans(arguments, folder).items():
            done = [run for _, run in pairs]
            times = sorted(run.seconds for run in done)
            found = [run for run in done if run.found]
            count = len(done)
            runs.row([folder.name, mode, count, f"{1000 * runs.middle(times):.0f} ms",
                      f"{1000 * times[int(0.95 * (count - 1))]:.0f} ms",
                      runs.share(sum(run.closed and run.seconds < SOON for run in done), count),
                      runs.share(sum(map(as_good, pairs)), count),
                      runs.share(sum(run.closed for run in done), count), len(found),
                      runs.share(sum(map(few_proven, found)), len(found))
                      if mode == "least" else "–"])


if __name__ == "__main__":
    main()
