#!/usr/bin/env python3
"""Compares our statistics with numpy and scipy.

    python -I tests/outside/statistics.py

Makes series of marks, and values beside a mean, the same ones in every run;
hands them to tests/outside/statistics.rs, which answers with the library's own figures; works
the same figures out with numpy and scipy, and compares. The last line counts the figures that
agree in every case and those that don't.

-I keeps this folder out of Python's search path, where this file would stand in for Python's
own module of the same name.
"""

import json
import pathlib
import random
import subprocess
import sys

import numpy as np
import scipy
from scipy.stats import norm

ROOT = pathlib.Path(__file__).resolve().parents[2]
SEED = 20260101
LEAST_CASES = 1000
SHOWN_FAILURES = 3

# How far two figures may lie apart: in parts of the greater one.
RELATIVE = 1e-11

# The most that our units take; above it the library gives an error, not a figure.
MOST_PER_SECOND = 1000.0
MOST_PER_MINUTE = 60_000.0


# --- cases ------------------------------------------------------------------


def marks_from(intervals, start=0):
    marks = [start]
    for interval in intervals:
        marks.append(marks[-1] + interval)
    return marks


def tap_train(chance):
    """Taps as a hand makes them: 2 to 60, uneven, drifting, at times with a pause."""
    usual = chance.uniform(90, 1500)
    uneven = chance.uniform(0.01, 0.35)
    drift = chance.uniform(-0.008, 0.015)
    intervals = []
    for index in range(chance.randint(1, 59)):
        length = usual * (1 + drift * index) * chance.gauss(1, uneven)
        if chance.random() < 0.03:
            length += chance.uniform(300, 4000)
        intervals.append(max(1, round(length)))
    marks = marks_from(intervals, chance.randint(0, 3000))
    if chance.random() < 0.2:
        # Two thumbs on two buttons deliver them out of order.
        chance.shuffle(marks)
    return marks


def within(chance, least, most, count=None):
    count = count or chance.randint(2, 59)
    return [chance.randint(least, most) for _ in range(count)]


def make_series(chance):
    series = [tap_train(chance) for _ in range(1000)]
    for _ in range(50):
        series.append(marks_from(within(chance, 1, 20_000, 1)))
        series.append(marks_from(within(chance, 80, 900, 2)))
        equal = chance.randint(1, 3000)
        series.append(marks_from([equal] * chance.randint(1, 59)))
        there_and_back = within(chance, 100, 900)
        series.append(marks_from(there_and_back + there_and_back[::-1]))
        # Slow as breaths and slower; quick as a finger that bounces.
        series.append(marks_from(within(chance, 2000, 30_000)))
        series.append(marks_from(within(chance, 1, 20)))
        # Marks in one and the same millisecond.
        series.append(marks_from(within(chance, 0, 2)))
        # Long after the common start, and before it.
        series.append(marks_from(within(chance, 100, 900), 86_400_000))
        series.append(marks_from(within(chance, 100, 900), -5_000))
    series += [[40] * count for count in (2, 3, 4, 17)]
    return series


def make_scores(chance):
    """Value, mean and standard deviation, to three decimals as norms print them."""
    scores = []
    for _ in range(1000):
        mean = round(chance.uniform(0.5, 30), chance.choice((1, 2)))
        sd = max(0.05, round(mean * chance.uniform(0.05, 0.4), 2))
        scores.append((round(mean + sd * chance.gauss(0, 1.5), 3), mean, sd))
    for _ in range(100):
        mean = round(chance.uniform(0.5, 300), 2)
        sd = round(chance.uniform(0.05, 0.5), 2)
        scores.append((mean, mean, sd))
        # So far out that hardly anything of the group is left.
        scores.append((round(mean + sd * chance.uniform(-37, 37), 3), mean, sd))
    # Every hundredth of a table of the normal distribution.
    scores += [(step / 100, 0.0, 1.0) for step in range(-400, 401)]
    return scores


# --- the figures by numpy and scipy -------------------------------------------


