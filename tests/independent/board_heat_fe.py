"""Temperatures of small board models by three-dimensional finite elements, independent of the project's solver.

Usage: /usr/bin/python3 board_heat_fe.py CASE [FINENESS]
CASE: neck, barrel, package, large-neck, large-part. FINENESS 1 (default) or 2: how many times finer the elements are.

Uses GetFEM (Debian: python3-getfem) with the factor of MUMPS. Everything is solid: copper layers have their
thickness, the potential is solved in the copper first, and its loss, growing with temperature as copper's resistivity does,
heats the second model. Bricks of degree 2 where the model is small, else 1. Faces give heat to air of the reference
temperature by films; nothing else leaves. The wall of a plated hole is a square column of the wall's circumference, whose
conductivities along the hole are those of the wall's section. Prints the rises at the places that are asked about.
"""

import sys

import getfem as gf
import numpy as np

COPPER, THROUGH, IN_PLANE = 385.0, 0.3, 0.8  # W/(m K)
RHO, GROWTH = 1.7241e-8, 0.00393  # ohm m at 20 degC, 1/K
T = 35e-6
WALL_M2 = np.pi * (0.3e-3 + 25e-6) * 25e-6
COLUMN = np.pi * (0.3e-3 + 25e-6) / 4


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


def solve(xs, ys, zs, kinds, films, current, source, probes, degree):
    """kinds(x, y, z) -> arrays (k_xy, k_z, sigma_xy, sigma_z); source(x, y, z) -> W/m3; current = (amps, v(x, y, z) or None)."""
    mesh = gf.Mesh("cartesian", xs, ys, zs)
    mim = gf.MeshIm(mesh, gf.Integ("IM_GAUSS_PARALLELEPIPED(3,%d)" % (2 * degree)))
    mf = gf.MeshFem(mesh, 1)
    mf.set_fem(gf.Fem("FEM_QK(3,%d)" % degree))
    p0 = gf.MeshFem(mesh, 1)
    p0.set_fem(gf.Fem("FEM_QK(3,0)"))
    c = p0.basic_dof_nodes()
    kxy, kz, sxy, sz = kinds(c[0], c[1], c[2])
    # Beside outer copper there is no laminate: the film's heat passes there straight from the face of the laminate.
    bare = ((c[2] < T) | (c[2] > zs[-1] - T)) & (kz < COPPER)
    kxy, kz = np.where(bare, 1e-4, kxy), np.where(bare, COPPER, kz)
    outer = mesh.outer_faces()
    normals = mesh.normal_of_faces(outer)
    mesh.set_region(1, outer[:, normals[2] > 0.5])
    mesh.set_region(2, outer[:, normals[2] < -0.5])
    dofs = mf.basic_dof_nodes()
    data = {"kxy": kxy, "kz": kz, "q": source(c[0], c[1], c[2])}
    along = "(Grad_{0}(1)*Grad_Test_{0}(1)+Grad_{0}(2)*Grad_Test_{0}(2))"
    heat = gf.Model("real")
    heat.add_fem_variable("u", mf)
    if current is not None:
        # Contacts are tied to 1 and 0 volts by conductances far above the copper's.
        amps, held = current
        volts = held(c[0], c[1], c[2])
        tie = np.where(np.isnan(volts), 0.0, 1e19)
        data.update(sxy=sxy + 1e-6, sz=sz + 1e-6, tie=tie, volts=np.nan_to_num(volts))
        flow = gf.Model("real")
        flow.add_fem_variable("v", mf)
        for name in ("sxy", "sz", "tie", "volts"):
            flow.add_initialized_fem_data(name, p0, data[name])
        flow.add_linear_term(mim, ("sxy*" + along + "+sz*Grad_{0}(3)*Grad_Test_{0}(3)+tie*v*Test_v").format("v"))
        flow.add_source_term(mim, "tie*volts*Test_v")
        flow.solve("lsolver", "mumps")
        loss = "(sxy*(Grad_v(1)*Grad_v(1)+Grad_v(2)*Grad_v(2))+sz*Grad_v(3)*Grad_v(3))"
        conductance = gf.asm_generic(mim, 0, loss, -1, flow)
        heat.add_initialized_fem_data("v", mf, flow.variable("v") * amps / conductance)
    for name, values in data.items():
        heat.add_initialized_fem_data(name, p0, values)
    heat.add_linear_term(mim, ("kxy*" + along + "+kz*Grad_{0}(3)*Grad_Test_{0}(3)").format("u"))
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
    print("unknowns %d, loss at the reference temperature %.5f W, hottest %.4f K at %s mm" % (
        len(u), total, u.max(), 1e3 * dofs[:, u.argmax()]))
    for name, point in probes:
        print("  %-28s %.4f K" % (name, gf.compute_interpolate_on(mf, u, np.array(point).reshape(3, 1))[0]))


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


