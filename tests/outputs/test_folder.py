"""Files and folders appear whole or not at all, under names that every disk takes."""

import errno
import os
import tempfile
from pathlib import Path
from typing import BinaryIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused
from outputs.files.folder import make_folder, write_file, write_folder
from outputs.files.writers import Writer, bytes_writer, text_writer
from outputs.words.file_names import safe_name
from outputs.words.print_report import PrintReport

saying = text_writer


def failing(error: BaseException) -> Writer:
    def write(stream: BinaryIO) -> PrintReport:
        stream.write(b"half")
        raise error

    return write


def tree(folder: Path) -> dict[str, str]:
    """Return every file under a folder, hidden ones too, with what is in it."""
    return {str(p.relative_to(folder)): p.read_text() for p in sorted(folder.rglob("*")) if p.is_file()}


def refusal(target: Path, writers: dict[str, Writer], *, force: bool = False) -> str:
    with pytest.raises(DraftRefused) as caught:
        write_folder(target, writers, force=force)
    return str(caught.value)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("Ada Field", "ada-field"),
        ("Żaneta Łęcka", "żaneta-łęcka"),
        ("İPEK IŞIK", "ipek-işik"),
        ("देवी", "देवी"),
        ("../../etc/passwd", "etc-passwd"),
        ("C:\\jeans\\Ada", "c-jeans-ada"),
        ("a\x00b\nc\x1b[31m", "a-b-c-31m"),
        ("...", "jeans"),
        ("", "jeans"),
        ("🙂", "jeans"),
        ("\udcff", "jeans"),
        ("-rf", "rf"),
        ("CON", "con-jeans"),
        ("com1", "com1-jeans"),
        ("lpt¹", "lpt1-jeans"),
        ("Conrad", "conrad"),
        ("x" * 10_000, "x" * 60),
    ],
)
def test_any_name_becomes_a_file_name(typed: str, name: str) -> None:
    assert safe_name(typed) == name


def test_a_long_name_leaves_room_for_the_style() -> None:
    assert safe_name("x" * 100, "straight") == "x" * 51 + "-straight"
    assert safe_name("🙂", "straight") == "straight"


@given(st.text())
def test_no_text_leads_out_of_the_folder(text: str) -> None:
    name = safe_name(text, "straight")
    assert Path(name).name == name and name not in (".", "..") and not name.startswith(("-", "."))
    assert len(name.encode()) < 255 and name.isprintable()
    # Signs that Windows refuses (Microsoft, "Naming Files, Paths, and Namespaces").
    assert not set(name) & set('<>:"/\\|?*') and name[-1] not in ". "


def test_a_new_folder_holds_what_the_writers_wrote(tmp_path: Path) -> None:
    target = tmp_path / "ada"
    written = write_folder(target, {"a.txt": saying("1"), "b.txt": saying("2")}, force=False)
    assert list(written.files) == [target / "a.txt", target / "b.txt"]
    assert tree(tmp_path) == {"ada/a.txt": "1", "ada/b.txt": "2"}


def test_files_are_open_to_the_readers_that_other_files_are_open_to(tmp_path: Path) -> None:
    (tmp_path / "plain").write_text("")
    (tmp_path / "folder").mkdir()
    write_folder(tmp_path / "ada", {"a.txt": saying("1")}, force=False)
    write_file(tmp_path / "b.txt", bytes_writer(b"2"), force=False)
    plain, folder = (tmp_path / "plain").stat().st_mode, (tmp_path / "folder").stat().st_mode
    assert (tmp_path / "ada").stat().st_mode == folder
    assert (tmp_path / "ada" / "a.txt").stat().st_mode == plain
    assert (tmp_path / "b.txt").stat().st_mode == plain


def test_nothing_is_overwritten_without_force(tmp_path: Path) -> None:
    write_folder(tmp_path / "ada", {"a.txt": saying("old")}, force=False)
    write_file(tmp_path / "b.txt", bytes_writer(b"old"), force=False)
    assert "already exists" in refusal(tmp_path / "ada", {"a.txt": saying("new")})
    with pytest.raises(DraftRefused, match="--force"):
        write_file(tmp_path / "b.txt", bytes_writer(b"new"), force=False)
    assert tree(tmp_path) == {"ada/a.txt": "old", "b.txt": "old"}


def test_force_replaces_our_files_and_keeps_the_others(tmp_path: Path) -> None:
    write_folder(tmp_path / "ada", {"a.txt": saying("old"), "mine.txt": saying("mine")}, force=False)
    write_folder(tmp_path / "ada", {"a.txt": saying("new"), "b.txt": saying("more")}, force=True)
    assert tree(tmp_path) == {"ada/a.txt": "new", "ada/b.txt": "more", "ada/mine.txt": "mine"}


