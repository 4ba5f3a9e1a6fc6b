/** An element of an XML document: its name, what it holds, and its attributes. */
export type Xml = {
  name: string;
  holds: string | readonly Xml[];
  attributes: Readonly<Record<string, string>>;
};

export function element(
  name: string,
  holds: string | readonly (Xml | null)[],
  attributes: Readonly<Record<string, string>> = {},
): Xml {
  return {
    name,
    holds: typeof holds === 'string' ? holds : holds.filter((child) => child !== null),
    attributes,
  };
}

// What XML 1.0 cannot hold at all, escaped or not (Char, production 2): most control characters and lone surrogates.
const UNSPEAKABLE = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

/** Text as it stands between tags or in an attribute: 'Quay & Alder' is 'Quay &amp; Alder'. What XML cannot hold is left out. */
export function escapeXml(text: string): string {
  return text
    .replace(UNSPEAKABLE, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/\r/g, '&#13;');
}

/** A whole document as text, one element a line; elements that hold text keep it as it is. */
export function xmlText(root: Xml): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${write(root, '')}\n`;
}

function write({ name, holds, attributes }: Xml, indent: string): string {
  const marks = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(value)}"`);
  const open = `${indent}<${name}${marks.join('')}>`;
  if (typeof holds === 'string') return `${open}${escapeXml(holds)}</${name}>`;
  return [open, ...holds.map((child) => write(child, `${indent}  `)), `${indent}</${name}>`].join('\n');
}
