/** A wasm, running; see build/carry.mjs. */
export function instance<Exports>(carried: () => Uint8Array<ArrayBuffer>, imports: WebAssembly.Imports = {}): Exports {
  return new WebAssembly.Instance(new WebAssembly.Module(carried()), imports).exports as unknown as Exports;
}

/** One that has the script read decimals: core's reader is 13 kB of the package. */
export function reading<Exports extends { memory: WebAssembly.Memory }>(carried: () => Uint8Array<ArrayBuffer>): Exports {
  const number = (at: number, length: number) => Number(String.fromCharCode(...new Uint8Array(exports.memory.buffer, at, length)));
  const exports = instance<Exports>(carried, { script: { number } });
  return exports;
}

/** A text in the memory of a wasm. */
export function text({ memory }: { memory: WebAssembly.Memory }, at: number, length: number): string {
  return new TextDecoder().decode(new Uint8Array(memory.buffer, at, length));
}
