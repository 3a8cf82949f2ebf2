// A wasm's bytes from the first to the last, each with the stream that it belongs to: instructions with instructions, locals with
// locals, the first bytes of numbers with first bytes. gzip finds more in streams than in their mixture, 14 % of a whole job.
// The build takes a wasm apart by this walk and the script puts it together by it, so that the two cannot differ.

/**
 * Goes over a wasm of so many bytes: `byte` gets the number of a stream and gives the byte. How an address is aligned is of no stream:
 * a hint that changes no result, for engines look at each address itself.
 */
export function walk(length, byte) {
  const [PLAIN, INSTRUCTION, LOAD, STORE, GET, SET, CONSTANT, LONG, CALL, TYPE, BRANCH, OTHER, VECTOR, FLOAT, BODY, REST] = Array(16).keys();
  let at = 0;
  const next = (stream) => (at++, byte(stream));
  const raw = (stream, end) => {
    while (at < end) next(stream);
  };
  const number = (stream) => {
    let value = 0;
    for (let shift = 0, part = 128; part > 127; shift += 7) {
      part = next(shift ? stream + REST : stream);
      value |= (part & 127) << shift;
    }
    return value;
  };
  const numbers = (stream, count) => {
    while (count-- > 0) number(stream);
  };
  const address = (stream) => {
    next();
    number(stream);
  };
  const memory = (op) => numbers(OTHER, op < 8 ? 0 : op % 2 ? 1 : 2);
  const vector = (op) => {
    const isLane = op > 83 && op < 92;
    if (op < 12 || isLane || op === 92 || op === 93) address(LOAD);
    else if (op < 14) raw(VECTOR, at + 16);
    if (isLane || (op > 20 && op < 35)) next(VECTOR);
  };
  const instruction = () => {
    const op = next(INSTRUCTION);
    if (op > 0x27 && op < 0x3f) address(op < 0x36 ? LOAD : STORE);
    else if (op > 0x1f && op < 0x23) number(op > 0x20 ? SET : GET);
    else if (op === 0x41) number(CONSTANT);
    else if (op === 0x42) number(LONG);
    else if (op === 0x43 || op === 0x44) raw(FLOAT, at + (op - 0x42) * 4);
    else if (op === 0x10) number(CALL);
    else if (op === 0x11) numbers(OTHER, 2);
    else if (op > 1 && op < 5) number(TYPE);
    else if (op === 0x0c || op === 0x0d) number(BRANCH);
    else if (op === 0x0e) numbers(BRANCH, number(BRANCH) + 1);
    else if (op === 0x1c) numbers(TYPE, number(TYPE));
    else if (op === 0x23 || op === 0x24 || op === 0x3f || op === 0x40) number(OTHER);
    else if (op === 0xfc) memory(number(OTHER));
    else if (op === 0xfd) vector(number(VECTOR));
  };
  const body = () => {
    const end = number(BODY) + at;
    for (let locals = number(BODY); locals > 0; locals--) numbers(BODY, 2);
    while (at < end) instruction();
  };
  raw(PLAIN, 8);
  while (at < length) {
    const isCode = next(PLAIN) === 10;
    const end = number(PLAIN) + at;
    if (isCode) for (let bodies = number(PLAIN); bodies > 0; bodies--) body();
    raw(PLAIN, end);
  }
}
