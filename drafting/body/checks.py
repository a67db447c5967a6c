"""Says what is missing, impossible or unusual in a set of measurements, everything at once."""

from collections.abc import Mapping
from math import isfinite
from numbers import Real
from types import NoneType

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.body.measurement_table import MEASUREMENTS, MeasurementSpec, Need, Range
from drafting.body.measurements import Measurements, Population, SideMeasurements, WaistLevel, term_of
from drafting.body.relation import Relation
from drafting.body.relations import RELATIONS

__all__ = ["Wording", "check_length", "check_measurements", "refuse_meaningless", "usual_reading"]


class Wording:
    """How problems speak of lengths: here in millimetres, as a caller from Python typed them.

    The checks know millimetres only; who reads a file in another unit gives its own wording.
    """

    def show(self, mm: float) -> str:
        """Return a length as the reader of the problem reads it."""
        return f"{mm:.0f} mm"

    def show_range(self, bounds: Range) -> str:
        """Return both ends of a range; no length of a body is below zero, so neither is its range."""
        return f"{self.show(max(bounds.low, 0.0))} to {self.show(bounds.high)}"

    def typed(self, key: str, value: object) -> str:
        """Return the value of a key as it was typed, cut short when it is endless."""
        # Python refuses to write out whole numbers of more than some thousand digits.
        text = "a huge number" if isinstance(value, int) and abs(value) > 10**60 else repr(value)
        return text if len(text) <= 60 else text[:57] + "..."

    def other_reading(self, key: str, mm: float, usual: Range) -> str:
        """Return the doubt that the value was meant in another unit; empty when no other reading is usual."""
        found = usual_reading(usual, mm, {"cm": 10.0, "in": 25.4})
        if not found:
            return ""
        unit, meant = found
        return f" Millimetres are expected; did you mean {mm:g} {unit} = {self.show(meant)}?"


def usual_reading(usual: Range, mm: float, factors: Mapping[str, float]) -> tuple[str, float] | None:
    """Return the first name whose factor brings the length into the usual range, and that length in mm."""
    readings = ((name, mm * factor) for name, factor in factors.items())
    return next((reading for reading in readings if usual.holds(reading[1])), None)


def check_measurements(measurements: Measurements, *, wording: Wording | None = None) -> list[Problem]:
    """Return every problem found in the measurements, refusals and warnings, in the order of the table.

    Args:
        measurements: lengths in millimetres. Wrong types, NaN, infinity, zero and below are reported too.
        wording: how to speak of lengths; in millimetres when None.

    Returns:
        The problems; empty for a complete and ordinary body. A value outside its possible range takes no
        part in the relations, so that one slip gives one problem.
    """
    wording = wording or Wording()
    if not isinstance(measurements, Measurements):
        found = type(measurements).__name__
        return [Problem("", f"Measurements are expected, not {found}.", Severity.REFUSAL)]
    problems = _check_choices(measurements) + _check_needed(measurements)
    known: dict[str, float] = {}
    for key, value in measurements.given().items():
        problem = check_length(key, value, wording)
        if problem:
            problems.append(problem)
        if problem is None or problem.severity is Severity.WARNING:
            known[key] = float(value)
    for relation in RELATIONS:
        for used in relation.judged(known):
            problems.extend(_check_relation(relation, used, known, wording))
    return problems


def refuse_meaningless(
    measurements: Measurements, *, wording: Wording | None = None, source: str = ""
) -> tuple[Problem, ...]:
    """Return the warnings, once it is sure that a draft would mean something.

    Args:
        measurements: lengths in millimetres.
        wording: how to speak of lengths; in millimetres when None.
        source: name of the file that they come from.

    Raises:
        DraftRefused: with all refusals at once.
    """
    problems = check_measurements(measurements, wording=wording)
    refusals = [problem for problem in problems if problem.severity is Severity.REFUSAL]
    if refusals:
        raise DraftRefused(refusals, source)
    return tuple(problems)


def _spec(key: str) -> MeasurementSpec:
    return MEASUREMENTS[key.rpartition(".")[2]]


