// What a wasm exports, and which of it is arithmetic alone: that becomes script again, by wasm2js.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import binaryen from "binaryen";
import shrink, { FEATURES } from "./shrink.mjs";

// As shrink.mjs; binaryen writes what it may use into the wasm.
const USED = ["SIMD128", "BulkMemory", "SignExt", "NontrappingFPToInt", "MutableGlobals", "Multivalue", "ReferenceTypes"].reduce((all, name) => all | binaryen.Features[name], 0);

// What binaryen prints has colours in it, so that no word begins where it seems to.
const NOT_ARITHMETIC = /call|loop|global|i64|v128|unreachable|memory|load|store/;

/** Writes a wasm as it was compiled, with roots and whole numbers by the processor's own instructions, whose bits are libm's: exact. */
export function withInstructions(from, to) {
  const module = binaryen.readBinary(readFileSync(from));
  module.setFeatures(USED);
  for (const name of Array.from({ length: module.getNumFunctions() }, (_, at) => binaryen.getFunctionInfo(module.getFunctionByIndex(at)).name)) {
    const [, instruction] = /4libm4math\d+(sqrt|floor)\d+\1/.exec(name) ?? [];
    if (!instruction) continue;
    module.removeFunction(name);
    module.addFunction(name, binaryen.f64, binaryen.f64, [], module.f64[instruction](module.local.get(0, binaryen.f64)));
  }
  writeFileSync(to, module.emitBinary());
}

export class Exports {
  constructor(file) {
    this.module = binaryen.readBinary(readFileSync(file));
    this.module.setFeatures(USED);
    const all = Array.from({ length: this.module.getNumExports() }, (_, at) => binaryen.getExportInfo(this.module.getExportByIndex(at)));
    /** Functions by the names that they are exported by. */
    this.functions = new Map(all.map(({ name, value }) => [name, value]));
  }

  /** A function as text. */
  text(name) {
    return binaryen.emitText(binaryen.getFunctionInfo(this.module.getFunction(name)).body);
  }

  isArithmetic(name) {
    return !NOT_ARITHMETIC.test(this.text(name));
  }

  /** Writes, smaller, the same with some exports gone and functions exported by other names: a map of them. */
  write(file, isKept, more) {
    const part = binaryen.readBinary(this.module.emitBinary());
    part.setFeatures(USED);
    for (const name of this.functions.keys()) if (!isKept(name)) part.removeExport(name);
    more.forEach((short, name) => part.addFunctionExport(name, short));
    writeFileSync(file, part.emitBinary());
    shrink(file, file);
  }

  /** The functions of a map as script, by their short names: inputs, what goes before the result, the result. */
  script(file, functions) {
    this.write(file, () => false, functions);
    const wasm2js = ["node_modules/binaryen/bin/wasm2js", ...FEATURES, "-Oz", file];
    const script = execFileSync(process.execPath, wasm2js, { encoding: "utf8" });
    const bodies = new Map(
      [...script.matchAll(/^ function (\$\w+)\(([^)]*)\) \{\n([^]*?)^ \}$/gm)].map(([, name, inputs, body]) => [name, { inputs: inputs.split(", "), body }]),
    );
    const names = [...script.matchAll(/^ {2}"(\$?\w+)": (\$\w+)/gm)];
    if (names.length !== functions.size) throw new Error(`of ${functions.size} functions wasm2js wrote ${names.length} that are known here`);
    return names.map(([, short, name]) => {
      const { inputs, body } = bodies.get(name);
      const lines = inputs.reduce((body, input) => body.replace(`  ${input} = +${input};\n`, ""), body);
      const [, steps, result] = /^([^]*?) {2}return \+?([^;]*);\n$/.exec(lines);
      if (/\breturn\b/.test(steps)) throw new Error(`wasm2js returns from within ${name}: ${lines}`);
      return { short, inputs, steps, result };
    });
  }
}
