import assert from "node:assert/strict";
import { test } from "node:test";
import { HilumError as OfHilum } from "hilum";
import { HilumError, plan, planText } from "hilum/job";

const job = () => ({
  orders: [{ order: "7", lot: "K-3", amount: "12000 lb", size: "2650 seeds/lb" }],
  treatments: [{ product: "Peat inoculant", rate: "3.5 oz av/cwt" }],
  units: "us",
});

function refusal(call) {
  try {
    call();
  } catch (error) {
    assert.ok(error instanceof HilumError, String(error?.stack ?? error));
    return error;
  }
  assert.fail("not refused");
}

test("a job gives a plan", () => {
  // Worked by hand: 3.5 oz over 100 lb, for 12,000 lb: 420 oz, which is 26.25 lb.
  assert.ok(Math.abs(plan(job()).treatments[0].needed.value - 26.25) < 1e-9);
  assert.deepEqual(JSON.parse(planText(JSON.stringify(job()))), plan(job()));
});

test("all problems come with their place", () => {
  const wrong = job();
  wrong.orders[0].amount = "12000 sheep";
  wrong.treatments[0].rate = "3.5 oz/cwt";
  const error = refusal(() => plan(wrong));
  assert.equal(error.code, "invalid_document");
  assert.deepEqual(error.problems.map((problem) => problem.pointer), ["/orders/0/amount", "/treatments/0/rate"]);
  assert.equal(error.field, "/orders/0/amount");
  assert.match(error.message, /^\/orders\/0\/amount: "12000 sheep" /);
});

test("an error is one, whichever entry its class was imported from", () => {
  assert.ok(refusal(() => planText("{")) instanceof OfHilum);
  assert.ok(!(new Error("another") instanceof HilumError));
});

test("what is missing is told with what to give", () => {
  const wrong = job();
  delete wrong.orders[0].size;
  assert.equal(refusal(() => plan(wrong)).message, '/orders/0/size: missing. Give a seed size such as "2850 seeds/lb"');
});

test("unknown fields and wrong kinds are refused", () => {
  assert.equal(refusal(() => plan({ ...job(), colour: "red" })).field, "/colour");
  assert.equal(refusal(() => plan({ ...job(), format: "1" })).field, "/format");
  const wrong = job();
  wrong.orders[0].amount = 12000;
  assert.equal(refusal(() => plan(wrong)).field, "/orders/0/amount");
  assert.equal(refusal(() => planText("{")).code, "invalid_document");
  assert.equal(refusal(() => planText(undefined)).code, "wrong_type");
  assert.equal(refusal(() => planText('{"title": "\uD800"}')).code, "invalid_document");
});

test("what JSON.stringify would drop or change is refused", () => {
  for (const value of [undefined, NaN, Infinity, () => 1, Symbol("x"), 1n, new Date(0), new Map()]) {
    assert.equal(refusal(() => plan({ ...job(), title: value })).field, "/title");
  }
  const circle = job();
  circle.work = circle;
  assert.equal(refusal(() => plan(circle)).code, "invalid_document");
  assert.equal(refusal(() => plan(undefined)).code, "invalid_document");
});

test("text of all kinds arrives as it is", () => {
  const title = 'ü 種 🌱 "quoted" \\ \u0001';
  assert.equal(plan({ ...job(), title }).title, title);
});
