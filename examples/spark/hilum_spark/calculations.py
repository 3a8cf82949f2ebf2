"""What can be calculated: function for rows, arguments in order with the base unit of each, base unit of the result."""

_SEASON = {"limit": "kg/m2", "used": "kg/m2", "on_seed": "kg/seed"}
_SOWN = _SEASON | {"sown": "seeds/m2"}

# "" is a plain number. The formulas are in hilum.h.
CALCULATIONS: dict[str, tuple[str, dict[str, str], str]] = {
    "seeds": ("seed_size_count_in", {"size": "seeds/kg", "mass": "kg"}, "seeds"),
    "mass": ("seed_size_mass_of", {"size": "seeds/kg", "seeds": "seeds"}, "kg"),
    "sown": ("sown_by_mass", {"sowing": "kg/m2", "size": "seeds/kg"}, "seeds/m2"),
    "area": ("sown_area", {"sown": "seeds/m2", "seeds": "seeds"}, "m2"),
    "product": ("rate_per_mass_needed", {"rate": "m3/kg", "mass": "kg"}, "m3"),
    "dry_product": ("dry_per_mass_needed", {"rate": "kg/kg", "mass": "kg"}, "kg"),
    "product_for_seeds": ("rate_per_seed_needed", {"dose": "m3/seed", "seeds": "seeds"}, "m3"),
    "dry_product_for_seeds": ("dry_per_seed_needed", {"dose": "kg/seed", "seeds": "seeds"}, "kg"),
    "covers": ("coverage_at", {"usable": "m3", "rate": "m3/kg"}, "kg"),
    "dry_covers": ("coverage_at_dry", {"usable": "kg", "rate": "kg/kg"}, "kg"),
    "sets": ("sets_needed", {"mass": "kg", "covers": "kg"}, ""),
    "whole_sets": ("sets_needed_whole", {"sets": ""}, ""),
    "active": ("rate_per_mass_active", {"rate": "m3/kg", "content": "kg/m3"}, "kg/kg"),
    "dry_active": ("dry_per_mass_active", {"rate": "kg/kg", "share": "%"}, "kg/kg"),
    "active_per_seed": ("active_per_mass_to_per_seed", {"rate": "kg/kg", "size": "seeds/kg"}, "kg/seed"),
    "active_per_area": ("season_limit_total", _SOWN, "kg/m2"),
    "season_share": ("season_limit_share", _SOWN, ""),
    "over_season_limit": ("season_limit_exceeded", _SOWN, ""),
    "max_sowing": ("season_limit_max_sowing", _SEASON, "seeds/m2"),
    "cells": ("titre_per_volume_cells", {"titre": "CFU/m3", "dose": "m3/seed", "recovery": "%"}, "CFU/seed"),
    "dry_cells": ("titre_per_mass_cells", {"titre": "CFU/kg", "dose": "kg/seed", "recovery": "%"}, "CFU/seed"),
    # After the storage of each row: what is left, and how long the seed may wait (life, partner_life where stated).
    "left": ("survival_count", {"cells": "CFU/seed", "after": "s"}, "CFU/seed"),
    "plant_by": ("survival_crossing", {"cells": "CFU/seed", "minimum": "CFU/seed"}, "s"),
}
TYPES = {"whole_sets": "bigint", "over_season_limit": "boolean"}
STORED, LIVES = {"lasts": "s", "at": "degC"}, {"life": "s", "partner_life": "s"}

# A dose in another basis, one step at a time: from, to, function, the argument beside the dose.
CONVERSIONS = [
    (f"{of}/{a}", f"{of}/{b}", f"{kind}_per_{function}", beside)
    for kind, of in (("rate", "m3"), ("dry", "kg"))
    for a, b, function, beside in (
        ("kg", "seed", "mass_to_per_seed", {"size": "seeds/kg"}),
        ("seed", "kg", "seed_to_per_mass", {"size": "seeds/kg"}),
        ("seed", "m2", "seed_to_per_area", {"sown": "seeds/m2"}),
        ("m2", "seed", "area_to_per_seed", {"sown": "seeds/m2"}),
    )
]

DOSES = {"kg": "rate", "seed": "dose", "m2": "per_area"}

# HILUM_OF_… of an argument, for a number that cannot be read: not finite, or beyond 1e30.
SUBJECTS = dict(mass=1, seeds=2, size=3, seed_unit=6, bushel=7, sown=11, sowing=12, rate=14, dose=16, per_area=18)
SUBJECTS |= dict(usable=19, share=23, content=23, titre=24, recovery=28, lasts=35, at=36, after=37, covers=48, sets=52, cells=16)
SUBJECTS |= dict(limit=72, used=73, on_seed=16, minimum=16, life=47, partner_life=47)
