// What is allowed: the share of each limit that is used, against the whole of it.
import { convert } from "hilum";
import { by, el, figure, listed, table } from "../dom.js";
import { percent } from "../number.js";
import { Plot, gathered, isNarrow, margin, plot, short } from "./style.js";

export function allowed(job, plan) {
  const liquid = plan.orders
    .filter(({ liquid }) => liquid.limit)
    .map(({ order, liquid }) => ({ order, limit: "liquid on the seed", share: liquid.per_mass.value / liquid.limit.value }));
  const shares = [...liquid, ...rates(job, plan), ...actives(job, plan)];
  if (!shares.length) return el("p", {}, "Give limits, and the share of each is drawn here.");
  return limits(shares, table("Shares of the limits", by(shares, {
    "Limit and order": ({ limit, order }) => `${limit}: ${order}`,
    Used: ({ share }) => percent(share),
  })));
}

/** The part of a limit that amounts use, whichever of them is in its basis. */
function used(limit, amounts) {
  for (const { value, unit } of amounts.filter(Boolean)) {
    try {
      return value / convert(limit, unit).value;
    } catch {
      // Another basis; the next may be the limit's.
    }
  }
  return undefined;
}

const words = (quantity) => (typeof quantity === "string" ? quantity : `${quantity.value} ${quantity.unit}`);

/** The most that each label allows, for each order. */
function rates(job, plan) {
  return plan.treatments.flatMap(({ product, orders }) => {
    const label = job.treatments.find((one) => one.product === product);
    if (!label.max_rate) return [];
    return orders.flatMap(({ order, per_mass, per_seed, per_area }) => {
      const own = job.orders.find((one) => one.order === order);
      // A unit and a bushel are what the label says they are, else the order.
      const [unit, bushel] = [label.label_unit ?? own.unit, label.label_bushel ?? own.bushel];
      const most = words(label.max_rate)
        .replace(/\/units?$/, unit ? `/${words(unit)}` : "$&")
        .replace(/\/bu$/, bushel ? `/${words(bushel)}` : "$&");
      const share = used(most, [per_mass, per_seed, per_area]);
      return share === undefined ? [] : [{ order, limit: `${product}, label rate`, share }];
    });
  });
}

function actives(job, plan) {
  const given = (name) => job.actives?.find(({ active }) => active === name) ?? {};
  return plan.actives.flatMap(({ active, order, per_seed: seed, per_mass: mass, share_of_season_limit: season }) => {
    const { max_per_seed: mostSeed, max_per_mass: mostMass } = given(active);
    return [
      { limit: `${active}, in the season`, share: season },
      { limit: `${active}, by mass of seed`, share: mostMass && used(mostMass, [mass]) },
      { limit: `${active}, on one seed`, share: mostSeed && used(mostSeed, [seed]) },
    ].filter(({ share }) => share !== undefined).map((one) => ({ order, ...one }));
  });
}

const MOST_BARS = 36;

/** Orders that use the same share of one limit, together. */
function bars(shares) {
  const nearest = new Set([...shares].sort((a, b) => b.share - a.share).slice(0, MOST_BARS));
  const shown = shares.filter((one) => nearest.has(one));
  return gathered(shown, ({ limit }) => limit).flatMap((ofOne) =>
    gathered(ofOne, ({ share }) => share.toPrecision(9)).map((alike) => {
      const names = alike.map(({ order }) => order);
      const orders = names.length > 2 ? `${names.length} orders` : names.join(", ");
      return { ...alike[0], name: `${short(alike[0].limit, 34)} · ${orders}` };
    }),
  );
}

/** Whether a bar has room for its number; else the number stands behind it. */
const isLong = ({ share }) => share > 0.5;

/** A bar for each limit and what uses it; of very many, those nearest to their limit. */
export function limits(shares, more) {
  const rows = bars(shares);
  // On a phone a name stands above its bar, else beside it.
  const above = isNarrow() ? 18 : 0;
  const numbers = (rows, options) => Plot.text(rows, { x: "share", y: "name", text: ({ share }) => percent(share), dy: above / 2, className: "mark-share", ...options });
  const picture = plot({
    height: 70 + (22 + above) * rows.length,
    marginTop: 28,
    marginLeft: above ? 4 : margin(rows.map(({ name }) => name)),
    marginRight: 20,
    x: { label: "share of the limit, %", labelOffset: 36, percent: true, domain: [0, Math.max(110, ...rows.map(({ share }) => share * 115))], grid: true, ticks: isNarrow() ? 5 : 8 },
    y: { label: null, domain: rows.map(({ name }) => name), axis: above ? null : "left" },
    marks: [
      Plot.barX(rows, {
        x: "share", y: "name", fill: ({ share }) => (share > 1 ? "var(--stop)" : "var(--running)"), className: "mark-share-of-a-limit", insetTop: 2 + above, insetBottom: 2,
      }),
      Plot.ruleX([1], { stroke: "var(--stop)", strokeWidth: 2, className: "mark-the-limit" }),
      numbers(rows.filter(isLong), { textAnchor: "end", dx: -5, fill: "var(--on-running)" }),
      numbers(rows.filter((row) => !isLong(row)), { textAnchor: "start", dx: 5, fill: "var(--ink)" }),
      Plot.text(above ? rows : [], {
        y: "name", frameAnchor: "left", text: "name", textAnchor: "start", dy: -10, fill: "var(--ink)", stroke: "var(--paper)", strokeWidth: 4, className: "mark-limit",
      }),
      Plot.text([1], { x: [1], frameAnchor: "top", text: () => "the limit", dy: -14, fill: "var(--stop)", className: "mark-the-limit" }),
    ],
  });
  const most = shares.reduce((most, one) => (one.share > most.share ? one : most));
  const alike = shares.filter(({ limit, share }) => limit === most.limit && Math.abs(share - most.share) < 1e-9).map(({ order }) => order);
  const left = Math.max(0, shares.length - MOST_BARS);
  const about = `Nearest to its limit: ${most.limit}, ${alike.length > 4 ? `${alike.length} orders` : listed(alike)}, ${percent(most.share)}.${left ? ` ${left} more are further off.` : ""}`;
  return figure(picture, about, more);
}
