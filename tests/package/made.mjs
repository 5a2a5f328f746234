// Is what is really made of the declared type? Writes real answers as literals of it: a literal may have neither
// less nor more than its type says.
import * as module from "saltwright";

const forms = [
  {},
  {
    "pool.volume": "62.82", "pool.volume.unit": "m3", "pool.method": "taped",
    "salt.now": "400", "salt.now.unit": "[ppm]", "salt.method": "meter", "salt.target": "3200",
    "bag.size": "20", "bag.size.unit": "kg", "bag.purity": "99.4",
  },
  // One fault of each sort: with limits, with another reading, with neither.
  { "pool.volume": "0", "pool.volume.unit": "m3", "salt.target": "3.200", "salt.now.unit": "[ppm]", "bag.size": "many" },
];
const answers = forms.map((form) => module.answer(form));
const faults = answers.flatMap((answer) => answer.faults);
for (const key of ["low", "high", "other"])
  if (!faults.some((fault) => key in fault)) throw new Error(`no fault with ${key} was made: ${JSON.stringify(faults)}`);
if (!answers.some((answer) => answer.rows.gates?.length)) throw new Error("no list was made");

const literal = (value) => JSON.stringify(value, null, 1);
const names = Object.fromEntries(Object.keys(module).map((name) => [name, true]));
console.log(`import type { Answer, Edition } from "saltwright";
export const answers: Answer[] = ${literal(answers)};
export const edition: Edition = ${literal(module.edition())};
export const exported: Record<keyof typeof import("saltwright"), true> = ${literal(names)};`);
