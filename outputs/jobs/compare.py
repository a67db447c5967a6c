"""Two versions of a pattern beside each other, and a picture of both."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from outputs.compare.versions import TwoVersions, compare_versions
from outputs.compare.versions_picture import write_versions
from outputs.jobs.result import Result
from outputs.reading.draft_record import Inputs
from outputs.words.progress import Progress, silent

PICTURE = "compare.png"
"""Its name where none is asked for."""


@dataclass(frozen=True, kw_only=True, eq=False)
class VersionsCompared(Result):
    """Two versions drafted anew.

    Attributes:
        versions: What moved, how far and because of which input.
    """

    versions: TwoVersions


def compare(
    old: Inputs, new: Inputs, *, names: tuple[str, str] = ("old", "new"), progress: Progress = silent
) -> VersionsCompared:
    """Draft both versions, and the old one with each input that differs alone.

    Args:
        old: What the older one was made from.
        new: What the newer one was made from.
        names: What the two are called in a refusal.
        progress: Is told what is drafted.

    Raises:
        DraftRefused: one of the two cannot be drafted.
    """
    versions = compare_versions(old, new, names, progress)
    return VersionsCompared(files={PICTURE: partial(write_versions, versions)}, versions=versions)
