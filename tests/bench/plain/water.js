// How acid is a water, and does it dissolve calcite or lay it down? `chem`'s model, equation by equation.
//
// Sources, domains and reasons stand in `crates/chem`. What has no answer is `{ fault }`, as there.

export const CALCIUM_CARBONATE = 100.0869;
export const CYANURIC_ACID = 129.0746;
const SODIUM_CHLORIDE = 58.4428;
const BORON = 10.81;
const SULFATE = 96.06;

/** What the model was checked for. */
export const MODEL = {
  temperature: [0, 42],
  ph: [6.5, 8.6],
  alkalinity: [20, 300],
  hardness: [0, 1200],
  cyanurate: [0, 300],
  salt: [0, 8000],
  boron: [0, 100],
  magnesium: [0, 300],
  sulfate: [0, 500],
};

export const isWithin = (x, [low, high]) => x >= low && x <= high;
const clamp = (x, low, high) => Math.min(Math.max(x, low), high);
const pow10 = (x) => Math.exp(Math.LN10 * x);

/** A power of ten next to 1. */
function pow10OfStep(x) {
  const y = Math.LN10 * x;
  if (Math.abs(y) >= 0.02) return Math.exp(y);
  return 1 + y * (1 + y * (1 / 2 + y * (1 / 6 + y * (1 / 24 + y * (1 / 120)))));
}

/** Kilograms of water in a litre. */
function waterContent(celsius, mgPerL) {
  const t = celsius;
  const s = mgPerL / 1000;
  const top =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  const pure = top / (1 + 16.87985e-3 * t);
  const lost = s * (2.25404e-4 + 3.24515e-6 * t - 3.61402e-8 * t * t + 4.78726e-6 * Math.sqrt(s));
  return (pure / 1000) * (1 - lost);
}

/** Thermodynamic constants at one temperature, log10. */
function constantsAt(celsius) {
  const c = celsius;
  const k = c + 273.15;
  const l = Math.log10(k);
  const r = 1 / k;
  const vanTHoff = (logK, kcal) => logK - ((kcal * 4184) / (Math.LN10 * 8.314463)) * (r - 1 / 298.15);
  const protonated = 107.8871 + 0.03252849 * k - 5151.79 * r - 38.92561 * l + 563713.9 * r * r;
  const twice = 464.1965 + 0.09344813 * k - 26986.16 * r - 165.75951 * l + 2248628.9 * r * r;
  return {
    log: {
      carbonic: protonated - twice,
      bicarbonate: -protonated,
      water: 293.29227 + 0.1360833 * k - 10576.913 * r - 123.73158 * l - 6.996455e-5 * k * k,
      boric: vanTHoff(-9.24, 3.224),
      cyanuric: -1743 * r - 1.12,
      hypochlorous: 10.0686 - 0.0253 * k - 3000 * r,
      caCo3: -1228.732 - 0.29944 * k + 35512.75 * r + 485.818 * l,
      caHco3: 1317.0071 + 0.34546894 * k - 39916.84 * r - 517.70761 * l + 563713.9 * r * r - protonated,
      caSo4: vanTHoff(2.25, 1.325),
      caOh: -12.78,
      naCo3: vanTHoff(1.27, 8.91),
      naHco3: vanTHoff(-0.25, -1),
      naSo4: vanTHoff(0.7, 1.12),
      mgCo3: 0.991 + 0.00667 * k,
      mgHco3: 48.6721 + 0.03252849 * k - 2614.335 * r - 18.00263 * l + 563713.9 * r * r - protonated,
      mgSo4: vanTHoff(2.37, 4.55),
      mgOh: vanTHoff(-11.44, 15.952),
      hydrogen: 0,
    },
    henry: 10.5624 - 2.3547e-2 * k - 3972.8 * r + 5.8746e5 * r * r + 1.9194e-5 * k * k,
    calcite: -171.9065 - 0.077993 * k + 2839.319 * r + 71.595 * l,
    debyeA: 0.490834 + c * (6.59751802e-4 + c * (4.32740684e-6 - c * 5.03923e-10)),
    debyeB: 0.324623 + c * (1.51388956e-4 + c * (7.18398e-8 + c * 2.45836e-9)),
  };
}

