// What are one index, one treatment, one recipe, one decision in plain JavaScript? The names of `src/lib.rs`.

import { LEVELS, bandOf, decide, pays } from "./decide.js";
import { recipe, treated } from "./recipe.js";
import { courseOf } from "./visits.js";
import { stateOf, stateOfSample, waterOf } from "./water.js";

const samples = [];

export function push(temperature, ph, alkalinity, hardness, cyanurate, boron, salt, magnesium, sulfate) {
  return samples.push({ temperature, ph, alkalinity, hardness, cyanurate, salt, boron, magnesium, sulfate });
}

export const nothing = () => {};

/** So many times round the waters from one to another: the sum of one figure of each answer. */
function round(turns, from, to, figure, act) {
  const some = samples.slice(from, to);
  let all = 0;
  for (let turn = 0; turn < turns; turn++) {
    for (const sample of some) all += act(sample)?.[figure] ?? NaN;
  }
  return all;
}

export const index = (turns, from, to, figure) =>
  round(turns, from, to, figure, (sample) => {
    const state = stateOfSample(sample);
    return state.fault ? null : [state.index, state.strength, state.carbon];
  });

export const treatment = (turns, from, to, figure) =>
  round(turns, from, to, figure, (sample) => {
    const water = waterOf(sample);
    if (water.fault) return null;
    const state = stateOf(treated(water, "acid", 0.1));
    return state.fault ? null : [state.ph, state.index, state.carbonDioxide];
  });

export const recipes = (turns, from, to, figure) =>
  round(turns, from, to, figure, (sample) => {
    const water = waterOf(sample);
    if (water.fault) return null;
    const { fault, ...found } = recipe(water, {
      ph: 7.5,
      alkalinity: sample.alkalinity + 30,
      hardness: sample.hardness + 30,
      cyanurate: sample.cyanurate + 30,
    });
    if (fault) return null;
    return [found.bicarbonate, found.carbonate, found.acid, found.calcium, found.cyanuric, found.stripped];
  });

export const powers = (turns, from, to, figure) =>
  round(turns, from, to, figure, ({ ph }) => {
    let all = 0;
    for (let i = 0; i < 13; i++) all += Math.exp(-ph - i / 8);
    return [all];
  });

/** The demo's job with two stages in and three readings; `salt` stirs the last of them. */
function jobAndCourse(salt) {
  const job = {
    volume: 62.82,
    method: "taped",
    bag: 20,
    purity: 0.994,
    inHand: 0,
    band: bandOf(2800, 3200, 3600),
    history: "fresh",
    weighedIn: [0.05, 0.5],
    levels: LEVELS,
  };
  const read = (salt) => ({ salt, instrument: "meter" });
  const log = [
    { when: 0, dose: 120 },
    { when: 1440, reading: read(2320) },
    { when: 1500, dose: 30 },
    { when: 4400, reading: read(2850 + salt) },
  ];
  return [job, courseOf({ reading: read(400) }, log)];
}

const CODES = [
  "need-baseline", "repeat-differs", "wait-longer", "reads-too-low", "reads-too-high", "volume-implausible",
  "too-salty", "add-and-retest", "add-and-finish", "stop-in-band", "stop-near-high", "no-more", "bag-too-coarse",
];

export const decision = (turns, from, to, figure, stir) =>
  round(turns, from, to, figure, (sample) => {
    const found = decide(...jobAndCourse(sample.salt * stir));
    if (found.faults) return null;
    const { code, plain, stated, known, stage, expect, buy, dosing, sums } = found;
    return [
      CODES.indexOf(code), plain, stated.mean, stated.spread, known?.need, known?.volume.mean, known?.volume.spread,
      known?.salt.mean, known?.salt.spread, stage?.bags, stage?.allowed, stage?.wanted, stage?.room, stage?.overNow,
      stage?.over, stage?.low, stage?.part, expect?.mean, expect?.range[0], expect?.range[1], buy?.bags,
      buy?.range[0], buy?.range[1], buy?.more, buy?.sealed, dosing?.volume?.mean, dosing?.volume?.spread,
      dosing?.low, dosing?.high, sums?.byVolume, sums?.byProportion,
    ];
  });

export const paying = (turns, from, to, figure, stir) =>
  round(turns, from, to, figure, (sample) => {
    const found = pays(...jobAndCourse(sample.salt * stir));
    return found && [found.today, found.volume, found.lab, found.again];
  });
