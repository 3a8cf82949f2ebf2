import assert from "node:assert/strict";
import { test } from "node:test";
import { HilumError } from "hilum";
import { Monitor, choosePacks, planBatches, pumpSetting } from "hilum/shed";

function refusal(call) {
  try {
    call();
  } catch (error) {
    assert.ok(error instanceof HilumError, String(error?.stack ?? error));
    return error;
  }
  assert.fail("not refused");
}

const near = (quantity, value, unit) => {
  assert.equal(quantity.unit, unit);
  assert.ok(Math.abs(quantity.value - value) <= 1e-9 * Math.max(1, Math.abs(value)), `${quantity.value} is not ${value}`);
};

test("packs of several sizes are chosen", () => {
  // Worked by hand: 11 t from sets for 4 t and 3 t is 4 + 4 + 3, with nothing over.
  const two = choosePacks({ need: "11 t", sizes: [{ covers: "4 t" }, { covers: "3 t" }] });
  assert.deepEqual(two.sets, [2, 1]);
  near(two.leftover, 0, "kg");
  assert.equal(two.isProven, true);
  // Worked by hand: 23 t from 10 t, 5 t and 2 t: 10 + 5 + 4 × 2 leaves nothing.
  const three = choosePacks({ need: "23 t", sizes: [{ covers: "10 t" }, { covers: "5 t" }, { covers: "2 t" }] });
  assert.equal(three.sets[0] * 10 + three.sets[1] * 5 + three.sets[2] * 2, 23);
  // Fewest sets: 10 + 10 + 5 is three, and no two reach 23 t.
  const fewest = choosePacks({ need: "23 t", sizes: [{ covers: "10 t" }, { covers: "5 t" }, { covers: "2 t" }], objective: "fewest_sets" });
  assert.deepEqual(fewest.sets, [2, 1, 0]);
  near(fewest.leftover, 2000, "kg");
  // Least cost: two of 4 t at 300 are 600, one of 10 t is 500.
  const cheap = choosePacks({ need: "8 t", sizes: [{ covers: "10 t", price: 500 }, { covers: "4 t", price: 300 }], objective: "least_cost" }, { units: "us" });
  assert.deepEqual([cheap.sets, cheap.cost, cheap.leftover.unit], [[1, 0], 500, "lb"]);
  const short = choosePacks({ need: "9 t", sizes: [{ covers: "4 t", stock: 2 }] });
  assert.deepEqual([short.sets, short.isEnough], [[2], false]);
});

test("packs that cannot be chosen are refused by name", () => {
  const sizes = [{ covers: "4 t" }];
  assert.deepEqual([refusal(() => choosePacks({ need: "0 t", sizes })).code, refusal(() => choosePacks({ need: "0 t", sizes })).field], ["not_positive", "need"]);
  const zero = refusal(() => choosePacks({ need: "1 t", sizes: [{ covers: "4 t" }, { covers: "0 t" }] }));
  assert.deepEqual([zero.code, zero.field], ["not_positive", "sizes.1"]);
  assert.equal(refusal(() => choosePacks({ need: "1 t", sizes: [] })).code, "sizes_of_pack");
  assert.equal(refusal(() => choosePacks({ need: "1 t", sizes: new Array(9).fill(sizes[0]) })).code, "sizes_of_pack");
  assert.equal(refusal(() => choosePacks({ need: "1 t", sizes: [{ covers: "4 t", price: -1 }] })).code, "negative");
  const volume = refusal(() => choosePacks({ need: "5 L", sizes }));
  assert.deepEqual([volume.code, volume.field, volume.value], ["wrong_dimension", "need", "5 L"]);
  assert.equal(volume.message, 'need: "5 L" does not measure this; write it as in "12000 lb".');
});

test("nothing is coerced", () => {
  const sizes = [{ covers: "4 t" }];
  for (const need of [5, null, true, [], {}, { value: "5", unit: "kg" }, () => 1]) {
    assert.equal(refusal(() => choosePacks({ need, sizes })).code, "wrong_type", JSON.stringify(need));
  }
  assert.equal(refusal(() => choosePacks({ sizes })).code, "missing");
  assert.equal(refusal(() => choosePacks({ need: undefined, sizes })).message, "need: is undefined, only sizes is given; give need and sizes.");
  assert.equal(refusal(() => choosePacks({ need: "5 t", sizes, colour: 1 })).code, "unknown_field");
  assert.equal(refusal(() => choosePacks({ need: "5 t", sizes: [{ covers: "4 t", Stock: 1 }] })).field, "sizes.0.Stock");
  assert.equal(refusal(() => choosePacks({ need: "5 t", sizes: {} })).code, "wrong_type");
  assert.equal(refusal(() => choosePacks({ need: "5 t", sizes, objective: "best" })).field, "objective");
  for (const stock of ["3", NaN, 1.5, -1, 2 ** 32, null]) {
    assert.equal(refusal(() => choosePacks({ need: "5 t", sizes: [{ covers: "4 t", stock }] })).field, "sizes.0.stock", String(stock));
  }
  for (const value of [NaN, Infinity]) {
    assert.equal(refusal(() => choosePacks({ need: { value, unit: "t" }, sizes })).code, "not_finite");
  }
  assert.equal(refusal(() => pumpSetting({ catches: [{ setting: "10", flow: "40 mL/min" }], wanted: "1 L/min" })).field, "catches.0.setting");
  assert.equal(refusal(() => new Monitor(undefined)).code, "wrong_type");
  assert.equal(refusal(() => planBatches({ orders: [], tanks: [{ capacity: 5 }] })).field, "tanks.0.capacity");
});

