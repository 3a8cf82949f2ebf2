"""Documents that must be refused: (name, bytes, JSON pointers of which the message must name one).

An empty list of pointers: there is no field to name (the text is not JSON, or not a job at all).
"""
import copy
import json

BASE = {
    "format": 1, "title": "Tuesday", "units": "us", "currency": "USD", "recipe_tolerance": "2 %",
    "orders": [
        {"order": "31", "lot": "L-1", "crop": "soybean", "amount": "400 units", "size": "2750 seeds/lb",
         "unit": "130000 seeds", "bushel": "60 lb", "package": {"holds": "40 units"}, "germination": "92 %",
         "sowing": {"stand": "120000 plants/ac", "emergence": "85 %"}, "temperature": "45 degF",
         "on_seed": [{"active": "quellazole", "per_seed": "0.02 mg/seed"}], "treat": ["Mossan", "Larkin 20"]},
        {"order": "32", "lot": "L-2", "amount": "9000 lb", "size": "155 g/1000 seeds"}],
    "treatments": [
        {"product": "Mossan", "tank": "A", "rate": "2.4 fl oz/cwt", "density": "1.02 kg/L",
         "living": {"titre": "8e9 CFU/mL", "recovery": "75 %", "minimum_at_planting": "1e5 CFU/seed",
                    "pot_life": "20 h", "on_seed_life": "60 d",
                    "survival": {"model": "log_linear", "decimal_reduction": "40 d", "at": "10 degC", "z": "20 K"}},
         "packs": [{"pack": "large", "parts": [{"part": "cells", "fill": "1.5 gal"}], "covers": "8000 lb",
                    "per_case": 2, "on_hand": 9, "price": 300.0}]},
        {"product": "Larkin 20", "tank": "B", "rate": "0.9 fl oz/unit", "label_unit": "140000 seeds",
         "actives": [{"active": "quellazole", "content": "200 g/L"}], "colourant": True,
         "with_living": [{"living": "Mossan", "same_tank": False, "same_seed": True}]}],
    "actives": [{"active": "quellazole", "season_limit": "0.2 lb/ac"}],
    "tanks": [{"tank": "A", "capacity": "30 gal", "make_up_to": "4 fl oz/cwt", "agitated": True,
               "pump": {"curve": [{"setting": 20, "flow": "20 fl oz/min"}, {"setting": 60, "flow": "60 fl oz/min"}]}},
              {"tank": "B", "capacity": "30 gal"}],
    "treater": {"seed_flow": "500 lb/min", "utilisation": "85 %", "changeover": "10 min"},
    "work": [{"from": "2027-04-06T07:00:00-05:00", "to": "2027-04-06T17:00:00-05:00"}],
    "after": {"storage": [{"for": "20 d", "at": "45 degF"}], "plant_after": "21 d"},
}
GONE = object()


def edit(pointer, value):
    """The base job with one place changed (GONE: taken away), as bytes."""
    doc = copy.deepcopy(BASE)
    *path, last = pointer.strip("/").split("/")
    at = doc
    for step in path:
        at = at[int(step)] if isinstance(at, list) else at[step]
    if isinstance(at, list):
        last = int(last)
        if last == len(at):
            at.append(value)
            return json.dumps(doc).encode()
    if value is GONE:
        del at[last]
    else:
        at[last] = value
    return json.dumps(doc).encode()


