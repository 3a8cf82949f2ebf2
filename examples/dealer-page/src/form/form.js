// A form: inputs made from a description (job.js, run.js), each bound to a place in a document.
import { el } from "../dom.js";
import { get, pointer } from "../path.js";
import { CONTROLS } from "./controls.js";

let count = 0;

/**
 * The inputs of a document. `edit` is told of every change: places and values, or what to do with a list.
 * `chosen` keeps which way of several was taken where the document does not say.
 */
export function form(fields, document, edit, chosen) {
  const context = { document, edit, chosen };
  return fields.map((field) => part([], field, context));
}

const pathOf = (base, field) => [...base, ...(field.name?.split(".").filter(Boolean) ?? [])];

function part(base, field, context) {
  const PARTS = { group, list, rows, ways };
  return (PARTS[field.kind] ?? one)(base, field, context);
}

const inside = (base, fields, context) => el("div", { class: "fields" }, fields.map((inner) => part(base, inner, context)));

function group(base, field, context) {
  return el(
    "details",
    { class: "block", open: field.open, "data-block": `${pointer(base)} ${field.label}` },
    el("summary", {}, field.label),
    inside(base, field.fields, context),
  );
}

/** The items at a place; one alone may stand there without a list. */
const itemsAt = (document, path) => [get(document, path) ?? []].flat();

function list(base, field, context) {
  const path = pathOf(base, field);
  const items = itemsAt(context.document, path);
  return el(
    "details",
    { class: base.length || field.name.includes(".") ? "block inner" : "block", open: field.open, "data-block": pointer(path), "data-list": pointer(path) },
    el("summary", {}, `${field.label} (${items.length})`),
    el("p", { class: "error" }),
    ...items.map((_, at) => item(path, at, field, context)),
    adder(path, field, context),
  );
}

function item(path, at, field, context) {
  const own = [...path, at];
  const words = (document) => {
    const value = get(document, own) ?? {};
    const name = value[field.fields[0].name];
    const isNamed = field.fields[0].kind === "text" && name;
    return [isNamed ? name : `${field.one} ${at + 1}`, ...field.about(value)].filter((word) => word !== undefined && word !== "");
  };
  const [name, ...more] = words(context.document);
  const summary = el("summary", {});
  const details = el(
    "details",
    { class: "item", "data-at": pointer(own), "data-block": pointer(own) },
    summary,
    inside(own, field.fields, context),
    el("button", { type: "button", class: "remove", onclick: () => context.edit({ remove: path, at }) }, `Remove ${field.one} ${typeof name === "string" && name !== `${field.one} ${at + 1}` ? name : at + 1}`),
  );
  details.retitle = (document) => {
    const [name, ...more] = words(document);
    summary.replaceChildren(String(name), ...(more.length ? [el("small", {}, ` ${more.join(", ")}`)] : []));
  };
  details.retitle(context.document);
  return details;
}

const adder = (path, field, { document, edit }) =>
  el(
    "button",
    { type: "button", class: "add", "data-add": pointer(path), onclick: () => edit({ add: path, item: field.start(document) }) },
    `Add ${field.one}`,
  );

function rows(base, field, context) {
  const path = pathOf(base, field);
  const isList = Array.isArray(get(context.document, path));
  const items = itemsAt(context.document, path).map((_, at) => {
    const own = isList ? [...path, at] : path;
    return el(
      "div",
      { class: "row", "data-at": pointer([...path, at]) },
      ...field.fields.map((inner) => part(own, { ...inner, label: `${inner.label} (${at + 1})` }, context)),
      el("button", { type: "button", class: "remove", onclick: () => context.edit({ remove: path, at }) }, `Remove ${field.one} ${at + 1}`),
    );
  });
  return el(
    "fieldset",
    { "data-list": pointer(path) },
    el("legend", {}, field.label),
    el("p", { class: "error" }),
    ...items,
    adder(path, field, context),
  );
}

/** The places that one way of several fills. */
const places = (base, { fields, fixed = {} }) => [
  ...fields.map((field) => pathOf(base, field)),
  ...Object.keys(fixed).map((name) => pathOf(base, { name })),
];

