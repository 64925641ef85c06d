"""The sheets, read back with libraries: PDF with pypdf, HTML with html5lib, tables with csv, SVG as XML."""

import csv
import re
from collections import Counter
from io import BytesIO, StringIO
from math import pi
from random import Random
from xml.etree import ElementTree

import html5lib
import pytest
from hypothesis import HealthCheck, given, settings
from pypdf import PdfReader
from pypdf.generic import ContentStream

from model.design import Opening
from model.design.edits.decisions import logged
from model.design.edits.evidence import note_expense, note_trial, tick
from model.money.ledger_csv import ledger_csv, read_ledger_csv, with_ledger_of
from model.presets import load_preset, presets
from model.review import review
from model.sheets.blocks import PAPERS, Picture
from model.sheets.html import html_text
from model.sheets.notebook import EXPECTATIONS, notebook
from model.sheets.pack import sheet_files, sheet_pages
from model.sheets.template import template_svg, templates
from model.survey import survey
from tests.generators import designs

POINT = 25.4 / 72
"""[mm] A point of PDF, ISO 32000-1, 8.3.2.3."""
DAY = "2026-03-14"
NASTY = '<script>alert("1")</script> & ]]> --> {{x}} [b] \u0000\u0007 </td> é ж 漢'
ELEMENTS = {"svg", "style", "g", "polygon", "circle", "line", "rect", "text"}


@pytest.fixture(scope="module")
def demo():
    return load_preset(presets("demo")[0])


def noted(design, words="tees"):
    """The design with some evidence of every kind."""
    design = note_expense(design, DAY, words[:80], 4.5, shop=words[:100], receipt="17", who="Ida")
    design = note_trial(design, "weight", 1.5, DAY, model=1.406, who="Bo", notes=words)
    design = tick(design, "mark", DAY, "Ida")
    return logged(design, design.but(title="Newt 4"), "name", DAY, why=words)


def ending(files, end):
    return next(data for name, data in files.items() if name.endswith(end))


