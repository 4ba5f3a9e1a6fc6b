import { docket } from '@/lib/documents/kit/docket';
import { flowText } from '@/lib/documents/kit/flow';
import { ink, styled, styles } from '@/lib/documents/kit/ink';
import {
  closePage,
  drawLargest,
  openPage,
  type PageFacts,
  type Setting,
  type Workshop,
} from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import { showNumber } from '@/lib/numbers/job-number';
import type { CustomsNote } from '@/lib/parcels/rules/customs-note';
import { CUSTOMS_CAUTION, CUSTOMS_FORMS } from '@/lib/parcels/rules/customs-note';

export type CustomsNoteData = {
  setting: Setting;
  workshop: Workshop;
  /** Stored job number, without separators. */
  job: string;
  /** Address of the job in the workshop, for the QR code. */
  jobUrl: string;
  unit: { model: string; serial: string };
  note: CustomsNote;
};

/** What a customs form asks, on one sheet to copy from; what nobody has said yet stands on it in so many words. */
export function drawCustomsNote(data: CustomsNoteData): Promise<Uint8Array> {
  const number = showNumber(data.job);
  const facts: PageFacts = {
    title: `Customs note ${number}`,
    kind: 'Customs note',
    number,
    workshop: data.workshop,
  };
  return drawLargest((pass) => {
    const sheet = openPage(data.setting, facts, pass);
    docket(sheet, {
      kind: 'Job',
      number,
      code: {
        text: data.jobUrl,
        alt: `QR code that opens job ${number} in the workshop`,
        caption: 'Opens the job sheet.',
        size: 64,
      },
      title: 'Customs note',
      notice: null,
      facts: [
        { name: 'Unit', value: data.unit.model },
        { name: 'Serial', value: data.unit.serial, face: 'mono' },
      ],
    });
    for (const field of data.note.fields) {
      section(sheet, field.heading, (part, column) => {
        for (const { name, value } of field.entries) {
          const content = [{ text: `${name}: `, face: 'strong' as const }, { text: value }];
          flowText(sheet, part, 'P', content, column, { after: 2 });
        }
      });
    }
    section(sheet, 'Which form', (part, column) => {
      flowText(sheet, part, 'P', CUSTOMS_FORMS, column);
      const caution = styled(styles.body, { face: 'strong', colour: ink.accent });
      flowText(sheet, part, 'P', CUSTOMS_CAUTION, column, { style: caution });
    });
    return { fit: sheet.pages === 1 ? 'whole' : 'no', close: () => closePage(sheet, facts) };
  });
}
