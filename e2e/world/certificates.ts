export type HeldCertificate = { certificate: string; serial: string; symptom: string; hasBattery: boolean };

/**
 * Certificates of the demonstration in cover and without a claim. A claim uses its certificate up, so each walk has its
 * own; the numbers come out the same at every first start.
 */
const held: Record<'misread' | 'contested' | 'partly', Record<string, HeldCertificate>> = {
  misread: {
    'script-off': {
      certificate: 'WJKAKWD1N',
      serial: 'G-119 230',
      symptom: 'Does not charge',
      hasBattery: true,
    },
    'script-on': {
      certificate: 'WTSRBFJP4',
      serial: 'OK-2318',
      symptom: 'The switch does nothing',
      hasBattery: false,
    },
  },
  contested: {
    'script-off': {
      certificate: 'WD5P1X4GJ',
      serial: 'M2-10233-C',
      symptom: 'Does not charge',
      hasBattery: true,
    },
    'script-on': {
      certificate: 'WC06GHJM3',
      serial: 'M2-11240-A',
      symptom: 'Does not charge',
      hasBattery: true,
    },
  },
  partly: {
    'script-off': {
      certificate: 'WNEVGRYB0',
      serial: 'KL25-01207',
      symptom: 'Does not charge',
      hasBattery: false,
    },
    'script-on': {
      certificate: 'WGKVRRT6X',
      serial: 'OC-1633',
      symptom: 'Does not start on the adapter',
      hasBattery: false,
    },
  },
};

/** The certificate set aside for one walk of one project. */
export function certificateFor(walk: keyof typeof held, project: string): HeldCertificate {
  const mine = held[walk][project];
  if (!mine) throw new Error(`No certificate of the demonstration is set aside for ${walk} in ${project}`);
  return mine;
}
