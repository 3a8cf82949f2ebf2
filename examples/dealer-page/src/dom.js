import { lists } from "./intl.js";

/** An element with attributes and children; texts become text. */
export function el(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== undefined && value !== null) element.setAttribute(key, value);
  }
  element.append(...children.flat(2).filter((child) => child !== undefined && child !== null && child !== false && child !== ""));
  return element;
}

/** Fills the body of a section. */
export const body = (id, ...children) => document.querySelector(`#${id} .body`).replaceChildren(...children.flat(2).filter(Boolean));

/** Words that stay on one line, such as an order's number. */
export const together = (words) => el("span", { class: "together" }, words);

/** Words one after another, none of them broken. */
export const inRow = (words) => words.flatMap((one, at) => [together(at < words.length - 1 ? `${one},` : one), " "]);

const isNumber = (value) => value.className !== "together" && /^[+−-]?\d[\d.,]*([\s%]|$)/.test(value.textContent ?? value);
const isEmpty = (value) => value === undefined || value === "";

/**
 * A table by columns: what heads each and what stands in it. The first names the rows; numbers stand right; a column
 * in which nothing stands is left out. `sum` says that the last row is what the others come to.
 */
export function table(caption, columns, { sum = false } = {}) {
  const used = columns.filter(([, cells], at) => at === 0 || !cells.every(isEmpty));
  const many = columns[0][1].length;
  const side = used.map(([, cells], at) => at > 0 && cells.every((cell) => isEmpty(cell) || isNumber(cell)) && "number");
  const cell = ([, cells], at, row) =>
    at === 0 ? el("th", { scope: "row" }, cells[row] ?? "") : el("td", { class: side[at] }, isEmpty(cells[row]) ? "–" : cells[row]);
  const rows = Array.from({ length: many }, (_, row) => el("tr", { class: sum && row === many - 1 && "sum" }, used.map((column, at) => cell(column, at, row))));
  return el(
    "div",
    { class: "scroll", tabindex: "0", role: "region", "aria-label": caption },
    el(
      "table",
      {},
      el("caption", {}, caption),
      el("thead", {}, el("tr", {}, used.map(([name], at) => el("th", { scope: "col", class: side[at] }, name)))),
      el("tbody", {}, rows),
    ),
  );
}

/** Rows by columns. */
export const by = (rows, columns) => Object.entries(columns).map(([name, value]) => [name, rows.map(value)]);

/** A picture with its words: what it shows, and the same as a table. */
export function figure(picture, about, words) {
  picture.setAttribute("role", "img");
  picture.setAttribute("aria-label", about);
  for (const inner of picture.querySelectorAll("[aria-label]")) inner.removeAttribute("aria-label");
  return el("figure", {}, picture, el("figcaption", {}, about), words && el("details", {}, el("summary", {}, "As a table"), words));
}

/** Colours or signs and what they mean. */
export const legend = (entries) =>
  el(
    "p",
    { class: "legend" },
    entries.map(([sign, words]) =>
      el("span", {}, sign.startsWith("--") ? el("i", { style: `background: var(${sign})` }) : el("b", { "aria-hidden": "true" }, sign), ` ${words}`),
    ),
  );

/** Facts at a glance: what, and how much of it. */
export const facts = (entries) =>
  el("dl", { class: "facts" }, entries.filter(([, value]) => value !== undefined && value !== "").map(([name, value, more]) =>
    el("div", {}, el("dt", {}, name), el("dd", {}, el("strong", {}, value), more && [" ", more].flat())),
  ));

/** Names as a sentence says them: `A, B and C`. */
export const listed = (names) => lists({ type: "conjunction" }).format(names);

/** `1 order`, `2 orders` */
export const many = (number, one, more = `${one}s`) => `${number} ${number === 1 ? one : more}`;
