import { symptomsOfRepairs } from '@/lib/catalogue/records';
import { batteryKind } from '@/lib/jobs/rules/posted-answer';
import { formatMoney } from '@/lib/money/amount';
import {
  BATTERY_QUESTION,
  BATTERY_QUESTION_HELP,
  batteryAnswersFor,
} from '@/lib/parcels/rules/battery-answers';
import type { CertificateRecord, Chain } from '@/lib/warranty/records';
import { claimSymptoms } from '@/lib/warranty/rules/standing';
import type { WorkshopCard } from '@/lib/workshop/card';
import { countryChoices } from '@/lib/workshop/places';
import { claim } from './actions';
import { ClaimForm } from './claim-form';

type Props = {
  chain: Chain;
  asked: CertificateRecord;
  workshop: WorkshopCard;
  /** a cell of ours in the unit is in doubt: it must not be posted */
  hasDoubtfulCell: boolean;
};

/** Three questions, the answer at once, and where it opens a claim the address to return the unit to. */
export async function ClaimPart({ chain, asked, workshop, hasDoubtfulCell }: Props) {
  const { model } = chain.inForce.job;
  const ofModel = await symptomsOfRepairs(model.id);
  const symptoms = claimSymptoms(chain.inForce.lines, ofModel.values());
  return (
    <section aria-labelledby="claim">
      <h2 id="claim">Has it failed again?</h2>
      <ClaimForm
        action={claim.bind(null, chain.inForce.number, asked.revision)}
        symptoms={symptoms}
        countries={countryChoices(workshop.locale, workshop.country)}
        batteries={batteryAnswersFor(batteryKind(model.battery))}
        batteryQuestion={{ label: BATTERY_QUESTION, hint: BATTERY_QUESTION_HELP }}
        hasDoubtfulCell={hasDoubtfulCell}
        serialPlace={model.serialPlace}
        nothing={formatMoney(0, workshop.currency, workshop.locale)}
      />
    </section>
  );
}