def series_figures(marks):
    """Of marks in milliseconds. None: the figure does not exist.

    Worked out in milliseconds, which are whole, and turned into seconds at the end: so equal
    intervals have a deviation of zero, not of a rounding error.
    """
    marks = np.sort(np.array(marks, dtype=np.float64))
    intervals = np.diff(marks)
    span = marks[-1] - marks[0]
    rate = 1000 * (len(marks) - 1) / span if span > 0 else None
    figures = {
        "count": len(marks),
        "rate": rate if rate is not None and rate <= MOST_PER_SECOND else None,
        "mean": np.mean(intervals) / 1000,
        "median": None,
        "sd": None,
        "cv": None,
    }
    # Of breaths: there is none where it would make no rate.
    median = np.median(intervals)
    if median > 0 and 60_000 / median <= MOST_PER_MINUTE:
        figures["median"] = median / 1000
    if len(intervals) < 2:
        return figures

    figures["sd"] = np.std(intervals, ddof=1) / 1000
    if span > 0:
        figures["cv"] = 100 * np.std(intervals, ddof=1) / np.mean(intervals)
    return figures


def score_figures(score):
    value, mean, sd = (np.float64(number) for number in score)
    z = (value - mean) / sd
    return {
        "z": z,
        "percentile_less_is_better": 100 * norm.cdf(-z),
        "percentile_more_is_better": 100 * norm.cdf(z),
    }


# --- ours, and the comparison ---------------------------------------------------


def ask_library(cases):
    command = "cargo run --quiet --locked --no-default-features --example statistics"
    answer = subprocess.run(
        command.split(), cwd=ROOT, input=json.dumps(cases).encode(), stdout=subprocess.PIPE
    )
    if answer.returncode != 0:
        sys.exit(f"'{command}' failed with status {answer.returncode}.")
    return json.loads(answer.stdout)


def apart(ours, theirs):
    """How far apart in parts of the greater one; infinite where only one of them exists."""
    if ours is None or theirs is None:
        return 0.0 if ours is theirs else float("inf")
    theirs = float(theirs)
    if ours == theirs:
        return 0.0
    difference = abs(ours - theirs)
    parts = difference / max(abs(ours), abs(theirs))
    # What is not a number agrees with nothing.
    return parts if parts == parts else float("inf")


def compare(kind, cases, ours, reference):
    """Prints a line for each figure; returns how many figures agree and how many don't."""
    if len(cases) < LEAST_CASES or len(ours) != len(cases):
        sys.exit(f"{kind}: {len(cases)} cases and {len(ours)} answers; at least {LEAST_CASES} of each are due.")
    theirs = [reference(case) for case in cases]
    passed = failed = 0
    for figure in theirs[0]:
        distances = [apart(o[figure], t[figure]) for o, t in zip(ours, theirs)]
        wrong = [index for index, distance in enumerate(distances) if distance > RELATIVE]
        there = sum(t[figure] is not None for t in theirs)
        name = f"{kind}: {figure}"
        if not wrong:
            passed += 1
            print(f"ok      {name}, {len(cases)} cases, {there} with a figure, at most {max(distances):.1e} apart")
            continue
        failed += 1
        print(f"FAILED  {name}, {len(wrong)} of {len(cases)} cases")
        for index in wrong[:SHOWN_FAILURES]:
            theirs_shown = theirs[index][figure]
            theirs_shown = None if theirs_shown is None else float(theirs_shown)
            print(f"        case {index}: {json.dumps(cases[index])}")
            print(f"        ours {ours[index][figure]!r}, numpy and scipy {theirs_shown!r}, {distances[index]:.1e} apart")
    return passed, failed


def main():
    chance = random.Random(SEED)
    cases = {
        "series": make_series(chance),
        "scores": make_scores(chance),
    }
    figures = {
        "series": series_figures,
        "scores": score_figures,
    }
    ours = ask_library(cases)
    print(f"numpy {np.__version__}, scipy {scipy.__version__}; may be {RELATIVE} apart, in parts of the greater")
    counts = [compare(kind, cases[kind], ours[kind], figures[kind]) for kind in cases]
    passed = sum(count[0] for count in counts)
    failed = sum(count[1] for count in counts)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
