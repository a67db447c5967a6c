"""Invented wearers, for trying things out."""

from pathlib import Path

DEMO_FILES = tuple(sorted(Path(__file__).parent.glob("*.toml")))
"""Their measurements files."""
AVERAGE = next(path for path in DEMO_FILES if path.stem == "zaneta")
"""The one with an average figure, fully measured."""
