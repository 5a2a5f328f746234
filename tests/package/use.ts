// Can a typed script use all there is? Each name of the declarations stands here once at least.
import { answer, attach, Controller, edition } from "saltwright";
import type { Answer, Edition, Fault, FieldName, Line, OutputName, Outputs, Quantity, Shown, StateName } from "saltwright";

const all: Answer = answer({ "pool.volume": "62.82", "pool.volume.unit": "m3" });
const contract: number = all.contract;
const outputs: Outputs = all.outputs;
const states: string[] = all.states;
const lines: Line[] = all.rows["gates"] ?? [];
const faults: Fault[] = all.faults;

const asked: Partial<Record<FieldName, string>> = { "pool.volume": "50", "log.3.mass": "6", "try.basic.mass": "390" };
const told: OutputName[] = ["basic.mass", "echo.pool.volume.also"];
const may: StateName[] = ["add.yes", "gate.ph.wait", "log.3.needs-mass"];
const mass: Shown | undefined = outputs["basic.mass"];
const text: string = mass?.text ?? "–";
const unit: string | undefined = mass?.unit;
const exact: Quantity | undefined = all.numbers["basic.mass"];
const range: number[] = exact ? [exact.low ?? exact.value, exact.value, exact.high ?? exact.value] : [];
const kilogram: boolean = exact?.unit === "kg";
const gates: string[] = lines.map((line) => line.state + (line.outputs["gate"]?.unit ?? ""));
const said: string[] = faults.map(({ field, code, got, low, high, other }) =>
  [field, code, got, ...[low, high, other].map((shown) => shown?.text ?? "")].join(" "),
);

const build: Edition = edition();
const { name, version }: { name: string; version: string } = build;
const agreed: boolean = build.contract === contract;

export function sum(form: HTMLFormElement): Record<string, string> {
  form.addEventListener("saltwright:answer", (event) => console.log(event.detail.states.length));
  const controller: Controller = attach(form);
  controller.set({ "pool.volume": "50" });
  const typed: Record<string, string> = controller.form();
  controller.detach();
  return typed;
}

export { agreed, asked, gates, kilogram, may, name, range, said, states, text, told, unit, version };

// @ts-expect-error: a number's meaning would hang on who turned it into text
answer({ "pool.volume": 62.82 });
// @ts-expect-error: what a browser makes of a form is no object of texts yet
answer(new FormData());
// @ts-expect-error: no question has that name
const misspelled: FieldName = "pool.volum";
// @ts-expect-error: only a form can answer
attach(document.createElement("div"));
// @ts-expect-error: what cannot be said is missing
outputs["basic.mass"].text;
// @ts-expect-error: a controller comes from a form alone
new Controller();
// @ts-expect-error: there is no such list, or nothing in it
all.rows["visits"].length;
// @ts-expect-error: there is no such member
all.verdict;