# a field changed to what it may not be: the message names that field
VALUES = [
    ("bare-oz", "/treatments/0/rate", "2.4 oz/cwt"), ("ton", "/orders/1/amount", "5 ton"),
    ("grouped-comma", "/orders/1/amount", "9,000 lb"), ("million-suffix", "/orders/0/unit", "140M seeds"),
    ("thousand-suffix", "/orders/0/unit", "140k seeds"), ("no-unit", "/orders/1/amount", "9000"),
    ("unit-only", "/orders/1/amount", "lb"), ("empty-text", "/orders/1/amount", ""),
    ("two-slashes", "/treatments/0/rate", "2.4 fl oz/cwt/min"), ("leading-plus", "/orders/1/amount", "+9000 lb"),
    ("leading-zero", "/orders/1/amount", "09000 lb"), ("bare-point", "/orders/1/amount", ".5 t"),
    ("comma-decimal", "/orders/1/amount", "9,5 t"), ("1e308", "/orders/1/amount", "1e308 lb"),
    ("1e400", "/orders/1/amount", "1e400 lb"), ("1e-308", "/orders/1/amount", "1e-308 lb"),
    ("nan", "/orders/1/amount", "NaN lb"), ("inf", "/orders/1/amount", "inf lb"),
    ("infinity", "/tanks/0/capacity", "-Infinity gal"), ("zero-amount", "/orders/1/amount", "0 lb"),
    ("negative-amount", "/orders/1/amount", "-9000 lb"), ("negative-rate", "/treatments/0/rate", "-2 fl oz/cwt"),
    ("zero-rate", "/treatments/0/rate", "0 fl oz/cwt"), ("zero-capacity", "/tanks/0/capacity", "0 gal"),
    ("zero-denominator", "/treatments/0/rate", "2.4 mL/0 kg"),
    ("negative-duration", "/treater/changeover", "-10 min"), ("below-absolute-zero", "/orders/0/temperature", "-500 degF"),
    ("over-100", "/orders/0/germination", "101 %"), ("negative-share", "/treatments/0/living/recovery", "-5 %"),
    ("bare-share", "/orders/0/germination", 0.92),
    ("size-is-volume-per-seed", "/orders/1/size", "2 mL/seed"), ("size-is-mass", "/orders/1/size", "155 g"),
    ("rate-is-volume", "/treatments/0/rate", "2.4 fl oz"), ("capacity-is-mass", "/tanks/0/capacity", "30 lb"),
    ("flow-is-mass", "/treater/seed_flow", "500 lb"), ("z-is-a-point", "/treatments/0/living/survival/z", "20 degC"),
    ("at-is-a-difference", "/treatments/0/living/survival/at", "10 K"),
    ("titre-is-mass", "/treatments/0/living/titre", "8 g/mL"), ("season-limit-per-mass", "/actives/0/season_limit", "0.2 lb/cwt"),
    ("plants-outside-a-stand", "/orders/0/unit", "130000 plants"), ("unknown-unit", "/orders/1/amount", "9000 pund"),
    ("number-for-text", "/orders/1/amount", 9000), ("list-for-text", "/orders/1/amount", ["9000 lb"]),
    ("bool-for-text", "/orders/1/lot", True), ("text-for-bool", "/tanks/0/agitated", "yes"),
    ("text-for-number", "/treatments/0/packs/0/price", "300"), ("object-for-list", "/orders", {"order": "31"}),
    ("text-for-object", "/treater", "big one"), ("fraction-of-a-case", "/treatments/0/packs/0/per_case", 1.5),
    ("zero-per-case", "/treatments/0/packs/0/per_case", 0), ("negative-stock", "/treatments/0/packs/0/on_hand", -1),
    ("negative-price", "/treatments/0/packs/0/price", -300.0), ("format-2", "/format", 2),
    ("unknown-units", "/units", "imperial"), ("unknown-choice", "/treatments/0/choose", "cheapest"),
    ("unknown-refill", "/tanks/0/refill", "always"), ("null-for-required", "/orders/1/amount", None),
    ("null-for-orders", "/orders", None), ("null-in-a-list", "/orders/1", None),
    ("bad-instant", "/work/0/from", "6 April 2027 7:00"), ("no-offset", "/work/0/from", "2027-04-06T07:00:00"),
    ("blank-order", "/orders/1/order", ""), ("blank-lot", "/orders/1/lot", "  "), ("blank-tank", "/tanks/0/tank", "\u202e"),
    ("bad-date", "/treatments/1/expires", "2027-02-30"),
    ("missing-tank", "/treatments/0/tank", "Z"), ("missing-product", "/orders/0/treat/1", "Larkin 21"),
    ("missing-living", "/treatments/1/with_living/0/living", "Moss"),
    ("missing-part", "/treatments/0/living/titre_of", "feed"),
]

