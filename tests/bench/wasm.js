// How many nanoseconds does each take in this engine? Runs behind loader, module and waters, in Node or a page;
// behind the bundle of `plain` as well, it tells the same of that, and how far the two lie apart.
const made = Uint8Array.from(atob(MODULE), (c) => c.charCodeAt(0));
wasm_bindgen.initSync({ module: made });
const sides = [{ prefix: "", acts: wasm_bindgen }];
if (typeof plain !== "undefined") sides.push({ prefix: "plain.", acts: plain });
const rows = WATERS.split("\n").filter((line) => line && !line.startsWith("#")).slice(1);
for (const row of rows) {
  for (const { acts } of sides) {
    const there = acts.push(...row.split(",").slice(0, 9).map(Number));
    if (rows[there - 1] !== row) throw new Error(`no water: ${row}`);
  }
}
// Under which name it is told, what it is called, how many figures an answer has.
const NAMES = [
  ["index", "index", 3],
  ["treatment", "treatment", 3],
  ["recipe", "recipes", 6],
  ["powers", "powers", 1],
  ["decision", "decision", 31],
  ["pays", "paying", 4],
];
const STIR = 0.01;
const lines = [];

// Before any engine knows what is worth its while: once, so take it for no more than its size.
for (const { prefix, acts } of sides) {
  const start = performance.now();
  acts.decision(1, 0, 1, 0, STIR);
  lines.push(`${prefix}first ${(performance.now() - start) * 1e6}`);
}

/** How far the two lie apart, part of the larger: infinitely where only one of them has an answer. */
function apart(a, b) {
  if (a === b || (Number.isNaN(a) && Number.isNaN(b))) return 0;
  const part = Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
  return Number.isNaN(part) ? Infinity : part;
}

// Each figure of each answer, where the last reading is stirred little, much, and downwards.
for (const [name, act, figures] of sides.length === 2 ? NAMES : []) {
  const stirs = name === "decision" || name === "pays" ? [STIR, 0.3, -0.1] : [STIR];
  let farthest = 0;
  let answers = 0;
  for (const stir of stirs) {
    for (let water = 0; water < rows.length; water++) {
      for (let figure = 0; figure < figures; figure++) {
        const [ours, theirs] = sides.map(({ acts }) => acts[act](1, water, water + 1, figure, stir));
        farthest = Math.max(farthest, apart(ours, theirs));
        if (!Number.isNaN(ours)) answers += 1;
      }
    }
  }
  lines.push(`apart.${name} ${farthest}`, `answers.${name} ${answers}`);
}

/** Nanoseconds of each work once round the waters, turn about, so that what else the machine does weighs on all alike. */
function fastest(works) {
  const took = (work, turns) => {
    const start = performance.now();
    work(turns);
    return performance.now() - start;
  };
  const runs = works.map((work) => {
    let turns = 1;
    while (took(work, turns) < 10) turns *= 2;
    return { work, turns, best: Infinity };
  });
  const end = performance.now() + 20_000;
  for (let i = 0; i < 50 && performance.now() < end; i++) {
    for (const run of runs) run.best = Math.min(run.best, took(run.work, run.turns) / run.turns);
  }
  return runs.map(({ best }) => best * 1e6);
}

for (const [name, act] of NAMES) {
  const found = fastest(sides.map(({ acts }) => (turns) => acts[act](turns, 0, rows.length, 0, STIR)));
  found.forEach((ns, i) => lines.push(`${sides[i].prefix}${name} ${ns / rows.length}`));
}
const [thousand] = fastest([
  (turns) => {
    for (let i = turns * 1000; i > 0; i--) wasm_bindgen.nothing();
  },
]);
lines.push(`call ${thousand / 1000}`);
if (typeof document === "undefined") console.log(lines.join("\n"));
else document.body.textContent = lines.join("\n");
