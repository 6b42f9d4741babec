"""The pack, re-read with two PDF readers: pages, words, archival markers, what travels inside.

"PDF/A markers checked" is all that this says; no independent validator has judged the file.
"""

import json

import pikepdf
import pypdf
import pytest
from conftest import SITES, site_file, site_of

CAUTION = "Results support a competent person"


def plain(text: str) -> str:
    return "".join(text.split())


@pytest.mark.parametrize("name", SITES)
def test_every_finding_and_the_caution_are_on_the_pages(pack, answers, name):
    reader = pypdf.PdfReader(pack(name) / "pack.pdf")
    pages = [page.extract_text() for page in reader.pages]
    assert 10 < len(pages) < 120
    assert all(plain(CAUTION) in plain(page) for page in pages)
    text = plain(" ".join(pages))
    assert plain(site_of(name)["site"]["name"]) in text
    for finding in answers(name)["findings"]:
        assert plain(finding["sentence"])[:40] in text, finding["sentence"]


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_archival_markers(pack, name):
    with pikepdf.open(pack(name) / "pack.pdf") as pdf:
        metadata = pdf.open_metadata()
        assert metadata["pdfaid:part"] == "3"
        assert metadata["pdfaid:conformance"] == "B"
        assert len(pdf.Root.OutputIntents) == 1
        assert pdf.Root.MarkInfo.Marked
        assert "/StructTreeRoot" in pdf.Root
        assert str(pdf.Root.Lang)
        assert "/JavaScript" not in pdf.Root.get("/Names", {})
        assert not pdf.is_encrypted
        fonts = [thing for thing in pdf.objects if isinstance(thing, pikepdf.Dictionary) and thing.get("/Type") == "/FontDescriptor"]
        assert fonts
        assert all(any(key in font for key in ("/FontFile", "/FontFile2", "/FontFile3")) for font in fonts)


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_site_file_and_findings_travel_inside(pack, answers, name):
    attachments = pypdf.PdfReader(pack(name) / "pack.pdf").attachments
    assert attachments["site.toml"][0] == site_file(name).read_bytes()
    inside = next(files[0] for key, files in attachments.items() if key.endswith("findings.json"))
    assert json.loads(inside) == answers(name)["findings"]


def test_the_same_site_gives_the_same_bytes(pack):
    for file in ("pack.pdf", "schedules.xlsx"):
        assert (pack("vineyard") / file).read_bytes() == (pack("vineyard", again=True) / file).read_bytes()
