"""Kinds of a detail, such as shapes of a pocket: each is a module of one package, found by listing it."""

from __future__ import annotations

import pkgutil
from importlib import import_module
from types import ModuleType
from typing import Any


def kinds_in(package: ModuleType) -> tuple[str, ...]:
    """Return the words by which the kinds in a package are chosen, in alphabetical order.

    A module `cut_corners` is chosen as "cut corners"; one whose name begins with an underscore is none.
    """
    names = (module.name for module in pkgutil.iter_modules(package.__path__))
    return tuple(sorted(name.replace("_", " ") for name in names if not name.startswith("_")))


def of_kind(package: ModuleType, kind: str, function: str) -> Any:
    """Return the function that draws a kind; its module is loaded now.

    Raises:
        ModuleNotFoundError: the package has no such kind.
        AttributeError: its module has no such function.
    """
    return getattr(import_module(f"{package.__name__}.{kind.replace(' ', '_')}"), function)
