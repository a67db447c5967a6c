"""Files to fill in or to change: a person's measurements, and a style of one's own."""

from __future__ import annotations

from dataclasses import replace

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import doubt_about_text, in_one_line
from drafting.base.units import Unit
from outputs.files.writers import text_writer
from outputs.jobs.result import Result
from outputs.reading.measurement_template import write_template
from outputs.reading.style_file import style_text
from outputs.words.file_names import safe_name
from styles.choice.catalogue import catalogue_names
from styles.choice.style import Style


def measurements_form(wearer: str, unit: Unit) -> Result:
    """Return a measurements file to fill in.

    Args:
        wearer: The name to print on the pieces.
        unit: Of values that are typed without one.

    Raises:
        DraftRefused: for a name that cannot be printed in one line.
    """
    return Result(files={f"{safe_name(wearer)}.toml": text_writer(write_template(wearer, unit))})


def style_file(name: str, like: Style, unit: Unit) -> Result:
    """Return a style file with every setting of a style, called otherwise.

    Args:
        name: Of the new style.
        like: The style to start from.
        unit: Of the lengths.

    Raises:
        DraftRefused: see `refuse_name`.
    """
    refuse_name(name)
    named = replace(like, name=name.strip())
    return Result(files={style_file_name(name): text_writer(style_text(named, unit))})


def style_file_name(name: str) -> str:
    """Return the name of the file of a style."""
    return f"{safe_name(name, 'style')}.toml"


def refuse_name(name: str) -> None:
    """Refuse a name that no style of one's own may have.

    Raises:
        DraftRefused: it is empty, cannot be printed in one line, or is one of the catalogue.
    """
    doubt = doubt_about_text(name)
    if not name.strip():
        doubt = "A name is needed."
    elif safe_name(name) in catalogue_names():
        doubt = "`jeansblock styles` lists one of this name; choose another, so that they are told apart."
    if doubt:
        raise DraftRefused([Problem("style", doubt, Severity.REFUSAL, in_one_line(name))])
