// What each part of a job asks: all of the document, what is rarely said folded away.
import { choice, group, instant, list, number, q, rows, text, texts, way, ways, yes } from "./kinds.js";

const names = (list, name, wanted = () => true) => (job) => (job[list] ?? []).filter(wanted).map((item) => item[name]);
const products = names("treatments", "product");
const livingProducts = names("treatments", "product", ({ living }) => living);
const tanks = names("tanks", "tank");
const actives = (job) => [...new Set([
  ...names("actives", "active")(job),
  ...(job.treatments ?? []).flatMap(({ actives = [] }) => (actives ?? []).map(({ active }) => active)),
])];
/** A quantity of a document as words. */
const said = (value) => (value !== null && typeof value === "object" ? `${value.value} ${value.unit}` : value);
const active = text("active", "Active ingredient", undefined, actives);

const after = [
  list("after.storage", "Storage, in order", "period", [
    q("for", "Kept for", "days", "the last period lasts until planting"),
    q("at", "At", "temperature"),
  ], (item) => [said(item.for), said(item.at)]),
  ways("Planted", [
    way("nobody knows yet", []),
    way("on a day", [instant("after.plant_on", "Planted on")]),
    way("some time after treating", [q("after.plant_after", "Planted after", "days")]),
  ]),
  yes("after.in_sunlight", "Lies in the sun"),
];

const order = [
  text("order", "Order"),
  text("lot", "Lot"),
  text("customer", "For"),
  text("crop", "Crop"),
  q("amount", "Amount", "amount"),
  q("size", "Seed size", "size"),
  group("How it is sold", [
    q("size_tolerance", "Size may be off by", "share"),
    q("unit", "Sold in units of", "unit"),
    q("bushel", "Bushel", "mass", "the crop’s standard bushel, not its test weight"),
    q("package.holds", "A package holds", "package"),
  ]),
  group("Quality and sowing", [
    q("purity", "Purity", "share"),
    q("germination", "Germination", "share"),
    ways("Sown", [
      way("nobody says", []),
      way("at a rate", [q("sowing.rate", "Sown at", "sown")]),
      way("for a stand of plants", [
        q("sowing.stand", "Stand wanted", "stand"),
        q("sowing.emergence", "Emergence", "share", "of the seed that germinates"),
      ]),
    ]),
  ]),
  group("How it is run", [
    q("temperature", "Seed temperature", "temperature"),
    q("seed_flow", "Own seed flow", "massFlow", "if not the treater’s"),
    texts("treat", "Products, if not all", "one a line"),
  ]),
  list("on_seed", "On the seed already", "active", [active, q("per_seed", "On one seed", "perSeed")], (item) => [said(item.per_seed)]),
  group("After treating, where it differs from the job", after),
];

const warmth = [
  q("living.survival.at", "Measured at", "temperature"),
  q("living.survival.z", "Ten times as fast if warmer by", "difference"),
];
const survival = ways("How the cells die", [
  way("nobody says", []),
  way("at one rate", [q("living.survival.decimal_reduction", "Nine in ten die in", "days"), ...warmth], { "living.survival.model": "log_linear" }),
  way("slowly, then faster (or the reverse)", [
    q("living.survival.scale", "The first nine in ten die in", "days"),
    number("living.survival.shape", "Power of time", "above 1: faster and faster; below 1: slower and slower"),
    ...warmth,
  ], { "living.survival.model": "weibull" }),
  way("some fast, the rest slowly", [
    q("living.survival.fraction", "Share that dies fast", "share"),
    q("living.survival.fast", "Nine in ten of these die in", "days"),
    q("living.survival.slow", "Nine in ten of the rest die in", "days"),
    ...warmth,
  ], { "living.survival.model": "two_phase" }),
]);

const living = [
  q("living.titre", "Living cells", "titre"),
  text("living.titre_of", "Counted in", "“mix”, or the part of a set that the maker counts"),
  q("living.recovery", "Arrive alive on the seed", "share"),
  q("living.minimum_at_planting", "Least at planting", "cells"),
  q("living.pot_life", "Pot life", "time"),
  q("living.on_seed_life", "Life on the seed", "days"),
  q("living.store_below", "Store seed below", "temperature"),
  yes("living.agitate", "Wants an agitated tank", true),
  survival,
];

const pack = [
  text("pack", "Pack"),
  q("covers", "One set covers", "coverage"),
  list("parts", "Parts of a set", "part", [text("part", "Part"), q("fill", "Holds", "fill"), q("usable", "Usable", "fill")], (item) => [said(item.fill)]),
  number("per_case", "Sets in a case"),
  number("on_hand", "Sets on hand"),
  number("price", "Price of a set"),
];

