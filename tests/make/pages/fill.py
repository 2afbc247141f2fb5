"""Fills a form as programs in Python do: fill.py PROGRAM BLANK VALUES.json OUT, or a line of three paths each on stdin."""
import json
import sys


def pikepdf_fill(blank, values, out):
    import pikepdf

    with pikepdf.open(blank) as pdf:
        for field in fields_of(pdf):
            name = full_name(field)
            if name not in values:
                continue
            value = values[name]
            if field.get("/FT") == "/Btn":
                kids = field.get("/Kids")
                state = pikepdf.Name("/" + (value if isinstance(value, str) else "Yes" if value else "Off"))
                field.V = state
                for widget in kids if kids is not None else [field]:
                    widget.AS = state if state in list(widget.AP.N.keys()) else pikepdf.Name.Off
            else:
                field.V = pikepdf.String(value)
        pdf.Root.AcroForm.NeedAppearances = True
        pdf.generate_appearance_streams() if hasattr(pdf, "generate_appearance_streams") else None
        pdf.save(out)


def fields_of(pdf):
    todo = list(pdf.Root.AcroForm.Fields)
    while todo:
        field = todo.pop()
        if "/FT" in field:
            yield field
        else:
            todo.extend(field.Kids)


def full_name(field):
    above = full_name(field.Parent) + "." if "/Parent" in field else ""
    return above + str(field.T)


def pypdf_fill(blank, values, out):
    from pypdf import PdfReader, PdfWriter
    from pypdf.generic import NameObject

    reader = PdfReader(blank)
    writer = PdfWriter()
    writer.clone_document_from_reader(reader)
    texts = {k: v for k, v in values.items() if isinstance(v, str)}
    for page in writer.pages:
        writer.update_page_form_field_values(page, texts)
        for annot in page["/Annots"]:
            widget = annot.get_object()
            parent = widget.get("/Parent", widget).get_object()
            name = parent.get("/T")
            if parent.get("/FT") != "/Btn" or name not in values:
                continue
            value = values[name]
            state = NameObject("/" + (value if isinstance(value, str) else "Yes" if value else "Off"))
            parent[NameObject("/V")] = state
            looks = widget["/AP"]["/N"]
            widget[NameObject("/AS")] = state if state in looks else NameObject("/Off")
    with open(out, "wb") as file:
        writer.write(file)


program, *rest = sys.argv[1:]
fill = {"pikepdf": pikepdf_fill, "pypdf": pypdf_fill}[program]
jobs = [rest] if rest else [line.split() for line in sys.stdin if line.strip()]
for blank, values, out in jobs:
    with open(values) as file:
        fill(blank, json.load(file), out)
