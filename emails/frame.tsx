import type { CSSProperties, ReactNode } from 'react';
import {
  Body,
  Button,
  Column,
  Container,
  Head,
  Heading,
  Html,
  Link,
  Preview,
  Row,
  Section,
  Text,
} from 'react-email';
import { LANGUAGE } from '@/lib/calendar/language';
import { faces, ink, styleSheet } from './ink';
import type { Letter, Setting } from './letter';
import { reach, thing } from './words';

const light = ink.light;
const plain: CSSProperties = { margin: 0, fontFamily: faces.sans, color: light.ink };
const body: CSSProperties = { ...plain, fontSize: 16, lineHeight: '24px' };
const small: CSSProperties = { ...plain, fontSize: 14, lineHeight: '20px', color: light.soft };

type FrameProps = { letter: Letter; setting: Setting };

/** The docket every message is: a stub with the number, a body with what happened, the workshop under it. */
export function Frame({ letter, setting }: FrameProps) {
  return (
    <Html lang={LANGUAGE}>
      <Head>
        <title>{letter.subject}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="supported-color-schemes" content="light dark" />
        <style>{styleSheet}</style>
      </Head>
      <Body
        lang={LANGUAGE}
        className="ground on-ground"
        style={{ margin: 0, padding: 0, backgroundColor: light.ground }}
      >
        <Preview useTitleTag={false}>{letter.summary}</Preview>
        <Container tdClassName="page" style={{ maxWidth: 600, padding: 24 }}>
          <Section
            className="on-sheet by-edge"
            style={{ backgroundColor: light.sheet, border: `1px solid ${light.edge}`, borderRadius: 2 }}
          >
            <Row>
              <Stub setting={setting} />
              <Column className="half" style={{ padding: '20px 24px 24px', verticalAlign: 'top' }}>
                {letter.to === 'customer' ? <Para>Hello {setting.job.customer},</Para> : null}
                {letter.body}
              </Column>
            </Row>
          </Section>
          <Foot letter={letter} setting={setting} />
        </Container>
      </Body>
    </Html>
  );
}

function Stub({ setting: { job } }: { setting: Setting }) {
  return (
    <Column
      className="half stub on-stub by-edge"
      style={{
        width: 132,
        padding: '20px 12px 20px 16px',
        verticalAlign: 'top',
        backgroundColor: light.stub,
        borderRight: `4px dotted ${light.edge}`,
      }}
    >
      <Text className="in-soft term" style={{ ...small, fontWeight: 600 }}>
        {job.kind === 'quote' ? 'Quote' : 'Job'}
      </Text>
      <Text
        className="in-ink told"
        style={{ ...plain, fontFamily: faces.mono, fontSize: 26, lineHeight: '30px', fontWeight: 600 }}
      >
        {job.number}
      </Text>
      <Text className="in-ink told" style={{ ...small, color: light.ink, marginTop: 12 }}>
        {job.unit}
      </Text>
      {job.serial === '' ? null : (
        <Text className="in-soft told" style={{ ...small, fontFamily: faces.mono, marginTop: 4 }}>
          {job.serial}
        </Text>
      )}
    </Column>
  );
}

function Foot({ letter, setting }: FrameProps) {
  const { workshop } = setting;
  const lines = [workshop.name, ...workshop.addressLines].filter((line) => line !== '');
  const why =
    letter.to === 'customer'
      ? `You get this message because this ${thing(setting)} is yours. It was sent automatically.`
      : 'This message went to the workshop only. It was sent automatically.';
  return (
    <Section style={{ padding: '16px 4px 0' }}>
      <Text className="in-soft" style={small}>
        {lines.join(' · ')}
      </Text>
      <Text className="in-soft" style={{ ...small, marginTop: 4 }}>
        {why} {letter.to === 'customer' ? reach(setting) : ''}
      </Text>
    </Section>
  );
}

export function Title({ children }: { children: ReactNode }) {
  return (
    <Heading
      as="h1"
      className="in-ink"
      style={{ ...plain, fontSize: 20, lineHeight: '28px', fontWeight: 700, marginTop: 12, marginBottom: 8 }}
    >
      {children}
    </Heading>
  );
}

