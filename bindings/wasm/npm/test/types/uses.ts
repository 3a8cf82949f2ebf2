// Read by `tsc --strict`, never run: what must compile, and (with @ts-expect-error) what must not.
import { Monitor, choosePacks, planBatches, pumpSetting, type BatchPlan, type Choice } from "hilum/shed";
import { convert, format, rate, seed, survival, treater, type Column, type HilumError, type Quantity } from "hilum";
import { plan, planText, type Job, type Plan } from "hilum/job";
import * as numbers from "hilum/numbers";
import { survival as kept } from "hilum/numbers/after";

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
const log10: number = kept.logLinear(86400, 3600);

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
void [needed, shown, column, setting, shares, perUnit, perSeed, metric, converted, seeds, log10, first, text];

const choice: Choice = choosePacks({ need: "11 t", sizes: [{ covers: "4 t", stock: 3, price: 410 }] });
const opened: readonly number[] = choice.sets;
const lies = pumpSetting({ catches: [{ setting: 10, flow: "40 mL/min" }], wanted: "85 mL/min" });
const setTo: number | undefined = lies.lies === "within" ? lies.setting : undefined;
const sensor = { shows: "total", resolution: "1 kg", most: "400 kg/min" } as const;
const watch = new Monitor({ target: "325 mL/100 kg", tolerance: "5 %", seed: sensor, liquid: { ...sensor, resolution: "1 L", most: "2 L/min" } });
const verdict: "low" | "on_target" | "high" | "cannot_tell" = watch.feed({ at: "1 s", seed: "1 kg", liquid: "1 L" }).window.verdict;
const batches: BatchPlan = planBatches({ orders: [{ mass: "1 t", needs: [null] }], tanks: [{ capacity: "40 L" }] });
void [opened, setTo, verdict, batches];

// @ts-expect-error a stock is a number
choosePacks({ need: "11 t", sizes: [{ covers: "4 t", stock: "3" }] });
// @ts-expect-error there is no such objective
choosePacks({ need: "11 t", sizes: [], objective: "best" });
// @ts-expect-error a setting only where it lies within
void lies.setting;
// @ts-expect-error a catch has a setting
pumpSetting({ catches: [{ flow: "40 mL/min" }], wanted: "85 mL/min" });
// @ts-expect-error seed is no tank
new Monitor({ target: "1 L/t", tolerance: "5 %", seed: { ...sensor, shows: "tank" }, liquid: sensor });
// @ts-expect-error undefined is no mass
planBatches({ orders: [{ mass: undefined, needs: [] }], tanks: [] });
// @ts-expect-error the state is the monitor's own
void watch.state;
