/** What a person could do with a field: leave what is in it, choose one or some of what is offered, type, or add a file. */
export type FoundField = {
  name: string;
  kind: 'fixed' | 'one' | 'some' | 'typed' | 'file';
  values: string[];
};

/** A form as a page offers it: where it was found, the action behind it, what was bound to that, and its fields. */
export type FoundForm = { page: string; actionId: string; bound: string; fields: FoundField[] };

const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'", '#39': "'" };

/** The forms of a page that React wrote, which always writes attributes in double quotes and escapes what is in them. */
export function formsIn(html: string, page: string): FoundForm[] {
  const found: FoundForm[] = [];
  for (const [, inside = ''] of html.matchAll(/<form [^>]*method="POST"[^>]*>([\s\S]*?)<\/form>/g)) {
    const fields = fieldsIn(inside);
    const first = (name: RegExp) => fields.find((field) => name.test(field.name))?.values[0] ?? '';
    const actionId = /"id":"([0-9a-f]+)"/.exec(first(/^\$ACTION_\d+:0$/))?.[1];
    if (actionId)
      found.push({
        page,
        actionId,
        bound: first(/^\$ACTION_\d+:1$/),
        fields: fields.filter(({ name }) => !name.startsWith('$ACTION')),
      });
  }
  return found;
}

/** What a browser sends of a form that nobody touched, had the first of every choice been ticked. */
export function untouched(form: FoundForm): { name: string; value: string }[] {
  return form.fields.flatMap(({ name, kind, values }) =>
    kind === 'file' ? [] : [{ name, value: values[0] ?? '' }],
  );
}

function fieldsIn(html: string): FoundField[] {
  const fields = new Map<string, FoundField>();
  for (const [tag, element = ''] of html.matchAll(/<(input|textarea|select|button) [^>]*>/g)) {
    const name = attribute(tag, 'name');
    if (name === undefined) continue;
    const kind = kindOf(element, attribute(tag, 'type'));
    const value = attribute(tag, 'value');
    const values =
      element === 'select'
        ? optionsOf(html, tag)
        : element === 'textarea'
          ? [textOf(html, tag)]
          : [value ?? (kind === 'some' ? 'on' : '')];
    const known = fields.get(name);
    if (known) known.values.push(...values);
    else fields.set(name, { name, kind, values });
  }
  return [...fields.values()];
}

function kindOf(element: string, type: string | undefined): FoundField['kind'] {
  if (element === 'select' || element === 'button' || type === 'radio') return 'one';
  if (type === 'checkbox') return 'some';
  if (type === 'file') return 'file';
  return type === 'hidden' ? 'fixed' : 'typed';
}

function optionsOf(html: string, tag: string): string[] {
  const rest = html.slice(html.indexOf(tag));
  const options = [...rest.slice(0, rest.indexOf('</select>')).matchAll(/<option [^>]*value="([^"]*)"/g)];
  const values = options.map(([, value = '']) => unescaped(value));
  // The empty one, which asks to choose, comes last: the first of all stands for somebody who chose.
  return values.length === 0 ? [''] : values.sort((a, b) => Number(a === '') - Number(b === ''));
}

function textOf(html: string, tag: string): string {
  const rest = html.slice(html.indexOf(tag) + tag.length);
  return unescaped(rest.slice(0, Math.max(0, rest.indexOf('</textarea>'))));
}

function attribute(tag: string, name: string): string | undefined {
  const value = new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
  return value === undefined ? undefined : unescaped(value);
}

function unescaped(text: string): string {
  return text.replace(/&(\w+|#x?\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole);
}
