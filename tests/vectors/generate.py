"""What do the general libraries say? Writes the vectors that come from them into a folder.

    python generate.py FOLDER

PHREEQC (through phreeqpython), the sea-water library gsw and a few published tables, typed in below, are
all that it knows; nothing of this project is imported. The draws are seeded by the file's name, so one
file can change without the others. `cargo xtask prove vectors` runs it and compares.
"""

import csv
import math
import random
import sys
from dataclasses import replace
from itertools import chain, product
from pathlib import Path

import gsw
from periodictable import formula

from phreeqc import (
    ALKALINITY, CACO3, CARBON, CHLORINATED, CHLORINE, COLUMNS, CYANURIC, INDEX, LITRES_A_KG, MODEL, NACL, PH, SECOND,
    SOURCE as PHREEQC, Phreeqc, Water, drawn, edges, reacted,
)  # fmt: skip
from volumes import volumes
from worked import hocl_by_hand, recipes, worked

FILES = []


def file(function):
    """Registers what writes a file: it takes a seeded draw and gives source, header and rows."""
    FILES.append((function.__name__.replace("_", "-") + ".csv", function))
    return function


for function in (worked, recipes, hocl_by_hand, volumes):
    file(function)


STATE = {
    "si_calcite": INDEX,
    "ionic_strength_molal": "MU",
    "tic_mmol_kgw": CARBON,
    "log10_a_ca": 'LA("Ca+2")',
    "log10_a_co3": 'LA("CO3-2")',
    "h2cy_mmol_kgw": 'MOL("H2Cya-")*1000',
    "borate_mmol_kgw": 'MOL("H2BO3-")*1000',
    "hco3_free_mmol_kgw": 'MOL("HCO3-")*1000',
    "log10_pco2_atm": 'SI("CO2(g)")',
    "kg_water_per_l": 'TOT("water")/SOLN_VOL',
}


def states(waters):
    phreeqc = Phreeqc()
    rows = [w.cells() + phreeqc.ask(w.solution(), *STATE.values())[-1] for w in waters]
    return MODEL, COLUMNS + list(STATE), rows


@file
def saturation_index(draw):
    return states([drawn(draw) for _ in range(400)] + edges())


@file
def saturation_index_wide(draw):
    """Sea-water and mineral pools: more salt, magnesium and sulfate than tap water ever holds."""

    def wide(n):
        salt = draw.randint(8000, 40000) if n % 4 < 2 else draw.randint(0, 8000)
        magnesium = draw.randint(300, 6000) if n % 4 in (1, 2) else draw.randint(0, 300)
        sulfate = draw.randint(500, 3000) if n % 4 in (1, 3) else draw.randint(0, 500)
        return drawn(draw, nacl_mgl=salt, mg_mgl_caco3=magnesium, so4_mgl=sulfate)

    corners = product((0, 42), (6.5, 8.6), (2, 1200), (0, 40000), (0, 6000), (0, 3000))
    ends = [Water(t, ph, 120, ch, 0, 0, salt, mg, so4) for t, ph, ch, salt, mg, so4 in corners]
    return states([wide(n) for n in range(120)] + ends)


