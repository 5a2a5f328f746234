// What is to be done now, and what is to be bought? `plan`'s `decide`, `stage`, `dosing`, `dilute`, `job` and `pays`.

import {
  METERS, OF_PURITY, OF_WATER, bagsExactly, bagsTo, beyond, eachTime, estimateOf, foresee, last, meanNeed, priorOf,
  saltAfter, volumeBefore, volumeOf,
} from "./estimate.js";
import { about, above, below, range, upperTail } from "./normal.js";
import { UNDISSOLVED, believe, counts, judge, meanOf } from "./visits.js";

const OF_VOLUME = {
  metered: { shift: 1, spread: 0.015 },
  drawing: { shift: 0.99, spread: 0.04 },
  taped: { shift: 0.98, spread: 0.05 },
  offsets: { shift: 0.98, spread: 0.07 },
  rule: { shift: 0.97, spread: 0.1 },
  remembered: { shift: 0.95, spread: 0.17 },
};
const UNREAD = {
  fresh: { mean: 300, spread: 300 },
  older: { mean: 1000, spread: 800 },
  salted: { mean: 3000, spread: 1500 },
  unknown: { mean: 800, spread: 1200 },
};
export const LEVELS = { over: 0.01, low: 0.25, cap: 0.7, enough: 0.75, slack: 50, drained: 0.1 };
const PART_OF_BAG = [1, 0.5];
const WEIGH_BELOW_BAGS = 2;
const WEIGH_FINELY_BELOW = 5;
const CAP_STILL_HOLDS = 0.5;
const FAR_OFF = 3;
const WEAK_RISE = 0.25;
const REPLACED_SPREAD = 0.03;
const EXAMPLE_TARGET = 3200;
const BAND_HALF_WIDTH = 400;
const MOST_SALT = 40000;
const MOST_MASS = 2000000;

/** The generator's limits, what was not typed filled in; null where they contradict each other. */
export function bandOf(low, target, high) {
  const aim = target ?? EXAMPLE_TARGET;
  const band = {
    low: low ?? Math.max(aim - BAND_HALF_WIDTH, aim / 2),
    target: aim,
    high: high ?? Math.min(aim + BAND_HALF_WIDTH, MOST_SALT),
  };
  return band.low < aim && aim < band.high ? band : null;
}

/** All that is wrong with a job and its course. */
function faultsOf(job, { visits, putIn }) {
  const isIn = (x, low, high) => x >= low && x <= high;
  const isSalt = (x) => isIn(x, 0, MOST_SALT);
  const isMass = (x) => isIn(x, 0, MOST_MASS);
  const isPart = (x) => x > 0 && x < 1;
  const { low, target, high } = job.band;
  const { levels } = job;
  const checks = {
    volume: isIn(job.volume, 0.2, 20000),
    bag: isIn(job.bag, 0.1, 2000),
    purity: isIn(job.purity, 0.5, 1),
    band: 0 < low && low < target && target < high && isSalt(high),
    reading: visits.every(({ reading }) => isSalt(reading.salt) && isSalt(reading.again ?? 0)),
    dose: isMass(putIn) && visits.every((visit) => isMass(visit.putIn) && isMass(visit.latest)),
    doubt: isIn(job.doubt ?? 0, 0, 1),
    fill: isSalt(job.fill ?? 0),
    levels:
      [levels.over, levels.low, levels.drained, levels.enough].every(isPart) &&
      levels.over <= 0.5 &&
      (isPart(levels.cap) || levels.cap === 1) &&
      isIn(levels.slack, 0, 1000),
    handled: (job.weighedIn ?? job.parts).every((step) => isIn(step, 1e-6, MOST_MASS)),
  };
  return Object.keys(checks).filter((name) => !checks[name]);
}

function doubtOf(job) {
  const usual = OF_VOLUME[job.method];
  return { ...usual, spread: job.doubt ?? usual.spread };
}

