"""The plan document from a job document: everything that needs no clock."""
import json
from fractions import Fraction as F

import findings
import packs
import survival
import tanks
from dose import Treatment
from quantity import AREA, CELLS, MASS, SEED, expect, powers, stated, write
from seed import Order

ANY = "__unchecked__"  # the comparer accepts whatever stands there


def load(text):
    return json.loads(text, parse_float=F, parse_constant=None)


class Job:
    def __init__(self, doc):
        self.doc = doc
        self.us = doc.get("units") == "us"
        self.orders = [Order(o, i) for i, o in enumerate(doc["orders"])]
        self.treatments = [Treatment(t, i) for i, t in enumerate(doc["treatments"])]
        self.treater = doc.get("treater") or {}
        self.tanks = [tanks.Tank(t, i, self.treatments, tanks.tolerance(doc))
                      for i, t in enumerate(doc.get("tanks") or [])]

    def treats(self, order, t):
        listed = order.doc.get("treat")
        return listed is None or t.name in listed

    def orders_of(self, t):
        return [o for o in self.orders if self.treats(o, t)]

    def needed(self, t):
        return sum((t.need(o) for o in self.orders_of(t)), F(0))

    def tank_of(self, t):
        return next((k for k in self.tanks if k.name == t.tank), None)

    def liquid(self, order):
        return sum((k.slurry(order, self.treats) for k in self.tanks), F(0))

    # -- actives ---------------------------------------------------------------
    def actives(self, order):
        """Active per seed, in order of first appearance on this order."""
        out = {}
        for t in self.treatments:
            if not self.treats(order, t):
                continue
            for a in t.doc.get("actives") or []:
                content = t.active_per_amount(a["active"])
                if content is not None:
                    per_seed = t.per_mass(order) * content / order.size
                    out[a["active"]] = out.get(a["active"], F(0)) + per_seed
        for a in order.doc.get("on_seed") or []:
            value = expect(a["per_seed"], powers(MASS, SEED))
            out[a["active"]] = out.get(a["active"], F(0)) + value
        return out

    def limits(self, active):
        return next((a for a in self.doc.get("actives") or [] if a["active"] == active), {})

    def season(self, active):
        """(limit, used) per area."""
        doc = self.limits(active)
        per_area = powers(MASS, AREA)
        limit = expect(doc["season_limit"], per_area) if doc.get("season_limit") else None
        return limit, expect(doc["season_used"], per_area) if doc.get("season_used") else F(0)


def dose_row(job, t, o):
    us, k, m = job.us, t.kind, t.per_mass(o)
    out = {"order": o.name, "per_mass": write(k + "/mass", m, us), "per_seed": write(k + "/seed", m / o.size, us)}
    unit = o.unit_seeds or t.label_unit
    if unit:
        out["per_unit"] = write(k + "/unit", m / o.size * unit, us)
    if o.bushel:
        out["per_bushel"] = write(k + "/bu", m * o.bushel, us)
    if o.has_sowing():
        out["per_area"] = write(k + "/area", m * o.mass_per_area(), us)
    if t.doc.get("also_stated"):
        out["statements"] = [statement(job, t, o, s) for s in t.doc["also_stated"]]
    out["actives"] = active_rows(job, t, o)
    if t.living:
        out["living"] = living_row(job, t, o)
    return out


def by_basis(basis, order):
    """Whether the dose goes with the mass or with the count of the seed."""
    if basis == "area":
        return "seed" if order.sown_seeds is not None else "mass"
    return basis


def statement(job, t, o, q):
    governing, gb = t.governing(o)
    other, ob = t.normal(q, o)
    gm, om = t.spread(governing, gb, o, o.size), t.spread(other, ob, o, o.size)
    out = {"stated": stated(q), "difference": float(om / gm - 1)}
    kinds = {by_basis(gb, o): gm, by_basis(ob, o): om}
    if len(kinds) == 2:
        # per mass = m, per seed = s/size: they agree at the size m/(s/size)
        out["implied_size"] = write("size", kinds["mass"] / (kinds["seed"] / o.size), job.us)
    return out


def active_rows(job, t, o):
    rows = []
    for a in t.doc.get("actives") or []:
        content = t.active_per_amount(a["active"])
        if content is None:
            continue
        m = t.per_mass(o) * content
        row = {"active": a["active"], "per_mass": write("A/mass", m, job.us),
               "per_seed": write("A/seed", m / o.size, job.us)}
        if o.has_sowing():
            row["per_area"] = write("A/area", m * o.mass_per_area(), job.us)
        rows.append(row)
    return rows


def at_treating(t, o):
    return t.titre() * t.per_mass(o) / o.size * t.recovery()


def minimum(t):
    text = t.living.get("minimum_at_planting")
    return expect(text, powers(CELLS, SEED)) if text else None


