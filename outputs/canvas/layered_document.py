"""A PDF document with layers: optional content groups of ISO 32000-1, 8.11.

reportlab has none of its own. This leans on three of its private names (`_doc.Catalog`, `_doc.Pages.pages`, a
page's `check_format`); `tests/outputs/test_layers.py` reads the groups back and hides each.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from typing import Any, BinaryIO

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFString
from reportlab.pdfgen.canvas import Canvas


class LayeredDocument(Canvas):  # type: ignore[misc]  # reportlab comes without types
    """A document whose layers are all shown and printed until a reader hides one."""

    def __init__(self, target: BinaryIO, *, layers: Sequence[str], **settings: Any) -> None:
        """Start a document with the layers of these names, in the order that a reader lists them."""
        super().__init__(target, pdfVersion=(1, 6), **settings)
        self._groups = {
            name: self._doc.Reference(
                PDFDictionary({"Type": PDFName("OCG"), "Name": PDFString(name)}), f"layer-{index}"
            )
            for index, name in enumerate(layers)
        }
        groups = PDFArray(list(self._groups.values()))
        catalog = self._doc.Catalog
        catalog.__NoDefault__ = [*catalog.__NoDefault__, "OCProperties"]  # of this catalog, not of its class
        catalog.OCProperties = PDFDictionary(
            {"OCGs": groups, "D": PDFDictionary({"ON": groups, "Order": groups})}
        )

    @contextmanager
    def layer(self, name: str) -> Iterator[None]:
        """Put what is drawn on the page meanwhile on a layer; forms cannot be begun inside."""
        self.addLiteral(f"/OC /{self._key(name)} BDC")
        yield
        self.addLiteral("EMC")

    def showPage(self) -> None:
        """Finish the page, its layers among its resources."""
        super().showPage()
        page = self._doc.Pages.pages[-1]
        check = page.check_format

        def check_format(document: Any) -> None:
            check(document)
            page.Resources.Properties.update({self._key(name): group for name, group in self._groups.items()})

        page.check_format = check_format

    def _key(self, name: str) -> str:
        return f"L{list(self._groups).index(name)}"
