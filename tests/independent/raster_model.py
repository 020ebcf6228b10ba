"""Resistance of a net by finite differences on square cells, independent of the project's mesher and solver.

Usage: python3 raster_model.py NET.txt [CELL_UM ...]
NET.txt, lengths in nanometres, conductances in siemens:
  layer NUMBER SHEET_CONDUCTANCE      what follows lies on this layer
  copper X Y X Y ...                  ring of copper or of a hole in it (even-odd rule)
  source X Y ... / sink X Y ...       ring of a contact on the layer
  barrel LAYER [LAYER G ...] : X Y .. ring of a hole's wall and the conductance of each stretch to the next layer

A cell is copper when its centre is. Neighbours are joined by the sheet conductance; the cells of a contact or of a
barrel on one layer are one node. The outline of a raster is wrong by about a cell, so the error falls with the cell:
R(h) = R + c h is extrapolated from the two finest cells, and half of what that adds counts as its accuracy.
"""

import sys

import numpy as np
import scipy.sparse
import scipy.sparse.csgraph
import scipy.sparse.linalg


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


def fill(rings, x0, y0, h, rows, columns):
    """Cells whose centres lie inside by the even-odd rule, row by row from the crossings of every edge."""
    flips = np.zeros((rows, columns + 1), dtype=np.int32)
    for points in rings:
        following = np.roll(points, -1, axis=0)
        for (ax, ay), (bx, by) in zip(points, following):
            if ay == by:
                continue
            low, high = min(ay, by), max(ay, by)
            first = max(0, int(np.ceil((low - y0) / h - 0.5)))
            last = min(rows, int(np.ceil((high - y0) / h - 0.5)))
            if last <= first:
                continue
            centre = y0 + (np.arange(first, last) + 0.5) * h
            x = ax + (centre - ay) / (by - ay) * (bx - ax)
            column = np.clip(np.ceil((x - x0) / h - 0.5), 0, columns).astype(int)
            np.add.at(flips, (np.arange(first, last), column), 1)
    return (np.cumsum(flips, axis=1)[:, :columns] % 2).astype(bool)


def resistance(layers, barrels, h):
    everything = np.vstack([r for layer in layers.values() for r in layer["copper"]])
    x0, y0 = everything.min(axis=0) - 2.37 * h
    columns, rows = (np.ceil((everything.max(axis=0) - (x0, y0)) / h) + 3).astype(int)
    place = {number: i for i, number in enumerate(sorted(layers))}
    cells = rows * columns
    node = np.arange(len(layers) * cells)
    copper = {n: fill(layer["copper"], x0, y0, h, rows, columns) for n, layer in layers.items()}
    extra = len(node)

    def join(number, outline, name):
        left, bottom = np.maximum(((outline.min(axis=0) - (x0, y0)) / h).astype(int) - 1, 0)
        right, top = ((outline.max(axis=0) - (x0, y0)) / h).astype(int) + 2
        window = fill([outline], x0 + left * h, y0 + bottom * h, h, top - bottom, right - left)
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
        mask = copper[number]
        for a, b, both in (
            (index[:, :-1], index[:, 1:], mask[:, :-1] & mask[:, 1:]),
            (index[:-1], index[1:], mask[:-1] & mask[1:]),
        ):
            conduct(node[a[both]], node[b[both]], layer["sheet"])
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
    found = []
    for cell in cells_um:
        value, unknowns = resistance(layers, barrels, cell * 1e-6)
        found.append(value)
        print(f"cell {cell:g} um, {unknowns} unknowns: {value:.8e} ohm")
    ratio = cells_um[-1] / cells_um[-2]
    extrapolated = (found[-1] - ratio * found[-2]) / (1 - ratio)
    print(f"extrapolated {extrapolated:.8e}")
    print(f"accuracy {max(abs(extrapolated - found[-1]), abs(found[-1] - found[-2])) / 2:.8e}")


if __name__ == "__main__":
    main(sys.argv[1], [float(each) for each in sys.argv[2:]] or [100.0, 50.0, 25.0])
