// How many nanoseconds does each take in this engine? Runs behind loader, module and waters, in Node or a page.
const made = Uint8Array.from(atob(MODULE), (c) => c.charCodeAt(0));
wasm_bindgen.initSync({ module: made });
const rows = WATERS.split("\n").filter((line) => line && !line.startsWith("#")).slice(1);
for (const row of rows) {
  const there = wasm_bindgen.push(...row.split(",").slice(0, 9).map(Number));
  if (rows[there - 1] !== row) throw new Error(`no water: ${row}`);
}
// Under which name it is told, and what it is called.
const ACTS = {
  index: "index",
  treatment: "treatment",
  recipe: "recipes",
  powers: "powers",
  decision: "decision",
  pays: "paying",
};

/** Nanoseconds of one round of the waters: the fastest of many, since what else the machine does only adds. */
function fastest(act) {
  const took = (turns) => {
    const start = performance.now();
    act(turns);
    return performance.now() - start;
  };
  let turns = 1;
  while (took(turns) < 10) turns *= 2;
  let best = Infinity;
  const end = performance.now() + 20_000;
  for (let i = 0; i < 50 && performance.now() < end; i++) best = Math.min(best, took(turns) / turns);
  return best * 1e6;
}

const lines = Object.entries(ACTS).map(([name, act]) => `${name} ${fastest(wasm_bindgen[act]) / rows.length}`);
if (typeof document === "undefined") console.log(lines.join("\n"));
else document.body.textContent = lines.join("\n");
