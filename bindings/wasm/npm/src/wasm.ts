/** The wasm that a text carries, running; see build/carry.mjs. */
export function instance<Exports>(carried: string, imports: WebAssembly.Imports = {}): Exports {
  const alphabet = new Map(Array.from({ length: 256 }, (_, byte) => [carried[byte], byte]));
  const bytes = Uint8Array.from({ length: carried.length - 256 }, (_, at) => alphabet.get(carried[at + 256]) as number);
  return new WebAssembly.Instance(new WebAssembly.Module(bytes), imports).exports as Exports;
}