const pureBag = (job) => 1000 * job.bag * job.purity;
const priorFor = (job, doubt = doubtOf(job)) => priorOf(job.volume, doubt, pureBag(job));

/** Bags to the target by the volume as stated. */
const plainBags = (job, from) => (Math.max(job.band.target - from, 0) * job.volume) / pureBag(job);

/** Judges all readings, once nothing is wrong with the job. */
function judged(job, course) {
  const faults = faultsOf(job, course);
  if (faults.length > 0) return { faults };
  return judge(course, priorFor(job), job.bag, UNREAD[job.history]) ?? { faults: ["instruments"] };
}

/** Why nothing is decided from a reading. */
function refusal({ fate, side }) {
  if (fate === "counts") return null;
  if (fate === "early") return "wait-longer";
  if (fate === "differs") return "repeat-differs";
  return side === "low" ? "reads-too-low" : "reads-too-high";
}

/** Decides at the last reading of a course. */
export function decide(job, course) {
  const all = judged(job, course);
  if (all.faults) return all;
  const { visits, evidence } = all;
  const at = visits.length - 1;
  const latest = visits.at(-1);
  const refused = latest ? refusal(latest) : "need-baseline";
  const begun = visits.find(counts);
  let first = begun;
  if (!begun && refused === "repeat-differs") {
    believe(all, at);
    first = latest;
  }
  const decision = {
    code: refused ?? "volume-implausible",
    plain: plainBags(job, first ? meanOf(first.reading).mean : UNREAD[job.history].mean),
    visits,
    stated: volumeBefore(priorFor(job)),
    dosing: dosingOf(job, visits),
  };
  if (latest && !refused) return { ...decision, ...byReading(at, job, course, all, decision.plain) };
  if (begun) return decision;
  const estimate = estimateOf(priorFor(job), evidence);
  return { ...decision, guess: knownOf(job, estimate), buy: buyFor(job, estimate, null) };
}

function knownOf(job, estimate) {
  const salt = about(saltAfter(estimate, 0));
  return { estimate, volume: volumeOf(estimate), salt, need: meanNeed(estimate, job.band.target) };
}

/** What follows from the reading at `at`, which counts. */
function byReading(at, job, course, { visits, evidence, pair }, plain) {
  const prior = priorFor(job);
  const estimate = estimateOf(prior, evidence);
  if (pair && beyond(estimate, prior, FAR_OFF) > 0.5) return {};
  const known = knownOf(job, estimate);
  const after = course.after / job.bag;
  const before = course.putIn / job.bag - after;
  const isOpening = !visits.slice(0, at).some(counts);
  const { cap } = job.levels;
  let room = null;
  if (cap !== 1) {
    if (pair) room = cap * known.need;
    else if (isOpening || before < CAP_STILL_HOLDS * cap * plain) room = cap * plain - before;
  }
  const stage = wholeOrWeighed(job, estimate, plain, isOpening, room);
  const code = codeOf(job, stage, pair);
  return {
    code,
    known,
    stage,
    expect: expectedAfter(evidence, estimate, at, Math.max(stage.part ?? stage.bags, after)),
    buy: buyFor(job, estimate, { code, bags: stage.bags }),
    sums: sumsOf(job, visits),
    dilution: code === "too-salty" ? dilutionOf(job, known.salt) : null,
  };
}

function wholeOrWeighed(job, estimate, plain, isOpening, room) {
  const parts = job.weighedIn ? PART_OF_BAG : job.parts;
  const inBags = stageOf(job, estimate, parts[isOpening ? 0 : 1], false, room);
  if (job.weighedIn && plain < WEIGH_BELOW_BAGS && codeOf(job, inBags, false) !== "stop-in-band") {
    const isFine = plain * job.bag < WEIGH_FINELY_BELOW;
    return stageOf(job, estimate, job.weighedIn[isFine ? 0 : 1] / job.bag, true, room);
  }
  return inBags;
}

