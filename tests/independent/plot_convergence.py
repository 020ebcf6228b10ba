"""Draws docs/images/convergence.png from the lines that ConvergenceTests writes.

Usage: python3 plot_convergence.py TEST_LOG OUTPUT.png
"""

import sys
from collections import defaultdict

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt
import numpy as np

ORDERS = {
    "right-angle corner": (2 / 3, "h^4/3"),
    "T, stem to both arms": (2 / 3, "h^4/3"),
    "width step, flush, 0.5": (2 / 3, "h^4/3"),
    "slit, gap 0.5, half by symmetry": (1 / 2, "h"),
    "central gap 0.5, half by symmetry": (1 / 2, "h"),
}


def main(log, picture):
    points = defaultdict(set)
    for line in open(log, encoding="utf-8"):
        parts = [part.strip() for part in line.split("|")]
        if parts[0].endswith("convergence") and len(parts) == 5:
            points[parts[1], parts[2]].add((int(parts[3]), float(parts[4])))
    figure, all_axes = plt.subplots(2, 3, figsize=(13, 8), sharey=True)
    for axes, (name, (power, label)) in zip(all_axes.flat, ORDERS.items()):
        for how, style, text in (
            ("equal", "o-", "equal elements, error"),
            ("refined", "s-", "refined, error of lower bound"),
            ("bounds", "^--", "refined, width of bounds"),
        ):
            n, error = zip(*sorted(points[name, how]))
            axes.loglog(n, error, style, markersize=4, label=text)
        equal = np.array(sorted(points[name, "equal"]))
        refined = np.array(sorted(points[name, "refined"]))
        n = equal[[0, -1], 0]
        axes.loglog(n, 1.7 * equal[0, 1] * (n / n[0]) ** -power, "k:", label=f"theory, equal: {label}")
        n = refined[[0, -1], 0]
        axes.loglog(n, 0.5 * refined[0, 1] * (n / n[0]) ** -2.0, "k-.", label="theory, refined: 1/N²")
        axes.set_title(name, fontsize=10)
        axes.grid(True, which="both", alpha=0.25)
        axes.legend(fontsize=7)
    all_axes.flat[-1].remove()
    for axes in all_axes[-1]:
        axes.set_xlabel("unknowns N")
    for axes in all_axes[:, 0]:
        axes.set_ylabel("relative to the exact resistance")
    figure.tight_layout()
    figure.savefig(picture, dpi=90)


if __name__ == "__main__":
    main(*sys.argv[1:])
