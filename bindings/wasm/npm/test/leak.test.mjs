import assert from "node:assert/strict";
import { test } from "node:test";
import { rate, seed } from "hilum";
import * as numbers from "hilum/numbers";
import { survival } from "hilum/numbers/after";
import { plan, planText } from "hilum/job";
import { Monitor, choosePacks, planBatches, pumpSetting } from "hilum/shed";

// Each instance's memory: what WebAssembly.Instance gives is seen by wrapping it before the first call.
const memories = [];
const { Instance } = WebAssembly;
WebAssembly.Instance = class extends Instance {
  constructor(...given) {
    super(...given);
    memories.push(this.exports.memory);
  }
};
const pages = () => memories.map((memory) => memory.buffer.byteLength);

const job = {
  orders: [{ order: "7", lot: "K-3", amount: "12000 lb", size: "2650 seeds/lb" }],
  treatments: [{ product: "Peat inoculant", rate: "3.5 oz av/cwt" }],
};

const monitor = new Monitor({
  target: "325 mL/100 kg",
  tolerance: "5 %",
  seed: { shows: "total", resolution: "1 kg", most: "400 kg/min" },
  liquid: { shows: "total", resolution: "100 mL", most: "2000 mL/min" },
});
const batches = {
  orders: [{ mass: "10 t", needs: [{ rate: "500 mL/100 kg", living: "100 %" }] }],
  tanks: [{ capacity: "40 L", sets: [{ adds: "20 L" }] }],
};

function attempt(call) {
  try {
    call();
  } catch {
    // A refusal must free what it held, too.
  }
}

function round(calls) {
  for (let n = 0; n < calls; n++) {
    rate.needed({ rate: "2.5 fl oz/cwt", mass: { value: 100 + n, unit: "lb" } });
    attempt(() => seed.count({ mass: "5 kgs", size: "5 seeds/g" }));
    numbers.seed.count(n + 1, 6000);
    survival.logLinear(n + 1, 86400);
    attempt(() => numbers.seed.count(-1, 6000));
    if (n % 10 === 0) {
      monitor.feed({ at: `${n} s`, seed: `${4 * n} kg`, liquid: `${13 * n} mL` });
      pumpSetting({ catches: [{ setting: 10, flow: "40 mL/min" }, { setting: 30, flow: "100 mL/min" }], wanted: "85 mL/min" });
      choosePacks({ need: `${n + 1} kg`, sizes: [{ covers: "4 t" }, { covers: "3 t" }] });
      attempt(() => choosePacks({ need: "0 kg", sizes: [] }));
    }
    if (n % 100 === 0) {
      planBatches(batches);
      attempt(() => planBatches({ ...batches, tanks: [{ capacity: "10 L", sets: [{ adds: "20 L" }] }] }));
      numbers.seed.count.each(new Float64Array(3000).fill(n + 1), 6000);
      seed.count.each({ mass: { values: new Float64Array(100).fill(n + 1), unit: "kg" }, size: "5 seeds/g" });
      plan(job);
      attempt(() => planText("{"));
    }
  }
}

test("a million calls leave no memory behind", () => {
  round(2000);
  const before = pages();
  assert.equal(memories.length, 5);
  round(330_000);
  assert.deepEqual(pages(), before);
});
