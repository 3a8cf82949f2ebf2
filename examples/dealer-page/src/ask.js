// The planner works beside the page, so that typing never waits for it. It is asked one thing at a time; of what is asked meanwhile,
// only the newest gets its turn.
import { written } from "./path.js";

const PLANNER = new URL("planner.js", import.meta.url);

let worker;
let canWork = true;
let next;
let isBusy = false;

/** What is made of a document, or `problems` of it; neither, if something newer was asked before its turn came. */
export function ask(what, document) {
  return new Promise((done, failed) => {
    next?.done({});
    next = { what, document, done, failed };
    if (!isBusy) takeTurns();
  });
}

async function takeTurns() {
  isBusy = true;
  while (next) {
    const { what, document, done, failed } = next;
    next = undefined;
    await answered({ what, text: written(document) }).then(done, failed);
  }
  isBusy = false;
}

async function answered(question) {
  const { made, problems } = await (canWork ? beside(question).catch(() => here(question)) : here(question));
  return { made: made && JSON.parse(made), problems };
}

/** Asks the worker; fails where none can be made, and when it breaks. */
async function beside(question) {
  try {
    worker ??= new Worker(PLANNER, { type: "module" });
    return await new Promise((done, failed) => {
      worker.onmessage = ({ data }) => done(data);
      worker.onerror = failed;
      worker.postMessage(question);
    });
  } catch (error) {
    worker?.terminate();
    canWork = false;
    throw error;
  }
}

/** Without a worker the page itself is the planner, and typing waits. */
async function here(question) {
  const { answer } = await import(PLANNER);
  return answer(question);
}
