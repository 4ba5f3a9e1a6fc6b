import { catalogue } from './forms/catalogue';
import type { Form, FormsOfFiles } from './forms/form';
import { front } from './forms/front';
import { jobs } from './forms/jobs';
import { money } from './forms/money';
import { office } from './forms/office';
import { ofLib } from './forms/rooms';
import { workshop } from './forms/signing-in';

export type { Form } from './forms/form';

/** A form filled in as it should be, for every schema that something sent is read by: by its file and name. */
export const edgeForms = new Map<string, Form>([
  ...flat('app/(front)/', front),
  ...flat('app/workshop/', workshop),
  ...flat('app/workshop/(inside)/', [...catalogue, ...jobs, ...office]),
  ...flat('', ofLib),
  ['lib/workshop/money-input.ts moneyInput', money],
  ['lib/workshop/settings-input.ts moneyInput', money],
]);

function flat(folder: string, table: FormsOfFiles): [string, Form][] {
  return table.flatMap(([file, forms]) =>
    Object.entries(forms).map(([name, form]): [string, Form] => [`${folder}${file} ${name}`, form]),
  );
}
