"""What to open: the best whole sets, by trying every combination that could be best."""
from fractions import Fraction as F
from math import ceil

EPS = F(1, 10**9)


def fractions_covered(t, orders):
    """The share of the whole need that one set of each pack covers."""
    out = []
    for pack in t.doc.get("packs") or []:
        sets = sum(o.mass / t.coverage(pack, o) for o in orders)
        out.append(1 / sets)
    return out


def price(pack):
    return F(pack.get("price") or 0)


def keys(objective, left, cost, sets):
    order = {"least_leftover": (left, cost, sets), "least_cost": (cost, left, sets),
             "fewest_sets": (sets, left, cost)}
    return order[objective]


def better(a, b):
    """a before b, a difference within 1e-9 counting as none."""
    for x, y in zip(a, b):
        if abs(x - y) > EPS * max(1, abs(x), abs(y)):
            return x < y
    return False


def combinations(shares, stock, need):
    """Counts per pack that cover the need with no set to spare in the last place."""
    if len(shares) == 1:
        n = max(0, ceil((need - EPS) / shares[0]))
        if stock[0] is None or n <= stock[0]:
            yield (n,)
        return
    most = max(0, ceil((need - EPS) / shares[0]))
    if stock[0] is not None:
        most = min(most, stock[0])
    for n in range(most, -1, -1):
        for rest in combinations(shares[1:], stock[1:], need - n * shares[0]):
            yield (n,) + rest


def choose(t, orders, more=F(0)):
    """(sets per pack, enough) for the need times (1 + more)."""
    packs = t.doc.get("packs") or []
    shares = fractions_covered(t, orders)
    stock = [p.get("on_hand") for p in packs]
    objective = t.doc.get("choose") or "least_leftover"
    best = None
    need = 1 + more
    for counts in combinations(shares, stock, need):
        left = sum(n * s for n, s in zip(counts, shares)) - need
        cost = sum(n * price(p) for n, p in zip(counts, packs))
        key = keys(objective, left, cost, sum(counts))
        if best is None or better(key, best[0]):
            best = (key, counts)
    if best is None:
        return list(stock), False
    return list(best[1]), True


def rows(t, orders, counts, write, us):
    shares = fractions_covered(t, orders)
    mass = sum(o.mass for o in orders)
    out = []
    for pack, n, share in zip(t.doc["packs"], counts, shares):
        if not n:
            continue
        row = {"pack": pack["pack"], "sets": n}
        if pack.get("per_case"):
            row["cases"] = ceil(F(n, pack["per_case"]))
        row["covers"] = write("seed_mass", n * share * mass, us)
        out.append(row)
    return out


def opened_amount(t, orders, counts, needed):
    """Product in the opened sets: usable when the parts say, else coverage × rate."""
    shares = fractions_covered(t, orders)
    total = F(0)
    for pack, n, share in zip(t.doc["packs"], counts, shares):
        amount = t.set_amount(pack)
        total += n * (amount if amount is not None else share * needed)
    return total


def cost_opened(t, counts):
    """None when an opened pack has no price."""
    opened = [(p, n) for p, n in zip(t.doc["packs"], counts) if n]
    if not opened or any(p.get("price") is None for p, _ in opened):
        return None
    return sum(F(p["price"]) * n for p, n in opened)


def almost_covered(shares, counts, need=F(1)):
    total = sum(n * s for n, s in zip(counts, shares))
    return any(n and need - (total - s) <= need / 100 * (1 + EPS) for n, s in zip(counts, shares))
