// A wasm as text inside a script, so that one file works in browsers, bundlers and Node alike, at once.
// One character a byte keeps the patterns that gzip finds: it costs 3 to 5 %, where base64 costs 32 %.
import { gzipSync } from "node:zlib";
import { transformSync } from "esbuild";
import { walk } from "./walk.mjs";

/** Where the text belongs in a module, which is bundled without it. */
const PLACE = "wasm as text";

/** Bytes become letters in their order, the first of them printable ASCII, the others beyond it: nothing else is needed to read them. */
function inOrder(bytes) {
  // What a wasm has most of are the bytes from 250 on over 0 to 88.
  const letter = (byte) => ((byte + 6) & 255) + (((byte + 6) & 255) < 95 ? 32 : 256 + 32);
  const text = Array.from(bytes, (byte) => String.fromCharCode(letter(byte))).join("");
  return { text, module: `export default () => Uint8Array.from("${PLACE}", (letter) => letter.charCodeAt(0) - 38);\n` };
}

/**
 * Bytes by the codes of their letters. Some are printable ASCII, but for what a text marks; those for which `plain` has a bit, a
 * hexadecimal digit for four of them. The others lie beyond. Both are in their order.
 */
function alphabet(plain) {
  const bytes = [];
  let ascii = 31;
  let beyond = 191;
  for (let byte = 0; byte < 256; byte++) {
    if ((parseInt(plain[byte >> 2], 16) >> (byte & 3)) & 1) {
      do ascii++;
      while (ascii === 34 || ascii === 92);
      bytes[ascii] = byte;
    } else {
      bytes[++beyond] = byte;
    }
  }
  return bytes;
}

/** As many letters of ASCII as `alphabet` has. */
const ASCII = 93;

/** Bytes as letters, the most frequent of them ASCII, and which these are. */
function spelled(bytes) {
  const often = new Array(256).fill(0);
  for (const byte of bytes) often[byte] += 1;
  const isPlain = new Set([...often.keys()].sort((a, b) => often[b] - often[a]).slice(0, ASCII));
  const digit = (_, at) => [0, 1, 2, 3].reduce((bits, bit) => bits | (isPlain.has(4 * at + bit) << bit), 0).toString(16);
  const plain = Array.from({ length: 64 }, digit).join("");
  const letters = [];
  alphabet(plain).forEach((byte, letter) => (letters[byte] = String.fromCharCode(letter)));
  return { plain, text: bytes.map((byte) => letters[byte]).join("") };
}

function byFrequency(bytes) {
  const { plain, text } = spelled([...bytes]);
  const module = `const text = "${PLACE}";
${alphabet}
export default () => {
  const bytes = alphabet("${plain}");
  return Uint8Array.from({ length: text.length }, (_, at) => bytes[text.charCodeAt(at)]);
};
`;
  return { text, module };
}

/** Each stream of `walk` for itself with letters of its own, one behind the other; what is of no stream becomes 0. */
function inStreams(bytes) {
  const streams = [];
  let at = 0;
  walk(bytes.length, (stream) => {
    if (stream !== undefined) (streams[stream] ??= []).push(bytes[at]);
    return bytes[at++];
  });
  if (at !== bytes.length) throw new Error(`the walk ends after ${at} of ${bytes.length} bytes: walk.mjs does not know an instruction`);
  const all = Array.from(streams, (stream = []) => spelled(stream));
  const module = `const text = "${PLACE}";
${alphabet}
${walk}
export default () => {
  const bytes = new Uint8Array(${bytes.length});
  let [at, end] = [0, 0];
  const starts = ${JSON.stringify(all.map(({ text }) => text.length))}.map((length) => (end += length) - length);
  const alphabets = ${JSON.stringify(all.map(({ plain, text }) => text && plain))}.map(alphabet);
  walk(bytes.length, (stream) => (bytes[at++] = stream === undefined ? 0 : alphabets[stream][text.charCodeAt(starts[stream]++)]));
  return bytes;
};
`;
  return { text: all.map(({ text }) => text).join(""), module };
}

/**
 * A module whose default gives the bytes, or a wasm that does the same, and the text for its PLACE: the way that weighs least.
 * To put streams together takes a script's time, so they must be worth it.
 */
export function carry(bytes) {
  const weight = ({ module, text }) => gzipSync(filled(transformSync(module, { minify: true }).code, text), { level: 9 }).length;
  const ways = [[inOrder, 1], [byFrequency, 1], [inStreams, 1.05]].map(([way, effort]) => ({ made: way(bytes), effort }));
  const [least] = ways.map(({ made, effort }) => ({ made, weight: weight(made) * effort })).sort((a, b) => a.weight - b.weight);
  return least.made;
}

/** A script with the text in its place, in a line of its own: Node prints the line that an error comes from. */
export function filled(script, text) {
  const literal = JSON.stringify(text);
  return script.replace(new RegExp(`(["'\`])${PLACE}\\1`), () => `\n${literal}\n`);
}