export function Para({ children }: { children: ReactNode }) {
  return (
    <Text className="in-ink" style={{ ...body, marginBottom: 12 }}>
      {children}
    </Text>
  );
}

/** Words somebody wrote, set apart from ours; line breaks stay. */
export function Words({ from, children }: { from: string; children: string }) {
  return (
    <Section
      className="by-edge"
      style={{ borderLeft: `4px solid ${light.edge}`, paddingLeft: 12, margin: '4px 0 16px' }}
    >
      <Text className="in-soft term" style={small}>
        {from}
      </Text>
      <Text className="in-ink told" style={{ ...body, whiteSpace: 'pre-line' }}>
        {children}
      </Text>
    </Section>
  );
}

export type Line = { term: string; text: ReactNode; isMono?: boolean };

/** Terms and their texts between hairlines. */
export function Lines({ items }: { items: readonly Line[] }) {
  return (
    <Section className="by-edge" style={{ borderTop: `1px solid ${light.edge}`, margin: '4px 0 16px' }}>
      {items.map((item) => (
        <Row key={item.term} className="by-rule" style={{ borderBottom: `1px solid ${light.rule}` }}>
          <Column style={{ padding: '6px 0' }}>
            <Text className="in-soft term" style={small}>
              {item.term}
            </Text>
            <Text className="in-ink told" style={item.isMono ? { ...body, fontFamily: faces.mono } : body}>
              {item.text}
            </Text>
          </Column>
        </Row>
      ))}
    </Section>
  );
}

/** What every message answers: what happens next, when, and what it costs. */
export function Next({ what, when, costs }: { what: ReactNode; when: ReactNode; costs: ReactNode }) {
  return (
    <Lines
      items={[
        { term: 'What happens next', text: what },
        { term: 'When', text: when },
        { term: 'What it costs', text: costs },
      ]}
    />
  );
}

/** The one action of a message, with its address in full for those who cannot or will not press buttons. */
export function Action({ href, children }: { href: string; children: string }) {
  return (
    <Section style={{ margin: '4px 0 16px' }}>
      <Button
        href={href}
        className="on-action in-on-action"
        style={{
          backgroundColor: light.action,
          color: light['on-action'],
          fontFamily: faces.sans,
          fontSize: 16,
          fontWeight: 700,
          borderRadius: 2,
          padding: '14px 20px',
        }}
      >
        {children}
      </Button>
      <Text
        className="in-soft"
        data-skip-in-text="true"
        style={{ ...small, marginTop: 8, wordBreak: 'break-all' }}
      >
        Or open{' '}
        <Link href={href} className="in-action" style={{ color: light.action, textDecoration: 'underline' }}>
          {href}
        </Link>
      </Text>
    </Section>
  );
}

/** The action as staff see it: what its button says and its address, and nothing to press. */
function NoWayIn({ address, children }: { address: string; children: string }) {
  return (
    <Section
      className="by-edge"
      style={{ border: `1px dashed ${light.edge}`, padding: 12, margin: '4px 0 16px' }}
    >
      <Text className="in-ink" style={{ ...body, fontWeight: 700 }}>
        {children}
      </Text>
      <Text className="in-soft told" style={{ ...small, wordBreak: 'break-all' }}>
        {address}
      </Text>
    </Section>
  );
}

/** An address outside the house, in full. */
export function PlainLink({ href }: { href: string }) {
  return (
    <Link
      href={href}
      className="in-action"
      style={{ color: light.action, textDecoration: 'underline', wordBreak: 'break-all' }}
    >
      {href}
    </Link>
  );
}

/** The way to the customer's own page; without an address, the way to get one. */
export function JobPage({ setting, children }: { setting: Setting; children: string }) {
  if (setting.link && setting.isLookedAt) return <NoWayIn address={setting.link}>{children}</NoWayIn>;
  if (setting.link) return <Action href={setting.link}>{children}</Action>;
  return (
    <Para>
      The link to this {thing(setting)} no longer works. Ask us for a new one. {reach(setting)}
    </Para>
  );
}
