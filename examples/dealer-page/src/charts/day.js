// The day: shifts behind, a bar for each mix from its first minute to its last use.
import { el, figure, table } from "../dom.js";
import { Plot, plot, wall } from "./style.js";

const clock = (instant) => instant?.slice(11, 16);

/** How many days the mixes and shifts touch. */
const days = (shifts, mixes) =>
  new Set([...shifts.map(({ from }) => from.toISOString()), ...mixes.map(({ mix_at: at }) => at)].map((at) => at.slice(0, 10))).size;

export function day(job, plan) {
  const mixes = plan.tanks
    .flatMap(({ tank, batches = [] }) => batches.map((batch) => ({ ...batch, name: `${tank} ${batch.number}` })))
    .filter(({ mix_at: begin }) => begin)
    .sort((a, b) => a.mix_at.localeCompare(b.mix_at));
  if (!mixes.length) return el("p", {}, "Give shifts and the treater’s seed flow, and the day is drawn here.");
  const end = (mix) => mix.use_by ?? mix.done_at ?? mix.ready_at;
  const discards = mixes.filter(({ discarded }) => discarded.value > 0);
  const shifts = (job.work ?? []).map(({ from, to }) => ({ from: wall(from), to: wall(to) }));
  const bar = (from, to, fill, name, rows = mixes) =>
    Plot.barX(rows.filter((mix) => from(mix) && to(mix)), {
      x1: (mix) => wall(from(mix)), x2: (mix) => wall(to(mix)), y: "name", fill, className: `mark-${name.replaceAll(" ", "-")}`, insetTop: 3, insetBottom: 3,
    });
  const picture = plot({
    height: 60 + 30 * mixes.length,
    x: { type: "utc", label: null, grid: true, tickFormat: days(shifts, mixes) > 1 ? "%d %b %H:%M" : "%H:%M" },
    y: { label: null, domain: mixes.map(({ name }) => name) },
    marks: [
      Plot.rect(shifts, { x1: "from", x2: "to", fill: "var(--shift)", className: "mark-shift" }),
      bar((mix) => mix.done_at, end, "var(--left)", "pot life left"),
      bar((mix) => mix.mix_at, (mix) => mix.ready_at, "var(--mixing)", "mixing"),
      bar((mix) => mix.ready_at, (mix) => mix.done_at, "var(--running)", "running"),
      Plot.tickX(mixes.filter(({ use_by: by }) => by), {
        x: (mix) => wall(mix.use_by), y: "name", stroke: "var(--stop)", strokeWidth: 3, className: "mark-use-by",
      }),
      Plot.dot(discards, {
        x: (mix) => wall(mix.done_at), y: "name", symbol: "times", stroke: "var(--ink)", strokeWidth: 2, r: 6, className: "mark-discarded",
      }),
    ],
  });
  const rows = mixes.map((mix) => [
    mix.name, clock(mix.mix_at), clock(mix.ready_at), clock(mix.done_at), clock(mix.use_by), mix.orders.map(({ order }) => order).join(", "),
  ]);
  const legend = el(
    "p",
    { class: "legend" },
    ...[["mixing", "mixing"], ["running", "running"], ["left", "pot life left"], ["stop", "use by"], ["shift", "shift"]].map(
      ([color, words]) => el("span", {}, el("i", { style: `background: var(--${color})` }), words),
    ),
    discards.length ? el("span", {}, "✕ what is left is thrown away") : undefined,
  );
  const about = `${mixes.length} mixes between ${clock(mixes[0].mix_at)} and ${mixes.map((mix) => clock(mix.done_at)).sort().at(-1)}.`;
  return [legend, figure(picture, about, table("Mixes of the day", ["Mix", "Begin", "Ready", "Empty", "Use by", "Runs"], rows))];
}
