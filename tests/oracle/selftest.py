"""The oracle itself against published and hand-worked figures: python3 tests/oracle/selftest.py"""
import copy
import json
import unittest
from decimal import Decimal as D

import clock
import invariants
import malformed
import oracle
import compare
from survival import Model


def plan(**doc):
    return oracle.plan(oracle.load(json.dumps(doc)))


def order(**fields):
    return {"order": "1", "lot": "L", "amount": "100 lb", "size": "3000 seeds/lb", **fields}


def value(q):
    return q["value"]


class Published(unittest.TestCase):
    def test_flow_and_recipe(self):
        """CHECKS.md 1.3 (derived from exact definitions): 10 gal of slurry treat 25 600 lb."""
        p = plan(units="us", orders=[order()], treatments=[{"product": "P", "tank": "A", "rate": "3.2 fl oz/cwt"}],
                 tanks=[{"tank": "A", "capacity": "10 gal", "make_up_to": "5.0 fl oz/cwt"}],
                 treater={"seed_flow": "60 lb/min"})
        tank = p["tanks"][0]
        self.assertAlmostEqual(tank["recipes"][0]["parts"][0]["share"], 0.64, 12)
        self.assertAlmostEqual(value(tank["orders"][0]["flow"]), 3.0, 12)
        self.assertAlmostEqual(1280 / value(tank["orders"][0]["slurry"]) * 100, 25600, 6)

    def test_metric_flow(self):
        """CHECKS.md 1.3: 60 kg/min at 325 mL/100 kg is 195 mL/min."""
        p = plan(orders=[order()], treatments=[{"product": "P", "tank": "A", "rate": "325 mL/100 kg"}],
                 tanks=[{"tank": "A", "capacity": "10 L"}], treater={"seed_flow": "60 kg/min"})
        self.assertAlmostEqual(value(p["tanks"][0]["orders"][0]["flow"]), 195, 10)

    def test_active_per_area(self):
        """US EPA's seed-treatment algebra, CHECKS.md 2.1 case D: 75.2303 mg/kg, 0.002496894 lb ai/ac."""
        p = plan(units="us", orders=[order(sowing={"rate": "33.19 lb/ac"})],
                 treatments=[{"product": "P", "tank": "A", "rate": "0.34 fl oz/cwt", "density": "8.33 lb/gal",
                              "actives": [{"active": "a", "content": "34 %"}]}],
                 tanks=[{"tank": "A", "capacity": "10 L"}])
        row = p["treatments"][0]["orders"][0]["actives"][0]
        self.assertAlmostEqual(value(row["per_mass"]), 75.2303, 4)
        self.assertAlmostEqual(value(row["per_area"]), 0.002496894, 9)

    def test_sowing(self):
        """Iowa State Agron 212 (CHECKS.md S1): 150 000 seeds/ac at 2 750 seeds/lb is 54.5 lb/ac."""
        p = plan(units="us", orders=[order(amount="50 ac", size="2750 seeds/lb", sowing={"rate": "150000 seeds/ac"})],
                 treatments=[])
        self.assertAlmostEqual(value(p["orders"][0]["mass"]) / 50, 54.5, 1)
        self.assertAlmostEqual(value(p["orders"][0]["area"]), 50, 10)

    def test_statements(self):
        """Common practice: 2 fl oz per 100 lb with 0.96 fl oz per 140 000 seeds, written for 2 917 seeds/lb."""
        p = plan(units="us", orders=[order()],
                 treatments=[{"product": "P", "tank": "A", "rate": "2 fl oz/cwt", "label_unit": "140000 seeds",
                              "also_stated": ["0.96 fl oz/unit"]}], tanks=[{"tank": "A", "capacity": "10 L"}])
        s = p["treatments"][0]["orders"][0]["statements"][0]
        self.assertAlmostEqual(value(s["implied_size"]), 2916.6667, 3)
        self.assertAlmostEqual(s["difference"], 0.02857143, 7)

    def test_cells(self):
        """CHECKS.md 5.1 (derived): 1e9 CFU/g at 5 g/kg on 6 000 seeds/kg is 8.33e5 per seed."""
        p = plan(orders=[order(size="6000 seeds/kg")],
                 treatments=[{"product": "P", "rate": "5 g/kg", "living": {"titre": "1e9 CFU/g"}}])
        self.assertAlmostEqual(value(p["treatments"][0]["orders"][0]["living"]["at_treating"]) / 8.33333333e5, 1, 8)

    def test_survival(self):
        """bioinactivation 1.3.0 tests (CHECKS.md 5.4): Bigelow and Weibull-Mafart at +10 K, t = 2: both -4."""
        from survival import effective_time
        linear = Model({"model": "log_linear", "decimal_reduction": "5 s", "at": "90 degC", "z": "10 K"})
        tau = effective_time(linear, [(D(1), 100)], D(2))
        self.assertAlmostEqual(float(linear.log10_survival(tau)), -4, 12)
        weibull = Model({"model": "weibull", "scale": "10 s", "shape": 2, "at": "90 degC", "z": "10 K"})
        self.assertAlmostEqual(float(weibull.log10_survival(effective_time(weibull, [(D(1), 100)], D(2)))), -4, 12)

    def test_two_phase(self):
        """Worked by hand: 90 % at D = 1, 10 % at D = 10, after 10: log10(0.9e-10 + 0.1e-1) = -2 + 3.9e-9."""
        m = Model({"model": "two_phase", "fraction": "90 %", "fast": "1 s", "slow": "10 s"})
        self.assertAlmostEqual(float(m.log10_survival(D(10))), -1.99999999609, 10)

    def test_packs(self):
        """Common practice sizes: 27 400 lb from sets of 10 000, 5 000, 2 500 lb leaves 100 lb covered too many."""
        packs = [{"pack": n, "covers": f"{c} lb"} for n, c in (("l", 10000), ("m", 5000), ("s", 2500))]
        p = plan(units="us", orders=[order(amount="27400 lb")],
                 treatments=[{"product": "P", "rate": "4 oz av/cwt", "packs": packs}])
        rows = p["treatments"][0]["packs"]
        self.assertEqual([(r["pack"], r["sets"]) for r in rows], [("l", 2), ("m", 1), ("s", 1)])
        self.assertAlmostEqual(value(p["treatments"][0]["leftover"]), 100 * 0.25 / 100, 9)

    def test_malformed_base_is_good(self):
        oracle.plan(oracle.load(json.dumps(malformed.BASE)))
        self.assertGreater(len(malformed.cases()), 60)


