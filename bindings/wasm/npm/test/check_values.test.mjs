import assert from "node:assert/strict";
import { test } from "node:test";
import * as hilum from "hilum";
import * as after from "hilum/numbers/after";
import * as before from "hilum/numbers";
import * as shed from "hilum/shed";
import { account, accountText, plan, planText, version } from "hilum/job";
import { check } from "./check.mjs";
import { jobs, json, runs, text, topics, work } from "./paths.mjs";

/** Both entries of numbers. */
const numbers = { ...before, ...after };

test("every check value has the bits that Rust wrote", () => {
  const vectors = text(new URL("vectors.txt", work));
  const described = json(new URL("describe.json", work));
  const report = check({ hilum, numbers, shed, described, topics: topics(), vectors });
  assert.deepEqual(report.wrong, []);
  assert.deepEqual(report.untried, []);
  assert.equal(report.cases, vectors.trimEnd().split("\n").length);
  assert.ok(report.numbers > report.cases / 2, `only ${report.numbers} through hilum/numbers`);
  console.log(`${report.cases} check values: ${report.hilum} results through hilum, ${report.numbers} through hilum/numbers`);
});

test("decimals are read to the nearest double, as Rust reads them", () => {
  // Halfway cases and the ends of the range, chosen by hand.
  const hard = [
    "9007199254740993", "1.00000000000000011102230246251565404236316680908203125", "2.2250738585072011e-308",
    "6.9294956446009195e15", "8.10109172351e-10", "4.4501363245856945e-308", "0.500000000000000166533453693773481063544750213623046875",
  ];
  for (const decimal of hard) {
    assert.equal(hilum.convert(`${decimal} kg`, "kg").value, Number(decimal), decimal);
  }
});

for (const { name, given, written } of jobs()) {
  test(`the plan of ${name} is the bytes that Rust writes`, () => {
    assert.equal(planText(given), written);
    assert.deepEqual(plan(JSON.parse(given)), JSON.parse(written));
  });
}

for (const { name, given, written } of runs()) {
  test(`the account of ${name} is the bytes that Rust writes`, () => {
    assert.equal(accountText(given), written);
    assert.deepEqual(account(JSON.parse(given)), JSON.parse(written));
  });
}

test("the versions agree", () => {
  assert.equal(version(), json(new URL("../package.json", import.meta.url)).version);
});
