"""What a terminal shows while one waits, and that nobody else ever sees it."""

import io
import os
import subprocess
import sys
from pathlib import Path

import pytest

from outputs.commands.terminal import say, tell, watched
from tests.outputs.typed_files import PLAIN

ROOT = Path(__file__).parents[2]


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def on_screen(written: str) -> str:
    """Return what is left of a line on a screen after it was written over."""
    cells: list[str] = []
    column = 0
    for letter in written:
        if letter == "\r":
            column = 0
            continue
        cells[column : column + 1] = [letter]
        column += 1
    return "".join(cells).rstrip()


def test_each_step_takes_the_place_of_the_one_before_and_the_answer_that_of_all(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    terminal = Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)
    with watched():
        tell("drafting a long-legged person")
        tell("writing")
        assert on_screen(terminal.getvalue()) == "writing ..."
        say("pattern.pdf")
        assert on_screen(terminal.getvalue()) == ""
        tell("drawing")
    assert on_screen(terminal.getvalue()) == ""
    assert capsys.readouterr().out == "pattern.pdf\n"
    assert "\x1b" not in terminal.getvalue()


def test_a_refusal_leaves_no_step_behind(monkeypatch: pytest.MonkeyPatch) -> None:
    terminal = Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)
    with pytest.raises(ValueError), watched():
        tell("drafting")
        raise ValueError
    assert on_screen(terminal.getvalue()) == ""


def test_a_step_never_fills_the_last_column(monkeypatch: pytest.MonkeyPatch) -> None:
    terminal = Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)
    monkeypatch.setenv("COLUMNS", "20")
    with watched():
        tell("writing " + 30 * "x")
        assert len(on_screen(terminal.getvalue())) == 19


def test_without_a_terminal_or_outside_a_command_nothing_is_shown(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with watched():
        tell("drafting")
    monkeypatch.setattr(sys, "stderr", terminal := Terminal())
    tell("drafting")
    assert terminal.getvalue() == "" and capsys.readouterr() == ("", "")


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="there are no such terminals")
def test_a_draft_on_a_terminal_names_its_steps_on_stderr_alone(tmp_path: Path) -> None:
    import pty

    (tmp_path / "ada.toml").write_text(PLAIN)
    ours, theirs = pty.openpty()
    words = [sys.executable, "-m", "outputs.commands.main", "draft", "ada.toml", "--format", "svg"]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    ended = subprocess.run(words, cwd=tmp_path, env=env, stdout=subprocess.PIPE, stderr=theirs)
    os.close(theirs)
    shown = os.read(ours, 65536).decode()
    os.close(ours)
    assert ended.returncode == 0 and b"\r" not in ended.stdout and b" ..." not in ended.stdout
    assert "drafting straight ..." in shown and "writing pattern.svg ..." in shown
    assert on_screen(shown) == "" and "\x1b" not in shown
