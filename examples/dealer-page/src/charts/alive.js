// What stays alive: cells on a seed over the days, as the planner itself says for each day.
import { convert } from "hilum";
import { ask } from "../ask.js";
import { dayOf, moment, shortDays } from "../clock.js";
import { by, el, figure, legend, listed, many, table } from "../dom.js";
import { cells, raised } from "../number.js";
import { Plot, gathered, isNarrow, plot } from "./style.js";

const DAY = 86_400_000;
const STEPS = 40;
export const BECAUSE = { on_seed_life: "its life on the seed", partner: "a partner on the seed", minimum: "the minimum" };

/** Gives nothing if `isCurrent` says, on the way, that the plan is no longer that of the form. */
export async function alive(job, plan, isCurrent) {
  const living = doses(plan);
  if (!living.length) return el("p", {}, "No product of this job is alive.");
  const words = table("Living cells on a seed", by(living, {
    "Product and order": ({ product, order }) => `${product}: ${order}`,
    "At treating": ({ at_treating: out }) => cells(out),
    "At planting": ({ at_planting: out }) => cells(out),
    "At least": ({ minimum }) => cells(minimum),
    "Plant by": ({ plant_by: at }) => moment(at),
    "Because of": ({ because }) => because && BECAUSE[because],
  }));
  const starts = firstSeed(plan);
  const ends = living
    .filter(({ plant_by: by, order }) => by && starts[order])
    .map((one) => ({ ...one, days: (Date.parse(one.plant_by) - starts[one.order]) / DAY }));
  const last = Math.max(40, ...ends.map(({ days }) => days * 1.15));
  const curve = [];
  for (let at = 0; at <= STEPS; at++) {
    const then = await after(job, Number(((at * last) / STEPS).toFixed(3)));
    if (!isCurrent()) return undefined;
    curve.push(...then);
  }
  if (!curve.length) return [el("p", {}, "Say how the cells die off, and the curve is drawn here."), words];
  const band = await uncertain(job, plan, living, curve);
  if (!isCurrent()) return undefined;
  const minimum = [...new Set(living.map(({ minimum }) => minimum?.value).filter(Boolean))];
  const key = legend([
    ["--running", "living cells on a seed"],
    ...(band.length ? [["--left", "as far as the size of the seed may be off"]] : []),
    ...(minimum.length ? [["--stop", "least at planting"]] : []),
    ...(ends.length ? [["┊", "last day to plant"]] : []),
  ]);
  return [key, figure(picture(curve, band, minimum, ends, last), about(living, ends), words)];
}

const doses = (plan) =>
  plan.treatments.flatMap(({ product, orders }) =>
    orders.filter(({ living }) => living).map(({ order, living }) => ({ product, order, series: `${product}, ${order}`, ...living })),
  );

/** When the first seed of each order is treated, where the plan has a clock. */
const firstSeed = (plan) =>
  Object.fromEntries(
    plan.tanks.flatMap(({ batches }) => batches).filter(({ ready_at: at }) => at)
      .flatMap(({ ready_at: at, orders }) => orders.map(({ order }) => [order, Date.parse(at)])).reverse(),
  );

/** The living products in the plan of a job; none once something newer is asked. */
const planned = async (job) => doses((await ask("plan", job)).made ?? { treatments: [] });

/** Mixes do not matter to the cells on a seed, and few of them are soon planned. */
const VAST = "100000 gal";

/** Cells on a seed of each order after so many days: the same job, planted then. Instants do not matter to it. */
async function after(job, days) {
  const planting = ({ plant_on: _, plant_after: __, ...rest } = {}) => ({ ...rest, plant_after: `${days} d` });
  const { work: _, ...rest } = job;
  const asked = {
    ...rest,
    ...(job.tanks && { tanks: job.tanks.map((tank) => ({ ...tank, capacity: VAST })) }),
    after: planting(job.after ?? undefined),
    orders: job.orders.map((order) => (order.after ? { ...order, after: planting(order.after) } : order)),
  };
  return (await planned(asked))
    .filter(({ at_planting: then }) => then)
    .map(({ product, order, series, at_planting: then }) => ({ product, order, series, days, cells: then.value }));
}

/** Where a dose hangs on the size of the seed, and the size may be off: the curve of the least and of the most. */
async function uncertain(job, plan, living, curve) {
  const open = job.orders.map(({ size_tolerance: share }) => (share ? convert(share, "%").value / 100 : 0));
  if (!open.some(Boolean)) return [];
  const { work: _, ...rest } = job;
  const sized = (sign) => {
    const size = ({ seeds, mass }, at) => ({ value: (seeds.value / mass.value) * (1 + sign * open[at]), unit: `seeds/${mass.unit}` });
    const orders = job.orders.map(({ size_tolerance: __, ...order }, at) => ({ ...order, size: size(plan.orders[at], at) }));
    return planned({ ...rest, orders });
  };
  const [small, large] = [await sized(1), await sized(-1)];
  return living.flatMap(({ series, at_treating: { value } }) => {
    const [low, high] = [small, large].map((all) => all.find((one) => one.series === series)?.at_treating.value / value);
    if (!(Math.abs(high - low) >= 1e-6)) return [];
    return curve.filter((point) => point.series === series).map((point) => ({ ...point, low: point.cells * low, high: point.cells * high }));
  });
}

