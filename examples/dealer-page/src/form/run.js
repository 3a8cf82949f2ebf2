// What a run asks: what scales, gauges and clocks showed, order by order.
import { choice, instant, list, q, reading, rows, step, text, way, ways, group } from "./kinds.js";

const one = (label, of) => [reading("", label, of), step("", "… read to", of)];
const added = (of) => rows("added", "Put in meanwhile", "reading", one("Put in", of));
const lost = (of) => rows("lost", "Drawn, but not on seed (priming, flushing, spills)", "reading", one("Lost", of));

const readings = (of, words) => [
  reading("start", `${words} before`, of),
  reading("end", `${words} after`, of),
  added(of),
  lost(of),
  q("resolution", "Read to", of, "the smallest step that the instrument shows"),
];

const tank = [
  text("tank", "Tank", undefined, ({ job }) => (job.tanks ?? []).map(({ tank }) => tank)),
  ...readings("fill", "In the tank"),
  group("Where readings differ", [
    step("start", "Before: read to", "fill"),
    step("end", "After: read to", "fill"),
    q("density", "Density of the mix", "density", "if not from its parts"),
  ]),
];

const dry = [
  text("product", "Product", "put on dry", ({ job }) => (job.treatments ?? []).filter(({ tank }) => !tank).map(({ product }) => product)),
  ...readings("mass", "There"),
];

const seed = [
  ways("Seed was weighed", [
    way("as one amount", [reading("seed.mass", "Seed treated", "mass"), step("seed.mass", "… read to", "mass")]),
    way("at the start and at the end", [
      reading("seed.start", "The scale before", "mass"),
      reading("seed.end", "The scale after", "mass"),
      step("seed.start", "Before: read to", "mass"),
      step("seed.end", "After: read to", "mass"),
    ]),
  ]),
  choice("seed.weighed", "Weighed", [
    [undefined, "what is usual: before treating"],
    ["before", "before treating"],
    ["after", "after treating, with what is on it"],
  ]),
  q("seed.resolution", "Read to", "mass", "the smallest step that the scale shows"),
];

const order = [
  text("order", "Order", undefined, ({ job }) => job.orders.map(({ order }) => order)),
  group("Seed", seed),
  list("tanks", "Tanks", "tank", tank),
  list("dry", "Dry products", "product", dry),
  group("When, where and who", [
    instant("from", "First seed"),
    instant("to", "Last seed"),
    text("operator", "Applied by"),
    text("certificate", "Certificate or licence"),
    text("place", "Place"),
  ]),
];

/** The next order that was planned and not yet written down, with the tanks and dry products that it gets. */
function next({ job, orders = [] }) {
  const written = new Set(orders.map(({ order }) => order));
  const planned = job.orders.find(({ order }) => !written.has(order));
  if (!planned) return {};
  const gets = (product) => !planned.treat || planned.treat.includes(product);
  const own = (job.treatments ?? []).filter(({ product }) => gets(product));
  const tanks = [...new Set(own.map(({ tank }) => tank).filter(Boolean))].map((tank) => ({ tank }));
  const dry = own.filter(({ tank }) => !tank).map(({ product }) => ({ product }));
  return { order: planned.order, seed: {}, ...(tanks.length && { tanks }), ...(dry.length && { dry }) };
}

export const RUN = [
  { ...group("Run", [q("tolerance", "A rate may be off by", "share", "5 % if nobody says")]), open: true },
  { ...list("orders", "Orders that were run", "order", order, undefined, next), open: true },
];