def _check_choices(measurements: Measurements) -> list[Problem]:
    expected: dict[str, tuple[type, ...]] = {
        "waist_taken_at": (WaistLevel,),
        "estimate_like": (Population,),
        "left": (SideMeasurements, NoneType),
        "right": (SideMeasurements, NoneType),
    }
    problems = []
    for key, kinds in expected.items():
        value = getattr(measurements, key)
        if not isinstance(value, kinds):
            message = f"This should be of the type {kinds[0].__name__}."
            problems.append(Problem(key, message, Severity.REFUSAL, Wording().typed(key, value)))
    return problems


def _check_needed(measurements: Measurements) -> list[Problem]:
    given = measurements.given()
    problems = []
    for spec in MEASUREMENTS.values():
        if spec.need is Need.NEEDED and spec.key not in given:
            sided = any(key.endswith(f".{spec.key}") for key in given)
            besides = " Give it once for the whole body, besides its sides." if sided else ""
            message = f"The {spec.term} is needed for a draft.{besides}"
            problems.append(Problem(spec.key, message, Severity.REFUSAL))
    either = [spec for spec in MEASUREMENTS.values() if spec.need is Need.ONE_OF]
    if not any(spec.key in given for spec in either):
        names = " or ".join(f"{spec.term} ({spec.key})" for spec in either)
        message = f"One of these is needed for a draft: {names}."
        problems.append(Problem(either[0].key, message, Severity.REFUSAL))
    return problems


def check_length(key: str, value: object, wording: Wording) -> Problem | None:
    """Return what is wrong with one value in millimetres by itself; None when nothing is.

    Args:
        key: the measurement, "waist_girth" or "left.thigh_girth".
        value: anything; wrong types, NaN, infinity, zero and below are refused, an unusual length warned of.
        wording: how to speak of lengths.
    """
    spec, term = _spec(key), term_of(key)
    plausible = wording.show_range(spec.usual)
    typed = wording.typed(key, value)
    if isinstance(value, bool) or not isinstance(value, Real):
        return Problem(key, f"The {term} is not a number.", Severity.REFUSAL, typed, plausible)
    try:
        mm = float(value)
    except OverflowError:
        mm = float("inf")
    if not isfinite(mm) or mm <= 0:
        return Problem(key, f"The {term} must be a length above zero.", Severity.REFUSAL, typed, plausible)
    if spec.usual.holds(mm):
        return None
    doubt = wording.other_reading(key, mm, spec.usual)
    if spec.possible.holds(mm):
        return Problem(key, f"The {term} is unusual.{doubt}", Severity.WARNING, typed, plausible)
    reason = f"The {term} is {'smaller' if mm < spec.possible.low else 'larger'} than a draft can serve."
    return Problem(key, reason + doubt, Severity.REFUSAL, typed, plausible)


def _check_relation(
    relation: Relation, used: Mapping[str, str], known: Mapping[str, float], wording: Wording
) -> list[Problem]:
    key = used[relation.key]
    judged = known[key]
    others = [known[used[name]] for name in relation.given]
    usual = relation.usual(*others)
    if usual.holds(judged):
        return []
    severity = Severity.WARNING if relation.possible(*others).holds(judged) else Severity.REFUSAL
    verb = "does not go well" if severity is Severity.WARNING else "cannot go"
    beside = " and ".join(
        f"{term_of(used[name])} {wording.show(mm)}" for name, mm in zip(relation.given, others, strict=True)
    )
    message = f"The {term_of(key)} {wording.show(judged)} {verb} with {beside}."
    if relation.compare:
        name, figure = relation.compare
        apart = wording.show(abs(judged - figure(*others)))
        message += f" By {name} it is {wording.show(figure(*others))}: {apart} apart."
    plausible = f"{wording.show_range(usual)} beside {'them' if len(others) > 1 else 'it'}"
    return [Problem(key, f"{message} {relation.ask}", severity, wording.typed(key, judged), plausible)]
