import { HilumError, type Amount, type Quantity } from "../hilum.js";
import { ask, base, fields, given, inside, items, maybe, plain, word, type Units } from "./ask.js";

/** What a tank gives one order. */
export interface BatchNeed {
  /** Slurry per mass of seed. */
  readonly rate: Amount;
  /** While this number stays, the mix goes on; another is due a new mix. 0 when absent. */
  readonly recipe?: number;
  /** Share of the slurry that is the living product; none when absent. */
  readonly living?: Amount;
}

/** An order, in running order. */
export interface BatchOrder {
  readonly mass: Amount;
  /** Seed flow × utilisation; needed only where there are shifts. */
  readonly speed?: Amount;
  /** Shift time between the order before and this one. */
  readonly changeover?: Amount;
  /** What each tank gives it, in the order of the tanks; null for a tank that it does not need. */
  readonly needs: readonly (BatchNeed | null)[];
}

/** One size that a living product's sets come in. */
export interface SetSize {
  /** Living product that one set adds to a tank. */
  readonly adds: Amount;
  /** Sets on the shelf; without limit when absent. */
  readonly stock?: number;
  /** Where plans are equal in all that is wanted, the least sum of the first decides, then of the second. */
  readonly ranks?: readonly [number, number];
}

/** A tank. */
export interface BatchTank {
  /** The most slurry it takes. */
  readonly capacity: Amount;
  /** Slurry that stays in its lines. */
  readonly holdUp?: Amount;
  /** From the first pour until the mix can be used. */
  readonly mixing?: Amount;
  /** How long a mix may be used, from the start of mixing. */
  readonly potLife?: Amount;
  /** Whether refills are made ready beside running. */
  readonly refill?: "when_empty" | "top_up";
  /** Filled with whole sets; any volume when absent. */
  readonly sets?: readonly SetSize[];
}

/** What is to be planned. */
export interface BatchJob {
  readonly orders: readonly BatchOrder[];
  readonly tanks: readonly BatchTank[];
  /** Hours of work since an instant of yours that is a whole second; without them, mixes have no instants. */
  readonly shifts?: readonly { readonly from: Amount; readonly to: Amount }[];
}

/** A mix of one tank. */
export interface Mix {
  /** Which tank, counted from 0. */
  readonly tank: number;
  /** Counts from 1 within the tank. */
  readonly number: number;
  readonly mixAt?: Quantity;
  readonly readyAt?: Quantity;
  readonly useBy?: Quantity;
  readonly doneAt?: Quantity;
  /** All that is poured: applied + holdUp + discarded. */
  readonly mixed: Quantity;
  readonly applied: Quantity;
  readonly holdUp: Quantity;
  readonly discarded: Quantity;
  /** Whole sets, of each size of the tank. */
  readonly sets: readonly number[];
  /** Seed of each order, counted from 0, that is treated from it. */
  readonly orders: readonly { readonly order: number; readonly mass: Quantity }[];
}

/** Batches of every tank on one timeline. */
export interface BatchPlan {
  readonly mixes: readonly Mix[];
  /** Seed treated. */
  readonly treated: Quantity;
  /** Whether that is all of it. */
  readonly isAllTreated: boolean;
  readonly finish?: Quantity;
  /** Whether no plan within the rules is better; else it is valid, and the search stopped at a bound. */
  readonly isProven: boolean;
  /** Tanks whose shelf does not suffice. */
  readonly shortOfStock: readonly number[];
}

/** Plans the batches of every tank over all orders. */
export function planBatches(job: BatchJob, options: { readonly units?: Units } = {}): BatchPlan {
  const { orders, tanks, shifts = [] } = fields("", job, ["orders", "tanks"], ["shifts"]);
  const { units } = fields("options", options, [], ["units"]);
  word("units", units, ["metric", "us"]);
  const numbers: number[] = [items("orders", orders).length, items("tanks", tanks).length, items("shifts", shifts).length];
  const needs: number[] = [];
  for (const [place, order] of items("orders", orders)) {
    const { mass, speed, changeover = "0 s" } = fields(place, order, ["mass", "needs"], ["speed", "changeover"]);
    numbers.push(base(inside(place, "mass"), mass, "mass"), maybe(inside(place, "speed"), speed, "seedFlow"), base(inside(place, "changeover"), changeover, "time"));
    const all = items(inside(place, "needs"), order.needs);
    if (all.length !== tanks.length) {
      const told = `${place}.needs: has ${all.length} entries, one for each of ${tanks.length} tanks is needed; write null for a tank that is not needed.`;
      throw new HilumError("wrong_type", `${place}.needs`, order.needs, told);
    }
    for (const [at, need] of all) needs.push(...needed(at, need));
  }
  for (const [place, tank] of items("tanks", tanks)) numbers.push(...numbersOf(place, tank));
  numbers.push(...needs);
  for (const [place, shift] of items("shifts", shifts)) {
    const { from, to } = fields(place, shift, ["from", "to"]);
    numbers.push(base(inside(place, "from"), from, "time"), base(inside(place, "to"), to, "time"));
  }
  const answer = ask("batches", Float64Array.from(numbers));
  if (answer[0] !== 0) throw refusedOf(answer, job);
  return told(answer, job, units);
}