@file
def chlorine_titrations(draw):
    """Liquid chlorine, NaOCl with as much NaCl, into waters with little or much cyanuric acid; 25 C alone.

    The species are the model's, which leaves out cyanuric acid's second step.
    """
    phreeqc = Phreeqc(more=CHLORINATED)
    free = '(MOL("HHyp")+MOL("Hyp-"))*1000'

    def chlorinated(water, chlorine):
        mmol = chlorine / CHLORINE
        text = f"{water.solution()}USE solution 1\nREACTION\n NaHyp 1\n NaCl 1\n {mmol:.12g} mmol\nEND\n"
        after = phreeqc.ask(text, PH, INDEX, free, f'TOT("Hyp")*1000-{free}')[-1]
        return water.cells()[:7] + [chlorine, mmol] + after

    rows = [
        chlorinated(Water(25, 7.5, 80, 250, cya_mgl=cya, nacl_mgl=400), chlorine)
        for cya, chlorine in product((0, 0.01, 0.1, 1, 3, 10, 30, 100), (1, 5, 20))
    ]
    for n in range(200):
        cya = round(draw.uniform(0, 300) if n % 2 else 300 * draw.random() ** 3, 2)
        water = drawn(draw, t_c=25, cya_mgl=cya, mg_mgl_caco3=0, so4_mgl=0)
        rows.append(chlorinated(water, round(draw.uniform(0.5, 20), 2)))
    head = COLUMNS[:7] + ["fc_added_mgl_cl2", "dose_mmol_kgw", "ph_after", "si_after"]
    source = "; chlorinated cyanurates by O'Brien et al. 1974 (25 C, from memory); REACTION NaOCl + NaCl, closed"
    return MODEL + source, head + ["free_mmol_kgw", "bound_mmol_kgw"], rows


# Chemical, PHREEQC's formula, largest dose in mmol/L.
CHEMICALS = [
    ("HCl", "HCl", 2.0),
    ("NaHSO4", "NaHSO4", 2.0),
    ("NaHCO3", "NaHCO3", 2.0),
    ("Na2CO3", "Na2CO3", 1.0),
    ("NaOH", "NaOH", 1.0),
    ("CaCl2", "CaCl2", 4.0),
    ("H3BO3", "H3BO3", 5.0),
    ("borax", "Na2B4O7", 1.0),
    ("cyanuric_acid", "H3Cya", 0.8),
    ("CO2", "CO2", 1.0),
    ("NaOCl", "NaHyp", 0.15),
    ("NaCl", "NaCl", 70.0),
]


@file
def titrations(draw):
    phreeqc = Phreeqc()
    # Bound chlorine is not in PHREEQC's database: bleach goes into water without cyanuric acid.
    fixed = lambda chemical: {"cya_mgl": 0} if chemical[0] == "NaOCl" else {}
    drawn_ones = ((chemical, drawn(draw, **fixed(chemical))) for chemical in CHEMICALS * 12)
    at_edges = ((chemical := draw.choice(CHEMICALS), replace(water, **fixed(chemical))) for water in edges())
    rows = []
    for (name, symbol, most), water in chain(drawn_ones, at_edges):
        if name in ("HCl", "NaHSO4"):
            most = min(most, 0.85 * 2 * water.ta_mgl_caco3 / CACO3)
        dose = round(draw.uniform(0.05, 1) * most, 4)
        per_kg, before, after = reacted(phreeqc, water, symbol, dose, ALKALINITY, CARBON, PH, INDEX)
        rows.append(water.cells() + [name, per_kg, dose] + before[:2] + after)
    more = ["ta_before_meq_kgw", "tic_before_mmol_kgw", "ta_after_meq_kgw", "tic_after_mmol_kgw"]
    head = COLUMNS + ["chemical", "dose_mmol_kgw", "dose_mmol_l"] + more + ["ph_after", "si_after"]
    return MODEL + "; REACTION, closed, nothing settles out; doses per kg and per litre of start water", head, rows


