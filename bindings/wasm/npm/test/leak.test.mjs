// A million calls of each kind leave nothing behind: no page (64 kB) of any wasm's memory, and in the script's heap less than a byte
// a call, where the smallest object takes 12.
//
// What plans takes 50 to 500 us a call, a million of them minutes, so it is called fewer times. Its memory begins anew with each call:
// the last test takes 4 kB as often, always the same 4 kB.
import assert from "node:assert/strict";
import { test } from "node:test";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { rate, seed } from "hilum";
import * as numbers from "hilum/numbers";
import { survival } from "hilum/numbers/after";
import { accountText, plan, planText } from "hilum/job";
import { Monitor, choosePacks, planBatches, pumpSetting } from "hilum/shed";

// Each instance's memory: what WebAssembly.Instance gives is seen by wrapping it before the first call.
const instances = [];
const { Instance } = WebAssembly;
WebAssembly.Instance = class extends Instance {
  constructor(...given) {
    super(...given);
    instances.push(this.exports);
  }
};
const pages = () => instances.map(({ memory }) => memory.buffer.byteLength);

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc");
// Most of a refusal is the trace of its stack, which is V8's.
Error.stackTraceLimit = 0;

function heap() {
  collect();
  return process.memoryUsage().heapUsed;
}

function refused(call) {
  try {
    call();
  } catch {
    return;
  }
  assert.fail("what must be refused was taken");
}

const job = {
  orders: [{ order: "7", lot: "K-3", amount: "12000 lb", size: "2650 seeds/lb" }],
  treatments: [{ product: "Peat inoculant", rate: "3.5 oz av/cwt" }],
};
const jobText = JSON.stringify(job);
const runText = JSON.stringify({ job, orders: [{ order: "7", seed: { mass: "12000 lb", resolution: "20 lb" } }] });
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
const masses = new Float64Array(3).fill(1000);
let reading = 0;

const MILLION = 1_000_000;
const FEWER = 50_000;
const KINDS = {
  "of a number": [MILLION, (n) => numbers.seed.count(n + 1, 6000)],
  "of a number that is refused": [MILLION, () => refused(() => numbers.seed.count(-1, 6000))],
  "of what comes after treating": [MILLION, (n) => survival.logLinear(n + 1, 86400)],
  "of a column": [MILLION, () => numbers.seed.count.each(masses, 6000)],
  "of texts, each another": [MILLION, (n) => rate.needed({ rate: `${n + 1} mL/100 kg`, mass: { value: 100, unit: "lb" } })],
  "of a text that is refused": [MILLION, () => refused(() => seed.count({ mass: "5 kgs", size: "5 seeds/g" }))],
  "of a column in a unit": [MILLION, () => seed.count.each({ mass: { values: masses, unit: "kg" }, size: "5 seeds/g" })],
  "of a reading that is fed": [MILLION, () => monitor.feed({ at: { value: (reading += 1), unit: "s" }, seed: { value: 4 * reading, unit: "kg" }, liquid: { value: 13 * reading, unit: "mL" } })],
  "of a pump's setting": [MILLION, () => pumpSetting({ catches: [{ setting: 10, flow: "40 mL/min" }], wanted: "85 mL/min" })],
  "of a choice of packs": [MILLION, () => choosePacks({ need: "11 t", sizes: [{ covers: "4 t" }] })],
  "of a choice that is refused": [MILLION, () => refused(() => choosePacks({ need: "0 kg", sizes: [] }))],
  "of batches": [FEWER, () => planBatches(batches)],
  "of batches that are refused": [FEWER, () => refused(() => planBatches({ ...batches, tanks: [{ capacity: "10 L", sets: [{ adds: "20 L" }] }] }))],
  "of a job": [FEWER, () => planText(jobText)],
  "of a job as an object": [FEWER, () => plan(job)],
  "of a run": [FEWER, () => accountText(runText)],
  "of a job that is refused": [FEWER, () => refused(() => planText("{}"))],
};

for (const [what, [calls, call]] of Object.entries(KINDS)) {
  test(`${calls} calls ${what} leave no memory behind`, () => {
    const round = (many) => {
      for (let n = 0; n < many; n++) call(n);
    };
    round(Math.min(FEWER, calls / 10));
    const before = { pages: pages(), heap: heap() };
    round(calls);
    assert.deepEqual(pages(), before.pages);
    const left = heap() - before.heap;
    assert.ok(left < Math.max(calls, 5 * FEWER), `${left} bytes`);
  });
}

test("what a call took is free at the next", () => {
  const taking = { numbers_for: 512, room: 4096 };
  const found = instances.flatMap((exports) => Object.entries(taking).filter(([name]) => name in exports).map(([name, length]) => [exports, name, length]));
  assert.equal(found.length, 2);
  for (const [exports, name, length] of found) {
    const before = exports.memory.buffer.byteLength;
    for (let n = 0; n < FEWER; n++) assert.equal(exports[name](length), exports[name](length), name);
    assert.equal(exports.memory.buffer.byteLength, before, name);
  }
});
