#!/usr/bin/env python3
"""Makes a planning problem of a wanted number of tasks, like an evening of several courses.

    make_evening.py TASKS [--seed N] > NAME.problem.json

Courses stand at fixed times; their dishes are prepared (up to a day before, kept cold), put
together, and then baked, simmered or chilled, finished and served while they are hot. Cooks, ovens,
burners and cold room grow with the number of tasks, so that the evening gets larger and not only
more crowded; what is ready early waits at a cost, so that there is a plan. The same words give the same bytes. As a module: evening(tasks, seed).
"""
import argparse
import json
import random

HORIZON = 2 * 24 * 60
FIRST_COURSE = HORIZON - 5 * 60
COURSE_GAP = 45


class Evening:
    def __init__(self, tasks, seed):
        self.dice = random.Random(f"{tasks} {seed}")
        self.wanted = tasks
        self.tasks, self.lags, self.demands, self.baking, self.choices = [], [], [], [], []
        self.courses = []

    def between(self, low, high):
        return self.dice.randint(low, high)

    def task(self, name, minutes, attention=0, window=None):
        task = {"id": name, "duration": minutes}
        if window:
            task["window"] = window
        if attention:
            task["hands"] = {"attention": attention}
        self.tasks.append(task)
        return name

    def lag(self, before, after, least=0, most=None, loss=0, edge="start"):
        lag = {"id": f"l{len(self.lags)}", "from": [before, "end"], "to": [after, edge],
               "min": least}
        if most is not None:
            lag["max"] = most
        if loss:
            lag["loss"] = loss
        self.lags.append(lag)

    def demand(self, begin, end, **what):
        self.demands.append({"id": f"d{len(self.demands)}", "from": begin, "to": end, **what})

    def add_courses(self):
        for number in range(min(6, 1 + self.wanted // 20)):
            at = FIRST_COURSE + number * COURSE_GAP
            self.courses.append(self.task(f"serve-{number + 1}", 0, window=[at, at + 10]))

    def begin_dish(self, dish):
        """Prepared ahead, kept cold, put together; gives the step that cooking follows."""
        ahead = self.task(f"{dish}-prepare", self.between(8, 25), 80)
        together = self.task(f"{dish}-assemble", self.between(5, 15), 80)
        self.lag(ahead, together, 0, 24 * 60)
        self.demand([ahead, "end"], [together, "start"], count="cold", amount=self.between(1, 3))
        return together

    def bake(self, dish, after):
        into = self.task(f"{dish}-into", 2, 80)
        inside = self.task(f"{dish}-bake", self.between(20, 70))
        out = self.task(f"{dish}-out", 2, 80)
        self.lag(after, into, 0, 120)
        self.lag(into, inside, 0, 0)
        self.lag(inside, out, 0, 5, 1)
        degrees = 10 * self.between(15, 22)
        self.baking.append({"id": f"e{len(self.baking)}", "from": [inside, "start"],
                            "to": [out, "start"], "accept": [degrees - 10, degrees + 10],
                            "prefer": degrees})
        return out

    def simmer(self, dish, after):
        pot = self.task(f"{dish}-simmer", self.between(15, 40), 10)
        self.lag(after, pot, 0, 60)
        self.demand([pot, "start"], [pot, "end"], pool="hob", min_size=self.dice.choice([14, 18]))
        return pot

    def add_dish(self, number):
        dish = f"dish-{number}"
        kind = self.dice.choice(["bake", "bake", "simmer", "chill"])
        together = self.begin_dish(dish)
        finish = None
        if kind == "chill":
            finish = self.task(f"{dish}-finish", self.between(3, 8), 80)
            self.lag(together, finish, self.between(60, 240))
            self.demand([together, "end"], [finish, "start"], count="cold",
                        amount=self.between(1, 4))
        else:
            cooked = (self.bake if kind == "bake" else self.simmer)(dish, together)
            finish = self.task(f"{dish}-finish", self.between(3, 8), 100)
            self.lag(cooked, finish, 0, 20, 2)
        course = self.dice.choice(self.courses)
        self.lag(finish, course, 0, 120, 1)

    def fill(self):
        """Dishes, then house jobs until there are as many tasks as wanted."""
        number = 0
        while len(self.tasks) + 6 <= self.wanted:
            number += 1
            self.add_dish(number)
        while len(self.tasks) < self.wanted:
            job = self.task(f"job-{len(self.tasks)}", self.between(10, 30), 50)
            self.lag(job, self.courses[0], 0, 12 * 60)

    def problem(self):
        self.add_courses()
        self.fill()
        count = len(self.tasks)
        cooks = 1 + count // 40
        return {"format": "suppertide-problem", "version": 1, "name": f"evening of {count}",
                "horizon": HORIZON, "tasks": self.tasks, "lags": self.lags,
                "counts": [{"id": "cold", "capacity": 8 + count // 6}],
                "pools": [{"id": "hob", "units": [
                    {"id": f"b{i + 1}", "size": (14, 18, 21)[i % 3]}
                    for i in range(3 + count // 50)]}],
                "demands": self.demands,
                "cooks": [{"id": f"c{i + 1}", "free": [[8 * 60, 23 * 60],
                                                      [32 * 60, HORIZON]]}
                          for i in range(cooks)],
                "ovens": [{"id": f"o{i + 1}", "shelves": 2, "min_c": 50, "max_c": 250,
                           "start_c": 20, "ambient_c": 20, "heat_c_per_min": 12,
                           "cool_c_per_min": 3} for i in range(2 + count // 45)],
                "oven_demands": self.baking,
                "costs": {"quiet": [{"before": self.courses[0], "minutes": 30, "rate": 1}],
                          "oven_change": 10, "oven_on_minute": 1, "prefer_c": 1,
                          "session": 30, "session_gap": 60}}


def evening(tasks, seed):
    return Evening(tasks, seed).problem()


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("tasks", type=int)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    print(json.dumps(evening(arguments.tasks, arguments.seed), indent=1))


if __name__ == "__main__":
    main()
