"""Seed treatment calculations on Spark DataFrames: libhilum over Arrow buffers, each row with a code of its own."""

import json
from collections.abc import Iterator, Mapping, Sequence

import pyarrow as pa
from pyspark.sql import DataFrame
from pyspark.sql.types import BooleanType, DoubleType, IntegerType, LongType, StringType, StructField, StructType

from .batch import Batch
from .calculations import TYPES
from .library import HilumError, library
from .steps import Contract, Step, step

__all__ = ["HilumError", "Step", "calculate", "in_units", "library", "message", "plans", "step"]

_TYPES = {"double": DoubleType, "bigint": LongType, "boolean": BooleanType}


def message(code: int) -> str:
    """What a code says: "the seed size must be more than 0"."""
    return library().message(code)


def in_units(frame: DataFrame, **units: str) -> DataFrame:
    """The same table, with the unit of columns in their metadata; Parquet keeps it."""
    for name, unit in units.items():
        frame = frame.withMetadata(name, {**frame.schema[name].metadata, "unit": unit})
    return frame


def _contract(frame: DataFrame) -> Contract:
    columns = {f.name: (f.dataType.simpleString(), f.metadata.get("unit")) for f in frame.schema.fields}
    return Contract(library(), columns)


def _fields(step: Step) -> Iterator[StructField]:
    yield StructField(step.into, _TYPES[TYPES.get(step.what, "double")](), True, {"unit": step.unit} if step.unit else {})
    for more in ("is", "because", "code")[0 if step.what == "plant_by" else 2 :]:
        yield StructField(f"{step.into}_{more}", IntegerType(), True)


def calculate(frame: DataFrame, steps: Sequence[Step], keep: Sequence[str] | None = None) -> DataFrame:
    """The columns kept (all), and those of the steps. What is wrong with columns and units is said before it runs."""
    contract = _contract(frame)
    ready, version = [contract.ready(step) for step in steps], library().version
    kept = [field for field in frame.schema.fields if keep is None or field.name in keep]
    schema = StructType([*kept, *(field for step in ready for field in _fields(step))])

    def run(batches: Iterator[pa.RecordBatch]) -> Iterator[pa.RecordBatch]:
        hilum = library(version)
        for batch in batches:
            calculated = Batch(hilum, batch)
            arrays = [batch.column(field.name) for field in kept]
            arrays += [array for step in ready for array in calculated.run(step)]
            yield pa.RecordBatch.from_arrays(arrays, schema.names)

    return frame.mapInArrow(run, schema)


def plans(frame: DataFrame, by: str, job: Mapping[str, object], order: str, columns: Mapping[str, str]) -> DataFrame:
    """A whole plan for each group of orders: by, plan (JSON), code, and problems (JSON) where the job is refused.

    job: the document without orders; order: the column of their names, in which order they run; columns: the column for
    each field of an order (amount, size, lot …), written with its unit where it has one. A null leaves the field out.
    """
    units = {field: frame.schema[name].metadata.get("unit") for field, name in columns.items()}
    for field, unit in units.items():
        if unit:
            library().measure(f"1 {unit}")
        elif frame.schema[columns[field]].dataType == DoubleType():
            raise HilumError(f'plans: column "{columns[field]}" for {field} has no unit; say with in_units which')
    version = library().version

    def run(group: pa.Table) -> pa.Table:
        rows = group.sort_by(order).to_pylist()
        fields = ({"order": str(row[order])} | {
            field: {"value": row[name], "unit": units[field]} if units[field] else row[name]
            for field, name in columns.items() if row[name] is not None
        } for row in rows)  # fmt: skip
        code, text = library(version).plan(json.dumps({**job, "orders": list(fields)}).encode())
        answer = {by: rows[0][by], "plan": None if code else text, "code": code, "problems": text if code else None}
        return pa.Table.from_pylist([answer], group.select([by]).schema.append(pa.field("plan", pa.string()))
            .append(pa.field("code", pa.int32())).append(pa.field("problems", pa.string())))  # fmt: skip

    text = [StructField("plan", StringType()), StructField("code", IntegerType()), StructField("problems", StringType())]
    return frame.groupBy(by).applyInArrow(run, StructType([frame.schema[by], *text]))
