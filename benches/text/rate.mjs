// Processor seconds that a general-purpose library takes to read a rate, told on one line.
import { createRequire } from "node:module";

const { UcumLhcUtils } = createRequire(`${process.cwd()}/`)("@lhncbc/ucum-lhc");
const library = UcumLhcUtils.getInstance();
const TEXT = "2.5 [foz_us]/[scwt_av]";
const MANY = 3000;

const read = () => {
  const space = TEXT.indexOf(" ");
  return library.convertUnitTo(TEXT.slice(space + 1), Number(TEXT.slice(0, space)), "m3/kg").toVal;
};
// 2.5 x 29.5735295625 mL in 45.359237 kg.
if (!(Math.abs(read() - (2.5 * 29.5735295625e-6) / 45.359237) < 1e-15)) throw new Error(`It reads ${read()}.`);
for (let warm = 0; warm < MANY; warm += 1) read();
const start = process.cpuUsage().user;
for (let call = 0; call < MANY; call += 1) read();
console.log((process.cpuUsage().user - start) / 1e6 / MANY);
