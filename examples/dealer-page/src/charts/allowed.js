// What is allowed: the share of each limit that is used, against the whole of it.
import { by, el, figure, table } from "../dom.js";
import { percent } from "../number.js";
import { Plot, gathered, isNarrow, letters, margin, plot, short } from "./style.js";

export function allowed(plan) {
  const season = plan.actives
    .filter(({ share_of_season_limit: share }) => share !== undefined)
    .map(({ active, order, share_of_season_limit: share }) => ({ order, limit: `season, ${active}`, share }));
  const liquid = plan.orders
    .filter(({ liquid }) => liquid.limit)
    .map(({ order, liquid }) => ({ order, limit: "liquid on the seed", share: liquid.per_mass.value / liquid.limit.value }));
  const shares = [...liquid, ...season];
  if (!shares.length) return el("p", {}, "Give limits, and the share of each is drawn here.");
  return limits(shares, table("Shares of the limits", by(shares, {
    "Limit and order": ({ limit, order }) => `${limit}: ${order}`,
    Used: ({ share }) => percent(share),
  })));
}

/** Whether a bar has room for its number; else the number stands behind it. */
const isLong = ({ share }) => share > 0.5;
const share = (rows, options) => Plot.text(rows, { x: "share", y: "name", text: ({ share }) => percent(share), className: "mark-share", ...options });

const MOST_BARS = 36;

/** A bar for each limit of each order; of very many, those nearest to their limit. */
export function limits(shares, words) {
  const nearest = new Set([...shares].sort((a, b) => b.share - a.share).slice(0, MOST_BARS));
  const ofOne = gathered(shares.filter((one) => nearest.has(one)), ({ limit }) => limit).flat();
  const rows = ofOne.map((one) => {
    const limit = one.limit.replace("season, ", "").replace(" on the seed", "");
    return { ...one, name: `${short(limit, Math.min(24, letters() - one.order.length - 3))} · ${one.order}` };
  });
  const picture = plot({
    height: 64 + 22 * rows.length,
    marginTop: 28,
    marginLeft: margin(rows.map(({ name }) => name)),
    marginRight: isNarrow() ? 36 : 20,
    x: { label: "share of the limit, %", labelOffset: 36, percent: true, domain: [0, Math.max(110, ...rows.map(({ share }) => share * 115))], grid: true, ticks: isNarrow() ? 4 : 8 },
    y: { label: null, domain: rows.map(({ name }) => name) },
    marks: [
      Plot.barX(rows, {
        x: "share", y: "name", fill: ({ share }) => (share > 1 ? "var(--stop)" : "var(--running)"), className: "mark-share-of-a-limit", insetTop: 2, insetBottom: 2,
      }),
      Plot.ruleX([1], { stroke: "var(--stop)", strokeWidth: 2, className: "mark-the-limit" }),
      share(rows.filter(isLong), { textAnchor: "end", dx: -5, fill: "var(--on-running)" }),
      share(rows.filter((row) => !isLong(row)), { textAnchor: "start", dx: 5, fill: "var(--ink)" }),
      Plot.text([1], { x: [1], frameAnchor: "top", text: () => "the limit", dy: -14, fill: "var(--stop)", className: "mark-the-limit" }),
    ],
  });
  const most = shares.reduce((most, one) => (one.share > most.share ? one : most));
  const left = shares.length - rows.length;
  const about = `Nearest to its limit: ${most.limit}, order ${most.order}, ${percent(most.share)}.${left ? ` ${left} more are further off.` : ""}`;
  return figure(picture, about, words);
}
