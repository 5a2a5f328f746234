// How likely is a figure, where it may be one of many normal distributions?

/** The complementary error function, as JavaScript itself has none. */
function erfc(x) {
  const a = Math.abs(x);
  const t = 2 / (2 + a);
  const tail = Math.exp(-a * a) * t * chebyshev(2 * t - 1);
  return x < 0 ? 2 - tail : tail;
}

/** A sum of Chebyshev's polynomials, by Clenshaw's recurrence. */
function chebyshev(y) {
  let [one, two] = [0, 0];
  for (let i = TAIL.length - 1; i > 0; i--) [one, two] = [2 * y * one - two + TAIL[i], one];
  return y * one - two + TAIL[0] / 2;
}

/** Of `erfc(x) exp(x²) / t` over the whole of `t = 2 / (2 + x)`, in mpmath with 50 digits; the next is below 1e-15. */
const TAIL = [
  1.1540674772329393, 0.3554369212704985, 0.06509515882878653, 0.003671142395836639, -0.0011128447433526325,
  -0.0001607582991537808, 3.278031574173137e-05, 5.442441645505016e-06, -1.5154665553171482e-06,
  -1.4297608181169865e-07, 8.234608827419493e-08, -1.2962846852306563e-09, -4.154721631015199e-09,
  6.347058278362811e-10, 1.4320822712256225e-10, -6.160390105204585e-11, 2.0612138554721698e-12,
  3.5714931488477042e-12, -8.586422843251796e-13, -6.14560021379063e-14, 7.418725748596617e-14,
  -1.2895042755032325e-14, -2.358726385710632e-15, 1.5729349381685912e-15,
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
