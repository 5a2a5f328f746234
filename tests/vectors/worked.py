"""What do the libraries say of the worked examples: one water in full, three recipes, chlorine by hand?"""

import math
from dataclasses import replace

from periodictable import formula

from phreeqc import CACO3, CHLORINE, COLUMNS, CYANURIC, INDEX, LITRES_A_KG, MODEL, PH, Phreeqc, Water, reacted

# Open air, atm; 10,000 US gallons, m³.
AIR, GALLONS = 420e-6, 37.85411784


def worked(_):
    """One number a row: what a water gives by itself, in air, or when so much is put into it."""
    phreeqc = Phreeqc()
    rows = []

    def row(water, what, amount, number, digits):
        rows.append(water.cells()[:7] + [what, amount, f"{number:.{digits}f}"])

    water = Water(26, 7.8, 120, 300, cya_mgl=40, nacl_mgl=3200)
    carbonate = 'ALK-MOL("H2Cya-")-MOL("OH-")-MOL("CaOH+")+MOL("H+")'
    per_litre = 'TOT("water")/SOLN_VOL'
    asked = [f"({carbonate})*{per_litre}*{500 * CACO3}", "MU", f'TOT("C(4)")*{per_litre}*1000', INDEX, '10^SI("CO2(g)")*1e6', '10^SI("CO2(g)")/420e-6']
    names = [("carbonate", 2), ("strength", 4), ("carbon_mmol_l", 3), ("index", 3), ("co2_uatm", 0), ("times_air", 1)]
    for (what, digits), number in zip(names, phreeqc.ask(water.solution(), *asked)[-1]):
        row(water, what, "", number, digits)
    gas = f"USE solution 1\nEQUILIBRIUM_PHASES\n CO2(g) {math.log10(AIR):.12f} 10\nEND\n"
    in_air = phreeqc.ask(water.solution() + gas, PH, INDEX)[-1]
    for what, number in zip(("ph_in_air", "index_in_air"), in_air):
        row(water, what, "", number, 3)
    for cya, boron in ((0, 0), (50, 0), (100, 0), (50, 50)):
        weak = Water(26, 7.6, 100, 300, cya, boron, 1000)
        _, before, after = reacted(phreeqc, weak, "HCl", 0.2, PH)
        row(weak, "ph_by_acid", 0.2, after[0] - before[0], 3)

    def to_ph(water, symbol, goal):
        """Bisection: mmol a litre."""
        low, high = 0, 1
        for _ in range(40):
            dose = (low + high) / 2
            after = reacted(phreeqc, water, symbol, dose, PH)[2][0]
            low, high = (dose, high) if (after > goal) == (symbol == "HCl") else (low, dose)
        return dose

    row(water, "acid_to_ph", 7.4, to_ph(water, "HCl", 7.4), 4)
    # The trade's moves of pH.
    for salt in (400, 3200):
        for ph, goal, ta, cya in ((7.8, 7.5, 100, 30), (8.0, 7.6, 100, 30), (7.8, 7.4, 80, 30)):
            moved = Water(26.7, ph, ta, 250, cya, nacl_mgl=salt)
            row(moved, "acid_to_ph", goal, to_ph(moved, "HCl", goal), 5)
        for ph, goal, ta, cya in ((7.2, 7.5, 100, 30), (7.2, 7.4, 80, 0)):
            moved = Water(26.7, ph, ta, 250, cya, nacl_mgl=salt)
            row(moved, "soda_ash_g", goal, to_ph(moved, "Na2CO3", goal) * formula("Na2CO3").mass * GALLONS, 0)
    weak, rise = Water(26.7, 7.5, 80, 250, nacl_mgl=400), 20  # mg/L of alkalinity
    _, before, after = reacted(phreeqc, weak, "NaHCO3", rise * 2 / CACO3, PH)
    row(weak, "ph_by_bicarbonate", rise, after[0] - before[0], 3)
    head = COLUMNS[:7] + ["what", "amount", "printed"]
    source = "; REACTION and EQUILIBRIUM_PHASES CO2(g) at 420e-6 atm; doses in mmol per litre, bicarbonate in mg/L "
    source += "of alkalinity, soda ash in g per 10,000 US gal"
    return MODEL + source, head, rows


