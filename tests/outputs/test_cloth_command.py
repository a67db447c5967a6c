"""The command `cloth`: two files for every plan, and messages for what cannot be meant."""

from __future__ import annotations

import json
from pathlib import Path

import pdfplumber
import pytest
from click.testing import CliRunner, Result

from outputs.commands.main import main
from tests.whole_jeans import DEMO, DEMO_WEARERS

MM = 72 / 25.4
ADA = str(DEMO / f"{DEMO_WEARERS[3]}.toml")


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)

    def call(*words: str) -> Result:
        return CliRunner().invoke(main, ["cloth", *words])

    return call


@pytest.mark.slow
def test_a_plan_is_written_repeated_and_the_same_each_time(run) -> None:
    first = run(ADA, "--out", "one")
    assert first.exit_code == 0, first.output
    assert "denim: buy 1." in first.stdout and "no plan is shorter" in " ".join(first.stdout.split())
    again = run(ADA, "--out", "two")
    assert again.exit_code == 0
    repeated = run(ADA, "--plan", "one/cloth-plan.json", "--out", "three")
    assert repeated.exit_code == 0, repeated.output
    for name in ("cloth-plan.pdf", "cloth-plan.json"):
        content = Path("one", name).read_bytes()
        assert Path("two", name).read_bytes() == content
        assert Path("three", name).read_bytes() == content
    told = json.loads(Path("one/cloth-plan.json").read_text(encoding="utf-8"))
    assert [cloth["cloth"] for cloth in told["cloths"]] == ["denim", "pocketing", "interfacing"]
    assert [cloth["width"] for cloth in told["cloths"]] == [150, 110, 90]


@pytest.mark.slow
def test_the_page_is_drawn_to_its_scale_and_names_every_piece(run) -> None:
    assert run(ADA, "--out", "plan").exit_code == 0
    told = json.loads(Path("plan/cloth-plan.json").read_text(encoding="utf-8"))
    with pdfplumber.open("plan/cloth-plan.pdf") as pdf:
        assert len(pdf.pages) == 3
        for page, cloth in zip(pdf.pages, told["cloths"], strict=True):
            text = page.extract_text()
            scale = float(text.split("Scale 1 : ")[1].split()[0])
            upright = [item for item in page.lines if abs(item["x0"] - item["x1"]) < 0.01]
            high = cloth["length"] * 10 / scale
            xs = {round(x["x0"] / MM, 1) for x in upright if abs(x["height"] / MM - high) < 0.02}
            assert round(max(xs) - min(xs), 1) == round(cloth["width"] * 10 / scale, 1)
            lengths = [round(item["width"] / MM, 3) for item in page.lines]
            assert 50.0 in lengths, "the bar to check the print by"
            assert f"Buy {cloth['buy']}" in text
            right_column = page.crop((107 * MM, 0, page.width, page.height)).extract_text()
            listed = " ".join(right_column.split("What is laid")[1].split())
            for each in cloth["pieces"]:
                name = each["piece"].removesuffix(f" {cloth['cloth']}")
                assert f"{each['number']} {name}" in listed


def test_wrong_widths_are_told_all_at_once(run) -> None:
    result = run(ADA, "--width", "150", "--pocketing-width", "20 cm", "--interfacing-width", "wide")
    assert result.exit_code == 2 and not list(Path().iterdir())
    told = result.stderr.splitlines()
    assert "no unit is stated" in told[0] and told[0].startswith("--width = 150:")
    assert told[1].startswith(
        "--pocketing-width = 20 cm: No cloth is sold this wide. Plausible: between 30 cm"
    )
    assert told[2].startswith("--interfacing-width = wide: The width cannot be read")


def test_a_repeated_plan_takes_no_other_options_of_the_cloth(run) -> None:
    result = run(ADA, "--plan", "plan.json", "--folded", "--width", "150 cm")
    assert result.exit_code == 2
    assert "leave out --width, --folded" in result.stderr


def test_what_is_no_plan_is_refused(run) -> None:
    result = run(ADA, "--plan", ADA)
    assert result.exit_code == 2 and "This is no cloth plan" in result.stderr
    assert run(ADA, "--plan", "nowhere.json").exit_code == 2


def test_a_longer_search_without_its_library_says_what_to_install(
    run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("outputs.cloth.options.find_spec", lambda name: None)
    result = run(ADA, "--seconds", "5")
    assert result.exit_code == 2 and "jeansblock[plan]" in result.stderr


@pytest.mark.slow
def test_shrinkage_and_yards_are_spoken_of(run) -> None:
    result = run(ADA, "--lengthwise-change", "-3", "--one-way", "--folded", "--out", "plan")
    assert result.exit_code == 0
    with pdfplumber.open("plan/cloth-plan.pdf") as pdf:
        words = " ".join(pdf.pages[0].extract_text().split())
    assert "before washing" in words and "right sides together" in words