def shapes_of(page):
    """Rectangle-like paths and curves of a page in mm, with the matrix of each applied (PDF operators)."""
    matrix, stack, path, found = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), [], [], []

    def put(x, y):
        a, b, c, d, e, f = matrix
        return ((a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT)

    for operands, operator in ContentStream(page.get_contents(), page.pdf).operations:
        numbers = [float(n) for n in operands if isinstance(n, int | float)] if operands else []
        if operator == b"q":
            stack.append(matrix)
        elif operator == b"Q":
            matrix = stack.pop()
        elif operator == b"cm":
            a, b, c, d, e, f = numbers
            A, B, C, D, E, F = matrix
            matrix = (
                a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D,
                e * A + f * C + E, e * B + f * D + F,
            )  # fmt: skip
        elif operator in (b"m", b"l"):
            path.append((operator, [put(*numbers)]))
        elif operator == b"c":
            path.append((operator, [put(*numbers[n : n + 2]) for n in (0, 2, 4)]))
        elif operator in (b"S", b"s", b"B", b"b", b"f", b"n", b"f*", b"B*", b"b*"):
            found.append(path)
            path = []
    return found


def boxes(paths):
    """Width, height and middle of each path: those of straight lines, and the round ones."""
    straight, round_ones = [], []
    for path in paths:
        points = [point for _, points in path for point in points]
        if not points:
            continue
        xs, ys = zip(*points, strict=True)
        size = (max(xs) - min(xs), max(ys) - min(ys))
        middle = ((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2)
        (round_ones if any(operator == b"c" for operator, _ in path) else straight).append((size, middle))
    return straight, round_ones


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_templates_are_true_to_size_in_the_pdf(demo, paper):
    """From the drawing commands: pi x diameter round, holes as wide as the drill and in place."""
    pipe = demo.stock.pipes[0].outside_diameter * 1000
    bar = demo.arrangement.bars[0]
    hole = Opening(id="only", name="only", bar=bar.id, at=0.5, face="+z", diameter=0.0065, through=True)
    design = demo.arranged(openings=(hole,))
    cut = survey(design).frame.bars[bar.id].cut * 1000
    files = sheet_files(review(design), paper)
    reader = PdfReader(BytesIO(ending(files, ".pdf")))
    page = next(p for p in reader.pages if "must measure 100 mm" in p.extract_text())
    straight, holes = boxes(shapes_of(page))
    papers = [box for box in straight if box[0][0] == pytest.approx(pi * pipe, abs=0.05) and box[0][1] > 20]
    assert len(papers) == 1
    (_, high), (_, y) = papers[0]
    assert high == pytest.approx(cut / 2 + 12, abs=0.05)
    assert [size for size, _ in holes] == [pytest.approx((6.5, 6.5), abs=0.05)] * 2
    (x1, y1), (x2, y2) = sorted(middle for _, middle in holes)
    assert x2 - x1 == pytest.approx(pi * pipe / 2, abs=0.05)
    assert y1 == y2 == pytest.approx(y - high / 2 + cut / 2, abs=0.05)
    ruler = [size for size, _ in straight if size == pytest.approx((100, 0), abs=0.02)]
    assert ruler


def test_the_sides_lie_in_the_order_in_which_the_pipe_is_wrapped(demo):
    """Print outside, the first joint below: right of the top line comes the side to the right of the bar.

    Along +x with z up that is starboard (right-hand rule), along +y it is the bow.
    """
    for template in templates(survey(demo)):
        order = [words for words, at in sorted(template.lines, key=lambda line: line[1])]
        x, y, _ = template.bar.along
        if x > 0.9:
            assert order == ["top", "starboard", "bottom", "port"]
        if y > 0.9:
            assert order == ["top", "bow", "bottom", "stern"]


def test_drawings_keep_their_scale_on_both_papers(demo):
    for paper in PAPERS:
        for page in sheet_pages(review(demo), paper):
            for picture in (block for block in page.blocks if isinstance(block, Picture)):
                root = ElementTree.fromstring(picture.svg)
                width, height = (float(root.get(side)[:-2]) for side in ("width", "height"))
                wide, high = PAPERS[paper][::-1] if page.across else PAPERS[paper]
                assert width <= wide - 20 + 1e-6 or not picture.true_size
                assert height <= high - 20 or not picture.true_size
                assert root.get("viewBox") == f"0 0 {root.get('width')[:-2]} {root.get('height')[:-2]}"
                assert {node.tag.split("}")[1] for node in root.iter()} <= ELEMENTS


def test_every_sheet_is_in_the_pack_with_its_cautions(demo):
    reader = PdfReader(BytesIO(ending(sheet_files(review(demo), "A4"), ".pdf")))
    texts = [page.extract_text() for page in reader.pages]
    text = "\n".join(texts)
    for title in (
        "Shopping list", "Drawing, three views", "Cut sheet", "Cutting plan", "Drill sheet", "Build list",
        "Wiring sheet", "Inspection sheet", "Pool card", "Before and after the dive",
    ):  # fmt: skip
        assert title in text
    for title, caution in (
        ("Cut sheet", "clamp the pipe"),
        ("Drill sheet", "V-block"),
        ("Pool card", "lifeguard"),
    ):
        assert caution in next(page for page in texts if f"\n{title}\n" in page)
    sizes = {
        (round(float(p.mediabox.width) * POINT), round(float(p.mediabox.height) * POINT))
        for p in reader.pages
    }
    assert sizes == {(210, 297), (297, 210)}


def test_the_cut_sheet_says_mm_and_fractions(demo):
    reader = PdfReader(BytesIO(ending(sheet_files(review(demo), "Letter"), ".pdf")))
    text = next(t for p in reader.pages if "\nCut sheet\n" in (t := p.extract_text()))
    for bar in survey(demo).frame.bars.values():
        sixteenths = round(bar.cut / 0.0254 * 16)
        whole, rest = divmod(sixteenths, 16)
        assert f"{bar.cut * 1000:.1f}".removesuffix(".0") in text
        assert re.search(rf"\b{whole} \d+/\d+ in" if rest else rf"\b{whole} in", text)


def parsed(text):
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    return parser.parse(text)


def test_the_notebook_is_valid_html_and_team_text_stays_text(demo):
    nasty = noted(demo.but(team=NASTY[:80], notes=NASTY), NASTY)
    text = html_text(notebook(review(nasty), (demo,)), NASTY)
    tree = parsed(text)
    assert tree.find(".//script") is None
    shown = "".join(tree.itertext())
    assert '<script>alert("1")</script> & ]]> --> {{x}} [b]' in shown
    assert "漢" in shown
    links = [link.get("href") for link in tree.iter("a")]
    ids = {section.get("id") for section in tree.iter("section")}
    assert {link[1:] for link in links} <= ids
    assert all(image.get("src").startswith("data:image/svg+xml;base64,") for image in tree.iter("img"))
    assert "http" not in re.sub(r"data:[^\"]*", "", text)


def test_a_trial_stands_in_the_notebook_beside_the_model(demo):
    tree = parsed(html_text(notebook(review(noted(demo))), "x"))
    section = next(s for s in tree.iter("section") if s.get("id") == "trials")
    cells = ["".join(cell.itertext()) for cell in section.iter("td")]
    assert cells[:5] == [DAY, "dry weight", "1500 g", "1406 g", f"{survey(demo).balance.mass * 1000:.0f} g"]


def test_the_four_expectations_lead_to_their_pages(demo):
    pages = notebook(review(demo))
    assert [code for code, _, _ in EXPECTATIONS] == [f"MS-ETS1-{n}" for n in (1, 2, 3, 4)]
    assert {page for _, _, page in EXPECTATIONS} <= {page.name for page in pages}


def test_tables_are_read_back_by_the_csv_module(demo):
    files = sheet_files(review(demo), "A4")
    cuts = list(csv.DictReader(StringIO(ending(files, "cut-list.csv").decode())))
    lengths = Counter(round(bar.cut * 1000, 2) for bar in survey(demo).frame.bars.values())
    assert Counter({float(row["length_mm"]): int(row["quantity"]) for row in cuts}) == lengths
    assert all(
        float(row["length_in"]) * 25.4 == pytest.approx(float(row["length_mm"]), abs=0.01) for row in cuts
    )
    shopping = list(csv.DictReader(StringIO(ending(files, "shopping-list.csv").decode())))
    total = sum(float(row["together"]) for row in shopping if row["counts"] == "yes")
    assert total == pytest.approx(survey(demo).bill.spent)


def test_the_ledger_goes_out_and_in(demo):
    design = note_expense(demo, DAY, '=SUM(A1), "tees"; x', 1234.5, shop="-corner", given=True, who="Ida\nBo")
    design = note_expense(design, f"{DAY} 15:30", "'=odd", 0.0, counts=False, quantity=3, line="fitting tee")
    text = ledger_csv(design)
    assert all(
        not cell.startswith(("=", "+", "-", "@")) for row in csv.reader(StringIO(text)) for cell in row
    )
    back = read_ledger_csv(text)
    assert back.problems == ()
    assert [line.but(id="x") for line in back.lines] == [line.but(id="x") for line in design.evidence.ledger]
    again, said = with_ledger_of(design, text)
    assert again == design
    assert said == ("2 rows stand in the ledger already",)


def test_a_table_with_decimal_commas_and_bad_rows():
    text = (
        "\ufeffDate;What;Amount;Counts\r\n14.03.2026;tees;8,60;yes\r\n;;;\r\n2026-03-15;caps;1,234;yes\r\n"
        "2026-02-30;x;1;yes\r\n2026-03-15;x;-4;yes\r\n2026-03-15;;4;yes\r\n2026-03-15;x;4;perhaps\r\n"
        "2026-03-15;x;;yes\r\n2026-03-16;last;3;no\r\n"
    )
    read = read_ledger_csv(text)
    assert [(line.when, line.what, line.amount, line.counts) for line in read.lines] == [
        ("2026-03-14", "tees", 8.6, True),
        ("2026-03-16", "last", 3.0, False),
    ]
    assert [problem.split(":")[0] for problem in read.problems] == [f"row {n}" for n in (4, 5, 6, 7, 8, 9)]
    assert "1.234 or 1234" in read.problems[0]


@pytest.mark.parametrize("text", ["", "\n", "date,what\n", "x" * 200_000, '"' * 9, "a\x00b,c\n1,2\n"])
def test_what_is_no_ledger_is_said_in_one_sentence(text):
    read = read_ledger_csv(text)
    assert read.lines == ()
    assert len(read.problems) == 1
    assert len(read.problems[0]) < 400


def test_a_ledger_of_5000_lines(demo):
    rows = "".join(f"2026-03-14,thing {n},1.00\n" for n in range(5000))
    design, said = with_ledger_of(demo, f"date,what,amount\n{rows}")
    assert said == ()
    assert len(design.evidence.ledger) == 5000
    text = html_text(notebook(review(design)), "x")
    assert text.count("<tr>") > 5000


@pytest.mark.parametrize("name", [preset.name for preset in presets("starter")])
def test_sheets_of_every_starter(name):
    preset = next(p for p in presets("starter") if p.name == name)
    files = sheet_files(review(load_preset(preset)), Random(name).choice(["A4", "Letter"]))
    assert len(PdfReader(BytesIO(ending(files, ".pdf"))).pages) > 8
    parsed(ending(files, ".html").decode())


@settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))
@given(design=designs(most=12))
def test_sheets_of_any_design(design):
    for paper, units in (("A4", "in"), ("Letter", "mm")):
        report = review(noted(design.but(units=units), NASTY))
        files = sheet_files(report, paper)
        assert PdfReader(BytesIO(ending(files, ".pdf"))).pages
        parsed(ending(files, ".html").decode())
        for data in (data for name, data in files.items() if name.endswith(".svg")):
            ElementTree.fromstring(data)
        for template in templates(report.survey):
            size = ElementTree.fromstring(template_svg(template, units)).get("height")
            assert float(size[:-2]) < PAPERS["Letter"][1] - 30
