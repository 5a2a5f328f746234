// How much water and how much salt, and how sure is that? `plan`'s filter over 49 volumes.
//
// Reasons and sources stand in `crates/plan`, `filter.rs` and `estimate.rs`.

import { about, above, sum } from "./normal.js";

const NODES = 49;
export const OF_PURITY = 0.006;
export const OF_WATER = 0.006;
const BLUNDERS = 0.05;

/** How far a reading may be off, by instrument. */
export const METERS = {
  strip: { gain: 0.06, offset: 60, each: 60, part: 0.06, step: 100 },
  drops: { gain: 0.03, offset: 30, each: 30, part: 0.02, step: 200 },
  meter: { gain: 0.03, offset: 60, each: 15, part: 0.01, step: 10 },
  "meter-uncalibrated": { gain: 0.08, offset: 100, each: 25, part: 0.02, step: 10 },
  photometer: { gain: 0.05, offset: 50, each: 30, part: 0.04, step: 10 },
  display: { gain: 0.08, offset: 100, each: 40, part: 0.04, step: 100 },
  lab: { gain: 0.015, offset: 15, each: 10, part: 0.01, step: 10 },
};

/** Variance of what a reading has of its own. */
export function eachTime(meter, salt) {
  const part = meter.part * Math.max(salt, 0);
  return meter.each ** 2 + part ** 2 + meter.step ** 2 / 12;
}

/** What is known of the volume before any reading. */
export function priorOf(stated, { shift, spread }, bag) {
  const narrow = Math.sqrt(Math.log1p(spread ** 2) + OF_PURITY ** 2);
  return { bag, volume: shift * stated, narrow, wide: Math.max(3 * narrow, 0.15), blunders: BLUNDERS };
}

/** The same without blunders, and with a doubt of at most `most`. */
export function strict(prior, most) {
  const narrow = Math.min(prior.narrow, most);
  return { ...prior, narrow, wide: 3 * narrow, blunders: 0 };
}

export function volumeBefore({ volume, narrow, wide, blunders }) {
  const moment = (k) => {
    const of = (s) => Math.exp((k * k * s * s) / 2);
    return (1 - blunders) * of(narrow) + blunders * of(wide);
  };
  const mean = moment(1);
  return { mean: volume * mean, spread: volume * Math.sqrt(Math.max(moment(2) - mean * mean, 0)) };
}

const riseAt = ({ bag, volume }, w) => (bag / volume) * Math.exp(-w);

function logDensity({ narrow, wide, blunders }, w) {
  const of = (s) => Math.exp((-0.5 * w * w) / (s * s)) / s;
  return Math.log((1 - blunders) * of(narrow) + blunders * of(wide));
}

/** Salt, then offset and gain of each instrument, with their covariances. */
function filterOf({ salt, meters }) {
  const spreads = [salt.spread, ...meters.flatMap((meter) => [meter.offset, meter.gain])];
  return {
    mean: [salt.mean, ...spreads.slice(1).map(() => 0)],
    cov: spreads.map((spread, i) => spreads.map((_, j) => (i === j ? spread ** 2 : 0))),
    likely: 0,
  };
}

const copyOf = ({ mean, cov, likely }) => ({ mean: [...mean], cov: cov.map((row) => [...row]), likely });

/** The filter after these steps, where a bag raises the salt by `rise`. */
function after(start, steps, meters, rise) {
  const filter = copyOf(start);
  for (const step of steps) {
    filter.mean[0] += step.putIn * rise;
    if (step.gap) filter.cov[0][0] += (OF_WATER * Math.max(filter.mean[0], 0)) ** 2;
    if (step.counts) {
      for (const reading of step.reads) takeIn(filter, reading, step, meters[step.meter], rise);
    }
  }
  return filter;
}

/** A reading as it looks from the state `at`. */
function seenFrom({ cov }, at, step, meter, rise, each) {
  const offset = 1 + 2 * step.meter;
  const gain = offset + 1;
  const heap = step.latest * rise;
  const dissolved = at[0] - step.undissolved.mean * heap;
  const slope = 1 + at[gain];
  const along = at.map((_, i) => slope * cov[0][i] + cov[offset][i] + dissolved * cov[gain][i]);
  const doubt = slope * step.undissolved.spread * heap;
  const own = eachTime(meter, dissolved) * each + doubt ** 2;
  const variance = own + slope * along[0] + along[offset] + dissolved * along[gain];
  return { mean: slope * dissolved + at[offset], variance, slope, dissolved, along };
}

/** Takes a reading in, made straight three times. */
function takeIn(filter, reading, step, meter, rise) {
  const { mean } = filter;
  const offset = 1 + 2 * step.meter;
  const gain = offset + 1;
  let at = mean;
  let seen = seenFrom(filter, at, step, meter, rise, 1);
  let off = reading - seen.mean;
  for (const again of [true, true, false]) {
    const moved = off / seen.variance;
    at = mean.map((x, i) => x + seen.along[i] * moved);
    if (again) {
      seen = seenFrom(filter, at, step, meter, rise, 1);
      const [salt, o, g] = [0, offset, gain].map((i) => mean[i] - at[i]);
      off = reading - seen.mean - (seen.slope * salt + o + seen.dissolved * g);
    }
  }
  filter.mean = at;
  filter.cov = filter.cov.map((row, i) => {
    const part = seen.along[i] / seen.variance;
    return row.map((cell, j) => cell - part * seen.along[j]);
  });
  filter.likely -= 0.5 * ((off * off) / seen.variance + Math.log(seen.variance));
}

