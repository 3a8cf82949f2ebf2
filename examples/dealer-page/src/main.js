// Treating day: a job in a form, its plan beside it as words and pictures.
import { plan } from "hilum/job";
import demo from "../../jobs/dealer_day.json";
import { complain, form } from "./form.js";
import { pack, unpack } from "./link.js";
import { get, set, without } from "./path.js";
import { show, showAlive } from "./show.js";

const $ = (id) => document.getElementById(id);
const EMPTY = { format: 1, orders: [], treatments: [] };
let job = demo;
let waiting;

function say(text) {
  $("said").textContent = text;
}

/** What an edit of the form does to the job. */
function edited({ set: path, value, add, item, remove, at }) {
  if (path) {
    job = set(job, path, value);
    const survival = path.indexOf("survival");
    if (survival > 0 && value !== undefined) {
      const model = [...path.slice(0, survival + 1), "model"];
      if (get(job, model) === undefined) job = set(job, model, "log_linear");
    }
  } else if (add) {
    job = set(job, add, [...(get(job, add) ?? []), item]);
    redraw(`[data-at="/${[...add, get(job, add).length - 1].join("/")}"]`);
  } else {
    job = without(job, remove, at);
    redraw(`[data-add="/${remove.join("/")}"]`);
  }
  clearTimeout(waiting);
  waiting = setTimeout(planned, 120);
}

/** Draws the form anew and keeps open what was open; then goes to one place in it. */
function redraw(place) {
  const root = $("job");
  const key = (details) => details.dataset.at ?? details.dataset.block + (details.closest("[data-at]")?.dataset.at ?? "");
  const open = new Set([...root.querySelectorAll("details[open]")].map(key));
  root.replaceChildren(...form(job, edited));
  for (const details of root.querySelectorAll("details")) details.open ||= open.has(key(details));
  if (!place) return;
  const target = root.querySelector(place);
  if (target?.tagName === "DETAILS") target.open = true;
  for (let box = target?.parentElement.closest("details"); box; box = box.parentElement.closest("details")) box.open = true;
  (target?.querySelector("input") ?? target)?.focus();
}

function planned() {
  $("title").textContent = job.title ?? "A day without a title";
  try {
    const made = plan(job);
    complain($("job"), []);
    show(job, made);
    document.body.classList.remove("stale");
    const stops = made.findings.filter(({ severity }) => severity === "stop").length;
    say(stops ? `Planned; ${stops} to see to first.` : "Planned.");
    requestIdleCallback?.(() => showAlive(job, made)) ?? setTimeout(() => showAlive(job, made));
  } catch (error) {
    if (!error.problems) throw error;
    const elsewhere = complain($("job"), error.problems);
    document.body.classList.add("stale");
    const rest = elsewhere.map(({ pointer, value, message }) => `${pointer || "The job"}: ${value ?? ""} ${message}`);
    say(["The plan below is the last one that could be made; see the marked fields.", ...rest].join(" "));
  }
}

function take(given, said) {
  job = given;
  redraw();
  planned();
  if (said) say(said);
}

async function opened({ target }) {
  const [file] = target.files;
  target.value = "";
  try {
    take(JSON.parse(await file.text()), `Opened ${file.name}.`);
  } catch (error) {
    say(`${file.name} is no job: ${error.message}`);
  }
}

function saved() {
  const url = URL.createObjectURL(new Blob([JSON.stringify(job, null, 2)], { type: "application/json" }));
  const link = Object.assign(document.createElement("a"), { href: url, download: "job.json" });
  link.click();
  URL.revokeObjectURL(url);
}

async function linked() {
  location.hash = `job=${await pack(job)}`;
  try {
    await navigator.clipboard.writeText(location.href);
    say("The link with this job is on the clipboard.");
  } catch {
    say("The link with this job is in the address bar.");
  }
}

async function start() {
  $("open").addEventListener("change", opened);
  $("save").addEventListener("click", saved);
  $("link").addEventListener("click", linked);
  $("print").addEventListener("click", () => window.print());
  $("blank").addEventListener("click", () => take(EMPTY, "Started empty: add an order and a product."));
  $("job").addEventListener("submit", (event) => event.preventDefault());
  const [, carried] = /^#job=([\w-]+)$/.exec(location.hash) ?? [];
  try {
    take(carried ? await unpack(carried) : demo);
  } catch {
    take(demo, "The link holds no job that can be read; this is the demonstration.");
  }
  if ("serviceWorker" in navigator) await navigator.serviceWorker.register("worker.js");
}

await start();
