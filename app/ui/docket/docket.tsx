import { type ReactNode, useId } from 'react';
import { NumberText } from '../words/number-text';
import { type Fact, Facts } from './facts';
import { Qr } from './qr';
import { type Stamp, Stamps } from './stamps';

type Level = 1 | 2 | 3;

type DocketProps = {
  kind: string;
  number: string;
  heading: ReactNode;
  headingLevel?: Level | undefined;
  tag?: ReactNode;
  qr?: { text: string; alt: string } | undefined;
  stubFacts?: readonly Fact[] | undefined;
  stamps?: readonly Stamp[] | undefined;
  children: ReactNode;
};

/**
 * A docket: stub with kind, number and code; body with what is known; a run of stamps below. `number` comes already
 * shaped by showNumber, `kind` is one of the house's words (Job, Quote, Certificate, Claim).
 *
 * ```tsx
 * <Docket kind="Job" number={showNumber(job.number)} heading="Meridian Four field recorder"
 *   qr={{ text: link, alt: 'QR code that opens this job' }} tag={<Tag tone="now">on the bench</Tag>}
 *   stubFacts={[{ term: 'Booked', text: '28 Nov 2026' }, { term: 'Promise', text: '9 Dec 2026' }]} stamps={steps}>
 *   <DocketSection heading="The unit">
 *     <Facts items={[{ term: 'Serial', text: <NumberText text="MR4-0581-S" /> }]} />
 *   </DocketSection>
 * </Docket>
 * ```
 */
export function Docket(props: DocketProps) {
  const { kind, number, heading, headingLevel = 2, tag, qr, stubFacts, stamps, children } = props;
  const id = useId();
  const Heading = `h${headingLevel}` as const;
  return (
    <article className="docket" aria-labelledby={id}>
      <div className="docket-top">
        <div className="docket-stub">
          <span className="docket-eyelet" aria-hidden="true" />
          <p className="docket-kind">{kind}</p>
          <p className="docket-number">
            <NumberText text={number} large />
          </p>
          {qr ? <Qr text={qr.text} alt={qr.alt} /> : null}
          {stubFacts ? <Facts items={stubFacts} small /> : null}
        </div>
        <div className="docket-body">
          <div className="docket-head">
            <Heading id={id}>{heading}</Heading>
            {tag}
          </div>
          {children}
        </div>
      </div>
      {stamps && stamps.length > 0 ? (
        <div className="docket-run">
          <Stamps steps={stamps} label={`Stages of ${kind.toLowerCase()} ${number}`} />
        </div>
      ) : null}
    </article>
  );
}

/** A part of the docket's body under its own small heading. */
export function DocketSection({ heading, children }: { heading: ReactNode; children: ReactNode }) {
  return (
    <section className="docket-section">
      <h3>{heading}</h3>
      {children}
    </section>
  );
}
