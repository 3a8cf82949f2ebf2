// The plan as words and pictures, section by section.
import { alive } from "../charts/alive.js";
import { allowed } from "../charts/allowed.js";
import { day } from "../charts/day.js";
import { packs } from "../charts/packs.js";
import { oneDay, shortDay, time, timeUp } from "../clock.js";
import { gathered } from "../charts/style.js";
import { body, by, el, facts, inRow, listed, many, table, together } from "../dom.js";
import { atMost, column, count, counts, money, off, percent, product, roundly, seed, seeds, setting, short } from "../number.js";
import { findings } from "./findings.js";

export function showPlan(job, plan, goTo) {
  body("short", inShort(job, plan));
  findings("findings", plan.findings, "Nothing was found that stands against this plan.", goTo);
  body("day", day(job, plan));
  body("open-packs", packs(plan), cost(job, plan));
  body("pour", pours(job, plan), drying(job, plan), dry(plan));
  body("pump", orders(job, plan));
  body("allowed", allowed(job, plan));
  body("tag", tags(plan));
}

/** Drawn after the rest: the curve asks the planner for many days. */
export async function showAlive(job, plan, isCurrent) {
  const section = document.querySelector("#alive");
  section.setAttribute("aria-busy", "true");
  const drawn = await alive(job, plan, isCurrent);
  if (!drawn) return;
  body("alive", drawn);
  section.removeAttribute("aria-busy");
}

const batchesOf = (plan) => plan.tanks.flatMap(({ batches }) => batches);

function inShort(job, plan) {
  const [first] = plan.orders;
  const mass = first && { value: plan.orders.reduce((sum, { mass }) => sum + mass.value, 0), unit: first.mass.unit };
  const crops = [...new Set(job.orders.map(({ crop }) => crop).filter(Boolean))];
  const batches = batchesOf(plan);
  const begins = batches.map(({ mix_at: at }) => at).filter(Boolean).sort();
  const ends = batches.map(({ done_at: at }) => at).filter(Boolean).sort();
  const day = oneDay([...begins, ...ends]);
  const living = plan.treatments.flatMap(({ orders }) => orders.map(({ order, living }) => ({ order, by: living?.plant_by })));
  const [soonest] = living.filter(({ by }) => by).sort((a, b) => Date.parse(a.by) - Date.parse(b.by));
  return facts([
    ["Seed", mass && seed(mass), [`in ${many(plan.orders.length, "order")}`, crops.length ? `of ${listed(crops)}` : ""].join(" ")],
    ["Mixes", batches.length ? String(batches.length) : undefined, `in ${listed(plan.tanks.map(({ tank }) => tank))}`],
    ["Begin", begins[0] && time(begins[0], day), undefined],
    ["Last seed", ends.length ? timeUp(ends.at(-1), day) : undefined, undefined],
    ["Plant by", soonest && shortDay(soonest.by), soonest && ["first ", together(soonest.order)]],
    ["Opened for", plan.cost && roundly(plan.cost.opened, job.currency)],
  ]);
}

function cost(job, plan) {
  if (!plan.cost) return [];
  const { opened, applied, per_unit: unit, per_area: area } = plan.cost;
  const per = [unit && `${money(unit)} a unit`, area && `${money(area)} a${job.units === "us" ? "n acre" : " hectare"}`].filter(Boolean);
  return el("p", {}, `Opened for ${money(opened, job.currency)}; what goes on the seed is worth ${money(applied, job.currency)}${per.length ? ` (${per.join(", ")})` : ""}.`);
}

const runs = (batch) => batch.orders.map(({ order, mass }) => `${order} ${seed(mass)}`).join(", ");
const content = (batch) => [batch.mix_at, runs(batch), ...batch.pour.map(({ volume }) => product(volume))].join();

/** Mixes that follow each other and read the same, together. */
function alike(batches) {
  const groups = [];
  for (const batch of batches) {
    const last = groups.at(-1);
    if (last && !batch.mix_at && content(last.batch) === content(batch)) last.to = batch.number;
    else groups.push({ batch, to: batch.number });
  }
  return groups;
}