@file
def treatments(_):
    phreeqc = Phreeqc()
    water = Water(26, 7.8, 120, 300, cya_mgl=40, nacl_mgl=3200)
    symbols = {name: symbol for name, symbol, _ in CHEMICALS}
    doses = [("HCl", mmol, "") for mmol in (0.1, 0.2, 0.3, 0.5)]
    weights = {"NaHCO3": 50, "Na2CO3": 20, "CaCl2": 100, "cyanuric_acid": 30, "borax": 100}
    doses += [(name, "", mg) for name, mg in weights.items()]
    rows = []
    for name, mmol, mg in doses:
        weight = CYANURIC if name == "cyanuric_acid" else formula(symbols[name]).mass
        dose = mmol or mg / weight
        _, before, after = reacted(phreeqc, water, symbols[name], dose, 'ALK*TOT("water")', PH, INDEX)
        # In the litre that held the start's alkalinity.
        ta = water.ta_mgl_caco3 * after[0] / before[0]
        rows.append([name, mmol, mg, f"{ta:.2f}", f"{after[1]:.4f}", f"{after[2]:.3f}"])
    source = MODEL + "; REACTION in one water: 26 C, pH 7.8, TA 120, CH 300, CYA 40, salt 3,200; doses per litre"
    return source, ["chemical", "dose_mmol_l", "dose_mgl", "ta", "ph", "si"], rows


@file
def salt_shift(_):
    phreeqc = Phreeqc()
    waters = [
        Water(26, 7.5, 80, 250, 30),
        Water(20, 7.4, 60, 50),
        Water(28, 7.8, 150, 800, 80),
        Water(40, 7.5, 80, 200),
        Water(3, 7.6, 100, 300, 50),
        Water(25, 7.5, 120, 300, 150, 50),
    ]
    salts, free = (500, 1000, 2000, 3200, 6000, 8000), 3200
    rows = []
    for water in waters:
        at = lambda salt: phreeqc.ask(replace(water, nacl_mgl=salt).solution(), INDEX)[-1][0]
        _, before, after = reacted(phreeqc, water, "NaCl", free / NACL, INDEX, PH)
        shifts = [at(salt) - at(0) for salt in salts] + [a - b for a, b in zip(after, before)]
        rows.append(water.cells()[:6] + [f"{x:.3f}" for x in [at(0)] + shifts])
    head = COLUMNS[:6] + ["si_0"] + [f"d_{salt}" for salt in salts] + [f"d_free_{free}", f"d_ph_{free}"]
    source = f": index at salt 0 and its change at the same pH; then, by REACTION NaCl of {free} mg per litre, "
    return MODEL + source + "its change and that of the pH, left free; printed to 0.001", head, rows


@file
def demo_index(_):
    phreeqc = Phreeqc()
    now = Water(24, 7.5, 110, 250, cya_mgl=40, nacl_mgl=19)
    before = Water(24, 7.8, 110, 220, cya_mgl=20, nacl_mgl=14)
    cases = [(before, 0), (now, 0), (replace(now, nacl_mgl=2819), 0), (now, 2800)]
    columns = ["t_c", "ph", "ta_mgl_caco3", "ch_mgl_caco3", "cya_mgl", "nacl_mgl"]
    rows = []
    for water, added in cases:
        _, _, after = reacted(phreeqc, water, "NaCl", added / NACL, INDEX, PH)
        rows.append([getattr(water, c) for c in columns] + [added, f"{after[0]:.4f}", f"{after[1]:.4f}"])
    source = MODEL + "; the demo's waters; added_mgl is NaCl by REACTION, pH left free"
    return source, columns + ["added_mgl", "si_calcite", "ph_after"], rows


@file
def mixing(draw):
    phreeqc = Phreeqc()

    def drawn_pairs():
        for n in range(120):
            a = drawn(draw)
            # Every fourth pair differs in temperature too.
            yield a, drawn(draw) if n % 4 == 0 else drawn(draw, t_c=a.t_c)

    rows = []
    for a, b in chain(drawn_pairs(), ((a, draw.choice(edges())) for a in edges())):
        part = round(draw.uniform(0.05, 0.95), 3)
        text = f"{a.solution(1)}{b.solution(2)}MIX 3\n 1 {part}\n 2 {1 - part:.12g}\nEND\n"
        of_a, of_b, mix = phreeqc.ask(text, LITRES_A_KG, "TC", ALKALINITY, CARBON, PH, INDEX)
        volume = part * of_a[0] / (part * of_a[0] + (1 - part) * of_b[0])
        rows.append(a.cells() + b.cells() + [part, volume] + mix[1:])
    head = [f"{which}_{name}" for which, name in product("ab", COLUMNS)] + ["fraction_a_mass_of_water"]
    head += ["fraction_a_volume", "t_mix_c", "ta_mix_meq_kgw", "tic_mix_mmol_kgw", "ph_mix", "si_mix"]
    return MODEL + "; MIX by mass of water", head, rows


