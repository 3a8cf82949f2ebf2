"""Quantity text to exact numbers in base units (m, kg, s, K, seeds, cells), and back to the plan's units.

A quantity is (Fraction, dims): dims maps a base letter to its power. "U" (unit) and "B" (bushel) stay
symbolic until the field that reads them says whose unit or bushel is meant.
"""
import re
from fractions import Fraction as F

LB = F("0.45359237")
GAL = F("0.003785411784")
IMP_GAL = F("0.00454609")
ACRE = F("4046.8564224")
FOZ = GAL / 128

MASS, VOL, AREA, TIME, TEMP = {"M": 1}, {"L": 3}, {"L": 2}, {"T": 1}, {"K": 1}
SEED, UNIT, BU, CELLS, NONE = {"S": 1}, {"U": 1}, {"B": 1}, {"C": 1}, {}

UNITS = {
    "kg": (F(1), MASS), "g": (F(1, 10**3), MASS), "mg": (F(1, 10**6), MASS), "ug": (F(1, 10**9), MASS),
    "t": (F(1000), MASS), "lb": (LB, MASS), "oz av": (LB / 16, MASS), "cwt": (LB * 100, MASS),
    "L": (F(1, 1000), VOL), "mL": (F(1, 10**6), VOL), "uL": (F(1, 10**9), VOL), "m3": (F(1), VOL),
    "fl oz": (FOZ, VOL), "pt": (GAL / 8, VOL), "qt": (GAL / 4, VOL), "gal": (GAL, VOL),
    "imp fl oz": (IMP_GAL / 160, VOL), "imp pt": (IMP_GAL / 8, VOL), "imp qt": (IMP_GAL / 4, VOL),
    "imp gal": (IMP_GAL, VOL),
    "seed": (F(1), SEED), "seeds": (F(1), SEED), "kernel": (F(1), SEED), "kernels": (F(1), SEED),
    "plant": (F(1), SEED), "plants": (F(1), SEED), "unit": (F(1), UNIT), "units": (F(1), UNIT), "bu": (F(1), BU),
    "m2": (F(1), AREA), "ha": (F(10000), AREA), "ac": (ACRE, AREA), "ft2": (F("0.3048") ** 2, AREA),
    "s": (F(1), TIME), "min": (F(60), TIME), "h": (F(3600), TIME), "d": (F(86400), TIME),
    "K": (F(1), TEMP), "delta_degC": (F(1), TEMP), "delta_degF": (F(5, 9), TEMP),
    "CFU": (F(1), CELLS), "%": (F(1, 100), NONE),
    # UCUM
    "[lb_av]": (LB, MASS), "[oz_av]": (LB / 16, MASS), "[scwt_av]": (LB * 100, MASS),
    "[foz_us]": (FOZ, VOL), "[pt_us]": (GAL / 8, VOL), "[qt_us]": (GAL / 4, VOL), "[gal_us]": (GAL, VOL),
    "[foz_br]": (IMP_GAL / 160, VOL), "[gal_br]": (IMP_GAL, VOL), "{seed}": (F(1), SEED),
    "[CFU]": (F(1), CELLS), "har": (F(10000), AREA),
}
for ascii_, micro in (("ug", "g"), ("uL", "L")):
    for mu in ("\u00b5", "\u03bc"):
        UNITS[mu + micro] = UNITS[ascii_]
POINTS = {"degC": 0, "\u00b0C": 0, "Cel": 0, "degF": 1, "\u00b0F": 1, "[degF]": 1}

NUMBER = re.compile(r"-?(?:0|[1-9](?:[_\u2009]?[0-9])*)(?:\.[0-9](?:[_\u2009]?[0-9])*)?(?:[eE][+-]?[0-9]+)?")


def number(text):
    return F(text.replace("_", "").replace("\u2009", ""))


def split(text):
    """The number and the unit text of a quantity."""
    m = NUMBER.match(text)
    if not m:
        raise ValueError(f"no number in {text!r}")
    return number(m.group()), text[m.end():].lstrip(" ")


