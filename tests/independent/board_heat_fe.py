"""Temperatures of small board models by three-dimensional finite elements, independent of the project's solver.

Usage: /usr/bin/python3 board_heat_fe.py CASE [FINENESS [DEGREE]]
CASE: neck, barrel, package, large-neck, large-part. FINENESS 1 (default) or 2: how many times finer the elements are.
DEGREE 1 (default) or 2: of the elements.

Uses GetFEM (Debian: python3-getfem) with the factor of MUMPS. Everything is solid: copper layers have their
thickness, the potential is solved in the copper first, and its loss, growing with temperature as copper's resistivity does,
heats the second model. Faces give heat to air of the reference temperature by films; nothing else leaves. Plated holes are
open, their wall a ring of copper of the plating's thickness around them, joined to the layers it passes. Prints the rises at the
places that are asked about; at a hole the mean around the middle of its wall.
"""

import sys

import getfem as gf
import numpy as np

COPPER, THROUGH, IN_PLANE = 385.0, 0.3, 0.8  # W/(m K)
RHO, GROWTH = 1.7241e-8, 0.00393  # ohm m at 20 degC, 1/K
T = 35e-6
HOLE, WALL = 0.15e-3, 25e-6  # radius of the open hole, thickness of its wall
HELD = 1e24  # W/(V2 m3): contacts are held far more tightly than copper conducts over the smallest element


def lines(stops, narrow, fineness, growth=1.45, widest=20e-3):
    """Lines through all stops, cells as narrow as asked at each stop and growing away from it."""
    out = [stops[0]]
    for a, b, na, nb in zip(stops[:-1], stops[1:], narrow[:-1], narrow[1:]):
        left, right = [a], [b]
        wa, wb = na / fineness, nb / fineness
        g = growth ** (1.0 / fineness)
        while right[-1] - left[-1] > wa + wb:
            if wa <= wb:
                left.append(left[-1] + wa)
                wa = min(wa * g, widest / fineness)
            else:
                right.append(right[-1] - wb)
                wb = min(wb * g, widest / fineness)
        inner = left[1:] + ([(left[-1] + right[-1]) / 2] if right[-1] - left[-1] > max(wa, wb) else []) + right[:0:-1]
        out += inner + [b]
    return np.array(out)


def tensor(xs, ys):
    """Quadrilaterals between lines, four corners each in the order of GetFEM."""
    x, y = np.meshgrid(xs, ys)
    p = np.stack([x, y], axis=-1)
    return np.stack([p[:-1, :-1], p[:-1, 1:], p[1:, :-1], p[1:, 1:]], axis=2).reshape(-1, 4, 2)


def around_hole(radii, parts, half, rings=()):
    """
    A quarter of a square of half a side, hole in its corner at the origin: circles of the given radii, then passing into the square in
    the last of them, and squares of further sizes. Circles are polygons of the circle's area. Parts along each half of the square's outline.
    """
    n = 2 * parts
    t = np.arange(n + 1) / n
    along = np.stack([np.minimum(1, 2 - 2 * t), np.minimum(1, 2 * t)], axis=-1)
    angle = np.pi / 2 * t
    circle = np.stack([np.cos(angle), np.sin(angle)], axis=-1) * np.sqrt(angle[1] / np.sin(angle[1]))
    loops = []
    for r in radii:
        share = max(0.0, (r - WIDEST_CIRCLE * half) / (half - WIDEST_CIRCLE * half))
        loops.append((1 - share) * circle * min(r, WIDEST_CIRCLE * half) + share * along * half)
    p = np.array(loops + [along * size for size in rings])
    return np.stack([p[:-1, :-1], p[1:, :-1], p[:-1, 1:], p[1:, 1:]], axis=2).reshape(-1, 4, 2)


WIDEST_CIRCLE = 0.6


def mirrored(quads, x=1, y=1):
    """The same turned over one axis or both, corners again in order."""
    out = quads * np.array([x, y])
    return out[:, [1, 0, 3, 2]] if x * y < 0 else out


def extruded(quads, zs):
    """Bricks between heights over quadrilaterals."""
    mesh = gf.Mesh("empty", 3)
    bricks = []
    for lower, upper in zip(zs[:-1], zs[1:]):
        for z in (lower, upper):
            bricks.append(np.concatenate([quads, np.full(quads.shape[:2] + (1,), z)], axis=2))
    points = np.concatenate([np.concatenate(bricks[k:k + 2], axis=1) for k in range(0, len(bricks), 2)])
    mesh.add_convex(gf.GeoTrans("GT_QK(3,1)"), points.transpose(2, 1, 0))
    return mesh


