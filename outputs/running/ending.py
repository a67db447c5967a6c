"""Ends a run as Ctrl-C does when `kill` or a closed terminal asks for it: what is half-written goes."""

from __future__ import annotations

import os
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
    """Raise SystemExit, so that all cleaning up is done, with the code that shells give to such an end."""
    sys.exit(128 + number)


@contextmanager
def tidy_ending() -> Iterator[None]:
    """Clean up before one of the signals ends the process; one that is ignored or handled stays so."""
    if threading.current_thread() is not threading.main_thread():  # only that one may handle signals
        yield
        return
    asked: list[int] = []

    def tidy(number: int, frame: FrameType | None) -> NoReturn:
        asked.append(number)
        leave(number, frame)

    numbers = [getattr(signal, name) for name in _ASKING if hasattr(signal, name)]
    usual = [number for number in numbers if signal.getsignal(number) is signal.SIG_DFL]
    for number in usual:
        signal.signal(number, tidy)
    try:
        yield
    finally:
        for number in usual:
            signal.signal(number, signal.SIG_DFL)
        if asked:
            os.kill(os.getpid(), asked[0])  # who asked sees that it was done