class Invariants(unittest.TestCase):
    """A day worked by hand: 2 000 lb at 100 lb/min, mix of 4 fl oz/cwt, one set of 90 fl oz."""

    def setUp(self):
        self.doc = {
            "units": "us", "orders": [order(amount="2000 lb")],
            "treatments": [{"product": "P", "tank": "A", "rate": "4 fl oz/cwt",
                            "living": {"titre": "1e9 CFU/mL", "pot_life": "4 h", "on_seed_life": "10 d"},
                            "packs": [{"pack": "s", "parts": [{"part": "x", "fill": "90 fl oz"}]}]}],
            "tanks": [{"tank": "A", "capacity": "1 gal", "mixing": "10 min"}], "treater": {"seed_flow": "100 lb/min"},
            "work": [{"from": "2027-04-06T07:00:00Z", "to": "2027-04-06T12:00:00Z"}]}
        self.plan = oracle.plan(oracle.load(json.dumps(self.doc)))
        row = self.plan["treatments"][0]
        row["packs"] = [{"pack": "s", "sets": 1, "covers": {"value": 2250.0, "unit": "lb"}}]
        row["orders"][0]["living"].update(plant_by="2027-04-16T07:10:00Z", because="on_seed_life")
        oz = lambda x: {"value": x, "unit": "fl oz"}
        self.batch = {"number": 1, "mix_at": "2027-04-06T07:00:00Z", "ready_at": "2027-04-06T07:10:00Z",
                      "done_at": "2027-04-06T07:30:00Z", "use_by": "2027-04-06T11:00:00Z",
                      "pour": [{"product": "P", "volume": oz(90.0)}], "mixed": oz(90.0), "sets": [{"pack": "s", "sets": 1}],
                      "orders": [{"order": "1", "mass": {"value": 2000.0, "unit": "lb"}}],
                      "applied": oz(80.0), "hold_up": oz(0.0), "discarded": oz(10.0)}
        self.plan["tanks"][0]["batches"] = [self.batch]

    def lines(self):
        return invariants.check(oracle.load(json.dumps(self.doc)), self.plan)

    def test_good(self):
        self.assertEqual(self.lines(), ([], []))

    def test_each_breach_is_seen(self):
        later = {"value": 1990.0, "unit": "lb"}
        breaches = [("discarded", {"value": 9.0, "unit": "fl oz"}), ("sets", [{"pack": "s", "sets": 2}]),
                    ("orders", [{"order": "1", "mass": later}]), ("use_by", "2027-04-06T12:00:00Z"),
                    ("ready_at", "2027-04-06T07:05:00Z"), ("done_at", "2027-04-06T07:20:00Z"),
                    ("mix_at", "2027-04-06T06:55:00Z"), ("mixed", {"value": 91.0, "unit": "fl oz"}),
                    ("done_at", "2027-04-06T11:30:00Z"), ("number", 2)]
        good = copy.deepcopy(self.batch)
        for key, bad in breaches:
            self.batch.clear()
            self.batch.update(copy.deepcopy(good), **{key: bad})
            self.assertTrue(self.lines()[0], key)

    def test_plant_by(self):
        self.plan["treatments"][0]["orders"][0]["living"]["plant_by"] = "2027-04-16T07:30:00Z"
        self.assertTrue(self.lines()[0])