def solve(mesh, zs, kinds, films, current, source, probes, degree, symmetry):
    """
    kinds(x, y, z) -> arrays (k_xy, k_z, sigma); source(x, y, z) -> W/m3; current = (amps, v(x, y, z)) or None; probes: name and
    points whose mean is printed; symmetry: how many times the model the board is.
    """
    mim = gf.MeshIm(mesh, gf.Integ("IM_GAUSS_PARALLELEPIPED(3,%d)" % (2 * degree + 1)))
    mf = gf.MeshFem(mesh, 1)
    mf.set_fem(gf.Fem("FEM_QK(3,%d)" % degree))
    p0 = gf.MeshFem(mesh, 1)
    p0.set_fem(gf.Fem("FEM_QK(3,0)"))
    c = p0.basic_dof_nodes()
    kxy, kz, sigma = kinds(c[0], c[1], c[2])
    # Beside outer copper there is no laminate: the film's heat passes there straight from the face of the laminate.
    bare = ((c[2] < T) | (c[2] > zs[-1] - T)) & (kz < COPPER)
    kxy, kz = np.where(bare, 1e-4, kxy), np.where(bare, COPPER, kz)
    outer = mesh.outer_faces()
    normals = mesh.normal_of_faces(outer)
    mesh.set_region(1, outer[:, normals[2] > 0.5])
    mesh.set_region(2, outer[:, normals[2] < -0.5])
    data = {"kxy": kxy, "kz": kz, "q": source(c[0], c[1], c[2])}
    heat = gf.Model("real")
    heat.add_fem_variable("u", mf)
    if current is not None:
        amps, held = current
        volts = held(c[0], c[1], c[2])
        data.update(sigma=sigma + 1e-6, tie=np.where(np.isnan(volts), 0.0, HELD), volts=np.nan_to_num(volts))
        flow = gf.Model("real")
        flow.add_fem_variable("v", mf)
        for name in ("sigma", "tie", "volts"):
            flow.add_initialized_fem_data(name, p0, data[name])
        flow.add_linear_term(mim, "sigma*Grad_v.Grad_Test_v+tie*v*Test_v")
        flow.add_source_term(mim, "tie*volts*Test_v")
        flow.solve("lsolver", "mumps")
        loss = "(sigma*Grad_v.Grad_v)"
        conductance = gf.asm_generic(mim, 0, loss, -1, flow)
        heat.add_initialized_fem_data("v", mf, flow.variable("v") * amps / conductance)
    for name, values in data.items():
        heat.add_initialized_fem_data(name, p0, values)
    heat.add_linear_term(mim, "kxy*(Grad_u(1)*Grad_Test_u(1)+Grad_u(2)*Grad_Test_u(2))+kz*Grad_u(3)*Grad_Test_u(3)")
    heat.add_linear_term(mim, "%g*u*Test_u" % films[0], 1)
    heat.add_linear_term(mim, "%g*u*Test_u" % films[1], 2)
    heat.add_source_term(mim, "q*Test_u")
    total = gf.asm_generic(mim, 0, "q", -1, heat)
    if current is not None:
        heat.add_linear_term(mim, "-%g*%s*u*Test_u" % (GROWTH, loss))
        heat.add_source_term(mim, loss + "*Test_u")
        total += gf.asm_generic(mim, 0, loss, -1, heat)
    heat.solve("lsolver", "mumps")
    u = heat.variable("u")
    dofs = mf.basic_dof_nodes()
    print("unknowns %d, loss of the whole at the reference temperature %.5f W, hottest %.4f K at %s mm" % (
        len(u), symmetry * total, u.max(), 1e3 * dofs[:, u.argmax()]))
    for name, points in probes:
        print("  %-28s %.4f K" % (name, np.mean(gf.compute_interpolate_on(mf, u, np.array(points, ndmin=2).T))))


def z_lines(copper_layers, dielectric, finest, fineness):
    """Lines along z through every face of copper, finest in the laminates near the top, and the faces of each layer, top first."""
    stops, faces, z = [], [], 0.0
    for _ in range(copper_layers):
        faces.append((z, z + T))
        stops += [z, z + T]
        z += T + dielectric
    faces.reverse()
    out = [0.0]
    for lower, upper in zip(stops[:-1], stops[1:]):
        if upper - lower < 1.5 * T:
            parts = fineness
            out += list(lower + (upper - lower) * np.arange(1, parts + 1) / parts)
        else:
            near = copper_layers == 2 or upper > stops[-1] - 1.5 * (dielectric + T)
            width = finest if near else dielectric / 2
            out += list(lines([lower, upper], [width, width], fineness)[1:])
    return np.array(out), faces


