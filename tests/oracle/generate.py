"""Random valid jobs that together use every field of the contract. Invented products, lots and places."""
import json
import random
from fractions import Fraction as F

import oracle
from quantity import ACRE, FOZ, GAL, IMP_GAL, LB, read

MASS = {"lb": LB, "kg": F(1), "t": F(1000), "cwt": 100 * LB}
SMALL_MASS = {"g": F(1, 1000), "oz av": LB / 16, "mg": F(1, 10**6), "lb": LB, "kg": F(1)}
VOLUME = {"fl oz": FOZ, "mL": F(1, 10**6), "L": F(1, 1000), "gal": GAL, "pt": GAL / 8, "qt": GAL / 4,
          "imp fl oz": IMP_GAL / 160, "imp pt": IMP_GAL / 8, "m3": F(1)}
DROP = {"\u00b5L": F(1, 10**9), "uL": F(1, 10**9), "\u03bcL": F(1, 10**9), "mL": F(1, 10**6), "fl oz": FOZ}
AREA = {"ac": ACRE, "ha": F(10000), "m2": F(1), "ft2": F("0.09290304")}
TIME = {"s": F(1), "min": F(60), "h": F(3600), "d": F(86400)}
PER_MASS = {"cwt": 100 * LB, "100 kg": F(100), "kg": F(1), "lb": LB, "100 lb": 100 * LB, "t": F(1000),
            "(100.kg)": F(100)}
UCUM_OK = {"g", "mL", "L", "mg", "kg"}
CROPS = {"soybean": (6300, 60), "wheat": (26000, 60), "field pea": (4100, 60), "maize": (3300, 56)}
NAMES = ["Larkin 20", "Tessel WP", "Mossan", "Orrel FS", "Velda", "Quern 480", "Brindle", "Sorrow Blue", "Pevensey"]


def digits(x, n=4):
    """x to n significant digits, as plain decimal text."""
    text = f"{float(x):.{n}g}"
    if "e" in text:
        mantissa, exponent = text.split("e")
        return f"{mantissa}e{int(exponent)}"
    return text


