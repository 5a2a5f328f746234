"""How is a water put to PHREEQC, and what does it answer? Used by `generate.py`."""

from dataclasses import dataclass, replace
from itertools import product
from pathlib import Path

import phreeqpython
from phreeqpython import viphreeqc

SOURCE = "USGS PHREEQC via phreeqpython 1.6.2 (IPhreeqc 3.7.3-15968), phreeqc.dat"
MODEL = SOURCE + " + cyanuric acid pK1 = 1743/T + 1.12 (Wahman 2018)"

# g/mol; IUPAC, abridged.
CACO3, NACL, CYANURIC, BORON, SULFATE, CHLORINE = 100.0869, 58.4428, 129.0746, 10.81, 96.06, 70.906

# PHREEQC knows neither cyanuric acid (Cya) nor hypochlorous acid (Hyp, apart from chloride so that it
# oxidises nothing; Morris 1966, from memory).
ACIDS = """
SOLUTION_MASTER_SPECIES
 Cya H3Cya 0 129.0746 126.0507
 Hyp HHyp 0 52.46 51.45
SOLUTION_SPECIES
 H3Cya = H3Cya
  log_k 0
 H3Cya = H2Cya- + H+
  -analytic {cyanuric}
 HHyp = HHyp
  log_k 0
 HHyp = Hyp- + H+
  -analytic 10.0686 -0.0253 -3000.0
"""

# O'Brien, Morris and Butler 1974, 25 °C, from memory. HOCl is added whole: H3CyaHyp- is HClCy- and H2O.
CHLORINATED = """
SOLUTION_SPECIES
 H2Cya- + HHyp = H3CyaHyp-
  log_k 5.62
 H3CyaHyp- + H+ = H4CyaHyp
  log_k 5.33
 H3CyaHyp- = H2CyaHyp-2 + H+
  log_k -10.12
 H3CyaHyp- + HHyp = H4CyaHyp2-
  log_k 4.51
 H4CyaHyp2- + H+ = H5CyaHyp2
  log_k 3.75
 H5CyaHyp2 + HHyp = H6CyaHyp3
  log_k 1.80
"""

# Cyanuric acid's second step, of the same source.
SECOND = """
SOLUTION_SPECIES
 H2Cya- = HCya-2 + H+
  log_k -11.40
"""


class Phreeqc:
    """A PHREEQC with our species that answers BASIC expressions."""

    def __init__(self, cyanuric="-1.12 0 -1743", more=""):
        self.library = viphreeqc.VIPhreeqc()
        self.library.load_database(str(Path(phreeqpython.__file__).parent / "database" / "phreeqc.dat"))
        self.library.run_string(ACIDS.format(cyanuric=cyanuric) + more + "END\n")

    def ask(self, text, *expressions):
        """The expressions after each simulated step of `text`, one list a step."""
        lines = [f" {10 * n} PUNCH {e}" for n, e in enumerate(expressions, 1)]
        names = " ".join(f"x{n}" for n in range(len(lines)))
        self.library.run_string(
            "SELECTED_OUTPUT 1\n -reset false\n -high_precision true\n"
            f"USER_PUNCH 1\n -headings {names}\n -start\n" + "\n".join(lines) + "\n -end\n" + text
        )
        return self.library.get_selected_output_array()[1:]


PH, INDEX, CARBON, ALKALINITY = '-LA("H+")', 'SI("Calcite")', 'TOT("C(4)")*1000', "ALK*1000"
LITRES_A_KG = 'SOLN_VOL/TOT("water")'


@dataclass(frozen=True)
class Water:
    """What a kit reports, mg/L. Names and order are those of the columns."""

    t_c: float
    ph: float
    ta_mgl_caco3: float
    ch_mgl_caco3: float
    cya_mgl: float = 0
    b_mgl: float = 0
    nacl_mgl: float = 0
    mg_mgl_caco3: float = 0
    so4_mgl: float = 0

    def solution(self, number=1):
        """As PHREEQC takes it. Calcium and magnesium came with chloride, the rest with sodium."""
        equivalents = 2 * self.ta_mgl_caco3 / CACO3
        hard = [self.ch_mgl_caco3 / CACO3, self.mg_mgl_caco3 / CACO3]
        sulfate, salt = self.so4_mgl / SULFATE, self.nacl_mgl / NACL
        amounts = {
            "Alkalinity": equivalents,
            "Ca": hard[0],
            "Mg": hard[1],
            "Na": salt + equivalents + 2 * sulfate,
            "Cl": salt + 2 * sum(hard),
            "S(6)": sulfate,
            "Cya": self.cya_mgl / CYANURIC,
            "B": self.b_mgl / BORON,
        }
        lines = [f" {name} {mmol:.12g}" for name, mmol in amounts.items() if mmol > 0]
        head = f"SOLUTION {number}\n units mmol/L\n -density 1.0 calc\n temp {self.t_c}\n pH {self.ph}\n"
        return head + "\n".join(lines) + f"\nSAVE solution {number}\nEND\n"

    def cells(self):
        return [getattr(self, name) for name in COLUMNS]

    def carbonate(self):
        """Roughly what alkalinity carbonate is left, mg/L as CaCO3."""
        part = lambda pk: 1 / (1 + 10 ** (pk - self.ph))
        cyanurate = part(1743 / (self.t_c + 273.15) + 0.9) * self.cya_mgl / CYANURIC
        return self.ta_mgl_caco3 - CACO3 / 2 * (cyanurate + part(8.9) * self.b_mgl / BORON)


COLUMNS = list(Water.__dataclass_fields__)


def drawn(draw, **fixed):
    """A water of the model's whole domain; most have cyanuric acid and salt, few the seldom tested."""
    some = lambda most, share, power=1: round(most * draw.random() ** power) if draw.random() < share else 0
    while True:
        water = Water(
            t_c=round(draw.uniform(0, 42), 1),
            ph=round(draw.uniform(6.5, 8.6), 2),
            ta_mgl_caco3=draw.randint(20, 300),
            ch_mgl_caco3=max(some(1200, 1, 2), 2),
            cya_mgl=some(300, 0.75, 2),
            b_mgl=some(100, 0.4),
            nacl_mgl=some(8000, 0.8),
            mg_mgl_caco3=some(300, 0.3),
            so4_mgl=some(500, 0.3),
        )
        water = replace(water, **fixed)
        if water.carbonate() >= 8:
            return water


def edges():
    """The corners of the domain, each with an alkalinity that can carry its acids."""
    bodies = [(20, 0, 0), (300, 0, 0), (300, 300, 0), (300, 0, 100)]
    ends = product((0, 42), (6.5, 8.6), (2, 1200), (0, 8000), bodies)
    return [Water(t, ph, ta, ch, cya, b, salt) for t, ph, ch, salt, (ta, cya, b) in ends]


def reacted(phreeqc, water, chemical, mmol_per_l, *expressions):
    """Before, and with so much of a chemical in each litre of the start water. Nothing settles out."""
    per_kg = mmol_per_l * phreeqc.ask(water.solution(), LITRES_A_KG)[-1][0]
    text = f"{water.solution()}USE solution 1\nREACTION\n {chemical} 1\n {per_kg:.12g} mmol\nEND\n"
    answers = phreeqc.ask(text, *expressions)
    return per_kg, answers[0], answers[-1]
