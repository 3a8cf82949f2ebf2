"""The findings that need no clock, as (severity, code, where)."""
from fractions import Fraction as F

import packs
import survival
from quantity import MASS, SEED, TIME, expect, point, powers, write
from tanks import PER_MASS

EPS = F(1, 10**9)
METALS = {"molybdenum", "zinc", "iron", "copper", "manganese", "cobalt", "nickel", "silver", "mercury"}
TEXT = {"message": "__unchecked__"}


class Findings:
    def __init__(self, job):
        self.job, self.found = job, []

    def add(self, severity, code, where):
        row = {"severity": severity, "code": code, "where": where, **TEXT}
        if row not in self.found:
            self.found.append(row)

    def each(self):
        """(order, treatment) pairs that meet."""
        for o in self.job.orders:
            for t in self.job.treatments:
                if self.job.treats(o, t):
                    yield o, t


def declared(t, living):
    for j, w in enumerate(t.doc.get("with_living") or []):
        if w["living"] == living.name:
            return j, w
    return None, None


def collect(job, plan):
    f = Findings(job)
    for step in (seed_state, tanks_shared, compatibility, agitation, labels, limits, liquids, colour, opened,
                 statements, mixes, storage, planting):
        step(f, job, plan)
    f.add("note", "treated_seed", "")
    return f.found


def unchecked(job):
    """Codes that only a clock or the batches can tell in this job: neither demanded nor refused."""
    from oracle import from_batches
    codes = {"missing_input", "pack_outlasts_pot_life", "product_expired", "out_of_time", "below_min_fill",
             "bound_reached"}
    if any(survival.after(job, o).get("plant_on") for o in job.orders):
        codes |= {"too_few_cells", "on_seed_life_exceeded"}
    for t in job.treatments:
        if t.doc.get("packs") and from_batches(job, t):
            codes.add("almost_covered")
            if any(p.get("on_hand") is not None for p in t.doc["packs"]):
                codes.add("short_of_product")
            if not any(p.get("on_hand") != 0 and fits(job, t, p) for p in t.doc["packs"]):
                codes.add("tank_too_small")
    return sorted(codes)


def seed_state(f, job, plan):
    for o in job.orders:
        if o.doc.get("temperature") and point(o.doc["temperature"]) <= 0 and job.liquid(o) > 0:
            f.add("stop", "frozen_seed", f"/orders/{o.index}/temperature")


def used(job, t):
    return bool(job.orders_of(t))


def pairs(job):
    """(living, other) in both directions, the living product never with itself."""
    for living in (t for t in job.treatments if t.living):
        for other in job.treatments:
            if other is not living:
                yield living, other


def meet(job, a, b):
    return any(job.treats(o, a) and job.treats(o, b) for o in job.orders)


def same_tank(job, a, b):
    return a.tank is not None and a.tank == b.tank and used(job, a) and used(job, b)


def tanks_shared(f, job, plan):
    for living, other in pairs(job):
        _, w = declared(other, living)
        if same_tank(job, living, other) and not (w and w.get("same_tank")):
            f.add("stop", "living_shares_tank", f"/treatments/{other.index}/tank")


def compatibility(f, job, plan):
    for living, other in pairs(job):
        j, w = declared(other, living)
        together = meet(job, living, other)
        if together and w is None:
            f.add("warn", "compatibility_unknown", f"/treatments/{other.index}")
        if together and w and w.get("same_seed") is False:
            f.add("stop", "unsafe_with_living", f"/treatments/{other.index}/with_living/{j}/same_seed")
        metals(f, job, living, other, w, together)


def metals(f, job, living, other, w, together):
    for j, c in enumerate(other.doc.get("constituents") or []):
        if not METALS & set(c.lower().replace(",", " ").split()):
            continue
        where = f"/treatments/{other.index}/constituents/{j}"
        if same_tank(job, living, other):
            f.add("stop", "metal_near_living", where)
        elif together:
            f.add("note" if w and w.get("same_seed") else "warn", "metal_near_living", where)


