// The plan as words and pictures, section by section.
import { format } from "hilum";
import { alive } from "./charts/alive.js";
import { allowed } from "./charts/allowed.js";
import { day } from "./charts/day.js";
import { packs } from "./charts/packs.js";
import { el, table } from "./dom.js";

const body = (id, ...children) => document.querySelector(`#${id} .body`).replaceChildren(...children.flat());
export const shown = (quantity) => (quantity ? format(quantity) : undefined);
const plain = (number) => (number === undefined ? undefined : new Intl.NumberFormat(document.documentElement.lang, { maximumSignificantDigits: 4 }).format(number));
const clock = (instant) => instant?.slice(11, 16);

export function show(job, plan) {
  findings(plan);
  body("day", day(job, plan));
  body("open-packs", packs(plan), cost(job, plan));
  body("pour", pours(plan));
  body("pump", orders(plan));
  body("allowed", allowed(job, plan));
}

/** Drawn after the rest: the curve asks the planner for many days. */
export function showAlive(job, plan) {
  body("alive", alive(job, plan));
}

const SEVERITY = { stop: "Stop", warn: "Look", note: "Note" };

function findings(plan) {
  const ranked = Object.keys(SEVERITY).flatMap((severity) => plan.findings.filter((one) => one.severity === severity));
  const stands = ranked.filter(({ code }) => code !== "treated_seed");
  const items = stands.map(({ severity, code, message }) =>
    el("li", { class: severity, "data-code": code }, el("strong", {}, SEVERITY[severity]), " ", message),
  );
  const none = el("p", { class: "fine" }, "Nothing was found that stands against this plan.");
  const caution = ranked.find(({ code }) => code === "treated_seed");
  body(
    "findings",
    items.length ? el("ul", { class: "findings" }, items) : none,
    caution ? el("p", { class: "caution" }, caution.message) : [],
  );
}

function cost(job, plan) {
  if (!plan.cost) return [];
  const money = (number) => `${new Intl.NumberFormat(document.documentElement.lang, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(number)} ${job.currency ?? ""}`;
  return el("p", {}, `Opened for ${money(plan.cost.opened)}; what goes on the seed is worth ${money(plan.cost.applied)}.`);
}

function pours(plan) {
  return plan.tanks.flatMap(({ tank, batches = [] }) =>
    batches.map((batch) => {
      const rows = batch.pour.map((pour) => [pour.water ? "water" : pour.product, shown(pour.volume), shown(pour.mass)]);
      rows.push(["in the tank", shown(batch.mixed), undefined]);
      const sets = batch.sets.map(({ pack, sets }) => `${sets} × ${pack}`).join(", ");
      const times = [
        batch.mix_at && `begin ${clock(batch.mix_at)}`,
        batch.ready_at && `ready ${clock(batch.ready_at)}`,
        batch.done_at && `empty ${clock(batch.done_at)}`,
      ].filter(Boolean);
      return el(
        "article",
        { class: "mix" },
        el("h3", {}, `${tank}, mix ${batch.number}`),
        el("p", {}, times.join(" · "), batch.use_by && el("strong", { class: "use-by" }, ` use by ${clock(batch.use_by)}`)),
        table(`Pour into ${tank}, mix ${batch.number}`, ["Pour", "Volume", "Weighs"], rows),
        el("p", {}, sets && `Opens ${sets}. `, `Runs ${batch.orders.map(({ order, mass }) => `${order} (${shown(mass)})`).join(", ")}.`),
      );
    }),
  );
}

function orders(plan) {
  const pumps = plan.tanks.flatMap(({ tank, orders = [] }) => orders.map((own) => ({ tank, ...own })));
  const rows = plan.orders.map(({ order, lot, mass, seeds, units, area }) => [
    `${order} ${lot}`, shown(mass), shown(seeds), shown(units), shown(area),
  ]);
  const flows = pumps.map(({ tank, order, slurry, flow, setting, per_charge: charge }) => [
    `${tank}: ${order}`, shown(slurry), shown(flow) ?? shown(charge), plain(setting),
  ]);
  return [
    table("How much seed", ["Order and lot", "Mass", "Seeds", "Units", "Sows"], rows),
    flows.length ? table("How fast to pump", ["Tank and order", "Slurry", "Flow, or per charge", "Set pump to"], flows) : [],
  ].flat();
}