const unitsIn = (bags, unit) => Math.floor(Math.max(bags, 0) / unit + 1e-9);

/** How many bags now: the most that hardly passes the high limit, no more than is needed, and within the cap. */
function stageOf(job, estimate, unit, weighed, room) {
  const need = meanNeed(estimate, job.band.target);
  const over = (bags) => above(saltAfter(estimate, bags), job.band.high);
  const low = (bags) => below(saltAfter(estimate, bags), job.band.low);
  const limits = (unit) => {
    const wanted = unitsIn(need, unit);
    return [last(wanted, (n) => over(n * unit) <= job.levels.over), wanted];
  };
  const [allowed, wanted] = limits(unit);
  const most = room === null ? Infinity : Math.max(unitsIn(room, unit), 1);
  let [n, bound] = allowed < wanted ? [allowed, "risk"] : [wanted, "need"];
  if (allowed <= 0) [n, bound] = [0, "risk"];
  else if (most < n) [n, bound] = [most, "cap"];
  else if (n < allowed && low(n * unit) > job.levels.low) [n, bound] = [n + 1, "low"];
  const stage = {
    bags: n * unit,
    unit,
    weighed,
    bound,
    allowed: allowed >= 0 ? allowed * unit : null,
    wanted: wanted * unit,
    room,
    overNow: over(0),
    over: over(n * unit),
    low: low(n * unit),
    part: null,
  };
  if (n === 0 && stage.low > job.levels.low) {
    const part = Math.max(Math.min(...limits(0.01)), 0) * 0.01;
    if (part > 0) stage.part = part;
  }
  return stage;
}

function codeOf(job, stage, pair) {
  const isEnough = stage.low <= job.levels.low;
  if (stage.overNow > 0.5) return "too-salty";
  if (stage.bags > 0) return isEnough && stage.bound !== "cap" && !pair ? "add-and-finish" : "add-and-retest";
  if (isEnough) return stage.overNow <= job.levels.over ? "stop-in-band" : "stop-near-high";
  return stage.part === null ? "no-more" : "bag-too-coarse";
}

function buyFor(job, estimate, stage) {
  const { target } = job.band;
  const none = ["too-salty", "stop-in-band", "stop-near-high", "no-more"];
  let bags;
  if (none.includes(stage?.code)) bags = 0;
  else if (stage?.code === "add-and-finish") bags = Math.ceil(stage.bags - 1e-9);
  else bags = bagsTo(estimate, target - job.levels.slack, job.levels.enough);
  return {
    bags,
    range: [0.05, 0.95].map((sure) => bagsTo(estimate, target, sure)),
    more: Math.max(bags - job.inHand, 0),
    sealed: stage && Math.floor(Math.max(bags - stage.bags, 0) + 1e-9),
  };
}

/** What the instrument of the visit at `at` will read a day after these bags. */
function expectedAfter(evidence, estimate, at, bags) {
  if (!(bags > 0)) return null;
  const { meter } = evidence.steps[at];
  const undissolved = UNDISSOLVED.day;
  const step = { putIn: bags, latest: bags, undissolved, gap: true, counts: false, meter, reads: [0] };
  const reading = foresee(estimate, { ...evidence, steps: [...evidence.steps, step] }, step);
  return { mean: about(reading).mean, range: range(reading) };
}

/** The volume that the first dose between two readings tells of. */
function dosingOf(job, visits) {
  let before = null;
  let putIn = 0;
  for (const { reading, since, fate, putIn: more } of visits) {
    putIn += more;
    if (fate === "early") continue;
    if (before && putIn > 0) {
      const part = UNDISSOLVED[since];
      const dissolved = 1000 * putIn * job.purity * (1 - part.mean);
      return told(dissolved, part.spread / (1 - part.mean), before, reading);
    }
    [before, putIn] = [reading, 0];
  }
  return null;
}

