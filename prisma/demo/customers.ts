import type { AddressAnswers } from '@/lib/jobs/rules/address';

type Row = readonly [
  name: string,
  mail: string,
  phone: string,
  street: string,
  second: string,
  place: string,
];

/**
 * People of the demonstration, all invented, and so are their towns. British postcodes begin with letters that no real
 * one begins with, telephone numbers come from those kept free for drama, mail from the reserved example domains.
 */
const ROWS = {
  'maren-holt': [
    'Maren Holt',
    'maren.holt@example.org',
    '07700 900321',
    '12 Chandler Row',
    '',
    'QM2 7HB Sandmouth GB',
  ],
  'idris-vellacott': [
    'Idris Vellacott',
    'idris@example.com',
    '07700 900118',
    'Flat 3',
    '88 Tollgate Street',
    'VX3 2TB Brackwater GB',
  ],
  'zofia-wrona': [
    'Zofia Wroński-Pell',
    'zofia.wp@example.net',
    '01632 960207',
    '5 Kiln Terrace',
    '',
    'XB7 9LN Eelcombe GB',
  ],
  'bram-oosterveen': ['Bram Oosterveen', 'bram.o@example.net', '', 'Sluiskade 14', '', '0042QX Zilverdam NL'],
  'aoife-tallon': [
    'Aoife Ní Thallúin',
    'aoife@example.org',
    '',
    '3 Cé na Faoileán',
    '',
    'Z99ZZ99 Inishdoon IE',
  ],
  'lucien-garrel': [
    'Lucien Garréol',
    'l.garreol@example.com',
    '',
    '27 rue du Petit Môle',
    'Bâtiment C',
    '00120 Port-Estrel FR',
  ],
  'hedda-lindqvarn': ['Hedda Lindqvärn', 'hedda@example.net', '', 'Tångvägen 9', '', '00042 Gräsholmsund SE'],
  'joao-sargo': [
    'João Sargo Peniche',
    'joao.sargo@example.org',
    '',
    'Travessa das Conchas 2',
    '',
    '0099-042 Vale do Sargo PT',
  ],
  'tamsin-orchard': [
    'Tamsin Orchardleigh',
    'tamsin@example.com',
    '07700 900455',
    '41 Ropewalk',
    '',
    'QM1 9PD Sandmouth GB',
  ],
  'emeka-adunola': [
    'Emeka Adúnọlá',
    'emeka.a@example.org',
    '07700 900733',
    '6 Signal Box Lane',
    '',
    'ZT4 1QQ Wickenholme GB',
  ],
  'petra-kiesling': ['Petra Kießlinger', 'petra@example.org', '', 'Hafengasse 4', '', '00999 Brackhafen DE'],
  'rhys-penmarrow': [
    'Rhys Penmarrow',
    'rhys.p@example.net',
    '01632 960318',
    'The Old Chapel',
    'Marsh Road',
    'XB2 5RJ Saltrey GB',
  ],
  'noor-bakhshi': [
    'Noor Bakhshiyan',
    'noor@example.com',
    '07700 900862',
    '19 Weavers Court',
    '',
    'VX1 8ED Brackwater GB',
  ],
  'calum-strachur': [
    'Calum Strachurie',
    'calum@example.org',
    '07700 900094',
    '2 Ferry Brae',
    '',
    'ZT9 3WP Loch Tarran GB',
  ],
  'ines-duarte': [
    'Inês Duartelo',
    'ines.d@example.net',
    '',
    'Rua da Barca 31',
    '3.º esq.',
    '0099-118 Vale do Sargo PT',
  ],
  'gwen-abery': [
    'Gwen Aberystan',
    'gwen@example.com',
    '01632 960455',
    '8 Lighthouse View',
    '',
    'QM3 3KX Hollin Bay GB',
  ],
  'odin-marsk': ['Odin Marskær', 'odin@example.org', '', 'Tangvej 7', '', '0042 Havnsø Strand DK'],
  'priya-rathnam': [
    'Priya Rathnamoor',
    'priya@example.net',
    '07700 900640',
    '53 Foundry Street',
    '',
    'XB1 1DV Eelcombe GB',
  ],
  'felix-ashdown': [
    'Felix Ashdowner',
    'felix@example.com',
    '07700 900277',
    '10 Cordwainer Close',
    '',
    'VX6 4SA Thrushford GB',
  ],
  'marta-zelenko': ['Márta Zelenkó', 'marta@example.org', '', 'Révész utca 12', '', '0042 Kiskikötő HU'],
  'sol-whitcombe': [
    'Sol Whitcomber',
    'sol@example.net',
    '07700 900981',
    '77 Harbour Parade',
    'Basement',
    'QM1 2LT Sandmouth GB',
  ],
  'yuki-amanohara': [
    'Yuki Amanohara-Reed',
    'yuki@example.com',
    '07700 900510',
    '4 Observatory Steps',
    '',
    'ZT1 7NH Upper Tarn GB',
  ],
  'beatriz-olmeda': [
    'Beatriz Olmeda Ruán',
    'beatriz@example.org',
    '',
    'Calle de la Nasa 18',
    '',
    '00077 Puerto Almeja ES',
  ],
  'kit-farrowdale': [
    'Kit Farrowdale',
    'kit@example.net',
    '07700 900166',
    '29 Limekiln Hill',
    '',
    'XB5 6MM Kelderwick GB',
  ],
  'anselm-voight': ['Anselm Vøgtland', 'anselm@example.com', '', 'Bryggegata 21', '', '0042 Sildevik NO'],
  'delphine-moreau': [
    'Delphine Morvanic',
    'delphine@example.net',
    '',
    '5 quai des Algues',
    '',
    '00121 Port-Estrel FR',
  ],
  'harun-celik': [
    'Harun Çelikkanat',
    'harun@example.org',
    '07700 900395',
    '62 Station Approach',
    '',
    'VX2 9YB Brackwater GB',
  ],
  'oona-maclair': [
    'Oona MacLairig',
    'oona@example.com',
    '01632 960522',
    'Croft 4',
    'Shore Road',
    'ZT8 2FA Loch Tarran GB',
  ],
  'teodor-stan': [
    'Teodor Stănescu-Gray',
    'teodor@example.net',
    '07700 900804',
    '15 Glassworks Yard',
    '',
    'XB3 8CT Eelcombe GB',
  ],
  'willa-hartnoll': [
    'Willa Hartnollan',
    'willa@example.org',
    '07700 900229',
    '1 Mill Leat Cottages',
    '',
    'QM4 6UE Penmarrow GB',
  ],
  'sander-dekuyt': ['Sander de Kuyt', 'sander@example.com', '', 'Achterdijk 103', '', '0043QX Zilverdam NL'],
  'lowri-tegeingl': [
    'Lowri Tegeinglan',
    'lowri@example.net',
    '07700 900712',
    '20 Heol y Cei',
    '',
    'ZT2 4BR Aberfaen GB',
  ],
  'matteo-rivalta': [
    'Matteo Rivaltino',
    'matteo@example.org',
    '',
    'Via del Gozzo 6',
    '',
    '00042 Porto Sgombro IT',
  ],
  'constance-bly': [
    'Constance Blythewood',
    'constance@example.com',
    '01632 960610',
    'Rectory Barn',
    'Church Lane',
    'VX8 1HG Thrushford GB',
  ],
  'arlo-quennell': [
    'Arlo Quennelby',
    'arlo@example.net',
    '07700 900588',
    '34 Trinity Wharf',
    'Unit 7',
    'QM1 5XW Sandmouth GB',
  ],
  'siobhan-kerley': [
    'Siobhán Ó Ceirlin',
    'siobhan@example.org',
    '',
    '11 Sráid an Droichid',
    '',
    'Z99ZZ41 Inishdoon IE',
  ],
  'ewa-laskowa': ['Ewa Łąskowa', 'ewa@example.com', '', 'ul. Rybia 8', 'm. 2', '99-099 Stary Mostek PL'],
  'desmond-achebe': [
    'Desmond Achebe-Lund',
    'desmond@example.net',
    '07700 900347',
    '9 Tannery Square',
    '',
    'XB6 2PZ Kelderwick GB',
  ],
} as const satisfies Record<string, Row>;

export type CustomerKey = keyof typeof ROWS;

/** A customer's address as the booking takes it. */
export function addressOf(key: CustomerKey): AddressAnswers {
  return readRow(ROWS[key]);
}

export const DEMO_ADDRESSES: readonly AddressAnswers[] = Object.values(ROWS).map(readRow);

function readRow([name, email, phone, address1, address2, place]: Row): AddressAnswers {
  return { name, email, phone, address1, address2, ...readPlace(place) };
}

// 'QM2 7HB Sandmouth GB': the postcode holds a digit in every part, the country is the last word.
function readPlace(place: string): { postcode: string; town: string; country: string } {
  const words = place.split(' ');
  const country = words.pop() ?? '';
  const isCode = (word: string) => /\d/.test(word);
  return {
    postcode: words.filter(isCode).join(' '),
    town: words.filter((word) => !isCode(word)).join(' '),
    country,
  };
}
