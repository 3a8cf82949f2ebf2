/** The wasm that a text carries, running; see build/carry.mjs. */
export function instance<Exports>(carried: string, imports: WebAssembly.Imports = {}): Exports {
  const bytes = new Uint8Array(carried.length);
  for (let at = 0; at < carried.length; at++) {
    const point = carried.charCodeAt(at);
    bytes[at] = point < 127 ? point - 32 : point - 66;
  }
  return new WebAssembly.Instance(new WebAssembly.Module(bytes), imports).exports as Exports;
}