/** From the highest curve to a little below the minimum: where hardly a cell lives is nothing to see. */
function reach(curve, minimum) {
  const all = curve.map((point) => point.cells).filter((value) => value > 0);
  const highest = Math.max(...all, ...minimum);
  const floor = Math.min(...minimum, highest / 1000) / 10;
  return [Math.max(Math.min(...all, ...minimum) / 1.5, floor), highest * 1.5];
}

function picture(curve, band, minimum, ends, last) {
  const labels = named(curve);
  const clip = true;
  return plot({
    height: 340,
    marginLeft: 46,
    marginTop: ends.length ? 30 : 14,
    marginRight: 22,
    x: { label: "days after treating", labelOffset: 36, domain: [0, last], ticks: isNarrow() ? 5 : 10 },
    y: { type: "log", domain: reach(curve, minimum), label: null, grid: true, tickFormat: (value) => (Number.isInteger(Math.log10(value)) ? `10${raised(Math.log10(value))}` : "") },
    marks: [
      Plot.areaY(band.filter(visible), { x: "days", y1: "low", y2: "high", z: "series", fill: "var(--left)", fillOpacity: 0.8, clip, className: "mark-uncertainty" }),
      Plot.ruleY(minimum, { stroke: "var(--stop)", strokeDasharray: "6 4", strokeWidth: 2, className: "mark-minimum" }),
      Plot.line(curve.filter(visible), { x: "days", y: "cells", z: "series", curve: "linear", stroke: "var(--running)", strokeWidth: 2, clip, className: "mark-cells-over-days" }),
      Plot.ruleX(together(ends), { x: "days", stroke: "var(--ink)", strokeDasharray: "2 3", className: "mark-plant-by" }),
      Plot.text(near(together(ends), last), { x: "days", frameAnchor: "top", text: "when", dy: -10, fill: "var(--ink)", className: "mark-plant-by-when" }),
      // The highest curve is named above it, early; the others below theirs, late.
      labels.map((label, at) =>
        Plot.text([label], {
          x: "days", y: "cells", text: "order", dy: at ? 13 : -12, dx: at ? -4 : 4, textAnchor: at ? "end" : "start", fill: "var(--ink)", stroke: "var(--paper)", strokeWidth: 4,
          className: "mark-order",
        }),
      ),
      Plot.text(minimum, { x: 0, y: (value) => value, text: () => "minimum", textAnchor: "start", dx: 6, dy: -9, fill: "var(--stop)", className: "mark-minimum" }),
    ],
  });
}

function about(living, ends) {
  const first = ends.reduce((first, one) => (first && Date.parse(first.plant_by) <= Date.parse(one.plant_by) ? first : one), undefined);
  const carry = `${many(living.length, "order carries", "orders carry")} living cells`;
  return first ? `${carry}; the first to plant is ${first.order}, by ${moment(first.plant_by)}.` : `${carry}.`;
}

/** A logarithm has no place for none. */
const visible = (point) => point.cells > 0;

const MOST_NAMED = 3;
const names = (orders) => (orders.length > (isNarrow() ? 2 : MOST_NAMED) ? `${orders[0]} and ${orders.length - 1} more` : listed(orders));

/** Sorted items, those that are near the first of their cluster together. */
function clusters(items, isNear) {
  const all = [];
  for (const item of items) {
    if (all.length && isNear(all.at(-1)[0], item)) all.at(-1).push(item);
    else all.push([item]);
  }
  return all;
}

/** One label for days that stand too close for one each. */
const near = (ends, last) =>
  clusters(ends, (a, b) => b.days - a.days < last / (isNarrow() ? 3 : 7)).map((all) => ({
    days: (all[0].days + all.at(-1).days) / 2,
    when: `by ${shortDays(all.map(({ plant_by: by }) => by))}`,
  }));

/** One label for orders that share a curve, the highest first. */
function named(curve) {
  const days = [...new Set(curve.map((point) => point.days))].sort((a, b) => a - b);
  const at = (quarters) => curve.filter((point) => point.days === days[(STEPS / 4) * quarters] && visible(point));
  const groups = (points) => clusters(points.sort((a, b) => b.cells - a.cells), (a, b) => Math.log10(a.cells / b.cells) < 0.12);
  const [highest, ...others] = groups(at(3));
  const label = (points) => ({ ...points[0], order: names(points.map(({ order }) => order)) });
  const early = highest && at(1).find(({ series }) => series === highest[0].series);
  return [...(early ? [{ ...early, order: label(highest).order }] : []), ...others.map(label)];
}

/** One line for orders that are to be planted by the same day. */
const together = (ends) => gathered(ends, ({ plant_by: by }) => dayOf(by)).map(([end]) => end).sort((a, b) => a.days - b.days);
