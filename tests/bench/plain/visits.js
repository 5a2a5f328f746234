// What was put in and read, in order, and which readings can be believed? `plan`'s `course` and `odd`.

import { METERS, eachTime, estimateOf, foresee, strict } from "./estimate.js";
import { about } from "./normal.js";

const BEFORE_READING = { mean: 1500, spread: 3000 };
const NO_SALT = { mean: 0, spread: 1 };
const ODD = { low: 2, high: 3 };
const ODD_DOUBT = 0.1;
const REPEAT_APART = 3;
const MOST_METERS = 3;

/** The part of the latest dose that is not dissolved yet. */
export const UNDISSOLVED = {
  early: { mean: 0.15, spread: 0.15 },
  day: { mean: 0.05, spread: 0.05 },
  twoDays: { mean: 0.01, spread: 0.02 },
};

function sinceOf(minutes) {
  if (minutes < 1440) return "early";
  return minutes < 2880 ? "day" : "twoDays";
}

/** The course of a log: `{ when, dose }` or `{ when, reading }`, in any order. */
export function courseOf(baseline, log) {
  const first = baseline ? [{ when: baseline.when ?? -Infinity, reading: baseline.reading }] : [];
  const events = [...first, ...log].sort((a, b) => (a.when === b.when ? 0 : a.when - b.when));
  const visits = [];
  let after = 0;
  let putIn = 0;
  let latest = 0;
  let lastDose = null;
  for (const { when, dose, reading } of events) {
    if (dose) {
      after += dose;
      putIn += dose;
      lastDose = when;
      latest = after;
    } else if (reading && reading.instrument !== "assumed") {
      const since = lastDose === null || when === -Infinity ? "twoDays" : sinceOf(when - lastDose);
      visits.push({ putIn: after, latest, since, reading });
      after = 0;
    }
  }
  return { visits, after, putIn, lastDose };
}

/** Mean of a visit's readings, and how many there are. */
export const meanOf = ({ salt, again }) =>
  again === undefined ? { mean: salt, taken: 1 } : { mean: 0.5 * (salt + again), taken: 2 };

/** Can the two readings of a visit not both be right? */
function differs({ salt, again, instrument }) {
  if (again === undefined) return false;
  const apart = REPEAT_APART * Math.sqrt(2 * eachTime(METERS[instrument], 0.5 * (salt + again)));
  return Math.abs(salt - again) > apart;
}

export const counts = (visit) => visit.fate === "counts";

/** Judges the visits one after the other, each against what was known before it; null with a fourth instrument. */
export function judge(course, prior, bag, unread) {
  const instruments = [];
  const all = { visits: [], pair: false, evidence: { salt: unread, meters: [], steps: [] } };
  const { visits, evidence } = all;
  for (const visit of course.visits) {
    const isEarly = visit.since === "early";
    const { salt, again, instrument } = visit.reading;
    let meter = 0;
    if (!isEarly) {
      meter = instruments.indexOf(instrument);
      if (meter < 0) {
        if (instruments.length === MOST_METERS) return null;
        meter = instruments.push(instrument) - 1;
        evidence.meters.push(METERS[instrument]);
      }
    }
    const step = {
      putIn: visit.putIn / bag,
      latest: visit.latest / bag,
      undissolved: UNDISSOLVED[visit.since],
      gap: !isEarly && visits.some(counts),
      counts: false,
      meter,
      reads: again === undefined ? [salt] : [salt, again],
    };
    evidence.steps.push(step);
    visits.push(judgeOne(all, visit, step, prior));
    visits.forEach((judged, i) => (evidence.steps[i].counts = counts(judged)));
    if (visits.some(counts)) evidence.salt = BEFORE_READING;
  }
  if (!visits.some(counts) && course.after > 0) {
    const putIn = course.after / bag;
    const undissolved = { mean: 0, spread: 0 };
    evidence.steps.push({ putIn, latest: 0, undissolved, gap: false, counts: false, meter: 0, reads: [] });
  }
  return all;
}

/** Lets the readings of a visit count, whatever became of them. */
export function believe({ evidence }, at) {
  evidence.steps[at].counts = true;
  evidence.salt = BEFORE_READING;
}

function judgeOne(all, visit, step, prior) {
  all.pair = false;
  let judged = { fate: "counts" };
  let z = null;
  if (visit.since === "early") {
    judged = { fate: "early" };
  } else {
    if (all.visits.some(counts)) {
      z = surprise(all.evidence, step, prior);
      judged = weigh(all, z, visit.reading.instrument);
    } else if (visit.latest > 0) {
      const low = Math.min(surprise({ ...all.evidence, salt: NO_SALT }, step, prior), 0);
      judged = weigh(all, low, visit.reading.instrument);
    }
    if (differs(visit.reading)) judged = { fate: "differs" };
  }
  if (judged.fate === "counts") {
    for (const earlier of all.visits) {
      if (earlier.fate === "aside") earlier.fate = all.pair ? "counts" : "out";
    }
  } else {
    all.pair = false;
  }
  return { ...visit, ...judged, z };
}

/** How many of its own spreads a reading stands above what was expected of it. */
function surprise(evidence, step, prior) {
  const before = estimateOf(strict(prior, ODD_DOUBT), evidence);
  const expected = about(foresee(before, evidence, step));
  const mean = step.reads.reduce((all, x) => all + x, 0) / step.reads.length;
  return (mean - expected.mean) / expected.spread;
}

/** Odd or not; and if odd, does one that waits make a pair with it? */
function weigh(all, z, instrument) {
  if (z >= -ODD.low && z <= ODD.high) return { fate: "counts" };
  const side = z < -ODD.low ? "low" : "high";
  all.pair = all.visits.some(
    (other) =>
      other.fate === "aside" &&
      (other.reading.instrument !== instrument || (side === "high" && other.side === "high")),
  );
  return all.pair ? { fate: "counts" } : { fate: "aside", side };
}
