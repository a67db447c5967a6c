"""How long seven styles in one run take beside the bare libraries: python tests/bench/bench_styles.py
[rounds].

One measurements file, all pieces, an A4 PDF each. The floor imports the same libraries and writes as many
PDFs of as many pages and curves, bare; both run in turns as processes of their own. Then the same work is
done once more in this process, to say where the time goes; other programs on the machine slow it alike.
"""

from __future__ import annotations

import io
import shutil
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter
from typing import Any

HOME = Path(__file__).parents[2]
sys.path.insert(0, str(HOME))

import pdfplumber  # noqa: E402
import pypdfium2  # noqa: E402

from outputs.compare.comparison import compare  # noqa: E402
from outputs.compare.comparison_sheet import ComparisonSheet  # noqa: E402
from outputs.demo import AVERAGE  # noqa: E402
from outputs.paper.paper import A4  # noqa: E402
from outputs.print.pdf import write_tiled_pdf  # noqa: E402
from outputs.reading.measurements_file import read_measurements  # noqa: E402
from outputs.reading.style_file import find_styles  # noqa: E402
from outputs.sheets.tiling import tiled  # noqa: E402
from styles.cloth.block_for_style import block_for  # noqa: E402
from styles.cloth.shrinkage_and_stretch import Cloth  # noqa: E402
from styles.making.jeans import make_jeans  # noqa: E402
from tests.bench.bench_draft import run  # noqa: E402
from tests.bench.stopwatch import side_by_side, table  # noqa: E402

STYLES = ("straight", "bootcut", "flare", "skinny", "slim", "tapered", "wide")
PDFS = """
import sys
from pathlib import Path
from outputs.reading.jeans_from_file import jeans_from
from outputs.reading.measurements_file import read_measurements
from outputs.paper.paper import A4
from outputs.print.pdf import write_tiled_pdf
from outputs.reading.style_file import find_styles
from outputs.reading.style_options import StyleOptions
read = read_measurements(Path(sys.argv[1]))
for style in find_styles(sys.argv[3:]):
    pattern = jeans_from(read, style, StyleOptions()).pattern
    with (Path(sys.argv[2]) / f"{style.name}.pdf").open("wb") as stream:
        write_tiled_pdf(pattern, stream, paper=A4)
"""
BARE = Path(__file__).parent / "bare_pdfs.py"


def page_count(path: Path) -> int:
    with pypdfium2.PdfDocument(path) as document:
        return len(document)


def curves_on_a_sheet(path: Path) -> int:
    """Return the lines and curves of the last sheet; all styles have about as many on each."""
    with pdfplumber.open(path) as document:
        page = document.pages[-1]
        return len(page.curves) + len(page.lines) + len(page.rects)


def timed(work: Callable[[], Any]) -> tuple[Any, float]:
    start = perf_counter()
    done = work()
    return done, (perf_counter() - start) * 1000


def shares() -> dict[str, float]:
    """Return the milliseconds of each part of the work for all styles together."""
    read, reading = timed(lambda: read_measurements(AVERAGE))
    styles, finding = timed(lambda: find_styles(STYLES))
    blocks, drafting = timed(lambda: [block_for(read.measurements, style, Cloth()) for style in styles])
    made, making = timed(
        lambda: [make_jeans(block, style, wearer="x") for block, style in zip(blocks, styles, strict=True)]
    )
    _, laying = timed(lambda: [tiled(jeans.pattern, A4) for jeans in made])
    _, printing = timed(lambda: [write_tiled_pdf(jeans.pattern, io.BytesIO(), paper=A4) for jeans in made])
    several, comparing = timed(lambda: compare(made))
    _, sheet = timed(lambda: ComparisonSheet.of(several, paper=A4, unit=read.unit).write_pdf(io.BytesIO()))
    return {
        "measurements and styles read": reading + finding,
        "blocks drafted and fitted": drafting,
        "pieces cut, trued and checked": making,
        "pieces laid on sheets": laying,
        "sheets drawn and written": printing - laying,
        "shared pieces found": comparing,
        "comparison sheet": sheet,
    }


def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    with tempfile.TemporaryDirectory() as name:
        folder, target = Path(name), Path(name) / "styles"
        asked = [word for style in STYLES for word in ("--style", style)]
        start = "from outputs.commands.main import main; main()"

        def command() -> None:
            shutil.rmtree(target, ignore_errors=True)
            run("-c", start, "draft", AVERAGE, "--out", target, *asked)

        def pdfs() -> None:
            run("-c", PDFS, AVERAGE, folder, *STYLES)

        pdfs()
        counts = [page_count(folder / f"{style}.pdf") for style in STYLES]
        curves = curves_on_a_sheet(folder / f"{STYLES[0]}.pdf")
        bare = [str(number) for pages in counts for number in (pages, curves)]
        taken = side_by_side(pdfs, command, lambda: run(BARE, folder, *bare), rounds=rounds)
    print(f"{len(STYLES)} styles, {sum(counts)} pages, {rounds} rounds")
    names = ["seven PDFs", "whole command, numbers, pictures, comparison", "floor: libraries and bare pages"]
    print(table(names, taken))
    parts = shares()
    whole = sum(parts.values())
    print("\nWhere the time goes, of the styles together:")
    for name, ms in parts.items():
        print(f"{name:44s} {ms:6.0f} ms {ms / whole:6.1%}")


if __name__ == "__main__":
    main()
