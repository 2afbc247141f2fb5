/** Values of fields in the Forms Data Format in XML (ISO 19444-1); a tick is `true`. */
export function xfdf(values: Readonly<Record<string, string | boolean>>): string {
  // A name with dots is a field in a field.
  const fields = Object.entries(values).map(([name, value]) => {
    const path = name.split(".");
    const open = path.map((part) => `<field name="${escape(part)}">`).join("");
    const text = typeof value === "string" ? value : value ? "Yes" : "Off";
    return `${open}<value>${escape(text)}</value>${"</field>".repeat(path.length)}`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?><xfdf xmlns="http://ns.adobe.com/xfdf/"><fields>${fields.join("")}</fields></xfdf>`;
}

function escape(text: string): string {
  return text.replace(/[&<>"\n]/g, (character) => `&#${character.charCodeAt(0)};`);
}
