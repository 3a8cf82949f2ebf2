// What calculations of the npm package take over the same written by hand, in one run; the same module runs in Node and in a page.
//
// Every loop is compiled from a text of its own: V8 keeps what it learned about a loop with its text, so that two formulas which
// share one would both be called as if nobody knew which is meant. Results go into an array, where they need no memory of their
// own; a sum over calls would measure how V8 keeps that sum.

// Short rounds, of which few are interrupted; many of them, but for no longer than this.
const ROUNDS = 301;
const LONGEST = 3000;
const CALLS = 1_000_000;

/** The median, and the borders that a tenth of the values lie below and above. */
function spread(values) {
  const sorted = values.toSorted((a, b) => a - b);
  return [5, 1, 9].map((tenths) => sorted[Math.floor((tenths * (sorted.length - 1)) / 10)].toExponential(3));
}

/** Both in turn, so that the machine's moods fall on both. */
function compared(what, rival, reach, ours, theirs, times) {
  const time = (run) => {
    const start = performance.now();
    let kept = 0;
    for (let n = 0; n < times; n++) kept += run(n);
    if (Number.isNaN(kept)) throw new Error(`${what}: no number`);
    return performance.now() - start;
  };
  for (let n = 0; n < 10; n++) (time(ours), time(theirs));
  const [ratios, seconds] = [[], []];
  const begun = performance.now();
  for (let n = 0; n < ROUNDS && (n < 11 || performance.now() - begun < LONGEST); n++) {
    const [own, other] = [time(ours), time(theirs)];
    // A clock that stood still tells nothing.
    if (other > 0) ratios.push(own / other);
    seconds.push(own / 1000);
  }
  return [what, rival, reach, ...spread(ratios), ...spread(seconds)].join("\t");
}

/** What nothing is measured beside. */
function alone(what, reach, run) {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    for (let n = 0; n < 10; n++) run();
    return (performance.now() - start) / 10_000;
  });
  return [what, "", reach, "", "", "", ...spread(times)].join("\t");
}

/** A thousand calls, whose results are kept. */
function thousand(formula, inputs) {
  const body = `const out = new Float64Array(1000); return (k) => {
    for (let n = 0; n < 1000; n++) out[n] = f(${inputs});
    return out[k % 1000];
  };`;
  return new Function("f", body)(formula);
}

const column = (run, rows) => () => run()[rows - 1];

export function rows({ hilum, numbers, planner }, job, where) {
  const { seed, rate, survival } = numbers;
  const count = (mass, size) => mass * size;
  const perUnit = (dose, size, unit) => (dose / size) * unit;
  const logLinear = (d, time, at, z, temperature) => (-time * 10 ** ((temperature - at) / z)) / d;
  const out = [];
  const scalar = (what, ours, theirs, inputs) =>
    out.push(compared(`${where}: ${what}, ${CALLS} times`, "the formula in JavaScript", "1.5",
      thousand(ours, `${inputs} /* Hilum */`), thousand(theirs, `${inputs} /* by hand */`), CALLS / 1000));
  scalar("number of seeds, mass x size", seed.count, count, "n * 1.1 + 1, 6000");
  scalar("dose per seed unit, rate / size x unit", rate.perUnit, perUnit, "n * 1e-9 + 1e-9, 6000, 140000");
  scalar("log10 of the living share at a temperature", survival.logLinearWithAt, logLinear, "n + 1, 86400, 10, 20, n * 0.03");

  const checked = (mass, size) => {
    if (typeof mass === "number" && typeof size === "number" && mass >= 1e-30 && mass <= 1e30 && size >= 1e-30 && size <= 1e30) {
      return mass * size;
    }
    throw new Error(`${mass} or ${size} is refused.`);
  };
  out.push(compared(`${where}: number of seeds, mass x size, ${CALLS} times`, "the formula and its checks in JavaScript", "",
    thousand(seed.count, "n * 1.1 + 1, 6000 /* Hilum again */"), thousand(checked, "n * 1.1 + 1, 6000 /* checked */"), CALLS / 1000));

  for (const size of [1_000, 1_000_000]) {
    const values = Float64Array.from({ length: size }, (_, at) => at + 1);
    const sizes = Float64Array.from({ length: size }, (_, at) => 5000 + (at % 3000));
    const loop = (body) => new Function("a", "b", `/* ${size} */ return () => {
      const out = new Float64Array(${size});
      for (let at = 0; at < ${size}; at++) out[at] = ${body};
      return out;
    };`)(values, sizes);
    const columns = (what, reach, ours, theirs) =>
      out.push(compared(`${where}: ${what}, ${size} of them${CALLS > size ? `, ${CALLS / size} times` : ""}`, "the loop in JavaScript",
        reach, column(ours, size), column(theirs, size), CALLS / size));
    columns("numbers of seeds, mass x 6000", "0.5", () => seed.count.each(values, 6000), loop("a[at] * 6000"));
    columns("numbers of seeds, mass x size", "0.5", () => seed.count.each(values, sizes), loop("a[at] * b[at]"));
    columns("masses, seeds / size", "0.5", () => seed.mass.each(values, sizes), loop("a[at] / b[at]"));
    const mass = { values, unit: "lb" };
    columns("numbers of seeds, pounds x seeds/kg as text", "0.8", () => hilum.seed.count.each({ mass, size: "6283.1 seeds/kg" }).values,
      loop("a[at] * (0.45359237 * 6283.1)"));
  }

  const needed = (pounds) => pounds * 45.359237 * (2.5 * 29.5735295625e-6 / 45.359237);
  const text = (pounds) => hilum.rate.needed({ rate: "2.5 fl oz/cwt", mass: { value: pounds, unit: "lb" } }).value;
  out.push(compared(`${where}: need by "2.5 fl oz/cwt", ${CALLS / 100} times`, "the formula in JavaScript, nothing read", "",
    thousand(text, "n + 1"), thousand(needed, "n + 1 /* by hand */"), CALLS / 100_000));
  out.push(alone(`${where}: plan of 3 orders, 4 treatments, 2 tanks, 1 shift`, "1 ms", () => planner.planText(job).length));
  return out;
}
