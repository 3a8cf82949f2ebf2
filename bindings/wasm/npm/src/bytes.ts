/** The bytes of a wasm out of the text that carries them; see build/carry.mjs. */
export function bytes(carried: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(carried.length);
  for (let at = 0; at < carried.length; at++) {
    const point = carried.charCodeAt(at);
    bytes[at] = point < 127 ? point - 32 : point - 66;
  }
  return bytes;
}
