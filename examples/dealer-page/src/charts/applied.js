// What was applied: how far each rate is from its target, with what the readings leave open.
import { el, figure, legend } from "../dom.js";
import { off, percent } from "../number.js";
import { Plot, isNarrow, plot, room } from "./style.js";

export const VERDICTS = {
  low: { words: "low", symbol: "triangle", rotate: 180, sign: "▼", colour: "--stop" },
  on_target: { words: "on target", symbol: "circle", sign: "●", colour: "--running" },
  high: { words: "high", symbol: "triangle", sign: "▲", colour: "--stop" },
  cannot_tell: { words: "cannot tell", symbol: "square", sign: "■", colour: "--warn" },
};

export function applied(account) {
  const rates = account.orders.flatMap(({ order, tanks, dry = [] }) =>
    [...tanks.map((one) => ({ ...one, from: one.tank })), ...dry.map((one) => ({ ...one, from: one.product }))].map(
      ({ from, deviation, uncertainty, target, verdict }) => ({
        name: `${order} ${from}`, order, from, deviation, verdict, open: uncertainty ? uncertainty.value / target.value : undefined,
      }),
    ),
  );
  if (!rates.length) return el("p", {}, "Enter what the gauges of a tank showed, and the rates are drawn here.");
  const reach = Math.max(account.tolerance * 1.5, ...rates.map(({ deviation, open = 0 }) => Math.abs(deviation) + open)) * 105;
  const picture = plot({
    height: 64 + 22 * rates.length,
    marginLeft: Math.min(150, room() * 0.4),
    marginRight: 14,
    x: { label: "off its target, %", labelOffset: 36, percent: true, domain: [-reach, reach], grid: true, ticks: isNarrow() ? 5 : 9 },
    y: { label: null, domain: rates.map(({ name }) => name) },
    marks: [
      Plot.rect([account.tolerance], { x1: (share) => -share, x2: (share) => share, fill: "var(--shift)", className: "mark-tolerance" }),
      Plot.ruleX([0], { stroke: "var(--ink)", className: "mark-target" }),
      Plot.ruleY(rates.filter(({ open }) => open), {
        x1: ({ deviation, open }) => deviation - open, x2: ({ deviation, open }) => deviation + open, y: "name", stroke: "var(--ink)", strokeWidth: 2, className: "mark-uncertainty",
      }),
      Object.entries(VERDICTS).map(([verdict, { symbol, rotate, colour }]) =>
        Plot.dot(rates.filter((rate) => rate.verdict === verdict), {
          x: "deviation", y: "name", symbol, rotate, fill: `var(${colour})`, stroke: "var(--paper)", r: 6, className: `mark-${verdict.replace("_", "-")}`,
        }),
      ),
    ],
  });
  const most = rates.reduce((most, one) => (Math.abs(one.deviation) > Math.abs(most.deviation) ? one : most));
  const about = `Furthest from its target: ${most.from} on order ${most.order}, ${off(most.deviation)}.`;
  const met = new Set(rates.map(({ verdict }) => verdict));
  const signs = Object.entries(VERDICTS).filter(([verdict]) => met.has(verdict)).map(([, { sign, words }]) => [sign, words]);
  const lines = rates.some(({ open }) => open) ? [["━", "what the readings leave open"]] : [];
  return [legend([["--shift", `within ${percent(account.tolerance)}`], ...signs, ...lines]), figure(picture, about)];
}
