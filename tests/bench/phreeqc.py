"""How many nanoseconds does PHREEQC take for the same waters? Prints also how far the indices lie apart.

The waters go to the library in one string, so that Python's own time and the reading of its setup are left
out of it; and for the index also one by one, as one asks for a single water.
"""

import csv
import sys
import time

from phreeqpython import PhreeqPython

CACO3, NACL, CYANURIC, BORON, SULFATE = 100.0869, 58.4428, 129.0746, 10.81, 96.06
CYANURATE = """
SOLUTION_MASTER_SPECIES
Cyn H3Cyn 0 129.0746 129.0746
SOLUTION_SPECIES
H3Cyn = H3Cyn
    log_k 0
H3Cyn = H2Cyn- + H+
    -analytical_expression -1.12 0 -1743.0
END
"""


def solution(number, row):
    x = {name: float(cell) for name, cell in row.items()}
    # The convention of Sample::water: what no kit shows is filled in so that charge balances.
    hard, soft = x["ch_mgl_caco3"] / CACO3, x["mg_mgl_caco3"] / CACO3
    alkalinity, salt = 2 * x["ta_mgl_caco3"] / CACO3, x["nacl_mgl"] / NACL
    sulfate = x["so4_mgl"] / SULFATE
    return f"""
SOLUTION {number}
    temp {x["t_c"]}
    pH {x["ph"]}
    units mmol/L
    density 1 calculate
    Alkalinity {alkalinity} meq/L
    Ca {hard}
    Mg {soft}
    Na {salt + alkalinity + 2 * sulfate}
    Cl {salt + 2 * hard + 2 * soft}
    S(6) {sulfate}
    B {x["b_mgl"] / BORON}
    Cyn {x["cya_mgl"] / CYANURIC}
"""


def best(act, turns=5):
    took = []
    for _ in range(turns):
        start = time.perf_counter()
        act()
        took.append(time.perf_counter() - start)
    return min(took) * 1e9 / len(rows)


def by_calls():
    for water in waters:
        phreeqc.ip.run_string(water + "END\n")
        phreeqc.ip.get_selected_output_array()


rows = list(csv.DictReader(line for line in open(sys.argv[1]) if not line.startswith("#")))
phreeqc = PhreeqPython(database="phreeqc.dat")
phreeqc.ip.run_string(CYANURATE)
phreeqc.ip.run_string("SELECTED_OUTPUT 1\n -reset false\n -si Calcite\nEND")
waters = [solution(1, row) for row in rows]
index = "END\n".join(waters) + "END\n"
acid = "END\n".join(w + "REACTION 1\n HCl 1\n 0.0001 moles\n" for w in waters) + "END\n"
print("index", best(lambda: phreeqc.ip.run_string(index)))
theirs = [line[-1] for line in phreeqc.ip.get_selected_output_array()[1:]]
apart = max(abs(a - float(row["si_calcite"])) for a, row in zip(theirs, rows))
print("apart", apart)
print("treatment", best(lambda: phreeqc.ip.run_string(acid)))
print("single", best(by_calls))
