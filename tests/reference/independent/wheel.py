"""Reckons parts of a wheel with packages that are not ours and writes wheel.csv beside this file.

    python3 -m venv venv && venv/bin/pip install numpy==2.4.6 scipy==1.17.1 scikit-fem==12.0.2 PyNiteFEA==3.2.0
    venv/bin/python wheel.py

Each row says what was reckoned, from what, by which function of which package, and what came out. Rows marked
"regression" repeat the model of the core in another language: they guard against slips and are no evidence for it.
Newtons and millimetres throughout.
"""

import csv
from importlib.metadata import version
from math import cos, pi, sin, sqrt
from pathlib import Path

import numpy as np
from Pynite import FEModel3D
from scipy.optimize import brentq
from skfem import (
    Basis,
    BilinearForm,
    ElementLineP2,
    ElementQuad2,
    ElementVector,
    MeshLine,
    MeshQuad,
    condense,
    solve,
)
from skfem.helpers import sym_grad

ROWS = []


def put(what, inputs, value, unit, package, function, kind):
    where = f"{package} {version(package)}"
    ROWS.append([what, inputs, f"{value:.6g}", unit, where, function, kind])


def bedding(depth, shoulder, along=12000.0, across=1200.0, shear=1000.0, nu=0.37):
    """How deep wood that is pressed evenly would have to be to give as much as a felloe under a rigid shoulder."""
    half, length = shoulder / 2, 170.0
    x = np.unique(np.concatenate([np.linspace(0, half, 13), np.linspace(half, length, 40)]))
    mesh = MeshQuad.init_tensor(x, np.linspace(0, depth, 31))
    basis = Basis(mesh, ElementVector(ElementQuad2()))
    back = nu * across / along
    d = 1 - nu * back
    cxx, cyy, cxy = along / d, across / d, back * along / d

    @BilinearForm
    def stiffness(u, v, _):
        e, f = sym_grad(u), sym_grad(v)
        sx = cxx * e[0, 0] + cxy * e[1, 1]
        sy = cxy * e[0, 0] + cyy * e[1, 1]
        return sx * f[0, 0] + sy * f[1, 1] + 4 * shear * e[0, 1] * f[0, 1]

    k = stiffness.assemble(basis)
    at = basis.doflocs
    dofs = np.arange(k.shape[0])
    vertical = np.zeros(k.shape[0], bool)
    for part in (basis.nodal_dofs[1], basis.facet_dofs[1], basis.interior_dofs[1]):
        vertical[part] = True
    # The sole lies on the tyre; the belly is pressed; the middle stays in the middle.
    below = dofs[vertical & (at[1] < 1e-9)]
    middle = dofs[~vertical & (at[0] < 1e-9)]
    pressed = dofs[vertical & (at[1] > depth - 1e-9) & (at[0] < half + 1e-9)]
    u = np.zeros(k.shape[0])
    u[pressed] = -1.0
    held = np.unique(np.concatenate([below, middle, pressed]))
    u = solve(*condense(k, np.zeros_like(u), x=u, D=held))
    force = -(k @ u)[pressed].sum()
    return across * half / force


def rim(radius, depth, along, across):
    """How far the sole of a ring of wood goes in under one newton on each square millimetre."""
    inner = radius - depth
    mesh = MeshLine(np.linspace(inner, radius, 201))
    basis = Basis(mesh, ElementLineP2())

    @BilinearForm
    def stiffness(u, v, w):
        r = w.x[0]
        return (across * u.grad[0] * v.grad[0] + along * (u / r) * (v / r)) * r

    k = stiffness.assemble(basis)
    sole = basis.nodal_dofs[0, np.argmax(mesh.p[0])]
    load = np.zeros(k.shape[0])
    load[sole] = -radius
    return -solve(k, load)[sole]


def cart(spokes=12, felloes=6):
    """The cart wheel of the core's tests, flat: white ash felloes, white oak spokes, a nave of American elm. Push of
    its rim as a hoop and of one spoke, for each millimetre."""
    r, h, b = 675.0, 90.0, 64.0
    section, hub, width = 65.0 * 45.0, 300.0, 45.0
    half = pi / felloes
    m = 0.5 - sin(2 * half) / (4 * half)
    e, across = 12000.0, 1200.0
    mean = 1 / ((1 - m) / e + m / across)
    k_rim = 1 / ((r - h / 2) / (mean * h * b) + h / (3 * r * b * across))
    length = r - h - hub / 2
    bed = lambda d, s: d * s / (s + 0.58 * d)
    k = 1 / (length / (12270 * section) + bed(h, width) / (1200 * 0.535 * section)
             + bed(0.7 * hub / 2, width) / (924 * 0.444 * section))
    return k_rim, k


