/** An element with attributes and children; texts become text. */
export function el(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== undefined && value !== null) element.setAttribute(key, value);
  }
  element.append(...children.flat().filter((child) => child !== undefined && child !== null && child !== false));
  return element;
}

/** A table: names of the columns, then rows; numbers stand right. */
export function table(caption, head, rows) {
  const cell = (value, at) => {
    const text = value ?? "–";
    return at === 0 ? el("th", { scope: "row" }, text) : el("td", { class: /^[\d−-]/.test(text) ? "number" : false }, text);
  };
  return el(
    "div",
    { class: "scroll", tabindex: "0", role: "region", "aria-label": caption },
    el(
      "table",
      {},
      el("caption", {}, caption),
      el("thead", {}, el("tr", {}, head.map((name) => el("th", { scope: "col" }, name)))),
      el("tbody", {}, rows.map((row) => el("tr", {}, row.map(cell)))),
    ),
  );
}

/** A picture with its words: what it shows, and the same as a table. */
export function figure(picture, about, words) {
  picture.setAttribute("role", "img");
  picture.setAttribute("aria-label", about);
  for (const inner of picture.querySelectorAll("[aria-label]")) inner.removeAttribute("aria-label");
  return el("figure", {}, picture, el("figcaption", {}, about), el("details", {}, el("summary", {}, "As a table"), words));
}
