// The account: what was really applied, against what the labels ask for.
import { applied, VERDICTS } from "../charts/applied.js";
import { BECAUSE } from "../charts/alive.js";
import { limits } from "../charts/allowed.js";
import { gathered } from "../charts/style.js";
import { dayOf, moment, oneDay, time } from "../clock.js";
import { body, by, el, facts, table, together } from "../dom.js";
import { atMost, cells, column, count, counts, off, percent, product, seed } from "../number.js";
import { findings } from "./findings.js";

export function showAccount(job, account, goTo) {
  const rates = account.orders.flatMap(({ order, tanks, dry = [] }) => [
    ...tanks.map((one) => ({ order, from: one.tank, ...one })),
    ...dry.map((one) => ({ order, from: one.product, ...one })),
  ]);
  body("account-short", inShort(job, account, rates));
  findings("account-findings", account.findings, "Nothing was found that stands against what was applied.", goTo);
  body("applied", applied(account), gave(rates));
  body("treated", treated(account), products(account));
  body("account-alive", alive(account));
  body("account-allowed", actives(account));
  const cautions = [...new Set(account.orders.flatMap(({ record }) => record.cautions))];
  body("record", el("div", { class: "mixes" }, account.orders.map(record)), el("ul", { class: "cautions" }, cautions.map((caution) => el("li", {}, caution))));
}

function inShort(job, { orders, tolerance }, rates) {
  const [first] = orders;
  const mass = first && { value: orders.reduce((sum, { mass }) => sum + mass.value, 0), unit: first.mass.unit };
  const many = (verdict) => rates.filter((rate) => rate.verdict === verdict).length;
  return facts([
    ["Seed treated", seed(mass), `${orders.length} of ${job.orders.length} orders`],
    ...Object.entries(VERDICTS)
      .map(([verdict, { words, sign }]) => [verdict, words, sign, many(verdict)])
      .filter(([verdict, , , many]) => many || verdict === "on_target")
      .map(([, words, sign, many]) => [`${sign} ${words}`, `${many} of ${rates.length}`, "rates"]),
    ["Right within", percent(tolerance)],
  ]);
}

function gave(rates) {
  if (!rates.length) return [];
  return table("Rates applied", [
    ["Order", rates.map(({ order }) => together(order))],
    ["Tank", rates.map(({ from }) => from)],
    ["That is", rates.map(({ verdict }) => together(`${VERDICTS[verdict].sign} ${VERDICTS[verdict].words}`))],
    ["Off", rates.map(({ deviation }) => off(deviation))],
    column("Applied", rates.map(({ achieved }) => achieved)),
    column("Give or take", rates.map(({ uncertainty }) => uncertainty)),
    column("Asked for", rates.map(({ target }) => target)),
    ["Used", rates.map(({ used }) => product(used))],
  ]);
}

function treated({ orders }) {
  const today = oneDay(orders.flatMap(({ record: { from, to } }) => [from, to]));
  return table("How much was treated", [
    ["Order", orders.map(({ order }) => together(order))],
    ["Lot", orders.map(({ lot }) => lot)],
    column("Treated", orders.map(({ mass }) => mass), counts),
    column("Give or take", orders.map((one) => one.mass_uncertainty)),
    column("Ordered", orders.map(({ ordered }) => ordered), counts),
    ["Off", orders.map(({ mass, ordered }) => off(mass.value / ordered.value - 1))],
    ["From", orders.map(({ record }) => time(record.from, today))],
    ["To", orders.map(({ record }) => time(record.to, today))],
  ]);
}

function products({ orders }) {
  const all = orders.flatMap(({ order, tanks }) => tanks.flatMap(({ products }) => products.map((one) => ({ order, ...one }))));
  return gathered(all, (one) => one.product).map((own) =>
    table(own[0].product, [
      ["Order", own.map(({ order }) => together(order))],
      ["Off", own.map(({ deviation }) => off(deviation))],
      column("Applied", own.map((one) => one.per_mass)),
      column("Asked for", own.map(({ target }) => target)),
      column("By seed", own.map((one) => one.per_seed)),
      ["Used", own.map(({ used }) => product(used))],
    ]),
  );
}

function alive({ orders }) {
  const all = orders.flatMap(({ order, living }) => (living ?? []).map((one) => ({ order, ...one })));
  if (!all.length) return el("p", {}, "No product of this run is alive.");
  return gathered(all, (one) => one.product).map((own) =>
    table(`${own[0].product}: cells on a seed`, by(own, {
      Order: ({ order }) => together(order),
      "At treating": (one) => cells(one.at_treating),
      "At planting": (one) => cells(one.at_planting),
      "At least": ({ minimum }) => cells(minimum),
      "Plant by": (one) => moment(one.plant_by),
      "Because of": ({ because }) => because && BECAUSE[because],
    })),
  );
}

function actives({ orders }) {
  const all = orders.flatMap(({ order, actives }) => actives.map((one) => ({ order, ...one })));
  if (!all.length) return el("p", {}, "No active ingredient was applied that is known here.");
  const shares = all.filter((one) => one.share_of_season_limit !== undefined)
    .map(({ order, active, share_of_season_limit: share }) => ({ order, limit: `${active}, in the season`, share }));
  const words = gathered(all, ({ active }) => active).map((own) =>
    table(own[0].active, [
      ["Order", own.map(({ order }) => together(order))],
      column("By seed", own.map((one) => one.per_seed)),
      column("By mass", own.map((one) => one.per_mass)),
      column("By area", own.map((one) => one.per_area)),
      ["Of the season’s limit", own.map(({ share_of_season_limit: share }) => (share === undefined ? undefined : percent(share)))],
      ["Sow at most", own.map(({ max_sowing: most }) => atMost(most))],
    ]),
  );
  return shares.length ? limits(shares, words) : words;
}

/** What rules for keeping records ask for, order by order. */
function record({ order, record }) {
  const { products, actives, missing } = record;
  const named = products.map(({ product: name, amount, registration, lot_number: lot }) =>
    [name, product(amount), registration && `registration ${registration}`, lot && `lot ${lot}`].filter(Boolean).join(", "),
  );
  const entries = [
    ["Seed", [`${count(record.treated)} ${record.treated.unit}`, record.crop && `of ${record.crop}`, `lot ${record.lot}`].filter(Boolean).join(" ")],
    ["For", record.customer],
    ["When", [moment(record.from), time(record.to, dayOf(record.from))].filter(Boolean).join(" to ") || record.treated_on],
    ["Where", record.place],
    ["Applied by", [record.operator, record.certificate && `certificate ${record.certificate}`].filter(Boolean).join(", ")],
    ["Treated with", el("ul", {}, named.map((name) => el("li", {}, name)))],
    ["Active", actives.join(", ")],
    ["Inoculant: use before", record.inoculant_use_before],
  ].filter(([, value]) => value);
  return el(
    "article",
    { class: "mix record" },
    el("h3", {}, `Order ${order}`),
    el("dl", {}, entries.map(([name, value]) => el("div", {}, el("dt", {}, name), el("dd", {}, value)))),
    missing.length ? el("p", { class: "missing" }, el("strong", {}, "Write in: "), `${missing.join(", ")}.`) : undefined,
  );
}
