// Does the package, installed or bundled, give the figures it must?
import { answer, edition } from "saltwright";

const same = (is, must) => {
  if (JSON.stringify(is) !== JSON.stringify(must))
    throw new Error(`${JSON.stringify(is)} instead of ${JSON.stringify(must)}`);
};

const pool = {
  "pool.volume": "62.82", "pool.volume.unit": "m3", "pool.method": "taped",
  "salt.now": "400", "salt.now.unit": "[ppm]", "salt.method": "meter", "salt.target": "3200",
  "bag.size": "20", "bag.size.unit": "kg", "bag.purity": "99.4",
};
const { outputs, numbers, states, faults } = answer(pool);
// Mass balance by hand: 62.82 m3 · (3.2 - 0.4) kg/m3 = 175.896 kg; / 0.994 = 176.958 kg; / 20 kg = 8.85 bags.
same(outputs["basic.pure"], { text: "175.9", unit: "kg" });
same(outputs["basic.mass"], { text: "177", unit: "kg" });
same([numbers["basic.mass"].value.toFixed(3), numbers["basic.mass"].unit], ["176.958", "kg"]);
same(outputs["basic.bags"], { text: "8.85" });
same(outputs["buy.bags"], { text: "9" });
// Nothing was said of water and finish, and what is missing never passes.
same(states.filter((state) => state.startsWith("add.")), ["add.unknown"]);
same(faults, []);

// The same in the other signs.
const german = answer({ ...pool, "sign.decimal": ",", "pool.volume": "62,82", "bag.purity": "99,4" });
same(german.outputs["basic.pure"], { text: "175,9", unit: "kg" });

// All texts cross in one piece: one of odd letters, or at fault, moves none of those behind it.
const named = (text, more) => answer({ ...pool, ...more, "job.name": text });
const rest = (said) => ({ ...said, outputs: { ...said.outputs, "echo.job.name": null } });
for (const more of [{}, { "pool.volume": "😀ü€", "salt.target": "1e9" }]) {
  const plain = named("x", more);
  for (const text of ["😀ü€\ufeff!", "__proto__", "\u0000", "𝕏".repeat(99)]) {
    const odd = named(text, more);
    same(odd.outputs["echo.job.name"], { text });
    same(rest(odd), rest(plain));
  }
}
same(named("x", { "pool.volume": "😀ü€" }).faults.map(({ field, got }) => [field, got]), [["pool.volume", "😀ü€"]]);

// What is no text is refused: no figure may come of it.
let refused = false;
try {
  answer({ ...pool, "pool.volume": 62.82 });
} catch {
  refused = true;
}
same(refused, true);

same(edition(), { name: "saltwright", version: process.argv[2], contract: 1 });