test("a setting lies on the line through any number of catches", () => {
  // Worked by hand: 40 mL/min at 10 and 100 at 30 is 3 per step, from 10; 85 mL/min is at 25.
  const catches = [{ setting: 10, flow: "40 mL/min" }, { setting: 30, flow: "100 mL/min" }];
  const within = pumpSetting({ catches, wanted: "85 mL/min" });
  assert.equal(within.lies, "within");
  assert.ok(Math.abs(within.setting - 25) < 1e-9);
  assert.deepEqual(pumpSetting({ catches, wanted: "120 mL/min" }), { lies: "above" });
  assert.deepEqual(pumpSetting({ catches, wanted: "20 mL/min" }), { lies: "below" });
  // Worked by hand: 10, 20, 30 → 40, 76, 100: mean 20 and 72, slope (-10·-32 + 10·28) / 200 = 3; 84 is at 20 + 12 / 3.
  const three = pumpSetting({ catches: [...catches, { setting: 20, flow: "76 mL/min" }], wanted: "84 mL/min" });
  assert.ok(Math.abs(three.setting - 24) < 1e-9);
  // Worked by hand: one catch gives the line through the origin: 50 × 100 / 125.
  const one = pumpSetting({ catches: [{ setting: 50, flow: "125 mL/min" }], wanted: "100 mL/min" });
  assert.ok(Math.abs(one.setting - 40) < 1e-9);
  const same = [{ setting: 10, flow: "40 mL/min" }, { setting: 10, flow: "41 mL/min" }];
  assert.equal(refusal(() => pumpSetting({ catches: same, wanted: "1 mL/min" })).code, "one_setting");
  assert.equal(refusal(() => pumpSetting({ catches: [], wanted: "1 mL/min" })).code, "needed");
  assert.equal(refusal(() => pumpSetting({ catches, wanted: "0 mL/min" })).field, "wanted");
});

const setup = {
  target: "325 mL/100 kg",
  tolerance: "5 %",
  seed: { shows: "total", resolution: "1 kg", most: "400 kg/min" },
  liquid: { shows: "tank", resolution: "100 mL", most: "2000 mL/min" },
};

test("a monitor says when the rate leaves its tolerance", () => {
  // Worked by hand: 250 kg/min at 358 mL/100 kg is 895 mL/min; after ten minutes 8,950 mL have run, and 325 mL/100 kg
  // and 5 % allow 8,531 mL.
  const monitor = new Monitor(setup);
  const reports = [0, 5, 10].map((minutes) =>
    monitor.feed({ at: `${minutes} min`, seed: `${250 * minutes} kg`, liquid: `${60000 - 895 * minutes} mL` }),
  );
  assert.deepEqual(reports.map(({ step }) => step), ["first", "counted", "counted"]);
  assert.equal(reports[0].window.rate, undefined);
  assert.equal(reports[2].window.verdict, "high");
  near(reports[2].sinceStart.rate, 358, "mL/100 kg");
  // A tank that fills is no running.
  assert.equal(monitor.feed({ at: "11 min", seed: "2750 kg", liquid: "60 L" }).step, "liquid_jumped");
  assert.equal(monitor.feed({ at: "10 min", seed: "2750 kg", liquid: "60 L" }).step, "clock_went_back");
});

test("monitors know nothing of each other, and a refused reading changes nothing", () => {
  const [one, other] = [new Monitor(setup), new Monitor({ ...setup, units: "us" })];
  one.feed({ at: "0 s", seed: "0 kg", liquid: "60 L" });
  assert.equal(other.feed({ at: "5 min", seed: "9 t", liquid: "1 L" }).step, "first");
  assert.equal(refusal(() => one.feed({ at: "5 min", seed: "5 L", liquid: "59 L" })).field, "seed");
  assert.equal(refusal(() => one.feed({ at: "-5 min", seed: "5 kg", liquid: "59 L" })).code, "negative");
  assert.equal(one.feed({ at: "5 min", seed: "1250 kg", liquid: "56 L" }).step, "counted");
  assert.equal(refusal(() => new Monitor({ ...setup, target: "0 mL/100 kg" })).field, "target");
  assert.equal(refusal(() => new Monitor({ ...setup, seed: { ...setup.seed, shows: "weight" } })).field, "seed.shows");
});

