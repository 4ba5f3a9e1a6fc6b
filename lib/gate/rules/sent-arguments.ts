/** The fields of a posted form, by name; a file is true, since only its being there matters here. */
export type SentFields = ReadonlyMap<string, string | true>;

const DEEPEST = 8;

/**
 * How many arguments an action takes, from its id: Next 16 writes into the first byte of 42 hexadecimal digits a bit for
 * each of its first six parameters. null for what is no id of an action.
 *
 * argumentsOf('70d788fb20ffc4f4d49bb882dd8155faaf5c08c46e') -> 3, a number or token, what the form said before, the form
 */
export function argumentsOf(actionId: string): number | null {
  if (!/^[0-9a-f]{42}$/.test(actionId)) return null;
  const bits = (Number.parseInt(actionId.slice(0, 2), 16) >> 1) & 0b111111;
  return bits.toString(2).replaceAll('0', '').length;
}

/**
 * True for a form with script as React 19 sends one to a server action: its field "0" is the list of the action's
 * arguments, as many as it takes, with the form itself, "$K1", at the end. React would also build promises, streams,
 * maps, functions and big numbers out of what is sent; none of our forms sends any, and a half-made one, or an argument
 * in the place of another, ends in an error of the server.
 *
 * readsWithScript('70d7…', new Map([['0', '["J7K2M4PX3",{},"$K1"]'], ['1_text', 'Hello']])) -> true
 */
export function readsWithScript(actionId: string, fields: SentFields): boolean {
  const sent = listOf(fields.get('0'));
  if (sent === null || !/^\$K[0-9a-f]+$/.test(String(sent.at(-1)))) return false;
  return isComplete(actionId, sent.slice(0, -1), sent);
}

/**
 * True for a form without script: each action it names is named whole, with its arguments before the form. A form that
 * names none, like a search, is true too.
 *
 * readsWithoutScript(new Map([['$ACTION_REF_1', ''], ['$ACTION_1:0', '{"id":"60…","bound":"$@1"}'], ['$ACTION_1:1', '[{}]']])) -> true
 */
export function readsWithoutScript(fields: SentFields): boolean {
  for (const name of fields.keys()) {
    // Every form here has a state, so its action comes as a reference with values; an id alone is no form of ours.
    if (name.startsWith('$ACTION_ID_')) return false;
    if (!name.startsWith('$ACTION_REF_')) continue;
    const prefix = `$ACTION_${name.slice('$ACTION_REF_'.length)}:`;
    const id = /^\{"id":"([0-9a-f]{42})","bound":"\$@1"\}$/.exec(String(fields.get(`${prefix}0`)))?.[1];
    const sent = listOf(fields.get(`${prefix}1`));
    if (!id || sent === null || !isComplete(id, sent, sent)) return false;
  }
  return true;
}

/** What comes before the form: what the page bound, texts, numbers or nothing, and then the form's last answer. */
function isComplete(actionId: string, before: unknown[], root: unknown[]): boolean {
  if (before.length + 1 !== argumentsOf(actionId)) return false;
  const state = before.at(-1);
  if (typeof state !== 'object' || state === null || Array.isArray(state)) return false;
  const bound = before.slice(0, -1);
  return bound.every(isBindable) && before.every(isPlain(root));
}

function isBindable(part: unknown): boolean {
  if (typeof part === 'string') {
    // PostgreSQL's text knows neither NUL nor half a pair of surrogates.
    return /^(?!\$(?!\$))/.test(part) && part.isWellFormed() && !part.includes('\0');
  }
  return typeof part === 'number' || part === null;
}

function listOf(text: string | true | undefined): unknown[] | null {
  if (typeof text !== 'string') return null;
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}

/** Plain as the answer to a form is: text, numbers, yes and no, nothing, and lists and records of them. */
function isPlain(root: unknown[], depth = 0): (value: unknown) => boolean {
  return (value) => {
    if (typeof value === 'string') return !value.startsWith('$') || isPlainMark(value, root);
    if (typeof value !== 'object' || value === null) return true;
    return depth < DEEPEST && Object.values(value).every(isPlain(root, depth + 1));
  };
}

// "$$5" is the text "$5"; "$undefined" is nothing; "$0:1:values" is a value that stands elsewhere in the same list.
function isPlainMark(mark: string, root: unknown[]): boolean {
  if (mark.startsWith('$$') || mark === '$undefined') return true;
  if (!mark.startsWith('$0:')) return false;
  let found: unknown = root;
  for (const key of mark.slice(3).split(':')) {
    if (typeof found !== 'object' || found === null || !Object.hasOwn(found, key)) return false;
    found = Object.entries(found).find(([name]) => name === key)?.[1];
  }
  return typeof found === 'object' && found !== null && found !== root;
}
