"""A draft by proportions alone: asked for on the command line, kept in the record, and drafted again."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from outputs.commands.main import main
from tests.outputs.typed_files import FULL


def run(*words: str) -> Result:
    return CliRunner().invoke(main, words)


def _crotch(folder: str) -> dict[str, object]:
    return json.loads((Path(folder) / "figures.json").read_text(encoding="utf-8"))["crotch"]


@pytest.fixture
def ada(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("ada.toml").write_text(FULL, encoding="utf-8")


def test_draft_leaves_the_crotch_seam_as_the_proportions_give_it(ada: None) -> None:
    assert run("draft", "ada.toml", "--out", "fitted", "--format", "svg").exit_code == 0
    assert run("draft", "ada.toml", "--out", "alone", "--format", "svg", "--proportions-alone").exit_code == 0
    assert _crotch("fitted")["means"] and _crotch("alone")["means"] == []
    assert _crotch("alone")["total"] != _crotch("fitted")["total"]
    record = json.loads((Path("alone") / "inputs.json").read_text(encoding="utf-8"))
    assert record["proportions_alone"] is True


def test_compare_names_the_fit_as_what_changed(ada: None) -> None:
    run("draft", "ada.toml", "--out", "fitted", "--format", "svg")
    run("draft", "ada.toml", "--out", "alone", "--format", "svg", "--proportions-alone")
    said = run("compare", "alone", "fitted")
    assert said.exit_code == 0
    assert "proportions alone" in said.stdout and "fitted" in said.stdout


def test_a_lesson_is_marked_by_the_draft_it_was_given(ada: None) -> None:
    assert run("worksheet", "ada.toml", "--proportions-alone").exit_code == 0
    assert run("mark", "ada.toml", "form.toml", "--form", "--proportions-alone").exit_code == 0
    assert "crotch" in Path("form.toml").read_text(encoding="utf-8")