def materials(x, copper, column=None):
    """Conductivities where copper is and, along the hole, in the column of a wall."""
    kxy = np.where(copper, COPPER, IN_PLANE)
    kz = np.where(copper, COPPER, THROUGH)
    sxy = np.where(copper, 1 / RHO, 0.0)
    sz = sxy.copy()
    if column is not None:
        share = WALL_M2 / COLUMN**2
        kxy, kz = np.where(column, COPPER, kxy), np.where(column, COPPER * share, kz)
        sxy, sz = np.where(column, 1 / RHO, sxy), np.where(column, share / RHO, sz)
    return kxy, kz, sxy, sz


def neck(f):
    """Quarter of a board of 40 x 30 mm: pours 5..19.5 and 20.5..35 mm, neck 0.2 x 1 mm, plane 0.2 mm below, 15 A."""
    necked(f, 40e-3, 30e-3, 0.5e-3, 15e-3, 10e-3, 2, 0.2e-3, 15.0, 200.0)


def large_neck(f):
    """Quarter of a board of 300 x 250 mm, 8 layers 0.2 mm apart: pours of 25 mm on either side of a neck 0.2 x 3 mm, 10 A."""
    necked(f, 300e-3, 250e-3, 1.5e-3, 25e-3, 10e-3, 8, 0.2e-3, 10.0, 15.0)


def necked(f, width, height, half_neck, end, half_pour, count, gap, amps, film):
    xs = lines([0, half_neck, end - 1e-3, end, width / 2], [0.1e-3, 0.03e-3, 0.5e-3, 0.5e-3, 10e-3], f)
    xs = np.insert(xs, 1, 1e-6)
    ys = lines([0, 0.1e-3, half_pour, height / 2], [0.025e-3, 0.02e-3, 0.5e-3, 10e-3], f)
    zs, faces = z_lines(count, gap, 0.04e-3, f)

    def kinds(x, y, z):
        top = is_in(z, faces[0]) & (((x < half_neck) & (y < 0.1e-3)) | ((x > half_neck) & (x < end) & (y < half_pour)))
        planes = np.any([is_in(z, face) for face in faces[1:]], axis=0)
        kxy, kz, sxy, sz = materials(x, top | planes)
        return kxy, kz, np.where(top, sxy, 0.0), np.where(top, sz, 0.0)

    def held(x, y, z):
        on_top = (z > faces[0][0] - 1e-9) & (y < half_pour + 1e-9)
        v = np.full(len(x), np.nan)
        v[on_top & (x < xs[1])] = 0.0
        v[on_top & (x > end - 1e-3) & (x < end)] = 1.0
        return v

    # Of the quarter's current half of the whole runs here.
    solve(xs, ys, zs, kinds, (film, film), (amps / 2, held), lambda x, y, z: 0 * x,
          [("middle of the neck", (0, 0, faces[0][0])), ("pour, 5 mm on", (half_neck + 5e-3, 0, faces[0][0]))], 1)


