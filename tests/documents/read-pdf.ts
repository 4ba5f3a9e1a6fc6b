import { inflateSync } from 'node:zlib';

/** A stretch of drawn text with its box, in points from the left lower corner of its page. */
export type DrawnText = {
  x: number;
  y: number;
  width: number;
  size: number;
  text: string;
  tag: string | null;
};
export type ReadPage = { width: number; height: number; texts: DrawnText[] };

type FontTable = { unicode: Map<number, string>; widths: number[] };

/** The file as Latin characters, one a byte, for looking at its dictionaries. */
export function plain(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('latin1');
}

function objectsOf(bytes: Uint8Array): Map<number, string> {
  const objects = new Map<number, string>();
  for (const found of plain(bytes).matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g))
    objects.set(Number(found[1]), found[2] ?? '');
  return objects;
}

function reference(text: string, name: string): number {
  return Number(new RegExp(`/${name} \\[?(\\d+) 0 R`).exec(text)?.[1]);
}

function streamOf(object: string): string {
  const [dictionary = '', ...rest] = object.split('\nstream\n');
  const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1]);
  const packed = Buffer.from(rest.join('\nstream\n').slice(0, length), 'latin1');
  return (dictionary.includes('/FlateDecode') ? inflateSync(packed) : packed).toString('latin1');
}

function fontTable(objects: ReadonlyMap<number, string>, font: string): FontTable {
  const unicode = new Map<number, string>();
  const map = streamOf(objects.get(reference(font, 'ToUnicode')) ?? '');
  for (const range of map.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[(.*?)\]/gi)) {
    const first = Number.parseInt(range[1] ?? '', 16);
    [...(range[2] ?? '').matchAll(/<([0-9a-f ]*)>/gi)].forEach((entry, index) => {
      // An empty entry is a part of a letter that another glyph already stands for.
      const units = (entry[1]?.match(/[0-9a-f]{4}/gi) ?? []).map((unit) => Number.parseInt(unit, 16));
      unicode.set(first + index, String.fromCharCode(...units));
    });
  }
  const descendant = objects.get(reference(font, 'DescendantFonts')) ?? '';
  const widths = (/\/W \[0 \[([^\]]*)\]/.exec(descendant)?.[1] ?? '').trim().split(/\s+/).map(Number);
  return { unicode, widths };
}

function readShown(shown: string, font: FontTable): { text: string; width: number } {
  let text = '';
  let width = 0;
  for (const part of shown.matchAll(/<([0-9a-f]*)>|(-?[\d.]+)/g)) {
    if (part[2] !== undefined) width -= Number(part[2]);
    for (const code of part[1]?.match(/.{4}/g) ?? []) {
      const glyph = Number.parseInt(code, 16);
      text += font.unicode.get(glyph) ?? '';
      width += font.widths[glyph] ?? Number.NaN;
    }
  }
  return { text, width };
}

const operators =
  /\/(\w+)\s*(?:<<[\s\S]*?>>\s*BDC|BMC)|\bEMC\b|1 0 0 1 (\S+) (\S+) Tm|\/(F\d+) (\S+) Tf|\[([^\]]*)\] TJ/g;

function readContent(content: string, fonts: ReadonlyMap<string, FontTable>): DrawnText[] {
  const texts: DrawnText[] = [];
  const tags: string[] = [];
  let at = { x: 0, y: 0 };
  let font: FontTable = { unicode: new Map(), widths: [] };
  let size = 0;
  for (const found of content.matchAll(operators)) {
    const [whole, tag, x, y, name, points, shown] = found;
    if (tag !== undefined) tags.push(tag);
    else if (whole === 'EMC') tags.pop();
    else if (x !== undefined) at = { x: Number(x), y: Number(y) };
    else if (name !== undefined) {
      font = fonts.get(name) ?? font;
      size = Number(points);
    } else if (shown !== undefined) {
      const { text, width } = readShown(shown, font);
      texts.push({ ...at, size, text, width: (width * size) / 1000, tag: tags[0] ?? null });
    }
  }
  return texts;
}

/** Reads the text of a file drawn here, with its places, without any outside tool. */
export function readPages(bytes: Uint8Array): ReadPage[] {
  const objects = objectsOf(bytes);
  const kids = [...objects.values()].find((object) => /\/Type \/Pages/.test(object)) ?? '';
  const ids = [...(/\/Kids \[([^\]]*)\]/.exec(kids)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map((kid) =>
    Number(kid[1]),
  );
  return ids.map((id) => {
    const page = objects.get(id) ?? '';
    const resources = objects.get(reference(page, 'Resources')) ?? '';
    const fonts = new Map<string, FontTable>();
    for (const entry of resources.matchAll(/\/(F\d+) (\d+) 0 R/g))
      fonts.set(entry[1] ?? '', fontTable(objects, objects.get(Number(entry[2])) ?? ''));
    const [width, height] = (/\/MediaBox \[0 0 (\S+) (\S+)\]/.exec(page) ?? []).slice(1).map(Number);
    const texts = readContent(streamOf(objects.get(reference(page, 'Contents')) ?? ''), fonts);
    return { width: width ?? 0, height: height ?? 0, texts };
  });
}

/** All text in drawing order, with single spaces. */
export function textOf(bytes: Uint8Array): string {
  const drawn = readPages(bytes).flatMap((page) => page.texts.map((text) => text.text));
  return drawn.join(' ').replace(/\s+/g, ' ');
}

/** All letters without any space, for text that was broken into lines at places nobody can foresee. */
export function lettersOf(text: string): string {
  return text.normalize('NFC').replace(/\s+/g, '');
}

/** What is wrong with where text stands: outside the page, over other text, or outside the tagged content. */
export function faultsOf(bytes: Uint8Array, margin: number): string[] {
  return readPages(bytes).flatMap((page, index) => {
    const shown = page.texts.filter((text) => text.text.trim() !== '');
    const outside = shown.filter(
      ({ x, y, width, text, size }) =>
        x < margin - 0.5 ||
        // A closing space may hang over the margin, ink may not.
        x + width - (text.endsWith(' ') ? size * 0.7 : 0) > page.width - margin + 0.5 ||
        y < margin - 6 ||
        y + size * 0.7 > page.height - margin + 6,
    );
    const untagged = shown.filter((text) => text.tag === null);
    const over = shown.flatMap((a, at) =>
      shown
        .slice(at + 1)
        .filter((b) => areOver(a, b))
        .map((b) => [a, b] as const),
    );
    return [
      ...outside.map((text) => `page ${index + 1}: "${text.text}" leaves the page`),
      ...untagged.map((text) => `page ${index + 1}: "${text.text}" is in no tag`),
      ...over.map(([a, b]) => `page ${index + 1}: "${a.text}" stands over "${b.text}"`),
    ];
  });
}

// The x-height of a line, so that only letters drawn over letters count and not two close lines.
function areOver(a: DrawnText, b: DrawnText): boolean {
  const aEnd = a.x + a.width - (a.text.endsWith(' ') ? a.size * 0.7 : 0);
  const bEnd = b.x + b.width - (b.text.endsWith(' ') ? b.size * 0.7 : 0);
  const isAcross = a.x < bEnd - 0.6 && b.x < aEnd - 0.6;
  return isAcross && a.y < b.y + b.size * 0.5 && b.y < a.y + a.size * 0.5;
}
