"""Where two plans differ: JSON pointers, numbers to 1e-9 relative, units the same."""
ANY = "__unchecked__"
TOLERANCE = 1e-9
# a share of 1e-308 and less has fewer digits the smaller it is, and so has what is left of the cells
GONE = 1e-300
# rows of these lists are matched by name, not by place
KEYED = {"actives": ("active", "order"), "packs": ("pack",)}


def is_number(x):
    return isinstance(x, (int, float)) and not isinstance(x, bool)


def close(a, b):
    largest = max(abs(a), abs(b))
    return a == b or largest < GONE or abs(a - b) <= TOLERANCE * largest


def escape(key):
    return str(key).replace("~", "~0").replace("/", "~1")


def scale(doc):
    """The size of what a leftover is left over of: a difference of large numbers has their error."""
    return doc.get("needed", {}).get("value", 0.0) if isinstance(doc, dict) else 0.0


def keyed(rows, names):
    return {tuple(r.get(n) for n in names): r for r in rows}


def walk(a, b, at, out, slack=0.0):
    if a == ANY or b == ANY:
        return
    if is_number(a) and is_number(b):
        if not close(a, b) and abs(a - b) > slack:
            out.append((at, a, b))
    elif isinstance(a, dict) and isinstance(b, dict):
        walk_object(a, b, at, out, slack)
    elif isinstance(a, list) and isinstance(b, list):
        walk_list(a, b, at, out, slack)
    elif type(a) is not type(b) or a != b:
        out.append((at, a, b))


def walk_object(a, b, at, out, slack):
    for key in list(a) + [k for k in b if k not in a]:
        here = f"{at}/{escape(key)}"
        x, y = a.get(key, "absent"), b.get(key, "absent")
        if key == "findings" and at == "":
            continue
        if x is None or y is None:
            out.append((here, x, y))  # output never writes null
        elif key == "leftover":
            walk(x, y, here, out, TOLERANCE * max(scale(a), scale(b)))
        elif key == "difference":
            walk(x, y, here, out, TOLERANCE)
        elif key in KEYED and isinstance(x, list) and isinstance(y, list):
            walk_keyed(x, y, here, out, KEYED[key])
        else:
            walk(x, y, here, out, slack)


def walk_keyed(a, b, at, out, names):
    names = names if all(names[-1] in r for r in a + b) else names[:1]
    left, right = ({k: r for k, r in keyed(rows, names).items() if r.get("sets") != 0} for rows in (a, b))
    for k in list(left) + [k for k in right if k not in left]:
        walk(left.get(k, "absent"), right.get(k, "absent"), f"{at}/{escape(' '.join(map(str, k)))}", out)
    if len(a) != len(keyed(a, names)) or len(b) != len(keyed(b, names)):
        out.append((at, "a row twice", names))


def walk_list(a, b, at, out, slack):
    if len(a) != len(b):
        out.append((at, f"{len(a)} items", f"{len(b)} items"))
        return
    for i, (x, y) in enumerate(zip(a, b)):
        walk(x, y, f"{at}/{i}", out, slack)


def codes(plan, names, but):
    return {tuple(f.get(n) for n in names) for f in plan.get("findings", []) if f.get("code") not in but}


def compare(theirs, ours):
    """(differences, soft differences) of a plan and the oracle's: (pointer, plan, oracle) each."""
    out, soft, but = [], [], ours.get("unchecked_codes", [])
    walk(*({k: v for k, v in p.items() if k != "unchecked_codes"} for p in (theirs, ours)), "", out)
    for names, to in ((("code", "severity"), out), (("code", "severity", "where"), soft)):
        a, b = codes(theirs, names, but), codes(ours, names, but)
        to.extend(("/findings", f, "absent") for f in sorted(a - b))
        to.extend(("/findings", "absent", f) for f in sorted(b - a))
    for key in ("severity", "code", "where", "message"):
        out.extend((f"/findings/{i}/{key}", "absent", "text") for i, f in enumerate(theirs.get("findings", []))
                   if not isinstance(f.get(key), str))
    return out, soft
