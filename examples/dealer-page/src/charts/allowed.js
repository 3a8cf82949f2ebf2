// What is allowed: the share of each limit that is used, against the whole of it.
import { el, figure, table } from "../dom.js";
import { Plot, plot, short } from "./style.js";

export function allowed(job, plan) {
  const season = (plan.actives ?? [])
    .filter(({ share_of_season_limit: share }) => share !== undefined)
    .map(({ active, order, share_of_season_limit: share }) => ({ order, limit: `season, ${active}`, share }));
  const liquid = plan.orders
    .filter(({ liquid }) => liquid.limit)
    .map(({ order, liquid }) => ({ order, limit: "liquid on the seed", share: liquid.per_mass.value / liquid.limit.value }));
  const shares = [...season, ...liquid];
  if (!shares.length) return el("p", {}, "Give limits, and the share of each is drawn here.");
  for (const one of shares) one.name = `${one.order} ${short(one.limit.replace("season, ", "").replace(" on the seed", ""), 17)}`;
  const picture = plot({
    height: 64 + 22 * shares.length,
    marginLeft: Math.min(170, document.querySelector("#plan").clientWidth * 0.42),
    marginRight: 12,
    x: { label: "share of the limit, %", labelOffset: 36, percent: true, domain: [0, Math.max(110, ...shares.map(({ share }) => share * 105))], grid: true },
    y: { label: null, domain: shares.map(({ name }) => name) },
    marks: [
      Plot.barX(shares, {
        x: "share", y: "name", fill: ({ share }) => (share > 1 ? "var(--stop)" : "var(--running)"), className: "mark-share-of-a-limit", insetTop: 2, insetBottom: 2,
      }),
      Plot.ruleX([1], { stroke: "var(--stop)", strokeWidth: 2, className: "mark-the-limit" }),
    ],
  });
  const percent = new Intl.NumberFormat(document.documentElement.lang, { style: "percent", maximumFractionDigits: 1 });
  const most = shares.reduce((most, one) => (one.share > most.share ? one : most));
  const about = `Nearest to its limit: ${most.limit}, order ${most.order}, ${percent.format(most.share)}.`;
  return figure(picture, about, table("Shares of the limits", ["Limit and order", "Used"], shares.map(({ limit, order, share }) => [`${limit}: ${order}`, percent.format(share)])));
}
