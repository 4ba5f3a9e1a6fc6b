/** The fields of a posted form, by name; a file is true, since only its being there matters here. */
export type SentFields = ReadonlyMap<string, string | true>;

const MOST_ARGUMENTS = 10;
const DEEPEST = 8;

/**
 * True for a form with script as React 19 sends one to a server action: its field "0" is a list of plain values, with
 * the form itself, "$K1", at the end. React would also build promises, streams, maps, functions and big numbers out of
 * what is sent; none of our forms sends any, and a half-made one ends in an error of the server.
 *
 * readsWithScript(new Map([['0', '["J7K2M4PX3",{},"$K1"]'], ['1_text', 'Hello']])) -> true
 */
export function readsWithScript(fields: SentFields): boolean {
  const sent = listOf(fields.get('0'));
  return (
    sent !== null && /^\$K[0-9a-f]+$/.test(String(sent.at(-1))) && sent.slice(0, -1).every(isPlain(sent))
  );
}

/**
 * True for a form without script: each action it names is named whole, with a list of plain values. A form that names
 * none, like a search, is true too.
 *
 * readsWithoutScript(new Map([['$ACTION_REF_1', ''], ['$ACTION_1:0', '{"id":"60…","bound":"$@1"}'], ['$ACTION_1:1', '[{}]']])) -> true
 */
export function readsWithoutScript(fields: SentFields): boolean {
  for (const name of fields.keys()) {
    // Every form here has a state, so its action comes as a reference with values; an id alone is no form of ours.
    if (name.startsWith('$ACTION_ID_')) return false;
    if (!name.startsWith('$ACTION_REF_')) continue;
    const prefix = `$ACTION_${name.slice('$ACTION_REF_'.length)}:`;
    if (!/^\{"id":"[0-9a-f]{42}","bound":"\$@1"\}$/.test(String(fields.get(`${prefix}0`)))) return false;
    const sent = listOf(fields.get(`${prefix}1`));
    if (sent === null || !sent.every(isPlain(sent))) return false;
  }
  return true;
}

function listOf(text: string | true | undefined): unknown[] | null {
  if (typeof text !== 'string') return null;
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) && value.length > 0 && value.length <= MOST_ARGUMENTS ? value : null;
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
