"""The script that a person would write: takes letters apart with email, reads their forms with pikepdf, looks for
empty fields and long rows, writes an answer as text, and commits each letter to SQLite.

    /usr/bin/python3 p1.py FOLDER-OF-LETTERS FOLDER-OF-ANSWERS
"""
import io
import pikepdf
from peer import run


def fields(data):
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for field in pdf.Root.AcroForm.Fields:
            yield str(field.get("/T", "")), str(field.get("/V", ""))


run(fields)
