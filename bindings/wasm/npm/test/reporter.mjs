// Prints what `cargo test` would, so that `cargo xtask` counts both alike.
export default async function* report(source) {
  let [passed, failed] = [0, 0];
  for await (const { type, data } of source) {
    if (type === "test:stdout" || type === "test:stderr") yield data.message;
    // A file is reported as a test, too; only a file that cannot be read has failed as one.
    if (data?.details?.type === "suite") continue;
    if (type === "test:pass" && !isFile(data)) {
      passed += 1;
      yield `test ${data.name} ... ok\n`;
    }
    if (type === "test:fail") {
      failed += 1;
      const cause = data.details.error.cause ?? data.details.error;
      yield `${cause.stack ?? cause}\ntest ${data.name} ... FAILED\n`;
    }
  }
  yield `test result: ${failed ? "FAILED" : "ok"}. ${passed} passed; ${failed} failed; 0 ignored\n`;
}

const isFile = (data) => data.nesting === 0 && data.name.endsWith(".mjs");
