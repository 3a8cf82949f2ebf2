/**
 * What is planned and watched in the shed: which packs to open, which setting a pump needs, whether the rate is
 * right while the treater runs, and the batches of every tank on one timeline.
 *
 * @packageDocumentation
 */
import { HilumError, type Amount, type Quantity } from "./hilum.js";
import { ask, base, fields, given, inside, items, maybe, plain, refused, word, type Units } from "./shed/ask.js";

export { planBatches, type BatchJob, type BatchNeed, type BatchOrder, type BatchPlan, type BatchTank, type Mix, type SetSize } from "./shed/batches.js";

/** A size that a product is sold in. */
export interface PackSize {
  /** The seed that one set covers. */
  readonly covers: Amount;
  /** Sets on hand; without limit when absent. */
  readonly stock?: number;
  /** What a set costs. */
  readonly price?: number;
}

/** What to open. */
export interface Choice {
  /** Sets of each size, in the order of the sizes. */
  readonly sets: readonly number[];
  /** The seed that they cover. */
  readonly covered: Quantity;
  /** The seed that they cover beyond the need. */
  readonly leftover: Quantity;
  /** What they cost. */
  readonly cost: number;
  /** Whether no other choice is better; else the search stopped at its bound. */
  readonly isProven: boolean;
  /** Whether the stock covers the need; else all of it is opened. */
  readonly isEnough: boolean;
}

const OBJECTIVES = ["least_leftover", "least_cost", "fewest_sets"] as const;

/** Which packs to open, whole, for a mass of seed: the best under an objective, `least_leftover` when none is given. */
export function choosePacks(
  asked: { readonly need: Amount; readonly sizes: readonly PackSize[]; readonly objective?: (typeof OBJECTIVES)[number] },
  options: { readonly units?: Units } = {},
): Choice {
  const { need, sizes, objective } = fields("", asked, ["need", "sizes"], ["objective"]);
  const units = unitsOf(options);
  const places: [string, unknown][] = [["need", need]];
  const numbers = [base("need", need, "mass"), word("objective", objective, OBJECTIVES)];
  for (const [place, size] of items("sizes", sizes)) {
    const { covers, stock, price } = fields(place, size, ["covers"], ["stock", "price"]);
    places.push([place, size]);
    numbers.push(base(inside(place, "covers"), covers, "mass"), plain(inside(place, "stock"), stock, true), plain(inside(place, "price"), price));
  }
  const answer = ask("packs", Float64Array.from(numbers));
  if (answer[0] !== 0) throw refused(answer, answer.length > 2 ? places : [answer[0] === 14 ? ["sizes", sizes] : ["need", need]]);
  const [, proven, enough, covered = 0, leftover = 0, cost = 0, ...sets] = answer;
  return {
    sets,
    covered: given(covered, "mass", units),
    leftover: given(leftover, "mass", units),
    cost,
    isProven: proven === 1,
    isEnough: enough === 1,
  };
}

/** Where a wanted flow lies to the catches, and the setting for it when it lies between them. */
export type PumpSetting = { readonly lies: "within"; readonly setting: number } | { readonly lies: "below" | "above" };

/**
 * The setting for a flow, on the line of least squares through any number of catches; through the origin for one
 * catch. A line is not trusted beyond the settings that were tested.
 */
export function pumpSetting(asked: {
  readonly catches: readonly { readonly setting: number; readonly flow: Amount }[];
  readonly wanted: Amount;
}): PumpSetting {
  const { catches, wanted } = fields("", asked, ["catches", "wanted"]);
  const places: [string, unknown][] = [["catches", catches]];
  const numbers = [base("wanted", wanted, "flow")];
  if (!(numbers[0]! > 0)) throw new HilumError("not_positive", "wanted", wanted, `wanted: ${JSON.stringify(wanted)} must be more than 0.`);
  for (const [place, one] of items("catches", catches)) {
    const { setting, flow } = fields(place, one, ["setting", "flow"]);
    places.push([place, one]);
    numbers.push(plain(inside(place, "setting"), setting), base(inside(place, "flow"), flow, "flow"));
  }
  const answer = ask("setting", Float64Array.from(numbers));
  if (answer[0] !== 0) throw refused(answer, places);
  const [, lies, setting = 0] = answer;
  return lies === 0 ? { lies: "within", setting } : { lies: lies === 1 ? "below" : "above" };
}

/** What a sensor shows. */
export interface Sensor<Shows extends string> {
  readonly shows: Shows;
  /** Its smallest step. */
  readonly resolution: Amount;
  /** More than this cannot run. */
  readonly most: Amount;
}