# (name, place changed, value, pointers of which one must be named)
PLACES = [
    ("unknown-at-top", "/tratments", [], ["/tratments"]),
    ("unknown-in-order", "/orders/1/amonut", "9000 lb", ["/orders/1/amonut"]),
    ("unknown-in-sowing", "/orders/0/sowing/emergance", "85 %", ["/orders/0/sowing/emergance"]),
    ("unknown-in-package", "/orders/0/package/hold", "40 units", ["/orders/0/package/hold"]),
    ("unknown-in-treatment", "/treatments/0/ratte", "2 fl oz/cwt", ["/treatments/0/ratte"]),
    ("unknown-in-living", "/treatments/0/living/titer", "8e9 CFU/mL", ["/treatments/0/living/titer"]),
    ("unknown-in-survival", "/treatments/0/living/survival/slow", "40 d", ["/treatments/0/living/survival/slow"]),
    ("unknown-in-pack", "/treatments/0/packs/0/cover", "8000 lb", ["/treatments/0/packs/0/cover"]),
    ("unknown-in-part", "/treatments/0/packs/0/parts/0/filled", "1 gal", ["/treatments/0/packs/0/parts/0/filled"]),
    ("unknown-in-active", "/treatments/1/actives/0/contents", "1 g/L", ["/treatments/1/actives/0/contents"]),
    ("unknown-in-with-living", "/treatments/1/with_living/0/tank", False, ["/treatments/1/with_living/0/tank"]),
    ("unknown-in-tank", "/tanks/0/volume", "30 gal", ["/tanks/0/volume"]),
    ("unknown-in-pump", "/tanks/0/pump/maximum", "60 fl oz/min", ["/tanks/0/pump/maximum"]),
    ("unknown-in-curve", "/tanks/0/pump/curve/0/rate", "2 fl oz/min", ["/tanks/0/pump/curve/0/rate"]),
    ("unknown-in-treater", "/treater/flow", "500 lb/min", ["/treater/flow"]),
    ("unknown-in-shift", "/work/0/until", "2027-04-06T17:00:00-05:00", ["/work/0/until"]),
    ("unknown-in-after", "/after/plant", "21 d", ["/after/plant"]),
    ("unknown-in-storage", "/after/storage/0/temperature", "45 degF", ["/after/storage/0/temperature"]),
    ("unknown-in-quantity", "/orders/1/amount", {"value": 9000, "unit": "lb", "of": "seed"}, ["/orders/1/amount"]),
    ("text-value-in-quantity", "/orders/1/amount", {"value": "9000", "unit": "lb"}, ["/orders/1/amount"]),
    ("quantity-without-unit", "/orders/1/amount", {"value": 9000}, ["/orders/1/amount"]),
    ("missing-amount", "/orders/1/amount", GONE, ["/orders/1"]), ("missing-size", "/orders/1/size", GONE, ["/orders/1"]),
    ("missing-lot", "/orders/1/lot", GONE, ["/orders/1"]), ("missing-orders", "/orders", GONE, ["/orders", "orders"]),
    ("missing-treatments", "/treatments", GONE, ["/treatments", "treatments"]),
    ("product-without-name", "/treatments/0/product", GONE, ["/treatments/0"]),
    ("missing-dose", "/treatments/0/rate", GONE, ["/treatments/0"]),
    ("missing-capacity", "/tanks/0/capacity", GONE, ["/tanks/0"]),
    ("missing-titre", "/treatments/0/living/titre", GONE, ["/treatments/0/living"]),
    ("missing-model-parameter", "/treatments/0/living/survival/decimal_reduction", GONE,
     ["/treatments/0/living/survival"]),
    ("at-without-z", "/treatments/0/living/survival/z", GONE, ["/treatments/0/living/survival"]),
    ("missing-emergence", "/orders/0/sowing/emergence", GONE, ["/orders/0/sowing", "/orders/0"]),
    ("stand-without-germination", "/orders/0/germination", GONE, ["/orders/0"]),
    ("units-without-unit", "/orders/0/unit", GONE, ["/orders/0"]),
    ("bu-without-bushel", "/orders/1/amount", "300 bu", ["/orders/1"]),
    ("area-without-sowing", "/orders/1/amount", "300 ac", ["/orders/1"]),
    ("rate-per-bu-without-bushel", "/treatments/0/rate", "1.3 fl oz/bu", ["/treatments/0", "/orders/1"]),
    ("rate-per-area-without-sowing", "/treatments/0/rate", "2 fl oz/ac", ["/treatments/0", "/orders/1"]),
    ("rate-per-unit-without-unit", "/treatments/1/label_unit", GONE, ["/treatments/1", "/orders/1"]),
    ("rate-and-cells", "/treatments/0/cells", "2e5 CFU/seed", ["/treatments/0"]),
    ("rate-and-active-rate", "/treatments/1/active_rate", {"active": "quellazole", "rate": "30 g/100 kg"},
     ["/treatments/1"]),
    ("active-content-missing", "/treatments/1/actives/0", {"active": "quellazole"}, ["/treatments/1/actives/0"]),
    ("plant-on-and-after", "/after/plant_on", "2027-04-27T08:00:00-05:00", ["/after"]),
    ("make-up-below-products", "/tanks/0/make_up_to", "2 fl oz/cwt", ["/tanks/0/make_up_to"]),
    ("water-and-make-up", "/tanks/0/water", "0.5 fl oz/cwt", ["/tanks/0"]),
    ("flow-and-charge", "/treater/charge", "60 kg", ["/treater"]),
    ("duplicate-order", "/orders/1/order", "31", ["/orders/1/order", "/orders/1"]),
    ("duplicate-product", "/treatments/1/product", "Mossan", ["/treatments/1/product", "/treatments/1"]),
    ("duplicate-tank", "/tanks/1/tank", "A", ["/tanks/1/tank", "/tanks/1"]),
    ("duplicate-pack", "/treatments/0/packs/1", {"pack": "large", "covers": "9000 lb"}, ["/treatments/0/packs/1"]),
    ("duplicate-active", "/actives/1", {"active": "quellazole"}, ["/actives/1"]),
    ("shift-ends-before-it-starts", "/work/0/to", "2027-04-06T06:00:00-05:00", ["/work/0"]),
    ("shifts-overlap", "/work/1", {"from": "2027-04-06T16:00:00-05:00", "to": "2027-04-06T20:00:00-05:00"}, ["/work/1"]),
]


