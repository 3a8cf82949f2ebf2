"""Totals that do not depend on the order in which rows come: exact sums, counts of codes, a sum of every row's bits."""

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction

import numpy as np
import pyarrow as pa

SCHEMA = "column string, kind string, key bigint, high bigint, low bigint"
MASK = np.uint64(0xFFFFFFFF)


def _mixed(x: np.ndarray) -> np.ndarray:
    with np.errstate(over="ignore"):
        x = (x ^ (x >> np.uint64(33))) * np.uint64(0xFF51AFD7ED558CCD)
        x = (x ^ (x >> np.uint64(33))) * np.uint64(0xC4CEB9FE1A85EC53)
    return x ^ (x >> np.uint64(33))


def _numbers(array: pa.Array) -> tuple[np.ndarray, np.ndarray]:
    """The bits of a column, and which rows have some."""
    valid = array.is_valid().to_numpy(zero_copy_only=False)
    if pa.types.is_floating(array.type):
        return np.where(valid, array.fill_null(0.0).to_numpy(), 0.0), valid
    return array.cast(pa.int64()).fill_null(-1).to_numpy(), valid


def digest(batches: Iterable[pa.RecordBatch]) -> Iterator[pa.RecordBatch]:
    """Of each column: its exact sum by binary exponent in two halves, its codes, the bits of its rows."""
    sums: Counter = Counter()
    for batch in batches:
        ids = batch.column("id").to_numpy().astype(np.uint64)
        for name in batch.schema.names:
            values, valid = _numbers(batch.column(name))
            with np.errstate(over="ignore"):
                bits = _mixed(values.view(np.uint64) + _mixed(ids * np.uint64(2) + valid.astype(np.uint64)))
            sums[name, "rows", 0, 0] += int((bits >> np.uint64(32)).sum())
            sums[name, "rows", 0, 1] += int((bits & MASK).sum())
            if values.dtype == np.float64:
                mantissa, exponent = np.frexp(values)
                whole = (mantissa * 2.0**53).astype(np.int64)
                for power in np.unique(exponent):
                    of = whole[exponent == power]
                    sums[name, "sum", int(power), 0] += int((of >> 26).sum())
                    sums[name, "sum", int(power), 1] += int((of & ((1 << 26) - 1)).sum())
            elif name != "id":
                for code, count in zip(*np.unique(values, return_counts=True), strict=True):
                    sums[name, "count", int(code), 0] += int(count)
    keys = sorted({key[:3] for key in sums})
    rows = [dict(zip(("column", "kind", "key"), key), high=sums[*key, 0], low=sums[*key, 1]) for key in keys]
    yield pa.RecordBatch.from_pylist(rows, pa.schema([
        ("column", pa.string()), ("kind", pa.string()), ("key", pa.int64()), ("high", pa.int64()), ("low", pa.int64()),
    ]))  # fmt: skip


def collected(frame: object) -> dict[tuple[str, str, int], int | Fraction]:
    """The totals of a calculated table, each exact."""
    rows = frame.mapInArrow(digest, SCHEMA).groupBy("column", "kind", "key").sum("high", "low").collect()  # type: ignore[attr-defined]
    totals: dict[tuple[str, str, int], int | Fraction] = Counter()
    for row in rows:
        high, low = row["sum(high)"], row["sum(low)"]
        if row["kind"] == "sum":
            totals[row["column"], "sum", 0] += Fraction((high << 26) + low) * Fraction(2) ** (row["key"] - 53)
        elif row["kind"] == "rows":
            totals[row["column"], "rows", 0] = ((high << 32) + low) % (1 << 64)
        else:
            totals[row["column"], "count", row["key"]] = high
    return dict(totals)