def wheel(spokes, felloes):
    """The same wheel as a ring of straight pieces on pinned spokes, loaded evenly so that its hoop carries one newton
    where it has no spokes: how far in the ring goes, and what a spoke pushes."""
    k_rim, k = cart(spokes, felloes)
    radius, area, length, along = 630.0, 90.0 * 64.0, 435.0, 10000.0
    m = FEModel3D()
    m.add_material("rim", k_rim * radius / area, 1e4, 0.3, 0.0)
    m.add_material("spoke", along, 1e4, 0.3, 0.0)
    m.add_section("rim", area, area * 90**2 / 12, area * 90**2 / 12, area * 90**2 / 6)
    m.add_section("spoke", k * length / along, 1e3, 1e3, 1e3)
    pieces = spokes * 8
    load = 2 * pi / pieces
    turn = [2 * pi * n / pieces for n in range(pieces)]
    for n, a in enumerate(turn):
        m.add_node(f"R{n}", radius * cos(a), radius * sin(a), 0.0)
        m.def_support(f"R{n}", support_DZ=True, support_RX=True, support_RY=True)
        m.add_node_load(f"R{n}", "FX", -load * cos(a))
        m.add_node_load(f"R{n}", "FY", -load * sin(a))
    for n in range(pieces):
        m.add_member(f"r{n}", f"R{n}", f"R{(n + 1) % pieces}", "rim", "rim")
    for s in range(spokes):
        a, inner = turn[s * 8], radius - length
        m.add_node(f"S{s}", inner * cos(a), inner * sin(a), 0.0)
        m.def_support(f"S{s}", True, True, True, True, True, False)
        m.add_member(f"s{s}", f"S{s}", f"R{s * 8}", "spoke", "spoke")
        m.def_releases(f"s{s}", Rzj=True)
    m.analyze_linear()
    out = [m.nodes[f"R{n}"] for n in range(pieces)]
    moved = [-o.DX["Combo 1"] * cos(a) - o.DY["Combo 1"] * sin(a) for o, a in zip(out, turn)]
    return sum(moved) / pieces, abs(m.members["s0"].max_axial("Combo 1"))


def balance(draw, joints, off):
    """The uniform model of the core for the cart wheel with 38 mm of dish, at 14 %, solved by a root finder."""
    k_rim, k = cart()
    r, t, w, length, section, n = 675.0, 16.0, 60.0, 435.0, 65.0 * 45.0, 12
    dry = (1 + 0.63 * (12 - 14) / 13 / 32) ** 32
    s2 = sin(pi / 6) ** 2
    ends = dry * 51.1 * 8.0 / (51.1 * s2 + 8.0 * (1 - s2)) * 90 * 64
    cap = dry * min(4.8 * 1.5 * 0.444, 8.0 * 1.5 * 0.535, 51.3) * section
    sine = 38.0 / length
    cosine = sqrt(1 - sine**2)
    k_t = 0.25 * 12270 * section * 65.0**2 / length**3
    k_r = k * k_t / (k * sine**2 + k_t * cosine**2)
    short = draw / (2 * pi)
    gives = (r - short + t / 2) / (210000 * t * w)

    def wood(u, gap, k, cap):
        x = max(0.0, u - gap)
        return min(k * x, cap * 0.9 + 0.1 * k * x)

    rim_push = lambda u: wood(u, joints / (2 * pi), k_rim, ends)
    spoke_push = lambda u: wood(u, off, k_r, cap / cosine)
    pull = lambda u: min((short - u) / gives, 275.0 * t * w)
    u = brentq(lambda u: rim_push(u) + n * spoke_push(u) / (2 * pi) - pull(u), 0, short, xtol=1e-12)
    return u, pull(u), spoke_push(u)


for depth, shoulder in [(90, 45), (75, 45), (110, 45), (90, 30), (90, 60), (60, 35), (105, 45)]:
    put("bedding", f"depth={depth} shoulder={shoulder}", bedding(depth, shoulder), "mm", "scikit-fem", "ElementQuad2, solve", "independent")
for radius, depth in [(675, 90), (600, 60), (500, 45), (750, 110), (400, 80)]:
    u = rim(radius, depth, 12000.0, 1200.0)
    put("rim", f"radius={radius} depth={depth} along=12000 across=1200", radius / u, "N/mm for each mm of width", "scikit-fem", "ElementLineP2, solve", "independent")
for spokes, felloes in [(12, 6), (14, 7), (16, 8), (10, 5)]:
    u, f = wheel(spokes, felloes)
    given = f"spokes={spokes} felloes={felloes}"
    put("wheel moves", given, u, "mm for 1 N", "PyNiteFEA", "FEModel3D.analyze_linear", "independent")
    put("wheel spoke", given, f, "N for 1 N", "PyNiteFEA", "FEModel3D.analyze_linear", "independent")
for draw, joints, off in [(32, 14, 0), (32, 14, 2.2), (20, 14, 0), (20, 6, 1), (12, 0, 0), (3, 0, 0), (80, 0, 0)]:
    given = f"draw={draw} joints={joints} off={off}"
    for name, value, unit in zip(("balance moves", "balance grip", "balance spoke"), balance(draw, joints, off), ("mm", "N", "N")):
        put(name, given, value, unit, "scipy", "optimize.brentq", "regression")

with open(Path(__file__).with_name("wheel.csv"), "w", newline="") as out:
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["what", "inputs", "value", "unit", "package", "function", "kind"])
    writer.writerows(ROWS)
