// What is wrong with an author's page? Include this module beside saltwright.js while you write, and take it out when
// you publish. It asks nothing of any network, and changes nothing but a box of its own in front of a form.
// The rules are those of `cargo xtask check-page`; the table is made from that of the contract.
const KNOWN = null;

// An element: { tag, attributes, parent, hasWords }; in the order of the document, what is in templates included.
export function findings(elements, known = KNOWN) {
  const found = [];
  const tell = (place, code, values) => found.push({ place, words: filled(known.words[code], values) });
  const has = (list, name) => list.includes(name);
  const words = (element, attribute) => (element.attributes[attribute] ?? "").split(/[ \t\n\f\r]+/).filter(Boolean);
  const isField = (element) => ["input", "select", "textarea"].includes(element.tag);
  const line = (name) => anyLine(name, known.lines);
  const named = (list, name) => list.find((own) => own.name === line(name));
  const names = (list) => list.map((own) => own.name);
  const ancestors = (place) => {
    const above = [];
    for (let at = elements[place].parent; at !== null; at = elements[at].parent) above.push(at);
    return above;
  };
  const ancestor = (place, attribute) => {
    const at = ancestors(place).find((at) => attribute in elements[at].attributes);
    return at === undefined ? undefined : elements[at].attributes[attribute];
  };
  const fields = (name) => elements.flatMap((element, place) => {
    const own = element.attributes.name;
    return isField(element) && own !== undefined && line(own) === name ? [place] : [];
  });
  // The codes that a field offers; null where anything can be typed.
  const offered = (place) => {
    const { tag, attributes } = elements[place];
    if (tag === "select") {
      const codes = elements.flatMap((option, at) =>
        option.tag === "option" && ancestors(at).includes(place) ? [option.attributes.value] : []);
      return has(codes, undefined) ? null : codes;
    }
    return ["radio", "checkbox", "hidden"].includes(attributes.type) ? [attributes.value ?? ""] : null;
  };
  const unknown = (place, attribute, name, near) =>
    tell(place, near === undefined ? "unknown" : "near", { attribute, name, near });

  elements.forEach((element, place) => {
    const { tag, attributes } = element;
    const name = attributes.name ?? "";
    const field = isField(element) ? named(known.fields, name) : undefined;
    if (field) {
      const codes = field.codes.length ? offered(place) ?? [] : [];
      for (const code of codes.filter((code) => code && !has(field.codes, code))) {
        unknown(place, "value", code, near(code, field.codes));
      }
    } else if (isField(element) && name.includes(".")) {
      unknown(place, "name", name, near(line(name), names(known.fields)));
    }
    if (tag === "output") {
      const list = ancestor(place, "data-each");
      const cells = known.cells.map((cell) => cell.split("/")).filter(([of]) => of === list).map(([, cell]) => cell);
      const isKnown = has(known.outputs, line(name)) || has(cells, name)
        || (ancestor(place, "data-fault") !== undefined && has(known.inFault, name));
      if (!isKnown && (list === undefined || has(known.lists, list))) {
        unknown(place, "name", name, near(line(name), [...cells, ...known.outputs]));
      }
    }
    for (const word of words(element, "data-when")) {
      const state = word.replace(/^!/, "");
      if (!named(known.states, state)) unknown(place, "data-when", state, near(line(state), names(known.states)));
    }
    for (const word of words(element, "data-fault")) {
      const at = word.indexOf(":");
      const [field, code] = at < 0 ? [word] : [word.slice(0, at), word.slice(at + 1)];
      if (!(field === "*" && code !== undefined) && !named(known.fields, field)) {
        const close = near(line(field), names(known.fields));
        unknown(place, "data-fault", word, close && (code === undefined ? close : `${close}:${code}`));
      } else if (code !== undefined && !has(known.faults, code)) {
        const close = near(code, known.faults);
        unknown(place, "data-fault", word, close && `${field}:${close}`);
      }
    }
    const lists = { each: known.lists, act: known.acts, mark: known.marks, shape: known.shapes, unit: known.units };
    for (const [attribute, list] of Object.entries(lists)) {
      for (const word of words(element, `data-${attribute}`).filter((word) => !has(list, word))) {
        unknown(place, `data-${attribute}`, word, near(word, list));
      }
    }
    for (const [attribute, codes] of tag === "data" ? [["data-units", known.units], ["data-gates", known.gates]] : []) {
      const value = attributes.value ?? "";
      if (ancestor(place, attribute) !== undefined && !has(codes, value)) unknown(place, "value", value, near(value, codes));
    }
    if (field?.unit && !fields(field.unit).length) tell(place, "no-unit", { field: name, unit: field.unit });
    const when = words(element, "data-when");
    for (const word of when) {
      const state = word.replace(/^!/, "");
      if (word !== state && has(when, state)) tell(place, "contradiction", { state });
      const { field, code, or } = named(known.states, state) ?? {};
      if (!field || (or && fields(or).length)) continue;
      if (!fields(field).length) tell(place, "no-field", { state, field });
      else if (code && !fields(field).some((at) => offered(at)?.includes(code) ?? true)) {
        tell(place, "not-offered", { state, field, code });
      }
    }
  });

  const isCaution = (element) => element.hasWords
    && ("data-caution" in element.attributes || words(element, "data-when").some((word) => has(known.cautions, word)));
  const dose = elements.findIndex(({ tag, attributes: { name } }, place) => tag === "output" && name !== undefined
    && (has(known.doses, name) || has(known.doses, `${ancestor(place, "data-each")}/${name}`)));
  if (dose >= 0 && !elements.some(isCaution)) tell(dose, "no-caution", { output: elements[dose].attributes.name });
  return found;
}

