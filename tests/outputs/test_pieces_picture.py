"""The picture of the pieces, read back by Pillow."""

import io
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image

from outputs.canvas.canvas import LINE_STYLES, Role
from outputs.canvas.typeface import Typeface
from outputs.print.pieces_picture import BORDER, SIZE, write_pieces_picture
from outputs.print.single_page import drawn_side_by_side
from tests.outputs import samples


def picture_of(pattern):
    target = io.BytesIO()
    report = write_pieces_picture(pattern, target)
    return Image.open(target), report


def longest_run(row):
    """Return the most dark pixels side by side."""
    return max(len(run) for run in "".join("x" if dark else " " for dark in row).split())


def test_its_bar_measures_the_pieces_to_a_hundredth():
    image, _ = picture_of(samples.pattern())
    dark = np.asarray(image.convert("L")) < 128
    two_rows_of_names = int((2 * BORDER + 2 * 1.35 * SIZE + 1) / 25.4 * 150)
    bar = dark[: dark.shape[0] // 5, -dark.shape[1] // 3 :]
    a_hundred = max(longest_run(row) for row in bar if row.any())
    below_the_bar = dark[dark.shape[0] // 5 : -two_rows_of_names].any(axis=0)
    left, right = np.flatnonzero(below_the_bar)[[0, -1]]
    shapes = drawn_side_by_side(samples.pattern(), Typeface()).layout.shapes
    wide = max(shape.bounds[2] for shape in shapes) - min(shape.bounds[0] for shape in shapes)
    pen = LINE_STYLES[Role.CUT].width / 25.4 * 150
    assert (right + 1 - left - pen) / (a_hundred - pen) * 100 == pytest.approx(wide, rel=0.01)


def test_it_says_in_words_what_is_seen_and_how_often_each_piece_is_cut():
    image, report = picture_of(samples.pattern())
    words = image.info["Description"]
    assert all(f"{number}. {piece.name}" in words for number, piece in samples.pattern().numbered)
    assert "not to cut from" in words and not report.warnings


def test_pieces_asked_for_keep_their_numbers_and_are_drawn_alone():
    pattern = samples.pattern()
    number, piece = pattern.numbered[-1]
    words = picture_of(replace(pattern, printed=(piece.id,)))[0].info["Description"]
    assert f"1 of {len(pattern.pieces)} pieces" in words and f"cloth: {number}. {piece.name}." in words


def test_a_letter_that_the_typeface_lacks_is_named():
    _, report = picture_of(replace(samples.pattern(), wearer="Ada \u4e2d"))
    assert any("\u4e2d" in warning for warning in report.warnings)
