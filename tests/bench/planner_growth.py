#!/usr/bin/env python3
"""Measures how the planner's times grow with the number of tasks, as a table and a chart.

    planner_growth.py SOLVE_PROBLEM [--sizes 20 30 …] [--seeds 3] [--seconds 20] [--threads N]
        [--chart FILE.svg]

The problems are those of make_evening.py. For each size, medians over the seeds of
 first plan:         the time to it,
 1 % of own best:    the time to a plan no more than 1 % dearer than the best one of the run,
 1 % of the bound:   the time until a plan is proven to be no more than 1 % dearer than the cheapest.
What is not reached within --seconds counts as longer: a median of such is "–", and of a point in the
chart nothing is drawn. Exponent: the slope of a straight line through the logarithms of the medians
of 100 tasks and more, by least squares.
"""
import argparse
import json
import math
import pathlib
import statistics
import tempfile

import make_evening
import planner_runs as runs

SIZES = [20, 30, 50, 70, 100, 150, 200, 300, 500, 700, 1000]
SERIES = {"first plan": "#1b6ca8", "1 % of own best": "#c2571a", "1 % of the bound": "#3c7d3c"}
FITTED_FROM = 100  # tasks


def parsed():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program", type=pathlib.Path)
    parser.add_argument("--sizes", type=int, nargs="+", default=SIZES)
    parser.add_argument("--seeds", type=int, default=3)
    parser.add_argument("--seconds", type=float, default=20)
    parser.add_argument("--threads", type=int, default=1)
    parser.add_argument("--chart", type=pathlib.Path)
    return parser.parse_args()


def run_of(arguments, size, seed):
    with tempfile.NamedTemporaryFile("w", suffix=".problem.json") as file:
        json.dump(make_evening.evening(size, seed), file)
        file.flush()
        return runs.planned(arguments.program, file.name, arguments.seconds,
                            threads=arguments.threads)


def median_or_longer(times):
    """The median where what was not reached is longer than all; absent: it is such a one."""
    middle = statistics.median_low([math.inf if time is None else time for time in times])
    return None if math.isinf(middle) else middle


def measured(arguments, size):
    done = [run_of(arguments, size, seed) for seed in range(1, arguments.seeds + 1)]
    times = {"first plan": [run.first for run in done],
             "1 % of own best": [run.reaches(1.01 * run.cost) if run.found else None
                                 for run in done],
             "1 % of the bound": [run.closes_to(0.01) for run in done]}
    gaps = [run.gap for run in done if run.found]
    return {name: median_or_longer(each) for name, each in times.items()}, gaps


def exponent(points):
    """Of time ~ size ^ exponent, with the factor; absent: fewer than three points."""
    logs = [(math.log(size), math.log(max(time, 0.1))) for size, time in points
            if time is not None and size >= FITTED_FROM]
    if len(logs) < 3:
        return None
    mean_x = sum(x for x, _ in logs) / len(logs)
    mean_y = sum(y for _, y in logs) / len(logs)
    slope = (sum((x - mean_x) * (y - mean_y) for x, y in logs)
             / sum((x - mean_x) ** 2 for x, _ in logs))
    return slope, math.exp(mean_y - slope * mean_x)


class Chart:
    """Both axes logarithmic; 10 to 2,000 tasks, 0.1 ms to 100 s."""

    WIDTH, HEIGHT, LEFT, TOP = 640, 400, 70, 20
    X, Y = (math.log10(15), math.log10(1400)), (-1, 5)

    def __init__(self):
        self.parts = []

    def x(self, size):
        share = (math.log10(size) - self.X[0]) / (self.X[1] - self.X[0])
        return round(self.LEFT + share * self.WIDTH, 1)

    def y(self, time):
        share = (math.log10(max(time, 0.1)) - self.Y[0]) / (self.Y[1] - self.Y[0])
        return round(self.TOP + (1 - share) * self.HEIGHT, 1)

    def text(self, x, y, words, anchor="middle", colour="#333"):
        self.parts.append(f'<text x="{x}" y="{y}" text-anchor="{anchor}" fill="{colour}">'
                          f'{words}</text>')

    def line(self, points, colour, style=""):
        path = " ".join(f"{x},{y}" for x, y in points)
        self.parts.append(f'<polyline points="{path}" fill="none" stroke="{colour}" {style}/>')

    def axes(self, sizes):
        for size in sizes:
            self.line([(self.x(size), self.TOP), (self.x(size), self.TOP + self.HEIGHT)], "#e4e4e4")
            self.text(self.x(size), self.TOP + self.HEIGHT + 18, size)
        for power in range(self.Y[0], self.Y[1] + 1):
            at = self.y(10 ** power)
            label = f"{10 ** power:g} ms" if power < 3 else f"{10 ** (power - 3)} s"
            self.line([(self.LEFT, at), (self.LEFT + self.WIDTH, at)], "#e4e4e4")
            self.text(self.LEFT - 8, at + 4, label, "end")
        self.text(self.LEFT + self.WIDTH / 2, self.TOP + self.HEIGHT + 40, "tasks")

    def series(self, number, name, colour, points):
        drawn = [(self.x(size), self.y(time)) for size, time in points if time is not None]
        self.line(drawn, colour, 'stroke-width="2"')
        self.parts += [f'<circle cx="{x}" cy="{y}" r="3.5" fill="{colour}"/>' for x, y in drawn]
        fit = exponent(points)
        label = name
        if fit:
            slope, factor = fit
            ends = [size for size, time in points if time is not None and size >= FITTED_FROM]
            self.line([(self.x(size), self.y(factor * size ** slope))
                       for size in (ends[0], ends[-1])], colour, 'stroke-dasharray="6 4"')
            label += f": tasks ^ {slope:.1f} from {FITTED_FROM} on"
        self.text(self.LEFT + 14, self.TOP + 22 + 20 * number, label, "start", colour)

    def svg(self):
        width, height = self.LEFT + self.WIDTH + 30, self.TOP + self.HEIGHT + 60
        return (f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
                f'font-family="sans-serif" font-size="13">\n'
                f'<rect width="{width}" height="{height}" fill="white"/>\n'
                + "\n".join(self.parts) + "\n</svg>\n")


def main():
    arguments = parsed()
    print(f"medians of {arguments.seeds}, limit {arguments.seconds:g} s, "
          f"threads {arguments.threads}\n")
    runs.heading(["tasks", *SERIES, "mean gap at the limit"])
    points = {name: [] for name in SERIES}
    for size in arguments.sizes:
        times, gaps = measured(arguments, size)
        for name, time in times.items():
            points[name].append((size, time))
        runs.row([size, *(f"{runs.shown(time, '.1f')} ms" if time is not None else "–"
                          for time in times.values()),
                  "–" if not gaps else f"{100 * runs.mean(gaps):.0f} %"])
    chart = Chart()
    chart.axes(arguments.sizes)
    for number, (name, colour) in enumerate(SERIES.items()):
        chart.series(number, name, colour, points[name])
        fit = exponent(points[name])
        print(f"\n{name}: " + (f"exponent {fit[0]:.2f}" if fit else "too few points to fit"))
    if arguments.chart:
        arguments.chart.write_text(chart.svg())


if __name__ == "__main__":
    main()
