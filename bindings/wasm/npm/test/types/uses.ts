// Read by `tsc --strict`, never run: what must compile, and (with @ts-expect-error) what must not.
import { convert, format, rate, seed, survival, treater, type Column, type HilumError, type Quantity } from "hilum";
import { plan, planText, type Job, type Plan } from "hilum/job";
import * as numbers from "hilum/numbers";

const needed: Quantity = rate.needed({ rate: "2.5 fl oz/cwt", mass: { value: 30000, unit: "lb" } }, { units: "us" });
const shown: string = format(needed, { locale: "fr-CA", maximumFractionDigits: 1 });
const column: Column = seed.count.each({ mass: { values: new Float64Array(3), unit: "lb" }, size: "2850 seeds/lb" });
const setting: number = treater.correctSetting({ setting: 50, target: "100 mL/min", caught: "125 mL/min" });
const shares: Float64Array = survival.logLinear.each({ d: "60 d", time: { values: new Float64Array(3), unit: "d" } });
const perUnit: Quantity = rate.perMass({ perUnit: "35 mL", unit: "140000 seeds", size: "6000 seeds/kg" });
const perSeed: Quantity = rate.perMass({ perSeed: "0.25 µL/seed", size: "6000 seeds/kg" });
const metric: Quantity = convert("2.5 fl oz/cwt", "mL/100 kg");
const converted: Column = convert({ values: new Float64Array(3), unit: "degF" }, "degC");
const seeds: number = numbers.seed.count(1000, 6000);

// @ts-expect-error a mass is a text or { value, unit }, no plain number
rate.needed({ rate: "2.5 fl oz/cwt", mass: 30000 });
// @ts-expect-error the mass is missing
rate.needed({ rate: "2.5 fl oz/cwt" });
// @ts-expect-error there is no such input
rate.needed({ rate: "2.5 fl oz/cwt", mass: "1 t", colour: "red" });
// @ts-expect-error a setting is a plain number
treater.correctSetting({ setting: "50", target: "100 mL/min", caught: "125 mL/min" });
// @ts-expect-error there is no such option
seed.count({ mass: "1 t", size: "6000 seeds/kg" }, { uint: "seeds" });
// @ts-expect-error undefined is no quantity
seed.count({ mass: undefined, size: "6000 seeds/kg" });
// @ts-expect-error numbers take numbers
numbers.seed.count("1000", 6000);
// @ts-expect-error one too few
numbers.seed.count(1000);

const job: Job = {
  format: 1,
  units: "us",
  orders: [{ order: "7", lot: "K-3", amount: "12000 lb", size: { value: 2650, unit: "seeds/lb" } }],
  treatments: [{ product: "Peat inoculant", rate: "3.5 oz av/cwt" }],
};
const made: Plan = plan(job);
const first: string | undefined = made.treatments[0]?.product;
const text: string = planText(JSON.stringify(job));
for (const finding of made.findings) {
  const severity: "stop" | "warn" | "note" = finding.severity;
  void severity;
}

// @ts-expect-error an order needs a lot
plan({ orders: [{ order: "7", amount: "1 t", size: "6000 seeds/kg" }], treatments: [] });
// @ts-expect-error there is no such field
plan({ orders: [], treatments: [], colour: "red" });
// @ts-expect-error there are two systems of units
plan({ orders: [], treatments: [], units: "imperial" });

export function told(error: HilumError): string {
  return `${error.code} ${error.field} ${error.problems.map((problem) => problem.pointer).join()}`;
}
void [needed, shown, column, setting, shares, perUnit, perSeed, metric, converted, seeds, first, text];
