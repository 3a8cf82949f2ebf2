"""The functions for rows from Python, without Spark: the published check values, and numpy over the same arrays.

HILUM_LIBRARY=libhilum.so python -m unittest test_rows, with numpy alone.
"""

import ctypes
import importlib
import json
import os
import struct
import sys
import types
import unittest
from pathlib import Path

import numpy as np

HERE = Path(__file__).resolve().parent
DATA = HERE.parents[2] / "tests/data"
# The package without its __init__, which needs Spark.
package = sys.modules["hilum_spark"] = types.ModuleType("hilum_spark")
package.__path__ = [str(HERE.parent / "hilum_spark")]
calculations = importlib.import_module("hilum_spark.calculations")
steps = importlib.import_module("hilum_spark.steps")
HilumError = importlib.import_module("hilum_spark.library").HilumError
hilum = importlib.import_module("hilum_spark.library").Library(os.environ["HILUM_LIBRARY"])

KINDS = {"not_finite": 100, "not_positive": 101, "negative": 102, "out_of_range": 103, "not_a_share": 104}
LIQUID = hilum.measure("1 m3/kg")[1]


def rows(function: str, *columns: object, dtype: type = np.float64) -> tuple[np.ndarray, np.ndarray]:
    """Results and codes of a function for rows."""
    n = len(next(column for column in columns if isinstance(column, np.ndarray)))
    out, codes = np.full(n, 7, dtype), np.full(n, -1, np.int32)
    given = [column.ctypes.data if isinstance(column, np.ndarray) else column for column in (*columns, out, codes)]
    hilum.call(f"hilum_{function}_rows", *given, ctypes.c_size_t(n))
    return out, codes


# A function of the check values: which calculation, its arguments by the names of the data, what it gives.
CASES = {
    "seed.count": ("seeds", {"size": "size", "mass": "mass"}, "seeds"),
    "seed.mass": ("mass", {"size": "size", "seeds": "seeds"}, "mass"),
    "sowing.seeds_per_area": ("sown", {"sowing": "rate", "size": "size"}, "sown"),
    "sowing.area": ("area", {"sown": "sown", "seeds": "seeds"}, "area"),
    "rate.needed": ("product", {"rate": "rate", "mass": "mass"}, "amount"),
    "pack.coverage": ("covers", {"usable": "usable", "rate": "rate"}, "covers"),
    "pack.sets": ("sets", {"mass": "need", "covers": "covers"}, "sets"),
    "limit.share": ("season_share", {"limit": "limit", "used": "used", "on_seed": "active", "sown": "sown"}, "share"),
    "limit.max_sowing": ("max_sowing", {"limit": "limit", "used": "used", "on_seed": "active"}, "sown"),
    "limit.per_area": ("active_per_area", {"limit": "limit", "used": "used", "on_seed": "active", "sown": "sown"}, "per_area"),
    "rate.per_seed": (("kg", "seed"), {"rate": "rate", "size": "size"}, "per_seed"),
    "rate.per_mass": (("seed", "kg"), {"rate": "per_seed", "size": "size"}, "rate"),
    "rate.per_area": (("seed", "m2"), {"rate": "per_seed", "sown": "sown"}, "per_area"),
    "rate.from_area": (("m2", "seed"), {"rate": "per_area", "sown": "sown"}, "per_seed"),
}  # fmt: skip
ABSENT = {"used": "0 kg/m2", "limit": "1 kg/m2"}


def functions(what: object, first: tuple[int, ...]) -> tuple[str, list[str]]:
    """The function for rows and the base units of its arguments, for a liquid or a dry product."""
    if isinstance(what, tuple):
        for a, b, function, beside in calculations.CONVERSIONS:
            ends = (a.partition("/")[2], b.partition("/")[2])
            if ends == what and hilum.measure(f"1 {a}")[1] == first:
                return function, [a, *beside.values()]
        return "", []
    for name in (what, f"dry_{what}"):
        function, takes, _ = calculations.CALCULATIONS.get(name, ("", {}, ""))
        key = "rate" if "rate" in takes else next(iter(takes), None)
        if key and hilum.measure(f"1 {takes[key]}")[1] == first:
            return function, list(takes.values())
    return "", []


