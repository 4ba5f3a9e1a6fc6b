import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { docket } from '@/lib/documents/kit/docket';
import { flowText } from '@/lib/documents/kit/flow';
import { closePage, openPage, type PageFacts, type Setting, type Workshop } from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import { showNumber } from '@/lib/numbers/job-number';
import { REPAIR_FORM_LAW, REPAIR_FORM_TITLE, type RepairFormField } from '@/lib/quotes/rules/repair-form';

export type RepairFormData = {
  setting: Setting;
  workshop: Workshop;
  /** Stored quote number, without separators. */
  number: string;
  revision: number;
  customer: string;
  unit: { model: string; serial: string };
  providedOn: Day;
  validUntil: Day;
  /** Private link where the customer says yes or no; null where none opens the quote any more. */
  answerUrl: string | null;
  fields: readonly RepairFormField[];
};

/** A quote as the European Repair Information Form: its eleven fields in their order, each under its heading. */
export function drawRepairForm(data: RepairFormData): Promise<Uint8Array> {
  const { locale } = data.setting;
  const number = showNumber(data.number);
  const facts: PageFacts = {
    title: `${REPAIR_FORM_TITLE}, quote ${number}`,
    kind: 'Quote',
    number,
    workshop: data.workshop,
  };
  const sheet = openPage(data.setting, facts);
  docket(sheet, {
    kind: 'Quote',
    number,
    code: data.answerUrl
      ? {
          text: data.answerUrl,
          alt: `QR code that opens quote ${number} to answer it`,
          caption: 'Scan to say yes or no.',
        }
      : null,
    title: REPAIR_FORM_TITLE,
    notice: `Conditions held until ${formatDay(data.validUntil, locale, 'weekday')}`,
    facts: [
      { name: 'For', value: data.customer },
      { name: 'Unit', value: data.unit.model },
      { name: 'Serial', value: data.unit.serial, face: 'mono' },
      {
        name: 'Provided',
        value: `${formatDay(data.providedOn, locale, 'short')}, revision ${data.revision}`,
      },
      { name: 'Form', value: REPAIR_FORM_LAW },
    ],
  });
  for (const field of data.fields) {
    section(sheet, `${field.place}. ${field.heading}`, (part, column) => {
      for (const { name, text } of field.entries) {
        const content = name === null ? text : [{ text: `${name}: `, face: 'strong' as const }, { text }];
        flowText(sheet, part, 'P', content, column, { after: 2 });
      }
    });
  }
  return closePage(sheet, facts);
}