const treatment = [
  text("product", "Product"),
  text("tank", "Tank", "empty: put on dry", tanks),
  ways("Dose stated as", [
    way("product", [q("rate", "Rate", "rate")]),
    way("active ingredient", [
      { ...active, name: "active_rate.active" },
      q("active_rate.rate", "Rate of the active", "activeRate"),
    ]),
    way("living cells", [q("cells", "Cells on a seed", "cells", "after recovery")]),
  ]),
  group("What the label says", [
    q("label_unit", "The label’s unit", "unit"),
    q("label_bushel", "The label’s bushel", "mass"),
    rows("also_stated", "The same dose in other words", "statement", [q("", "Also stated as", "rate")]),
    q("min_rate", "Least rate", "rate"),
    q("max_rate", "Most rate", "rate"),
    texts("crops", "Crops on the label", "one a line"),
    text("registration", "Registration"),
  ]),
  group("What is in it", [
    q("density", "Density", "density"),
    list("actives", "Active ingredients", "active", [active, q("content", "Content", "content")], (item) => [said(item.content)]),
    texts("constituents", "Else that matters to living cells", "one a line, such as zinc"),
    yes("colourant", "Colours the seed"),
    text("lot_number", "Product lot"),
    text("expires", "Use before", "YYYY-MM-DD"),
  ]),
  list("with_living", "Beside living products, as the maker says", "living product", [
    text("living", "Living product", undefined, livingProducts),
    choice("same_seed", "On one seed", [[undefined, "nobody says"], [true, "may be"], [false, "must not be"]]),
    yes("same_tank", "May be in one tank"),
    yes("dry_between", "Seed must dry between the two"),
    q("life", "Beside it the cells last", "days"),
  ]),
  group("Alive", living),
  list("packs", "Packs", "pack", pack),
  choice("choose", "Choose packs for", [
    [undefined, "what is usual: least left over"],
    ["least_leftover", "least left over"],
    ["least_cost", "least cost"],
    ["fewest_sets", "fewest sets"],
  ]),
];

const tank = [
  text("tank", "Tank"),
  q("capacity", "Holds", "volume"),
  ways("Water", [
    way("none", []),
    way("as much as makes up the rate", [q("make_up_to", "Made up with water to", "liquid")]),
    way("a rate of its own", [q("water", "Water added", "liquid")]),
  ]),
  group("The tank itself", [
    q("min_fill", "Least fill", "volume"),
    q("hold_up", "Pump and lines hold", "volume"),
    q("mixing", "Mixing takes", "time"),
    yes("agitated", "Agitated"),
    choice("refill", "Filled again", [[undefined, "what is usual: when empty"], ["when_empty", "when empty"], ["top_up", "while running"]]),
  ]),
  group("Its pump", [
    q("pump.min", "Pump gives at least", "flow"),
    q("pump.max", "Pump gives at most", "flow"),
    list("pump.curve", "Catches of the pump", "catch", [number("setting", "Setting"), q("flow", "Caught", "flow")], (item) => [item.setting, said(item.flow)]),
  ]),
];

export const JOB = [
  { ...group("Job", [
    text("title", "Title"),
    choice("units", "Results in", [[undefined, "what is usual: metric units"], ["metric", "metric units"], ["us", "US units"]]),
    text("currency", "Currency"),
    q("recipe_tolerance", "A recipe may be off by", "share"),
  ]), open: true },
  list("orders", "Orders of seed, as they run", "order", order, (item) => [item.lot, said(item.amount)]),
  list("treatments", "Products", "product", treatment, (item) => [said(item.rate ?? item.active_rate?.rate ?? item.cells)]),
  list("tanks", "Tanks", "tank", tank, (item) => [said(item.capacity)]),
  list("actives", "Limits of active ingredients", "active", [
    active,
    q("season_limit", "Most in a season", "perArea"),
    q("season_used", "Used already", "perArea"),
    q("max_per_mass", "Most on a mass of seed", "activeRate"),
    q("max_per_seed", "Most on one seed", "perSeed"),
  ], (item) => [said(item.season_limit)]),
  group("Treater", [
    ways("Seed runs", [
      way("in a stream", [q("treater.seed_flow", "Seed flow", "massFlow")]),
      way("in charges", [q("treater.charge", "A charge is", "charge"), q("treater.cycle", "One every", "time")]),
    ]),
    q("treater.utilisation", "Share of a shift that it runs", "share"),
    q("treater.changeover", "Change of recipe takes", "time"),
    q("treater.min_liquid", "Least liquid", "liquid"),
    q("treater.max_liquid", "Most liquid", "liquid"),
  ]),
  list("work", "Shifts", "shift", [instant("from", "From"), instant("to", "To")], ({ from, to }) => [
    [from?.slice(0, 16).replace("T", " "), to?.slice(11, 16)].filter(Boolean).join(" to "),
  ]),
  group("After treating", after),
];