def agitation(f, job, plan):
    for t in job.treatments:
        tank = job.tank_of(t)
        if t.living and tank and used(job, t) and t.living.get("agitate") in (None, True) \
                and not tank.doc.get("agitated"):
            f.add("warn", "not_agitated", f"/tanks/{tank.index}/agitated")


def labels(f, job, plan):
    for o, t in f.each():
        crops = [c.lower() for c in t.doc.get("crops") or []]
        crop = o.doc.get("crop")
        if crops and crop and crop.lower() not in crops:
            f.add("stop", "crop_not_on_label", f"/orders/{o.index}/crop")
        rate = t.per_mass(o)
        if t.doc.get("max_rate") and rate > t.rate_per_mass(t.doc["max_rate"], o) * (1 + EPS):
            f.add("stop", "above_max_rate", f"/treatments/{t.index}/max_rate")
        if t.doc.get("min_rate") and rate < t.rate_per_mass(t.doc["min_rate"], o) * (1 - EPS):
            f.add("warn", "below_min_rate", f"/treatments/{t.index}/min_rate")


def limits(f, job, plan):
    for o in job.orders:
        for active, per_seed in job.actives(o).items():
            k = next((i for i, a in enumerate(job.doc.get("actives") or []) if a["active"] == active), None)
            if k is not None:
                one_active(f, job, o, active, per_seed, k)
        for j, a in enumerate(o.doc.get("on_seed") or []):
            if any(job.treats(o, t) and any(x["active"] == a["active"] for x in t.doc.get("actives") or [])
                   for t in job.treatments):
                f.add("note", "active_already_on_seed", f"/orders/{o.index}/on_seed/{j}")


def one_active(f, job, o, active, per_seed, k):
    doc = job.limits(active)
    limit, used_ = job.season(active)
    if limit is not None and o.has_sowing() and per_seed * o.seeds_per_area() + used_ > limit * (1 + EPS):
        f.add("stop", "season_limit", f"/actives/{k}/season_limit")
    if doc.get("max_per_seed") and per_seed > expect(doc["max_per_seed"], powers(MASS, SEED)) * (1 + EPS):
        f.add("stop", "active_limit", f"/actives/{k}/max_per_seed")
    if doc.get("max_per_mass") and per_seed * o.size > expect(doc["max_per_mass"], {}) * (1 + EPS):
        f.add("stop", "active_limit", f"/actives/{k}/max_per_mass")


def liquids(f, job, plan):
    low, high = job.treater.get("min_liquid"), job.treater.get("max_liquid")
    for o in job.orders:
        liquid = job.liquid(o)
        if high and liquid > expect(high, PER_MASS) * (1 + EPS):
            f.add("warn", "liquid_too_high", f"/orders/{o.index}")
        if low and 0 < liquid < expect(low, PER_MASS) * (1 - EPS):
            f.add("warn", "liquid_too_low", f"/orders/{o.index}")


def colour(f, job, plan):
    for o in job.orders:
        on = [t for t in job.treatments if job.treats(o, t)]
        actives = o.doc.get("on_seed") or any(t.doc.get("actives") for t in on)
        if actives and not any(t.doc.get("colourant") for t in on):
            f.add("warn", "no_colourant", f"/orders/{o.index}")


def opened(f, job, plan):
    for t in job.treatments:
        orders = job.orders_of(t)
        if not t.doc.get("packs") or not orders:
            continue
        for j, pack in enumerate(t.doc["packs"]):
            for o in orders:
                a, b = t.stated_coverage(pack, o), t.computed_coverage(pack, o)
                if a is not None and b is not None and abs(a / b - 1) > F(2, 100):
                    f.add("warn", "coverage_disagrees", f"/treatments/{t.index}/packs/{j}/covers")
        stock(f, job, t, orders)


def stock(f, job, t, orders):
    from oracle import from_batches
    shares = packs.fractions_covered(t, orders)
    if all(p.get("on_hand") is not None for p in t.doc["packs"]):
        if sum(s * p["on_hand"] for s, p in zip(shares, t.doc["packs"])) < 1 - EPS:
            f.add("stop", "short_of_product", f"/treatments/{t.index}/packs")
            return
    if not from_batches(job, t):
        counts, _ = packs.choose(t, orders)
        if packs.almost_covered(shares, counts):
            f.add("note", "almost_covered", f"/treatments/{t.index}/packs")


