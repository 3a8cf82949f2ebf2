import assert from "node:assert/strict";
import { test } from "node:test";
import { HilumError, convert, format, rate, seed, sowing, survival, treater } from "hilum";
import * as numbers from "hilum/numbers";

/** What a call is refused with. */
function refusal(call) {
  try {
    call();
  } catch (error) {
    assert.ok(error instanceof HilumError, String(error?.stack ?? error));
    return error;
  }
  assert.fail("not refused");
}

test("quantities come in as text or as value and unit, and go out as value and unit", () => {
  // Worked by hand: 3.5 oz av over 100 lb, for 12,000 lb, is 420 oz av = 26.25 lb.
  const needed = rate.needed({ rate: "3.5 oz av/cwt", mass: { value: 12000, unit: "lb" } }, { units: "us" });
  assert.equal(needed.unit, "lb");
  assert.ok(Math.abs(needed.value - 26.25) < 1e-12, String(needed.value));
  const same = rate.needed({ rate: { value: 3.5, unit: "oz av/cwt" }, mass: "12000 lb" }, { unit: "oz av" });
  assert.equal(same.unit, "oz av");
  assert.ok(Math.abs(same.value - 420) < 1e-9);
  assert.equal(rate.needed({ rate: "325 mL/100 kg", mass: "1 t" }).unit, "L");
});

test("a temperature is a point, a share can be a plain number", () => {
  assert.deepEqual(convert("50 degF", "degC"), { value: 10, unit: "degC" });
  assert.deepEqual(seed.pureLive({ purity: "98 %", germination: "50 %" }, { unit: "1" }), { value: 0.49, unit: "1" });
});

test("plain numbers stay plain", () => {
  // Worked by hand: 125 mL/min caught at 50, 100 mL/min wanted: 40.
  const setting = treater.correctSetting({ setting: 50, target: "100 mL/min", caught: "125 mL/min" });
  assert.ok(Math.abs(setting - 40) < 1e-12);
  // −time / D: 30 d at a decimal reduction time of 60 d.
  assert.equal(survival.logLinear({ d: "60 d", time: "30 d" }), -0.5);
});

test("a wrong dimension names the field, the value and what is needed", () => {
  const error = refusal(() => rate.needed({ rate: "1.2 fl oz/unit", mass: "12000 lb" }));
  assert.deepEqual([error.code, error.field, error.value], ["unit_not_given", "rate", "1.2 fl oz/unit"]);
  const other = refusal(() => rate.perSeed({ rate: "1.2 fl oz/140000 seeds", size: "2850 seeds/lb" }));
  assert.equal(other.code, "wrong_dimension");
  assert.equal(other.field, "rate");
  assert.equal(
    other.message,
    'rate: "1.2 fl oz/140000 seeds" is volume per seed, but volume per mass of seed is needed.',
  );
  const unit = refusal(() => seed.count({ mass: "1 kg", size: "5 seeds/g" }, { unit: "kg" }));
  assert.deepEqual([unit.code, unit.field, unit.value], ["wrong_dimension", "unit", "kg"]);
});

test("an unknown unit is told with what may have been meant", () => {
  const error = refusal(() => seed.count({ mass: "12 kgs", size: "5 seeds/g" }));
  assert.equal(error.message, 'mass: "12 kgs" has an unknown unit; did you mean "kg"?');
  assert.equal(refusal(() => seed.count({ mass: { value: 12, unit: "kgs" }, size: "5 seeds/g" })).code, "unknown_unit");
});

test("nothing is coerced", () => {
  const size = "5 seeds/g";
  for (const mass of [5, null, true, [], {}, { value: "5", unit: "kg" }, { value: 5 }, { value: 5, unit: 1 }, () => 1]) {
    assert.equal(refusal(() => seed.count({ mass, size })).code, "wrong_type", JSON.stringify(mass));
  }
  assert.equal(refusal(() => seed.count({ mass: undefined, size })).code, "missing");
  assert.equal(refusal(() => seed.count({ mass: "5 kg", size, colour: 1 })).code, "unknown_field");
  assert.equal(refusal(() => seed.count({ mass: { value: 5, unit: "kg", is: 1 }, size })).code, "unknown_field");
  assert.equal(refusal(() => seed.count({ mass: "5 kg", size }, { uint: "seeds" })).code, "unknown_field");
  assert.equal(refusal(() => seed.count("5 kg")).code, "wrong_type");
  for (const value of [NaN, Infinity, -Infinity]) {
    assert.equal(refusal(() => seed.count({ mass: { value, unit: "kg" }, size })).code, "not_finite");
  }
  assert.equal(refusal(() => treater.correctSetting({ setting: "50", target: "1 L/min", caught: "1 L/min" })).code, "wrong_type");
  for (const text of ["#5 kg", "", "5", "5kg", "1,000 kg", "0x5 kg", "5 kg\u0000", "Infinity kg"]) {
    assert.notEqual(refusal(() => seed.count({ mass: text, size })).code, "other", text);
  }
});

