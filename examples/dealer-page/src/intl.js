// Formatters in the page's language, each made once: to make one takes as long as to write a hundred numbers with it.
const kept = new Map();

const kind = (name) => (options) => {
  const { lang } = document.documentElement;
  const key = `${name} ${lang} ${JSON.stringify(options)}`;
  if (!kept.has(key)) kept.set(key, new Intl[name](lang, options));
  return kept.get(key);
};

export const numbers = kind("NumberFormat");
export const dates = kind("DateTimeFormat");
export const lists = kind("ListFormat");
