"""Steps over one Arrow record batch. Columns are read where Arrow has them; only results take memory."""

import struct
from ctypes import c_size_t
from dataclasses import dataclass

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc

from .calculations import LIVES, STORED, SUBJECTS, TYPES
from .library import Library
from .steps import Column, Step

NO_SUCH_INDEX = 9
_DTYPES = {"double": np.float64, "bigint": np.int64, "boolean": np.bool_}


@dataclass
class Values:
    """A column in base units, the status of each row, and which rows are not null."""

    data: np.ndarray
    codes: np.ndarray
    valid: pa.BooleanArray | None = None

    def merge(self, *others: "Values") -> "Values":
        """Rows keep their first error, and are null where one is."""
        for other in others:
            np.copyto(self.codes, other.codes, where=self.codes == 0)
            both = [valid for valid in (self.valid, other.valid) if valid is not None]
            self.valid = pc.and_(*both) if len(both) == 2 else both[0] if both else None
        return self


def _valid(array: pa.Array) -> pa.BooleanArray | None:
    # Of its own, and from its first bit on: it becomes the bitmap of a result.
    return pc.and_(array.is_valid(), True) if array.null_count else None


def _address(array: pa.Array) -> int | None:
    return array.buffers()[1].address + 8 * array.offset if len(array) else None


def _column(data: np.ndarray, valid: pa.BooleanArray | None) -> pa.Array:
    packed = pa.array(data).buffers()[1] if data.dtype == np.bool_ else pa.py_buffer(data)
    return pa.Array.from_buffers(pa.from_numpy_dtype(data.dtype), len(data), [valid and valid.buffers()[1], packed])


class Batch:
    """One batch, and what was calculated of it."""

    def __init__(self, library: Library, batch: pa.RecordBatch) -> None:
        self._library, self._batch, self._n = library, batch, batch.num_rows
        self._made: dict[Column | str, Values] = {}

    def _rows(self, function: str, columns: list, results: list[np.ndarray]) -> Values:
        """Calls a function for rows: an array goes as its address, the rest as it is."""
        codes = np.empty(len(results[0]), np.int32)
        given = [value.ctypes.data if isinstance(value, np.ndarray) else value for value in (*columns, *results, codes)]
        self._library.call(f"hilum_{function}_rows", *given, c_size_t(len(codes)))
        return Values(results[0], codes)

    def _convert(self, function: str, numbers: object, column: Column, n: int) -> Values:
        text, of = (column.unit or "").encode(), [base and self.base(base) for base in column.of]
        columns = [numbers, text, c_size_t(len(text)), *(base and base.data for base in of)]
        made = self._rows(function, columns, [np.empty(n)])
        return Values(made.data, np.zeros(n, np.int32)).merge(*filter(None, of), made)

    def _read(self, array: pa.Array, column: Column) -> Values:
        """Numbers of Arrow in base units; the code says which argument it was that could not be read."""
        values = self._convert("text_base", _address(array), column, len(array))
        values.codes[(values.codes > 0) & (values.codes < 1000)] += 1000 * SUBJECTS.get(column.argument, 0)
        return values.merge(Values(values.data, np.zeros_like(values.codes), _valid(array)))

    def base(self, column: Column) -> Values:
        """A column in base units; what an earlier step made, as it was made."""
        if column.name in self._made:
            return self._made[column.name]
        if column not in self._made:
            self._made[column] = self._read(self._batch.column(column.name), column)
        return self._made[column]

    def run(self, step: Step) -> list[pa.Array]:
        """The columns of a step: its results and its codes."""
        stored = {"product", *STORED} if "product" in step.columns else set()
        numbers = {name: self.base(column) for name, column in step.columns.items() if name not in stored}
        made = Values(next(iter(numbers.values())).data, np.zeros(self._n, np.int32)).merge(*numbers.values())
        more = self._kept(step, numbers, made) if stored else []
        for function, beside in () if stored else step.calls:
            result = np.empty(self._n, _DTYPES[TYPES.get(step.what, "double")])
            made.merge(self._rows(function, [made.data, *(numbers[name].data for name in beside)], [result]))
            made.data = result
        self._made[step.into] = Values(made.data, made.codes.copy(), made.valid)
        if step.unit and step.result:
            counted = self._convert("text_count_in", made.data, step.result, self._n)
            made.merge(counted).data = counted.data
        valid = pc.and_(made.codes == 0, True if made.valid is None else made.valid)
        return [*(_column(result, valid) for result in (made.data, *more)), _column(made.codes, made.valid)]

    def _periods(self, column: Column, made: Values) -> tuple[np.ndarray, np.ndarray]:
        """The numbers of all periods in base units, and how many each row has."""
        array = self._batch.column(column.name)
        first = array.offsets.to_numpy()
        inner = array.values.slice(first[0], first[-1] - first[0])
        read, codes = self._read(inner, column), np.zeros(self._n, np.int32)
        read.codes[~inner.is_valid().to_numpy(zero_copy_only=False)] = NO_SUCH_INDEX
        bad = np.flatnonzero(read.codes)[::-1]
        codes[np.searchsorted(first - first[0], bad, side="right") - 1] = read.codes[bad]
        made.merge(Values(made.data, codes, _valid(array)))
        return read.data, np.diff(first)

    def _kept(self, step: Step, numbers: dict[str, Values], made: Values) -> list[np.ndarray]:
        """Fills in what is left, or how long the seed may wait; then gives is and because of hilum_plant_by."""
        product = self._batch.column(step.columns["product"].name)
        which = pc.fill_null(pc.index_in(product, pa.array(list(step.curves), product.type)), -1).to_numpy()
        (lasts, many), (at, as_many) = (self._periods(step.columns[name], made) for name in STORED)
        alike = many == as_many
        made.merge(Values(made.data, np.where(alike, 0, NO_SUCH_INDEX).astype(np.int32), _valid(product)))
        # A null list has no periods where its neighbour may have some: both go by the rows that have as many.
        lasts, at = lasts[np.repeat(alike, many)], at[np.repeat(alike, as_many)]
        first = np.concatenate([[0], np.cumsum(many * alike)]).astype(np.int32)
        curves = np.frombuffer(self._library.curves(step.curves.values()), np.uint8)
        where = [array.ctypes.data for array in (curves, which, first, lasts, at)]
        kept = struct.pack("@PNPPPPN", where[0], len(step.curves), *where[1:], len(lasts))
        longest = max(1, int(many.max(initial=0)))
        pair = [values.data for name, values in numbers.items() if name not in LIVES]
        results = [np.empty(self._n), *(np.empty(self._n, np.int32) for _ in range(step.what == "plant_by"))]
        made.merge(self._rows(step.calls[0][0], [kept, *pair, np.empty(3 * longest), c_size_t(longest)], results))
        made.data, *signs = results
        if signs:
            lives = [numbers[name].data if name in numbers else None for name in LIVES]
            results = [np.empty(self._n), np.empty(self._n, np.int32), np.empty(self._n, np.int32)]
            made.merge(self._rows("plant_by_of", [*lives, made.data, *signs], results))
            made.data, *signs = results
        return signs