function needed(place: string, need: BatchNeed | null): number[] {
  if (need === null) return [NaN, 0, 0];
  const { rate, recipe = 0, living = "0 %" } = fields(place, need, ["rate"], ["recipe", "living"]);
  return [base(inside(place, "rate"), rate, "rate"), plain(inside(place, "recipe"), recipe, true), base(inside(place, "living"), living, "share")];
}

function numbersOf(place: string, tank: BatchTank): number[] {
  const optional = ["holdUp", "mixing", "potLife", "refill", "sets"];
  const { capacity, holdUp = "0 L", mixing = "0 s", potLife, refill, sets = [] } = fields(place, tank, ["capacity"], optional);
  const sizes = items(inside(place, "sets"), sets).flatMap(([at, set]) => {
    const { adds, stock, ranks = [0, 0] } = fields(at, set, ["adds"], ["stock", "ranks"]);
    const [first, second] = ranks;
    return [base(inside(at, "adds"), adds, "volume"), plain(inside(at, "stock"), stock, true), plain(inside(at, "ranks"), first), plain(inside(at, "ranks"), second)];
  });
  return [
    base(inside(place, "capacity"), capacity, "volume"),
    base(inside(place, "holdUp"), holdUp, "volume"),
    base(inside(place, "mixing"), mixing, "time"),
    maybe(inside(place, "potLife"), potLife, "time"),
    word(inside(place, "refill"), refill, ["when_empty", "top_up"]),
    sets.length,
    ...sizes,
  ];
}

function told(answer: Float64Array, { tanks }: BatchJob, units: Units): BatchPlan {
  const [, treated = 0, all, finish = NaN, proof = 0, short = 0, count = 0] = answer;
  const time = <Name extends string>(name: Name, value: number | undefined) =>
    (value === undefined || Number.isNaN(value) ? {} : { [name]: given(value, "time", units) }) as { [Key in Name]?: Quantity };
  const volume = (value = 0) => given(value, "volume", units);
  const portions = answer.subarray(7 + count * 18);
  const orders: { order: number; mass: Quantity }[][] = Array.from({ length: count }, () => []);
  for (let at = 0; at < portions.length; at += 3) {
    const [mix = 0, order = 0, mass = 0] = portions.subarray(at, at + 3);
    orders[mix]?.push({ order, mass: given(mass, "mass", units) });
  }
  const mixes = orders.map((own, at): Mix => {
    const [tank = 0, number = 0, mixAt, readyAt, useBy, doneAt, mixed, applied, holdUp, discarded, ...sets] = answer.subarray(7 + at * 18, 25 + at * 18);
    return {
      tank,
      number,
      ...time("mixAt", mixAt),
      ...time("readyAt", readyAt),
      ...time("useBy", useBy),
      ...time("doneAt", doneAt),
      mixed: volume(mixed),
      applied: volume(applied),
      holdUp: volume(holdUp),
      discarded: volume(discarded),
      sets: sets.slice(0, tanks[tank]?.sets?.length ?? 0),
      orders: own,
    };
  });
  const shortOfStock = tanks.map((_, tank) => tank).filter((tank) => (short >>> tank) & 1);
  return { mixes, treated: given(treated, "mass", units), isAllTreated: all === 1, ...time("finish", finish), isProven: proof === 1, shortOfStock };
}

const FIELDS = ["orders mass", "orders speed", "orders changeover", "needs rate", "needs living", "tanks capacity", "tanks holdUp", "tanks mixing", "tanks potLife", "tanks sets", "tanks sets", "shifts"];

function refusedOf(answer: Float64Array, { tanks }: BatchJob): HilumError {
  const [code, first = 0, index = 0, value] = answer;
  if (code === 2) return new HilumError("too_many", "", undefined, `the job: more than ${first} are too many; split it, or use larger tanks or sets.`);
  if (code === 3) {
    const told = `tanks.${first}: is too small; its smallest set does not fit, or only fills its lines.`;
    return new HilumError("tank_too_small", `tanks.${first}`, tanks[first], told);
  }
  if (code !== 1) return new HilumError("other", "", undefined, "the job: cannot be planned.");
  const [list = "", name] = (FIELDS[first] ?? "").split(" ");
  const place = list === "needs" ? `orders.${Math.floor(index / tanks.length)}.needs.${index % tanks.length}` : `${list}.${index}`;
  const field = name ? `${place}.${name}` : place;
  return new HilumError("out_of_range", field, value, `${field}: cannot be ${value} base units; ${list === "shifts" ? "shifts are ordered and apart" : "look at its size and sign"}.`);
}
