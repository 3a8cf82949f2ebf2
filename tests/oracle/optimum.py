"""The best batches of one tank with a living product, by trying every fill: against which a search is measured.

Scope: one tank, one recipe, no hold-up, shifts, orders in running order, enough stock. Wanted in this order: most
seed treated, least discarded, fewest mixes, earliest finish. A delay inside a shift never helps one tank (what it gains
after use_by it loses before), so a mix starts as soon as it can or at the start of a later shift.
"""
from fractions import Fraction as F
from functools import lru_cache
from itertools import product
from math import ceil

import clock
from oracle import Job
from quantity import TIME, expect


class Day:
    def __init__(self, doc):
        self.job = Job(doc)
        self.tank = self.job.tanks[0]
        self.t = next(t for t in self.tank.treatments if t.living)
        self.orders = self.job.orders
        self.work = clock.shifts(doc)
        self.mixing = expect(self.tank.doc["mixing"], TIME) if self.tank.doc.get("mixing") else F(0)
        life = self.t.living.get("pot_life")
        self.life = expect(life, TIME) if life else F(10**9)
        self.change = clock.changeover(self.job)
        self.slurry = self.tank.slurry(self.orders[0], self.job.treats)
        self.share = self.tank.shares(self.orders[0], self.job.treats)[0][self.t.name]
        self.fills = self.every_fill()
        self.ends = []
        total = F(0)
        for o in self.orders:
            total += o.mass
            self.ends.append(total)

    def every_fill(self):
        """Mix volumes that whole sets make within the capacity."""
        sets = [self.t.to_kind(self.t.set_amount(p), self.t.kind, "V") / self.share for p in self.t.doc["packs"]]
        counts = [range(int(self.tank.capacity / s * (1 + F(1, 10**9))) + 1) for s in sets]
        volumes = {sum(n * s for n, s in zip(c, sets)) for c in product(*counts)}
        return sorted(v for v in volumes if 0 < v <= self.tank.capacity * (1 + F(1, 10**9)))

    def starts(self, at):
        """Instants at which a mix may start from `at` on: as soon as it fits a shift, then each shift's start."""
        out = []
        for begin, end in self.work:
            start = F(ceil(max(begin, at)))
            if start + self.mixing <= end and max(begin, at) <= end:
                out.append(start)
        return out

    def order_at(self, position):
        return next(i for i, end in enumerate(self.ends) if position < end)

    def run(self, position, at, volume, use_by):
        """Treat from `position` until the volume, the life or the seed is used up.

        (position, instant of the last seed, left, instant from which the tank is free). A changeover that outlasts the
        mix goes on while what is left of it expires."""
        end = position + volume / self.slurry
        while position < self.ends[-1] and position < end:
            i = self.order_at(position)
            speed = clock.rate(self.job, self.orders[i])
            step = min(self.ends[i], end) - position
            stop = clock.forward(self.work, at, step / speed)
            if stop is None or stop > use_by:
                time = clock.between(self.work, at, use_by)
                return position + time * speed, use_by, end - position - time * speed, use_by
            position, at = position + step, stop
            if position == self.ends[i] and position < min(self.ends[-1], end):
                after = clock.forward(self.work, at, self.change)
                if after is None or after > use_by:
                    return position, at, end - position, use_by
                at = after
        return position, at, end - position, at

    def solve(self):
        """(seed mass treated, mix volume discarded, mixes, finish in seconds)."""

        @lru_cache(maxsize=None)
        def best(position, at, free):
            # least of (-treated, discarded, mixes, finish)
            if position >= self.ends[-1]:
                return (-position, F(0), 0, at)
            out = (-position, F(0), 0, at)
            for start in self.starts(max(free, self.ready_for(position, at))):
                ready = start + self.mixing
                for v in self.fills:
                    use_by = F(int(start + self.life))
                    p, t, left, tank = self.run(position, ready, v, use_by)
                    if p <= position:
                        continue
                    treated, lost, mixes, finish = best(p, t, tank)
                    option = (treated, lost + left * self.slurry, mixes + 1, finish if mixes else t)
                    out = min(out, option)
            return out

        treated, lost, mixes, finish = best(F(0), self.work[0][0], self.work[0][0])
        return -treated, lost, mixes, finish

    def ready_for(self, position, at):
        """After the changeover, when the next seed belongs to another order than the last."""
        if position in self.ends[:-1] and position:
            after = clock.forward(self.work, at, self.change)
            return after if after is not None else F(10**12)
        return at


def solve(doc):
    return Day(doc).solve()


def of_plan(doc, plan):
    """The same four figures of a plan."""
    from invariants import base
    batches = plan["tanks"][0]["batches"]
    treated = sum(base(o["mass"]) for b in batches for o in b["orders"])
    lost = sum(base(b["discarded"]) for b in batches)
    finish = max((clock.seconds(b["done_at"]) for b in batches), default=clock.shifts(doc)[0][0])
    return treated, lost, len(batches), finish


def compare(doc, plan):
    """Lines where the plan falls short of the optimum, or claims more than can be."""
    ours, theirs = solve(doc), of_plan(doc, plan)
    names = ("seed treated, kg", "mix discarded, m3", "mixes", "finish, s")
    slack = (1e-9 * float(ours[0]), 1e-9 * float(Day(doc).tank.capacity), 0, 1.5)
    total = float(Day(doc).ends[-1])
    for name, a, b, s in zip(names, theirs, ours, slack):
        # what is left untreated when time runs out has no finish
        if name == "finish, s" and float(ours[0]) < total * (1 - 1e-9):
            continue
        if abs(float(a) - float(b)) > s:
            return [f"{name}: plan {float(a)!r}, optimum {float(b)!r}"]
    return []
