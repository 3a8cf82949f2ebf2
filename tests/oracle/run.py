"""Compare a program that plans with the oracle: random jobs, and malformed documents.

python3 tests/oracle/run.py --plan-command "CMD" --jobs N --seed S [--malformed] [--optima N] [--keep DIR]
CMD reads a job on standard input and prints the plan document; exit 0 with a plan, 1 with a message.
"""
import argparse
import json
import os
import shlex
import subprocess
import sys
import time

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import compare
import generate
import invariants
import malformed
import optimum
import oracle
import small


def call(command, data, limit=10):
    start = time.monotonic()
    p = subprocess.run(shlex.split(command), input=data, capture_output=True, timeout=limit)
    return p.returncode, p.stdout, p.stderr.decode("utf-8", "replace"), time.monotonic() - start


def keep(folder, name, text):
    if folder:
        os.makedirs(folder, exist_ok=True)
        with open(os.path.join(folder, name), "w", encoding="utf-8") as f:
            f.write(text)


def one_job(args, seed):
    """(differences, soft differences) as lines."""
    text = json.dumps(generate.job(seed, args.clock), ensure_ascii=False, indent=1)
    code, out, err, _ = call(args.plan_command, text.encode())
    if code != 0:
        keep(args.keep, f"job-{seed}.json", text)
        return [f"exit {code}: {err.strip()[:300]}"], []
    ours = oracle.plan(oracle.load(text))
    hard, soft = compare.compare(json.loads(out), ours)
    broken, remarks = invariants.check(oracle.load(text), json.loads(out))
    if hard or broken:
        keep(args.keep, f"job-{seed}.json", text)
        keep(args.keep, f"oracle-{seed}.json", json.dumps(ours, ensure_ascii=False, indent=1))
        keep(args.keep, f"plan-{seed}.json", out.decode())
    lines = [[f"{p}: plan {a!r}, oracle {b!r}" for p, a, b in x] for x in (hard, soft)]
    return lines[0] + broken, lines[1] + remarks


def jobs(args):
    bad, softly = 0, 0
    for seed in range(args.seed, args.seed + args.jobs):
        hard, soft = one_job(args, seed)
        bad += bool(hard)
        softly += bool(soft)
        for line in hard[: args.show]:
            print(f"job {seed}  {line}")
        for line in soft[: args.show] if args.soft else []:
            print(f"job {seed}  (soft) {line}")
    print(f"{args.jobs - bad} jobs agree, {bad} differ, {softly} with soft differences")
    return bad


def optima(args):
    bad = 0
    for seed in range(args.seed, args.seed + args.optima):
        text = json.dumps(small.job(seed), indent=1)
        doc = oracle.load(text)
        code, out, err, _ = call(args.plan_command, text.encode())
        lines = [f"exit {code}: {err.strip()[:200]}"]
        if code == 0:
            plan = json.loads(out)
            lines = invariants.check(doc, plan)[0] + optimum.compare(doc, plan)
        if lines:
            bad += 1
            keep(args.keep, f"small-{seed}.json", text)
        for line in lines[: args.show]:
            print(f"small {seed}  {line}")
    print(f"{args.optima - bad} small days at the optimum, {bad} not")
    return bad


def refused(args, name, data, pointers):
    """None if the document is refused as it should be, else what is wrong."""
    try:
        code, out, err, took = call(args.plan_command, data)
    except subprocess.TimeoutExpired:
        return "no answer in 10 s"
    if code != 1 or out.strip():
        return f"exit {code}" + (", wrote a plan" if out.strip() else "") + f": {err.strip()[:200]}"
    if "panicked" in err or not err.strip() or len(err) > 1500:
        return f"message: {err.strip()[:200]!r} ({len(err)} characters)"
    if took > 1:
        return f"took {took:.1f} s"
    if pointers and not any(p in err for p in pointers):
        return f"names none of {pointers}: {err.strip()[:200]}"
    return None


def documents(args):
    bad = 0
    cases = malformed.cases()
    for name, data, pointers in cases:
        why = refused(args, name, data, pointers)
        bad += why is not None
        if why:
            print(f"malformed {name}: {why}")
    print(f"{len(cases) - bad} malformed documents refused well, {bad} not")
    for name, data in malformed.valid():
        code, _, err, _ = call(args.plan_command, data)
        if code != 0:
            bad += 1
            print(f"valid {name}: exit {code}: {err.strip()[:200]}")
    return bad


def main():
    p = argparse.ArgumentParser()
    p.add_argument("--plan-command", required=True)
    p.add_argument("--jobs", type=int, default=100)
    p.add_argument("--seed", type=int, default=1)
    p.add_argument("--malformed", action="store_true", help="the malformed documents too")
    p.add_argument("--optima", type=int, default=0, help="so many small days against the best batches")
    p.add_argument("--keep", help="folder for the jobs that differ")
    p.add_argument("--show", type=int, default=8, help="lines per job")
    p.add_argument("--soft", action="store_true", help="print soft differences: `where`, idle time, packs under another reading")
    p.add_argument("--no-clock", dest="clock", action="store_false", help="jobs without shifts and planting day")
    args = p.parse_args()
    bad = jobs(args)
    if args.optima:
        bad += optima(args)
    if args.malformed:
        bad += documents(args)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
