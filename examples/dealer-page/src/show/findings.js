// What stands against a plan or an account, the gravest first, each with its remedy and the way to its field.
import { body, el, together } from "../dom.js";

const SEVERITY = { stop: "Stop", warn: "Look", note: "Note" };

/** A message, in which neither a name in quotation marks nor a number and its unit are broken. */
const words = (message) => message.replace(/(\d) (?=%|\p{L}{1,3}\b)/gu, "$1\u00A0").split(/("[^"\s]{1,20}")/).map((part, at) => (at % 2 ? together(part) : part));

/** `goTo` leads to a place in the form; it gives nothing where the form asks nothing there. */
export function findings(id, all, none, goTo) {
  const item = ({ severity, code, message, where }) => {
    const go = where && goTo(where);
    return el(
      "li",
      { class: severity, "data-code": code },
      el("strong", {}, SEVERITY[severity]),
      " ",
      words(message),
      " ",
      go && el("button", { type: "button", class: "small", onclick: go }, "Show the field"),
    );
  };
  const of = (...severities) => severities.flatMap((severity) => all.filter((one) => one.severity === severity && one.code !== "treated_seed").map(item));
  const grave = of("stop", "warn");
  const notes = of("note");
  body(
    id,
    grave.length ? el("ul", { class: "findings" }, grave) : el("p", { class: "fine" }, none),
    notes.length
      ? el("details", { class: "notes" }, el("summary", {}, notes.length === 1 ? "1 note" : `${notes.length} notes`), el("ul", { class: "findings" }, notes))
      : [],
  );
}
