"""Temperatures of small board models by three-dimensional finite elements, independent of the project's solver.

Usage: /usr/bin/python3 board_heat_fe.py CASE [FINENESS]
CASE: neck, barrel, package, large-neck, large-part. FINENESS 1 (default) or 2: how many times finer the elements are.

Uses GetFEM (Debian: python3-getfem) to assemble and SciPy to solve. Everything is solid: copper layers have their
thickness, the potential is solved in the copper first, and its loss, growing with temperature as copper's resistivity does,
heats the second model. Bricks of degree 2 where the model is small, else 1. Faces give heat to air of the reference
temperature by films; nothing else leaves. The wall of a plated hole is a square column of the wall's circumference, whose
conductivities along the hole are those of the wall's section. Prints the rises at the places that are asked about.
"""

import sys

import getfem as gf
import numpy as np
import scipy.sparse
import scipy.sparse.linalg

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
    outer = mesh.outer_faces()
    normals = mesh.normal_of_faces(outer)
    mesh.set_region(1, outer[:, normals[2] > 0.5])
    mesh.set_region(2, outer[:, normals[2] < -0.5])
    dofs = mf.basic_dof_nodes()
    md = gf.Model("real")
    md.add_fem_variable("u", mf)
    md.add_fem_variable("v", mf)
    for name, values in (("kxy", kxy), ("kz", kz), ("sxy", sxy), ("sz", sz), ("q", source(c[0], c[1], c[2]))):
        md.add_initialized_fem_data(name, p0, values)

    def matrix(expression, region=-1, of="u"):
        m = gf.asm_generic(mim, 2, expression, region, md)
        csc = scipy.sparse.csc_matrix(sparse(m))
        i = md.interval_of_variable(of)
        return csc[i[0]:i[0] + i[1], i[0]:i[0] + i[1]].tocsr()

    def vector(expression, of="u"):
        full = gf.asm_generic(mim, 1, expression, -1, md)
        i = md.interval_of_variable(of)
        return full[i[0]:i[0] + i[1]]

    along = "(Grad_{0}(1)*Grad_Test_{0}(1)+Grad_{0}(2)*Grad_Test_{0}(2))"
    heat = matrix(("kxy*" + along + "+kz*Grad_{0}(3)*Grad_Test_{0}(3)").format("u"))
    heat = heat + films[0] * matrix("u*Test_u", 1) + films[1] * matrix("u*Test_u", 2)
    load = vector("q*Test_u")
    joule = 0.0
    if current is not None:
        amps, held = current
        conduct = matrix(("sxy*" + along + "+sz*Grad_{0}(3)*Grad_Test_{0}(3)").format("v"), of="v")
        fixed = held(dofs[0], dofs[1], dofs[2])
        v = np.where(np.isnan(fixed), 0.0, fixed)
        free = np.flatnonzero(np.isnan(fixed) & (conduct.diagonal() > 0))
        v[free] += sub_solve(conduct[free][:, free], -(conduct @ v)[free])
        flow = conduct @ v
        into = flow[np.nan_to_num(fixed, nan=0.0) > 0.5].sum()
        v *= amps / into
        md.set_variable("v", v)
        loss = "(sxy*(Grad_v(1)*Grad_v(1)+Grad_v(2)*Grad_v(2))+sz*Grad_v(3)*Grad_v(3))"
        load = load + vector(loss + "*Test_u")
        heat = heat - GROWTH * matrix(loss + "*u*Test_u")
        joule = vector(loss + "*Test_u").sum()
    u = sub_solve(heat, load)
    print("unknowns %d, loss at the reference temperature %.5f W, hottest %.4f K at %s mm" % (
        len(u), joule + vector("q*Test_u").sum(), u.max(), 1e3 * dofs[:, u.argmax()]))
    for name, point in probes:
        print("  %-28s %.4f K" % (name, gf.compute_interpolate_on(mf, u, np.array(point).reshape(3, 1))[0]))


def sparse(m):
    m.to_csc()
    return scipy.sparse.csc_matrix((m.csc_val(), m.csc_ind()[1], m.csc_ind()[0]), shape=m.size())


def sub_solve(a, b):
    a = scipy.sparse.csr_matrix(a)
    if len(b) < 30000:
        return scipy.sparse.linalg.spsolve(a.tocsc(), b)
    ilu = scipy.sparse.linalg.spilu(a.tocsc(), drop_tol=1e-4, fill_factor=12)
    x, info = scipy.sparse.linalg.cg(a, b, tol=1e-9, maxiter=3000, M=scipy.sparse.linalg.LinearOperator(a.shape, ilu.solve))
    if info != 0:
        raise SystemExit("conjugate gradients ended with %d" % info)
    return x


def layers(copper_layers, dielectric):
    """z of the lower and upper face of each copper layer, the last layer first; the top face of the board is the last."""
    out, z = [], 0.0
    for _ in range(copper_layers):
        out.append((z, z + T))
        z += T + dielectric
    return out


def main(case, fineness):
    print(case, "fineness", fineness)
    globals()[case.replace("-", "_")](fineness)


if __name__ == "__main__":
    pass
