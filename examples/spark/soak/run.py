"""A season on a cluster of processes: the same bits as Rust, the same totals however it is cut and whoever dies.

python run.py --work DIR --check SEASON_CHECK [--rows 5000000] [--kill-at 0.4]; HILUM_LIBRARY names libhilum.
"""

import argparse
import json
import math
import subprocess
import sys
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from cluster import session, watched
from digest import collected
from pyspark.sql import DataFrame, SparkSession, functions
from pyspark.sql.types import ArrayType, DoubleType, LongType, StringType, StructField, StructType

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
import season  # noqa: E402
from hilum_spark import HilumError, calculate, in_units, library, plans, sets_opened, step  # noqa: E402
from hilum_spark.batch import Batch  # noqa: E402
from hilum_spark.steps import Contract  # noqa: E402

JOB = {
    "format": 1,
    "treatments": [{"product": "alder peat", "tank": "mix", "rate": "2.5 fl oz/cwt", "crops": ["soybean"], "living": {
        "titre": "5e9 CFU/mL", "recovery": "80 %", "minimum_at_planting": "1e5 CFU/seed", "pot_life": "24 h",
        "survival": season.CURVES["alder peat"]}, "packs": [{"pack": "pail", "covers": "8000 lb"}]}],
    "tanks": [{"tank": "mix", "capacity": "50 gal", "make_up_to": "5 fl oz/cwt", "mixing": "15 min", "agitated": True}],
    "treater": {"seed_flow": "550 lb/min"},
    "work": [{"from": f"2027-04-{day:02}T07:00:00-05:00", "to": f"2027-04-{day:02}T19:00:00-05:00"} for day in range(5, 9)],
}  # fmt: skip
checks: list[tuple[str, bool]] = []


def check(what: str, holds: bool) -> None:
    """Counts and shows one check."""
    checks.append((what, holds))
    print(f"{'ok    ' if holds else 'FAILED'} {what}", flush=True)


def schema() -> StructType:
    """The table of orders; units are in the columns' metadata."""
    kinds = dict.fromkeys(season.NUMBERS, DoubleType()) | dict.fromkeys(season.LISTS, ArrayType(DoubleType()))
    names = ("id", "order", "shed", "product", *season.NUMBERS, *season.LISTS)
    return StructType([
        StructField(name, kinds.get(name, LongType() if name == "id" else StringType()), True,
                    {"unit": season.UNITS[name]} if name in season.UNITS else {})
        for name in names
    ])  # fmt: skip