class Gen:
    def __init__(self, seed, clock=True):
        self.r, self.clock = random.Random(seed), clock

    def chance(self, p):
        return self.r.random() < p

    def q(self, value, units, n=4):
        """The value in a unit that keeps the number readable; now and then as an object or grouped."""
        fit = [u for u, f in units.items() if 1e-3 <= float(value / f) < 1e6] or list(units)
        unit = self.r.choice(fit)
        text = digits(value / units[unit], n)
        if self.chance(0.08):
            return {"value": float(text), "unit": unit}
        if len(text) > 4 and text.isdigit() and self.chance(0.3):
            text = text[:-3] + self.r.choice("_\u2009") + text[-3:]
        return f"{text} {unit}"

    def per(self, value, tops, bottoms):
        """A quotient: any top over any bottom."""
        pairs = {}
        for t, tf in tops.items():
            for b, bf in bottoms.items():
                if not b.startswith("(") or t in UCUM_OK:
                    pairs[f"{t}/{b}"] = tf / bf
        return self.q(value, pairs)

    def percent(self, low, high):
        return f"{digits(self.r.uniform(low, high), 3)}{self.r.choice([' %', '%'])}"

    def span(self, low, high):
        return F(str(round(self.r.uniform(low, high), 6)))

    def celsius(self, c):
        if self.chance(0.5):
            return f"{digits(c * 9 / 5 + 32, 3)}{self.r.choice([' degF', '°F', ' °F'])}"
        return f"{digits(c, 3)}{self.r.choice([' degC', '°C'])}"

    # -- orders ------------------------------------------------------------------
    def frame(self):
        self.crop = self.r.choice(list(CROPS))
        self.size0, self.bushel0 = CROPS[self.crop]
        self.all_sown, self.all_units, self.all_bushel = (self.chance(p) for p in (0.75, 0.7, 0.7))
        self.unit0 = self.r.choice([80000, 100000, 140000])
        self.us = self.chance(0.5)

    def order(self, i):
        size = self.size0 * self.span(0.8, 1.2)
        o = {"order": f"{1000 + 7 * i}", "lot": self.r.choice([f"L-{i}", "L-9"])}
        o["size"] = self.per(size, {"seeds": F(1), "kernels": F(1)}, {"lb": LB, "kg": F(1)}) if self.chance(0.7) \
            else self.per(1 / size, {"g": F(1, 1000), "mg": F(1, 10**6)}, {"1000 seeds": F(1000), "seed": F(1)})
        if self.chance(0.4):
            o["size_tolerance"] = self.percent(1, 9)
        seeds_unit = self.all_units or self.chance(0.3)
        if seeds_unit:
            o["unit"] = f"{self.unit0} {self.r.choice(['seeds', 'kernels'])}"
        elif self.chance(0.6):
            o["unit"] = self.r.choice(["50 lb", "25 kg"])
        if self.all_bushel or self.chance(0.3):
            o["bushel"] = f"{self.bushel0} lb"
        if self.all_sown or self.chance(0.2):
            self.sowing(o, size)
        o["amount"] = self.amount(o, size)
        self.order_extras(o, size)
        return o

    def sowing(self, o, size):
        per_area = self.span(25, 45) if self.size0 < 10000 else self.span(200, 350)
        kind = self.r.randrange(3)
        if kind == 0:
            o["sowing"] = {"rate": self.per(per_area, {"seeds": F(1)}, AREA)}
        elif kind == 1:
            o["sowing"] = {"rate": self.per(per_area / size, {"lb": LB, "kg": F(1), "g": F(1, 1000)}, AREA)}
        else:
            o["germination"] = self.percent(80, 99)
            o["sowing"] = {"stand": self.per(per_area, {"plants": F(1)}, AREA), "emergence": self.percent(60, 95)}

    def amount(self, o, size):
        mass = self.span(800, 20000)
        ways = [lambda: self.q(mass, MASS), lambda: self.q(mass * size, {"seeds": F(1)}, 6)]
        if o.get("unit"):
            ways.append(lambda: self.q(mass * size / self.unit0, {"units": F(1)}))
        if o.get("bushel"):
            ways.append(lambda: self.q(mass / (self.bushel0 * LB), {"bu": F(1)}))
        if o.get("sowing"):
            ways.append(lambda: self.q(mass / F("0.006"), {"ac": ACRE, "ha": F(10000)}))
        return self.r.choice(ways)()

    def order_extras(self, o, size):
        if self.chance(0.5):
            o["crop"] = self.crop if self.chance(0.9) else "lupin"
        if self.chance(0.3):
            o["customer"] = self.r.choice(["Hollin Farm", "Ødegård", "R & S Tarn"])
        if self.chance(0.4):
            holds = ["25 kg", "1 t", "500_000 seeds"]
            holds += ["40 units"] if o.get("unit") else []
            holds += ["30 bu"] if o.get("bushel") else []
            o["package"] = {"holds": self.r.choice(holds)}
        if self.chance(0.3):
            o["purity"] = self.percent(95, 100)
        if self.chance(0.3):
            o.setdefault("germination", self.percent(80, 99))
        if self.chance(0.4):
            o["temperature"] = self.celsius(self.r.choice([-2, 0, 3, 7, 12]))
        if self.chance(0.2):
            o["seed_flow"] = self.per(self.span(2, 6), MASS, {"min": F(60), "s": F(1), "h": F(3600)})
        if self.chance(0.3):
            o["on_seed"] = [{"active": "quellazole", "per_seed": self.per(F(3, 10**8), SMALL_MASS, {"seed": F(1)})}]

    # -- treatments ----------------------------------------------------------------
    def bases(self, t):
        out = ["mass", "seed"]
        if self.all_units or t.get("label_unit"):
            out.append("unit")
        if self.all_bushel or t.get("label_bushel"):
            out.append("bu")
        if self.all_sown:
            out.append("area")
        return out

    def rate(self, amount, kind, basis):
        """Text of an amount of product per kg of seed, in a basis."""
        big = VOLUME if kind == "V" else SMALL_MASS
        if basis == "mass":
            return self.per(amount, big, PER_MASS)
        if basis == "seed":
            small = DROP if kind == "V" else {"mg": F(1, 10**6), "g": F(1, 1000), "\u00b5g": F(1, 10**9)}
            return self.per(amount / self.size0, small,
                            {"seed": F(1), "1000 seeds": F(1000), f"{self.unit0} kernels": F(self.unit0)})
        if basis == "unit":
            return self.per(amount / self.size0 * self.unit0, big, {"unit": F(1), "100 units": F(100)})
        if basis == "bu":
            return self.per(amount * self.bushel0 * LB, big, {"bu": F(1)})
        return self.per(amount * F("0.006"), big, {"ac": ACRE, "ha": F(10000)})

    def treatment(self, i, tanks):
        t = {"product": NAMES[i]}
        if tanks and self.chance(0.75):
            t["tank"] = self.r.choice(tanks)
        if self.chance(0.4):
            t["label_unit"] = f"{self.r.choice([self.unit0, 100000])} seeds"
        if self.chance(0.4):
            t["label_bushel"] = f"{self.bushel0} lb"
        if self.chance(0.4):
            t["density"] = self.per(F(1000) * self.span(0.9, 1.25), {"kg": F(1), "g": F(1, 1000), "lb": LB},
                                    {"L": F(1, 1000), "gal": GAL, "mL": F(1, 10**6)})
        self.dose(t, i)
        self.label(t)
        return t

    def dose(self, t, i):
        self.kind = ("V" if self.chance(0.85) else "M") if t.get("tank") else ("M" if self.chance(0.85) else "V")
        self.per_kg = self.span(0.5, 4) / 10**6 if self.kind == "V" else self.span(0.5, 4) / 1000
        if self.chance(0.7):
            self.actives(t, i)
        way = self.r.random()
        if i == 0 and self.chance(0.75):
            self.living(t)
            if way < 0.3:
                t["cells"] = f"{digits(self.span(1, 9), 3)}e5 CFU/seed"
                return
        if t.get("actives") and way < 0.5:
            a = self.r.choice(t["actives"])
            t["active_rate"] = {"active": a["active"],
                                "rate": self.rate(self.span(0.05, 0.8) / 1000, "M", self.r.choice(self.bases(t)))}
            return
        t["rate"] = self.rate(self.per_kg, self.kind, self.r.choice(self.bases(t)))

    def actives(self, t, i):
        names = ["quellazole", f"tarnoxam-{i}"]
        contents = [lambda: self.per(F(480) * self.span(0.2, 1), {"g": F(1, 1000), "lb": LB},
                                     {"L": F(1, 1000), "gal": GAL}),
                    lambda: self.percent(5, 40),
                    lambda: self.per(self.span(0.05, 0.4), {"g": F(1, 1000)}, {"kg": F(1)})]
        t["actives"] = [{"active": a, "content": self.r.choice(contents)()}
                        for a in self.r.sample(names, self.r.randint(1, 2))]

    def label(self, t):
        if self.chance(0.4):
            basis = self.r.choice(self.bases(t))
            t["also_stated"] = [self.rate(self.per_kg * self.span(0.85, 1.15), self.kind, basis)]
            if self.chance(0.4):
                t["also_stated"].append(self.rate(self.per_kg, self.kind, self.r.choice(self.bases(t))))
        if self.chance(0.3):
            t["max_rate"] = self.rate(self.per_kg * self.span(0.9, 1.6), self.kind, self.r.choice(self.bases(t)))
        if self.chance(0.3):
            t["min_rate"] = self.rate(self.per_kg * self.span(0.3, 0.8), self.kind, self.r.choice(self.bases(t)))
        if self.chance(0.3):
            t["crops"] = self.r.sample(list(CROPS), 2)
        if self.chance(0.2):
            t["registration"], t["lot_number"], t["expires"] = "R-20391", "B77", "2030-09-30"
        if self.chance(0.3):
            t["constituents"] = self.r.sample(["Zinc", "molybdenum", "kaolin", "glycerol"], 2)
        if self.chance(0.4):
            t["colourant"] = self.chance(0.8)

    def living(self, t):
        kind = self.kind
        unit = {"V": ["CFU/mL", "CFU/L"], "M": ["CFU/g", "CFU/kg"]}[kind]
        living = {"titre": f"{digits(self.span(1, 9), 2)}e{self.r.randint(9, 10)} {self.r.choice(unit)}"}
        for key, p, value in (("recovery", 0.6, self.percent(50, 99)), ("pot_life", 0.6, "24 h"),
                              ("on_seed_life", 0.6, f"{self.r.randint(10, 120)} d"),
                              ("minimum_at_planting", 0.7, f"{self.r.randint(1, 9)}e4 CFU/seed"),
                              ("store_below", 0.4, self.celsius(self.r.choice([12, 20, 25]))),
                              ("agitate", 0.4, self.chance(0.7)), ("survival", 0.8, None)):
            if self.chance(p):
                living[key] = self.survival() if key == "survival" else value
        t["living"] = living

    def survival(self):
        model = self.r.choice(["log_linear", "weibull", "two_phase"])
        s = {"model": model}
        if model == "log_linear":
            s["decimal_reduction"] = self.q(self.span(10, 90) * 86400, TIME)
        elif model == "weibull":
            s["scale"], s["shape"] = self.q(self.span(8, 40) * 86400, TIME), round(self.r.uniform(0.5, 2.5), 2)
        else:
            s["fraction"] = self.percent(50, 99)
            s["fast"], s["slow"] = self.q(self.span(0.2, 2) * 86400, TIME), self.q(self.span(20, 80) * 86400, TIME)
        if self.chance(0.7):
            s["at"], s["z"] = self.celsius(self.r.choice([5, 10, 20])), \
                self.r.choice(["20 K", "18.5 delta_degC", "36 delta_degF"])
        return s

    # -- what needs the numbers first -------------------------------------------------
    def fit(self, doc):
        """Density where the job needs one; compatibility; packs, tanks and treater of a fitting size."""
        for t in doc["treatments"]:
            probe = dict(doc, treatments=[t], tanks=[{"tank": k["tank"], "capacity": "1 m3"} for k in doc["tanks"]])
            try:
                oracle.Job(probe).needed(oracle.Job(probe).treatments[0])
                if t.get("living"):
                    oracle.Job(probe).treatments[0].titre()
                both = oracle.Job(probe).treatments[0]
                for key in ("max_rate", "min_rate"):
                    if t.get(key):
                        both.rate_per_mass(t[key], oracle.Job(probe).orders[0])
                for s in t.get("also_stated") or []:
                    both.rate_per_mass(s, oracle.Job(probe).orders[0])
            except TypeError:
                t["density"] = f"{digits(self.span(0.9, 1.25), 4)} kg/L"
        self.compatibility(doc)
        job = oracle.Job(doc)
        for t in job.treatments:
            if self.chance(0.6) and job.orders_of(t):
                self.packs(job, t)
        self.tanks(doc, oracle.Job(doc))
        self.treater(doc, oracle.Job(doc))

    def compatibility(self, doc):
        living = [t["product"] for t in doc["treatments"] if t.get("living")]
        for t in doc["treatments"]:
            if living and t["product"] != living[0] and self.chance(0.7):
                w = {"living": living[0], "same_tank": self.chance(0.5), "same_seed": self.chance(0.8)}
                if self.chance(0.3):
                    w["dry_between"] = self.chance(0.5)
                if self.chance(0.3):
                    w["life"] = f"{self.r.randint(5, 60)} d"
                t["with_living"] = [w]

    def packs(self, job, t):
        need = job.needed(t)
        count = self.r.choice([1, 1, 2, 3, 4])
        base = need / self.span(0.8, 6)
        ks = self.r.sample(["1", "0.5", "0.25", "2", "0.2"], count)
        units = VOLUME if t.kind == "V" else MASS
        names = self.r.choice([["all"], ["cells", "feed"], ["a", "b", "c"]])
        unit = self.r.choice([u for u in ("L", "gal", "kg", "lb") if u in units])
        sizes = [round(float(base / len(names) / units[unit]) * self.r.uniform(0.5, 1.5), 4) for _ in names]
        if min(sizes) <= 0.001:
            return
        t.doc["packs"] = [self.pack(job, t, F(k), names, sizes, unit, count) for k in ks]
        if self.chance(0.7):
            t.doc["choose"] = self.r.choice(["least_leftover", "least_cost", "fewest_sets"])
        if t.living and len(names) > 1 and self.chance(0.5) and all("parts" in p for p in t.doc["packs"]):
            t.doc["living"]["titre_of"] = self.r.choice(names)

    def pack(self, job, t, k, names, sizes, unit, count):
        p = {"pack": f"size {float(k):g}"}
        how = self.r.randrange(3)
        if how != 0:
            p["parts"] = []
            for n, s in zip(names, sizes):
                usable = f"{digits(float(F(str(s)) * k), 12)} {unit}"
                part = {"part": n, "fill": usable}
                if self.mode_usable:
                    part["fill"] = f"{digits(float(F(str(s)) * k * F('1.03')), 12)} {unit}"
                    part["usable"] = usable
                p["parts"].append(part)
        if how == 0 or (how == 1 and count == 1):
            orders = job.orders_of(t)
            amount = k * sum(F(str(s)) for s in sizes) * (VOLUME | MASS)[unit]
            covers = amount / job.needed(t) * sum(o.mass for o in orders) * self.span(0.96, 1.04)
            ways = [self.q(covers, MASS), self.q(covers * self.size0, {"seeds": F(1)}, 6)]
            if self.all_units or t.label_unit:
                ways.append(self.q(covers * self.size0 / self.unit0, {"units": F(1)}))
            p["covers"] = self.r.choice(ways)
        if self.chance(0.6):
            p["price"] = self.r.choice([round(100 * float(k), 2), round(self.r.uniform(20, 300), 2), 50])
        if self.chance(0.5):
            p["per_case"] = self.r.choice([2, 4])
        if self.chance(0.4):
            p["on_hand"] = self.r.choice([0, 1, 3, 40])
        return p

    def tanks(self, doc, job):
        for k, tank in zip(job.tanks, doc["tanks"]):
            slurries = [k.slurry(o, job.treats) for o in job.orders]
            top = max(slurries)
            if top and self.chance(0.5):
                tank["make_up_to"] = self.per(top * self.span(1.05, 1.8), VOLUME, PER_MASS)
            elif self.chance(0.5):
                tank["water"] = self.per(self.span(0.2, 3) / 10**6, VOLUME, PER_MASS)
            total = sum(s * o.mass for s, o in zip(slurries, job.orders))
            tank["capacity"] = self.q(max(total * self.span(0.3, 3), F(1, 100)), {"L": F(1, 1000), "gal": GAL})
            if self.chance(0.3):
                tank["hold_up"] = self.q(total * self.span(0.002, 0.02) + F(1, 10**5), VOLUME)
            for key, p, value in (("min_fill", 0.2, "1 L"), ("mixing", 0.5, "12 min"), ("agitated", 0.6, True),
                                  ("refill", 0.3, self.r.choice(["when_empty", "top_up"]))):
                if self.chance(p):
                    tank[key] = value
            if top and self.chance(0.6):
                tank["pump"] = self.pump(top * 4)

    def pump(self, flow):
        pump = {}
        units = {"fl oz/min": FOZ / 60, "mL/min": F(1, 60 * 10**6), "L/h": F(1, 3600 * 1000)}
        if self.chance(0.5):
            pump["min"] = self.q(flow * self.span(0.05, 0.6), units)
        if self.chance(0.5):
            pump["max"] = self.q(flow * self.span(1, 4), units)
        if self.chance(0.8):
            top, offset = self.span(1.2, 4), self.r.choice([0, 3])
            settings = [10, 25, 40, 70][: self.r.randint(2, 4)]
            unit = self.r.choice(list(units))
            full = flow * top / units[unit]
            pump["curve"] = [{"setting": s, "flow": f"{digits(full * (s - offset) / settings[-1], 5)} {unit}"}
                             for s in settings]
        return pump

    def treater(self, doc, job):
        t = {}
        way = self.r.randrange(4)
        if way < 2:
            t["seed_flow"] = self.per(self.span(2, 6), MASS, {"min": F(60), "s": F(1), "h": F(3600)})
        elif way == 2:
            t["charge"], t["cycle"] = self.q(self.span(40, 120), {"kg": F(1), "lb": LB}), self.q(F(45), TIME)
        if self.chance(0.5):
            t["utilisation"] = self.percent(60, 100)
        if self.chance(0.5):
            t["changeover"] = "8 min"
        most = max([job.liquid(o) for o in job.orders] or [0])
        if most and self.chance(0.5):
            t["max_liquid"] = self.per(most * self.span(0.7, 1.5), VOLUME, PER_MASS)
        if most and self.chance(0.3):
            t["min_liquid"] = self.per(most * self.span(0.2, 0.9), VOLUME, PER_MASS)
        if "max_liquid" in t and "min_liquid" in t and read(t["min_liquid"]) > read(t["max_liquid"]):
            t["min_liquid"], t["max_liquid"] = t["max_liquid"], t["min_liquid"]
        if t:
            doc["treater"] = t

    # -- the whole -----------------------------------------------------------------------
    def after(self):
        a = {}
        if self.chance(0.8):
            a["storage"] = [{"for": self.q(self.span(2, 20) * 86400, TIME), "at": self.celsius(self.r.randint(1, 28))}
                            for _ in range(self.r.randint(1, 3))]
        if self.clock and self.chance(0.3):
            a["plant_on"] = f"2027-05-{self.r.randint(1, 28):02}T08:00:00-05:00"
        elif self.chance(0.7):
            a["plant_after"] = self.q(self.span(1, 60) * 86400, TIME)
        if self.chance(0.2):
            a["in_sunlight"] = self.chance(0.5)
        return a

    def work(self):
        """Days of one or two shifts, in any offset."""
        out = []
        for day in range(self.r.randint(1, 6)):
            offset = self.r.choice(["-05:00", "-05:00", "Z"])
            first = f"2027-04-{12 + day:02}"
            split = self.chance(0.4)
            end = "12:00:00" if split else "17:30:00"
            out.append({"from": f"{first}T07:00:00{offset}", "to": f"{first}T{end}{offset}"})
            if split:
                out.append({"from": f"{first}T13:00:00{offset}", "to": f"{first}T18:00:00{offset}"})
        return out

    def limits(self):
        out = []
        for active in ("quellazole", "tarnoxam-0"):
            if self.chance(0.5):
                limit = self.per(F("0.00002") * self.span(0.2, 3), {"lb": LB, "g": F(1, 1000)},
                                 {"ac": ACRE, "ha": F(10000)})
                a = {"active": active, "season_limit": limit}
                if self.chance(0.5):
                    a["season_used"] = self.r.choice(["0 lb/ac", "5 g/ha"])
                if self.chance(0.4):
                    a["max_per_seed"] = self.per(self.span(3, 30) / 10**8, SMALL_MASS, {"seed": F(1)})
                if self.chance(0.4):
                    a["max_per_mass"] = self.per(self.span(0.2, 2) / 1000, {"g": F(1, 1000), "mg": F(1, 10**6)},
                                                 {"kg": F(1), "100 kg": F(100)})
                out.append(a)
        return out

    def job(self):
        self.frame()
        self.mode_usable = self.chance(0.5)
        tanks = self.r.sample(["A", "B", "C"], self.r.randint(0, 3))
        doc = {"orders": [self.order(i) for i in range(self.r.randint(1, 6))],
               "treatments": [self.treatment(i, tanks) for i in range(self.r.randint(1, 5))],
               "tanks": [{"tank": k, "capacity": "1 m3"} for k in tanks]}
        if self.us or self.chance(0.5):
            doc["units"] = "us" if self.us else "metric"
        for key, p, value in (("format", 0.5, 1), ("title", 0.5, "Day “one” – Lärche"), ("currency", 0.3, "EUR"),
                              ("recipe_tolerance", 0.4, self.percent(0.5, 8)), ("actives", 0.6, self.limits()),
                              ("after", 0.7, self.after())):
            if self.chance(p):
                doc[key] = value
        if self.clock and self.chance(0.9):
            doc["work"] = self.work()
        for o in doc["orders"]:
            if self.chance(0.35):
                some = [t["product"] for t in doc["treatments"] if self.chance(0.7)]
                o["treat"] = some or [doc["treatments"][0]["product"]]
            if self.chance(0.15):
                o["after"] = self.after()
        self.fit(doc)
        return doc


def job(seed, clock=True):
    """A job; without clock there are no shifts and no planting day."""
    return Gen(seed, clock).job()


if __name__ == "__main__":
    import sys
    print(json.dumps(job(int(sys.argv[1])), ensure_ascii=False, indent=1))
