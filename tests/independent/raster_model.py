"""Resistance of a net by finite differences on square cells, independent of the project's mesher and solver.

Usage: python3 raster_model.py NET.txt [CELL_UM ...]
NET.txt, lengths in nanometres, conductances in siemens:
  layer NUMBER SHEET_CONDUCTANCE      what follows lies on this layer
  copper X Y X Y ...                  ring of copper or of a hole in it (even-odd rule)
  source X Y ... / sink X Y ...       ring of a contact on the layer
  barrel LAYER [LAYER G ...] : X Y .. ring of a hole's wall and the conductance of each stretch to the next layer

Neighbouring cells are joined by the sheet conductance times the part of the face between them that is copper, sampled
at sixteen points. The cells with their centres in a contact or a barrel on one layer are one node. Each size of cell is
run with the raster in five places. What such a raster gets wrong falls with the cell: R(h) = R + c h is extrapolated
from the means of the two finest cells; its accuracy is what that adds plus half the spread over the places.
"""

import sys

import numpy as np
import scipy.sparse
import scipy.sparse.csgraph
import scipy.sparse.linalg

SAMPLES = 16

# Five places that differ in x, in y and in both diagonals: edges at 0, 45 and 90 degrees lie differently in each.
SHIFTS = [((0.1 + k / 5) % 1, (0.3 + 2 * k / 5) % 1) for k in range(5)]


def read(path):
    layers, barrels = {}, []
    current = None
    for line in open(path, encoding="ascii"):
        word, *rest = line.split()
        if word == "layer":
            current = {"sheet": float(rest[1]), "copper": [], "source": [], "sink": []}
            layers[int(rest[0])] = current
        elif word == "barrel":
            colon = rest.index(":")
            stretches = [(int(rest[i]), float(rest[i + 1])) for i in range(1, colon, 2)]
            barrels.append((int(rest[0]), stretches, ring(rest[colon + 1 :])))
        else:
            current[word].append(ring(rest))
    return layers, barrels


def ring(numbers):
    return np.array(numbers, dtype=float).reshape(-1, 2) * 1e-9


def fill(rings, x0, y0, dx, dy, rows, columns):
    """Which points (x0 + (column + 1/2) dx, y0 + (row + 1/2) dy) lie inside, by the even-odd rule."""
    flips = np.zeros((rows, columns + 1), dtype=np.int32)
    for points in rings:
        following = np.roll(points, -1, axis=0)
        for (ax, ay), (bx, by) in zip(points, following):
            if ay == by:
                continue
            first = max(0, int(np.ceil((min(ay, by) - y0) / dy - 0.5)))
            last = min(rows, int(np.ceil((max(ay, by) - y0) / dy - 0.5)))
            if last <= first:
                continue
            row = np.arange(first, last)
            x = ax + (y0 + (row + 0.5) * dy - ay) / (by - ay) * (bx - ax)
            column = np.clip(np.ceil((x - x0) / dx - 0.5), 0, columns).astype(int)
            np.add.at(flips, (row, column), 1)
    return (np.cumsum(flips, axis=1)[:, :columns] % 2).astype(bool)


def faces(rings, x0, y0, h, rows, columns):
    """Parts of the faces to the next column and to the next row that are copper."""
    upright = fill(rings, x0 + h / 2, y0, h, h / SAMPLES, rows * SAMPLES, columns)
    level = fill(rings, x0, y0 + h / 2, h / SAMPLES, h, rows, columns * SAMPLES)
    return (
        upright.reshape(rows, SAMPLES, columns).mean(axis=1)[:, :-1],
        level.reshape(rows, columns, SAMPLES).mean(axis=2)[:-1],
    )