test("what a newcomer gets wrong is told with what to do", () => {
  const inputs = { rate: "2.5 fl oz/cwt", mass: "1 t" };
  const told = (call) => refusal(call).message;
  assert.equal(told(() => rate.needed({ rate: "2.5 fl oz/cwt" })), "mass: is missing, only rate is given; give rate and mass.");
  assert.equal(told(() => rate.needed({ ...inputs, mass: undefined })), "mass: is undefined, only rate is given; give rate and mass.");
  assert.equal(
    told(() => rate.perMass({})),
    "perSeed: is missing, nothing is given; give perSeed and size, or perUnit, unit and size.",
  );
  assert.equal(told(() => rate.needed({ rate: "2.5 fl oz/cwt", mas: "1 t" })), 'inputs: there is no field "mas"; did you mean "mass"?');
  assert.equal(told(() => rate.needed("2.5 fl oz/cwt", "1 t")), 'inputs: "2.5 fl oz/cwt" must be an object, { rate, mass }.');
  assert.equal(told(() => rate.needed(inputs, { uint: "gal", units: "us" })), 'options: there is no field "uint"; did you mean "unit"?');
  assert.match(told(() => rate.needed({ ...inputs, mass: { values: new Float64Array(2), unit: "t" } })), /^mass: this column is for `each`/);
  assert.match(told(() => seed.count.each({ mass: { values: [1], unit: "t" }, size: "5 seeds/g" })), /; Float64Array\.from makes one of a list\.$/);
  assert.match(told(() => rate.needed({ ...inputs, rate: "1.2 fl oz/unit" })), /; write the seeds, as in "1\.2 fl oz\/140000 seeds"\.$/);
  assert.equal(told(() => format("5 kg")), 'quantity: "5 kg" must be a result, { value, unit }.');
  assert.equal(told(() => format({ value: NaN, unit: "kg" })), 'quantity: "NaN kg" must be a result, { value, unit }.');
  assert.throws(() => numbers.seed.count(-1, 6000), { message: "mass: -1 must be more than 0." });
  assert.throws(() => numbers.seed.count(1), { code: "missing", message: "size: undefined must be given." });
  assert.throws(() => numbers.seed.count(1, 6000, 7), { code: "too_many", message: "argument 3: 7 is one argument too many." });
  assert.throws(() => numbers.seed.count("1", 6000), { message: 'mass: "1" must be a number, or in `each` a Float64Array.' });
});

test("the other way to call is chosen by its inputs", () => {
  const one = rate.perMass({ perSeed: "0.25 µL/seed", size: "6000 seeds/kg" });
  const other = rate.perMass({ perUnit: "35 mL", unit: "140000 seeds", size: "6000 seeds/kg" });
  assert.ok(Math.abs(one.value / other.value - 1) < 1e-15);
  assert.equal(refusal(() => rate.perMass({ perUnit: "35 mL", size: "6000 seeds/kg" })).field, "unit");
});

test("columns give the same as one by one", () => {
  const values = Float64Array.from({ length: 1000 }, (_, at) => 1000 + at * 7.3);
  const column = seed.count.each({ mass: { values, unit: "lb" }, size: "2850 seeds/lb" });
  assert.equal(column.unit, "seeds");
  assert.equal(column.values.length, 1000);
  values.forEach((value, at) => {
    const one = seed.count({ mass: { value, unit: "lb" }, size: "2850 seeds/lb" });
    assert.equal(column.values[at], one.value);
  });
  const shape = survival.weibull.each({ scale: "10 d", shape: 2, time: { values: Float64Array.of(10, 20), unit: "d" } });
  assert.deepEqual([...shape], [-1, -4]);
  assert.deepEqual(convert({ values: Float64Array.of(32, 50), unit: "degF" }, "degC").values, Float64Array.of(0, 10));
  assert.equal(seed.count.each({ mass: { values: new Float64Array(0), unit: "lb" }, size: "1 seeds/g" }).values.length, 0);
});

test("a refused row is named", () => {
  const values = Float64Array.of(1, 2, -3, 4);
  const error = refusal(() => seed.count.each({ mass: { values, unit: "kg" }, size: "5 seeds/g" }));
  assert.deepEqual([error.code, error.field, error.row], ["not_positive", "mass", 2]);
  assert.match(error.message, /^mass, row 2: "-3 kg" must be more than 0/);
  const short = { mass: { values, unit: "kg" }, size: { values: Float64Array.of(1), unit: "seeds/g" } };
  assert.equal(refusal(() => seed.count.each(short)).code, "wrong_type");
  values[1] = NaN;
  assert.equal(refusal(() => seed.count.each({ mass: { values, unit: "kg" }, size: "5 seeds/g" })).row, 1);
});

test("numbers are numbers", () => {
  assert.equal(numbers.seed.count(100, 6000), 600000);
  assert.deepEqual([...numbers.seed.count.each(Float64Array.of(1, 2), 6000)], [6000, 12000]);
  const wrong = [["5", 6000], [undefined, 6000], [5], [5, 6000, 1], [NaN, 6000], [0, 6000], [-1, 6000], [1e31, 6000]];
  for (const given of wrong) assert.throws(() => numbers.seed.count(...given), { name: "NumberError" });
  assert.throws(() => numbers.seed.count(-1, 6000), { code: "not_positive", field: "mass", value: -1 });
});

test("a quantity is shown in the language asked for", () => {
  const quantity = { value: 1234.5678, unit: "fl oz" };
  assert.equal(format(quantity, { locale: "en-US" }), "1,235\u00A0fl oz");
  assert.equal(format(quantity, { locale: "de-DE", maximumFractionDigits: 1 }), "1.234,6\u00A0fl oz");
});

test("sowing for a stand", () => {
  // Worked by hand: 125,000 / (0.92 × 0.85).
  const sown = sowing.forStand({ stand: "125000 plants/ac", germination: "92 %", emergence: "85 %" }, { units: "us" });
  assert.equal(sown.unit, "seeds/ac");
  assert.ok(Math.abs(sown.value - 125000 / (0.92 * 0.85)) < 1e-6);
});
