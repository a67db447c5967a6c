"""What can be wrong with a request for a draft, told as data first and as text second."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

__all__ = ["DraftRefused", "Problem", "Severity"]


class Severity(Enum):
    """How much it matters what a check found or a person typed."""

    NOTE = "note"
    """Worth knowing; nothing to mend."""
    WARNING = "warning"
    """The pattern can be sewn, but something is unusual, or something stated could not be reached."""
    FAULT = "fault"
    """The pattern would not sew together or not go on; it is not written unless forced."""
    REFUSAL = "refusal"
    """No draft can be meant."""


@dataclass(frozen=True)
class Problem:
    """One thing that is wrong or unusual, in the words and the unit of the person who typed it.

    Attributes:
        key: the name concerned, "waist_girth" or "left.thigh_girth"; empty when it is the whole file.
        message: what is wrong and what may have happened, in whole sentences.
        severity: whether the draft is refused for it.
        value: the value as it was typed; empty when there is none.
        plausible: what would have been accepted without remark; empty when no range applies.
        line: line of the file, counted from 1; None when there is no file or no one line.
        source: name of the file where problems of several are told together.
    """

    key: str
    message: str
    severity: Severity
    value: str = ""
    plausible: str = ""
    line: int | None = None
    source: str = ""

    def __str__(self) -> str:
        """Return the problem as one line of text, leaving out what is not known."""
        where = f"line {self.line}: " if self.line is not None else ""
        name = " = ".join(part for part in (self.key, self.value) if part)
        what = f"{name}: " if name else ""
        range_text = f" Plausible: {self.plausible}." if self.plausible else ""
        return _in_sight(f"{where}{what}{self.message}{range_text}")


class DraftRefused(ValueError):
    """A draft cannot be made; `problems` holds every reason at once.

    Warnings may stand among the refusals, so that a person who corrects the one can see to the other.
    """

    def __init__(self, problems: Iterable[Problem], source: str = "") -> None:
        """Hold the problems and, when they come from a file, the name under which it was asked for."""
        self.problems = tuple(problems)
        self.source = source
        # Both go to args as well, so that the exception survives pickling between processes.
        super().__init__(self.problems, source)

    def __str__(self) -> str:
        """Return all problems, one a line, each beginning with the file's name where there is one."""
        marks = {Severity.REFUSAL: "", Severity.WARNING: "warning: "}
        sources = (problem.source or self.source for problem in self.problems)
        return "\n".join(
            f"{_in_sight(source)}{': ' if source else ''}{marks[problem.severity]}{problem}"
            for source, problem in zip(sources, self.problems, strict=True)
        )


def _in_sight(text: str) -> str:
    r"""Return a text in one line; what cannot be seen is written out, such as a line break as "\n".

    Names of files and values typed may hold signs that turn the line round or colour the terminal.
    """
    return "".join(sign if sign.isprintable() else sign.encode("unicode_escape").decode() for sign in text)