/** log10 activity coefficients at an ionic strength, and what they add to each constant. */
function activitiesAt({ debyeA, debyeB }, strength) {
  const root = Math.sqrt(strength);
  const sized = (z2, a, b) => (-debyeA * z2 * root) / (1 + debyeB * a * root) + b * strength;
  const davies = -debyeA * (root / (1 + root) - 0.3 * strength);
  const neutral = 0.1 * strength;
  const hco3 = sized(1, 5.4, 0);
  const co3 = 4 * hco3;
  const naSo4 = hco3;
  const so4 = sized(4, 5, -0.04);
  const ca = sized(4, 5, 0.165);
  const mg = sized(4, 5.5, 0.2);
  const na = sized(1, 4.08, 0.082);
  const shift = {
    carbonic: neutral - hco3,
    bicarbonate: hco3 - co3,
    water: -sized(1, 3.5, 0),
    boric: neutral - davies,
    cyanuric: neutral - davies,
    hypochlorous: neutral - davies,
    caCo3: ca + co3 - neutral,
    caHco3: ca + hco3 - sized(1, 6, 0),
    caSo4: ca + so4 - neutral,
    caOh: ca - davies,
    naCo3: na + co3 - davies,
    naHco3: na + hco3 - neutral,
    naSo4: na + so4 - naSo4,
    mgCo3: mg + co3 - neutral,
    mgHco3: mg + hco3 - sized(1, 4, 0),
    mgSo4: mg + so4 - neutral,
    mgOh: mg - sized(1, 6.5, 0),
    hydrogen: -sized(1, 9, 0),
  };
  return { ca, co3, neutral, shift };
}

/** Reaction by reaction, `f` of one number and of the other's. */
function combined(a, b, f) {
  return {
    carbonic: f(a.carbonic, b.carbonic),
    bicarbonate: f(a.bicarbonate, b.bicarbonate),
    water: f(a.water, b.water),
    boric: f(a.boric, b.boric),
    cyanuric: f(a.cyanuric, b.cyanuric),
    hypochlorous: f(a.hypochlorous, b.hypochlorous),
    caCo3: f(a.caCo3, b.caCo3),
    caHco3: f(a.caHco3, b.caHco3),
    caSo4: f(a.caSo4, b.caSo4),
    caOh: f(a.caOh, b.caOh),
    naCo3: f(a.naCo3, b.naCo3),
    naHco3: f(a.naHco3, b.naHco3),
    naSo4: f(a.naSo4, b.naSo4),
    mgCo3: f(a.mgCo3, b.mgCo3),
    mgHco3: f(a.mgHco3, b.mgHco3),
    mgSo4: f(a.mgSo4, b.mgSo4),
    mgOh: f(a.mgOh, b.mgOh),
    hydrogen: f(a.hydrogen, b.hydrogen),
  };
}

/** Bound to cyanuric acid, chlorine titrates as the cyanurate that it replaces. */
const unbound = ({ cyanurate, chlorine }) => (cyanurate > 0 ? 0 : chlorine);

/** The logarithms, with those of reactions that lack a part brought down to that of nothing. */
function logsOfWhatIsThere(log, ions) {
  const only = (there, logK) => (there ? logK : -Infinity);
  const { calcium, magnesium, sulfate } = ions;
  return {
    ...log,
    boric: only(ions.boron > 0, log.boric),
    cyanuric: only(ions.cyanurate > 0, log.cyanuric),
    hypochlorous: only(unbound(ions) > 0, log.hypochlorous),
    caCo3: only(calcium > 0, log.caCo3),
    caHco3: only(calcium > 0, log.caHco3),
    caSo4: only(calcium > 0 && sulfate > 0, log.caSo4),
    caOh: only(calcium > 0, log.caOh),
    naSo4: only(sulfate > 0, log.naSo4),
    mgCo3: only(magnesium > 0, log.mgCo3),
    mgHco3: only(magnesium > 0, log.mgHco3),
    mgSo4: only(magnesium > 0 && sulfate > 0, log.mgSo4),
    mgOh: only(magnesium > 0, log.mgOh),
  };
}