def is_in(z, face):
    return (z > face[0]) & (z < face[1])


def materials(copper):
    return np.where(copper, COPPER, IN_PLANE), np.where(copper, COPPER, THROUGH), np.where(copper, 1 / RHO, 0.0)


def neck(f, degree):
    """Quarter of a board of 40 x 30 mm: pours 5..19.5 and 20.5..35 mm, neck 0.2 x 1 mm, plane 0.2 mm below, 15 A."""
    necked(f, degree, 40e-3, 30e-3, 0.5e-3, 15e-3, 10e-3, 2, 0.2e-3, 15.0, 200.0)


def large_neck(f, degree):
    """Quarter of a board of 300 x 250 mm, 8 layers 0.2 mm apart: pours of 25 mm on either side of a neck 0.2 x 3 mm, 10 A."""
    necked(f, degree, 300e-3, 250e-3, 1.5e-3, 25e-3, 10e-3, 8, 0.2e-3, 10.0, 15.0)


def necked(f, degree, width, height, half_neck, end, half_pour, count, gap, amps, film):
    xs = lines([0, half_neck, end - 1e-3, end, width / 2], [0.1e-3, 0.03e-3, 0.5e-3, 0.5e-3, 10e-3], f)
    xs = np.insert(xs, 1, 1e-6)
    ys = lines([0, 0.1e-3, half_pour, height / 2], [0.025e-3, 0.02e-3, 0.5e-3, 10e-3], f)
    zs, faces = z_lines(count, gap, 0.04e-3, f)

    def kinds(x, y, z):
        top = is_in(z, faces[0]) & (((x < half_neck) & (y < 0.1e-3)) | ((x > half_neck) & (x < end) & (y < half_pour)))
        planes = np.any([is_in(z, face) for face in faces[1:]], axis=0)
        kxy, kz, sigma = materials(top | planes)
        return kxy, kz, np.where(top, sigma, 0.0)

    def held(x, y, z):
        on_top = (z > faces[0][0] - 1e-9) & (y < half_pour + 1e-9)
        v = np.full(len(x), np.nan)
        v[on_top & (x < xs[1])] = 0.0
        v[on_top & (x > end - 1e-3) & (x < end)] = 1.0
        return v

    # Of the quarter's current half of the whole runs here.
    solve(extruded(tensor(xs, ys), zs), zs, kinds, (film, film), (amps / 2, held), lambda x, y, z: 0 * x,
          [("middle of the neck", (0, 0, faces[0][0])), ("pour, 5 mm on", (half_neck + 5e-3, 0, faces[0][0]))], degree, 4)


def large_part(f, degree):
    """Quarter of a board of 300 x 250 mm, 8 layers 0.2 mm apart: 1 W in a pad of 1.5 x 1.5 mm alone on the top layer."""
    xs = lines([0, 0.75e-3, 150e-3], [0.15e-3, 0.02e-3, 10e-3], f)
    ys = lines([0, 0.75e-3, 125e-3], [0.15e-3, 0.02e-3, 10e-3], f)
    zs, faces = z_lines(8, 0.2e-3, 0.02e-3, f)
    pad = lambda x, y, z: is_in(z, faces[0]) & (x < 0.75e-3) & (y < 0.75e-3)
    planes = lambda z: np.any([is_in(z, face) for face in faces[1:]], axis=0)
    solve(extruded(tensor(xs, ys), zs), zs, lambda x, y, z: materials(pad(x, y, z) | planes(z)), (15.0, 15.0), None,
          lambda x, y, z: np.where(pad(x, y, z), 1.0 / (1.5e-3**2 * T), 0.0), [("pad", (0, 0, faces[0][0]))], degree, 4)


def wall_of(x, y, centres):
    """True in the walls of holes around centres: elements' middles lie well inside one ring or another."""
    return np.any([(np.hypot(x - a, y - b) < HOLE + WALL) for a, b in centres], axis=0)


