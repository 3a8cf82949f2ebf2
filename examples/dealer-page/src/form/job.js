// The form: what each part of a job asks. `of` names the units of a quantity; other kinds say so.
const q = (name, label, of, hint) => ({ name, label, kind: "quantity", of, hint });
const text = (name, label, hint) => ({ name, label, kind: "text", hint });
const number = (name, label, hint) => ({ name, label, kind: "number", hint });
const yes = (name, label) => ({ name, label, kind: "yes" });
const choice = (name, label, options) => ({ name, label, kind: "choice", options });
const list = (name, label, one, fields, start) => ({ name, label, kind: "list", one, fields, start });
const texts = (name, label, hint) => ({ name, label, kind: "texts", hint });
const group = (label, fields) => ({ label, kind: "group", fields });

const storage = list("storage", "Storage, in order", "period", [q("for", "Kept for", "days"), q("at", "At", "temperature")], {
  for: "10 d",
  at: "50 degF",
});

const living = [
  q("living.titre", "Living cells", "titre"),
  text("living.titre_of", "Counted in", "“mix”, or the part of a set that the maker counts"),
  q("living.recovery", "Arrive alive on the seed", "share"),
  q("living.minimum_at_planting", "Least at planting", "cells"),
  q("living.pot_life", "Pot life", "time"),
  q("living.on_seed_life", "Life on the seed", "days"),
  q("living.store_below", "Store seed below", "temperature"),
  q("living.survival.decimal_reduction", "Nine in ten die in", "days"),
  q("living.survival.at", "… at", "temperature"),
  q("living.survival.z", "Ten times as fast if warmer by", "difference"),
];

const order = [
  text("order", "Order"),
  text("lot", "Lot"),
  text("customer", "For"),
  text("crop", "Crop"),
  q("amount", "Amount", "amount"),
  q("size", "Seed size", "size"),
  q("size_tolerance", "Size may be off by", "share"),
  q("unit", "Sold in units of", "unit"),
  q("bushel", "Bushel", "mass"),
  q("package.holds", "A package holds", "package"),
  q("purity", "Purity", "share"),
  q("germination", "Germination", "share"),
  q("sowing.rate", "Sown at", "sown", "or a stand, below"),
  q("sowing.stand", "Stand wanted", "stand"),
  q("sowing.emergence", "Emergence", "share"),
  q("temperature", "Seed temperature", "temperature"),
  q("seed_flow", "Own seed flow", "massFlow"),
  texts("treat", "Products, if not all", "one a line"),
];

const pack = [
  text("pack", "Pack"),
  q("covers", "One set covers", "coverage"),
  list("parts", "Parts of a set", "part", [text("part", "Part"), q("fill", "Holds", "fill"), q("usable", "Usable", "fill")], {
    part: "jug",
    fill: "1 gal",
  }),
  number("per_case", "Sets in a case"),
  number("on_hand", "Sets on hand"),
  number("price", "Price of a set"),
];

const treatment = [
  text("product", "Product"),
  text("tank", "Tank", "empty: put on dry"),
  q("rate", "Rate", "rate"),
  q("label_unit", "The label’s unit", "unit"),
  q("label_bushel", "The label’s bushel", "mass"),
  q("min_rate", "Least rate", "rate"),
  q("max_rate", "Most rate", "rate"),
  q("density", "Density", "density"),
  text("expires", "Use before", "YYYY-MM-DD"),
  text("lot_number", "Product lot"),
  yes("colourant", "Colours the seed"),
  texts("crops", "Crops on the label", "one a line"),
  list("actives", "Active ingredients", "active", [text("active", "Active"), q("content", "Content", "content")], {
    active: "new active",
    content: "1 lb/gal",
  }),
  group("Alive", living),
  list("packs", "Packs", "pack", pack, { pack: "jug", parts: [{ part: "jug", fill: "1 gal" }] }),
  choice("choose", "Choose packs for", [
    ["", "least left over"],
    ["least_cost", "least cost"],
    ["fewest_sets", "fewest sets"],
  ]),
];

const tank = [
  text("tank", "Tank"),
  q("capacity", "Holds", "volume"),
  q("min_fill", "Least fill", "volume"),
  q("hold_up", "Pump and lines hold", "volume"),
  q("make_up_to", "Made up with water to", "liquid", "or water added, below"),
  q("water", "Water added", "liquid"),
  q("mixing", "Mixing takes", "time"),
  yes("agitated", "Agitated"),
  choice("refill", "Filled again", [
    ["", "when empty"],
    ["top_up", "while running"],
  ]),
  q("pump.min", "Pump gives at least", "flow"),
  q("pump.max", "Pump gives at most", "flow"),
  list("pump.curve", "Catches of the pump", "catch", [number("setting", "Setting"), q("flow", "Caught", "flow")], {
    setting: 50,
    flow: "10 fl oz/min",
  }),
];

export const FORM = [
  {
    label: "Job",
    kind: "group",
    open: true,
    fields: [
      text("title", "Title"),
      choice("units", "Results in", [
        ["", "metric units"],
        ["us", "US units"],
      ]),
      text("currency", "Currency"),
      q("recipe_tolerance", "A recipe may be off by", "share"),
    ],
  },
  list("orders", "Orders of seed, as they run", "order", order, {
    order: "new",
    lot: "new",
    amount: "10000 lb",
    size: "2800 seeds/lb",
  }),
  list("treatments", "Products", "product", treatment, { product: "New product", rate: "3 oz av/cwt" }),
  list("tanks", "Tanks", "tank", tank, { tank: "New tank", capacity: "10 gal" }),
  list("actives", "Limits of active ingredients", "active", [
    text("active", "Active"),
    q("season_limit", "Most in a season", "perArea"),
    q("season_used", "Used already", "perArea"),
    q("max_per_mass", "Most on a mass of seed", "rate"),
    q("max_per_seed", "Most on one seed", "rate"),
  ], { active: "new active", season_limit: "0.1 lb/ac" }),
  group("Treater", [
    q("treater.seed_flow", "Seed flow", "massFlow"),
    q("treater.charge", "or a charge of", "charge"),
    q("treater.cycle", "… every", "time"),
    q("treater.utilisation", "Runs in a shift", "share"),
    q("treater.changeover", "Change of recipe takes", "time"),
    q("treater.min_liquid", "Least liquid", "liquid"),
    q("treater.max_liquid", "Most liquid", "liquid"),
  ]),
  list("work", "Shifts", "shift", [
    { name: "from", label: "From", kind: "instant" },
    { name: "to", label: "To", kind: "instant" },
  ], { from: "2027-04-14T07:00:00-05:00", to: "2027-04-14T12:00:00-05:00" }),
  group("After treating", [
    { ...storage, name: "after.storage" },
    { name: "after.plant_on", label: "Planted on", kind: "instant" },
    q("after.plant_after", "or planted after", "days"),
    yes("after.in_sunlight", "Lies in the sun"),
  ]),
];
