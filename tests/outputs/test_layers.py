"""Layers read back from the file by readers of another make, and hidden one by one."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from functools import cache

import numpy as np
import pdfplumber
import pypdfium2
import pytest
from pdfplumber.page import Page

from outputs.canvas.layers import LAYERS, Layer
from outputs.canvas.typeface import Typeface
from outputs.paper.paper import A4, Roll
from outputs.paper.printer_scale import PrinterScale
from outputs.print.pdf import write_page, write_sheets
from outputs.print.roll import laid_on_roll
from outputs.print.single_page import SinglePage
from outputs.sheets.tiling import tiled
from tests.outputs import samples

NAMES = [layer.value for layer in Layer]


@cache
def tiles() -> bytes:
    target = io.BytesIO()
    write_sheets(samples.pattern(), tiled(samples.pattern(), A4), target)
    return target.getvalue()


@cache
def roll() -> bytes:
    page = laid_on_roll(samples.pattern(), Roll("roll 36 in", 914.4), PrinterScale(), Typeface())
    assert isinstance(page, SinglePage)
    target = io.BytesIO()
    write_page(samples.pattern(), page, target)
    return target.getvalue()


def hidden(data: bytes, *layers: str) -> bytes:
    """Return the file with some layers off: /OFF in the place of /ON, of the same length."""
    (listed,) = re.findall(rb"/ON (\[[^]]*\])", data)
    groups = dict(zip(NAMES, re.findall(rb"\d+ 0 R", listed), strict=True))
    off = b"/OFF [ %s" % b" ".join(groups[layer] for layer in layers)
    was = b"/ON " + listed
    assert len(off) < len(was)
    return data.replace(was, off.ljust(len(was) - 1) + b"]")


@cache
def grey(data: bytes) -> list[np.ndarray]:
    """Return all pages at a pixel a point, 0 black to 255 white."""
    pages = pypdfium2.PdfDocument(data)
    return [np.asarray(page.render(scale=1.0, grayscale=True).to_pil()) for page in pages]


@pytest.mark.parametrize("made", [tiles, roll])
def test_the_layers_are_listed_by_name_and_all_shown(made: Callable[[], bytes]):
    data = made()
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        properties = pdf.doc.catalog["OCProperties"]
        named = [group.resolve()["Name"].decode() for group in properties["OCGs"]]
        shown = [group.resolve()["Name"].decode() for group in properties["D"]["ON"]]
        order = [group.resolve()["Name"].decode() for group in properties["D"]["Order"]]
        for page in pdf.pages:
            groups = page.page_obj.resources["Properties"].values()
            assert {group.resolve()["Name"].decode() for group in groups} == set(NAMES)
    assert named == shown == order == NAMES
    assert b"/OFF" not in data


@pytest.mark.slow
@pytest.mark.parametrize("made", [tiles, roll])
@pytest.mark.parametrize("layer", NAMES)
def test_hiding_a_layer_leaves_out_its_ink_and_no_other(made: Callable[[], bytes], layer: str):
    data = made()
    alone = [other for other in NAMES if other != layer]
    files = (data, hidden(data, layer), hidden(data, *alone))
    lost = 0
    for whole, without, only in zip(*map(grey, files), strict=True):
        assert (without >= whole).all()
        gone = (whole < 128) & (without > 200)
        assert (only[gone] < 255).all(), "ink went with the layer that was not on it"
        lost += int(gone.sum())
    assert lost > 50


def test_with_all_layers_hidden_the_joins_bars_and_names_of_the_sheets_remain():
    bare = hidden(tiles(), *NAMES)
    left, whole = grey(bare)[0] < 200, grey(tiles())[0] < 200
    assert 0 < left.sum() < whole.sum()
    with pdfplumber.open(io.BytesIO(tiles())) as pdf:
        page: Page = pdf.pages[0]
        bar = next(one for one in page.lines if abs(one["width"] * 25.4 / 72 - 50) < 0.01)
    row = round(float(page.height) - bar["y0"])
    assert left[row - 1 : row + 2, round(bar["x0"]) + 5 : round(bar["x1"]) - 5].any(axis=0).all()


def test_a_drawing_is_kept_once_however_many_sheets_show_it():
    with pdfplumber.open(io.BytesIO(tiles())) as pdf:
        forms = {ref.objid for page in pdf.pages for ref in page.page_obj.resources["XObject"].values()}
        assert len(forms) == len(Layer) and len(pdf.pages) > 10


def test_every_layer_but_that_of_the_words_has_strokes():
    assert {*LAYERS.values(), Layer.WORDS} == set(Layer)