function pours(job, plan) {
  const today = oneDay(batchesOf(plan).map(({ mix_at: at }) => at));
  return plan.tanks.map(({ tank, recipes, batches }) => {
    const own = job.tanks.find((one) => one.tank === tank);
    const parts = ({ parts, orders }) => `${parts.map((part) => `${percent(part.share)} ${part.product ?? "water"}`).join(" + ")} (${orders.join(", ")})`;
    return el(
      "div",
      { class: "tank" },
      el("h3", {}, tank, own?.agitated ? el("small", {}, " keep agitated") : undefined),
      el("div", { class: "mixes" }, alike(batches).map((group) => mix(tank, group, today))),
      recipes.length ? el("details", {}, el("summary", {}, `Recipes by volume (${recipes.length})`), recipes.map((recipe) => el("p", {}, parts(recipe)))) : undefined,
    );
  });
}

function mix(tank, { batch, to }, today) {
  const pour = [...batch.pour, { product: "in the tank", volume: batch.mixed }];
  const amount = ({ volume, mass }) => (mass ? el("span", {}, product(volume), el("small", {}, product(mass))) : product(volume));
  const sets = batch.sets.map(({ pack, sets }) => `${sets} × ${pack}`);
  const own = batch.mix_at?.slice(0, 10);
  const counts = ({ value }) => value > batch.mixed.value * 1e-9;
  const rest = [
    counts(batch.hold_up) && `${product(batch.hold_up)} fills the lines`,
    counts(batch.discarded) && `${product(batch.discarded)} is thrown away`,
  ].filter(Boolean);
  const clocks = [
    ["begin", time(batch.mix_at, today)],
    ["ready", timeUp(batch.ready_at, own)],
    ["empty", time(batch.done_at, own)],
    ["use by", time(batch.use_by, own)],
  ].filter(([, at]) => at);
  const number = to === batch.number ? `mix ${to}` : `mixes ${batch.number} to ${to}, each`;
  return el(
    "article",
    { class: "mix" },
    el("h4", {}, `${tank}, ${number}`),
    clocks.length ? el("p", { class: "clocks" }, clocks.map(([word, at]) => el("span", { class: word === "use by" ? "use-by" : false }, `${word} `, el("strong", {}, at)))) : undefined,
    table(`Pour into ${tank}, ${number}`, by(pour, { Pour: ({ product }) => product ?? "water", Amount: amount }), { sum: true }),
    sets.length ? el("p", {}, `Opens ${listed(sets)}.`) : undefined,
    rest.length ? el("p", {}, `${rest.join(", ")}.`) : undefined,
    el("p", {}, "Runs ", inRow(batch.orders.map(({ order, mass }) => `${order} ${seed(mass)}`))),
  );
}

/** Where a maker wants the seed dry between two products. */
function drying(job, plan) {
  const withProduct = (name) => plan.treatments.find((one) => one.product === name)?.orders.map(({ order }) => order) ?? [];
  return job.treatments.flatMap(({ product, with_living: declared }) =>
    (declared ?? []).filter((one) => one.dry_between).map(({ living }) => {
      const other = new Set(withProduct(living));
      const both = withProduct(product).filter((order) => other.has(order));
      return both.length ? el("p", { class: "dry-first" }, el("strong", {}, "Dry first: "), `let the seed dry between ${product} and ${living}: `, inRow(both)) : undefined;
    }),
  );
}

function dry(plan) {
  const all = (plan.dry ?? []).flatMap(({ product, orders }) => orders.map((order) => ({ product, ...order })));
  if (!all.length) return [];
  return table("Put on dry", by(all, { Product: (one) => one.product, Order: ({ order }) => together(order), "Weigh out": ({ mass }) => product(mass) }));
}

