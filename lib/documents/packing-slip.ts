import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { addressLabel, labelRoom } from '@/lib/documents/kit/address-label';
import type { ColumnBlock } from '@/lib/documents/kit/column-rows';
import { flowColumns } from '@/lib/documents/kit/columns';
import { docket } from '@/lib/documents/kit/docket';
import { ink, styled, styles } from '@/lib/documents/kit/ink';
import { closePage, drawLargest, openPage, type Setting, type Workshop } from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import type { Sheet } from '@/lib/documents/kit/sheet';
import { runOfStamps, type Stamp } from '@/lib/documents/kit/stamps';
import { table } from '@/lib/documents/kit/table';
import { showNumber } from '@/lib/numbers/job-number';

export type PackingSlipData = {
  setting: Setting;
  workshop: Workshop;
  /** Stored job number, without separators. */
  job: string;
  bookedOn: Day;
  /** Address of the job's status page, for the QR code. */
  statusUrl: string;
  unit: { model: string; serial: string };
  repair: string;
  /** Stored certificate number when this is a claim job: it is free of charge. */
  certificate: string | null;
  /** Sender as it should stand on the parcel, or no lines. */
  from: readonly string[];
  stamps: readonly Stamp[];
  include: readonly string[];
  leaveOut: readonly string[];
  pack: readonly string[];
  /** What goes on the box. */
  outside: readonly string[];
  battery: { sentences: readonly string[]; caution: string | null };
  /** What happens next, when, and what it costs. */
  next: readonly { what: string; when: string; cost: string }[];
};

/** The slip that goes into the parcel, with the address label to cut off: one page A4 or Letter. */
export function drawPackingSlip(data: PackingSlipData): Promise<Uint8Array> {
  const facts = {
    title: `Packing slip ${showNumber(data.job)}`,
    kind: 'Packing slip',
    number: showNumber(data.job),
    workshop: data.workshop,
  };
  return drawLargest((pass) => {
    const sheet = openPage(data.setting, facts, pass);
    drawBody(sheet, data, pass.scale);
    return { fit: sheet.pages === 1 ? 'whole' : 'no', close: () => closePage(sheet, facts) };
  });
}

function batteryBlocks(battery: PackingSlipData['battery']): ColumnBlock[] {
  const caution = styled(styles.body, { face: 'strong', colour: ink.accent });
  return [
    { kind: 'text', content: battery.sentences.join(' ') },
    ...(battery.caution ? [{ kind: 'text', content: battery.caution, style: caution } as const] : []),
  ];
}

function drawBody(sheet: Sheet, data: PackingSlipData, scale: number): void {
  const number = showNumber(data.job);
  docket(sheet, {
    kind: 'Job',
    number,
    code: {
      text: data.statusUrl,
      alt: `QR code that opens the status of job ${number}`,
      caption: 'Scan to see where your unit is.',
      size: 76,
    },
    title: 'Packing slip',
    notice: data.certificate ? `Free of charge under certificate ${showNumber(data.certificate)}` : null,
    facts: [
      { name: 'Unit', value: data.unit.model },
      { name: 'Serial', value: data.unit.serial, face: 'mono' },
      { name: 'Repair', value: data.repair },
      { name: 'Booked on', value: formatDay(data.bookedOn, data.setting.locale, 'weekday') },
    ],
  });
  // On the fullest page the run of stamps, nearly all of it still to come on this slip, gives way.
  if (scale >= 0.9) runOfStamps(sheet, data.stamps, data.setting.locale);
  flowColumns(sheet, [
    { heading: 'Put in the parcel', blocks: [{ kind: 'list', items: data.include, mark: 'box' }] },
    { heading: 'Keep at home', blocks: [{ kind: 'list', items: data.leaveOut, mark: 'cross' }] },
    { heading: 'On the box', blocks: [{ kind: 'list', items: data.outside, mark: 'box' }] },
    { heading: 'How to pack', blocks: [{ kind: 'list', items: data.pack, mark: 'number' }] },
    { heading: 'Battery', blocks: batteryBlocks(data.battery) },
  ]);
  section(sheet, 'What happens next', (part, column) => {
    const columns = [
      { head: 'What', share: 4 },
      { head: 'When', share: 3 },
      { head: 'What it costs', share: 3 },
    ];
    table(
      sheet,
      part,
      columns,
      data.next.map((step) => ({ cells: [step.what, step.when, step.cost] })),
      column,
    );
  });
  if (sheet.y + labelRoom > sheet.bottom) sheet.newPage();
  addressLabel(sheet, {
    to: [data.workshop.name, ...data.workshop.address],
    from: data.from,
    shown: number,
    coded: data.job,
    cutHint: 'Cut along the dots and stick this label on the parcel. Put the rest inside, on top.',
  });
}