def large_part(f):
    """Quarter of a board of 300 x 250 mm, 8 layers 0.2 mm apart: 1 W in a pad of 1.5 x 1.5 mm alone on the top layer."""
    xs = lines([0, 0.75e-3, 150e-3], [0.15e-3, 0.02e-3, 10e-3], f)
    ys = lines([0, 0.75e-3, 125e-3], [0.15e-3, 0.02e-3, 10e-3], f)
    zs, faces = z_lines(8, 0.2e-3, 0.02e-3, f)
    pad = lambda x, y, z: is_in(z, faces[0]) & (x < 0.75e-3) & (y < 0.75e-3)
    planes = lambda z: np.any([is_in(z, face) for face in faces[1:]], axis=0)
    solve(xs, ys, zs, lambda x, y, z: materials(x, pad(x, y, z) | planes(z)), (15.0, 15.0), None,
          lambda x, y, z: np.where(pad(x, y, z), 1.0 / (1.5e-3**2 * T), 0.0), [("pad", (0, 0, faces[0][0]))], 1)


def barrel(f):
    """Half of a board of 30 x 30 mm, both faces copper, 1.5 mm apart: one hole of 0.3 mm in the middle, 15 A from left to right."""
    half = COLUMN / 2
    xs = lines([0, 1e-3, 15e-3 - half, 15e-3 + half, 29e-3, 30e-3], [0.5e-3, 0.5e-3, 0.04e-3, 0.04e-3, 0.5e-3, 0.5e-3], f, 1.3)
    ys = lines([0, half, 15e-3], [0.04e-3, 0.04e-3, 2e-3], f, 1.3)
    zs, faces = z_lines(2, 1.5e-3, 0.15e-3, f)

    def kinds(x, y, z):
        column = (abs(x - 15e-3) < half) & (y < half)
        sheet = is_in(z, faces[0]) | is_in(z, faces[1])
        return materials(x, sheet, column & ~sheet)

    def held(x, y, z):
        v = np.full(len(x), np.nan)
        v[(z > faces[0][0] - 1e-9) & (x < 1e-3 + 1e-9)] = 1.0
        v[(z < faces[1][1] + 1e-9) & (x > 29e-3 - 1e-9)] = 0.0
        return v

    middle = (faces[0][0] + faces[1][1]) / 2
    solve(xs, ys, zs, kinds, (200.0, 200.0), (7.5, held), lambda x, y, z: 0 * x,
          [("middle of the hole", (15e-3, 0, middle)), ("its top", (15e-3, 0, faces[0][0])), ("pour, 5 mm on", (10e-3, 0, faces[0][0]))], 1)


def package(f):
    """Quarter of a board of 40 x 30 mm: 1.5 W on a land of 3 x 3 mm with nine holes, 1 mm apart, to a plane 1.5 mm below."""
    half = COLUMN / 2
    xs = lines([0, half, 1e-3 - half, 1e-3 + half, 1.5e-3, 20e-3], [0.06e-3] * 5 + [2e-3], f, 1.3)
    ys = lines([0, half, 1e-3 - half, 1e-3 + half, 1.5e-3, 15e-3], [0.06e-3] * 5 + [2e-3], f, 1.3)
    zs, faces = z_lines(2, 1.5e-3, 0.15e-3, f)
    near = lambda a: (a < half) | (abs(a - 1e-3) < half)

    def kinds(x, y, z):
        sheet = is_in(z, faces[1]) | (is_in(z, faces[0]) & (x < 1.5e-3) & (y < 1.5e-3))
        return materials(x, sheet, near(x) & near(y) & ~is_in(z, faces[0]) & ~is_in(z, faces[1]))

    solve(xs, ys, zs, kinds, (50.0, 50.0), None,
          lambda x, y, z: np.where(is_in(z, faces[0]) & (x < 1.5e-3) & (y < 1.5e-3), 1.5 / (3e-3**2 * T), 0.0),
          [("land, its corner", (1.5e-3, 1.5e-3, faces[0][0])), ("land, its middle", (0.5e-3, 0.5e-3, faces[0][0])),
           ("plane below", (0, 0, 0))], 1)


CASES = {"neck": neck, "barrel": barrel, "package": package, "large-neck": large_neck, "large-part": large_part}

if __name__ == "__main__":
    if len(sys.argv) < 2 or sys.argv[1] not in CASES:
        raise SystemExit(__doc__)
    print(sys.argv[1], "fineness", sys.argv[2:] or 1)
    CASES[sys.argv[1]](int(sys.argv[2]) if len(sys.argv) > 2 else 1)
