// A wasm as text inside a script, so that one file works in browsers, bundlers and Node alike, at once.
// The smallest 95 bytes become printable ASCII, the others letters beyond it: one character a byte keeps the
// patterns that gzip finds, so that it costs 7 %, where base64 costs 32 %.
export function carry(bytes) {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte < 95 ? byte + 32 : byte + 66);
  return `export default ${JSON.stringify(text)};\n`;
}