test("a flow of seed is read at the moment", () => {
  const seed = { shows: "flow", resolution: "1 kg/min", most: "400 kg/min" };
  const monitor = new Monitor({ ...setup, seed, units: "us" });
  monitor.feed({ at: "0 min", seed: "250 kg/min", liquid: "60 L" });
  // Worked by hand: 250 kg/min for ten minutes is 2,500 kg; 8.125 L on them is 325 mL/100 kg = 4.98478 fl oz/cwt.
  const { window } = monitor.feed({ at: "10 min", seed: "250 kg/min", liquid: "51.875 L" });
  assert.equal(window.verdict, "on_target");
  assert.equal(window.rate.unit, "fl oz/cwt");
  assert.ok(Math.abs(window.rate.value - 325 / 29.5735295625 * 0.45359237) < 1e-9);
});

test("whole sets are opened, and what is left of them is told", () => {
  // Worked by hand: 10 t at 500 mL/100 kg take up 50 L; of sets of 20 L, three are opened, 10 L are left; two fit the
  // tank, so there are two mixes.
  const plan = planBatches({
    orders: [{ mass: "10 t", needs: [{ rate: "500 mL/100 kg", living: "100 %" }] }],
    tanks: [{ capacity: "40 L", sets: [{ adds: "20 L" }] }],
  });
  assert.equal(plan.mixes.length, 2);
  assert.equal(plan.mixes.reduce((sum, mix) => sum + mix.sets[0], 0), 3);
  assert.ok(Math.abs(plan.mixes.reduce((sum, mix) => sum + mix.discarded.value, 0) - 10) < 1e-9);
  assert.ok(Math.abs(plan.mixes.flatMap((mix) => mix.orders).reduce((sum, { mass }) => sum + mass.value, 0) - 10000) < 1e-6);
  assert.deepEqual([plan.isAllTreated, plan.isProven, plan.finish, plan.mixes[0].mixAt], [true, true, undefined, undefined]);
});

test("shifts give the mixes instants", () => {
  // Worked by hand: 15 min of mixing, then 6 t at 6 t/h: done at 1.25 h; a pot life of 8 h lasts from 0 h to 8 h.
  const plan = planBatches({
    orders: [{ mass: "6 t", speed: "100 kg/min", needs: [{ rate: "500 mL/100 kg", living: "100 %" }, null] }],
    tanks: [{ capacity: "40 L", mixing: "15 min", potLife: "8 h" }, { capacity: "40 L" }],
    shifts: [{ from: "0 h", to: "4 h" }],
  });
  const [mix] = plan.mixes;
  assert.equal(plan.mixes.length, 1);
  near(mix.mixAt, 0, "h");
  near(mix.readyAt, 0.25, "h");
  near(mix.doneAt, 1.25, "h");
  near(mix.useBy, 8, "h");
  near(plan.finish, 1.25, "h");
  near(mix.mixed, 30, "L");
});

test("batches that cannot be planned are refused by name", () => {
  const need = { rate: "500 mL/100 kg", living: "100 %" };
  const job = { orders: [{ mass: "10 t", needs: [need] }], tanks: [{ capacity: "10 L", sets: [{ adds: "20 L" }] }] };
  const small = refusal(() => planBatches(job));
  assert.deepEqual([small.code, small.field], ["tank_too_small", "tanks.0"]);
  assert.equal(refusal(() => planBatches({ ...job, orders: [{ mass: "10 t", needs: [] }] })).field, "orders.0.needs");
  assert.equal(refusal(() => planBatches({ ...job, orders: [{ mass: "0 t", needs: [need] }] })).field, "orders.0.mass");
  assert.equal(refusal(() => planBatches({ ...job, tanks: [{ capacity: "0 L" }] })).field, "tanks.0.capacity");
  const shifts = [{ from: "4 h", to: "2 h" }];
  const late = { orders: [{ mass: "1 t", speed: "1 t/h", needs: [need] }], tanks: [{ capacity: "10 L" }], shifts };
  assert.equal(refusal(() => planBatches(late)).field, "shifts.0");
});

test("a text where a number or another word belongs is shown as a text", () => {
  const choose = (more) => refusal(() => choosePacks({ need: "1 t", sizes: [{ covers: "1 t", ...more.size }], ...more.all })).message;
  assert.match(choose({ size: { price: "4" } }), /^sizes\.0\.price: "4" must be a finite number/);
  assert.match(choose({ all: { objective: "cheapest" } }), /^objective: "cheapest" must be one of/);
});
