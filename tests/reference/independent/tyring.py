# Run by hand: pip install metku==0.1.35 magnelPy==0.3.4 openpyxl ht==1.2.0 fluids==1.3.1 uncertainties==3.2.3 metrolopy==1.1.1 scipy==1.17.1, then: python tyring.py > tyring.csv
"""What packages that are not ours say about hot steel, cooling and doubt, frozen as rows.

Each row names the package, its version, the function called and its inputs, so that it can be asked again. `kind` is
`independent` where all of the value comes from packages, and `regression` where a formula of the row is one that the core
has too: such a row only tells when something changes.
"""
import csv
import math
import sys
from importlib.metadata import version

import ht
import scipy.integrate
import scipy.optimize
import scipy.stats
from fluids import ATMOSPHERE_1976 as AIR
from magnelPy.SFE.MaterialProperties import Steel
from metku.eurocodes.en1993 import en1993_1_2 as fire
from metrolopy import gummy
from uncertainties import ufloat

rows = []


def row(what, value, tolerance, package, function, kind="independent", **inputs):
    said = ";".join(f"{name}={given!r}" for name, given in inputs.items())
    packages = "+".join(f"{name} {version(name)}" for name in package.split("+"))
    rows.append([what, said, repr(float(value)), tolerance, kind, packages, function])


# EN 1993-1-2:2005, clauses 3.2 and 3.4.
STEPS = [20, 50, 100, 150, 200, 250, 300, 350, 400, 450, 500, 550, 599.9, 600, 650, 700, 730, 734.9, 735, 740, 749, 749.9,
         750, 800, 859, 860, 861, 899, 900, 1000, 1100, 1200]
for c in STEPS:
    row("elongation", fire.therm_elongation(c), 1e-9, "metku", "en1993_1_2.therm_elongation", c=c)
    row("specific-heat", fire.spec_heat(c), 1e-9, "metku", "en1993_1_2.spec_heat", c=c)
    row("conductivity", fire.therm_conductivity(c), 1e-9, "metku", "en1993_1_2.therm_conductivity", c=c)
for c in [20, 100, 200, 300, 400, 450, 500, 550, 600, 650, 700, 734, 735, 740, 800, 900]:
    row("specific-heat", Steel.cp_EC3(c), 1e-6, "magnelPy", "SFE.MaterialProperties.Steel.cp_EC3", c=c)
for c in [20, 100, 200, 300, 350, 400, 450, 500, 550, 600, 650, 700, 750, 800, 900, 1000, 1100]:
    row("kept-strength", fire.fyT(c, 1.0), 1e-9, "metku", "en1993_1_2.fyT", c=c)
    row("kept-springs-back", fire.fpT(c, 1.0), 1e-9, "metku", "en1993_1_2.fpT", c=c)
    row("kept-stiffness", fire.EaT(c, 1.0), 1e-9, "metku", "en1993_1_2.EaT", c=c)
    row("kept-strength", Steel.ky_EC3(c), 1e-6, "magnelPy", "SFE.MaterialProperties.Steel.ky_EC3", c=c)
    row("kept-stiffness", Steel.kE_EC3(c), 1e-6, "magnelPy", "SFE.MaterialProperties.Steel.kE_EC3", c=c)
    for strain in [0.0002, 0.001, 0.002, 0.005, 0.01, 0.019, 0.05, 0.16, 0.3]:
        for f_y in [235.0, 355.0]:
            row("stress", fire.stress(strain, c, 210000.0, f_y), 1e-9, "metku", "en1993_1_2.stress",
                c=c, strain=strain, f_y=f_y)

# Heat taken up from 20 °C, J/kg.
for c in [300, 500, 600, 650, 700, 735, 750, 800, 850]:
    heat = scipy.integrate.quad(fire.spec_heat, 20, c, points=[600, 735], limit=500, epsrel=1e-11)[0]
    row("heat", heat, 1e-6, "scipy+metku", "integrate.quad of en1993_1_2.spec_heat", c=c)

# The temperature for a growth, by a root finder.
for growth in [0.0005, 0.002, 0.005, 0.0075, 0.01, 0.0109]:
    c = scipy.optimize.brentq(lambda c: fire.therm_elongation(c) - growth, 20, 749.5, xtol=1e-12)
    row("temperature-for", c, 1e-8, "scipy+metku", "optimize.brentq of en1993_1_2.therm_elongation", growth=growth)

