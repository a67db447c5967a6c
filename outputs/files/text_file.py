"""Opens a text file that a person has edited, or says in one sentence why it is none."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path, PurePath

from drafting.base.errors import DraftRefused, Problem, Severity

__all__ = ["TextFile", "read_file"]

# The files that people fill in here have some thousand bytes; beyond this it is another kind of file.
_MOST_BYTES = 1_000_000


@dataclass(frozen=True)
class TextFile:
    """A text that a person has edited, wherever it was kept.

    Attributes:
        source: The name under which it was asked for, for messages.
        text: What stands in it.
    """

    source: str
    text: str

    @property
    def stem(self) -> str:
        """Its own name without folder and ending."""
        return PurePath(self.source).stem

    @property
    def suffix(self) -> str:
        """The ending of its name in small letters, such as ".csv"."""
        return PurePath(self.source).suffix.lower()


def read_file(path: Path) -> TextFile:
    """Return the text of a file in UTF-8, with or without a byte order mark.

    Raises:
        DraftRefused: for a missing file, a folder, a file that cannot be opened, is larger than 1 MB,
            or holds anything but UTF-8 text.
    """
    data, refusal, line = _bytes_of(path), "", None
    if isinstance(data, str):
        refusal = data
    elif len(data) > _MOST_BYTES:
        refusal = "The file is larger than 1 MB, so it is no file of this kind."
    elif data.startswith((b"\xff\xfe", b"\xfe\xff")):
        refusal = 'The file is saved as UTF-16 ("Unicode"); save it as UTF-8.'
    elif b"\0" in data:
        refusal = "This is no text file."
    else:
        try:
            return TextFile(str(path), data.decode("utf-8-sig"))
        except UnicodeDecodeError as error:
            refusal = "The file is not saved as UTF-8; choose UTF-8 when you save it."
            line = data.count(b"\n", 0, error.start) + 1
    raise DraftRefused([Problem("", refusal, Severity.REFUSAL, line=line)], str(path))


def _bytes_of(path: Path) -> bytes | str:
    """Return the bytes of a file, one more than allowed at most, or why there are none."""
    try:
        if path.is_dir():
            return "This is a folder; name a file in it."
        if path.exists() and not path.is_file():
            return "This is no ordinary file."
        with path.open("rb") as stream:
            return stream.read(_MOST_BYTES + 1)
    except FileNotFoundError:
        return "There is no such file."
    except OSError as error:
        return f"The file cannot be opened: {(error.strerror or 'unknown reason').lower()}."
    except ValueError:  # a zero byte in the name
        return "There can be no file of this name."
