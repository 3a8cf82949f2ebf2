// One control for each kind of field. `tell` takes the new value, or a function from the old one to it.
import { el } from "../dom.js";
import { UNITS } from "./units.js";

const described = (id, field) => `${id}-e${field.hint ? ` ${id}-h` : ""}`;

const typed = (type, read) => (id, field, value, tell, document) => {
  const offered = field.from && `${id}-o`;
  const input = el("input", {
    id,
    type,
    value: value ?? "",
    list: offered,
    "aria-describedby": described(id, field),
    step: type === "number" ? "any" : undefined,
    oninput: ({ target }) => tell(target.value.trim() === "" ? undefined : read(target.value)),
  });
  if (!offered) return input;
  return el("span", {}, input, el("datalist", { id: offered }, field.from(document).map((word) => el("option", { value: word ?? "" }))));
};

const yes = (id, field, value, tell) =>
  el("input", {
    id,
    type: "checkbox",
    checked: value ?? field.usual,
    "aria-describedby": described(id, field),
    onchange: ({ target }) => tell(target.checked === field.usual ? undefined : target.checked),
  });

const choice = (id, field, value, tell) =>
  el(
    "select",
    { id, "aria-describedby": described(id, field), onchange: ({ target }) => tell(field.options[target.selectedIndex][0]) },
    field.options.map(([own, words]) => el("option", { selected: own === (value ?? undefined) }, words)),
  );

const texts = (id, field, value, tell) => {
  const read = (text) => text.split("\n").map((line) => line.trim()).filter(Boolean);
  return el(
    "textarea",
    {
      id,
      rows: String(Math.max(2, value?.length ?? 0)),
      "aria-describedby": described(id, field),
      oninput: ({ target }) => tell(read(target.value).length ? read(target.value) : undefined),
    },
    (value ?? []).join("\n"),
  );
};

/** The offset of the first shift, else that of this device. */
function usualOffset(document) {
  const [shift] = (document.job ?? document).work ?? [];
  const [told] = /(Z|[+-]\d\d:\d\d)$/.exec(shift?.from ?? "") ?? [];
  if (told) return told;
  const minutes = -new Date().getTimezoneOffset();
  const two = (number) => String(Math.floor(number)).padStart(2, "0");
  return `${minutes < 0 ? "-" : "+"}${two(Math.abs(minutes) / 60)}:${two(Math.abs(minutes) % 60)}`;
}

/** A wall clock beside the offset that it is read with. */
function instant(id, field, value, tell, document) {
  const [, clock = "", offset = usualOffset(document)] = /^(.{16})(?::\d\d)?(?:\.\d+)?(Z|[+-]\d\d:\d\d)$/.exec(value ?? "") ?? [];
  const time = el("input", { id, type: "datetime-local", value: clock, "aria-describedby": described(id, field) });
  const zone = el("input", { type: "text", value: offset, size: "6", "aria-label": `${field.label}: offset from UTC` });
  const changed = () => tell(time.value ? `${time.value}:00${zone.value.trim()}` : undefined);
  time.addEventListener("input", changed);
  zone.addEventListener("input", changed);
  return el("span", { class: "pair" }, time, zone);
}

const OTHER = "other…";

/** A number beside its unit. What is no number is handed on as written, to be refused with its reason. */
function quantity(id, field, value, tell) {
  const units = UNITS[field.of];
  const { number, unit } = split(value, units);
  const all = unit && !units.includes(unit) ? [unit, ...units] : units;
  const input = el("input", { id, type: "text", inputmode: "decimal", value: number, "aria-describedby": described(id, field) });
  const label = `${field.label}: unit`;
  const select = el("select", { "aria-label": label }, [...all, OTHER].map((own) => el("option", { value: own, selected: own === (unit || units[0]) }, own)));
  const pair = el("span", { class: "pair" }, input, select);
  const changed = () => tell(input.value.trim() === "" ? undefined : `${input.value.trim()} ${pair.lastChild.value.trim()}`);
  input.addEventListener("input", changed);
  select.addEventListener("change", () => {
    if (select.value === OTHER) {
      const written = el("input", { type: "text", "aria-label": label, oninput: changed });
      select.replaceWith(written);
      written.focus();
    } else changed();
  });
  return pair;
}

/** A quantity's number and unit; of "43o units", which is none, "43o" stays as it was written. */
function split(value, units) {
  if (value !== null && typeof value === "object") return { number: String(value.value), unit: value.unit };
  const [, number, space, unit] = /^\s*([-+]?[\d._]+(?:[eE][-+]?\d+)?)(\s*)(.*?)\s*$/.exec(value ?? "") ?? [];
  if (number && (space || !unit || units.includes(unit))) return { number, unit };
  const [, first, rest] = /^\s*(\S*)\s*(.*?)\s*$/.exec(value ?? "");
  return { number: first, unit: rest };
}

const isResolved = (value) => value !== null && typeof value === "object" && ("reading" in value || "resolution" in value);

/** What was read; the step it was read to, if it has one of its own, stays. */
const reading = (id, field, value, tell) =>
  quantity(id, field, isResolved(value) ? value.reading : value, (read) =>
    tell((now) => (isResolved(now) ? { ...now, reading: read ?? "" } : read)));

/** The step of its own that one reading was read to. */
const step = (id, field, value, tell) =>
  quantity(id, field, isResolved(value) ? value.resolution : undefined, (resolution) =>
    tell((now) => {
      const read = isResolved(now) ? now.reading : now;
      return resolution === undefined ? read : { reading: read ?? "", resolution };
    }));

export const CONTROLS = {
  text: typed("text", (value) => value),
  number: typed("number", (value) => Number(value)),
  yes,
  choice,
  texts,
  instant,
  quantity,
  reading,
  step,
};
