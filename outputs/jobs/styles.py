"""A picture of the legs of styles."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from outputs.compare.leg_lines import leg_lines
from outputs.compare.styles_picture import write_styles_picture
from outputs.jobs.result import Result
from outputs.reading.measurements_file import MeasurementFile
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth


def styles_picture(styles: Sequence[Style], read: MeasurementFile, *, title: str, svg: bool) -> Result:
    """Draft the blocks of styles, to be drawn over each other and beside that each by itself.

    Args:
        styles: At least one.
        read: Whose legs they are.
        title: Written at the top.
        svg: Whether it shall be an SVG; else it is a PNG.

    Raises:
        DraftRefused: the measurements do not allow a draft.
    """
    cloth = Cloth(**read.cloth)
    legs = [
        leg_lines(block_for(read.measurements, style, cloth), style, number)
        for number, style in enumerate(styles)
    ]
    name = f"styles.{'svg' if svg else 'png'}"
    return Result(files={name: partial(write_styles_picture, legs=legs, svg=svg, title=title)})
