"""A made-up season of a retail network: orders as one table, the same row for the same number wherever it is made."""

import numpy as np
import pyarrow as pa
from hilum_spark import Step, step

SEED = 0x48494C554D
SAMPLE_EVERY, SAMPLE_AT = 50, 7
UNITS = {
    "mass": "lb", "size": "seeds/lb", "seed_unit": "seeds", "bushel": "lb", "sown": "seeds/ac", "rate": "fl oz/cwt",
    "unit_dose": "fl oz/unit", "bushel_dose": "fl oz/bu", "usable": "gal", "content": "lb/gal", "limit": "lb/ac",
    "used": "lb/ac", "titre": "CFU/mL", "recovery": "%", "after": "d", "minimum": "CFU/seed", "life": "d",
    "lasts": "d", "at": "degF",
}  # fmt: skip
LISTS = ("lasts", "at")
TEXTS = ("order", "shed", "product")
NUMBERS = tuple(name for name in UNITS if name not in LISTS)
# Our own products, whose cells die as nobody's do.
CURVES = {
    "alder peat": {"model": "log_linear", "decimal_reduction": "60 d", "at": "10 degC", "z": "20 K"},
    "birch broth": {"model": "weibull", "scale": "25 d", "shape": 0.8, "at": "10 degC", "z": "17 K"},
    "cedar film": {"model": "two_phase", "fraction": "90 %", "fast": "2 d", "slow": "70 d"},
}
SPOILT = np.array([np.nan, np.inf, 0.0, -3.0, 1e40, -np.inf, 1e-40, -0.0])

STEPS: list[Step] = [
    step("seeds", "seeds", "seeds", size="size", mass="mass"),
    step("dose", "units_rate", "mL/100 kg", dose="unit_dose", seed_unit="seed_unit", size="size"),
    step("dose", "bushel_area", "mL/ha", dose="bushel_dose", bushel="bushel", size="size", sown="sown"),
    step("dose", "per_seed", "µL/seed", dose="rate", size="size"),
    step("product", "product_needed", "gal", rate="rate", mass="mass"),
    step("covers", "covers", "lb", usable="usable", rate="rate"),
    step("sets", "sets", mass="mass", covers="covers"),
    step("whole_sets", "whole_sets", sets="sets"),
    step("active", "active", "mg/kg", rate="rate", content="content"),
    step("active_per_seed", "on_seed", "mg/seed", rate="active", size="size"),
    step("active_per_area", "season", "lb/ac", limit="limit", used="used", on_seed="on_seed", sown="sown"),
    step("season_share", "share", limit="limit", used="used", on_seed="on_seed", sown="sown"),
    step("over_season_limit", "over", limit="limit", used="used", on_seed="on_seed", sown="sown"),
    step("max_sowing", "max_sowing", "seeds/ac", limit="limit", used="used", on_seed="on_seed"),
    step("cells", "cells", "CFU/seed", titre="titre", dose="per_seed", recovery="recovery"),
    step("left", "left", "CFU/seed", cells="cells", after="after", product="product", lasts="lasts", at="at",
         curves=CURVES),
    step("plant_by", "wait", "d", cells="cells", minimum="minimum", life="life", product="product", lasts="lasts",
         at="at", curves=CURVES),
]  # fmt: skip


def _hash(ids: np.ndarray, salt: int) -> np.ndarray:
    """splitmix64 (Steele, Lea & Flood 2014) of a row and a column."""
    with np.errstate(over="ignore"):
        x = ids.astype(np.uint64) * np.uint64(0x9E3779B97F4A7C15) + np.uint64(SEED + salt * 0x1000003)
        x = (x ^ (x >> np.uint64(30))) * np.uint64(0xBF58476D1CE4E5B9)
        x = (x ^ (x >> np.uint64(27))) * np.uint64(0x94D049BB133111EB)
    return x ^ (x >> np.uint64(31))


def _between(ids: np.ndarray, salt: int, least: float, most: float) -> np.ndarray:
    """Evenly between two numbers, to three digits or so, as people write them."""
    share = (_hash(ids, salt) >> np.uint64(11)).astype(np.float64) / 2.0**53
    return np.round(least + (most - least) * share, 3 if most < 100 else 0)


_RANGES = {
    "mass": (200, 60_000), "size": (2_400, 3_300), "sown": (110_000, 180_000), "rate": (1, 6), "unit_dose": (0.5, 3),
    "bushel_dose": (0.4, 3), "usable": (0.5, 15), "content": (0.5, 4), "limit": (0.05, 0.5), "used": (0, 0.2),
    "titre": (5, 90), "recovery": (40, 100), "after": (0, 60), "minimum": (0.3, 3), "life": (20, 120),
}  # fmt: skip
_SCALES = {"titre": 1e8, "minimum": 1e5}


def _column(ids: np.ndarray, name: str) -> pa.Array:
    salt = 1 + NUMBERS.index(name)
    if name == "seed_unit":
        values = np.array([140_000.0, 130_000.0, 80_000.0])[(_hash(ids, salt) % np.uint64(3)).astype(int)]
    elif name == "bushel":
        values = np.array([60.0, 56.0, 32.0])[(_hash(ids, salt) % np.uint64(3)).astype(int)]
    else:
        values = _between(ids, salt, *_RANGES[name]) * _SCALES.get(name, 1.0)
    draw = _hash(ids, 100 + salt) % np.uint64(4000)
    values = np.where(draw < len(SPOILT), SPOILT[(draw % np.uint64(len(SPOILT))).astype(int)], values)
    return pa.array(values, mask=(draw >= 8) & (draw < 12))


def _lists(ids: np.ndarray) -> tuple[pa.Array, pa.Array]:
    """No to three periods of storage; a few with a bad number, a null inside, a null list."""
    many = (_hash(ids, 40) % np.uint64(4)).astype(np.int64)
    first = np.concatenate([[0], np.cumsum(many)]).astype(np.int32)
    inner = np.repeat(ids, many) * 4 + (np.arange(first[-1]) - np.repeat(first[:-1], many))
    lasts, at = _between(inner, 41, 0, 30), _between(inner, 42, 20, 95)
    draw = _hash(inner, 43) % np.uint64(4000)
    lasts = np.where(draw == 1, -1.0, np.where(draw == 2, np.nan, lasts))
    at = np.where(draw == 3, -500.0, np.where(draw == 4, np.inf, at))
    null = pa.array(_hash(ids, 44) % np.uint64(2000) == 0)
    lists = pa.ListArray.from_arrays(first, pa.array(lasts, mask=draw == 5), mask=null)
    return lists, pa.ListArray.from_arrays(first, pa.array(at))


def orders(ids: np.ndarray) -> pa.RecordBatch:
    """The orders of these numbers."""
    names = np.array([*CURVES, "elm dust"], dtype=object)
    which = (_hash(ids, 50) % np.uint64(3000)).astype(int)
    product = names[np.where(which == 0, 3, which % 3)]
    columns = {
        "id": pa.array(ids.astype(np.int64)),
        "order": pa.array([f"N{number:08}" for number in ids]),
        "shed": pa.array([f"shed {number:07}" for number in ids // 12]),
        "product": pa.array(product, pa.string(), mask=which == 1),
    }
    columns |= {name: _column(ids, name) for name in NUMBERS}
    columns["lasts"], columns["at"] = _lists(ids)
    return pa.RecordBatch.from_pydict(columns)
