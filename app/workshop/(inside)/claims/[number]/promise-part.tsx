import { DocketSection } from '@/app/ui/docket/docket';
import { now } from '@/lib/clock';
import { claimFormat } from '@/lib/warranty/claim-format';
import { coverView } from '@/lib/warranty/cover-view';
import { answerHeading, sentence } from '@/lib/warranty/rules/reason-sentences';
import { readAssessment } from '@/lib/warranty/stored-assessment';
import type { CaseProps } from './open-case';

/** What the customer was told on the day the claim was opened, and how the cover it rests on is counted. */
export async function PromisePart({ found, workshop }: CaseProps) {
  const { claim, chain, certificate } = found;
  const given = readAssessment(claim.preliminary);
  const format = claimFormat(workshop);
  const cover = await coverView(chain, certificate, { workshop, now: now() });
  return (
    <>
      <DocketSection heading="The preliminary answer, as it was given">
        <p>
          <strong>{answerHeading(given)}</strong>
        </p>
        <ul className="plain-list mt-2">
          {given.reasons.map((reason, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the reasons of one stored answer keep their order
            <li key={index}>{sentence(reason, format)}</li>
          ))}
        </ul>
      </DocketSection>
      <DocketSection heading={`How revision ${certificate.revision} is counted`}>
        <ul className="plain-list">
          {cover.lines.map((line) => (
            <li key={line.id}>
              <strong>{line.what}</strong>
              <span className="block">{`${line.explained}.`}</span>
            </li>
          ))}
        </ul>
      </DocketSection>
    </>
  );
}
