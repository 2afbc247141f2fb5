import { PDFDocument, PDFName } from "pdf-lib";
import { escaped } from "../proof/svg.ts";

const language = "en-US";

/**
 * An empty document that says what PDF/UA-1 asks it to say of itself (ISO 14289-1:2014 §5, §7.1, §7.2). The library's
 * dates and producer are left out, so that the same content always makes the same bytes.
 */
export async function startTagged(title: string): Promise<PDFDocument> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setLanguage(language);
  const { context, catalog } = document;
  const metadata = context.stream(describing(title), { Type: "Metadata", Subtype: "XML" });
  catalog.set(PDFName.of("Metadata"), context.register(metadata));
  return document;
}

/** ISO 16684-1: XMP. A program finds it by the words of its first line. */
function describing(title: string): Uint8Array {
  const words = [
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">',
    `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title>`,
    `<dc:language><rdf:Bag><rdf:li>${language}</rdf:li></rdf:Bag></dc:language>`,
    "<pdfuaid:part>1</pdfuaid:part>",
    "</rdf:Description></rdf:RDF></x:xmpmeta>",
    '<?xpacket end="r"?>',
  ].join("\n");
  return Buffer.from(words);
}
