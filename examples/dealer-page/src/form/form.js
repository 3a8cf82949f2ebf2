// The form: inputs made from fields.js, each bound to a place in the job.
import { el } from "./dom.js";
import { FORM } from "./fields.js";
import { get, pointer } from "./path.js";
import { UNITS } from "./units.js";

let count = 0;

/** `edit` is told of every change: a path and a value, or what to do with a list. */
export function form(job, edit) {
  return FORM.map((field) => block([], field, job, edit, field.open));
}

const pathOf = (base, field) => [...base, ...(field.name?.split(".") ?? [])];

function block(base, field, job, edit, isOpen = false) {
  if (field.kind === "list") return items(base, field, job, edit);
  return el(
    "details",
    { class: "block", open: isOpen, "data-block": field.label },
    el("summary", {}, field.label),
    el("div", { class: "fields" }, field.fields.map((inner) => one(base, inner, job, edit))),
  );
}

function items(base, field, job, edit) {
  const path = pathOf(base, field);
  const list = get(job, path) ?? [];
  const parts = list.map((item, at) => {
    const own = [...path, at];
    const name = item[field.fields[0].name];
    const title = typeof name === "string" ? name : `${field.one} ${at + 1}`;
    return el(
      "details",
      { class: "item", "data-at": pointer(own) },
      el("summary", {}, title),
      el("div", { class: "fields" }, field.fields.map((inner) => one(own, inner, job, edit))),
      el(
        "button",
        { type: "button", class: "remove", onclick: () => edit({ remove: path, at }) },
        `Remove ${field.one} ${typeof name === "string" ? name : at + 1}`,
      ),
    );
  });
  const add = el(
    "button",
    { type: "button", class: "add", "data-add": pointer(path), onclick: () => edit({ add: path, item: field.start }) },
    `Add ${field.one}`,
  );
  const wraps = base.length > 0 || field.name.includes(".");
  return el(
    "details",
    { class: wraps ? "block inner" : "block", "data-block": field.label },
    el("summary", {}, `${field.label} (${list.length})`),
    ...parts,
    add,
  );
}

function one(base, field, job, edit) {
  if (field.kind === "list" || field.kind === "group") return block(base, field, job, edit);
  const path = pathOf(base, field);
  const id = `f${(count += 1)}`;
  const value = get(job, path);
  const described = `${id}-e${field.hint ? ` ${id}-h` : ""}`;
  const control = CONTROLS[field.kind](id, field, value, described, (value) => edit({ set: path, value }));
  return el(
    "div",
    { class: `field ${field.kind}`, "data-field": pointer(path) },
    el("label", { for: id }, field.label),
    control,
    field.hint && el("small", { id: `${id}-h` }, field.hint),
    el("p", { class: "error", id: `${id}-e` }),
  );
}

const plain = (type, read) => (id, _, value, described, changed) =>
  el("input", {
    id,
    type,
    value: value ?? "",
    "aria-describedby": described,
    step: type === "number" ? "any" : undefined,
    oninput: ({ target }) => changed(target.value.trim() === "" ? undefined : read(target.value)),
  });

const CONTROLS = {
  text: plain("text", (value) => value),
  number: plain("number", (value) => Number(value)),
  yes: (id, _, value, described, changed) =>
    el("input", {
      id,
      type: "checkbox",
      checked: value === true,
      "aria-describedby": described,
      onchange: ({ target }) => changed(target.checked || undefined),
    }),
  choice: (id, field, value, described, changed) =>
    el(
      "select",
      { id, "aria-describedby": described, onchange: ({ target }) => changed(target.value || undefined) },
      field.options.map(([own, words]) => el("option", { value: own, selected: own === (value ?? "") }, words)),
    ),
  texts: (id, _, value, described, changed) => {
    const read = (text) => text.split("\n").map((line) => line.trim()).filter(Boolean);
    return el(
      "textarea",
      {
        id,
        rows: "2",
        "aria-describedby": described,
        oninput: ({ target }) => changed(read(target.value).length ? read(target.value) : undefined),
      },
      (value ?? []).join("\n"),
    );
  },
  instant,
  quantity,
};

/** A wall clock beside the offset that it is read with. */
function instant(id, field, value, described, changed) {
  const [, clock = "", offset = "+00:00"] = /^(.{16})(?::\d\d)?(?:\.\d+)?(Z|[+-]\d\d:\d\d)$/.exec(value ?? "") ?? [];
  const time = el("input", { id, type: "datetime-local", value: clock, "aria-describedby": described });
  const zone = el("input", { type: "text", value: offset, size: "6", "aria-label": `${field.label}: offset from UTC` });
  const tell = () => changed(time.value ? `${time.value}:00${zone.value.trim()}` : undefined);
  time.addEventListener("input", tell);
  zone.addEventListener("input", tell);
  return el("span", { class: "pair" }, time, zone);
}

/** A number beside its unit. What is no number is handed on as written, to be refused with its reason. */
function quantity(id, field, value, described, changed) {
  const { number, unit } = split(value);
  const units = UNITS[field.of];
  const all = unit && !units.includes(unit) ? [unit, ...units] : units;
  const input = el("input", { id, type: "text", inputmode: "decimal", value: number, "aria-describedby": described });
  const select = el(
    "select",
    { "aria-label": `${field.label}: unit` },
    all.map((own) => el("option", { value: own, selected: own === (unit || units[0]) }, own)),
  );
  const tell = () => changed(input.value.trim() === "" ? undefined : `${input.value.trim()} ${select.value}`);
  input.addEventListener("input", tell);
  select.addEventListener("change", tell);
  return el("span", { class: "pair" }, input, select);
}

export function split(value) {
  if (value !== null && typeof value === "object") return { number: String(value.value), unit: value.unit };
  const [, number = value ?? "", unit = ""] = /^\s*([-+]?[\d._]+(?:[eE][-+]?\d+)?)\s*(.*?)\s*$/.exec(value ?? "") ?? [];
  return { number, unit };
}

/** Shows each problem beside its field; gives those that have none. */
export function complain(root, problems) {
  for (const field of root.querySelectorAll(".field.wrong")) {
    field.classList.remove("wrong");
    field.querySelector(".error").textContent = "";
    field.querySelector("input, select, textarea").removeAttribute("aria-invalid");
  }
  return problems.filter(({ pointer: place, value, message }) => {
    // A problem inside a field, such as a unit, is said at the field.
    const field = [...root.querySelectorAll(".field")].find(
      (one) => place === one.dataset.field || place.startsWith(`${one.dataset.field}/`),
    );
    if (!field) return true;
    field.classList.add("wrong");
    field.querySelector(".error").textContent = value === undefined ? message : `${value} ${message}`;
    field.querySelector("input, select, textarea").setAttribute("aria-invalid", "true");
    for (let box = field.closest("details"); box; box = box.parentElement.closest("details")) box.open = true;
    return false;
  });
}