def recipes(_):
    phreeqc = Phreeqc()

    def carbon(water, totals, sodium, chloride):
        """Of the goal's water in the ions that the recipe leaves, mol per kg."""
        _, ta, ca, na, cl, cya = totals
        amounts = {"Alkalinity": ta, "Ca": ca, "Na": na + sodium, "Cl": cl + chloride, "Cya": cya}
        lines = "".join(f" {name} {mol * 1000:.12g}\n" for name, mol in amounts.items())
        text = f"SOLUTION 1\n units mmol/kgw\n temp {water.t_c}\n pH {water.ph}\n{lines}END\n"
        return phreeqc.ask(text, 'TOT("C(4)")')[-1][0]

    def split(x, y):
        """Bicarbonate, carbonate, acid, stripped for so much more alkalinity and carbon."""
        if 0 <= y and x <= y:
            return y, 0, y - x, 0
        if 0 <= y and x <= 2 * y:
            return 2 * y - x, x - y, 0, 0
        return (0, x / 2, 0, x / 2 - y) if x >= 0 else (0, 0, -x, -y)

    rows = []
    for salt, ph, ta, goal_ph, goal_ta in ((3200, 7.2, 70, 7.6, 100), (3200, 8.0, 180, 7.5, 100), (0, 7.4, 80, 7.4, 140)):
        water = Water(26, ph, ta, 250, 40, nacl_mgl=salt)
        asked = ['TOT("C(4)")', "ALK", 'TOT("Ca")', 'TOT("Na")', 'TOT("Cl")', 'TOT("Cya")', LITRES_A_KG]
        *totals, litres = phreeqc.ask(water.solution(), *asked)[-1]
        x = (goal_ta - ta) * 2 / CACO3 * litres / 1000
        totals[1] += x
        bicarbonate = carbonate = acid = stripped = 0
        for _ in range(10):
            there = carbon(replace(water, ph=goal_ph), totals, bicarbonate + 2 * carbonate, acid)
            bicarbonate, carbonate, acid, stripped = split(x, there - totals[0])
        parts = [f"{part * 1000 / litres:.5f}" for part in (bicarbonate, carbonate, acid, stripped)]
        rows.append(water.cells()[:7] + [goal_ph, goal_ta] + parts)
    head = COLUMNS[:7] + ["goal_ph", "goal_ta", "bicarbonate", "carbonate", "acid", "stripped"]
    return MODEL + "; carbon of both waters, the goal's in the ions that the recipe leaves; mmol per litre", head, rows


def hocl_by_hand(_):
    """Mass action, written down species by species and solved by bisection; off 25 °C by the stated heats."""
    phreeqc = Phreeqc()

    def acid(free, cya, ph, t, strength):
        # PHREEQC's own Debye-Hückel A; Davies for ions, 0.1 I for the rest.
        a = phreeqc.ask(f"SOLUTION 1\n temp {t}\nEND\n", "DH_A")[-1][0]
        root = math.sqrt(strength)
        gamma = lambda charge: 10 ** (-a * charge**2 * (root / (1 + root) - 0.3 * strength) if charge else 0.1 * strength)
        kelvin = t + 273.15
        warmth = 1 / kelvin - 1 / 298.15
        hydrolysis = 38800 / (math.log(10) * 8.314463) * warmth
        hydrogen = 10**-ph
        g0, g1, g2 = gamma(0), gamma(1), gamma(2)

        def both(x):
            """Chlorine and cyanuric acid in all their forms, for so much HOCl and 1 of H3Cy, as concentrations."""
            hocl = x * g0
            ocl = hocl * 10 ** (10.0686 - 0.0253 * kelvin - 3000 / kelvin) / hydrogen / g1
            h2cy = g0 * 10 ** (-6.88 - 1743 * warmth) / hydrogen  # Activities from here on.
            hcy = h2cy * 10**-11.40 / hydrogen
            hclcy = h2cy * hocl * 10 ** (5.62 + hydrolysis)
            h2clcy = hclcy * hydrogen * 10**5.33
            clcy = hclcy * 10**-10.12 / hydrogen
            cl2cy = hclcy * hocl * 10 ** (4.51 + hydrolysis)
            hcl2cy = cl2cy * hydrogen * 10**3.75
            cl3cy = hcl2cy * hocl * 10**1.80
            one, two = hclcy / g1 + h2clcy / g0 + clcy / g2, cl2cy / g1 + hcl2cy / g0
            return x + ocl, one + 2 * two + 3 * cl3cy / g0, 1 + h2cy / g1 + hcy / g2 + one + two + cl3cy / g0

        total, bound = free / CHLORINE / 1000, cya / CYANURIC / 1000
        low, high = 0, total
        for _ in range(200):
            x = (low + high) / 2
            loose, held, all_cy = both(x)
            low, high = (x, high) if loose + bound * held / all_cy < total else (low, x)
        return x * CHLORINE * 1000

    waters = [(3, 0, 7.5), (3, 30, 7.2), (3, 30, 7.5), (3, 30, 7.8), (2, 50, 7.5), (5, 80, 7.5), (10, 30, 7.5), (3, 100, 7.5)]
    cases = [(*water, 25, strength) for water in waters for strength in (0, 0.02, 0.06)]
    cases += [(3, 30, 7.5, t, 0.02) for t in (15, 30, 40)]
    cases += [(free, cya, ph, t, 0.1) for free, cya, ph in ((12, 20, 6.8), (1, 250, 8.4), (150, 60, 7.2)) for t in (5, 35)]
    # Where the rarer forms tell.
    cases += [(*water, 25, 0.02) for water in ((200, 100, 4), (200, 500, 3), (5, 100, 10.5), (200, 60, 10.8))]
    rows = [[*case, f"{acid(*case):.6g}"] for case in cases]
    source = "mass action worked out apart in Python: O'Brien et al. 1974 (25 C) and Morris 1966, both from memory; off 25 C "
    source += "38.8 kJ/mol for both hydrolyses (Wahman and Alexander 2019 for one) and the heat of Wahman 2018 for cyanuric acid"
    return source, ["fc_mgl_cl2", "cya_mgl", "ph", "t_c", "strength", "hocl_mg_cl2"], rows
