"""The same script with pypdf in the place of pikepdf.

    /usr/bin/python3 p2.py FOLDER-OF-LETTERS FOLDER-OF-ANSWERS
"""
import io
from pypdf import PdfReader
from peer import run


def fields(data):
    for name, field in (PdfReader(io.BytesIO(data)).get_fields() or {}).items():
        yield name, str(field.get("/V", "") or "")


run(fields)