def living_row(job, t, o):
    out = {"at_treating": write("cells", at_treating(t, o), job.us)}
    if minimum(t) is not None:
        out["minimum"] = write("cells", minimum(t), job.us)
    survival.fill(job, t, o, out)
    return out


def treatment_row(job, t):
    orders = job.orders_of(t)
    kind = "liquid" if t.kind == "V" else "dry"
    out = {"product": t.name}
    if t.tank:
        out["tank"] = t.tank
    out["needed"] = write(kind, job.needed(t), job.us)
    if any(o.tolerance is not None for o in orders):
        ends = [[t.need(o, s) for s in o.sizes()] for o in orders]
        out["needed_low"] = write(kind, sum(min(e) for e in ends), job.us)
        out["needed_high"] = write(kind, sum(max(e) for e in ends), job.us)
    out["orders"] = [dose_row(job, t, o) for o in orders]
    out.update(pack_rows(job, t, orders, kind))
    return out


def from_batches(job, t):
    """Packs that only the batches can tell: a tank that throws product away or holds whole sets."""
    tank = job.tank_of(t)
    if not tank:
        return False
    living = any(x.living for x in tank.treatments)
    return living or tank.hold_up > 0


def pack_rows(job, t, orders, kind):
    if not t.doc.get("packs") or not orders:
        return {"packs": []}
    if from_batches(job, t):
        return {"packs": ANY, "leftover": ANY, "cost_opened": ANY, "cost_applied": ANY}
    counts, enough = packs.choose(t, orders)
    out = {"packs": packs.rows(t, orders, counts, write, job.us)}
    needed = job.needed(t)
    opened = packs.opened_amount(t, orders, counts, needed)
    if enough:
        out["leftover"] = write(kind, opened - needed, job.us)
    cost = packs.cost_opened(t, counts)
    if cost is not None:
        out["cost_opened"] = float(cost)
        out["cost_applied"] = float(cost * needed / opened)
    return out


def actives_rows(job):
    rows = []
    for o in job.orders:
        for active, per_seed in job.actives(o).items():
            row = {"active": active, "order": o.name, "per_seed": write("A/seed", per_seed, job.us),
                   "per_mass": write("A/mass", per_seed * o.size, job.us)}
            limit, used = job.season(active)
            if o.has_sowing():
                per_area = per_seed * o.seeds_per_area()
                row["per_area"] = write("A/area", per_area, job.us)
                if limit is not None:
                    row["share_of_season_limit"] = float((per_area + used) / limit)
            if limit is not None:
                row["max_sowing"] = write("sowing", max(F(0), limit - used) / per_seed, job.us)
            rows.append(row)
    return rows


def dry_rows(job):
    out = []
    for t in job.treatments:
        orders = job.orders_of(t)
        if t.tank or not orders:
            continue
        mass = [{"order": o.name, "mass": write("dry", t.to_kind(t.need(o), t.kind, "M"), job.us)} for o in orders]
        out.append({"product": t.name, "orders": mass})
    return out


def total(values):
    values = list(values)
    return None if any(v is None for v in values) else sum(values)


def cost_row(job, rows):
    if any(r.get("packs") == ANY for r in rows):
        return ANY
    priced = [r for r in rows if "cost_opened" in r]
    if not priced:
        return None
    applied = sum(r["cost_applied"] for r in priced)
    out = {"opened": sum(r["cost_opened"] for r in priced), "applied": applied}
    if len({(o.unit_seeds, o.unit_mass) for o in job.orders}) == 1 and job.orders[0].units() is not None:
        out["per_unit"] = applied / float(total(o.units() for o in job.orders))
    area = total(o.area for o in job.orders)
    if area is not None:
        out["per_area"] = write_area(job, applied, area)
    return out


def write_area(job, applied, area):
    return applied / write("area", area, job.us)["value"]


def order_row(job, o):
    out = o.row(job.us)
    out["liquid"] = {"per_mass": write("V/mass", job.liquid(o), job.us)}
    limit = job.treater.get("max_liquid")
    if limit:
        out["liquid"]["limit"] = write("V/mass", expect(limit, tanks.PER_MASS), job.us)
    out["record"] = ANY
    return out


def plan(doc):
    job = Job(doc)
    rows = [treatment_row(job, t) for t in job.treatments]
    out = {"format": 1, "hilum": ANY, "units": doc.get("units") or "metric",
           "orders": [order_row(job, o) for o in job.orders], "treatments": rows,
           "actives": actives_rows(job), "tanks": []}
    if doc.get("title") is not None:
        out["title"] = doc["title"]
    for k in job.tanks:
        row = k.rows(job.orders, job.treater, job.treats, job.us)
        row["batches"] = ANY
        out["tanks"].append(row)
    dry = dry_rows(job)
    if dry:
        out["dry"] = dry
    cost = cost_row(job, rows)
    if cost is not None:
        out["cost"] = cost
    out["findings"] = findings.collect(job, out)
    out["unchecked_codes"] = findings.unchecked(job)
    return out
