"""What it costs, as ratios in one run: python figures.py --work DIR; HILUM_LIBRARY names libhilum. Prints Markdown.

Times of one process are processor time, so that neighbours on the machine matter less; Spark's are by the clock.
"""

import argparse
import json
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pyarrow.dataset as ds

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
import formulas  # noqa: E402
import season  # noqa: E402
from hilum_spark.batch import Batch  # noqa: E402
from hilum_spark.library import library  # noqa: E402
from hilum_spark.steps import Contract  # noqa: E402

DRY_STEPS = season.STEPS[:14]
SIZES = (20_000, 200_000, 1_000_000, 5_000_000)


def best(work: Callable[[], object], rows: int, times: int = 3) -> float:
    """Microseconds of processor time for a row."""
    spent = []
    for _ in range(times):
        start = time.process_time()
        work()
        spent.append(time.process_time() - start)
    return min(spent) / rows * 1e6


def contract() -> Contract:
    """The season's columns, as Spark's schema has them."""
    kinds = dict.fromkeys(season.LISTS, "array<double>") | dict.fromkeys(season.TEXTS, "string") | {"id": "bigint"}
    names = ("id", *season.TEXTS, *season.UNITS)
    return Contract(library(), {name: (kinds.get(name, "double"), season.UNITS.get(name)) for name in names})


def ready(steps: list) -> list:
    """Steps that can run."""
    of = contract()
    return [of.ready(step) for step in steps]


def one_process() -> dict[str, float]:
    """Fourteen results of a row in one process, four ways; and all of the season's."""
    batch = season.orders(np.arange(200_000))
    steps, everything = ready(DRY_STEPS), ready(season.STEPS)

    def hilum(steps: list, of: object) -> Callable[[], object]:
        def work() -> None:
            calculated = Batch(library(), of)
            for step in steps:
                calculated.run(step)

        return work

    columns = [batch.column(name).fill_null(1.0).to_numpy(zero_copy_only=False) for name in formulas.NAMES]
    columns = [np.where((column > 0) & (column < 1e30), column, 1.0) for column in columns]
    lists = [column[:20_000].tolist() for column in columns]
    few = [column[:300].tolist() for column in columns]
    of_units = formulas.Pint()
    small = batch.slice(0, 10_000)
    return {
        "hilum": best(hilum(steps, batch), 200_000),
        "hilum, batches of 10,000": best(hilum(steps, small), 10_000, 10),
        "numpy": best(lambda: formulas.plain(*columns), 200_000),
        "numpy, batches of 10,000": best(lambda: formulas.plain(*(c[:10_000] for c in columns)), 10_000, 10),
        "numpy, with codes, batches of 10,000": best(lambda: formulas.refusing(*(c[:10_000] for c in columns)), 10_000, 10),
        "python row": best(lambda: [formulas.plain(*row) for row in zip(*lists, strict=True)], 20_000),
        "pint arrays": best(lambda: of_units(*columns), 200_000),
        "pint row": best(lambda: [of_units(*row) for row in zip(*few, strict=True)], 300),
        "hilum, with cells and plant-by": best(hilum(everything, small), 10_000),
    }


def by_hand(path: Path) -> tuple[float, float]:
    """Seconds by the clock, and of the processor: one process, one thread, the same Parquet, the same steps."""
    start, spent, steps = time.monotonic(), time.process_time(), ready(season.STEPS)
    files = ds.dataset(str(path), format="parquet")
    for batch in files.to_batches(batch_size=10_000, use_threads=False):
        calculated = Batch(library(), batch)
        for step in steps:
            calculated.run(step)
    return time.monotonic() - start, time.process_time() - spent


def spark_part(work: Path, executors: int) -> dict[str, float]:
    """Seconds by the clock with so many executors; run in a process of its own."""
    import run
    from cluster import processor_time, session
    from hilum_spark import calculate

    start = time.monotonic()
    spark = session(executors, work / f"sent-{executors}")
    spark.range(2).mapInArrow(lambda batches: batches, "id bigint").collect()
    seconds = {"start": time.monotonic() - start}
    frames = {rows: run.write(spark, rows, work) for rows in SIZES}

    def clock(name: str, frame: object) -> None:
        spent, of_processor = [], []
        for _ in range(2):
            begun, had = time.monotonic(), processor_time()
            frame.write.format("noop").mode("overwrite").save()  # type: ignore[attr-defined]
            spent.append(time.monotonic() - begun)
            of_processor.append(processor_time() - had)
        seconds[name], seconds[f"processor {name}"] = min(spent), min(of_processor)

    big = frames[SIZES[-1]]
    clock("read", big)
    clock("transport", big.mapInArrow(lambda batches: batches, big.schema))
    clock("dry", calculate(big, DRY_STEPS, keep=["id"]))
    for rows, frame in frames.items():
        clock(f"all {rows}", calculate(frame, season.STEPS, keep=["id"]))
    spark.stop()
    return seconds


def even(start: float, gain: float) -> str:
    """Where a gain for every row has paid for the start."""
    return f"{start / gain:,.0f} orders" if gain > 0 else "never"


def main() -> None:
    """Prints the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--work", type=Path, required=True)
    parser.add_argument("--executors", type=int)
    given = parser.parse_args()
    if given.executors:
        print("FIGURES " + json.dumps(spark_part(given.work, given.executors)))
        return
    costs = one_process()
    parts = {}
    for executors in (2, 1):
        command = [sys.executable, __file__, "--work", str(given.work), "--executors", str(executors)]
        lines = subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()
        parts[executors] = json.loads(next(line for line in lines if line.startswith("FIGURES ")).partition(" ")[2])
    hand = {rows: by_hand(given.work / f"season-{rows}") for rows in SIZES}
    print(json.dumps({"one process, µs a row": costs, "spark, s": parts, "by hand, s": hand}, indent=1))
    base = costs["hilum"]
    print("\n| fourteen results of a row, one core | time | rows per second |\n|---|---|---|")
    for name, cost in costs.items():
        print(f"| {name} | {cost / base:.3g} | {base / cost:.3g} |")
    two, one, most = parts[2], parts[1], SIZES[-1]
    print(f"\n| {most:,} orders on Spark, against reading alone | processor time | clock, 2 executors | clock, 1 executor |\n|---|---|---|---|")
    for name in ("read", "transport", "dry", f"all {most}"):
        of_processor = two[f"processor {name}"] / two["processor read"]
        print(f"| {name} | {of_processor:.2f} | {two[name] / two['read']:.2f} | {one[name] / one['read']:.2f} |")
    print(f"\nFrom 1 to 2 executors: {one[f'all {most}'] / two[f'all {most}']:.2f} (all), {one['dry'] / two['dry']:.2f} (dry).")
    print("\n| orders | Spark with 2 executors, and its start / one process, by the clock | without its start |\n|---|---|---|")
    for rows in SIZES:
        spark = two[f"all {rows}"]
        print(f"| {rows:,} | {(two['start'] + spark) / hand[rows][0]:.2f} | {spark / hand[rows][0]:.2f} |")
    slope, alone = ((of[1] - of[0]) / (most - SIZES[0]) for of in (
        [two[f"processor all {rows}"] for rows in (SIZES[0], most)], [hand[rows][1] for rows in (SIZES[0], most)]
    ))  # fmt: skip
    print(f"\nProcessor time of a row, Spark's / one process's: {slope / alone:.2f}, so that many cores break even at most.")
    for cores in (2, 4, 8, 32):
        gain = alone - slope / cores
        print(f"With {cores} free cores and {two['start']:.0f} s to start: {even(two['start'], gain)}")


if __name__ == "__main__":
    main()
