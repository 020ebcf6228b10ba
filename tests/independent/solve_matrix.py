"""Solves K v = i of an exported net with SciPy's direct solver and compares the potentials.

Usage: python3 solve_matrix.py FOLDER
FOLDER holds matrix.mtx (Matrix Market, symmetric), currents.txt and potentials.txt (one number per unknown).
Prints the largest difference of any potential over the largest potential.
"""

import pathlib
import sys

import numpy as np
import scipy.io
import scipy.sparse.linalg


def main(folder: pathlib.Path) -> None:
    matrix = scipy.io.mmread(folder / "matrix.mtx").tocsc()
    currents = np.loadtxt(folder / "currents.txt")
    potentials = np.loadtxt(folder / "potentials.txt")
    factor = scipy.sparse.linalg.splu(
        matrix, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
    )
    theirs = factor.solve(currents)
    theirs += factor.solve(currents - matrix @ theirs)
    difference = np.abs(theirs - potentials).max() / np.abs(theirs).max()
    print(f"unknowns {matrix.shape[0]}")
    print(f"difference {difference:.3e}")


if __name__ == "__main__":
    main(pathlib.Path(sys.argv[1]))