/** What is wanted, and what the sensors can do. */
export interface MonitorSetup {
  /** The rate of the slurry. */
  readonly target: Amount;
  /** How far off it may be. */
  readonly tolerance: Amount;
  /** All seed so far, or its flow at the moment. */
  readonly seed: Sensor<"total" | "flow">;
  /** All liquid so far, or what is left in the tank. */
  readonly liquid: Sensor<"total" | "tank">;
  /** What the reports are in; metric when absent. */
  readonly units?: Units;
}

/** The rate over a stretch of running. */
export interface MonitorRun {
  /** Low or high only when the readings' resolution cannot explain it. */
  readonly verdict: "low" | "on_target" | "high" | "cannot_tell";
  /** Liquid / seed; absent while no seed has run. */
  readonly rate?: Quantity;
  /** How far off the rate can be by the resolution of the readings alone. */
  readonly explained?: Quantity;
}

/** What the readings so far say. */
export interface MonitorReport {
  /** What became of this step; one that cannot be running is left out. */
  readonly step: "first" | "counted" | "clock_went_back" | "seed_jumped" | "liquid_jumped";
  /** Over the last 16 readings. */
  readonly window: MonitorRun;
  /** Since the first. */
  readonly sinceStart: MonitorRun;
}

const VERDICTS = ["low", "on_target", "high", "cannot_tell"] as const;
const STEPS = ["first", "counted", "clock_went_back", "seed_jumped", "liquid_jumped"] as const;

/** Is the rate right while we run? Feed it what the sensors show, as often as you like. */
export class Monitor {
  /** The wasm's own bytes, which nothing else reads. */
  #state: Float64Array;
  readonly #isFlow: boolean;
  readonly #isTank: boolean;
  readonly #units: Units;

  constructor(setup: MonitorSetup) {
    const { target, tolerance, seed, liquid, units } = fields("", setup, ["target", "tolerance", "seed", "liquid"], ["units"]);
    this.#units = unitsOf({ units });
    const sensor = ["shows", "resolution", "most"];
    this.#isFlow = word("seed.shows", fields("seed", seed, sensor).shows, ["total", "flow"]) === 1;
    this.#isTank = word("liquid.shows", fields("liquid", liquid, sensor).shows, ["total", "tank"]) === 1;
    const numbers = [
      base("target", target, "rate"),
      base("tolerance", tolerance, "share"),
      this.#isFlow ? 1 : 0,
      base("seed.resolution", seed.resolution, this.#isFlow ? "seedFlow" : "mass"),
      base("seed.most", seed.most, "seedFlow"),
      this.#isTank ? 1 : 0,
      base("liquid.resolution", liquid.resolution, "volume"),
      base("liquid.most", liquid.most, "flow"),
    ];
    const answer = ask("begin", Float64Array.from(numbers));
    if (answer[0] !== 0) {
      const value = answer[1];
      const names = ["target", "tolerance", "", "seed.resolution", "seed.most", "", "liquid.resolution", "liquid.most"];
      throw refused(answer, [[names[numbers.indexOf(value ?? NaN)] || "setup", value]]);
    }
    this.#state = answer.subarray(1);
  }

  /** Takes one reading of both sensors and says how things stand. `at` is the time on any clock. */
  feed(reading: { readonly at: Amount; readonly seed: Amount; readonly liquid: Amount }): MonitorReport {
    const { at, seed, liquid } = fields("", reading, ["at", "seed", "liquid"]);
    const numbers = [
      base("at", at, "time"),
      this.#isFlow ? 1 : 0,
      base("seed", seed, this.#isFlow ? "seedFlow" : "mass"),
      this.#isTank ? 1 : 0,
      base("liquid", liquid, "volume"),
    ];
    const all = new Float64Array(numbers.length + this.#state.length);
    all.set(numbers);
    all.set(this.#state, numbers.length);
    const answer = ask("feed", all);
    if (answer[0] !== 0) {
      const place = (["at", "", "seed", "", "liquid"] as const)[numbers.indexOf(answer[1] ?? NaN)] || "at";
      throw refused(answer, [[place, reading[place]]]);
    }
    this.#state = answer.subarray(8);
    const run = (at: number): MonitorRun => {
      const [verdict = 3, rate = NaN, explained = NaN] = answer.subarray(at, at + 3);
      return {
        verdict: VERDICTS[verdict] ?? "cannot_tell",
        ...(Number.isNaN(rate) ? {} : { rate: given(rate, "rate", this.#units) }),
        ...(Number.isNaN(explained) ? {} : { explained: given(explained, "rate", this.#units) }),
      };
    };
    return { step: STEPS[answer[1] ?? 0] ?? "first", window: run(2), sinceStart: run(5) };
  }
}

function unitsOf(options: { readonly units?: Units }): Units {
  const { units } = fields("options", options, [], ["units"]);
  word("units", units, ["metric", "us"]);
  return units;
}