def round_the_wall(z):
    """Points around half of a wall at the origin, in its middle, at a depth."""
    return [((HOLE + WALL / 2) * np.cos(a), (HOLE + WALL / 2) * np.sin(a), z) for a in (np.arange(8) + 0.5) / 8 * np.pi]


def barrel(f, degree):
    """Half of a board of 30 x 30 mm, both faces copper, 1.5 mm apart: one hole of 0.3 mm in the middle, 15 A from left to right."""
    wall = list(HOLE + WALL * np.arange(f + 1) / f)
    radii = np.array(wall + list(lines([HOLE + WALL, 14e-3], [0.02e-3, 2e-3], f, 1.4)[1:]))
    quarter = around_hole(radii, 4 * f, 14e-3, np.linspace(14e-3, 15e-3, 2 * f + 1)[1:])
    zs, faces = z_lines(2, 1.5e-3, 0.15e-3, f)

    def kinds(x, y, z):
        return materials(is_in(z, faces[0]) | is_in(z, faces[1]) | wall_of(x, y, [(0, 0)]))

    def held(x, y, z):
        v = np.full(len(x), np.nan)
        v[(z > faces[0][0]) & (x < -14e-3)] = 1.0
        v[(z < faces[1][1]) & (x > 14e-3)] = 0.0
        return v

    middle = (faces[0][0] + faces[1][1]) / 2
    solve(extruded(np.concatenate([quarter, mirrored(quarter, x=-1)]), zs), zs, kinds, (200.0, 200.0), (7.5, held), lambda x, y, z: 0 * x,
          [("middle of the hole", round_the_wall(middle)), ("its top", round_the_wall(faces[0][0] + T / 2)),
           ("pour, 5 mm on", (-5e-3, 0, faces[0][0] + T / 2))], degree, 2)


def package(f, degree):
    """Quarter of a board of 40 x 30 mm: 1.5 W on a land of 3 x 3 mm with nine holes, 1 mm apart, to a plane 1.5 mm below."""
    wall = list(HOLE + WALL * np.arange(f + 1) / f)
    radii = np.array(wall + list(lines([HOLE + WALL, 0.5e-3], [0.03e-3, 0.12e-3], f, 1.4)[1:]))
    quarter = around_hole(radii, 3 * f, 0.5e-3)
    quads = [mirrored(quarter, 1 - 2 * (i % 2), 1 - 2 * (j % 2)) + 1e-3 * np.array([(i + 1) // 2, (j + 1) // 2]) for i in range(3) for j in range(3)]
    inner = np.linspace(0, 1.5e-3, 9 * f + 1)
    beyond_x = lines([1.5e-3, 20e-3], [0.06e-3, 2e-3], f, 1.3)
    beyond_y = lines([1.5e-3, 15e-3], [0.06e-3, 2e-3], f, 1.3)
    quads += [tensor(beyond_x, inner), tensor(inner, beyond_y), tensor(beyond_x, beyond_y)]
    zs, faces = z_lines(2, 1.5e-3, 0.15e-3, f)
    holes = [(1e-3 * i, 1e-3 * j) for i in range(2) for j in range(2)]

    def land(x, y, z):
        return is_in(z, faces[0]) & (x < 1.5e-3) & (y < 1.5e-3)

    # The heat is spread over the whole land, holes too; what would fall on them falls on the copper beside them.
    covered_m2 = 9e-6 - 9 * np.pi * HOLE**2
    solve(extruded(np.concatenate(quads), zs), zs, lambda x, y, z: materials(is_in(z, faces[1]) | land(x, y, z) | wall_of(x, y, holes)),
          (50.0, 50.0), None, lambda x, y, z: np.where(land(x, y, z), 1.5 / (covered_m2 * T), 0.0),
          [("land, its corner", (1.5e-3, 1.5e-3, faces[0][0])), ("land, its middle", (0.5e-3, 0.5e-3, faces[0][0])),
           ("plane between holes", (0.5e-3, 0.5e-3, 0))], degree, 4)


CASES = {"neck": neck, "barrel": barrel, "package": package, "large-neck": large_neck, "large-part": large_part}

if __name__ == "__main__":
    if len(sys.argv) < 2 or sys.argv[1] not in CASES:
        raise SystemExit(__doc__)
    gf.util_trace_level(0)
    fineness, degree = [int(a) for a in sys.argv[2:]] + [1] * (4 - len(sys.argv))
    print("%s, fineness %d, degree %d" % (sys.argv[1], fineness, degree))
    CASES[sys.argv[1]](fineness, degree)
