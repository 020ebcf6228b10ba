"""Times SciPy's SuperLU on a matrix written by SolverRaceTests: prints elapsed and processor seconds of factor and solve.

Usage: python3 solve_timed.py FOLDER
"""

import pathlib
import sys
import time

import numpy as np
import scipy.sparse
import scipy.sparse.linalg

folder = pathlib.Path(sys.argv[1])
pointers = np.fromfile(folder / "pointers.bin", dtype=np.int32)
rows = np.fromfile(folder / "rows.bin", dtype=np.int32)
values = np.fromfile(folder / "values.bin")
right = np.fromfile(folder / "right.bin")
lower = scipy.sparse.csc_matrix((values, rows, pointers), shape=(len(right), len(right)))
matrix = (lower + scipy.sparse.tril(lower, -1).T).tocsc()
elapsed, processor = time.perf_counter(), time.process_time()
factor = scipy.sparse.linalg.splu(
    matrix, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
)
factor.solve(right)
print(f"{time.perf_counter() - elapsed:.4f} {time.process_time() - processor:.4f}")
