"""The examples in the docstrings run as they are written."""

import doctest
from importlib import import_module
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
SHOWING = {
    ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
    for floor in ("drafting", "styles", "outputs")
    for path in (ROOT / floor).rglob("*.py")
    if "\n>>> " in path.read_text(encoding="utf-8") or "\n    >>> " in path.read_text(encoding="utf-8")
}
"""The modules that show how they are used."""


def test_both_public_faces_show_how_they_are_used() -> None:
    assert {"drafting", "styles"} <= SHOWING


@pytest.mark.parametrize("name", sorted(SHOWING))
def test_every_example_of_a_docstring_comes_out_as_it_says(name: str) -> None:
    ran = doctest.testmod(import_module(name))
    assert ran.attempted > (4 if name in ("drafting", "styles") else 0) and not ran.failed