class CheckValues(unittest.TestCase):
    """tests/data, whose sources stand beside each case: all cases of a function in one call, the refused among them."""

    def test_cases(self) -> None:
        cases = [case for file in DATA.glob("*.json") for case in json.loads(file.read_text()).get("cases", [])]
        calls: dict[tuple, list] = {}
        for case in cases:
            what, names, result = CASES.get(case["function"], ("", {}, ""))
            texts = {argument: case["inputs"].get(name, ABSENT.get(argument)) for argument, name in names.items()}
            if what and all(isinstance(text, str) for text in texts.values()):
                self.sort(case, what, texts, result, calls)
        checked = sum(self.judge(function, column, of) for (function, column), of in calls.items())
        self.assertGreater(checked, 45)

    def sort(self, case: dict, what: object, texts: dict, result: str, calls: dict) -> None:
        """Puts a case to the others of its function; one whose units are wrong is refused before."""
        try:
            measured = {argument: hilum.measure(text) for argument, text in texts.items()}
        except HilumError:
            self.assertIn(case["error"], ("unknown_unit", "wrong_dimension"), case["id"])
            return
        kind = measured.get("rate", next(iter(measured.values())))[1]
        function, bases = functions(what, kind)
        wanted = [hilum.measure(f"1 {base}")[1] for base in bases]
        if not function or wanted != [of[1] for of in measured.values()]:
            self.assertEqual(case.get("error"), "wrong_dimension", case["id"])
            return
        calls.setdefault((function, result), []).append((case, [of[0] for of in measured.values()]))

    def judge(self, function: str, result: str, of: list) -> int:
        """Calls once for all cases."""
        got, codes = rows(function, *(np.array(column) for column in zip(*(values for _, values in of), strict=True)))
        if function == "sets_needed":
            got, more = rows("sets_needed_whole", got, dtype=np.uint64)
            np.copyto(codes, more, where=codes == 0)
        for (case, _), value, code in zip(of, got, codes, strict=True):
            if "error" in case:
                self.assertEqual((code % 1000, value), (KINDS[case["error"]], 0), case["id"])
                continue
            expected, (rule, by) = case["expect"][result], next(iter(case["tolerance"].items()))
            exact = hilum.measure(expected)[0] if isinstance(expected, str) else expected
            within = hilum.measure(by)[0] if isinstance(by, str) else by * (abs(exact) if rule == "rel" else 1)
            self.assertEqual(code, 0, case["id"])
            self.assertLessEqual(abs(float(value) - exact), within, case["id"])
        return len(of)


N = 100_000
SPOILT = np.array([np.nan, np.inf, -np.inf, 0.0, -1.0, 1e40, -0.0, 1e-40])


def column(seed: int, least: float, most: float) -> np.ndarray:
    """Numbers, of which one in a hundred is spoilt."""
    random = np.random.default_rng(seed)
    values, spoilt = random.uniform(least, most, N), random.integers(0, 100, N) == 0
    return np.where(spoilt, SPOILT[random.integers(0, len(SPOILT), N)], values)


def refused(of: np.ndarray, subject: int) -> np.ndarray:
    """What the conventions of hilum.h say of numbers that must be more than 0."""
    beyond = np.where(np.abs(of) > 1e30, 103, np.where(of < 1e-30, 103, 0))
    kind = np.where(~np.isfinite(of), 100, np.where(of <= 0, 101, beyond))
    return np.where(kind > 0, kind + 1000 * subject, 0)


def first(*codes: np.ndarray) -> np.ndarray:
    """The first refusal of each row."""
    return np.select([code > 0 for code in codes], codes, 0)


