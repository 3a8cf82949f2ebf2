"""Seed treatment calculations on Spark DataFrames: libhilum over Arrow buffers, each row with a code of its own."""

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from ctypes import byref, c_double, c_size_t, c_uint64
from functools import partial

import numpy as np
import pyarrow as pa
from pyspark.sql import DataFrame
from pyspark.sql.types import BooleanType, DoubleType, IntegerType, LongType, StringType, StructField, StructType

from .batch import Batch
from .calculations import TYPES
from .library import HilumError, library
from .steps import Contract, Step, step

__all__ = ["HilumError", "Step", "calculate", "in_units", "library", "plans", "sets_opened", "step"]
_TYPES = {"double": DoubleType, "bigint": LongType, "boolean": BooleanType}


def in_units(frame: DataFrame, **units: str) -> DataFrame:
    """The same table, with the unit of columns in their metadata; Parquet keeps it."""
    for name, unit in units.items():
        frame = frame.withMetadata(name, {**frame.schema[name].metadata, "unit": unit})
    return frame


def _fields(step: Step) -> Iterator[StructField]:
    yield StructField(step.into, _TYPES[TYPES.get(step.what, "double")](), True, {"unit": step.unit} if step.unit else {})
    for more in ("is", "because", "code")[0 if step.what == "plant_by" else 2 :]:
        yield StructField(f"{step.into}_{more}", IntegerType(), True)


def calculate(frame: DataFrame, steps: Sequence[Step], keep: Sequence[str] | None = None) -> DataFrame:
    """The columns kept (all), and those of the steps. What is wrong with columns and units is said before it runs."""
    columns = {f.name: (f.dataType.simpleString(), f.metadata.get("unit")) for f in frame.schema.fields}
    contract, version = Contract(library(), columns), library().version
    ready = [contract.ready(step) for step in steps]
    kept = [field for field in frame.schema.fields if keep is None or field.name in keep]
    schema = StructType([*kept, *(field for step in ready for field in _fields(step))])

    def run(batches: Iterator[pa.RecordBatch]) -> Iterator[pa.RecordBatch]:
        for batch in filter(len, batches):
            calculated = Batch(library(version), batch)
            made = [array for step in ready for array in calculated.run(step)]
            yield pa.RecordBatch.from_arrays([*(batch.column(field.name) for field in kept), *made], schema.names)

    return frame.mapInArrow(run, schema)


def _groups(frame: DataFrame, by: str, answer: Callable[[pa.Table], dict], *fields: StructField) -> DataFrame:
    def run(group: pa.Table) -> pa.Table:
        arrow = {"string": pa.string(), "int": pa.int32(), "bigint": pa.int64()}
        schema = [group.schema.field(by), *(pa.field(f.name, arrow[f.dataType.simpleString()]) for f in fields)]
        return pa.Table.from_pylist([{by: group[by][0].as_py()} | answer(group)], pa.schema(schema))

    return frame.groupBy(by).applyInArrow(run, StructType([frame.schema[by], *fields]))


def sets_opened(frame: DataFrame, by: str, sets: str) -> DataFrame:
    """Whole sets for each group of orders that share them: needs (a "sets" column) are summed, then rounded up once."""
    version = library().version

    def answer(group: pa.Table) -> dict[str, object]:
        # Orders of so many kilograms, of which a set covers one; sorted: the same bits however the table was cut.
        needed, total, whole = np.sort(group[sets].drop_null().to_numpy()), c_double(), c_uint64()
        orders, call = np.column_stack([needed, np.ones_like(needed)]), partial(library(version).call, allowed=range(100, 100_000))
        code = call("hilum_sets_needed_sum", orders.ctypes.data, c_size_t(len(needed)), byref(total))
        code = code or call("hilum_sets_needed_whole", total, byref(whole))
        return {"sets": None if code else whole.value, "code": code}

    return _groups(frame, by, answer, StructField("sets", LongType()), StructField("code", IntegerType()))


def plans(frame: DataFrame, by: str, job: Mapping[str, object], order: str, columns: Mapping[str, str]) -> DataFrame:
    """A whole plan for each group of orders: by, plan (JSON), code, and problems (JSON) where the job is refused.

    job: the document without orders; order: the column of their names, in whose order they run; columns: the column for
    each field of an order (amount, size, lot …), written with its unit where it has one. A null leaves the field out.
    """
    units, version = {name: frame.schema[column].metadata.get("unit") for name, column in columns.items()}, library().version
    for name, unit in units.items():
        if unit is None and frame.schema[columns[name]].dataType == DoubleType():
            raise HilumError(f'plans: column "{columns[name]}" for {name} has no unit; say with in_units which')
        library().measure(f"1 {unit or '%'}", f'plans: column "{columns[name]}" in ')

    def answer(group: pa.Table) -> dict[str, object]:
        orders = []
        for row in group.sort_by(order).to_pylist():
            stated = {name: row[column] for name, column in columns.items() if row[column] is not None}
            stated = {name: {"value": of, "unit": units[name]} if units[name] else of for name, of in stated.items()}
            orders.append({"order": str(row[order]), **stated})
        code, text = library(version).plan(json.dumps({**job, "orders": orders}).encode())
        return {"plan": None if code else text, "code": code, "problems": text if code else None}

    fields = {"plan": StringType(), "code": IntegerType(), "problems": StringType()}
    return _groups(frame, by, answer, *(StructField(name, kind) for name, kind in fields.items()))