// An element as its author knows it.
export function called({ tag, attributes }) {
  const named = ["name", "data-when", "data-fault", "data-each", "data-act", "data-mark", "data-shape", "value"];
  const first = named.find((name) => name in attributes);
  return `<${tag}${first ? ` ${first}="${attributes[first]}"` : ""}>`;
}

function filled(words, values) {
  return words.replace(/\{(\w+)\}/g, (_, key) => values[key]);
}

// A name with the number of a line of the log as N.
function anyLine(name, lines) {
  const isLine = (part) => /^[1-9]\d*$/.test(part) && Number(part) <= lines;
  const parts = name.split(".");
  return parts.map((part, at) => (parts[at - 1] === "log" && isLine(part) ? "N" : part)).join(".");
}

// The name that differs least, the first of several; none that differs in more than a third.
function near(name, names) {
  let least = Math.ceil([...name].length / 3) + 1;
  let nearest;
  for (const known of names) {
    const count = differs([...name], [...known]);
    if (count < least) [least, nearest] = [count, known];
  }
  return nearest;
}

// How many letters have to be put in, taken out, changed, or changed places with their neighbor.
function differs(a, b) {
  const rows = [b.map((_, at) => at).concat(b.length)];
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const other = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(rows[i - 1][j] + 1, row[j - 1] + 1, rows[i - 1][j - 1] + other);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, rows[i - 2][j - 2] + 1);
      row.push(least);
    }
    rows.push(row);
  }
  return rows[a.length][b.length];
}

function collect(within, parent, elements) {
  for (const child of (within.content ?? within).children) {
    const attributes = Object.fromEntries([...child.attributes].map(({ name, value }) => [name, value]));
    const text = (child.content ?? child).textContent;
    elements.push({ tag: child.localName, attributes, parent, hasWords: text.trim() !== "" });
    collect(child, elements.length - 1, elements);
  }
  return elements;
}

function show(form) {
  const elements = collect(form, null, []);
  const lines = findings(elements).map(({ place, words }) => `? ${called(elements[place])}: ${words}\n`);
  let box = form.querySelector("[data-mismatch]");
  if (lines.length && !box) {
    box = document.createElement("pre");
    box.dataset.mismatch = "";
    form.prepend(box);
  }
  if (box) box.textContent = lines.join("");
  if (lines.length) console.info(lines.join(""));
}

if (globalThis.document) document.querySelectorAll("form[data-saltwright]").forEach(show);
