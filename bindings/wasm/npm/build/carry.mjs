// A wasm as text inside a script, so that one file works in browsers, bundlers and Node alike, at once.
// One character a byte keeps the patterns that gzip finds: it costs 3 to 5 %, where base64 costs 32 %.
import { gzipSync } from "node:zlib";

/** Bytes become letters in their order, the first of them printable ASCII, the others beyond it: nothing else is needed to read them. */
function inOrder(bytes) {
  // What a wasm has most of are the bytes from 250 on over 0 to 88.
  const letter = (byte) => ((byte + 6) & 255) + (((byte + 6) & 255) < 95 ? 32 : 256 + 32);
  const text = Array.from(bytes, (byte) => String.fromCharCode(letter(byte))).join("");
  return `export default () => Uint8Array.from(${JSON.stringify(text)}, (letter) => letter.charCodeAt(0) - 38);\n`;
}

/** The most frequent bytes become printable ASCII, the others letters beyond it; both in their order, so that the alphabet, which goes before, is small, too. */
function byFrequency(bytes) {
  const often = new Array(256).fill(0);
  for (const byte of bytes) often[byte] += 1;
  const plain = Array.from({ length: 95 }, (_, at) => at + 32).filter((point) => !'"\\$`'.includes(String.fromCharCode(point)));
  const isPlain = new Set([...often.keys()].sort((a, b) => often[b] - often[a]).slice(0, plain.length));
  let beyond = 0xc0;
  const alphabet = often.map((_, byte) => String.fromCharCode(isPlain.has(byte) ? plain.shift() : beyond++));
  const text = JSON.stringify(alphabet.concat([...bytes].map((byte) => alphabet[byte])).join(""));
  return `const text = ${text};
export default () => {
  const alphabet = new Map(Array.from({ length: 256 }, (_, byte) => [text[byte], byte]));
  return Uint8Array.from({ length: text.length - 256 }, (_, at) => alphabet.get(text[at + 256]));
};
`;
}

/** A module whose default gives the bytes: the way that weighs less. */
export function carry(bytes) {
  const [least] = [inOrder, byFrequency].map((way) => way(bytes)).sort((a, b) => gzipSync(a, { level: 9 }).length - gzipSync(b, { level: 9 }).length);
  return least;
}