class Formulas(unittest.TestCase):
    """The formulas of hilum.h in numpy: one operation each, so the bits are the same."""

    def same(self, got: tuple[np.ndarray, np.ndarray], expected: np.ndarray, codes: np.ndarray) -> None:
        with np.errstate(all="ignore"):
            expected = np.where(codes == 0, expected, 0)
        np.testing.assert_array_equal(got[1], codes)
        np.testing.assert_array_equal(got[0].view(np.uint64), expected.view(np.uint64))
        self.assertTrue((codes > 0).any() and (codes == 0).any())

    def setUp(self) -> None:
        self.enterContext(np.errstate(all="ignore"))
        self.mass, self.size, self.rate = column(1, 1e2, 1e5), column(2, 2e3, 8e3), column(3, 1e-6, 1e-5)
        self.bad_size, self.bad_rate = refused(self.size, 3), refused(self.rate, 14)

    def test_seed_and_doses(self) -> None:
        bad_mass, dose, sown = refused(self.mass, 1), column(4, 1e-10, 1e-9), column(5, 10, 60)
        bad_dose, bad_sown = refused(dose, 16), refused(sown, 11)
        counted = rows("seed_size_count_in", self.size, self.mass)
        self.same(counted, self.mass * self.size, first(self.bad_size, bad_mass))
        needed = rows("rate_per_mass_needed", self.rate, self.mass)
        self.same(needed, self.rate * self.mass, first(self.bad_rate, bad_mass))
        per_seed = rows("rate_per_mass_to_per_seed", self.rate, self.size)
        self.same(per_seed, self.rate / self.size, first(self.bad_rate, self.bad_size))
        per_mass = rows("rate_per_seed_to_per_mass", dose, self.size)
        self.same(per_mass, dose * self.size, first(bad_dose, self.bad_size))
        self.same(rows("dry_per_seed_to_per_area", dose, sown), dose * sown, first(bad_dose, bad_sown))
        self.same(rows("dry_per_area_to_per_seed", dose, sown), dose / sown, first(refused(dose, 18), bad_sown))
        self.same(rows("sown_area", sown, self.mass), self.mass / sown, first(bad_sown, refused(self.mass, 2)))

    def test_a_unit_of_each_row(self) -> None:
        """1.25 fl oz per unit of 140,000 is 2.5 fl oz/cwt at 2,800 seeds/lb: 280,000 seeds/cwt, two units."""
        units, numbers = column(6, 8e4, 1.6e5), column(7, 0.5, 3)
        text, room = b"fl oz/unit", ctypes.c_size_t(10)
        base, codes = rows("text_base", numbers, text, room, units, None)
        # NIST SP 811: a US fluid ounce is 29.573 529 562 5 mL.
        expected = numbers * 2.95735295625e-5 / units
        fine = codes == 0
        np.testing.assert_array_equal(base[fine], expected[fine])
        # A conversion takes what is less than nothing; what calculates with it looks at it.
        beyond = ~np.isfinite(numbers) | (units <= 0) | ~np.isfinite(units) | (np.abs(expected) > 1e30)
        beyond |= (np.abs(expected) < 1e-30) & (expected != 0) | (units < 1e-30) | (units > 1e30)
        np.testing.assert_array_equal(~fine, beyond)
        per_mass, _ = rows("rate_per_seed_to_per_mass", *(np.array([hilum.measure(of)[0]]) for of in
            ("1.25 fl oz/140000 seeds", "2800 seeds/lb")))  # fmt: skip
        count, _ = rows("text_count_in", per_mass, b"fl oz/cwt", ctypes.c_size_t(9), None, None)
        self.assertAlmostEqual(count[0], 2.5, delta=1e-13)

    def test_season_and_cells(self) -> None:
        limit, used, sown = column(8, 1e-5, 1e-4), np.abs(column(9, 0, 1e-5)), column(10, 10, 60)
        dose, titre, recovery = column(11, 1e-8, 1e-6), column(12, 1e14, 1e15), np.full(N, 0.8)
        bad_used = np.where(used == 0, 0, refused(used, 73))
        bad = first(refused(limit, 72), bad_used, refused(dose, 16), refused(sown, 11))
        total = dose * sown + used
        self.same(rows("season_limit_total", limit, used, dose, sown), total, bad)
        self.same(rows("season_limit_share", limit, used, dose, sown), total / limit, bad)
        over, codes = rows("season_limit_exceeded", limit, used, dose, sown, dtype=np.bool_)
        clear = (codes == 0) & (np.abs(total / limit - 1) > 1e-6)
        np.testing.assert_array_equal(over[clear], (total > limit)[clear])
        cells = rows("titre_per_volume_cells", titre, dose, recovery)
        self.same(cells, titre * dose * recovery, first(refused(titre, 24), refused(dose, 16)))

    def test_cells_in_storage(self) -> None:
        """Bigelow's line with a z value (see crates/hilum/src/viability/survival.rs) in numpy, to 1e-12."""
        cells, after, day = column(13, 1e5, 1e7), np.abs(column(14, 0, 90)) * 86_400, 86_400.0
        many = np.random.default_rng(15).integers(0, 4, N)
        starts = np.concatenate([[0], np.cumsum(many)]).astype(np.int32)
        lasts = np.random.default_rng(16).uniform(0, 30, starts[-1]) * day
        at = np.random.default_rng(17).uniform(-5, 35, starts[-1])
        curve = {"model": "log_linear", "decimal_reduction": "60 d", "at": "10 degC", "z": "20 K"}
        curves, which = np.frombuffer(hilum.curves([curve]), np.uint8), np.zeros(N, np.int32)
        addresses = [array.ctypes.data for array in (curves, which, starts, lasts, at)]
        kept = struct.pack("@PNPPPPN", addresses[0], 1, *addresses[1:], len(lasts))
        got, codes = rows("survival_count", kept, cells, after, np.empty(9), ctypes.c_size_t(3))
        tau, left = np.where(many == 0, after, 0.0), after.copy()
        for number in range(3):
            of = many > number
            row = np.minimum(starts[:-1] + number, len(lasts) - 1)
            here = np.where(many == number + 1, left, np.minimum(left, lasts[row]))
            tau += np.where(of, here * 10 ** ((at[row] - 10) / 20), 0)
            left -= np.where(of, here, 0)
        bad_after = np.where(after == 0, 0, refused(after, 37))
        np.testing.assert_array_equal(codes, first(refused(cells, 16), bad_after))
        fine = (codes == 0) & (tau < 300 * 60 * day)
        np.testing.assert_allclose(got[fine], (cells * 10 ** -(tau / (60 * day)))[fine], rtol=1e-12)

    def test_no_row_can_be_looked_at(self) -> None:
        with self.assertRaisesRegex(HilumError, "hilum_sown_area_rows: a pointer that is needed is NULL"):
            rows("sown_area", self.size, None)
        with self.assertRaisesRegex(HilumError, "the unit is unknown"):
            rows("text_base", self.size, b"pounds", ctypes.c_size_t(6), None, None)


