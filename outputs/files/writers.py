"""What writes a file: onto an open stream, so that a folder, a page or a notebook may take the bytes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import BinaryIO

from outputs.words.print_report import PrintReport

Writer = Callable[[BinaryIO], PrintReport]
"""Writes one file onto a stream that is open for it, and returns what is to say of it."""


@dataclass(frozen=True)
class Written:
    """What was written into a folder.

    Attributes:
        files: Where each file is, and what is to say of it.
        before: The names of what else lies there.
    """

    files: Mapping[Path, PrintReport]
    before: tuple[str, ...] = ()


def bytes_writer(content: bytes) -> Writer:
    """Return what writes bytes as they are."""

    def write(stream: BinaryIO) -> PrintReport:
        stream.write(content)
        return PrintReport()

    return write


def text_writer(text: str) -> Writer:
    """Return what writes a text in UTF-8, its lines as they end."""
    return bytes_writer(text.encode())


def late_writer(text: Callable[[], str]) -> Writer:
    """Return what writes a text that is made when it is written."""

    def write(stream: BinaryIO) -> PrintReport:
        return text_writer(text())(stream)

    return write


def content(write: Writer) -> bytes:
    """Return what is written."""
    stream = BytesIO()
    write(stream)
    return stream.getvalue()
