"""Writing files and folders whole or not at all, and naming them."""

from __future__ import annotations

import errno
import os
import re
import shutil
import tempfile
import unicodedata
from collections.abc import Callable, Collection, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from outputs.words.progress import tell

_LONGEST = 60
"""Letters of a name that go into a file name: at 4 bytes each they fit the 255 bytes of a file system."""

_DEVICES = re.compile("con|prn|aux|nul|(com|lpt)[0-9]")
"""Names that Windows keeps for devices, with any ending (Microsoft, "Naming Files, Paths")."""

Writer = Callable[[Path], None]
"""Writes one file at the path it is given."""


def safe_name(first: str, *rest: str) -> str:
    """Return a name for a file or folder: lower-case letters and digits of any script, hyphens for all else.

    Args:
        first: any text; cut short when the name would be longer than 60 letters.
        rest: short words that follow it uncut.
    """
    end = "".join(f"-{_hyphened(word)}" for word in rest)
    name = f"{_hyphened(first)[: _LONGEST - len(end)].strip('-')}{end}".strip("-") or "jeans"
    return f"{name}-jeans" if _DEVICES.fullmatch(name) else name


def _hyphened(text: str) -> str:
    # Lower-casing İ leaves a dot that stands alone and would part the word.
    text = unicodedata.normalize("NFKC", text.replace("İ", "i")).lower()
    return "-".join("".join(ch if ch.isalnum() or _is_mark(ch) else " " for ch in text).split())


def _is_mark(letter: str) -> bool:
    """Return whether this is an accent or a vowel sign, a part of the letter before it."""
    return unicodedata.category(letter).startswith("M")


def refuse_overwriting(target: Path, *, force: bool) -> None:
    """Refuse a file or folder that exists, unless `force` allows it, and one whose own place does not exist.

    Raises:
        DraftRefused: with what to do instead.
    """
    with _in_plain_words(target):
        if not force and os.path.lexists(target):
            raise _exists(target)
        if not target.parent.is_dir():
            message = f'There is no folder "{target.parent}" to write into; make it first.'
            raise _refusal(target, message)


def write_file(target: Path, content: bytes, *, force: bool) -> None:
    """Write one file whole; a link of this name is replaced, not followed.

    Raises:
        DraftRefused: see `refuse_overwriting`; or this is a folder, or the disk refuses.
    """
    refuse_overwriting(target, force=force)
    with _in_plain_words(target), _hidden_folder(target.parent) as part:
        if target.is_dir():
            raise _refusal(target, "This is a folder; name a file in it.")
        (part / "new").write_bytes(content)
        _put_file(part / "new", target, force=force)


def make_folder(target: Path, *, force: bool) -> None:
    """Make an empty folder; one that exists (with `force`) stays as it is.

    Raises:
        DraftRefused: see `refuse_overwriting`; or this is no folder, or the disk refuses.
    """
    refuse_overwriting(target, force=force)
    with _in_plain_words(target):
        if not target.is_dir():
            _refuse_non_folder(target)
            target.mkdir()


def refuse_link(target: Path) -> None:
    """Refuse a folder that nobody named, if it is a link: what it leads to is another's.

    Raises:
        DraftRefused: with what to do instead.
    """
    if target.is_symlink():
        message = "This is a link and may lead elsewhere; nothing was changed. Give --out for another place."
        raise _refusal(target, message)


def write_folder(target: Path, writers: Mapping[str, Writer], *, force: bool) -> tuple[Path, ...]:
    """Write every file in hiding, then put them in place together; return where they are.

    A folder that exists (with `force`) keeps its other files. Links in it are replaced, not followed.

    Raises:
        DraftRefused: see `refuse_overwriting`; or this is no folder, or the disk refuses. Whatever fails, the
            folder is as it was before.
    """
    refuse_overwriting(target, force=force)
    with _in_plain_words(target):
        there = target.is_dir()
        if not there:
            _refuse_non_folder(target)
        for name in writers:
            if (target / name).is_dir():
                raise _refusal(target / name, "A folder stands where a file shall be; nothing was changed.")
        # In the folder itself where it exists: it may lie on another disk than its parent.
        with _hidden_folder(target if there else target.parent) as part:
            new = part / "new"
            new.mkdir()
            for name, write in writers.items():
                tell(f"writing {name}")
                write(new / name)
            if there:
                with _alone_in(target):
                    _exchange(new, target, writers, kept=part / "old")
            else:
                _put_in_place(new, target)
    return tuple(target / name for name in writers)


def _refuse_non_folder(target: Path) -> None:
    if os.path.lexists(target):
        raise _refusal(target, "This is not a folder; give --out for another place.")


def _put_file(new: Path, target: Path, *, force: bool) -> None:
    if not force:
        try:
            # Unlike a renaming, this fails when somebody else wrote a file of this name meanwhile.
            os.link(new, target)
        except FileExistsError as error:
            raise _exists(target) from error
        except OSError:
            pass  # a disk without hard links
        else:
            return
    os.replace(new, target)


def _put_in_place(new: Path, target: Path) -> None:
    try:
        new.rename(target)
    except OSError as error:
        # Somebody else made a folder of this name meanwhile.
        if error.errno in (errno.ENOTEMPTY, errno.EEXIST):
            raise _exists(target) from error
        raise


def _exchange(new: Path, target: Path, names: Collection[str], *, kept: Path) -> None:
    """Put the new files in place of the old ones; when one cannot be, all the old ones come back."""
    kept.mkdir()
    old = [name for name in names if os.path.lexists(target / name)]
    try:
        for name in names:
            if name in old:
                _keep(target / name, kept / name)
            os.replace(new / name, target / name)
    except BaseException:
        for name in names:
            if os.path.lexists(kept / name):
                os.replace(kept / name, target / name)
            elif name not in old:
                (target / name).unlink(missing_ok=True)
        raise


def _keep(old: Path, kept: Path) -> None:
    """Give the old file a second name, so that a run killed half way leaves the old or the new in place."""
    try:
        os.link(old, kept, follow_symlinks=False)
    except (OSError, NotImplementedError):
        os.replace(old, kept)  # a disk without hard links, or to links


@contextmanager
def _alone_in(target: Path) -> Iterator[None]:
    """Wait until no other run exchanges files in this folder, so that all of them are of one run."""
    try:
        import fcntl
    except ImportError:  # Windows; two runs at once may mix their files there
        yield
        return
    handle = os.open(target, os.O_RDONLY)
    try:
        with suppress(OSError):  # a disk without locks
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


@contextmanager
def _hidden_folder(home: Path) -> Iterator[Path]:
    """Make a folder in `home` that is gone, with all that is still in it, at the end."""
    part = Path(tempfile.mkdtemp(dir=home, prefix=".writing-"))
    try:
        yield part
    finally:
        shutil.rmtree(part, ignore_errors=True)


@contextmanager
def _in_plain_words(target: Path) -> Iterator[None]:
    """Turn a failure of the disk into a refusal."""
    try:
        yield
    except OSError as error:
        reason = (error.strerror or "unknown reason").lower()
        raise _refusal(target, f"This cannot be written: {reason}. Nothing was changed.") from error


def _exists(target: Path) -> DraftRefused:
    message = (
        "This already exists; nothing was changed. Give --force to replace it, or --out for another place."
    )
    return _refusal(target, message)


def _refusal(target: Path, message: str) -> DraftRefused:
    return DraftRefused([Problem("", message, Severity.REFUSAL)], str(target))
