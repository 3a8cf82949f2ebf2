// What to open: one cell for each set.
import { format } from "hilum";
import { el, figure, table } from "../dom.js";
import { Plot, plot, short } from "./style.js";

export function packs(plan) {
  const opened = plan.treatments.flatMap(({ product, packs = [], leftover }) =>
    packs.map((pack) => ({ ...pack, product, leftover, name: `${short(product, document.querySelector("#plan").clientWidth < 500 ? 12 : 20)}: ${pack.pack}` })),
  );
  if (!opened.length) return el("p", {}, "List the packs of a product, and what to open is drawn here.");
  const cells = opened.flatMap(({ name, sets }) => Array.from({ length: Math.min(sets, 200) }, (_, at) => ({ name, at: at + 1 })));
  const picture = plot({
    height: 16 + 34 * opened.length,
    marginTop: 8,
    marginBottom: 8,
    marginLeft: Math.min(190, document.querySelector("#plan").clientWidth * 0.42),
    x: { label: "sets", domain: Array.from({ length: Math.max(...opened.map(({ sets }) => Math.min(sets, 200))) }, (_, at) => at + 1), axis: null },
    y: { label: null, domain: opened.map(({ name }) => name) },
    marks: [
      Plot.cell(cells, { x: "at", y: "name", fill: "var(--running)", inset: 2, rx: 3, className: "mark-set" }),
      Plot.text(opened, {
        x: () => 1, y: "name", text: (pack) => `${pack.sets}`, fill: "var(--on-running)", fontWeight: "bold", className: "mark-number-of-sets",
      }),
    ],
  });
  const rows = plan.treatments.map(({ product, needed, packs = [], leftover }) => [
    product,
    format(needed),
    packs.map(({ sets, pack }) => `${sets} × ${pack}`).join(" and ") || undefined,
    packs.map(({ cases }) => cases).filter(Boolean).join(" and ") || undefined,
    leftover && format(leftover),
  ]);
  const about = `${opened.map(({ sets, pack, product }) => `${sets} × ${pack} of ${product}`).join(", ")}.`;
  return figure(picture, about, table("Needed and opened", ["Product", "Needed", "Open", "Cases", "Left over"], rows));
}
