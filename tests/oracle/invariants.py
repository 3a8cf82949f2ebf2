"""What every plan's batches must hold, whatever the search found: checked on a plan and its job."""
import clock
import findings
import packs
import survival
from datetime import datetime, timedelta
from fractions import Fraction as F
from oracle import Job, at_treating
from quantity import TIME, VOL, MASS, expect, write

EPS = 1e-9
UNFINISHED = {"out_of_time", "short_of_product", "tank_too_small", "bound_reached"}
BASE = {"L": 1e-3, "fl oz": 2.95735295625e-5, "kg": 1.0, "lb": 0.45359237}


def base(q):
    return q["value"] * BASE[q["unit"]]


def same(a, b, of=0.0):
    return abs(a - b) <= EPS * max(abs(a), abs(b), of)


class Check:
    def __init__(self, doc, plan):
        self.job, self.plan, self.out, self.soft = Job(doc), plan, [], []
        self.work = clock.shifts(doc)
        self.stops = {f["code"] for f in plan["findings"] if f["severity"] == "stop"}
        self.unfinished = bool(self.stops & UNFINISHED)
        self.order = {o.name: o for o in self.job.orders}
        self.place = {o.name: i for i, o in enumerate(self.job.orders)}

    def say(self, where, text):
        self.out.append(f"{where}: {text}")

    # -- one tank ----------------------------------------------------------------
    def tank(self, k, row):
        at = f"/tanks/{k.index}"
        treated, last = {}, -1
        for i, b in enumerate(row["batches"]):
            here = f"{at}/batches/{i}"
            if b["number"] != i + 1:
                self.say(here, f"number {b['number']}")
            self.volumes(k, b, here)
            self.recipe(k, row, b, here)
            for o in b["orders"]:
                treated[o["order"]] = treated.get(o["order"], 0.0) + base(o["mass"])
                if self.place[o["order"]] < last:
                    self.say(here, f"order {o['order']} out of turn")
                last = max(last, self.place[o["order"]])
            self.instants(k, row, i, here)
        for o in self.job.orders:
            self.seed_adds_up(k, o, treated.get(o.name, 0.0), at)

    def seed_adds_up(self, k, o, mass, at):
        due = float(o.mass) if k.mix(o, self.job.treats)[0] else 0.0
        if mass > due * (1 + EPS) + EPS or (mass < due * (1 - 1e-8) and not self.unfinished):
            self.say(at, f"order {o.name}: batches treat {mass} kg of {due}")

    def volumes(self, k, b, here):
        mixed, applied, hold, lost = (base(b[x]) for x in ("mixed", "applied", "hold_up", "discarded"))
        if not same(mixed, applied + hold + lost):
            self.say(here, f"mixed {mixed} is not applied {applied} + hold_up {hold} + discarded {lost}")
        if not same(sum(base(p["volume"]) for p in b["pour"]), mixed):
            self.say(here, "the pours do not add up to mixed")
        if mixed > float(k.capacity) * (1 + EPS):
            self.say(here, f"mixed {mixed} exceeds the capacity")
        if min(mixed, applied, hold, lost) < -EPS * mixed:
            self.say(here, "a negative volume")
        if hold > float(k.hold_up) * (1 + EPS):
            self.say(here, f"hold_up {hold} above the tank's")
        due = sum(base(o["mass"]) * float(k.slurry(self.order[o["order"]], self.job.treats)) for o in b["orders"])
        if not same(due, applied, mixed * 10):
            self.say(here, f"applied {applied}, the orders take {due}")

    def recipe(self, k, row, b, here):
        names = {o["order"] for o in b["orders"]}
        fits = [r for r in row["recipes"] if names <= set(r["orders"])]
        if not fits:
            self.say(here, "its orders do not share a recipe")
            return
        shares = {p.get("product", "water"): p["share"] for p in fits[0]["parts"]}
        mixed = base(b["mixed"])
        for p in b["pour"]:
            name = p.get("product", "water")
            if name not in shares or not same(base(p["volume"]), shares[name] * mixed, mixed):
                self.say(here, f"pour of {name} is not its recipe share")
            t = next((t for t in k.treatments if t.name == name), None)
            if p.get("mass") and t is not None and t.density \
                    and not same(base(p["mass"]), base(p["volume"]) * float(t.density)):
                self.say(here, f"pour of {name}: mass and volume disagree")
        self.sets(k, b, here, fits[0])

    def sets(self, k, b, here, recipe):
        present = {p.get("product") for p in b["pour"]}
        ruling = next((t for t in k.treatments if t.living and t.doc.get("packs") and t.name in present), None)
        if ruling is None:
            if b["sets"]:
                self.say(here, "sets without a living product in packs")
            return
        total = 0.0
        for s in b["sets"]:
            if s["sets"] != int(s["sets"]):
                self.say(here, "not a whole number of sets")
            pack = next(p for p in ruling.doc["packs"] if p["pack"] == s["pack"])
            total += s["sets"] * self.set_volume(ruling, pack, recipe)
        poured = next(base(p["volume"]) for p in b["pour"] if p.get("product") == ruling.name)
        if not same(total, poured):
            self.say(here, f"{ruling.name}: sets hold {total}, poured {poured}")

    def set_volume(self, t, pack, recipe):
        amount = t.set_amount(pack)
        if amount is None:
            first = self.order[recipe["orders"][0]]
            amount = t.coverage(pack, first) * t.per_mass(first)
        return float(t.to_kind(amount, t.kind, "V"))

    # -- time -----------------------------------------------------------------------
    def instants(self, k, row, i, here):
        b = row["batches"][i]
        if "mix_at" not in b:
            return
        mix, ready = clock.seconds(b["mix_at"]), clock.seconds(b["ready_at"])
        done = clock.seconds(b["done_at"]) if "done_at" in b else None
        mixing = expect(k.doc["mixing"], TIME) if k.doc.get("mixing") else F(0)
        if ready < mix + mixing or ready > mix + mixing + 1:
            self.say(here, f"ready_at is not mix_at + {float(mixing)} s")
        if not any(s <= mix and ready <= e + 1 for s, e in self.work):
            self.say(here, "the mix is not within one shift")
        if mix.denominator != 1:
            self.say(here, "mix_at is no whole second")
        if done is not None and done < ready:
            self.say(here, "done before ready")
        if "use_by" in b:
            self.pot_life(k, b, here, mix, done)
        if i and k.doc.get("refill") != "top_up" and "done_at" in row["batches"][i - 1] \
                and mix < clock.seconds(row["batches"][i - 1]["done_at"]) - 1:
            self.say(here, "mixed before the last batch was used up")

    def pot_life(self, k, b, here, mix, done):
        names = {p.get("product") for p in b["pour"]}
        lives = [expect(t.living["pot_life"], TIME) for t in k.treatments
                 if t.living and t.name in names and t.living.get("pot_life")]
        use_by = clock.seconds(b["use_by"])
        if lives and not mix + min(lives) - 1 <= use_by <= mix + min(lives):
            self.say(here, "use_by is not mix_at + pot life, rounded down")
        if done is not None and done > use_by:
            self.say(here, "done after use_by")

    def timeline(self):
        """The earliest the treater can be through, given when each mix is ready: {order: first seed}."""
        starts, at = {}, self.work[0][0] if self.work else None
        if at is None or any(clock.rate(self.job, o) is None for o in self.job.orders):
            return None
        queue = {k.index: self.portions(k) for k in self.job.tanks}
        for n, o in enumerate(self.job.orders):
            if n and clock.changeover(self.job):
                at = clock.forward(self.work, at, clock.changeover(self.job))
            at = at and self.run_order(o, queue, at, starts)
            if at is None:
                return None
        return starts

    def portions(self, k):
        """Order name to the batches that serve it, as [mass, batch]."""
        out = {}
        for i, b in enumerate(self.plan["tanks"][k.index]["batches"]):
            for o in b["orders"]:
                portion = [base(o["mass"]), b, o is b["orders"][-1], f"/tanks/{k.index}/batches/{i}"]
                out.setdefault(o["order"], []).append(portion)
        return out

    def run_order(self, o, queue, at, starts):
        lists = [q[o.name] for q in queue.values() if o.name in q]
        left = float(o.mass)
        speed = clock.rate(self.job, o)
        while left > EPS * float(o.mass):
            heads = [p[0] for p in lists if p]
            if len(heads) < len(lists):
                return None
            for _, b, _, _ in heads:
                if "ready_at" in b:
                    at = max(at, clock.seconds(b["ready_at"]))
            step = min([left] + [h[0] for h in heads])
            at = clock.forward(self.work, at, F(0)) if not any(s <= at < e for s, e in self.work) else at
            begin = next((max(at, s) for s, e in self.work if e > at), None)
            starts.setdefault(o.name, begin)
            at = clock.forward(self.work, at, F(step) / speed)
            if at is None:
                return None
            left -= step
            self.consume(lists, step, at)
        return at

    def consume(self, lists, step, at):
        for p in lists:
            p[0][0] -= step
            if p[0][0] <= 1e-9 * step:
                _, b, last, where = p.pop(0)
                if last and "done_at" in b:
                    off = clock.seconds(b["done_at"]) - at
                    if off < F(-3, 2):
                        self.say(where, f"done_at {float(-off):.0f} s before the treater can be")
                    elif off > 3:
                        self.soft.append(f"{where}: done_at {float(off):.0f} s after the earliest possible")

    # -- packs from the batches ---------------------------------------------------------
    def opened(self):
        for t, row in zip(self.job.treatments, self.plan["treatments"]):
            k = self.job.tank_of(t)
            if not k or not t.doc.get("packs") or not self.job.orders_of(t):
                continue
            batches = self.plan["tanks"][k.index]["batches"]
            have = {p["pack"]: p["sets"] for p in row["packs"] if p["sets"]}
            used = {}
            for b in batches:
                for s in b["sets"]:
                    if any(s["pack"] == p["pack"] for p in t.doc["packs"]):
                        used[s["pack"]] = used.get(s["pack"], 0) + s["sets"]
            rules = next(x for x in k.treatments if x.doc.get("packs") and (x.living or x is t)) is t and t.living
            if rules and not batches and self.is_too_small(k):
                used = self.chosen(t)  # no mix is planned: opened is what the need takes
            if rules and used != have:
                self.say(f"/treatments/{t.index}/packs", f"opened {have}, the batches use {used}")
            if rules:
                self.shortage(t)
            if not t.living:
                self.covers_poured(t, batches, have)
            for p in t.doc["packs"]:
                if p.get("on_hand") is not None and have.get(p["pack"], 0) > p["on_hand"]:
                    self.say(f"/treatments/{t.index}/packs", f"more of {p['pack']} than on hand")

    def shortage(self, t):
        """Where a pack that fits does not run out, more sets of others can only save time that lacks, and that is told."""
        here = f"/treatments/{t.index}/packs"
        told = any(f["code"] == "short_of_product" and f["where"] == here for f in self.plan["findings"])
        endless = any(p.get("on_hand") is None and findings.fits(self.job, t, p) for p in t.doc["packs"])
        if told and endless and "out_of_time" not in self.stops:
            self.say(here, "short of product, but a pack that fits does not run out, and there is time")

    def is_too_small(self, k):
        at = f"/tanks/{k.index}"
        return any(f["code"] == "tank_too_small" and f["where"] == at for f in self.plan["findings"])

    def chosen(self, t):
        counts, _ = packs.choose(t, self.job.orders_of(t))
        return {p["pack"]: n for p, n in zip(t.doc["packs"], counts) if n}

    def covers_poured(self, t, batches, have):
        poured = sum(base(p["volume"]) for b in batches for p in b["pour"] if p.get("product") == t.name)
        needed = float(t.to_kind(self.job.needed(t), t.kind, "V"))
        orders = self.job.orders_of(t)
        shares = packs.fractions_covered(t, orders)
        covered = sum(float(s) * have.get(p["pack"], 0) for s, p in zip(shares, t.doc["packs"]))
        here = f"/treatments/{t.index}/packs"
        if covered * needed < poured * (1 - 1e-8) and "short_of_product" not in self.stops:
            self.soft.append(f"{here}: cover {covered * needed} m3, {poured} m3 are poured")
        counts, enough = packs.choose(t, orders, F(max(0.0, poured / needed - 1)))
        best = {p["pack"]: n for p, n in zip(t.doc["packs"], counts) if n}
        if enough and best != have:
            self.soft.append(f"{here}: opened {have}, for what is poured {best} would be chosen")

    # -- planting -------------------------------------------------------------------------
    def planting(self, starts):
        for t, row in zip(self.job.treatments, self.plan["treatments"]):
            for o, r in zip(self.job.orders_of(t), row["orders"]):
                if t.living and o.name in starts and starts[o.name] is not None and not self.unfinished:
                    self.one_planting(t, o, r.get("living", {}), starts[o.name], f"/treatments/{t.index}/orders")

    def one_planting(self, t, o, row, start, here):
        log_cells = survival.log10(survival.dec(at_treating(t, o)))
        best = survival.plant_by(self.job, t, o, log_cells)
        here = f"{here}/{o.name}/living"
        if (best is None) != ("plant_by" not in row):
            self.say(here, f"plant_by {row.get('plant_by')}, oracle {best}")
        elif best is not None:
            due = float(start) + float(best[0])
            if not due - 3 <= float(clock.seconds(row["plant_by"])) <= due + 1:
                when = datetime.fromtimestamp(due).astimezone() if due < 4e9 else due
                self.say(here, f"plant_by {row['plant_by']}, oracle {when} because {best[1]}")
            if row.get("because") != best[1]:
                self.soft.append(f"{here}: because {row.get('because')}, oracle {best[1]}")
        self.on_day(t, o, row, start, here, log_cells)

    def on_day(self, t, o, row, start, here, log_cells):
        where = survival.after(self.job, o)
        model, periods = survival.model_of(t), survival.history(where)
        if not where.get("plant_on") or not survival.known(model, periods):
            return
        wait = clock.seconds(where["plant_on"]) - start
        if wait < 0:
            return
        log_left = survival.cells_after(log_cells, model, periods, survival.dec(wait))
        ours, theirs = float(survival.ten_to(log_left)), row.get("at_planting", {}).get("value", -1.0)
        if abs(ours - theirs) > 1e-5 * ours:
            self.say(here, f"at_planting {theirs}, oracle {ours}")


def check(doc, plan):
    """(violations, soft remarks) as lines."""
    c = Check(doc, plan)
    for k, row in zip(c.job.tanks, plan["tanks"]):
        c.tank(k, row)
    c.opened()
    starts = c.timeline()
    if starts:
        c.planting(starts)
    return c.out, c.soft