function told(dissolved, undissolved, before, after) {
  const own = (reading) => {
    const meter = METERS[reading.instrument];
    const { mean, taken } = meanOf(reading);
    return { meter, mean, own: eachTime(meter, mean) / taken };
  };
  const [a, b] = [own(before), own(after)];
  const rise = b.mean - a.mean;
  if (rise <= 1e-9) return { rose: false };
  const shared = ({ meter, mean }) => meter.offset ** 2 + (meter.gain * mean) ** 2;
  const isSame = before.instrument === after.instrument;
  const meters = isSame ? (a.meter.gain * rise) ** 2 : shared(a) + shared(b);
  const salt = (OF_PURITY ** 2 + undissolved ** 2) * rise ** 2;
  const sigma = Math.sqrt(a.own + b.own + (OF_WATER * b.mean) ** 2 + salt + meters);
  const mean = dissolved / rise;
  return {
    rose: true,
    isWeak: sigma > WEAK_RISE * rise,
    volume: { mean, spread: (mean * sigma) / rise },
    low: dissolved / (rise + 1.96 * sigma),
    high: rise > 1.96 * sigma ? dissolved / (rise - 1.96 * sigma) : null,
  };
}

/** The simple sums at the last reading; nothing at the first. */
function sumsOf(job, visits) {
  const [first, ...later] = visits.slice(visits.findIndex(counts));
  if (later.length === 0) return null;
  const from = meanOf(first.reading).mean;
  const now = meanOf(later.at(-1).reading).mean;
  const putIn = later.reduce((all, visit) => all + visit.putIn, 0);
  const missing = Math.max(job.band.target - now, 0);
  return {
    byVolume: (job.volume * missing) / 1000 / job.purity,
    byProportion: now > from && putIn > 0 ? putIn * (missing / (now - from)) : null,
  };
}

/** Water to replace where the salt is so much, part of the pool. */
function dilutionOf({ band, fill, levels }, salt) {
  if (!(fill < band.target) || !(salt.mean > fill)) return null;
  const excess = salt.mean - fill;
  const to = (then) => Math.min(Math.max((salt.mean - then) / excess, 0), 1);
  const isTooOften = (share) => {
    const stirred = Math.hypot((1 - share) * salt.spread, REPLACED_SPREAD * excess);
    return upperTail((band.high - (salt.mean - share * excess)) / stirred) > levels.drained;
  };
  let share = to(band.target);
  if (isTooOften(share) && !isTooOften(1)) {
    let [little, enough] = [share, 1];
    for (let i = 0; i < 60; i++) {
      const middle = 0.5 * (little + enough);
      if (isTooOften(middle)) little = middle;
      else enough = middle;
    }
    if (enough <= to(band.low)) share = enough;
  }
  return { share };
}

const withMean = (reads) => [...reads, reads.reduce((all, x) => all + x, 0) / reads.length];

/** How wide the range of need is, in bags, today and if a measurement were better. */
export function pays(job, course) {
  const all = judged(job, course);
  if (all.faults) return all;
  const at = all.visits.length - 1;
  if (at < 0 || !counts(all.visits[at])) return null;
  const { target } = job.band;
  const width = (prior, evidence) => {
    const estimate = estimateOf(prior, evidence);
    return bagsExactly(estimate, target, 0.95) - bagsExactly(estimate, target, 0.05);
  };
  const today = all.evidence;
  const doubt = doubtOf(job);
  const again = today.steps.map((step, i) => (i === at ? { ...step, reads: withMean(step.reads) } : step));
  return {
    today: width(priorFor(job), today),
    volume: width(priorFor(job, { ...doubt, spread: doubt.spread / 2 }), today),
    lab: width(priorFor(job), { ...today, meters: today.meters.map(() => METERS.lab) }),
    again: width(priorFor(job), { ...today, steps: again }),
  };
}
