// What to open: one cell for each set.
import { by, el, figure, listed, table } from "../dom.js";
import { product as amount, short as number } from "../number.js";
import { Plot, isNarrow, margin, plot, short } from "./style.js";

const MOST_CELLS = 60;

export function packs(plan) {
  const opened = plan.treatments.flatMap(({ product, packs }) =>
    packs.map((pack) => ({ ...pack, product, name: `${short(product, 26)}: ${short(pack.pack)}` })),
  );
  if (!opened.length) return [el("p", {}, "List the packs of a product, and what to open is drawn here."), words(plan)];
  const most = Math.min(MOST_CELLS, Math.max(...opened.map(({ sets }) => sets)));
  const cells = opened.flatMap(({ name, sets }) => Array.from({ length: Math.min(sets, most) }, (_, at) => ({ name, at: at + 1 })));
  // On a phone a name stands above its sets, else beside them.
  const above = isNarrow() ? 20 : 0;
  // Many sets stand closer, so that each is still seen.
  const gap = most > (isNarrow() ? 20 : 50) ? 0.5 : 2;
  const picture = plot({
    height: 16 + (36 + above) * opened.length,
    marginTop: 8,
    marginBottom: 8,
    marginLeft: above ? 4 : margin(opened.map(({ name }) => name)),
    marginRight: 48,
    // A few sets are not drawn as long as the picture is wide.
    x: { domain: Array.from({ length: Math.max(most, isNarrow() ? 9 : 14) }, (_, at) => at + 1), axis: null },
    y: { label: null, domain: opened.map(({ name }) => name), axis: above ? null : "left" },
    marks: [
      Plot.text(above ? opened : [], { y: "name", frameAnchor: "left", text: "name", textAnchor: "start", dy: -18, fill: "var(--ink)", className: "mark-pack" }),
      Plot.cell(cells, { x: "at", y: "name", fill: "var(--running)", inset: gap, insetTop: 2 + above, insetBottom: 2, rx: 2 * gap, className: "mark-set" }),
      Plot.text(opened, {
        x: ({ sets }) => Math.min(sets, most), y: "name", text: ({ sets }) => `× ${number(sets)}`, dx: isNarrow() ? 16 : 22, dy: above / 2, textAnchor: "start", fontWeight: "bold", fill: "var(--ink)",
        className: "mark-number-of-sets",
      }),
    ],
  });
  return figure(picture, `${listed(opened.map(({ sets, pack, product }) => `${number(sets)} × ${pack} of ${product}`))}.`, words(plan));
}

function words({ treatments }) {
  return table("Needed and opened", by(treatments, {
    Product: ({ product }) => product,
    Needed: ({ needed }) => amount(needed),
    Between: ({ needed_low: low, needed_high: high }) => low && `${amount(low)} to ${amount(high)}`,
    Open: ({ packs }) => packs.map(({ sets, pack }) => `${number(sets)} × ${pack}`).join(", "),
    Cases: ({ packs }) => packs.map(({ cases }) => cases).filter(Boolean).join(", "),
    "Left over": ({ leftover }) => amount(leftover),
  }));
}
