"""Steps of a calculation, and what is checked of them before anything runs: columns, types and units."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from .calculations import CALCULATIONS, CONVERSIONS, DOSES, LIVES, STORED, TYPES
from .library import BUSHEL_NOT_GIVEN, UNIT_NOT_GIVEN, HilumError, Library


@dataclass(frozen=True)
class Column:
    """A column with its unit, and the columns that say what "unit" and "bu" in that unit are."""

    name: str
    argument: str
    unit: str | None
    of: tuple["Column | None", "Column | None"] = (None, None)


@dataclass(frozen=True)
class Step:
    """One new column and its codes, made by `step`; it can run when `Contract.ready` has looked at it."""

    what: str
    into: str
    unit: str | None
    names: Mapping[str, str]
    curves: Mapping[str, Mapping[str, object]]
    columns: Mapping[str, Column] = field(default_factory=dict)
    calls: tuple[tuple[str, tuple[str, ...]], ...] = ()
    result: Column | None = None

    def __str__(self) -> str:
        return f'step "{self.into}" ({self.what})'


def step(what: str, into: str, unit: str | None = None, *, curves: Mapping | None = None, **columns: str) -> Step:
    """A column `into`, in `unit`, and its codes `into_code`; each argument of a calculation names a column.

    what: a name of CALCULATIONS, or "dose": a dose in another basis (dose, and size, sown, seed_unit, bushel as needed).
    "left" and "plant_by" also take product, with a curve for each, and the arrays lasts and at: periods of storage.
    """
    return Step(what, into, unit, columns, curves or {})


class Contract:
    """Types and units of a table's columns."""

    def __init__(self, library: Library, columns: Mapping[str, tuple[str, str | None]]) -> None:
        self._measure, self._words, self._curves = library.measure, library.words, library.curves
        self._columns = dict(columns)

    def _column(self, step: Step, argument: str, bases: list[str], kind: str = "double") -> Column:
        name, like = step.names.get(argument), f", as in {bases[0]}" if bases else ""
        if name not in self._columns:
            raise HilumError(f"{step} needs {argument}{like}: there is no column {name or 'named for it'}")
        given, unit = self._columns[name]
        if given != kind:
            raise HilumError(f'{step}: column "{name}" for {argument} is {given}; cast it to {kind}')
        if not bases:
            return Column(name, argument, None)
        if unit is None:
            raise HilumError(f'{step}: column "{name}" has no unit; say with in_units which{like}')
        _, measures, needs = self._measure(f"1 {unit}", f'{step}: column "{name}" in ')
        wanted = [self._measure(f"1 {base}")[1] for base in bases]
        if measures not in wanted:
            is_, must = self._words(measures), self._words(wanted[0]) + like
            raise HilumError(f'{step}: column "{name}" is in {unit} ({is_}), but {argument} must be {must}')
        if argument == "dose":
            argument = DOSES[bases[wanted.index(measures)].partition("/")[2]]
        return Column(name, argument, unit, self._of(step, needs))

    def _of(self, step: Step, needs: int) -> tuple[Column | None, Column | None]:
        unit = self._column(step, "seed_unit", ["seeds"]) if needs == UNIT_NOT_GIVEN else None
        return unit, self._column(step, "bushel", ["kg"]) if needs == BUSHEL_NOT_GIVEN else None

    def _path(self, step: Step, unit: str) -> tuple[list[tuple[str, tuple[str, ...]]], dict[str, str]]:
        """The functions from the basis of the column to that of the result, and what they take beside the dose."""
        start, end = (self._measure(f"1 {text}", f"{step}: ")[1] for text in (unit, step.unit or "%"))
        paths: dict = {start: ([], {})}
        for *ends, function, beside in CONVERSIONS * 2:
            a, b = (self._measure(f"1 {base}")[1] for base in ends)
            if a in paths and b not in paths:
                paths[b] = ([*paths[a][0], (function, tuple(beside))], paths[a][1] | beside)
        if end not in paths:
            raise HilumError(f"{step}: a dose in {unit} cannot be turned into {step.unit or 'a number'}")
        return paths[end]

    def ready(self, step: Step) -> Step:
        """The step with its columns, or what is wrong with them; later steps may take what it makes."""
        columns: dict[str, Column] = {}
        if step.into in self._columns:
            raise HilumError(f"{step}: there is already a column {step.into}")
        if step.what == "dose":
            columns["dose"] = self._column(step, "dose", ["m3/kg", *(row[0] for row in CONVERSIONS)])
            (calls, takes), gives = self._path(step, columns["dose"].unit or ""), step.unit or ""
        elif step.what in CALCULATIONS:
            function, takes, gives = CALCULATIONS[step.what]
            calls = [(function, tuple(takes)[1:])]
        else:
            raise HilumError(f"{step}: there is no such calculation, but dose, {', '.join(CALCULATIONS)}")
        if step.what in ("left", "plant_by"):
            takes = takes | {name: base for name, base in LIVES.items() if name in step.names}
            columns = {name: self._column(step, name, [base], "array<double>") for name, base in STORED.items()}
            columns["product"] = self._column(step, "product", [], "string")
            self._curves(step.curves.values())
        columns |= {name: self._column(step, name, [base] if base else []) for name, base in takes.items()}
        made, must = (self._measure(f"1 {unit}", f"{step}: ")[1:] if unit else ((), 0) for unit in (step.unit, gives))
        if made[0] != must[0]:
            raise HilumError(f"{step} gives {f'a column as in {gives}' if gives else 'a plain number'}, not {step.unit}")
        self._columns[step.into] = (TYPES.get(step.what, "double"), step.unit)
        result = Column(step.into, "", step.unit, self._of(step, made[1]))
        return replace(step, columns=columns, calls=tuple(calls), result=result)
