// What does a chemical do to a water, and which of them lead from this water to that?

import { CALCIUM_CARBONATE, CYANURIC_ACID, MODEL, isWithin, solve, stateOf } from "./water.js";

/** What a mole adds, in moles (alkalinity in equivalents). */
const CHANGES = {
  acid: { alkalinity: -1, chloride: 1 },
  bicarbonate: { alkalinity: 1, carbon: 1, sodium: 1 },
  carbonate: { alkalinity: 2, carbon: 1, sodium: 2 },
  calcium: { calcium: 1, chloride: 2 },
  cyanuric: { cyanurate: 1 },
};
const OPEN_AIR = 420e-6;

/** The water with so many mmol per litre of a chemical in it. */
export function treated(water, chemical, mmolPerL) {
  const molal = mmolPerL / 1000 / water.content;
  const { carbon = 0, ...changes } = CHANGES[chemical];
  const ions = { ...water.ions };
  for (const name in changes) ions[name] += changes[name] * molal;
  return { ...water, ions, carbon: water.carbon + carbon * molal };
}

/** The water with a whole recipe in it. */
function applied(recipe, water) {
  let there = water;
  for (const name of ["cyanuric", "calcium", "bicarbonate", "carbonate", "acid"]) {
    there = treated(there, name, recipe[name]);
  }
  return { ...there, carbon: there.carbon - recipe.stripped / 1000 / water.content };
}

/** Bicarbonate, carbonate, acid and stripped carbon dioxide for `x` of alkalinity and `y` of carbon. */
function split(x, y) {
  if (y >= 0 && x <= y) return { bicarbonate: y, carbonate: 0, acid: y - x, stripped: 0 };
  if (y >= 0 && x <= 2 * y) return { bicarbonate: 2 * y - x, carbonate: x - y, acid: 0, stripped: 0 };
  if (x >= 0) return { bicarbonate: 0, carbonate: x / 2, acid: 0, stripped: x / 2 - y };
  return { bicarbonate: 0, carbonate: 0, acid: -x, stripped: -y };
}

/** What to add, mmol per litre, and how much carbon dioxide to drive out. */
export function recipe(water, goal) {
  for (const name in goal) {
    if (!isWithin(goal[name], MODEL[name])) return { fault: "outside", name };
  }
  const litre = water.content;
  const calcium = goal.hardness / CALCIUM_CARBONATE - water.ions.calcium * litre * 1000;
  const cyanuric = goal.cyanurate / CYANURIC_ACID - water.ions.cyanurate * litre * 1000;
  if (!(calcium >= -1e-9)) return { fault: "hardness" };
  if (!(cyanuric >= -1e-9)) return { fault: "cyanurate" };

  const alkalinity = goal.alkalinity / CALCIUM_CARBONATE / litre / 500;
  const x = alkalinity - water.ions.alkalinity;
  let found = {
    bicarbonate: 0,
    carbonate: 0,
    acid: 0,
    calcium: Math.max(calcium, 0),
    cyanuric: Math.max(cyanuric, 0),
    stripped: 0,
  };
  for (let round = 0; round < 40; round++) {
    const ions = { ...applied(found, water).ions, alkalinity };
    const state = solve(ions, water.temperature, litre, { ph: goal.ph });
    if (state.fault) return state;
    const parts = split(x, state.carbon - water.carbon);
    if (parts.stripped > 0 && state.carbonDioxide < OPEN_AIR) return { fault: "below-air" };
    const before = found;
    found = { ...found };
    for (const name in parts) found[name] = parts[name] * litre * 1000;
    const moved =
      Math.abs(before.bicarbonate - found.bicarbonate) +
      Math.abs(before.carbonate - found.carbonate) +
      Math.abs(before.stripped - found.stripped);
    if (moved < 1e-9) break;
  }
  const there = stateOf(applied(found, water));
  if (there.fault) return there;
  return Math.abs(there.ph - goal.ph) < 1e-6 ? found : { fault: "out-of-reach" };
}