function ways(base, field, context) {
  const { document, edit, chosen } = context;
  const key = `${pointer(base)} ${field.label}`;
  const isTaken = ({ fields, fixed = {} }) =>
    Object.keys(fixed).length
      ? Object.entries(fixed).every(([name, value]) => get(document, pathOf(base, { name })) === value)
      : fields.some((inner) => get(document, pathOf(base, inner)) !== undefined);
  const taken = field.options.findIndex(isTaken);
  const at = Math.max(0, taken >= 0 ? taken : (chosen.get(key) ?? 0));
  const id = `f${(count += 1)}`;
  const others = field.options.flatMap((option) => places(base, option)).map(pointer);
  const choose = (to) => {
    chosen.set(key, to);
    const kept = new Set(places(base, field.options[to]).map(pointer));
    const dropped = field.options.flatMap((option) => places(base, option)).filter((path) => !kept.has(pointer(path)));
    const fixed = Object.entries(field.options[to].fixed ?? {}).map(([name, value]) => [pathOf(base, { name }), value]);
    edit({ set: [...dropped.map((path) => [path, undefined]), ...fixed], focus: `[data-ways="${key}"] select` });
  };
  const select = el(
    "select",
    { id, "aria-describedby": `${id}-e`, onchange: ({ target }) => choose(target.selectedIndex) },
    field.options.map(({ label }, own) => el("option", { selected: own === at }, label)),
  );
  return el(
    "div",
    { class: "ways", "data-ways": key },
    el(
      "div",
      { class: "field choice", "data-field": "", "data-also": others.join(" ") },
      el("label", { for: id }, field.label),
      select,
      el("p", { class: "error", id: `${id}-e` }),
    ),
    ...field.options[at].fields.map((inner) => part(base, inner, context)),
  );
}

function one(base, field, { document, edit }) {
  const path = pathOf(base, field);
  const id = `f${(count += 1)}`;
  const tell = (value) => edit({ set: [[path, value]] });
  const control = CONTROLS[field.kind](id, field, get(document, path), tell, document);
  return el(
    "div",
    { class: `field ${field.kind}`, "data-field": pointer(path) + (field.kind === "step" ? "/resolution" : "") },
    el("label", { for: id }, field.label),
    control,
    field.hint && el("small", { id: `${id}-h` }, field.hint),
    el("p", { class: "error", id: `${id}-e` }),
  );
}

/** Names the items anew after an edit that left the form standing. */
export function retitle(root, document) {
  for (const details of root.querySelectorAll("details.item")) details.retitle(document);
}

/** What stands around a place: "/orders/0/sowing/rate" stands in "/orders/0/sowing", that in "/orders/0". */
function outers(place) {
  const all = [];
  for (let end = place.lastIndexOf("/"); end > 0; end = place.lastIndexOf("/", end - 1)) all.push(place.slice(0, end));
  return all;
}

/** Tells where in a form, as it stands drawn, a problem of a place is told: at its field, else at what holds it or is to hold it. */
export function finder(root) {
  const [own, also, lists, inside] = [new Map(), new Map(), new Map(), new Map()];
  const keep = (map, place, element) => place && !map.has(place) && map.set(place, element);
  for (const field of root.querySelectorAll(".field")) {
    const { field: place, also: others = "" } = field.dataset;
    keep(own, place, field);
    for (const other of others.split(" ")) keep(also, other, field);
    for (const outer of outers(place)) keep(inside, outer, field);
  }
  for (const list of root.querySelectorAll("[data-list]")) keep(lists, list.dataset.list, list);
  const nearest = (map, place) => map.get([place, ...outers(place)].find((at) => map.has(at)));
  return (place) => nearest(own, place) ?? nearest(also, place) ?? lists.get(place) ?? inside.get(place);
}

const control = (field) => (field.matches(".field") ? field.querySelector("input, select, textarea") : undefined);

/** Shows each problem beside its field; gives those that have none. */
export function complain(root, problems) {
  for (const field of root.querySelectorAll(".wrong")) {
    field.classList.remove("wrong");
    field.querySelector(":scope > .error").textContent = "";
    control(field)?.removeAttribute("aria-invalid");
  }
  const find = finder(root);
  return problems.filter(({ pointer: place, value, message }) => {
    const field = find(place);
    if (!field) return true;
    const error = field.querySelector(":scope > .error");
    const words = value === undefined ? message : `${value} ${message}`;
    error.textContent = [error.textContent, words].filter(Boolean).join(" ");
    field.classList.add("wrong");
    control(field)?.setAttribute("aria-invalid", "true");
    for (let box = field.closest("details"); box; box = box.parentElement.closest("details")) box.open = true;
    return false;
  });
}
