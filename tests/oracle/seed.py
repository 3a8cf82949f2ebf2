"""How much seed each order is: mass, count, units, bushels, area, at its own size or at another."""
from fractions import Fraction as F
from math import ceil

from quantity import AREA, BU, MASS, SEED, UNIT, expect, powers, read, share, write

SIZE, PER_SIZE = {"S": 1, "M": -1}, {"M": 1, "S": -1}
SLACK = F(1, 10**9)


def round_up(x):
    """Whole things needed for x, with the slack of the contract."""
    return ceil(x * (1 - SLACK))


class Order:
    def __init__(self, doc, index):
        self.doc, self.index, self.name = doc, index, doc["order"]
        value, dims = read(doc["size"])
        self.size = value if dims == SIZE else 1 / value
        self.tolerance = share(doc["size_tolerance"]) if doc.get("size_tolerance") else None
        self.unit_seeds = self.unit_mass = None
        if doc.get("unit"):
            value, dims = read(doc["unit"])
            if dims == SEED:
                self.unit_seeds = value
            else:
                self.unit_mass = value
        self.bushel = expect(doc["bushel"], MASS) if doc.get("bushel") else None
        self.sowing()
        self.mass, self.seeds, self.area = self.at_size(self.size)

    def sowing(self):
        """Seeds or mass sown per area; whichever is not given follows from the size."""
        self.sown_seeds = self.sown_mass = None
        s = self.doc.get("sowing")
        if not s:
            return
        if s.get("stand"):
            stand = expect(s["stand"], powers(SEED, AREA))
            self.sown_seeds = stand / (share(self.doc["germination"]) * share(s["emergence"]))
            return
        value, dims = read(s["rate"])
        if dims == powers(SEED, AREA):
            self.sown_seeds = value
        else:
            self.sown_mass = value

    def has_sowing(self):
        return self.sown_seeds is not None or self.sown_mass is not None

    def seeds_per_area(self, size=None):
        size = size or self.size
        return self.sown_seeds if self.sown_seeds is not None else self.sown_mass * size

    def mass_per_area(self, size=None):
        size = size or self.size
        return self.sown_mass if self.sown_mass is not None else self.sown_seeds / size

    def at_size(self, size):
        value, dims = read(self.doc["amount"])
        if dims == UNIT:
            value, dims = (value * self.unit_seeds, SEED) if self.unit_seeds else (value * self.unit_mass, MASS)
        elif dims == BU:
            value, dims = value * self.bushel, MASS
        elif dims == AREA:
            value, dims = value * self.mass_per_area(size), MASS
        mass = value if dims == MASS else value / size
        return mass, mass * size, mass / self.mass_per_area(size) if self.has_sowing() else None

    def sizes(self):
        """The sizes at which amounts are least and most."""
        t = self.tolerance or 0
        return self.size * (1 - t), self.size * (1 + t)

    def units(self):
        if self.unit_seeds:
            return self.seeds / self.unit_seeds
        return self.mass / self.unit_mass if self.unit_mass else None

    def packages(self):
        package = self.doc.get("package")
        if not package:
            return None
        value, dims = read(package["holds"])
        have = {"S": self.seeds, "M": self.mass}
        if dims == UNIT:
            return round_up(self.units() / value)
        if dims == BU:
            return round_up(self.mass / self.bushel / value)
        return round_up(have[next(iter(dims))] / value)

    def row(self, us):
        out = {"order": self.name, "lot": self.doc["lot"], "mass": write("seed_mass", self.mass, us),
               "seeds": write("seeds", self.seeds, us)}
        if self.units() is not None:
            out["units"] = write("units", self.units(), us)
        if self.bushel:
            out["bushels"] = write("bu", self.mass / self.bushel, us)
        if self.packages() is not None:
            out["packages"] = self.packages()
        if self.area is not None:
            out["area"] = write("area", self.area, us)
        if self.tolerance is not None:
            ends = [self.at_size(s)[0] for s in self.sizes()]
            out["mass_low"] = write("seed_mass", min(ends), us)
            out["mass_high"] = write("seed_mass", max(ends), us)
        return out
