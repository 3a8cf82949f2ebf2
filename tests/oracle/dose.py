"""What a label's statement means for an order: amount of product per seed mass, whatever the basis.

Dose: (amount, kind, basis). kind is "V" (volume, m3) or "M" (mass, kg); basis is "mass", "seed" or "area".
"""
from quantity import AREA, BU, CELLS, MASS, NONE, SEED, UNIT, VOL, expect, powers, read, share
from seed import SIZE

AMOUNT_BY = "tank"  # or "dose": see READINGS.md, Q1
TOPS = (("V", VOL), ("M", MASS))
BOTTOMS = (("mass", MASS), ("seed", SEED), ("area", AREA), ("unit", UNIT), ("bu", BU))


def classify(q):
    """(value, kind, bottom) of a rate as written."""
    value, dims = read(q)
    for kind, top in TOPS:
        for bottom, den in BOTTOMS:
            if dims == powers(top, den):
                return value, kind, bottom
    # mass per mass has no dimension left
    if dims == NONE:
        return value, "M", "mass"
    raise ValueError(f"{q!r} is no rate")


class Treatment:
    def __init__(self, doc, index):
        self.doc, self.index, self.name = doc, index, doc["product"]
        self.tank = doc.get("tank")
        self.density = expect(doc["density"], powers(MASS, VOL)) if doc.get("density") else None
        self.label_unit = expect(doc["label_unit"], SEED) if doc.get("label_unit") else None
        self.label_bushel = expect(doc["label_bushel"], MASS) if doc.get("label_bushel") else None
        self.living = doc.get("living")
        self.kind = self.amount_kind()

    def amount_kind(self):
        if AMOUNT_BY == "tank":
            return "V" if self.tank else "M"
        if self.doc.get("rate"):
            return classify(self.doc["rate"])[1]
        if self.doc.get("active_rate"):
            _, dims = read(self.content(self.doc["active_rate"]["active"]))
            return "M" if dims == NONE else "V"
        _, dims = read(self.living["titre"])
        return "V" if dims == powers(CELLS, VOL) else "M"

    def content(self, active):
        return next(a["content"] for a in self.doc.get("actives") or [] if a["active"] == active)

    # -- bases ---------------------------------------------------------------
    def bottom(self, value, bottom, order):
        """A unit or a bushel in the denominator becomes seeds or mass."""
        if bottom == "unit":
            return value / (self.label_unit or order.unit_seeds), "seed"
        if bottom == "bu":
            return value / (self.label_bushel or order.bushel), "mass"
        return value, bottom

    def to_kind(self, value, kind, want):
        if kind == want:
            return value
        return value * self.density if want == "M" else value / self.density

    @staticmethod
    def spread(value, basis, order, size):
        if basis == "mass":
            return value
        return value * size if basis == "seed" else value / order.mass_per_area(size)

    def normal(self, q, order, want=None):
        """A written product rate as (value, basis) in the product's own kind."""
        value, kind, bottom = classify(q)
        value, basis = self.bottom(value, bottom, order)
        return self.to_kind(value, kind, want or self.kind), basis

    def rate_per_mass(self, q, order, size=None):
        value, basis = self.normal(q, order)
        return self.spread(value, basis, order, size or order.size)

    # -- the governing dose ----------------------------------------------------
    def governing(self, order):
        if self.doc.get("rate"):
            return self.normal(self.doc["rate"], order)
        if self.doc.get("active_rate"):
            ar = self.doc["active_rate"]
            value, _, bottom = classify(ar["rate"])
            value, basis = self.bottom(value, bottom, order)
            return value / self.active_per_amount(ar["active"]), basis
        cells = expect(self.doc["cells"], powers(CELLS, SEED))
        return cells / (self.titre() * self.recovery()), "seed"

    def per_mass(self, order, size=None):
        value, basis = self.governing(order)
        return self.spread(value, basis, order, size or order.size)

    def need(self, order, size=None):
        size = size or order.size
        return self.per_mass(order, size) * order.at_size(size)[0]

    def active_per_amount(self, active):
        """Active mass per amount of product in its kind; None where density is missing."""
        value, dims = read(self.content(active))
        if dims == powers(MASS, VOL):
            if self.kind == "V":
                return value
            return value / self.density if self.density else None
        if self.kind == "M":
            return value
        return value * self.density if self.density else None

    # -- living ------------------------------------------------------------------
    def recovery(self):
        return share(self.living["recovery"]) if self.living.get("recovery") else 1

    def titre(self):
        """Cells per amount of mix in the product's kind."""
        value, dims = read(self.living["titre"])
        kind = "V" if dims == powers(CELLS, VOL) else "M"
        of = self.living.get("titre_of") or "mix"
        if of != "mix":
            value *= min(self.part_ratio(p, of) for p in self.doc["packs"])
        if kind == self.kind:
            return value
        return value * self.density if self.kind == "V" else value / self.density

    @staticmethod
    def part_ratio(pack, name):
        sizes = {p["part"]: read(p.get("usable") or p["fill"])[0] for p in pack["parts"]}
        return sizes[name] / sum(sizes.values())

    def set_amount(self, pack):
        """Usable amount of a set in the product's kind, None if the parts do not say."""
        if not pack.get("parts"):
            return None
        total = 0
        for p in pack["parts"]:
            value, dims = read(p.get("usable") or p["fill"])
            kind = "V" if dims == VOL else "M"
            if kind != self.kind and not self.density:
                return None
            total += self.to_kind(value, kind, self.kind)
        return total

    def stated_coverage(self, pack, order):
        """Seed mass that a set covers for this order, as the pack states it."""
        if not pack.get("covers"):
            return None
        value, dims = read(pack["covers"])
        if dims == UNIT:
            value, dims = value * (self.label_unit or order.unit_seeds), SEED
        return value if dims == MASS else value / order.size

    def computed_coverage(self, pack, order):
        amount = self.set_amount(pack)
        return None if amount is None else amount / self.per_mass(order)

    def coverage(self, pack, order):
        stated = self.stated_coverage(pack, order)
        return stated if stated is not None else self.computed_coverage(pack, order)
