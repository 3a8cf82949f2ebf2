// Makes plans and accounts: in a worker beside the page, or as part of the page where there can be none.
import { accountText, planText } from "hilum/job";

const MADE = { plan: planText, account: accountText };

/** The text that is made of a document's text, or what is wrong with the document. */
export function answer({ what, text }) {
  try {
    return { made: MADE[what](text) };
  } catch (error) {
    if (!error.problems?.length) throw error;
    return { problems: error.problems };
  }
}

if (!globalThis.document) addEventListener("message", ({ data }) => postMessage(answer(data)));