def atom(text):
    if text not in UNITS:
        raise ValueError(f"unknown unit {text!r}")
    return UNITS[text]


def denominator(text):
    ucum = re.fullmatch(r"\(([0-9]+)\.(.+)\)", text)
    if ucum:
        n, name = F(ucum.group(1)), ucum.group(2)
    elif text[:1].isdigit():
        n, name = split(text)
    else:
        n, name = F(1), text
    factor, dims = atom(name)
    return n * factor, dims


def powers(num, den):
    out = dict(num)
    for k, v in den.items():
        out[k] = out.get(k, 0) - v
    return {k: v for k, v in out.items() if v}


def read(q):
    """Any quantity but a temperature point: (value in base units, dims)."""
    if isinstance(q, dict):
        value, unit = F(q["value"]), q["unit"]
    else:
        value, unit = split(q)
    top, _, bottom = unit.partition("/")
    factor, dims = atom(top)
    if not bottom:
        return value * factor, dict(dims)
    k, den = denominator(bottom)
    return value * factor / k, powers(dims, den)


def expect(q, *kinds):
    value, dims = read(q)
    if dims not in kinds:
        raise ValueError(f"{q!r}: dimension {dims}")
    return value


def point(q):
    """A temperature in degrees Celsius."""
    value, unit = (F(q["value"]), q["unit"]) if isinstance(q, dict) else split(q)
    return (value - 32) * 5 / 9 if POINTS[unit] else value


def share(q):
    return expect(q, NONE)


def stated(q):
    return q if isinstance(q, str) else f"{float(q['value']):g} {q['unit']}"


MG, ML, UL, G, OZ = F(1, 10**6), F(1, 10**6), F(1, 10**9), F(1, 1000), LB / 16
# kind: (us factor, us unit, metric factor, metric unit)
OUT = {
    "seed_mass": (LB, "lb", F(1), "kg"), "dry": (LB, "lb", F(1), "kg"), "liquid": (FOZ, "fl oz", F(1, 1000), "L"),
    "area": (ACRE, "ac", F(10000), "ha"), "flow": (FOZ / 60, "fl oz/min", ML / 60, "mL/min"),
    "size": (1 / LB, "seeds/lb", F(1), "seeds/kg"), "sowing": (1 / ACRE, "seeds/ac", F(1, 10000), "seeds/ha"),
    "seeds": (F(1), "seeds", F(1), "seeds"), "units": (F(1), "units", F(1), "units"), "bu": (F(1), "bu", F(1), "bu"),
    "V/mass": (FOZ / (100 * LB), "fl oz/cwt", ML / 100, "mL/100 kg"), "V/seed": (UL, "\u00b5L/seed", UL, "\u00b5L/seed"),
    "V/unit": (FOZ, "fl oz/unit", ML, "mL/unit"), "V/bu": (FOZ, "fl oz/bu", ML, "mL/bu"),
    "V/area": (FOZ / ACRE, "fl oz/ac", ML / 10000, "mL/ha"),
    "M/mass": (OZ / (100 * LB), "oz av/cwt", G / 100, "g/100 kg"), "M/seed": (MG, "mg/seed", MG, "mg/seed"),
    "M/unit": (OZ, "oz av/unit", G, "g/unit"), "M/bu": (OZ, "oz av/bu", G, "g/bu"),
    "M/area": (OZ / ACRE, "oz av/ac", G / 10000, "g/ha"),
    "A/mass": (MG, "mg/kg", MG, "mg/kg"), "A/seed": (MG, "mg/seed", MG, "mg/seed"),
    "A/area": (LB / ACRE, "lb/ac", G / 10000, "g/ha"), "cells": (F(1), "CFU/seed", F(1), "CFU/seed"),
}


def write(kind, value, us):
    fu, nu, fm, nm = OUT[kind]
    factor, unit = (fu, nu) if us else (fm, nm)
    return {"value": float(value / factor), "unit": unit}
