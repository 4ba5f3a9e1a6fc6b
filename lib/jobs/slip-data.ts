import { cellsOf, recalledPieces } from '@/lib/bench/stored-recalls';
import { dayInZone } from '@/lib/calendar/day';
import { workingDaysWords } from '@/lib/calendar/working';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { config } from '@/lib/config';
import type { PackingSlipData } from '@/lib/documents/packing-slip';
import { formatMoney } from '@/lib/money/amount';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import { packingAdvice } from '@/lib/parcels/rules/packing';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { readWorkshop } from '@/lib/workshop/records';
import { letterheadOf, postalLines } from '@/lib/workshop/rules/letterhead';
import { type JobRecord, readKind, readStage, stagesReached } from './records';
import { batteryAnswer, batteryKind, postedAnswer } from './rules/posted-answer';
import { datedStamps } from './rules/run-of-stamps';
import { unitOfJob } from './stored-recall';

/** Everything the packing slip of a job says. */
export async function slipData(job: JobRecord): Promise<PackingSlipData> {
  const workshop = await readWorkshop();
  const { customer, model } = job;
  const unit = unitName(model);
  const cells = cellsOf(await recalledPieces(unitOfJob(job)));
  const verdict = postedAnswer(model, job.batteryAnswer, cells);
  const kind = readKind(job.kind);
  const advice = packingAdvice({
    unit,
    jobKind: kind,
    sentAlong: job.accessories.filter((each) => each.isTold).map((each) => each.name),
    accessories: model.accessories,
    battery: batteryAnswer(model, job.batteryAnswer) === 'none' ? 'none' : batteryKind(model.battery),
    verdict,
    weightGrams: model.weightGrams,
    isMainsPowered: model.isMainsPowered,
  });
  const agreed = agreedOf(job);
  const isInspection = agreed !== undefined && isInspectionOnly(agreed);
  return {
    setting: { paper: workshop.paper, locale: workshop.locale, made: job.bookedAt },
    workshop: letterheadOf(
      workshop,
      countryAbroad(workshop.country, { country: customer.country, locale: workshop.locale }),
    ),
    job: job.number,
    bookedOn: dayInZone(job.bookedAt, workshop.timeZone),
    statusUrl: `${config.appUrl}/track/${job.number}`,
    unit: { model: unit, serial: job.serialTyped },
    repair: job.repair.name,
    certificate: job.claim?.certificateNumber ?? null,
    from: [customer.name, ...postalLines(customer, countryAbroad(customer.country, workshop))],
    stamps: datedStamps(readStage(job.stage), stagesReached(job.events), workshop.timeZone),
    include: advice.include,
    leaveOut: advice.leaveOut,
    pack: [...advice.pack, ...workshop.packingText],
    outside: advice.outside,
    battery: {
      sentences: verdict.reasons,
      caution:
        verdict.code === 'no-battery'
          ? null
          : 'Swollen, leaking, hot or wet? Do not post it. Write to us first.',
    },
    next: [
      {
        what: 'You post the parcel',
        when: 'when it suits you',
        cost:
          kind === 'claim' ? 'the postage to us, paid back when the claim is covered' : 'the postage to us',
      },
      { what: 'We take it in and write to you', when: 'the day it arrives', cost: 'nothing' },
      kind === 'claim'
        ? {
            what: 'We inspect it and tell you our ruling',
            when: `within ${workingDaysWords(workshop.answerDays)}`,
            cost: 'nothing',
          }
        : {
            what: isInspection ? 'We inspect it and send you a price' : 'We repair it and prove it',
            when: `usually within ${workingDaysWords(agreed?.workingDays ?? job.repair.workingDays)}`,
            cost: formatMoney(agreed?.grossMinor ?? 0, workshop.currency, workshop.locale),
          },
    ],
  };
}
