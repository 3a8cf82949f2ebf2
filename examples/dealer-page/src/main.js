// Treating day: a job in a form and its plan beside it; after the day, the run and its account.
import demo from "../../jobs/dealer_day.json";
import demoRun from "../../runs/dealer_day_run.json";
import { ask } from "./ask.js";
import { measure } from "./charts/style.js";
import { complain, finder, form, retitle } from "./form/form.js";
import { JOB } from "./form/job.js";
import { RUN } from "./form/run.js";
import { pack, unpack } from "./link.js";
import { get, set, without, written } from "./path.js";
import { showAccount } from "./show/account.js";
import { showAlive, showPlan } from "./show/plan.js";

const $ = (id) => document.getElementById(id);
const EMPTY = { format: 1, orders: [], treatments: [] };
const noRun = { format: 1, orders: [] };

/** The job, and what was read of it; the run as a document holds both. */
let job = demo;
let run = noRun;
let waiting;
/** What the form says now, counted; what is made of anything older is not shown. */
let newest = 0;
let latest;
/** Whether something was written that no file and no link holds. */
let isEdited = false;
const whole = () => ({ ...run, job });

/** What may be looked at: its form, and what is made of its document. */
const VIEWS = {
  plan: {
    form: $("job"),
    fields: JOB,
    document: () => job,
    keep: (changed) => (job = changed),
    show: (made) => showPlan(job, made, shower()),
    showLater: (made, isCurrent) => showAlive(job, made, isCurrent),
    doing: "Planning",
    done: "Planned",
    nothing: "Add orders of seed and products in the form, and the plan appears here.",
    isEmpty: () => !job.orders?.length,
  },
  account: {
    form: $("run"),
    fields: RUN,
    document: whole,
    keep({ job: _, ...changed }) {
      run = changed;
    },
    show: (made) => showAccount(job, made, shower()),
    showLater() {},
    doing: "Accounting",
    done: "Accounted for",
    isEmpty: () => !run.orders?.length,
    nothing: "Add each order in the form as it is run, with what scales and gauges showed, and what was applied appears here.",
  },
};
let view = "plan";
const chosen = { plan: new Map(), account: new Map() };

function say(text) {
  $("said").textContent = text;
}

/** What an edit of a form does to its document. */
function edited({ set: changes, focus, add, item, remove, at }) {
  const { document: now, keep, form: root } = VIEWS[view];
  if (changes) {
    for (const [path, value] of changes) {
      const written = typeof value === "function" ? value(get(now(), path)) : value;
      keep(set(now(), path, written));
    }
    if (focus) redraw(focus);
    else retitle(root, now());
  } else if (add) {
    const items = [get(now(), add) ?? []].flat();
    keep(set(now(), add, [...items, item]));
    redraw(`[data-at="/${[...add, items.length].join("/")}"]`);
  } else {
    keep(without(now(), remove, at));
    // Which way was taken in one item may not be that of the next.
    chosen[view].clear();
    redraw(`[data-add="/${remove.join("/")}"]`);
  }
  isEdited = true;
  newest += 1;
  soon(120);
}

function soon(pause) {
  clearTimeout(waiting);
  waiting = setTimeout(made, pause);
}

/** Opens a place of the form and everything around it, and goes there. */
function goTo(target) {
  if (target?.tagName === "DETAILS") target.open = true;
  for (let box = target?.parentElement.closest("details"); box; box = box.parentElement.closest("details")) box.open = true;
  (target?.matches("button, input, select, textarea") ? target : target?.querySelector("input, select, textarea"))?.focus();
}

/** Draws the form anew and keeps open what was open; then goes to one place in it. */
function redraw(place) {
  const { form: root, fields, document: now } = VIEWS[view];
  const open = new Set([...root.querySelectorAll("details[open]")].map(({ dataset }) => dataset.block));
  root.replaceChildren(...form(fields, now(), edited, chosen[view]));
  for (const details of root.querySelectorAll("details")) details.open ||= open.has(details.dataset.block);
  if (place) goTo(root.querySelector(place));
}

/** What leads from a finding to the field that it speaks of, if the form has it; the form may be drawn anew before anyone goes there. */
function shower() {
  const { form: root } = VIEWS[view];
  const find = finder(root);
  return (where) => find(where) && (() => goTo(finder(root)(where)));
}

/** How long the sheet may be behind the form without a word. */
const MOMENT = 300;
let late;

function behind() {
  late ??= setTimeout(() => {
    document.body.classList.add("behind");
    $("sheet").setAttribute("aria-busy", "true");
    say(`${VIEWS[view].doing}…`);
  }, MOMENT);
}

function caughtUp() {
  clearTimeout(late);
  late = undefined;
  document.body.classList.remove("behind");
  $("sheet").removeAttribute("aria-busy");
}

/** Makes the plan or the account of what the form says now, and `said` is said before what came of it. */
function made(said) {
  clearTimeout(waiting);
  waiting = undefined;
  latest = make(said);
}

async function make(said) {
  const own = (newest += 1);
  const isCurrent = () => own === newest;
  $("title").textContent = job.title || "A day without a title";
  const { form: root, document: now, show, showLater, done, nothing, isEmpty } = VIEWS[view];
  behind();
  const { made, problems } = await ask(view, now()).catch(failed);
  if (!isCurrent()) return;
  caughtUp();
  measure();
  if (made) show(made);
  say([said, made ? accepted(root, made, done) : refused(root, problems)].filter(Boolean).join(" "));
  $("first-wrong").hidden = !root.querySelector(".wrong");
  $("nothing").textContent = isEmpty() ? nothing : "Mend what the form marks, and the sheet appears here.";
  $("nothing").hidden = isShown();
  if (made) await showLater(made, isCurrent);
}