# Drop-on temperatures: a wheel of 1350 mm across, so much draw, so much clearance across.
for draw in [10.0, 16.0, 20.0, 25.0, 32.0]:
    for clearance in [0.0, 3.0, 4.0]:
        inside = 1350 * math.pi - draw
        growth = (draw + math.pi * clearance) / inside
        c = scipy.optimize.brentq(lambda c: fire.therm_elongation(c) - growth, 20, 749.5, xtol=1e-12)
        row("drop-on", c, 1e-7, "scipy+metku", "optimize.brentq of en1993_1_2.therm_elongation",
            draw=draw, clearance=clearance)


# Air at the film's temperature, Prandtl's number of dry air at its specific heat of 1.005 to 1.06 kJ/(kg K).
def film(hot, cold):
    k = (hot + cold) / 2 + 273.15
    mu, conducts = AIR.viscosity(k), AIR.thermal_conductivity(k)
    rho = 101325 / (287.053 * k)
    c_p = 1005 + 55 * max(0.0, k - 300) / 335
    return k, mu, conducts, rho, c_p * mu / conducts


def still(hot, cold, width):
    k, mu, conducts, rho, pr = film(hot, cold)
    gr = 9.80665 / k * abs(hot - cold) * (width / 1000) ** 3 * rho**2 / mu**2
    return ht.conv_free_immersed.Nu_vertical_plate_Churchill(pr, gr) * conducts / (width / 1000)


def wind(hot, cold, width, thickness, speed):
    k, mu, conducts, rho, pr = film(hot, cold)
    across = 2 * (width + thickness) / math.pi / 1000
    nu = ht.conv_external.Nu_cylinder_Churchill_Bernstein(rho * speed * across / mu, pr)
    return nu * conducts / across


for hot in [50.0, 100.0, 200.0, 300.0, 400.0, 500.0, 700.0, 900.0]:
    for width in [30.0, 60.0, 100.0]:
        row("carries", still(hot, 20.0, width), 0.02, "ht+fluids",
            "conv_free_immersed.Nu_vertical_plate_Churchill, ATMOSPHERE_1976",
            hot=hot, cold=20.0, width=width, thickness=16.0, wind=0.0)
    for speed in [1.0, 3.0, 5.0, 10.0, 20.0]:
        both = (still(hot, 20.0, 60.0) ** 3 + wind(hot, 20.0, 60.0, 16.0, speed) ** 3) ** (1 / 3)
        row("carries", both, 0.02, "ht+fluids",
            "conv_external.Nu_cylinder_Churchill_Bernstein and Nu_vertical_plate_Churchill, cubes added",
            hot=hot, cold=20.0, width=60.0, thickness=16.0, wind=speed)


# Cooling as a differential equation in time, by a stiff solver.
def cools(start, end, emissivity, speed, covered):
    bare = (2 * (60 + 16) - (60 if covered else 0)) / (60 * 16) * 1000

    def falls(_, c):
        h = (still(c[0], 20.0, 60.0) ** 3 + (wind(c[0], 20.0, 60.0, 16.0, speed) ** 3 if speed else 0)) ** (1 / 3)
        leaves = emissivity * 5.670374419e-8 * ((c[0] + 273.15) ** 4 - 293.15**4) + h * (c[0] - 20)
        return [-bare * leaves / (7850 * fire.spec_heat(c[0]))]

    def there(_, c):
        return c[0] - end

    there.terminal = True
    way = scipy.integrate.solve_ivp(falls, [0, 2e4], [start], "LSODA", rtol=1e-9, atol=1e-7, events=there, max_step=2)
    return way.t_events[0][0]


for start, end in [(750.0, 600.0), (750.0, 500.0), (750.0, 300.0), (700.0, 500.0), (600.0, 400.0), (500.0, 100.0)]:
    for emissivity, speed, covered in [(0.8, 0.0, False), (0.7, 0.0, True), (0.98, 5.0, False), (0.8, 2.5, False)]:
        row("cools", cools(start, end, emissivity, speed, covered), 0.01, "scipy+metku+ht+fluids",
            "integrate.solve_ivp LSODA of en1993_1_2.spec_heat, Nu_vertical_plate_Churchill, Nu_cylinder_Churchill_Bernstein",
            start=start, end=end, emissivity=emissivity, wind=speed, covered=int(covered))

