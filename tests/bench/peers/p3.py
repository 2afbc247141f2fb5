"""The same work as ours in a small script: pikepdf and pypdf have to agree on every field, required fields and the
lengths of rows are checked, each page is rendered by poppler and looked at for ink, a proof of each sheet is drawn by
reportlab, the answer is a text, and each letter is one commit of SQLite.

    /usr/bin/python3 p3.py FOLDER-OF-LETTERS FOLDER-OF-ANSWERS
"""
import io
import subprocess
import sys
import pikepdf
from pypdf import PdfReader
from reportlab.pdfgen import canvas
from peer import run

DPI = 72


def by_pikepdf(data):
    with pikepdf.open(io.BytesIO(data)) as pdf:
        return {str(field.get("/T", "")): str(field.get("/V", "")) for field in pdf.Root.AcroForm.Fields}


def by_pypdf(data):
    fields = PdfReader(io.BytesIO(data)).get_fields() or {}
    return {name: str(field.get("/V", "") or "") for name, field in fields.items()}


def is_inked(data):
    """Whether the first page, as poppler draws it, has anything on it. PGM: a head of three lines, then the pixels."""
    command = ["pdftoppm", "-gray", "-singlefile", "-r", str(DPI), "-"]
    picture = subprocess.run(command, input=data, capture_output=True, check=True).stdout
    return min(picture.split(b"\n", 3)[3]) < 128


def proof(values, path):
    page = canvas.Canvas(path)
    rows = [value for name, value in values.items() if "_row" in name and value]
    for i, text in enumerate(rows):
        page.rect(50, 700 - 60 * i, 120, 40)
        page.drawCentredString(110, 715 - 60 * i, text)
    page.save()


count = 0


def fields(data):
    global count
    one, other = by_pikepdf(data), by_pypdf(data)
    for name in one:
        if name in other and one[name] != other[name]:
            yield f"{name}_differs_row1", "?" * 99
    if not is_inked(data):
        yield "page_row1", "?" * 99
    count += 1
    proof(one, f"{sys.argv[2]}/{count}.pdf")
    yield from one.items()


run(fields)
