"""Random small days for optimum.py: one tank, one living product, one to three orders, few sets."""
import random


def job(seed):
    r = random.Random(seed)
    sets = r.sample([2500, 5000, 8000, 10000, 1250], r.randint(1, 3))
    rate = r.choice([2, 3, 4])
    need = r.randint(2, 9) * min(sets) * r.uniform(0.7, 1.0)
    orders = [{"order": str(i), "lot": f"L-{i}", "amount": f"{max(100, round(need * r.uniform(0.3, 1)))} lb",
               "size": "2800 seeds/lb"} for i in range(r.randint(1, 3))]
    days = [{"from": f"2027-04-{12 + d:02}T07:00:00-05:00", "to": f"2027-04-{12 + d:02}T{r.choice(['09:00', '12:00', '17:00'])}:00-05:00"}
            for d in range(r.randint(1, 3))]
    living = {"titre": "1e10 CFU/mL"}
    if r.random() < 0.8:
        living["pot_life"] = r.choice(["90 min", "4 h", "24 h", "48 h"])
    packs = [{"pack": str(c), "parts": [{"part": "all", "fill": f"{c * rate // 100} fl oz"}]} for c in sets]
    tank = {"tank": "A", "capacity": f"{max(sets) * rate / 100 * r.choice([1, 1.5, 2.5]) * 2:g} fl oz", "agitated": True,
            "make_up_to": f"{2 * rate} fl oz/cwt"}
    if r.random() < 0.7:
        tank["mixing"] = r.choice(["10 min", "15 min", "7 min"])
    treater = {"seed_flow": f"{r.choice([100, 150, 80, 60])} lb/min"}
    if r.random() < 0.5:
        treater["utilisation"] = r.choice(["85 %", "70 %"])
    if r.random() < 0.6:
        treater["changeover"] = "10 min"
    return {"units": "us", "orders": orders, "tanks": [tank], "treater": treater, "work": days,
            "treatments": [{"product": "Mossan", "tank": "A", "rate": f"{rate} fl oz/cwt", "living": living, "packs": packs}]}
