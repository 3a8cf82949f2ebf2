"""Are they still alive: log10 survival over a temperature history, at planting and at the last day to plant."""
from decimal import Decimal as D, getcontext
from fractions import Fraction as F

from quantity import CELLS, SEED, TEMP, TIME, expect, point, powers, share, write

getcontext().prec = 50
TEN = D(10)


def dec(x):
    return D(x.numerator) / D(x.denominator)


def ten_to(x):
    return (x * TEN.ln()).exp()


def log10(x):
    return x.log10()


def after(job, order):
    """The job's `after`, replaced field by field by the order's."""
    out = dict(job.doc.get("after") or {})
    own = {k: v for k, v in (order.doc.get("after") or {}).items() if v is not None}
    if "plant_on" in own:
        out.pop("plant_after", None)
    if "plant_after" in own:
        out.pop("plant_on", None)
    out.update(own)
    return {k: v for k, v in out.items() if v is not None}


class Model:
    def __init__(self, doc):
        self.doc, self.name = doc, doc["model"]
        self.at = point(doc["at"]) if doc.get("at") else None
        self.z = expect(doc["z"], TEMP) if doc.get("z") else None

    def time(self, key):
        return dec(expect(self.doc[key], TIME))

    def log10_survival(self, tau):
        if self.name == "log_linear":
            return -tau / self.time("decimal_reduction")
        if self.name == "weibull":
            if tau == 0:
                return D(0)
            return -((tau / self.time("scale")).ln() * dec(F(self.doc["shape"]))).exp()
        f = dec(share(self.doc["fraction"]))
        fast, slow = -tau / self.time("fast"), -tau / self.time("slow")
        top = max(fast, slow)
        return top + log10(f * ten_to(fast - top) + (1 - f) * ten_to(slow - top))

    def speed(self, celsius):
        return D(1) if self.at is None else ten_to(dec((celsius - self.at) / self.z))

    def needs_history(self):
        return self.at is not None


def history(where):
    """[(duration in seconds, degrees C)] of the storage."""
    return [(dec(expect(p["for"], TIME)), point(p["at"])) for p in where.get("storage") or []]


def effective_time(model, periods, seconds):
    """tau after so many seconds: the periods in order, the last going on."""
    if not model.needs_history():
        return seconds
    tau, left = D(0), seconds
    for i, (length, celsius) in enumerate(periods):
        step = left if i == len(periods) - 1 else min(left, length)
        tau += step * model.speed(celsius)
        left -= step
    return tau


def cells_after(log_cells, model, periods, seconds):
    return log_cells + model.log10_survival(effective_time(model, periods, seconds))


def known(model, periods):
    return model is not None and (not model.needs_history() or bool(periods))


def model_of(t):
    return Model(t.living["survival"]) if t.living.get("survival") else None


def log_at_planting(job, t, order, log_cells):
    """log10 of the cells per seed at planting when `plant_after` says when; None if not known."""
    where = after(job, order)
    model, periods = model_of(t), history(where)
    if not where.get("plant_after") or not known(model, periods):
        return None
    return cells_after(log_cells, model, periods, dec(expect(where["plant_after"], TIME)))


def fill(job, t, order, out):
    from oracle import ANY, at_treating
    log_cells = log10(dec(at_treating(t, order)))
    log_left = log_at_planting(job, t, order, log_cells)
    if after(job, order).get("plant_on"):
        out["at_planting"] = ANY
    elif log_left is not None:
        out["at_planting"] = {"value": float(ten_to(log_left)), "unit": "CFU/seed"}
    if job.doc.get("work"):
        out["plant_by"] = ANY
        out["because"] = ANY


def crossing(t, log_cells, periods):
    """Seconds until the count meets the minimum: None if it never does within 1e12 s."""
    model = model_of(t)
    floor = t.living.get("minimum_at_planting")
    if not floor or not known(model, periods):
        return None
    goal = log10(dec(expect(floor, powers(CELLS, SEED))))
    if log_cells < goal:
        return D(0)
    low, high = D(0), D(10) ** 12
    if cells_after(log_cells, model, periods, high) >= goal:
        return None
    while high - low > D("1e-6"):
        middle = (low + high) / 2
        low, high = (middle, high) if cells_after(log_cells, model, periods, middle) >= goal else (low, middle)
    return low


def lives(job, t, order):
    """(on-seed life, least life a partner on the same order declares), seconds or None."""
    own = expect(t.living["on_seed_life"], TIME) if t.living.get("on_seed_life") else None
    partner = [expect(w["life"], TIME) for x in job.treatments if x is not t and job.treats(order, x)
               for w in x.doc.get("with_living") or [] if w["living"] == t.name and w.get("life")]
    return own, min(partner) if partner else None


def plant_by(job, t, order, log_cells):
    """(seconds after the first seed is treated, because), None when nothing limits it."""
    own, partner = lives(job, t, order)
    options = [(dec(x), name) for x, name in ((own, "on_seed_life"), (partner, "partner")) if x is not None]
    cross = crossing(t, log_cells, history(after(job, order)))
    if cross is not None:
        options.append((cross, "minimum"))
    return min(options, key=lambda o: o[0]) if options else None
