/** A figure that a rule or a body printed, in its words and with its name. */
export interface QuotedLimit {
  readonly text: string;
  readonly source: string;
}

/** A danger that work on a panel can bring. */
export interface Hazard {
  readonly id: string;
  readonly title: string;
  /** What to look up and where; never what is enough. */
  readonly text: string;
  readonly limits: readonly QuotedLimit[];
}

/** What stands over every list of cautions. */
export const cautionsFirst =
  'Labels, safety data sheets and local rules come first. Limits are quoted with their source, not advised.';

/**
 * Dangers by the words that kinds name in `hazards`, the gravest first. Limits are quoted, not
 * advised: other places have other ones, and they change.
 */
export const hazards: readonly Hazard[] = [
  {
    id: 'peroxide',
    title: 'Peroxide catalyst',
    text: 'One splash can blind: goggles before the bottle is opened, water within reach. Never together with promoter (cobalt), never warm, never near flame; only the day’s need at the bench.',
    limits: [
      {
        text: 'MEK peroxide in air: ceiling 0.2 ppm (1.5 mg/m³)',
        source: 'ACGIH and NIOSH, in NIOSH’s 1988 OSHA PEL project',
      },
      { text: 'Stored at 25 °C or below', source: 'product data sheet of a MEK peroxide, 2005' },
      {
        text: 'Never mixed with accelerators',
        source: 'California Code of Regulations, Title 8, section 5461',
      },
    ],
  },
  {
    id: 'styrene',
    title: 'Styrene in polyester resin',
    text: 'Flammable, and bad for ears, nerves and lungs: air moving away from the face, a mask with the cartridges that the data sheet names.',
    limits: [
      {
        text: 'OSHA: 100 ppm over 8 h, ceiling 200 ppm, 600 ppm for 5 min in any 3 h',
        source: 'OSHA chemical sampling information, styrene',
      },
      {
        text: 'NIOSH: 50 ppm, 100 ppm for 15 min; 700 ppm is dangerous at once',
        source: 'OSHA chemical sampling information, styrene',
      },
      {
        text: 'United Kingdom: 100 ppm over 8 h, 250 ppm over 15 min',
        source: 'HSE, plastics: frequently asked questions',
      },
    ],
  },
  {
    id: 'exotherm',
    title: 'Hot pots',
    text: 'Resin left in a pot heats itself until it smokes or burns. Mix what one person spreads; put left-overs outdoors, spread out, until they are cold.',
    limits: [
      {
        text: 'An unfilled mass can pass 150 °C',
        source: 'East Coast Fibreglass, catalyst addition chart',
      },
    ],
  },
  {
    id: 'adhesive',
    title: 'Solvent adhesive',
    text: 'The vapour is flammable and runs along the floor: no flame, no switch, no heater; air moving until it has flashed off.',
    limits: [
      {
        text: 'Spraying glue counts as spray finishing (29 CFR 1910.107)',
        source: 'OSHA, letter of interpretation, 1983',
      },
    ],
  },
  {
    id: 'paint',
    title: 'Paint and sealer',
    text: 'Overspray and vapour: mask, moving air, no flame.',
    limits: [],
  },
  {
    id: 'dust',
    title: 'Dust of board and filler',
    text: 'Extract it at the tool and wear a mask rated for it; sweep nothing dry. Oily and peroxide-wet dust can catch fire by itself.',
    limits: [
      {
        text: 'Wood dust, OSHA: 15 mg/m³ total, 5 mg/m³ respirable',
        source: 'OSHA, wood dust: evaluating exposure',
      },
      { text: 'Wood dust, NIOSH: 1 mg/m³', source: 'OSHA, wood dust: evaluating exposure' },
      {
        text: 'Formaldehyde from boards as sold, United States: MDF 0.11 ppm, up to 8 mm 0.13 ppm, hardwood plywood 0.05 ppm, particleboard 0.09 ppm',
        source: 'TSCA Title VI, as the Composite Panel Association prints it',
      },
      {
        text: 'Formaldehyde, European Union: 0.062 mg/m³ from wood articles after 2026-08-06, inside road vehicles after 2027-08-06',
        source: 'Regulation (EU) 2023/1464',
      },
    ],
  },
  {
    id: 'glass',
    title: 'Glass fibre',
    text: 'Fibres and cured edges cut and itch: sleeves and gloves; dust from sanding it needs the filter its data sheet names.',
    limits: [
      {
        text: 'Dust of grinding glass-reinforced plastic, United Kingdom: 10 mg/m³',
        source: 'HSE, plastics: frequently asked questions',
      },
    ],
  },
  {
    id: 'noise',
    title: 'Noise',
    text: 'Router, saw and sander are loud enough to hurt, and styrene makes ears weaker. Wear protection.',
    limits: [
      {
        text: 'NIOSH: 85 dBA 8 h, 88 4 h, 91 2 h, 94 1 h, 97 30 min, 100 15 min',
        source: 'NIOSH, noise and hearing loss prevention',
      },
      {
        text: 'OSHA: 90 dBA 8 h, 95 4 h, 100 2 h',
        source: 'NIOSH, noise and hearing loss prevention',
      },
    ],
  },
  {
    id: 'heat_gun',
    title: 'Heat gun',
    text: 'Hot enough to light solvent and to scorch vinyl: never over wet adhesive, never at airbag covers, foam or glass.',
    limits: [],
  },
  {
    id: 'airbag',
    title: 'Airbags and their sensors in doors',
    text: 'A pressure sensor may read the air inside the door: speaker, cover and trim must seal it again, clips are part of that, filings stay out. Read the car maker’s manual before a door is opened; a workshop may not make a safety device inoperative.',
    limits: [
      {
        text: 'The side sensor is calibrated to the air volume inside the door',
        source: 'a car maker’s repair manual, front side airbag crash sensors, 2012',
      },
      {
        text: 'No business may knowingly make a safety element inoperative',
        source: '49 USC 30122(b)',
      },
    ],
  },
];

/** Words that a kind may name in its `hazards`. */
export const hazardWords: readonly string[] = hazards.map(({ id }) => id);
