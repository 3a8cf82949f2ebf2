// What stays alive: cells on a seed over the days, as the planner itself says for each day.
import { format } from "hilum";
import { plan as planned } from "hilum/job";
import { el, figure, table } from "../dom.js";
import { Plot, plot } from "./style.js";

const DAY = 86_400_000;

/** Cells on a seed of each order after so many days: the same job, planted then. Instants do not matter to it. */
function after(job, days) {
  const planting = ({ plant_on: _, plant_after: __, ...rest } = {}) => ({ ...rest, plant_after: `${days} d` });
  const { work: _, ...rest } = job;
  const asked = {
    ...rest,
    after: planting(job.after ?? undefined),
    orders: job.orders.map((order) => (order.after ? { ...order, after: planting(order.after) } : order)),
  };
  return planned(asked).treatments.flatMap(({ product, orders }) =>
    orders
      .filter(({ living }) => living?.at_planting)
      .map(({ order, living }) => ({ product, order, series: `${product}, ${order}`, days, cells: living.at_planting.value, minimum: living.minimum?.value })),
  );
}

export function alive(job, plan) {
  const living = plan.treatments.flatMap(({ product, orders }) =>
    orders.filter(({ living }) => living).map(({ order, living }) => ({ product, order, ...living })),
  );
  if (!living.length) return el("p", {}, "No product of this job is alive.");
  const starts = Object.fromEntries(
    plan.tanks.flatMap(({ batches = [] }) => batches).filter(({ ready_at: at }) => at)
      .flatMap(({ ready_at: at, orders }) => orders.map(({ order }) => [order, Date.parse(at)])).reverse(),
  );
  const ends = living
    .filter(({ plant_by: by, order }) => by && starts[order])
    .map((one) => ({ ...one, days: (Date.parse(one.plant_by) - starts[one.order]) / DAY }));
  const last = Math.max(40, ...ends.map(({ days }) => days * 1.15));
  const step = last / 20;
  const curve = Array.from({ length: 21 }, (_, at) => after(job, Number((at * step).toFixed(3)))).flat();
  const rows = living.map(({ product, order, at_treating: first, at_planting: then, plant_by: by, because }) => [
    `${product}: ${order}`, format(first), then && format(then), by?.slice(0, 16).replace("T", " "), because && BECAUSE[because],
  ]);
  const words = table("Living cells", ["Product and order", "At treating", "At planting", "Plant by", "Because of"], rows);
  if (!curve.length) return [el("p", {}, "Say how the cells die off, and the curve is drawn here."), words];
  const minimum = [...new Set(living.map(({ minimum }) => minimum?.value).filter(Boolean))];
  // The highest curve is named above it, the others below theirs.
  const [highest, ...others] = labels(curve);
  const [upper, lower] = [[highest], others];
  const picture = plot({
    height: 320,
    marginLeft: 48,
    marginTop: 34,
    x: { label: "days after treating", labelOffset: 36, domain: [0, last] },
    y: { type: "log", label: "cells on a seed", grid: true, tickFormat: (value) => (Number.isInteger(Math.log10(value)) ? `10${[...String(Math.log10(value))].map((digit) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit]).join("")}` : "") },
    color: { legend: false },
    marks: [
      Plot.ruleY(minimum, { stroke: "var(--stop)", strokeDasharray: "6 4", strokeWidth: 2, className: "mark-minimum" }),
      Plot.line(curve, { x: "days", y: "cells", z: "series", curve: "linear", stroke: "var(--running)", strokeWidth: 2, className: "mark-cells-over-days" }),
      Plot.ruleX(together(ends), { x: "days", stroke: "var(--ink)", strokeDasharray: "2 3", className: "mark-plant-by" }),
      Plot.text(together(ends), {
        x: "days", frameAnchor: "bottom", text: ({ plant_by: by }) => `plant by ${by.slice(5, 10)}`, rotate: -90, textAnchor: "start", dx: -9, dy: -6,
        fill: "var(--ink)", stroke: "var(--paper)", className: "mark-plant-by-when",
      }),
      Plot.text(upper, { x: "days", y: "cells", text: "order", dy: -10, dx: 4, textAnchor: "start", fill: "var(--ink)", stroke: "var(--paper)", className: "mark-order" }),
      Plot.text(lower, { x: "days", y: "cells", text: "order", dy: 10, dx: -4, textAnchor: "end", fill: "var(--ink)", stroke: "var(--paper)", className: "mark-order" }),
      Plot.text(minimum, { x: 0, y: (value) => value, text: () => "minimum", textAnchor: "start", dx: 4, dy: -8, fill: "var(--stop)", className: "mark-minimum" }),
    ],
  });
  const first = ends.reduce((first, one) => (first && first.days <= one.days ? first : one), undefined);
  const about = first
    ? `${living.length} orders carry living cells; the first to plant is ${first.order}, by ${first.plant_by.slice(0, 10)}.`
    : `${living.length} orders carry living cells.`;
  return figure(picture, about, words);
}

const BECAUSE = { on_seed_life: "its life on the seed", partner: "a partner on the seed", minimum: "the minimum" };

const joined = (names, more) => (names.length > 16 ? names : `${names}, ${more}`);

/** One label for orders that share a curve, half the way along it, the highest first. */
function labels(curve) {
  const days = [...new Set(curve.map((point) => point.days))].sort((a, b) => a - b)[9];
  const names = new Map();
  for (const point of curve.filter((point) => point.days === days)) {
    const key = Math.round(Math.log10(point.cells) * 12);
    names.set(key, names.has(key) ? { ...point, order: joined(names.get(key).order, point.order) } : point);
  }
  return [...names.values()].sort((a, b) => b.cells - a.cells);
}

/** One line for orders that are to be planted by the same day. */
function together(ends) {
  const days = new Map();
  for (const end of ends) {
    const day = end.plant_by.slice(0, 10);
    days.set(day, days.has(day) ? { ...days.get(day), order: joined(days.get(day).order, end.order) } : end);
  }
  return [...days.values()];
}