# Doubt. A traveller of 628.32 mm, known by ten turns along a line known to ±0.5 mm; readings and marks to ±1 mm; a slip
# of ±0.02 %. `uncertainties` keeps by itself what two rounds have in common.
ROOT3 = math.sqrt(3)


def round_of(turn, turns, past):
    read = past + ufloat(0, 1 / ROOT3) + ufloat(0, 1 / ROOT3)
    whole = turns * turn + read
    return whole + ufloat(0, 2e-4 * whole.nominal_value / ROOT3)


for turns, past in [(6, 471.23), (5, 100.0), (8, 12.5)]:
    turn = ufloat(628.32, 0.05 / ROOT3)
    row("round-standard", round_of(turn, turns, past).std_dev, 1e-6, "uncertainties", "ufloat.std_dev",
        own=628.32, own_doubt=0.05, turns=turns, past=past)
    by = gummy(628.32, u=0.05 / ROOT3) * turns + past
    by = by + gummy(0, u=1 / ROOT3) + gummy(0, u=1 / ROOT3) + gummy(0, u=2e-4 * (628.32 * turns + past) / ROOT3)
    row("round-standard", by.u, 1e-6, "metrolopy", "gummy.u", own=628.32, own_doubt=0.05, turns=turns, past=past)
for own_doubt in [0.05, 2.0]:
    for turns, past, tyre_turns, tyre_past in [(6, 471.23, 6, 439.23), (6, 471.23, 5, 600.0), (7, 5.0, 6, 601.0)]:
        turn = ufloat(628.32, own_doubt / ROOT3)
        draw = round_of(turn, turns, past) - round_of(turn, tyre_turns, tyre_past)
        row("draw-standard", draw.std_dev, 1e-6, "uncertainties", "ufloat.std_dev of a difference", own=628.32,
            own_doubt=own_doubt, turns=turns, past=past, tyre_turns=tyre_turns, tyre_past=tyre_past, same=1)
        other = ufloat(628.32, own_doubt / ROOT3)
        apart = round_of(turn, turns, past) - round_of(other, tyre_turns, tyre_past)
        row("draw-standard", apart.std_dev, 1e-6, "uncertainties", "ufloat.std_dev of a difference", own=628.32,
            own_doubt=own_doubt, turns=turns, past=past, tyre_turns=tyre_turns, tyre_past=tyre_past, same=0)

# Four runs that scatter: their mean with three degrees of freedom beside what rests on no count.
RUNS = [471.08, 472.58, 470.58, 471.58]
runs = [628.32 * 6 + past for past in RUNS]
mean = sum(runs) / 4
scatter = math.sqrt(sum((run - mean) ** 2 for run in runs) / 3)
by = gummy(mean, u=max(scatter, math.sqrt(2 / 3)) / 2, dof=3)
by = by + gummy(0, u=6 * 0.05 / ROOT3) + gummy(0, u=2e-4 * mean / ROOT3)
inputs = {"own": 628.32, "own_doubt": 0.05, "turns": 6} | {f"past{n}": past for n, past in enumerate(RUNS)}
row("runs-standard", by.u, 1e-6, "metrolopy", "gummy.u", **inputs)
row("runs-freedom", by.dof, 1e-6, "metrolopy", "gummy.dof (Welch-Satterthwaite)", **inputs)
# The factor of table G.2, as printed to two or three places.
for freedom in [*range(1, 21), 25, 30, 35, 40, 45, 50, 100]:
    k = scipy.stats.t.ppf((1 + 0.9545) / 2, freedom)
    row("factor", k, 0.006, "scipy", "stats.t.ppf(0.97725, freedom)", freedom=freedom)

# Kept to see a change: the mass of a tyre and the water in firewood are one line of arithmetic wherever they are done.
row("mass", 7850 * 0.06 * 0.016 * (4.20915 + math.pi * 0.016), 1e-9, "scipy", "none: plain arithmetic", "regression",
    inside=4209.15, width=60.0, thickness=16.0)

out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["what", "inputs", "value", "tolerance", "kind", "packages", "function"])
out.writerows(rows)
