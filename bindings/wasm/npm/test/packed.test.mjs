// The package as people get it: packed, installed into a project of its own, used plain and through bundlers.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { build as esbuild } from "esbuild";
import { build as vite } from "vite";
import { jobs, work } from "./paths.mjs";

const here = fileURLToPath(new URL("..", import.meta.url));
const fresh = `${fileURLToPath(work)}fresh`;
const run = (program, ...given) => execFileSync(program, given, { cwd: fresh, encoding: "utf8" });

rmSync(fresh, { recursive: true, force: true });
mkdirSync(fresh, { recursive: true });
const packed = JSON.parse(
  execFileSync("npm", ["pack", "--json", "--pack-destination", fresh], { cwd: here, encoding: "utf8" }),
);
const files = packed[0].files.map(({ path }) => path);
writeFileSync(`${fresh}/package.json`, '{ "name": "fresh", "private": true, "type": "module" }');
run("npm", "install", "--offline", "--no-audit", "--no-fund", `./${packed[0].filename}`);

const job = jobs()[0];
writeFileSync(`${fresh}/job.json`, job.given);
writeFileSync(
  `${fresh}/main.js`,
  `import { rate, format } from "hilum";
import { seed } from "hilum/numbers";
import { survival } from "hilum/numbers/after";
import { planText } from "hilum/job";
import { choosePacks } from "hilum/shed";
export const results = (job) => [
  format(rate.needed({ rate: "2.5 fl oz/cwt", mass: "30000 lb" }, { unit: "gal" }), { locale: "en" }),
  seed.count(1000, 6000),
  survival.logLinear(86400, 43200),
  planText(job),
  choosePacks({ need: "11 t", sizes: [{ covers: "4 t" }, { covers: "3 t" }] }).sets,
];
`,
);
const wanted = ["5.859\u00A0gal", 6000000, -0.5, job.written, [2, 1]];

test("an error that nobody catches prints no wasm", () => {
  const calls = ['import("hilum").then(({ seed }) => seed.count({}))', 'import("hilum/job").then(({ plan }) => plan({}))'];
  for (const call of calls) {
    const { status, stderr } = spawnSync(process.execPath, ["-e", call], { cwd: fresh, encoding: "utf8" });
    assert.equal(status, 1);
    assert.match(stderr, /HilumError/);
    assert.ok(stderr.length < 8000, `${stderr.length} characters`);
  }
});

test("the package holds what it needs and no more", () => {
  for (const path of ["README.md", "LICENSE", "dist/hilum.js", "dist/types/src/hilum.d.ts", "dist/schemas/job.json"]) {
    assert.ok(files.includes(path), path);
  }
  assert.deepEqual(files.filter((path) => /^(src|test|build|generated|node_modules)\//.test(path)), []);
});

test("installed from its package, it runs in Node", () => {
  const script = `import { results } from "./main.js"; import { readFileSync } from "node:fs";
    console.log(JSON.stringify(results(readFileSync("job.json", "utf8"))));`;
  assert.deepEqual(JSON.parse(run("node", "--input-type=module", "-e", script)), wanted);
});

test("its types serve a strict project", () => {
  const readme = readFileSync(`${here}README.md`, "utf8");
  const examples = [...readme.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code]) => code);
  assert.equal(examples.length, 3);
  examples.forEach((code, at) => writeFileSync(`${fresh}/example${at}.ts`, code));
  const files = examples.map((_, at) => `example${at}.ts`);
  const strict = ["--strict", "--noEmit", "--skipLibCheck", "false", "--module", "nodenext", "--target", "es2022"];
  run("node", `${here}node_modules/typescript/bin/tsc`, ...strict, "--types", "", ...files);
  run("node", `${here}node_modules/typescript/bin/tsc`, "--strict", "--noEmit", "--module", "esnext", "--moduleResolution", "bundler", "--types", "", ...files);
});

test("esbuild bundles it", async () => {
  await esbuild({ absWorkingDir: fresh, entryPoints: ["main.js"], bundle: true, format: "esm", outfile: "esbuild/main.js", minify: true });
  const { results } = await import(`${fresh}/esbuild/main.js`);
  assert.deepEqual(results(job.given), wanted);
});

test("vite bundles it", async () => {
  await vite({
    root: fresh,
    logLevel: "error",
    build: { outDir: "vite", lib: { entry: "main.js", formats: ["es"], fileName: "main" } },
  });
  const { results } = await import(`${fresh}/vite/main.js`);
  assert.deepEqual(results(job.given), wanted);
});