@file
def air_equilibrium(draw):
    phreeqc = Phreeqc()
    rows = []
    for n, water in enumerate(chain((drawn(draw) for _ in range(90)), edges())):
        air = 420 if n % 2 else draw.choice([280, 400, 600, 800, 1000, 1500])
        gas = f"USE solution 1\nEQUILIBRIUM_PHASES\n CO2(g) {math.log10(air / 1e6):.12f} 10\nEND\n"
        answers = phreeqc.ask(water.solution() + gas, CARBON, 'SI("CO2(g)")', PH, INDEX)
        before, after = answers[0], answers[-1]
        rows.append(water.cells() + [air, before[0], 1e6 * 10 ** before[1], after[0]] + after[2:])
    more = ["pco2_uatm", "tic_before_mmol_kgw", "pco2_before_uatm", "tic_eq_mmol_kgw", "ph_eq", "si_eq"]
    return MODEL + "; EQUILIBRIUM_PHASES CO2(g)", COLUMNS + more, rows


@file
def hocl(_):
    phreeqc = Phreeqc(cyanuric="-6.88", more=CHLORINATED + SECOND)
    # Species, and how many chlorine each holds.
    species = [("HHyp", 1), ("Hyp-", 1), ("H3CyaHyp-", 1), ("H4CyaHyp2-", 2), ("H4CyaHyp", 1), ("H5CyaHyp2", 2)]
    asked = [f'MOL("{name}")*{count * CHLORINE * 1000}' for name, count in species] + ['MOL("H2Cya-")*1000', "MU"]
    rows = []
    usual = product((0.5, 2, 5, 12), (0, 20, 50, 100, 250), (6.9, 7.3, 7.6, 8.0), (0, 3000))
    for free, cya, ph, salt in chain(usual, product((0.5, 12), (0, 300), (6.5, 8.6), (0, 8000))):
        amounts = {"Hyp": free / CHLORINE, "Cya": cya / CYANURIC, "Cl": salt / NACL}
        lines = "".join(f" {name} {mmol:.12g}\n" for name, mmol in amounts.items() if mmol > 0)
        sodium = f" Na {max(salt / NACL, 1e-4):.12g} charge\n"
        text = f"SOLUTION 1\n units mmol/kgw\n temp 25\n pH {ph}\n{sodium}{lines}END\n"
        rows.append([free, cya, ph, salt] + phreeqc.ask(text, *asked)[-1])
    head = ["fc_mgl_cl2", "cya_mgl", "ph", "nacl_mgl", "hocl_mg_cl2", "ocl_mg_cl2", "hclcy_minus_mg_cl2"]
    head += ["cl2cy_minus_mg_cl2", "h2clcy_mg_cl2", "hcl2cy_mg_cl2", "h2cy_minus_mmol", "ionic_strength_molal"]
    source = " + O'Brien et al. 1974 (25 C) and Morris 1966, both from memory; mg as Cl2 on 1 kg of water"
    return PHREEQC + source, head, rows


def brine(phreeqc, t, salt, *expressions):
    mmol = salt / NACL
    water = f"SOLUTION 1\n units mmol/L\n -density 1.0 calc\n temp {t}\n pH 7\n"
    return phreeqc.ask(f"{water} Na {mmol:.12g}\n Cl {mmol:.12g}\nEND\n", *expressions)[-1]


