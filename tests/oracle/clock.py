"""Shifts and the treater's time: when is the seed at each place of the running order treated?"""
from datetime import datetime, timedelta, timezone
from fractions import Fraction as F

from quantity import MASS, TIME, expect, powers, share

EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)


def seconds(text):
    """An RFC 3339 instant as exact seconds since 1970."""
    delta = datetime.fromisoformat(text.replace("Z", "+00:00")) - EPOCH
    return F(delta // timedelta(microseconds=1), 10**6)


def shifts(doc):
    return [(seconds(w["from"]), seconds(w["to"])) for w in doc.get("work") or []]


def forward(work, start, need):
    """The instant at which `need` seconds of shift time after `start` are over; None if the shifts end first."""
    at = start
    for begin, end in work:
        if end <= at:
            continue
        at = max(at, begin)
        # masses in a plan are doubles: what ends with the shift must not spill into the next by a hair
        if need <= end - at + F(1, 1000):
            return min(at + need, end)
        need -= end - at
        at = end
    return None if need > 0 else at


def between(work, a, b):
    """Shift time between two instants."""
    return sum((max(F(0), min(b, e) - max(a, s)) for s, e in work), F(0))


def rate(job, order):
    """Seed mass per second of shift time, utilisation included; None if not known."""
    t = job.treater
    text = order.doc.get("seed_flow") or t.get("seed_flow")
    if text:
        flow = expect(text, powers(MASS, TIME))
    elif t.get("charge"):
        flow = expect(t["charge"], MASS) / expect(t["cycle"], TIME)
    else:
        return None
    return flow * (share(t["utilisation"]) if t.get("utilisation") else 1)


def changeover(job):
    return expect(job.treater["changeover"], TIME) if job.treater.get("changeover") else F(0)
