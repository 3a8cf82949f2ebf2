/** The wasm that a text carries, running; see build/carry.mjs. */
export function instance<Exports extends { memory: WebAssembly.Memory }>(carried: string): Exports {
  const alphabet = new Map(Array.from({ length: 256 }, (_, byte) => [carried[byte], byte]));
  const bytes = Uint8Array.from({ length: carried.length - 256 }, (_, at) => alphabet.get(carried[at + 256]) as number);
  // The script reads decimals: core's reader is 13 kB of the package.
  const number = (at: number, length: number) => Number(String.fromCharCode(...new Uint8Array(exports.memory.buffer, at, length)));
  const imports = { script: { number } };
  const exports = new WebAssembly.Instance(new WebAssembly.Module(bytes), imports).exports as unknown as Exports;
  return exports;
}

/** A text in the memory of a wasm. */
export function text({ memory }: { memory: WebAssembly.Memory }, at: number, length: number): string {
  return new TextDecoder().decode(new Uint8Array(memory.buffer, at, length));
}