WARMTHS = (0, 5, 10, 15, 20, 25, 30, 35, 40, 42)
SALTS = (0, 250, 500, 1000, 2000, 3000, 4000, 6000, 8000, 20000, 40000)
BRINES = list(product(WARMTHS, SALTS))


@file
def density(_):
    phreeqc = Phreeqc()

    def kell(t):
        top = [999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12]
        return sum(a * t**n for n, a in enumerate(top)) / (1 + 16.879850e-3 * t)

    rows = []
    for t, salt in BRINES:
        rho, content = brine(phreeqc, t, salt, "RHO*1000", 'TOT("water")/SOLN_VOL')
        sea = float(gsw.rho_t_exact(salt / rho, t, 0))
        rows.append([t, salt, rho, content, "" if salt else kell(t), sea])
    head = ["t_c", "nacl_mgl", "rho_phreeqc_kg_m3", "kg_water_per_l", "rho_kell_kg_m3", "rho_gsw_seawater_kg_m3"]
    source = " RHO; Kell 1975 (from memory), pure water; gsw 3.6.23, SEA water of as many g/kg, a cross-check only"
    return PHREEQC + source, head, rows


# Shedlovsky 1932 as in the CRC Handbook (from memory): mol/L and S cm²/mol at 25 °C.
SHEDLOVSKY = [
    (0.0005, 124.44), (0.001, 123.68), (0.005, 120.59), (0.01, 118.45), (0.02, 115.70), (0.05, 111.01),
    (0.1, 106.69),
]  # fmt: skip
# Robinson and Stokes 1959, appendix 6.2 (from memory): °C, then Na+ and Cl- at infinite dilution.
LIMITS = [
    (0, 26.5, 41.0), (5, 30.3, 47.5), (15, 39.77, 61.41), (18, 42.8, 66.0), (25, 50.10, 76.35),
    (35, 61.54, 92.21), (45, 73.73, 108.92),
]  # fmt: skip
NEXT_TO_NONE = 1e-6


@file
def conductivity(_):
    phreeqc = Phreeqc()
    rows = [[25, c * NACL * 1000, c * each * 1000, "table", "CRC/Shedlovsky (memory)"] for c, each in SHEDLOVSKY]
    limit = lambda ions: NEXT_TO_NONE / NACL * ions
    rows += [[t, NEXT_TO_NONE, limit(na + cl), "limit", "Robinson & Stokes (memory)"] for t, na, cl in LIMITS]
    rows += [[t, s, brine(phreeqc, t, s, "SC")[0], "model", "PHREEQC SC"] for t, s in BRINES if s]
    source = f"table: CRC Handbook after Shedlovsky 1932; limit: Robinson and Stokes 1959; model: {PHREEQC} SC"
    return source, ["t_c", "nacl_mgl", "kappa_us_cm", "kind", "origin"], rows


@file
def psu_cross_check(_):
    rows = []
    for t, salinity in product((5, 15, 25, 35), (2, 4, 8, 20, 35)):
        here, at_25 = (float(gsw.C_from_SP(salinity, x, 0)) for x in (t, 25))
        rows.append([t, salinity, here, here / at_25])
    head = ["t_c", "practical_salinity", "c_ms_cm", "c_over_c25"]
    return "gsw 3.6.23 C_from_SP (PSS-78), sea water; a cross-check of the temperature factor only", head, rows


def cell(x):
    if not isinstance(x, float):
        return x
    return "0" if abs(x) < 1e-25 else f"{x:.8g}"


def main(folder):
    for name, rows_of in FILES:
        source, head, rows = rows_of(random.Random(name))
        with open(Path(folder) / name, "w", newline="") as out:
            out.write(f"# source: {source}\n")
            writer = csv.writer(out, lineterminator="\n")
            writer.writerow(head)
            writer.writerows([cell(x) for x in row] for row in rows)
        print(f"{name}: {len(rows)} rows")


if __name__ == "__main__":
    main(sys.argv[1])
