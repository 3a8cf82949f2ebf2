// The day: shifts behind, a bar for each mix from its first minute to its last use.
import { oneDay, time, timeUp, wall } from "../clock.js";
import { by, el, figure, legend, many, table } from "../dom.js";
import { product } from "../number.js";
import { Plot, isNarrow, margin, plot } from "./style.js";

export function day(job, plan) {
  const mixes = plan.tanks
    .flatMap(({ tank, batches }) => batches.map((batch) => ({ ...batch, name: `${tank} ${batch.number}` })))
    .filter(({ mix_at: begin }) => begin)
    .sort((a, b) => Date.parse(a.mix_at) - Date.parse(b.mix_at));
  if (!mixes.length) return el("p", {}, "Give shifts and the treater’s seed flow, and the day is drawn here.");
  const end = (mix) => mix.use_by ?? mix.done_at ?? mix.ready_at;
  const discards = mixes.filter(({ discarded }) => discarded.value > 0);
  const shifts = (job.work ?? []).map(({ from, to }) => ({ from: wall(from), to: wall(to) }));
  const today = oneDay([...shifts.map(({ from }) => from.toISOString()), ...mixes.map(({ mix_at: at }) => at)]);
  const bar = (from, to, fill, name) =>
    Plot.barX(mixes.filter((mix) => from(mix) && to(mix)), {
      x1: (mix) => wall(from(mix)), x2: (mix) => wall(to(mix)), y: "name", fill, className: `mark-${name.replaceAll(" ", "-")}`, insetTop: 3, insetBottom: 3,
    });
  const domain = span(today, shifts, mixes);
  const names = mixes.map(({ name }) => name);
  const picture = plot({
    height: 60 + 32 * mixes.length,
    marginLeft: margin(names),
    marginRight: 22,
    x: { type: "utc", label: null, grid: true, domain, ticks: ticks(today, domain), tickFormat: today ? "%H:%M" : "%-d %b" },
    y: { label: null, domain: names },
    marks: [
      Plot.rect(shifts, { x1: "from", x2: "to", fill: "var(--shift)", className: "mark-shift" }),
      bar((mix) => mix.done_at, end, "var(--left)", "pot life left"),
      bar((mix) => mix.mix_at, (mix) => mix.ready_at, "var(--mixing)", "mixing"),
      bar((mix) => mix.ready_at, (mix) => mix.done_at, "var(--running)", "running"),
      runs(mixes, today),
      Plot.tickX(mixes.filter(({ use_by: by }) => by), {
        x: (mix) => wall(mix.use_by), y: "name", stroke: "var(--stop)", strokeWidth: 3, className: "mark-use-by",
      }),
      Plot.dot(discards, {
        x: (mix) => wall(mix.done_at), y: "name", symbol: "circle", fill: "var(--paper)", stroke: "var(--stop)", strokeWidth: 1.5, r: 8, className: "mark-discarded",
      }),
      Plot.dot(discards, { x: (mix) => wall(mix.done_at), y: "name", symbol: "times", stroke: "var(--stop)", strokeWidth: 2.5, r: 4, className: "mark-discarded-sign" }),
    ],
  });
  const words = table("Mixes of the day", by(mixes, {
    Mix: ({ name }) => name,
    Begin: (mix) => time(mix.mix_at, today),
    Ready: (mix) => timeUp(mix.ready_at, today),
    Empty: (mix) => time(mix.done_at, today),
    "Use by": (mix) => time(mix.use_by, today),
    Runs: ({ orders }) => orders.map(({ order }) => order).join(", "),
    "Thrown away": (mix) => (discards.includes(mix) ? product(mix.discarded) : undefined),
  }));
  const key = legend([
    ["--mixing", "mixing"], ["--running", "running"], ["--left", "good for longer"], ["--stop", "use by"], ["--shift", "shift"],
    ...(discards.length ? [["⊗", "what is left is thrown away"]] : []),
  ]);
  const last = mixes.map(({ done_at: at }) => at).filter(Boolean).sort((a, b) => Date.parse(a) - Date.parse(b)).at(-1);
  const about = `${many(mixes.length, "mix", "mixes")}, from ${time(mixes[0].mix_at, today)} to ${timeUp(last, today)}${discards.length ? `; of ${discards.length} something is thrown away` : ""}.`;
  return [key, figure(picture, about, words)];
}

const DAY = 86_400_000;

/** From the first to the last of what is drawn; whole days where there are several. */
function span(today, shifts, mixes) {
  const all = [...shifts.flatMap(({ from, to }) => [from, to]), ...mixes.flatMap((mix) => [mix.mix_at, mix.done_at, mix.use_by].filter(Boolean).map(wall))];
  const ends = [Math.min(...all), Math.max(...all)];
  return (today ? ends : [Math.floor(ends[0] / DAY) * DAY, Math.ceil(ends[1] / DAY) * DAY]).map((at) => new Date(at));
}

/** Hours of one day; the days of several, not more than can be read. */
function ticks(today, [first, last]) {
  if (today) return isNarrow() ? 4 : 10;
  const days = (last - first) / DAY;
  const every = Math.ceil(days / (isNarrow() ? 4 : 10));
  return Array.from({ length: Math.floor(days / every) + 1 }, (_, at) => new Date(first.getTime() + at * every * DAY));
}

/** What a bar runs, where the day is drawn wide enough to read it. */
function runs(mixes, today) {
  const done = mixes.filter(({ ready_at: from, done_at: to }) => from && to);
  const span = Math.max(...done.map(({ done_at: to }) => Date.parse(to))) - Math.min(...done.map(({ mix_at: from }) => Date.parse(from)));
  const words = ({ orders }) => orders.map(({ order }) => order).join(", ");
  const letter = isNarrow() ? 0.045 : 0.0125;
  // The sign of what is thrown away stands on the end of a bar.
  const room = (mix) => words(mix).length + (mix.discarded.value > 0 ? 6 : 3);
  const fits = (mix) => (Date.parse(mix.done_at) - Date.parse(mix.ready_at)) / span > room(mix) * letter;
  return Plot.text(today ? done.filter(fits) : [], {
    x: (mix) => new Date((wall(mix.ready_at).getTime() + wall(mix.done_at).getTime()) / 2), y: "name", text: words, fill: "var(--on-running)", className: "mark-runs",
  });
}
