"""Ends a run as Ctrl-C does when `kill` or a closed terminal asks for it: what is half-written goes."""

from __future__ import annotations

import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType
from typing import NoReturn

_ASKING = ("SIGTERM", "SIGHUP")
"""Without a handler they end the process on the spot. Windows has no SIGHUP."""


def leave(number: int, frame: FrameType | None) -> NoReturn:
    """Leave with the code that shells give to a process ended by this signal; cleaning up on the way."""
    sys.exit(128 + number)


@contextmanager
def tidy_ending() -> Iterator[None]:
    """Let the signals that ask a process to end raise SystemExit inside; one that is ignored stays so."""
    numbers = [getattr(signal, name) for name in _ASKING if hasattr(signal, name)]
    if threading.current_thread() is not threading.main_thread():  # only that one may say so
        numbers = []
    usual = [number for number in numbers if signal.getsignal(number) is signal.SIG_DFL]
    for number in usual:
        signal.signal(number, leave)
    try:
        yield
    finally:
        for number in usual:
            signal.signal(number, signal.SIG_DFL)