/** The constants in concentrations. */
function apparentAt(constants, ions, strength, waterActivity) {
  const log = activitiesAt(constants, strength);
  const there = logsOfWhatIsThere(constants.log, ions);
  const k = combined(there, log.shift, (logK, shift) => pow10(logK + shift));
  k.water *= waterActivity;
  k.carbonic *= waterActivity;
  return { strength, log, k };
}

/** The same at a strength nearby. */
function moved(before, constants, strength) {
  if (Math.abs(strength - before.strength) < 3e-8) return before;
  const log = activitiesAt(constants, strength);
  const step = combined(log.shift, before.log.shift, (now, then) => now - then);
  return { strength, log, k: combined(before.k, step, (k, x) => k * pow10OfStep(x)) };
}

/** Everything but carbonate that takes up acid at this pH, and its slope against pH · ln 10. */
function otherAlkalinity(k, ions, ca, mg, aH) {
  const chlorine = unbound(ions);
  const b = k.boric / (k.boric + aH);
  const c = k.cyanuric / (k.cyanuric + aH);
  const o = k.hypochlorous / (k.hypochlorous + aH);
  const hydroxide = k.water / aH;
  const metalOh = (k.mgOh * mg + k.caOh * ca) / aH;
  const hydrogen = aH * k.hydrogen;
  const charged = ions.boron * b + ions.cyanurate * c + chlorine * o + hydroxide;
  const slope =
    ions.boron * b * (1 - b) +
    ions.cyanurate * c * (1 - c) +
    chlorine * o * (1 - o) +
    hydroxide +
    metalOh +
    hydrogen;
  return { rest: charged + metalOh - hydrogen, slope, charged: charged + hydrogen };
}

/** Solves a water where either `known.ph` or `known.carbon` is given, and the other is sought. */
export function solve(ions, temperature, content, known) {
  const constants = constantsAt(temperature);
  const { alkalinity, calcium, magnesium, sodium, chloride, sulfate, cyanurate, boron, chlorine } = ions;
  const solutes =
    sodium + chloride + calcium + magnesium + sulfate + alkalinity + cyanurate + boron + chlorine;
  const waterActivity = 1 - 0.017 * solutes;
  if (!(waterActivity > 0)) return { fault: "no-solution" };

  const isFree = known.ph === undefined;
  let strength = (sodium + chloride + 4 * (calcium + magnesium + sulfate) + alkalinity) / 2;
  let [ca, na, mg, so4] = [calcium, sodium, magnesium, sulfate];
  let ph = isFree ? 7.5 : known.ph;
  let aH = pow10(-ph);
  let apparent = apparentAt(constants, ions, strength, waterActivity);
  let step = 0;
  let lastHco3 = 0;

  for (let sweep = 1; ; sweep++) {
    const { k } = apparent;
    const fh = 1 + k.caHco3 * ca + k.naHco3 * na + k.mgHco3 * mg;
    const fc = 1 + k.caCo3 * ca + k.naCo3 * na + k.mgCo3 * mg;

    for (let i = 0; isFree && i < 2; i++) {
      const r1 = k.carbonic / aH;
      const r2 = (r1 * k.bicarbonate) / aH;
      const once = r1 * fh + 2 * r2 * fc;
      const twice = r1 * fh + 4 * r2 * fc;
      const d = 1 + r1 * fh + r2 * fc;
      const co2 = known.carbon / d;
      const held = co2 * once;
      const other = otherAlkalinity(k, ions, ca, mg, aH);
      const slope = co2 * twice - (held * once) / d + other.slope;
      step = clamp((held + other.rest - alkalinity) / slope / Math.LN10, -1, 1);
      ph = clamp(ph - step, 2, 12.5);
      aH = pow10(-ph);
    }

    const { rest, charged } = otherAlkalinity(k, ions, ca, mg, aH);
    const ratio = k.bicarbonate / aH;
    let hco3;
    if (isFree) {
      hco3 = known.carbon / (aH / k.carbonic + fh + ratio * fc);
    } else {
      const held = alkalinity - rest;
      if (!(held > 0)) return { fault: "no-carbonate" };
      hco3 = held / (fh + 2 * ratio * fc);
    }
    const co3 = ratio * hco3;

    ca = calcium / (1 + k.caOh / aH + k.caHco3 * hco3 + k.caCo3 * co3 + k.caSo4 * so4);
    na = sodium / (1 + k.naHco3 * hco3 + k.naCo3 * co3 + k.naSo4 * so4);
    mg = magnesium / (1 + k.mgHco3 * hco3 + k.mgCo3 * co3 + k.mgSo4 * so4);
    so4 = sulfate / (1 + k.caSo4 * ca + k.naSo4 * na + k.mgSo4 * mg);
    const before = strength;
    strength =
      (na +
        chloride +
        hco3 * (1 + k.caHco3 * ca + k.mgHco3 * mg) +
        co3 * k.naCo3 * na +
        k.naSo4 * na * so4 +
        charged +
        4 * (ca + mg + so4 + co3)) /
      2;

    const isMoving =
      Math.abs(strength - before) > 1e-9 || Math.abs(hco3 - lastHco3) > 1e-7 * hco3 || Math.abs(step) > 1e-9;
    if (sweep < 24 && isMoving) {
      lastHco3 = hco3;
      apparent = moved(apparent, constants, strength);
      continue;
    }
    const co2 = (hco3 * aH) / k.carbonic;
    const isWhole = co2 > 0 && co3 > 0 && Number.isFinite(strength);
    if (!(Math.abs(step) < 1e-6) || !isWhole) return { fault: "no-solution" };
    const logCalcium = Math.log10(ca) + apparent.log.ca;
    const logCarbonate = Math.log10(co3) + apparent.log.co3;
    return {
      ph,
      index: ca > 0 ? logCalcium + logCarbonate - constants.calcite : null,
      strength,
      carbon: co2 + hco3 * fh + co3 * fc,
      carbonateAlkalinity: hco3 * (fh + 2 * ratio * fc) * content * CALCIUM_CARBONATE * 500,
      carbonDioxide: co2 * pow10(apparent.log.neutral - constants.henry),
      logCalcium,
      logCarbonate,
      logSolubility: constants.calcite,
    };
  }
}

