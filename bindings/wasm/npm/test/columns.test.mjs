// Columns of `hilum` are calculated many rows at a time: each check value as columns, against the same one by one.
import assert from "node:assert/strict";
import { test } from "node:test";
import * as hilum from "hilum";
import { bits } from "./check.mjs";
import { topics } from "./paths.mjs";

const camel = (name) => name.replace(/_(.)/g, (_, letter) => letter.toUpperCase());
/** Beyond the rows that are calculated at a time. */
const ROWS = 600;

/** A number and its unit, where a text is just that. */
function parts(input) {
  if (typeof input === "number") return { value: input };
  const [, value, unit] = /^([-+.\de]+) (.+)$/.exec(input) ?? [];
  return Number.isFinite(Number(value)) ? { value: Number(value), unit } : undefined;
}

/** A result's bits, or why there is none. */
function outcome(run) {
  try {
    const result = run();
    return bits(result.value ?? result);
  } catch (error) {
    if (!(error instanceof hilum.HilumError)) throw error;
    return { told: `${error.code} ${error.field}` };
  }
}

/** All results, or the first row that is refused; of a result that does not go into its unit no row is told. */
function joined(outcomes) {
  const row = outcomes.findIndex((one) => typeof one === "object");
  return row < 0 ? outcomes.join() : `${outcomes[row].told} ${outcomes[row].told.endsWith(" unit") ? "" : row}`;
}

function inColumns(calculator, inputs) {
  try {
    const column = calculator.each(inputs);
    return Array.from(column instanceof Float64Array ? column : column.values, bits).join();
  } catch (error) {
    if (!(error instanceof hilum.HilumError)) throw error;
    return `${error.code} ${error.field} ${error.field === "unit" ? "" : error.row}`;
  }
}

function compared(calculator, inputs, { name, value, unit }) {
  const given = (value) => ({ ...inputs, [name]: unit ? { value, unit } : value });
  const columns = (values) => ({ ...inputs, [name]: unit ? { values, unit } : values });
  const values = Float64Array.from({ length: ROWS }, (_, row) => (row % 7 === 0 ? value : value * (1 + row / 5000)));
  const outcomes = Array.from(values, (value) => outcome(() => calculator(given(value))));
  assert.equal(inColumns(calculator, columns(values)), joined(outcomes));
  for (const odd of [0, -0, -1, NaN, -Infinity, 1e-40, 1e300]) {
    const all = outcomes.with(530, outcome(() => calculator(given(odd))));
    assert.equal(inColumns(calculator, columns(values.with(530, odd))), joined(all));
  }
}

test("columns of every check value are what the rows are one by one", () => {
  let count = 0;
  for (const { function: name, inputs } of topics().flatMap((topic) => topic.cases)) {
    const [topic, call] = name.split(".");
    const calculator = hilum[topic]?.[camel(call)];
    if (!calculator) continue;
    const named = Object.fromEntries(Object.entries(inputs).map(([name, value]) => [camel(name), value]));
    for (const [name, input] of Object.entries(named)) {
      const own = parts(input);
      // What a word means must be the same in all rows.
      if (!own || name === "unit" || name === "bushel") continue;
      compared(calculator, named, { name, ...own });
      count += 1;
    }
  }
  assert.ok(count > 500, String(count));
});

test("a result whose kind depends on the row is refused where it changes", () => {
  // DDI 1 is a volume per area, DDI 6 a mass per area.
  const ddi = Float64Array.of(1, 1, 6);
  assert.throws(() => hilum.ddi.decode.each({ ddi, number: 100 }), { code: "wrong_dimension", field: "unit" });
  assert.deepEqual(hilum.ddi.decode.each({ ddi: ddi.slice(0, 2), number: 100 }).values.length, 2);
});

test("a column of what a unit is does not say what the word means", () => {
  const unit = { values: Float64Array.of(80000, 140000), unit: "seeds" };
  const per = { rate: "2 mL/unit", size: "6000 seeds/kg", unit };
  assert.throws(() => hilum.rate.perUnit.each(per), { code: "unit_not_given", field: "rate" });
});

test("no rows give no results", () => {
  const none = hilum.seed.count.each({ mass: { values: new Float64Array(0), unit: "lb" }, size: "2850 seeds/lb" });
  assert.deepEqual(none, { values: new Float64Array(0), unit: "seeds" });
});