class Optimum(unittest.TestCase):
    """Worked by hand: 100 lb/min, sets for 2 500 and 10 000 lb at 4 fl oz/cwt, two can lie in the tank."""

    def doc(self, amount, life):
        packs = [{"pack": n, "parts": [{"part": "x", "fill": f"{oz} fl oz"}]} for n, oz in (("s", 100), ("l", 400))]
        return {"units": "us", "orders": [order(amount=amount)],
                "treatments": [{"product": "P", "tank": "A", "rate": "4 fl oz/cwt", "packs": packs,
                                "living": {"titre": "1e9 CFU/mL", "pot_life": life}}],
                "tanks": [{"tank": "A", "capacity": "800 fl oz"}], "treater": {"seed_flow": "100 lb/min"},
                "work": [{"from": "2027-04-06T08:00:00Z", "to": "2027-04-06T12:10:00Z"},
                         {"from": "2027-04-07T08:00:00Z", "to": "2027-04-07T12:00:00Z"}]}

    def solve(self, amount, life):
        import optimum
        treated, lost, mixes, _ = optimum.solve(oracle.load(json.dumps(self.doc(amount, life))))
        return round(float(treated) / 0.45359237, 6), round(float(lost) / 2.95735295625e-5, 6), mixes

    def test_no_waste_in_one_mix(self):
        self.assertEqual(self.solve("12500 lb", "24 h"), (12500, 0, 1))

    def test_pot_life_binds(self):
        """100 min treat 10 000 lb: 12 500 lb in one mix would expire, so a large and a small."""
        self.assertEqual(self.solve("12500 lb", "100 min"), (12500, 0, 2))

    def test_small_sets_before_the_night(self):
        """250 min then the night: 25 000 lb before it in mixes of 10 000, the last 5 000 lb of two small sets."""
        self.assertEqual(self.solve("35000 lb", "100 min"), (35000, 0, 4))

    def test_waste_that_no_set_saves(self):
        """11 000 lb: one large and one small leave 1 500 lb's worth, 60 fl oz."""
        self.assertEqual(self.solve("11000 lb", "24 h"), (11000, 60, 1))

    def test_changeover_outlasts_the_mix(self):
        """9 500 lb of one large set till 9:35; what is left expires at 9:40, the changeover ends at 9:45: 100 min more."""
        import optimum
        doc = self.doc("9500 lb", "100 min")
        doc["orders"].append(dict(order(amount="10000 lb"), order="next", lot="M"))
        doc["treater"]["changeover"] = "10 min"
        _, lost, mixes, finish = optimum.solve(oracle.load(json.dumps(doc)))
        self.assertEqual((round(float(lost) / 2.95735295625e-5, 6), mixes), (20, 2))
        self.assertEqual(finish, clock.seconds("2027-04-06T11:25:00Z"))


class Comparer(unittest.TestCase):
    def test_sees_number_unit_and_missing(self):
        doc = oracle.plan(oracle.load(json.dumps(malformed.BASE)))
        for change in (lambda m: m.update(value=m["value"] * (1 + 3e-9)), lambda m: m.update(unit="kg"),
                       lambda m: m.pop("unit")):
            other = copy.deepcopy(doc)
            change(other["orders"][0]["mass"])
            self.assertEqual(len(compare.compare(other, doc)[0]), 1)
        self.assertEqual(compare.compare(copy.deepcopy(doc), doc)[0], [])


if __name__ == "__main__":
    unittest.main()