def resistance(layers, barrels, h, shift):
    everything = np.vstack([r for layer in layers.values() for r in layer["copper"]])
    x0, y0 = everything.min(axis=0) - (2 + np.array(shift)) * h
    columns, rows = (np.ceil((everything.max(axis=0) - (x0, y0)) / h) + 3).astype(int)
    place = {number: i for i, number in enumerate(sorted(layers))}
    cells = rows * columns
    node = np.arange(len(layers) * cells)
    copper = {n: fill(layer["copper"], x0, y0, h, h, rows, columns) for n, layer in layers.items()}
    extra = len(node)

    def join(number, outline, name):
        left, bottom = np.maximum(((outline.min(axis=0) - (x0, y0)) / h).astype(int) - 1, 0)
        right, top = ((outline.max(axis=0) - (x0, y0)) / h).astype(int) + 2
        window = fill([outline], x0 + left * h, y0 + bottom * h, h, h, top - bottom, right - left)
        window &= copper[number][bottom:top, left:right]
        inside = np.argwhere(window) + (bottom, left)
        members = place[number] * cells + inside[:, 0] * columns + inside[:, 1]
        joined.extend((member, name) for member in members)
        return len(members)

    joined, links = [], []
    source, sink = extra, extra + 1
    extra += 2
    for number, layer in layers.items():
        for outline in layer["source"]:
            join(number, outline, source)
        for outline in layer["sink"]:
            join(number, outline, sink)
    for first, stretches, outline in barrels:
        ends = []
        for number in [first] + [layer for layer, _ in stretches]:
            if not join(number, outline, extra):
                # A hole smaller than a cell still touches the cell its middle is in.
                column, row = ((outline.mean(axis=0) - (x0, y0)) / h).astype(int)
                joined.append((place[number] * cells + row * columns + column, extra))
                copper[number][row, column] = True
            ends.append(extra)
            extra += 1
        links += [(ends[i], ends[i + 1], g) for i, (_, g) in enumerate(stretches)]

    # Contacts and barrels that share cells are one node.
    pairs = np.array(joined)
    graph = scipy.sparse.coo_matrix((np.ones(len(pairs)), (pairs[:, 0], pairs[:, 1])), shape=(extra, extra))
    _, node = scipy.sparse.csgraph.connected_components(graph, directed=False)
    rows_of, columns_of, values = [], [], []

    def conduct(a, b, g):
        rows_of.append(a)
        columns_of.append(b)
        values.append(np.broadcast_to(g, a.shape).astype(float))

    for number, layer in layers.items():
        index = place[number] * cells + np.arange(cells).reshape(rows, columns)
        across, upwards = faces(layer["copper"], x0, y0, h, rows, columns)
        for a, b, open_part in ((index[:, :-1], index[:, 1:], across), (index[:-1], index[1:], upwards)):
            both = open_part > 0
            conduct(node[a[both]], node[b[both]], layer["sheet"] * open_part[both])
    for a, b, g in links:
        conduct(node[[a]], node[[b]], g)
    a, b, g = np.concatenate(rows_of), np.concatenate(columns_of), np.concatenate(values)
    keep = a != b
    a, b, g = a[keep], b[keep], g[keep]
    size = node.max() + 1
    adjacency = scipy.sparse.coo_matrix((g, (a, b)), shape=(size, size)).tocsr()
    adjacency = adjacency + adjacency.T
    _, piece = scipy.sparse.csgraph.connected_components(adjacency, directed=False)
    home = piece[node[sink]]
    if piece[node[source]] != home:
        raise SystemExit(f"cells of {h * 1e6:.0f} um do not connect source and sink")
    used = np.flatnonzero(piece == home)
    used = used[used != node[sink]]
    laplacian = scipy.sparse.diags(np.asarray(adjacency.sum(axis=1)).ravel()) - adjacency
    matrix = laplacian[used][:, used].tocsc()
    current = (used == node[source]).astype(float)
    potential = scipy.sparse.linalg.splu(
        matrix, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
    ).solve(current)
    return potential[current > 0][0], len(used)


def main(path, cells_um):
    layers, barrels = read(path)
    means = []
    for cell in cells_um:
        found = [resistance(layers, barrels, cell * 1e-6, shift) for shift in SHIFTS]
        values = [value for value, _ in found]
        means.append(np.mean(values))
        spread = max(values) - min(values)
        print(f"cell {cell:g} um, {found[0][1]} unknowns: {means[-1]:.6e} ohm, spread {spread:.1e}")
    ratio = cells_um[-1] / cells_um[-2]
    extrapolated = (means[-1] - ratio * means[-2]) / (1 - ratio)
    print(f"extrapolated {extrapolated:.6e}")
    print(f"accuracy {abs(extrapolated - means[-1]) + spread / 2:.2e}")


if __name__ == "__main__":
    main(sys.argv[1], [float(each) for each in sys.argv[2:]] or [80.0, 40.0])
