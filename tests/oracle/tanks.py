"""What goes in each tank for each order: recipe, slurry, flow, pump setting, charge."""
from fractions import Fraction as F

from quantity import MASS, TIME, VOL, expect, powers, share, write

EPS = F(1, 10**9)
PER_MASS = powers(VOL, MASS)
FLOW = powers(VOL, TIME)


class Tank:
    def __init__(self, doc, index, treatments, tolerance):
        self.doc, self.index, self.name = doc, index, doc["tank"]
        self.treatments = [t for t in treatments if t.tank == self.name]
        self.tolerance = tolerance
        self.capacity = expect(doc["capacity"], VOL)
        self.hold_up = expect(doc["hold_up"], VOL) if doc.get("hold_up") else F(0)

    def mix(self, order, treats):
        """(product, volume per seed mass) in the job's order, then water; empty if nothing is drawn."""
        parts = [(t, t.to_kind(t.per_mass(order), t.kind, "V")) for t in self.treatments if treats(order, t)]
        if not parts:
            return [], F(0)
        total = sum(v for _, v in parts)
        water = F(0)
        if self.doc.get("make_up_to"):
            water = expect(self.doc["make_up_to"], PER_MASS) - total
            if water < -EPS * total:
                raise ValueError(f"/tanks/{self.index}/make_up_to is below the products' volume")
            water = water if water > EPS * total else F(0)
        elif self.doc.get("water"):
            water = expect(self.doc["water"], PER_MASS)
        return parts, water

    def slurry(self, order, treats):
        parts, water = self.mix(order, treats)
        return sum(v for _, v in parts) + water

    def shares(self, order, treats):
        parts, water = self.mix(order, treats)
        total = sum(v for _, v in parts) + water
        return {t.name: v / total for t, v in parts}, water / total

    def recipes(self, orders, treats):
        """[(orders, product shares, water share)] in running order."""
        out = []
        for o in orders:
            if not self.mix(o, treats)[0]:
                continue
            own, water = self.shares(o, treats)
            if out and self.keeps(out[-1][1], own):
                out[-1][0].append(o)
            else:
                out.append(([o], own, water))
        return out

    def keeps(self, running, own):
        if running.keys() != own.keys():
            return False
        return all(abs(running[k] / own[k] - 1) <= self.tolerance + EPS for k in own)

    # -- the pump -----------------------------------------------------------------
    def flow(self, order, treater, treats):
        text = order.doc.get("seed_flow") or treater.get("seed_flow")
        return self.slurry(order, treats) * expect(text, powers(MASS, TIME)) if text else None

    def charge(self, order, treater, treats):
        if not treater.get("charge") or order.doc.get("seed_flow"):
            return None
        return self.slurry(order, treats) * expect(treater["charge"], MASS)

    def curve(self):
        pump = self.doc.get("pump") or {}
        return [(F(p["setting"]), expect(p["flow"], FLOW)) for p in pump.get("curve") or []]

    def setting(self, flow):
        """The fitted line inverted; None without a curve or beyond it."""
        points = self.curve()
        if not points:
            return None
        if len(points) == 1:
            return points[0][0] * flow / points[0][1]
        flows = [f for _, f in points]
        if flow < min(flows) * (1 - EPS) or flow > max(flows) * (1 + EPS):
            return None
        n = len(points)
        ms, mf = sum(s for s, _ in points) / n, sum(flows) / n
        slope = sum((s - ms) * (f - mf) for s, f in points) / sum((s - ms) ** 2 for s, _ in points)
        return ms + (flow - mf) / slope

    def pump_out_of_range(self, flow):
        pump = self.doc.get("pump") or {}
        low = expect(pump["min"], FLOW) if pump.get("min") else None
        high = expect(pump["max"], FLOW) if pump.get("max") else None
        if low is not None and flow < low * (1 - EPS) or high is not None and flow > high * (1 + EPS):
            return True
        return len(self.curve()) > 1 and self.setting(flow) is None

    # -- the plan's rows ------------------------------------------------------------
    def rows(self, orders, treater, treats, us):
        recipes = []
        for members, own, water in self.recipes(orders, treats):
            parts = [{"product": k, "share": float(v)} for k, v in own.items()]
            if water:
                parts.append({"water": True, "share": float(water)})
            recipes.append({"orders": [o.name for o in members], "parts": parts})
        out = {"tank": self.name, "recipes": recipes, "orders": []}
        for o in orders:
            if self.mix(o, treats)[0]:
                out["orders"].append(self.order_row(o, treater, treats, us))
        return out

    def order_row(self, o, treater, treats, us):
        row = {"order": o.name, "slurry": write("V/mass", self.slurry(o, treats), us)}
        charge = self.charge(o, treater, treats)
        if charge is not None:
            row["per_charge"] = write("liquid", charge, us)
            return row
        flow = self.flow(o, treater, treats)
        if flow is not None:
            row["flow"] = write("flow", flow, us)
            setting = self.setting(flow)
            if setting is not None:
                row["setting"] = float(setting)
        return row


def tolerance(job):
    return share(job["recipe_tolerance"]) if job.get("recipe_tolerance") is not None else F(2, 100)
