// What a form is described with. `of` names the units of a quantity; `name` is a place in the document, dots between.
export const q = (name, label, of, hint) => ({ name, label, kind: "quantity", of, hint });
export const number = (name, label, hint) => ({ name, label, kind: "number", hint });
/** A text; `from` gives words that the document offers, of which none has to be taken. */
export const text = (name, label, hint, from) => ({ name, label, kind: "text", hint, from });
export const texts = (name, label, hint) => ({ name, label, kind: "texts", hint });
export const instant = (name, label) => ({ name, label, kind: "instant" });
/** A box to tick; what it is when nobody says is left out of the document. */
export const yes = (name, label, usual = false) => ({ name, label, kind: "yes", usual });
/** One of several values; an undefined one is left out of the document. */
export const choice = (name, label, options) => ({ name, label, kind: "choice", options });
/** What an instrument showed, and the smallest step that it shows, both at one place. */
export const reading = (name, label, of) => ({ name, label, kind: "reading", of });
export const step = (name, label, of) => ({ name, label, kind: "step", of });
export const group = (label, fields) => ({ label, kind: "group", fields });
/** Items with several fields each. `about` is said of one beside its name; `start` makes a new one from the document. */
export const list = (name, label, one, fields, about = () => [], start = () => ({})) => ({ name, label, kind: "list", one, fields, about, start });
/** Items that are one value each, or a reading with its step. */
export const rows = (name, label, one, fields, start = () => "") => ({ name, label, kind: "rows", one, fields, start });
/** One way of several to say something: only the fields of that way are shown and kept. */
export const ways = (label, options) => ({ label, kind: "ways", options });
export const way = (label, fields, fixed) => ({ label, fields, fixed });
