"""Invented wearers, for trying things out."""

from pathlib import Path

DEMO_FILES = tuple(sorted(Path(__file__).parent.glob("*.toml")))
"""Their measurements files."""
