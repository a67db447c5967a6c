"""Writing files and folders whole or not at all."""

from __future__ import annotations

import errno
import os
import shutil
import tempfile
from collections.abc import Collection, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from outputs.files.writers import Writer, Written
from outputs.words.print_report import PrintReport
from outputs.words.progress import Progress, silent


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


def write_file(target: Path, write: Writer, *, force: bool) -> PrintReport:
    """Write one file whole and return what is to say of it; a link of this name is replaced, not followed.

    Raises:
        DraftRefused: see `refuse_overwriting`; or this is a folder, or the disk refuses.
    """
    refuse_overwriting(target, force=force)
    with _in_plain_words(target), _hidden_folder(target.parent) as part:
        if target.is_dir():
            raise _refusal(target, "This is a folder; name a file in it.")
        report = _written(part / "new", write)
        _put_file(part / "new", target, force=force)
    return report


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


def write_folder(
    target: Path, writers: Mapping[str, Writer], *, force: bool, progress: Progress = silent
) -> Written:
    """Write every file in hiding, then put them in place together.

    A folder that exists (with `force`) keeps its other files.
    Links in it are replaced, not followed.

    Raises:
        DraftRefused: see `refuse_overwriting`; or this is no folder, or the disk refuses. Whatever fails, the
            folder is as it was before.
    """
    refuse_overwriting(target, force=force)
    reports: dict[Path, PrintReport] = {}
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
                progress(f"writing {name}")
                reports[target / name] = _written(new / name, write)
            if there:
                with _alone_in(target):
                    _exchange(new, target, writers, kept=part / "old")
            else:
                _put_in_place(new, target)
    others = {path.name for path in target.iterdir()} - set(writers)
    return Written(reports, tuple(sorted(others)))


def _written(path: Path, write: Writer) -> PrintReport:
    with path.open("wb") as stream:
        return write(stream)


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