/** The steps before the first dose, in which the volume has no say, and the others. */
function aroundFirstDose({ steps }) {
  const first = steps.findIndex((step) => step.putIn > 0);
  return first < 0 ? [steps, []] : [steps.slice(0, first), steps.slice(first)];
}

/** What the evidence makes of the prior: volumes with their weights, and the salt at each. */
export function estimateOf(prior, evidence) {
  const [before, later] = aroundFirstDose(evidence);
  const start = after(filterOf(evidence), before, evidence.meters, 0);
  const end = 4 * prior.wide;
  let [low, high] = [-end, end];
  let nodes;
  for (let pass = 0; pass < 3; pass++) {
    const apart = (high - low) / (NODES - 1);
    nodes = Array.from({ length: NODES }, (_, i) => {
      const w = low + apart * i;
      const rise = riseAt(prior, w);
      const found = after(start, later, evidence.meters, rise);
      const log = found.likely + logDensity(prior, w);
      const spread = Math.sqrt(Math.max(found.cov[0][0], 1e-6));
      return { w, log, weight: 0, rise, salt: found.mean[0], spread };
    });
    const most = Math.max(...nodes.map((node) => node.log));
    for (const node of nodes) node.weight = Math.exp(node.log - most);
    nodes[0].weight *= 0.5;
    nodes[NODES - 1].weight *= 0.5;
    const all = sum(nodes, (node) => node.weight);
    for (const node of nodes) node.weight /= all;
    const { mean, spread } = about(nodes.map(({ weight, w }) => ({ weight, mean: w, spread: 0 })));
    const reach = 8 * Math.max(spread, apart);
    [low, high] = [Math.max(mean - reach, -end), Math.min(mean + reach, end)];
  }
  return { nodes, bag: prior.bag };
}

export const volumeOf = ({ nodes, bag }) =>
  about(nodes.map(({ weight, rise }) => ({ weight, mean: bag / rise, spread: 0 })));

/** How much weight lies farther from the prior's volume than so many spreads of a blunder. */
export function beyond({ nodes }, prior, spreads) {
  const isFar = ({ rise }) => Math.abs(Math.log(riseAt(prior, 0) / rise)) > spreads * prior.wide;
  return sum(nodes.filter(isFar), (node) => node.weight);
}

/** The salt after so many bags more. */
export const saltAfter = ({ nodes }, bags) =>
  nodes.map(({ weight, rise, salt, spread }) => ({ weight, mean: salt + bags * rise, spread }));

/** The reading to be expected at `step`, the last of the evidence. */
export function foresee({ nodes }, evidence, step) {
  const [before, later] = aroundFirstDose(evidence);
  const start = after(filterOf(evidence), before, evidence.meters, 0);
  const meter = evidence.meters[step.meter];
  return nodes.map(({ weight, rise }) => {
    const found = after(start, later, evidence.meters, rise);
    const seen = seenFrom(found, found.mean, step, meter, rise, 1 / step.reads.length);
    return { weight, mean: seen.mean, spread: Math.sqrt(seen.variance) };
  });
}

/** Bags to `salt`, on the average; below zero where it is above already. */
export const meanNeed = ({ nodes }, salt) => sum(nodes, (node) => (node.weight * (salt - node.salt)) / node.rise);

/** The fewest whole bags that bring the salt up to `salt` as likely as `sure`. */
export function bagsTo(estimate, salt, sure) {
  const isShort = (bags) => above(saltAfter(estimate, bags), salt) < sure;
  return last(Math.trunc(meanNeed(estimate, salt)), isShort) + 1;
}

/** The same to a thousandth; none below none. */
export function bagsExactly(estimate, salt, sure) {
  const most = bagsTo(estimate, salt, sure);
  let short = Math.max(most - 1, 0);
  let enough = Math.max(most, 0);
  for (let i = 0; i < 10; i++) {
    const middle = 0.5 * (short + enough);
    if (above(saltAfter(estimate, middle), salt) < sure) short = middle;
    else enough = middle;
  }
  return enough;
}

/** The largest count from 0 for which `holds`, sought from `near` with longer and longer strides; -1 for none. */
export function last(near, holds) {
  const most = 2 ** 40;
  const from = Math.min(Math.max(near, 0), most);
  let stride = 1;
  let low, high;
  if (holds(from)) {
    [low, high] = [from, from + stride];
    while (stride < most && holds(high)) {
      stride *= 2;
      [low, high] = [high, high + stride];
    }
  } else {
    [low, high] = [from - stride, from];
    while (low >= 0 && !holds(low)) {
      stride *= 2;
      [low, high] = [low - stride, low];
    }
    low = Math.max(low, -1);
  }
  while (high - low > 1) {
    const middle = low + Math.floor((high - low) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
