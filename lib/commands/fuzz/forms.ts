/** A form as a page offers it: where it was found, the action behind it, and what a browser would send untouched. */
export type FoundForm = {
  page: string;
  actionId: string;
  bound: string;
  fields: [name: string, value: string][];
};

const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'", '#39': "'" };

/** The forms of a page that React wrote, which always writes attributes in double quotes and escapes what is in them. */
export function formsIn(html: string, page: string): FoundForm[] {
  const found: FoundForm[] = [];
  for (const [, inside = ''] of html.matchAll(/<form [^>]*method="POST"[^>]*>([\s\S]*?)<\/form>/g)) {
    const fields = fieldsIn(inside);
    const reference = fields.find(([name]) => /^\$ACTION_\d+:0$/.test(name))?.[1] ?? '';
    const bound = fields.find(([name]) => /^\$ACTION_\d+:1$/.test(name))?.[1] ?? '';
    const actionId = /"id":"([0-9a-f]+)"/.exec(reference)?.[1];
    if (actionId)
      found.push({ page, actionId, bound, fields: fields.filter(([name]) => !name.startsWith('$ACTION')) });
  }
  return found;
}

function fieldsIn(html: string): [string, string][] {
  const fields: [string, string][] = [];
  for (const [tag, kind = ''] of html.matchAll(/<(input|textarea|select|button) [^>]*>/g)) {
    const name = attribute(tag, 'name');
    if (name === undefined) continue;
    const type = attribute(tag, 'type');
    const isChoice = type === 'radio' || type === 'checkbox';
    // The first choice of a group stands for a person who ticked one.
    if (isChoice && fields.some(([other]) => other === name)) continue;
    if (type === 'file') continue;
    fields.push([
      name,
      kind === 'select' ? optionOf(html, tag) : (attribute(tag, 'value') ?? (isChoice ? 'on' : '')),
    ]);
  }
  return fields;
}

function optionOf(html: string, tag: string): string {
  const rest = html.slice(html.indexOf(tag));
  const options = [...rest.slice(0, rest.indexOf('</select>')).matchAll(/<option [^>]*value="([^"]*)"/g)].map(
    ([, value = '']) => value,
  );
  return unescaped(options.find((value) => value !== '') ?? '');
}

function attribute(tag: string, name: string): string | undefined {
  const value = new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
  return value === undefined ? undefined : unescaped(value);
}

function unescaped(text: string): string {
  return text.replace(/&(\w+|#x?\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole);
}
