"""The sew lines of a pair of jeans as numbers, for plotting, teaching and measuring."""

from __future__ import annotations

from drafting.geometry.curves import Coordinates
from drafting.report.drawn_lines import CLOSE
from styles.making.jeans import Jeans


def jeans_lines(jeans: Jeans) -> dict[str, dict[str, Coordinates]]:
    """Return the sew line of every edge of every piece, by the piece's name and the edge's.

    Arrays have the shape (n, 2) and hold mm, chords within 0.02 mm of the curve. Each edge starts where the
    one before it ends; a ring runs counter-clockwise, as the piece is seen from the right side of the cloth.
    """
    return {
        piece.name: {edge.name: edge.path.flatten(CLOSE) for edge in piece.edges}
        for piece in jeans.pattern.pieces
    }
