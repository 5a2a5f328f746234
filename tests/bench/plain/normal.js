// How likely is a figure, where it may be one of many normal distributions?

/** The complementary error function, after FreeBSD's `s_erf.c`, as JavaScript itself has none. */
function erfc(x) {
  const a = Math.abs(x);
  if (a < 0.84375) {
    const y = polynomial(x * x, NEAR[0]) / polynomial(x * x, NEAR[1]);
    return x < 0.25 ? 1 - (x + x * y) : 0.5 - (x - 0.5 + x * y);
  }
  if (a >= 28) return x < 0 ? 2 : 0;
  const tail = a < 1.25 ? middle(a) : far(a);
  return x < 0 ? 2 - tail : tail;
}

function middle(a) {
  const s = a - 1;
  return 1 - 0.845062911510467529297 - polynomial(s, MIDDLE[0]) / polynomial(s, MIDDLE[1]);
}

function far(a) {
  const s = 1 / (a * a);
  const [p, q] = a < 1 / 0.35 ? FAR : FARTHEST;
  const z = Math.fround(a); // Short enough for its square to be exact.
  return (Math.exp(-z * z - 0.5625) * Math.exp((z - a) * (z + a) + polynomial(s, p) / polynomial(s, q))) / a;
}

/** Value of a polynomial, its constant first. */
function polynomial(x, coefficients) {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + coefficients[i];
  return value;
}

const NEAR = [
  [1.28379167095512558561e-1, -3.2504210724700149937e-1, -2.84817495755985104766e-2, -5.77027029648944159157e-3,
    -2.37630166566501626084e-5],
  [1, 3.97917223959155352819e-1, 6.50222499887672944485e-2, 5.08130628187576562776e-3, 1.32494738004321644526e-4,
    -3.9602282787753681232e-6],
];
const MIDDLE = [
  [-2.36211856075265944077e-3, 4.14856118683748331666e-1, -3.72207876035701323847e-1, 3.18346619901161753674e-1,
    -1.10894694282396677476e-1, 3.54783043256182359371e-2, -2.166375594868790843e-3],
  [1, 1.06420880400844228286e-1, 5.40397917702171048937e-1, 7.18286544141962662868e-2, 1.26171219808761642112e-1,
    1.36370839120290507362e-2, 1.19844998467991074170e-2],
];
const FAR = [
  [-9.86494403484714822705e-3, -6.93858572707181764372e-1, -1.05586262253232909814e1, -6.23753324503260060396e1,
    -1.62396669462573470355e2, -1.84605092906711035994e2, -8.12874355063065934246e1, -9.81432934416914548592],
  [1, 1.96512716674392571292e1, 1.3765775414351904260e2, 4.34565877475229228821e2, 6.45387271733267880336e2,
    4.29008140027567833386e2, 1.08635005541779435134e2, 6.57024977031928170135, -6.04244152148580987438e-2],
];
const FARTHEST = [
  [-9.86494292470009928597e-3, -7.99283237680523006574e-1, -1.77579549177547519889e1, -1.60636384855821916062e2,
    -6.37566443368389627722e2, -1.02509513161107724954e3, -4.83519191608651397019e2],
  [1, 3.03380607434824582924e1, 3.25792512996573918826e2, 1.53672958608443695994e3, 3.19985821950859553908e3,
    2.55305040643316442583e3, 4.74528541206955367215e2, -2.24409524465858183362e1],
];

/** How likely a normal figure stands more than `z` spreads above its mean. */
export const upperTail = (z) => 0.5 * erfc(z * Math.SQRT1_2);

export const sum = (list, f) => list.reduce((all, x) => all + f(x), 0);

/** Mean and spread of parts, each with `weight`, `mean` and `spread`. */
export function about(parts) {
  const mean = sum(parts, (part) => part.weight * part.mean);
  const variance = sum(parts, (part) => part.weight * (part.spread ** 2 + (part.mean - mean) ** 2));
  return { mean, spread: Math.sqrt(variance) };
}

/** How likely a mixture lies above a limit. */
export const above = (parts, limit) =>
  sum(parts, (part) => part.weight * upperTail((limit - part.mean) / part.spread));

/** How likely it lies below. */
export const below = (parts, limit) =>
  sum(parts, (part) => part.weight * upperTail((part.mean - limit) / part.spread));

/** Where it lies 9 times in 10. */
export function range(parts) {
  const { mean, spread } = about(parts);
  return [0.95, 0.05].map((sure) => {
    let low = mean - 4.36 * spread;
    let high = mean + 4.36 * spread;
    for (let i = 0; i < 11; i++) {
      const middle = 0.5 * (low + high);
      if (above(parts, middle) > sure) low = middle;
      else high = middle;
    }
    return 0.5 * (low + high);
  });
}