def write(spark: SparkSession, rows: int, folder: Path) -> DataFrame:
    """Makes the season, or takes the one that is there."""
    path = folder / f"season-{rows}"
    if not (path / "_SUCCESS").exists():

        def make(batches: object) -> object:
            for batch in batches:  # type: ignore[attr-defined]
                yield season.orders(batch.column(0).to_numpy())

        with watched(spark, "make the season"):
            made = spark.range(0, rows, numPartitions=max(4, rows // 125_000)).mapInArrow(make, schema())
            made.write.mode("overwrite").parquet(str(path))
    return spark.read.parquet(str(path))


def _cell(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, float):
        return f"{np.float64(value).view(np.uint64):016x}"
    if isinstance(value, list):
        return f"[{','.join('null' if item is None else _cell(item) for item in value)}]"
    return str(int(value)) if isinstance(value, bool) else str(value)


def sample(frame: DataFrame, path: Path) -> int:
    """Writes every fiftieth order, and what came of it, for Rust."""
    of = frame.filter(functions.col("id") % season.SAMPLE_EVERY == season.SAMPLE_AT)
    table = calculate(of, season.STEPS).toArrow()
    with path.open("w") as file:
        file.write("\t".join(table.column_names) + "\n")
        for batch in table.to_batches():
            columns = [[_cell(value) for value in column.to_pylist()] for column in batch.columns]
            file.writelines("\t".join(cells) + "\n" for cells in zip(*columns, strict=True))
    return table.num_rows


def planned(frame: DataFrame, path: Path) -> tuple[int, int]:
    """Plans 200 sheds, and writes jobs and plans for Rust; how many were planned, and how many refused."""
    few = frame.filter(functions.col("id") < 2400)
    made = plans(few, "shed", JOB, "order", {"amount": "mass", "size": "size", "lot": "shed"}).collect()
    orders: dict[str, list] = {}
    for row in few.select("order", "shed", "mass", "size").orderBy("order").collect():
        amount = {} if row.mass is None else {"amount": {"value": row.mass, "unit": "lb"}}
        size = {} if row["size"] is None else {"size": {"value": row["size"], "unit": "seeds/lb"}}
        orders.setdefault(row.shed, []).append({"order": row.order, **amount, **size, "lot": row.shed})
    with path.open("w") as file:
        file.write("job\tanswer\n")
        for row in made:
            file.write(f"{json.dumps({**JOB, 'orders': orders[row.shed]})}\t{row.plan or row.problems}\n")
    return sum(row.code == 0 for row in made), sum(row.code == 400 for row in made)


def cuts() -> None:
    """One batch, and the same rows in slices, all null, and without a period of storage: no Spark is needed to see it."""
    kinds = {field.name: (field.dataType.simpleString(), field.metadata.get("unit")) for field in schema().fields}
    contract = Contract(library(), kinds)
    ready = [contract.ready(step) for step in season.STEPS]

    def run(batch: pa.RecordBatch) -> list[pa.Array]:
        made = Batch(library(), batch)
        return [array for step in ready for array in made.run(step)]

    batch = season.orders(np.arange(1000))
    whole, slices = run(batch), [run(batch.slice(at, 137)) for at in range(0, 1000, 137)]
    joined = [pa.concat_arrays(arrays) for arrays in zip(*slices, strict=True)]
    for array in whole:
        array.validate(full=True)
    check("a batch in slices of 137 rows gives the same", all(a.equals(b) for a, b in zip(whole, joined, strict=True)))
    nulls = [batch.column(0), *(pa.nulls(1000, field.type) for field in list(batch.schema)[1:])]
    check("nulls stay null", all(a.null_count == 1000 for a in run(pa.RecordBatch.from_arrays(nulls, schema=batch.schema))))
    empty = batch.filter(pc.equal(pc.list_value_length(batch.column("at")), 0))
    check(f"{empty.num_rows} rows without a period of storage", empty.num_rows > 100 and len(run(empty)) == len(whole))


def opened(frame: DataFrame) -> None:
    """Sets that the orders of a shed share: summed first, rounded up once."""
    few = calculate(frame.filter(functions.col("id") < 24_000), season.STEPS[4:8], keep=["shed"])
    by_shed = {row.shed: row for row in sets_opened(few, "shed", "sets").collect()}
    again = {row.shed: row for row in sets_opened(few.repartition(7), "shed", "sets").collect()}
    exact: dict[str, float] = {}
    for row in few.filter("sets is not null").select("shed", "sets").collect():
        exact[row.shed] = exact.get(row.shed, 0.0) + row.sets
    right = all(row.sets == math.ceil(exact[shed] * (1 - 1e-9)) for shed, row in by_shed.items() if row.sets is not None)
    check(f"{len(by_shed)} sheds open whole sets, the same when cut otherwise", by_shed == again and right and len(exact) > 1900)


def refusals(frame: DataFrame) -> None:
    """What is wrong with a table is said before anything runs."""
    seeds = step("seeds", "n", "seeds", size="size", mass="mass")
    for what, table, wrong, says in (
        ("a dose per area for one per mass", in_units(frame, rate="fl oz/ac"), season.STEPS[4], "(volume per area)"),
        ("a mass in acres", in_units(frame, mass="ac"), seeds, 'column "mass" is in ac (area), but mass must be mass'),
        ("a bare ounce", in_units(frame, mass="oz"), seeds, '"oz av" (weight) or "fl oz" (volume)'),
        ("a mass without a unit", frame.withMetadata("mass", {}), seeds, "has no unit"),
        ("a mass as text", frame.withColumn("mass", functions.lit("x")), seeds, "is string; cast it to double"),
        ("a result in the wrong unit", frame, step("seeds", "n", "lb", size="size", mass="mass"), "as in seeds"),
    ):
        try:
            calculate(table, [wrong])
            said = "nothing"
        except HilumError as error:
            said = str(error)
        check(f"{what} is refused: {said}", says in said)


def rust(program: str, *arguments: Path) -> None:
    """Rust's side of the comparison."""
    done = subprocess.run([program, *arguments], capture_output=True, text=True, check=False)
    check(f"{Path(program).name}: {(done.stdout + done.stderr).strip()}", done.returncode == 0)


def main() -> int:
    """Runs it all."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--work", type=Path, required=True)
    parser.add_argument("--check", required=True)
    parser.add_argument("--rows", type=int, default=5_000_000)
    parser.add_argument("--kill-at", type=float, default=0.4)
    given = parser.parse_args()
    given.work.mkdir(parents=True, exist_ok=True)
    cuts()
    spark = session(2, given.work / "sent")
    frame = write(spark, given.rows, given.work)
    refusals(frame)

    with watched(spark, "calculate, one executor killed", given.kill_at) as killed:
        first = collected(calculate(frame, season.STEPS, keep=["id"]))
    check(f"an executor was killed and tasks were run again ({killed.failed_tasks} lost)", bool(killed.killed))
    with watched(spark, "calculate, cut otherwise") as quiet:
        second = collected(calculate(frame.repartition(23, "product"), season.STEPS, keep=["id"]))
    check(f"{len(first)} totals are equal, to the bit, with 23 partitions by product and nobody killed", first == second)
    early, late = quiet.growth()
    flat = 0 < late <= early * 1.1 + 8 or given.rows < 1_000_000
    check(f"memory of a worker is flat: {early} MB in the second quarter, {late} MB in the last", flat)
    counts = {key[0]: 0 for key in first if key[1] == "count" and key[0].endswith("_code")}
    for (name, kind, code), count in first.items():
        if name in counts and kind == "count":
            counts[name] += count if code > 0 else 0
    check(f"bad rows have codes: {counts}", all(0 < count < given.rows / 20 for count in counts.values()))
    check(f'code 3101 is "{library().message(3101)}"', library().message(3101) == "the seed size must be more than 0")

    rows = sample(frame, given.work / "sample.tsv")
    check(f"a sample of {rows} orders", rows == given.rows // season.SAMPLE_EVERY)
    opened(frame)
    fine, refused = planned(frame, given.work / "plans.tsv")
    check(f"{fine} sheds planned as a whole, {refused} refused with their problems", fine > 100 and refused > 0)
    spark.stop()
    rust(given.check, given.work / "sample.tsv", given.work / "plans.tsv")
    failed = [what for what, holds in checks if not holds]
    print(f"libhilum {library().version}, pyarrow {pa.__version__}: {len(checks) - len(failed)} passed, {len(failed)} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