def statements(f, job, plan):
    for t, row in zip(job.treatments, plan["treatments"]):
        for o in row["orders"]:
            for j, s in enumerate(o.get("statements", [])):
                off = abs(s["difference"])
                where = f"/treatments/{t.index}/also_stated/{j}"
                if off > 0.02:
                    f.add("warn" if off > 0.10 else "note", "statements_disagree", where)


def mixes(f, job, plan):
    for k in job.tanks:
        where = f"/tanks/{k.index}"
        if len(k.recipes(job.orders, job.treats)) > 1:
            f.add("note", "recipe_changes", where)
        for o in job.orders:
            if not k.mix(o, job.treats)[0] or k.charge(o, job.treater, job.treats) is not None:
                continue
            flow = k.flow(o, job.treater, job.treats)
            if flow is not None and k.pump_out_of_range(flow):
                f.add("warn", "pump_out_of_range", where)
        smallest_set(f, job, k, where)


def smallest_set(f, job, k, where):
    living = [t for t in k.treatments if t.living and t.doc.get("packs") and used(job, t)]
    if k.hold_up >= k.capacity and k.treatments:
        f.add("stop", "tank_too_small", where)
    for t in living[:1]:
        for members, own, _ in k.recipes(job.orders, job.treats):
            if t.name not in own:
                continue
            sets = [amount(t, p, members) for p in t.doc["packs"]]
            if min(sets) / own[t.name] > k.capacity * (1 + EPS):
                f.add("stop", "tank_too_small", where)


def fits(job, t, pack):
    """Whether one set of a living product makes a mix that its tank holds, in every recipe."""
    k = job.tank_of(t)
    recipes = [(members, own[t.name]) for members, own, _ in k.recipes(job.orders, job.treats) if t.name in own]
    return not t.living or all(amount(t, pack, m) / share <= k.capacity * (1 + EPS) for m, share in recipes)


def amount(t, pack, orders):
    """Volume that a set adds to a tank."""
    stated = t.set_amount(pack)
    if stated is None:
        stated = t.coverage(pack, orders[0]) * t.per_mass(orders[0])
    return t.to_kind(stated, t.kind, "V")


def storage(f, job, plan):
    for o, t in f.each():
        if not t.living:
            continue
        own = o.doc.get("after") or {}
        where = survival.after(job, o)
        base = f"/orders/{o.index}/after" if own.get("storage") else "/after"
        most = point(t.living["store_below"]) if t.living.get("store_below") else 25
        temps = [point(p["at"]) for p in where.get("storage") or []]
        hot = next((j for j, c in enumerate(temps) if c > most), None)
        warm = next((j for j, c in enumerate(temps) if c > 10), None)
        if hot is not None:
            f.add("warn", "storage_too_warm", f"{base}/storage/{hot}/at")
        elif warm is not None:
            f.add("note", "storage_too_warm", f"{base}/storage/{warm}/at")
        if where.get("in_sunlight"):
            base = f"/orders/{o.index}/after" if own.get("in_sunlight") else "/after"
            f.add("warn", "sunlight", base + "/in_sunlight")


def planting(f, job, plan):
    from oracle import at_treating, minimum
    for o, t in f.each():
        if not t.living:
            continue
        where = survival.after(job, o)
        if where.get("plant_on"):
            continue  # needs the clock
        log_cells = survival.log10(survival.dec(at_treating(t, o)))
        left = survival.log_at_planting(job, t, o, log_cells)
        floor = minimum(t)
        if floor is not None:
            goal = survival.log10(survival.dec(floor * (1 - EPS)))
            if (left if left is not None else log_cells) < goal:
                f.add("stop", "too_few_cells", f"/treatments/{t.index}/living")
        lives = [x for x in survival.lives(job, t, o) if x is not None]
        if where.get("plant_after") and lives and expect(where["plant_after"], TIME) > min(lives):
            f.add("stop", "on_seed_life_exceeded", f"/treatments/{t.index}/living")
