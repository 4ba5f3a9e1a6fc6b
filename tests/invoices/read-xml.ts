/** An element read back from XML text. */
export type Node = { name: string; attributes: Record<string, string>; text: string; children: Node[] };

/** Reads the XML this house writes, strictly: every tag closed in order, no stray text, the five escapes known. */
export function readXml(text: string): Node {
  const top: Node = { name: '', attributes: {}, text: '', children: [] };
  const open = [top];
  const body = text.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/, '');
  if (body === text) throw new Error('no XML declaration');
  for (const [, close, name, marks, words] of body.matchAll(
    /<(\/?)([\w:]+)((?: [\w:]+="[^"<]*")*)>|([^<]+)/g,
  )) {
    const inside = open.at(-1) ?? top;
    if (words !== undefined) inside.text += plain(words);
    else if (close === '/') {
      const done = open.pop();
      if (done?.name !== name) throw new Error(`</${name}> closes ${done?.name}`);
      if (done && done.children.length > 0 && done.text.trim() !== '') throw new Error(`text beside ${name}`);
    } else {
      const node: Node = { name: name ?? '', attributes: {}, text: '', children: [] };
      for (const [, key, value] of (marks ?? '').matchAll(/([\w:]+)="([^"]*)"/g))
        node.attributes[key ?? ''] = plain(value ?? '');
      inside.children.push(node);
      open.push(node);
    }
  }
  const [root] = top.children;
  if (open.length !== 1 || top.children.length !== 1 || !root) throw new Error('not one whole element');
  return root;
}

function plain(text: string): string {
  if (/&(?!(amp|lt|gt|quot|#13);)/.test(text)) throw new Error(`an ampersand alone in ${text}`);
  return text
    .replace(/&#13;/g, '\r')
    .replace(/&quot;/g, '"')
    .replace(/&gt;/g, '>')
    .replace(/&lt;/g, '<')
    .replace(/&amp;/g, '&');
}

/** Every element at a path below a node: 'TaxTotal/TaxSubtotal'; names without their prefix. */
export function all(node: Node, path: string): Node[] {
  return path
    .split('/')
    .reduce<Node[]>(
      (found, step) => found.flatMap((each) => each.children.filter((child) => bare(child.name) === step)),
      [node],
    );
}

/** The text at a path, or null where there is no such element. */
export function textAt(node: Node, path: string): string | null {
  return all(node, path)[0]?.text ?? null;
}

function bare(name: string): string {
  return name.replace(/^.*:/, '');
}
