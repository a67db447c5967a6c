"""The notebook of DEVELOPERS.md: from measurements to a drawing, figures and a PDF in memory."""

import matplotlib
import pypdfium2
import pytest

NOTEBOOK = """\
from io import BytesIO
from matplotlib import pyplot
from drafting import Measurements, block_lines, draft_block
from outputs.print.pdf import write_tiled_pdf
from styles import draft_jeans, jeans_figures
body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265)  # mm
front = block_lines(draft_block(body))["front"]
drawn = [pyplot.plot(*front[name].T, "k") for name in ("crotch seam", "inseam", "side seam", "crease")]
jeans = draft_jeans(body, "bootcut", settings={"below_waist": "4 cm"})
girths, report = jeans_figures(jeans)["girths"], write_tiled_pdf(jeans.pattern, pdf := BytesIO())
"""


@pytest.fixture(autouse=True)
def no_window() -> None:
    matplotlib.use("Agg")


@pytest.mark.slow
def test_the_notebook_has_ten_lines_and_does_what_it_says() -> None:
    assert len(NOTEBOOK.splitlines()) == 10
    found: dict[str, object] = {}
    exec(compile(NOTEBOOK, "notebook", "exec"), found)
    drawn, girths, pdf, report = (found[name] for name in ("drawn", "girths", "pdf", "report"))
    assert [len(lines) for lines in drawn] == [1, 1, 1, 1]
    assert drawn[0][0].get_xydata().shape[1] == 2
    assert girths["hip"]["body"] == 98.0 and girths["hem"]["pattern"] > 30
    assert len(pypdfium2.PdfDocument(pdf.getvalue())) == report.sheets > 10