function orders(job, plan) {
  const holds = (order) => job.orders.find((one) => one.order === order)?.package?.holds;
  const packages = ({ order, packages: many }) => (many === undefined ? undefined : `${short(many)} × ${written(holds(order))}`);
  const between = ({ mass_low: low, mass_high: high }) => (low && count(low) !== count(high) ? `${count(low)} to ${count(high)}` : undefined);
  const all = plan.orders;
  return [
    table("How much seed", [
      ["Order", all.map(({ order }) => together(order))],
      ["Lot", all.map(({ lot }) => lot)],
      column("Seed", all.map(({ mass }) => mass), counts),
      ["Between", all.map(between)],
      ["Seeds", all.map((one) => seeds(one.seeds))],
      ["Units", all.map(({ units }) => count(units))],
      ["Bushels", all.map(({ bushels }) => count(bushels))],
      column("Sows", all.map(({ area }) => area), counts),
      ["Packages", all.map(packages)],
    ]),
    pumps(plan),
    el("details", {}, el("summary", {}, "How much of each product on the seed"), plan.treatments.map(doses)),
  ];
}

/** A quantity as the job writes it. */
const written = (value) => (typeof value === "string" ? value : `${value?.value} ${value?.unit}`);

/** Orders of one tank that are pumped alike, in one row. */
function pumps(plan) {
  const rows = plan.tanks.flatMap(({ tank, orders }) => {
    if (!orders.length) return [];
    const columns = [["Slurry", "slurry"], ["Catch", "flow"], ["Each charge", "per_charge"]].map(([head, field]) => column(head, orders.map((one) => one[field])));
    const [[slurryHead, slurry], [flowHead, flow], [chargeHead, charge]] = columns;
    const each = orders.map(({ order, setting: to }, at) => ({ tank, order, slurry: slurry[at], flow: flow[at], charge: charge[at], to: setting(to), heads: [slurryHead, flowHead, chargeHead] }));
    return gathered(each, (one) => [one.slurry, one.flow, one.charge, one.to].join()).map((alike) => ({ ...alike[0], orders: alike.length === orders.length ? "all orders" : inRow(alike.map(({ order }) => order)) }));
  });
  if (!rows.length) return [];
  const [slurry, flow, charge] = rows[0].heads;
  return table("How fast to pump", by(rows, {
    Tank: ({ tank }) => tank,
    Orders: ({ orders }) => orders,
    "Set pump to": ({ to }) => to,
    [flow]: (one) => one.flow,
    [charge]: (one) => one.charge,
    [slurry]: (one) => one.slurry,
  }));
}

function doses({ product: name, orders }) {
  return table(name, [
    ["Order", orders.map(({ order }) => together(order))],
    ...[["By mass", "per_mass"], ["By seed", "per_seed"], ["By unit", "per_unit"], ["By bushel", "per_bushel"], ["By area", "per_area"]].map(([head, field]) =>
      column(head, orders.map((one) => one[field])),
    ),
    ["Also stated", orders.map(({ statements }) => statements?.map(({ stated, difference }) => `${stated} (${off(difference)})`).join(", "))],
  ]);
}

function tags(plan) {
  const missing = [...new Set(plan.orders.flatMap(({ record }) => record.missing))];
  const cautions = [...new Set(plan.orders.flatMap(({ record }) => record.cautions))];
  const facts = ({ record }) => [
    ["Treated with", record.treated_with.join(", ")],
    ["Active", record.actives.join(", ")],
    ["Treated on", record.treated_on],
    ["Inoculant: use before", record.inoculant_use_before],
    ["Sow at most", atMost(record.max_sowing)],
  ].filter(([, value]) => value);
  const alike = gathered(plan.orders, (order) => facts(order).flat().join());
  return [
    el("div", { class: "mixes" }, alike.map((orders) =>
      el("article", { class: "mix record" },
        el("h3", {}, inRow(orders.map(({ order, lot }) => `${order} ${lot}`))),
        el("dl", {}, facts(orders[0]).map(([name, value]) => el("div", {}, el("dt", {}, name), el("dd", {}, value)))),
      ),
    )),
    missing.length ? el("p", { class: "missing" }, el("strong", {}, "Write in: "), `${missing.join(", ")}.`) : [],
    el("ul", { class: "cautions" }, cautions.map((caution) => el("li", {}, caution))),
  ];
}
