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
    pages = [plain(page.extract_text()) for page in reader.pages]
    assert 5 < len(pages) < 120
    assert all(plain(CAUTION) in page for page in pages)
    text = "".join(pages)
    assert plain(site_of(name)["site"]["name"]) in text
    findings = answers(name)["findings"]
    assert findings
    for finding in findings:
        assert plain(finding["sentence"]) in text, finding["sentence"]


def dictionaries(pdf):
    return [thing for thing in pdf.objects if isinstance(thing, pikepdf.Dictionary)]


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_pdf_a_markers_checked(pack, name):
    with pikepdf.open(pack(name) / "pack.pdf") as pdf:
        metadata = pdf.open_metadata()
        assert metadata["pdfaid:part"] == "3"
        assert metadata["pdfaid:conformance"] == "B"
        assert len(pdf.Root.OutputIntents) == 1
        assert "/DestOutputProfile" in pdf.Root.OutputIntents[0]
        assert not pdf.is_encrypted


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_nothing_in_the_pack_runs(pack, name):
    with pikepdf.open(pack(name) / "pack.pdf") as pdf:
        assert "/JavaScript" not in pdf.Root.get("/Names", {})
        actions = {str(thing.get("/S")) for thing in dictionaries(pdf)} | {str(pdf.Root.get("/OpenAction", ""))}
        assert not actions & {"/JavaScript", "/Launch", "/SubmitForm", "/ImportData"}
        assert not any("/JS" in thing for thing in dictionaries(pdf))


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_every_font_is_inside(pack, name):
    with pikepdf.open(pack(name) / "pack.pdf") as pdf:
        fonts = [thing for thing in dictionaries(pdf) if thing.get("/Type") == "/Font"]
        composite = [font for font in fonts if font.get("/Subtype") == "/Type0"]
        simple = [font for font in fonts if font.get("/Subtype") not in ("/Type0", "/Type3")]
        assert composite
        for font in simple:
            descriptor = font.FontDescriptor
            assert any(key in descriptor for key in ("/FontFile", "/FontFile2", "/FontFile3")), font.get("/BaseFont")
        # Without this table, text cannot be searched or read out.
        assert all("/ToUnicode" in font for font in composite)


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_the_pack_is_tagged_and_has_a_title_and_a_language(pack, name):
    with pikepdf.open(pack(name) / "pack.pdf") as pdf:
        assert pdf.Root.MarkInfo.Marked
        assert "/StructTreeRoot" in pdf.Root
        assert str(pdf.Root.Lang).startswith("en")
        assert "dc:title" in pdf.open_metadata()
        kinds = {str(thing.get("/S")) for thing in dictionaries(pdf) if "/P" in thing and "/S" in thing}
        assert {"/H1", "/Table", "/Figure"} <= kinds
        figures = [thing for thing in dictionaries(pdf) if thing.get("/S") == "/Figure" and "/P" in thing]
        assert all(str(figure.get("/Alt", "")) for figure in figures)


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_site_file_and_findings_travel_inside(pack, answers, name):
    attachments = pypdf.PdfReader(pack(name) / "pack.pdf").attachments
    assert attachments["site.toml"][0] == site_file(name).read_bytes()
    inside = next(files[0] for key, files in attachments.items() if key.endswith("findings.json"))
    assert json.loads(inside) == answers(name)["findings"]


def test_the_same_site_gives_the_same_bytes(pack):
    first, second = pack("vineyard"), pack("vineyard", again=True)
    files = sorted(file.name for file in first.iterdir())
    assert files == sorted(file.name for file in second.iterdir())
    assert "pack.pdf" in files and "schedules.xlsx" in files
    for file in files:
        assert (first / file).read_bytes() == (second / file).read_bytes(), file
