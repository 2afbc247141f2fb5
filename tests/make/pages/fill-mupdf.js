// Fills a form as MuPDF does: mutool run fill-mupdf.js BLANK OUT VALUES, a line for each field: name, tab, value.
var values = {};
var bytes = readFile(scriptArgs[2]);
var text = "";
for (var b = 0; b < bytes.length; b++) text += "%" + (256 + bytes[b]).toString(16).slice(1);
var lines = decodeURIComponent(text).split("\n");
for (var n = 0; n < lines.length; n++) {
  var tab = lines[n].indexOf("\t");
  if (tab > 0) values[lines[n].slice(0, tab)] = lines[n].slice(tab + 1);
}
function nameOf(field) {
  var parent = field.get("Parent");
  var own = field.get("T");
  var above = parent ? nameOf(parent) : "";
  return own ? (above ? above + "." : "") + own.asString() : above;
}
var doc = new PDFDocument(scriptArgs[0]);
for (var i = 0; i < doc.countPages(); i++) {
  var page = doc.loadPage(i);
  var annots = doc.findPage(i).get("Annots");
  page.getWidgets().forEach(function (widget, n) {
    var value = values[nameOf(annots.get(n))];
    if (value === undefined) return;
    var kind = widget.getFieldType();
    if (kind === "checkbox" && value === "Yes") widget.toggle();
    else if (kind === "radiobutton") {
      if (annots.get(n).get("AP").get("N").get(value)) widget.toggle();
    } else if (kind === "combobox") widget.setChoiceValue(value);
    else if (kind === "text") widget.setTextValue(value);
  });
  page.update();
}
doc.save(scriptArgs[1], "compress");