def unit_by_mass():
    """A rate per unit for seed sold by weight: a bag would turn a dose per seed into one per mass."""
    doc = copy.deepcopy(BASE)
    doc["orders"][1]["unit"] = "50 lb"
    del doc["treatments"][1]["label_unit"]
    return json.dumps(doc).encode()


def density_needed():
    doc = copy.deepcopy(BASE)
    del doc["treatments"][0]["density"]
    doc["treatments"][0]["rate"] = "60 g/100 kg"
    doc["treatments"][0]["living"]["titre"] = "5e9 CFU/g"
    return json.dumps(doc).encode()


def raw(old, new):
    text = json.dumps(BASE)
    assert text.count(old) == 1, (old, text.count(old))
    return text.replace(old, new).encode()


def many(n):
    orders = [{"order": str(i), "lot": "L", "amount": "1 lb", "size": "2750 seeds/lb"} for i in range(n)]
    return json.dumps(dict(BASE, orders=orders)).encode()


def whole():
    """Documents broken as a whole."""
    text = json.dumps(BASE).encode()
    deep = b'{"orders":' + b"[" * 100_000 + b"]" * 100_000 + b"}"
    return [
        ("empty", b"", []), ("blank", b" \n\t ", []), ("not-json", b"orders: 3", []), ("top-array", b"[" + text + b"]", []),
        ("top-text", b'"a job"', []), ("top-number", b"7", []), ("top-null", b"null", []), ("empty-object", b"{}", []),
        ("cut-off", text[: len(text) // 2], []), ("trailing", text + b" {}", []), ("comment", b"// job\n" + text, []),
        ("trailing-comma", text[:-1] + b",}", []), ("single-quotes", text.replace(b'"', b"'"), []),
        ("bom-utf16", json.dumps(BASE).encode("utf-16"), []), ("invalid-utf8", text.replace(b"Tuesday", b"Tue\xff\xfe"), []),
        ("lone-surrogate", text.replace(b"Tuesday", b"\\ud800"), []), ("nul-byte", text.replace(b"Tuesday", b"a\x00b"), []),
        ("deep", deep, []), ("deep-33", text[:-1] + b',"x":' + b"[" * 33 + b"]" * 33 + b"}", []),
        ("number-1e400", raw("300.0", "1e400"), ["/treatments/0/packs/0/price", "line"]),
        ("number-nan", raw("300.0", "NaN"), []), ("number-inf", raw("300.0", "Infinity"), []),
        ("duplicate-key-top", raw('"title": "Tuesday"', '"title": "Tuesday", "title": "Wednesday"'), ["title"]),
        ("duplicate-key-order", raw('"lot": "L-2"', '"lot": "L-2", "lot": "L-3"'), ["lot"]),
        ("duplicate-key-quantity", raw('"9000 lb"', '{"value": 9000, "value": 8000, "unit": "lb"}'),
         ["/orders/1/amount", "value"]),
        ("too-many-orders", many(10_001), ["10,000", "10000", "10 000", "10_000"]),
        ("huge-array", b'{"orders":[' + b"0," * 2_000_000 + b"0]}", ["/orders"]),
        ("over-16-mib", b'{"title":"' + b"x" * (17 << 20) + b'"}', ["16"]),
        ("no-orders", json.dumps(dict(BASE, orders=[])).encode(), ["/orders"]),
        ("unit-by-mass", unit_by_mass(), ["/treatments/1", "/orders/1"]),
        ("density-needed", density_needed(), ["/treatments/0"]),
    ]


def cases():
    values = [(name, edit(p, v), [p]) for name, p, v in VALUES]
    return values + [(name, edit(p, v), named) for name, p, v, named in PLACES] + whole()


def valid():
    """Bytes that look odd and are a good job: they must be planned. A byte order mark is either."""
    text = json.dumps(BASE).encode()
    return [("base", text), ("spaces", b"\n " + text + b"\n"), ("nulls", edit("/orders/1/customer", None)),
            ("null-list", edit("/actives", None)), ("null-object", edit("/orders/1/after", None))]