/** A planner that breaks is no fault of a field. */
const failed = (error) => ({ problems: [{ pointer: "", message: `could not be planned: ${error.message}` }] });

/** Whether something was made that can be looked at. */
const isShown = () => [...$(view).querySelectorAll(".body")].some((body) => body.childElementCount > 0);

function accepted(root, { findings }, done) {
  complain(root, []);
  document.body.classList.remove("stale");
  const stops = findings.filter(({ severity }) => severity === "stop").length;
  return stops ? `${done}; ${stops} to see to first.` : `${done}.`;
}

function refused(root, problems) {
  const elsewhere = complain(root, problems);
  document.body.classList.add("stale");
  const marked = problems.length - elsewhere.length;
  const rest = elsewhere.map(({ pointer, value, message }) => `${pointer || "The document"}: ${value ?? ""} ${message}.`);
  if (view === "account" && elsewhere.some(({ pointer }) => pointer.startsWith("/job"))) rest.unshift("See to the plan first.");
  const fields = marked ? `${marked === 1 ? "One field is" : `${marked} fields are`} still to be filled or mended.` : "";
  return [fields, ...rest, isShown() && "What is shown is the last that could be made."].filter(Boolean).join(" ");
}

function look(at, said) {
  view = at;
  for (const [name, own] of Object.entries(VIEWS)) {
    const isShown = name === view;
    own.form.hidden = !isShown;
    $(name).hidden = !isShown;
    $(`to-${name}`).setAttribute("aria-pressed", String(isShown));
  }
  $("save").textContent = view === "plan" ? "Save job" : "Save run";
  document.body.classList.remove("stale");
  $("nothing").hidden = true;
  redraw();
  made(said);
}

const isRun = (given) => given !== null && typeof given === "object" && "job" in given;

/** Takes a document, a job or a run, and shows what is made of it. */
function take(given, said) {
  if (given === null || typeof given !== "object" || Array.isArray(given)) throw new TypeError("it holds no document.");
  isEdited = false;
  if (isRun(given)) ({ job, ...run } = given);
  else [job, run] = [given, noRun];
  for (const [id, { form: root }] of Object.entries(VIEWS)) {
    chosen[id].clear();
    root.replaceChildren();
    for (const body of $(id).querySelectorAll(".body")) body.replaceChildren();
  }
  look(isRun(given) ? "account" : "plan", said);
}

async function opened({ target }) {
  const [file] = target.files;
  target.value = "";
  try {
    take(JSON.parse(await file.text()), `Opened ${file.name}.`);
  } catch (error) {
    say(`${file.name} is no job and no run: ${error.message}`);
  }
}

function saved() {
  const text = written(VIEWS[view].document(), 2);
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = Object.assign(document.createElement("a"), { href: url, download: view === "plan" ? "job.json" : "run.json" });
  link.click();
  isEdited = false;
  URL.revokeObjectURL(url);
}

async function linked() {
  const what = view === "plan" ? "job" : "run";
  isEdited = false;
  history.replaceState(null, "", `#${what}=${await pack(VIEWS[view].document())}`);
  try {
    await navigator.clipboard.writeText(location.href);
    say(`The link with this ${what} is on the clipboard.`);
  } catch {
    say(`The link with this ${what} is in the address bar.`);
  }
}

/** What goes on paper is what the form says. */
async function printed() {
  if (waiting) made();
  await latest;
  window.print();
}

const CARRIED = /^#(?:job|run)=([\w-]+)$/;

/** What the address carries, or the demonstration. */
async function carried() {
  const [, packed] = CARRIED.exec(location.hash) ?? [];
  try {
    if (packed) return take(await unpack(packed));
  } catch {
    return showDemo("The link holds no job that can be read; this is the demonstration.");
  }
  showDemo();
}

function showDemo(said) {
  take(demo, said);
  const { job: _, ...readings } = demoRun;
  run = readings;
}

async function start() {
  $("open").addEventListener("change", opened);
  $("save").addEventListener("click", saved);
  $("link").addEventListener("click", linked);
  $("print").addEventListener("click", printed);
  $("blank").addEventListener("click", () => take(EMPTY, "Started empty: add an order and a product."));
  $("first-wrong").addEventListener("click", () => goTo(VIEWS[view].form.querySelector(".wrong")));
  for (const name of Object.keys(VIEWS)) {
    $(`to-${name}`).addEventListener("click", () => look(name));
    VIEWS[name].form.addEventListener("submit", (event) => event.preventDefault());
  }
  // A link within the page leads to a place, and carries nothing.
  addEventListener("hashchange", () => CARRIED.test(location.hash) && carried());
  addEventListener("beforeunload", (event) => isEdited && event.preventDefault());
  // On paper nothing can be unfolded.
  addEventListener("beforeprint", () => document.querySelectorAll(".notes").forEach((notes) => (notes.open = true)));
  let width = innerWidth;
  addEventListener("resize", () => {
    if (width !== innerWidth) soon(200);
    width = innerWidth;
  });
  await carried();
  if ("serviceWorker" in navigator) await navigator.serviceWorker.register("worker.js");
}

await start();