class Contract(unittest.TestCase):
    """What is wrong with the columns is said before anything runs."""

    def refused(self, says: str, step: object, **columns: tuple[str, str | None]) -> None:
        with self.assertRaises(HilumError) as error:
            steps.Contract(hilum, columns).ready(step)
        self.assertIn(says, str(error.exception))

    def test_units_types_and_names(self) -> None:
        seeds = steps.step("seeds", "n", "seeds", size="s", mass="m")
        size = ("double", "seeds/lb")
        fine = steps.Contract(hilum, {"s": size, "m": ("double", "cwt")}).ready(seeds)
        self.assertEqual([column.unit for column in fine.columns.values()], ["seeds/lb", "cwt"])
        self.refused('"m" is in fl oz (volume), but mass must be mass, as in kg', seeds, s=size, m=("double", "fl oz"))
        self.refused('write "oz av" (weight) or "fl oz" (volume)', seeds, s=size, m=("double", "oz"))
        self.refused("has no unit; say with in_units which, as in kg", seeds, s=size, m=("double", None))
        self.refused("is bigint; cast it to double", seeds, s=size, m=("bigint", "lb"))
        self.refused("there is no column m", seeds, s=size)
        self.refused("as in seeds, not lb", steps.step("seeds", "n", "lb", size="s", mass="m"), s=size, m=("double", "lb"))
        self.refused("no such calculation, but dose, seeds", steps.step("sedes", "n", "seeds", size="s"), s=size)

    def test_a_dose_finds_its_way(self) -> None:
        dose = steps.step("dose", "d", "mL/ha", dose="r", size="s", sown="w", bushel="b")
        columns = {"r": ("double", "fl oz/bu"), "s": ("double", "seeds/lb"), "w": ("double", "seeds/ac")}
        self.refused("needs bushel, as in kg: there is no column b", dose, **columns)
        ready = steps.Contract(hilum, columns | {"b": ("double", "lb")}).ready(dose)
        self.assertEqual([call for call, _ in ready.calls], ["rate_per_mass_to_per_seed", "rate_per_seed_to_per_area"])
        dry = steps.step("dose", "d", "g/ha", dose="r", size="s", sown="w")
        self.refused("a dose in fl oz/cwt cannot be turned into g/ha", dry, **(columns | {"r": ("double", "fl oz/cwt")}))
        self.refused("is in lb (mass), but dose must be", dry, **(columns | {"r": ("double", "lb")}))


if __name__ == "__main__":
    unittest.main()