@pytest.mark.parametrize("error", [OSError(errno.ENOSPC, "No space left on device"), KeyboardInterrupt()])
@pytest.mark.parametrize("there", [False, True])
def test_a_writer_that_fails_leaves_everything_as_it_was(
    tmp_path: Path, error: BaseException, there: bool
) -> None:
    if there:
        write_folder(tmp_path / "ada", {"a.txt": saying("old")}, force=False)
    before = tree(tmp_path)
    with pytest.raises((DraftRefused, KeyboardInterrupt)):
        write_folder(tmp_path / "ada", {"a.txt": saying("new"), "b.txt": failing(error)}, force=there)
    assert tree(tmp_path) == before
    assert sorted(path.name for path in tmp_path.iterdir()) == (["ada"] if there else [])


def test_a_full_disk_is_told_in_one_sentence(tmp_path: Path) -> None:
    full = failing(OSError(errno.ENOSPC, "No space left on device"))
    target = tmp_path / "ada"
    assert refusal(target, {"a": full}) == (
        f"{target}: This cannot be written: no space left on device. Nothing was changed."
    )


def test_files_already_exchanged_come_back_when_a_later_one_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "ada"
    write_folder(target, {name: saying(f"old {name}") for name in "acd"}, force=False)
    replace = os.replace

    def stubborn(source: Path, to: Path) -> None:
        if to == target / "c" and Path(source).read_text() == "new c":
            raise PermissionError(errno.EACCES, "Permission denied")
        replace(source, to)

    monkeypatch.setattr(os, "replace", stubborn)
    writers = {name: saying(f"new {name}") for name in "abcd"}
    assert "permission denied. Nothing was changed." in refusal(target, writers, force=True)
    assert tree(tmp_path) == {f"ada/{name}": f"old {name}" for name in "acd"}


def test_of_two_runs_at_once_the_second_is_refused(tmp_path: Path) -> None:
    target = tmp_path / "ada"

    def overtaken(stream: BinaryIO) -> PrintReport:
        write_folder(target, {"a": saying("first")}, force=False)
        return saying("late")(stream)

    assert "already exists" in refusal(target, {"a": overtaken})
    assert tree(tmp_path) == {"ada/a": "first"}


def test_links_in_the_folder_are_replaced_and_not_followed(tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_text("precious")
    target = tmp_path / "ada"
    target.mkdir()
    (target / "a").symlink_to(outside)
    (tmp_path / "b").symlink_to(outside)
    write_folder(target, {"a": saying("new")}, force=True)
    write_file(tmp_path / "b", bytes_writer(b"new"), force=True)
    assert outside.read_text() == "precious"
    assert not (target / "a").is_symlink() and (target / "a").read_text() == "new"
    assert not (tmp_path / "b").is_symlink() and (tmp_path / "b").read_text() == "new"


def test_a_link_to_nowhere_counts_as_something_that_is_there(tmp_path: Path) -> None:
    target = tmp_path / "ada"
    target.symlink_to(tmp_path / "gone")
    assert "already exists" in refusal(target, {"a": saying("new")})
    assert "not a folder" in refusal(target, {"a": saying("new")}, force=True)
    assert not (tmp_path / "gone").exists()


def test_a_folder_is_never_replaced_by_a_file_nor_a_file_by_a_folder(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    (tmp_path / "ada" / "a").mkdir(parents=True)
    (tmp_path / "ada" / "a" / "deep").write_text("mine too")
    before = tree(tmp_path)
    assert "not a folder" in refusal(tmp_path / "file", {"a": saying("new")}, force=True)
    assert "A folder stands" in refusal(tmp_path / "ada", {"b": saying("1"), "a": saying("2")}, force=True)
    with pytest.raises(DraftRefused, match="This is a folder"):
        write_file(tmp_path / "ada", bytes_writer(b"new"), force=True)
    with pytest.raises(DraftRefused, match="not a folder"):
        make_folder(tmp_path / "file", force=True)
    assert tree(tmp_path) == before


def test_an_empty_folder_is_made_once(tmp_path: Path) -> None:
    make_folder(tmp_path / "ada", force=False)
    assert (tmp_path / "ada").is_dir()
    with pytest.raises(DraftRefused, match="already exists"):
        make_folder(tmp_path / "ada", force=False)
    make_folder(tmp_path / "ada", force=True)


@pytest.mark.parametrize("place", ["no/such/ada", "file/ada", "x" * 300])
def test_a_place_that_cannot_be_is_refused(tmp_path: Path, place: str) -> None:
    (tmp_path / "file").write_text("mine")
    said = refusal(tmp_path / place, {"a": saying("new")})
    assert "There is no folder" in said or "This cannot be written: " in said
    assert tree(tmp_path) == {"file": "mine"}


def test_a_folder_without_permission_is_told_in_plain_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def locked(**_: object) -> str:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(tempfile, "mkdtemp", locked)
    assert "cannot be written: permission denied." in refusal(tmp_path / "ada", {"a": saying("new")})
    with pytest.raises(DraftRefused, match="permission denied"):
        write_file(tmp_path / "b", bytes_writer(b"new"), force=False)