/** What is conserved in a sample, mol per kg of water. */
function ionsOf(sample, content) {
  const molal = (mgPerL, molarMass) => mgPerL / (molarMass * content * 1000);
  const calcium = molal(sample.hardness, CALCIUM_CARBONATE);
  const magnesium = molal(sample.magnesium, CALCIUM_CARBONATE);
  const alkalinity = 2 * molal(sample.alkalinity, CALCIUM_CARBONATE);
  const sulfate = molal(sample.sulfate, SULFATE);
  const salt = molal(sample.salt, SODIUM_CHLORIDE);
  return {
    alkalinity,
    calcium,
    magnesium,
    sodium: salt + alkalinity + 2 * sulfate,
    chloride: salt + 2 * calcium + 2 * magnesium,
    sulfate,
    cyanurate: molal(sample.cyanurate, CYANURIC_ACID),
    boron: molal(sample.boron, BORON),
    chlorine: 0,
  };
}

/** pH, carbonate and index of a sample at its measured pH. */
export function stateOfSample(sample) {
  for (const name in MODEL) {
    if (!isWithin(sample[name], MODEL[name])) return { fault: "outside", name };
  }
  const content = waterContent(sample.temperature, sample.salt);
  return solve(ionsOf(sample, content), sample.temperature, content, { ph: sample.ph });
}

/** What is conserved in a sample, its carbon by the measured pH. */
export function waterOf(sample) {
  const state = stateOfSample(sample);
  if (state.fault) return state;
  const content = waterContent(sample.temperature, sample.salt);
  return { temperature: sample.temperature, content, ions: ionsOf(sample, content), carbon: state.carbon };
}

/** pH, carbonate and index of a water whose pH is free. */
export const stateOf = (water) =>
  solve(water.ions, water.temperature, water.content, { carbon: water.carbon });
