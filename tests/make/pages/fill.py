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


def tick_boxes(page, values, NameObject):
    """Sets the boxes of a page as both libraries let it be done; NameObject is that of the library."""
    for annot in page["/Annots"]:
        widget = annot.get_object()
        parent = widget.get("/Parent", widget).get_object()
        name = parent.get("/T")
        if parent.get("/FT") != "/Btn" or name not in values:
            continue
        value = values[name]
        state = NameObject("/" + (value if isinstance(value, str) else "Yes" if value else "Off"))
        parent[NameObject("/V")] = state
        widget[NameObject("/AS")] = state if state in widget["/AP"]["/N"] else NameObject("/Off")


def pypdf_fill(blank, values, out):
    from pypdf import PdfReader, PdfWriter
    from pypdf.generic import NameObject

    reader = PdfReader(blank)
    writer = PdfWriter()
    writer.clone_document_from_reader(reader)
    texts = {k: v for k, v in values.items() if isinstance(v, str)}
    for page in writer.pages:
        writer.update_page_form_field_values(page, texts)
        tick_boxes(page, values, NameObject)
    with open(out, "wb") as file:
        writer.write(file)


def pypdf2_fill(blank, values, out):
    """Values alone, as many a recipe has it: the viewer draws them."""
    from PyPDF2 import PdfReader, PdfWriter
    from PyPDF2.generic import BooleanObject, NameObject

    writer = PdfWriter()
    writer.clone_document_from_reader(PdfReader(blank))
    texts = {k: v for k, v in values.items() if isinstance(v, str)}
    for page in writer.pages:
        writer.update_page_form_field_values(page, texts)
        tick_boxes(page, values, NameObject)
    form = writer._root_object["/AcroForm"].get_object()
    form[NameObject("/NeedAppearances")] = BooleanObject(True)
    with open(out, "wb") as file:
        writer.write(file)


def poppler_fill(blank, values, out):
    """As the viewers do that are built on Poppler."""
    import gi
    import pikepdf

    gi.require_version("Poppler", "0.18")
    from gi.repository import Poppler

    states = {}
    with pikepdf.open(blank) as pdf:
        for number, page in enumerate(pdf.pages):
            for widget in page.Annots:
                if "/AP" in widget and isinstance(widget.AP.N, pikepdf.Dictionary):
                    on = [key[1:] for key in widget.AP.N.keys() if key != "/Off"]
                    states[number, round(float(widget.Rect[0])), round(float(widget.Rect[1]))] = on[0]
    document = Poppler.Document.new_from_file("file://" + blank, None)
    for number in range(document.get_n_pages()):
        for mapping in document.get_page(number).get_form_field_mapping():
            field = mapping.field
            value = values.get(field.get_name())
            if value is None or value is False or value == "":
                continue
            kind = field.get_field_type()
            if kind == Poppler.FormFieldType.TEXT:
                field.text_set_text(value)
            elif kind == Poppler.FormFieldType.BUTTON:
                at = (number, round(mapping.area.x1), round(mapping.area.y1))
                field.button_set_state(value is True or states.get(at) == value)
            elif kind == Poppler.FormFieldType.CHOICE:
                items = [field.choice_get_item(i) for i in range(field.choice_get_n_items())]
                if value in items:
                    field.choice_select_item(items.index(value))
                elif field.choice_is_editable():
                    field.choice_set_text(value)
    document.save("file://" + out)


program, *rest = sys.argv[1:]
fill = {
    "pikepdf": pikepdf_fill,
    "pypdf": pypdf_fill,
    "pypdf2": pypdf2_fill,
    "poppler": poppler_fill,
}[program]
jobs = [rest] if rest else [line.split() for line in sys.stdin if line.strip()]
for blank, values, out in jobs:
    with open(values) as file:
        fill(blank, json.load(file), out)
