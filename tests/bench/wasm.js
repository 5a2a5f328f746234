// How many nanoseconds does each take in this engine? Runs behind loader and module, in Node or a page.
const made = Uint8Array.from(atob(MODULE), (c) => c.charCodeAt(0));
wasm_bindgen.initSync({ module: made });
const lines = [];
for (const [name, act] of [
  ["index", wasm_bindgen.index],
  ["treatment", wasm_bindgen.treatment],
  ["recipe", wasm_bindgen.recipes],
  ["powers", wasm_bindgen.powers],
  ["decision", wasm_bindgen.decision],
  ["pays", wasm_bindgen.paying],
]) {
  const took = (turns) => {
    const start = performance.now();
    act(turns);
    return performance.now() - start;
  };
  let turns = 1;
  while (took(turns) < 10) turns *= 2;
  const best = Math.min(...Array.from({ length: 50 }, () => took(turns)));
  lines.push(`${name} ${(best * 1e6) / turns / wasm_bindgen.waters()}`);
}
if (typeof document === "undefined") console.log(lines.join("\n"));
else document.body.textContent = lines.join("\n");
